"""Texts and values for the property tests of quantities."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from hypothesis import strategies as st

from casebook.values import quantities as q
from casebook.values.durations import Duration
from casebook.values.quantity import Quantity

MEASURES: list[type[Quantity]] = [
    q.Length,
    q.Area,
    q.Mass,
    q.Volume,
    q.Grammage,
    q.Percent,
    q.Temperature,
    q.Count,
    q.Acidity,
    Duration,
]
KINDS: list[type[Quantity] | type[q.Ratio]] = [*MEASURES, q.Ratio]

_PIECES = [
    "about",
    "c.",
    "~",
    "at least",
    "up to",
    "min.",
    "min",
    "to",
    "-",
    "–",
    "and",
    ",",
    ":",
    "/",
    "x",
    "(",
    ")",
    "(doubtful)",
    "?",
    " ",
    " ",
    "  ",
    "mm",
    "cm",
    "m",
    "µm",
    "in",
    '"',
    "'",
    "ft",
    "mm²",
    "cm2",
    "sq in",
    "g",
    "kg",
    "lb",
    "oz",
    "fl oz",
    "ml",
    "l",
    "g/m²",
    "gsm",
    "oz/yd²",
    "17 x 22 in",
    "of 500 sheets",
    "%",
    "w/v",
    "°C",
    "F",
    "pH",
    "h",
    "hours",
    "days",
    "s",
    "overnight",
    "nights",
    "weekend",
    "PT1H",
    "P1Y",
    "P",
    "T",
    "½",
    "1/2",
    "1/0",
    "16 1/4",
    "0",
    "1",
    "2.5",
    "2,5",
    "1,000",
    "9" * 12,
    "9" * 13,
    "9" * 40,
    "twelve",
    "half an",
    ".",
    "−",
    "٣",
]
ANY_TEXT = st.one_of(
    st.text(max_size=250),
    st.lists(st.sampled_from(_PIECES), max_size=9).map("".join),
    st.lists(st.sampled_from(_PIECES), max_size=9).map(" ".join),
)
"""Anything at all, and things that look much like quantities."""

_REASONS = st.sampled_from(
    ["", "at the head", "a (b) c", "estimated: by eye", "naïve, ½", "x" * 80]
)
_NOTED = st.tuples(st.booleans(), st.booleans(), _REASONS)
_SMALL = st.fractions(min_value=0, max_value=14, max_denominator=10**6)
_VALUES: dict[type[Quantity], st.SearchStrategy[Fraction]] = {
    q.Count: st.integers(0, 10**9).map(Fraction),
    q.Acidity: _SMALL,
    q.Temperature: st.fractions(min_value=-273, max_value=10**6, max_denominator=10**6),
}
_ANY_VALUE = st.one_of(_SMALL, st.fractions(min_value=0, max_value=10**9, max_denominator=10**9))


@st.composite
def measures(draw: st.DrawFn, kind: type[Quantity]) -> Quantity:
    """A quantity of one kind, plain, a range, or open at one end."""
    values = _VALUES.get(kind, _ANY_VALUE)
    low, high = sorted((draw(values), draw(values)))
    shape = draw(st.sampled_from(["plain", "range", "at least", "up to"]))
    ends: dict[str, tuple[Fraction | None, Fraction | None]] = {
        "plain": (low, low),
        "range": (low, high),
        "at least": (low, None),
        "up to": (None, high),
    }
    about, doubtful, reason = draw(_NOTED)
    value = kind(*ends[shape], about, doubtful, reason)
    if isinstance(value, Duration):
        return replace(value, nights=draw(st.integers(0, 999)))
    if isinstance(value, q.Percent):
        return replace(value, basis=draw(st.sampled_from(["", "w/v", "w/w", "v/v"])))
    return value


@st.composite
def ratios(draw: st.DrawFn) -> q.Ratio:
    """A ratio of two to five parts."""
    part = st.fractions(min_value=Fraction(1, 10**5), max_value=10**3, max_denominator=10**5)
    parts = draw(st.lists(part, min_size=2, max_size=5))
    return q.Ratio(tuple(parts), *draw(_NOTED))
