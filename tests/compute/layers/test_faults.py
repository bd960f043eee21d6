"""Contradictions name their step and key, and keep silent where an order is not known."""

from __future__ import annotations

from casebook.compute.layers.faults import ORDERLESS, Faults, Kind
from casebook.compute.steps import placed
from tests.compute.written import case

STEPS = tuple(
    placed(case("episodes: [{steps: [{removes: a}, {removes: b}]}, {steps: [{takes-off: c}]}]"))
)


def at(number: int, *, ordered: bool = True) -> Faults:
    found = Faults(STEPS)
    found.begin(number, ordered=ordered)
    return found


def test_a_fault_stands_at_its_step_and_key() -> None:
    found = at(3)
    found.already_off("c")
    (one,) = found.found
    assert (one.step, one.record, one.key) == (3, STEPS[2].step, "takes-off")
    assert one.record.span(one.key) is not None


def test_when_names_another_sitting_or_the_side_of_this_one() -> None:
    assert at(1).when(3) == "in sitting 2"
    assert at(1).when(2) == "further down"
    assert at(2).when(1) == "further up"


def test_what_rests_on_an_order_is_not_said_where_nobody_recorded_it() -> None:
    found = at(1, ordered=False)
    found.gone("a", 2, "removes")
    found.not_off("a", 0)
    found.same_place("a", "b", "spine")
    assert found.found == []
    found.not_there("a", "removes")
    found.twice("a", 2)
    assert [one.kind for one in found.found] == [Kind.NOT_THERE, Kind.TWICE]


def test_every_message_names_the_thing_and_every_hint_says_what_to_write() -> None:
    found = at(2)
    found.nowhere("o")
    found.itself("p", "onto")
    found.gone("a", 1, "removes")
    found.later("b", 3, "removes")
    found.not_there("c", "removes")
    found.not_off("d", 0)
    found.not_off("e", 1)
    found.already_off("f")
    found.twice("g", 1)
    found.longer("h", "i", ("4 mm", "3 mm"), deeper="", part="")
    found.same_place("j", "k", "spine")
    found.still_held("l", "m", "removes")
    found.left("n", 1)
    found.nights(3, 2, 2)
    assert all("`" in one.message or one.kind is Kind.NIGHTS for one in found.found)
    assert all(one.hint for one in found.found)
    assert {one.kind for one in found.found} == set(Kind)
    assert set(Kind) > ORDERLESS
