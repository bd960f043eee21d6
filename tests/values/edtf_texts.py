"""Strategies that write EDTF texts of all three levels, for the tests of dates."""

from __future__ import annotations

from hypothesis import strategies as st

MARKS = st.sampled_from(["", "", "", "?", "~", "%"])
_YEARS = (
    st.integers(-9999, 9999)
    .filter(bool)
    .map(lambda year: f"{'-' if year < 0 else ''}{abs(year):04d}")
)
_MONTHS = st.integers(1, 12).map(lambda month: f"{month:02d}")
_DAYS = st.integers(1, 28).map(lambda day: f"{day:02d}")
_SOME_YEARS = st.sampled_from(["187X", "18XX", "1XXX", "XXXX", "X8X1", "-01XX", "180X"])
_SOME_MONTHS = st.sampled_from(["XX", "1X", "0X", "X2"])
_SOME_DAYS = st.sampled_from(["XX", "1X", "0X", "X5", "2X"])


@st.composite
def _points(draw: st.DrawFn) -> str:
    """A year, month or day, any of them marked or unspecified."""
    text = draw(MARKS) + draw(_YEARS | _SOME_YEARS) + draw(MARKS)
    for component in (_MONTHS | _SOME_MONTHS, _DAYS | _SOME_DAYS)[: draw(st.integers(0, 2))]:
        text += f"-{draw(MARKS)}{draw(component)}{draw(MARKS)}"
    return text


_CODES = st.builds("{}-{}{}".format, _YEARS, st.integers(21, 41), MARKS)
_LONG = st.builds("Y{}{}".format, st.integers(10_000, 10**15), st.sampled_from(["", "S3", "E2"]))
_ROUNDED = st.builds("{}S{}".format, _YEARS, st.integers(1, 4))
_TIMES = st.builds(
    "1985-{}-{}T{:02d}:{:02d}:09{}".format,
    _MONTHS,
    _DAYS,
    st.integers(0, 23),
    st.integers(0, 59),
    st.sampled_from(["", "Z", "-04", "+04:30"]),
)
_POINTS = _points() | _CODES | _LONG | _ROUNDED
_EARLY = st.integers(1000, 1499).map(str)
_LATE = st.integers(1500, 1999).map(str)
_INTERVALS = st.builds("{}{}/{}{}".format, _EARLY, MARKS, _LATE, MARKS) | st.builds(
    str.format, st.sampled_from(["{}/..", "{}/", "../{}", "/{}"]), _POINTS
)
_ITEMS = st.lists(_POINTS | st.builds("{}..{}".format, _EARLY, _LATE), min_size=1, max_size=4)
_SETS = st.builds(
    lambda items, form: form.format(",".join(items)),
    _ITEMS,
    st.sampled_from(["[{}]", "{{{}}}", "[..1000,{}]", "{{{},1999-12..}}"]),
)
EDTF_TEXTS = _POINTS | _TIMES | _INTERVALS | _SETS
"""Valid EDTF texts: points, times, codes, long and rounded years, intervals and sets."""
