"""Figures add up exactly, keep their doubts, and say them in words."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook.compute.figures import Doubt, Effect, Figure, nearest, qualified, read, total
from casebook.values.quantities import Length

NO_TIME = Doubt(Effect.AT_LEAST, "step has no time", "steps have no time")
ROUGH = Doubt(Effect.ABOUT, "time is approximate", "times are approximate")
doubts = st.lists(st.sampled_from([NO_TIME, ROUGH]), max_size=3)
figures = st.builds(lambda value, said: Figure(value).but(*said), st.integers(0, 10**15), doubts)


@given(st.lists(figures, max_size=8), st.randoms())
def test_the_order_never_changes_a_sum(every: list[Figure], random) -> None:
    shuffled = list(every)
    random.shuffle(shuffled)
    assert total(shuffled) == total(every)
    assert total(every).value == sum(figure.value for figure in every)


@given(figures, figures, figures)
def test_sums_may_be_bracketed_in_any_way(one: Figure, two: Figure, three: Figure) -> None:
    assert (one + two) + three == one + (two + three) == total([three, one, two])


def test_doubts_of_one_wording_are_counted_together() -> None:
    found = Figure(10, (NO_TIME,)) + Figure(5, (NO_TIME,)) + Figure(1, (ROUGH,))
    assert (found.value, found.at_least, found.about) == (16, True, True)
    assert found.reasons == ("1 time is approximate", "2 steps have no time")


def test_a_difference_counts_a_shared_doubt_once() -> None:
    assert (Figure(9, (ROUGH,)) - Figure(4, (ROUGH,))) == Figure(5, (ROUGH,))


@pytest.mark.parametrize(
    ("text", "value", "reasons"),
    [
        # An inch is 25.4 mm: NBS Circular 572, addendum (1960). 16 1/4 x 25.4 = 412.75.
        ("16 1/4 in", 412_750, ()),
        ("about 71 mm", 71_000, ("1 measure is approximate",)),
        ("60-70 mm", 65_000, ("1 measure is a range",)),
        ("at least 3 mm", 3_000, ("1 measure is a lower bound",)),
        ("68 mm (doubtful)", 68_000, ("1 measure is doubtful",)),
    ],
)
def test_a_length_as_written_becomes_micrometres_with_its_doubts(text, value, reasons) -> None:
    found = read(Length.parse(text), 1000)
    assert (found.value, found.reasons) == (value, reasons)


def test_halves_are_rounded_up() -> None:
    assert [nearest(Fraction(n, 2)) for n in (0, 1, 2, 3)] == [0, 1, 1, 2]


def test_a_figure_is_said_with_its_at_least_or_about():
    assert qualified(Figure(5), "5 h") == "5 h"
    assert qualified(Figure(5, (ROUGH,)), "5 h") == "about 5 h"
    assert qualified(Figure(5, (ROUGH, NO_TIME)), "5 h") == "at least 5 h"
