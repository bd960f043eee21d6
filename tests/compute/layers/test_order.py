"""Steps of which nobody recorded the order come in one in which they can have been done."""

from __future__ import annotations

from casebook.compute.layers.names import Names
from casebook.compute.layers.order import likely
from tests.compute.layers.told import LEXICON
from tests.compute.written import case


def order(*steps: str) -> list[int]:
    names = Names(case(f"steps: [{', '.join(f'{{{one}}}' for one in steps)}]"), LEXICON)
    return [number for number, _ in likely(enumerate(names.steps, 1), names)]


def test_a_thing_is_laid_before_it_is_used() -> None:
    assert order("adds: b, onto: a", "joins: b, to: leaf", "adds: a, onto: spine") == [3, 1, 2]


def test_a_thing_is_used_before_it_goes() -> None:
    assert order("removes: a", "adds: b, onto: a", "adds: a, onto: spine") == [3, 2, 1]


def test_a_thing_comes_off_before_it_comes_back() -> None:
    assert order("puts-back: label", "takes-off: label") == [2, 1]


def test_steps_that_do_not_meet_stay_as_they_are_listed() -> None:
    assert order("treats: leaf", "adds: a, onto: spine", "removes: old-glue") == [1, 2, 3]


def test_a_ring_stays_as_it_is_listed() -> None:
    assert order("adds: a, onto: b", "adds: b, onto: a") == [1, 2]
