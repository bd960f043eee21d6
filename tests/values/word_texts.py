"""Strategies that write dates in words, right and wrong, for the tests of dates."""

from __future__ import annotations

from hypothesis import strategies as st

_YEARS = st.integers(1000, 1998).map(str)
_MONTHS = st.sampled_from(["January", "Feb.", "march", "Sept", "December"])
_PARTS = st.sampled_from(["early ", "mid-", "late ", "first half of the ", "mid "])
_CENTURIES = st.builds(
    "{}{}".format, st.integers(11, 20).map(lambda n: f"{n}th"), st.sampled_from([" century", " c."])
)
_DECADES = st.integers(101, 199).filter(lambda n: n % 10).map(lambda n: f"{n}0s")
UNITS = st.one_of(
    _YEARS,
    _DECADES,
    _CENTURIES,
    st.builds("{}{}".format, _PARTS, _CENTURIES | _DECADES | _YEARS),
    st.builds("{} {}".format, _MONTHS, _YEARS),
    st.builds("{} {} {}".format, st.integers(1, 28), _MONTHS, _YEARS),
    st.builds("{} {}, {}".format, _MONTHS, st.integers(1, 28), _YEARS),
    st.builds("{} {}".format, st.sampled_from(["spring", "fall", "winter"]), _YEARS),
)
_DOUBTED = st.builds(
    "{}{}{}".format,
    st.sampled_from(["", "c. ", "circa ", "about "]),
    UNITS,
    st.sampled_from(["", "", "?"]),
)
_BOUNDED = st.builds(
    "{}{}".format, st.sampled_from(["before ", "after ", "by ", "from ", "until "]), _DOUBTED
)
_JOINED = st.builds("{} or {}".format, _DOUBTED, _DOUBTED) | st.builds(
    "{} or {}".format, _DOUBTED, st.sampled_from(["later", "earlier"])
)
_RANGES = st.builds(
    str.format,
    st.sampled_from(["{} to {}", "{} – {}", "between {} and {}"]),
    st.integers(1000, 1499).map(str) | st.just("c. 1400") | st.just("late 14th century"),
    st.integers(1500, 1999).map(str) | st.just("early 17th century") | st.just("1 May 1600"),
)
WORD_TEXTS = st.builds(
    "{}{}".format,
    st.sampled_from(["", "", "probably ", "Perhaps "]),
    _DOUBTED | _BOUNDED | _JOINED | _RANGES,
)
"""Dates in words that are understood."""
FRAGMENTS = st.lists(
    st.sampled_from(
        [
            "14",
            "March",
            "1850",
            "c.",
            "mid-",
            "19th",
            "century",
            "or",
            "to",
            "-",
            "–",
            "/",
            "?",
            "before",
            "between",
            "and",
            "early",
            "XX",
            "[",
            "..",
            "18",
            " ",
            "s",
            ",",
            "winter",
            "1890-91",
            "0000",
            "ad",
            "probably",
            "later",
            "the",
            "0th",
            "９",
            "ſpring",
            "\u00a0",
        ]
    ),
    max_size=9,
).flatmap(lambda words: st.sampled_from(["", " "]).map(lambda gap: gap.join(words)))
"""Heaps of pieces of dates, mostly not understood."""
