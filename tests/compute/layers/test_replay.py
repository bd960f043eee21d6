"""The replay as a whole: its moments, what it leaves open, and what holds for any treatment."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from random import Random

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from casebook.compute.layers import Replay, replay
from casebook.compute.structure import How, Structure
from casebook.model.archive import Case
from casebook.model.base import Gap, Unknowing
from casebook.model.treatment import Step
from tests.compute.layers.random_treatments import (
    interleaved,
    layings,
    of,
    senseless,
    undone,
)
from tests.compute.layers.told import LEXICON, faults, played, told
from tests.compute.random_cases import cases

QUICK = settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
PASTE = "adhesive: wheat-starch-paste"


def of_steps(steps: list[Step], order: Gap | None = None) -> Replay:
    return replay(of(steps, order=order), LEXICON)


def shape(structure: Structure) -> tuple[object, ...]:
    """A structure without the numbers of its steps and without an order."""
    return (
        {name: replace(one, step=0) for name, one in structure.things.items()},
        Counter(replace(one, step=0) for one in structure.bonds),
        set(structure.covers),
        set(structure.hides),
    )


def whole(found: Replay) -> bool:
    """Whether every bond and cover of every moment is between things that lie there."""
    return all(
        {bond.lower, bond.upper} <= set(moment.structure.things)
        for moment in found.moments
        for bond in moment.structure.bonds
    ) and all(
        set(pair) <= set(moment.structure.things)
        for moment in found.moments
        for pair in moment.structure.covers
    )


@QUICK
@given(cases())
def test_no_half_written_case_makes_it_raise(case: Case) -> None:
    assert whole(replay(case, LEXICON))


@settings(QUICK, max_examples=150)
@given(senseless())
def test_no_senseless_treatment_makes_it_raise(case: Case) -> None:
    assert whole(replay(case, LEXICON))


@QUICK
@given(layings())
def test_removing_in_reverse_restores_each_earlier_structure(steps: list[Step]) -> None:
    found = of_steps(undone(steps))
    there, back = found.moments[: len(steps) + 1], found.moments[len(steps) :]
    assert [shape(one.structure) for one in there] == [
        shape(one.structure) for one in reversed(back)
    ]


@QUICK
@given(layings())
def test_taking_off_and_putting_back_loses_nothing(steps: list[Step]) -> None:
    name = steps[-1].adds or ""
    found = of_steps([*steps, Step(takes_off=(name,)), Step(puts_back=(name,))])
    before, after = found.moments[len(steps)].structure, found.final
    assert set(before.things) == set(after.things)


@QUICK
@given(interleaved())
def test_the_order_of_steps_that_never_meet_does_not_matter(
    orders: tuple[list[Step], list[Step]],
) -> None:
    one, other = (of_steps(order).final for order in orders)
    assert shape(one) == shape(other)


@QUICK
@given(layings(), st.randoms(use_true_random=False))
def test_steps_without_an_order_come_to_the_same_however_they_are_listed(
    steps: list[Step], dice: Random
) -> None:
    mixed = list(steps)
    dice.shuffle(mixed)
    unknown = Gap(Unknowing.NOT_RECORDED)
    listed, shuffled = of_steps(steps, unknown), of_steps(mixed, unknown)
    assert set(listed.final.things) == set(shuffled.final.things)
    assert Counter(_ends(listed.final)) == Counter(_ends(shuffled.final))
    assert not shuffled.faults


def _ends(structure: Structure) -> list[tuple[str, str, How]]:
    return [(one.lower, one.upper, one.how) for one in structure.bonds if one.how is not How.JOINT]


@QUICK
@given(layings())
def test_sound_steps_contradict_nothing_but_where_two_lie_in_one_place(steps: list[Step]) -> None:
    assert {kind for _, kind in faults(of_steps(undone(steps)))} <= {"same-place"}


LEDGER = f"""
as-found: [{{id: old-glue, onto: spine, material: animal-glue}}]
episodes:
  - episode: 2
    steps:
      - photographed the spine
      - {{removes: old-glue}}
  - episode: 3
    steps:
      - {{adds: tissue, onto: spine, material: tengujo, {PASTE}}}
"""


def test_there_is_a_moment_as_found_and_one_after_each_step() -> None:
    found = played(LEDGER)
    told_ = [(one.step, one.episode, one.laid, one.gone, one.hid) for one in found.moments]
    assert told_ == [
        (0, "", (), (), ()),
        (1, "2", (), (), ()),
        (2, "2", (), ("old-glue",), ()),
        (3, "3", ("tissue",), (), ("spine",)),
    ]
    assert found.moments[1].structure is found.moments[0].structure
    assert found.step(3).adds == "tissue"


def test_the_last_moment_is_the_end_while_the_work_goes_on() -> None:
    facing = f"adds: facing, onto: leaf, {PASTE}, temporary: yes"
    open_ = played(f"status: in-treatment\nsteps: [{{{facing}}}]")
    assert "facing" in open_.final.things
    closed = played(f"status: complete\nsteps: [{{{facing}}}]")
    assert "facing" in closed.moments[-1].structure.things
    assert "facing" not in closed.final.things
    assert faults(closed) == [(1, "left")]


UNORDERED = f"""
episodes:
  - order: not recorded
    steps:
      - {{removes: tissue}}
      - {{adds: cloth, onto: tissue, {PASTE}}}
      - {{adds: tissue, onto: spine, {PASTE}}}
  - steps: [{{adds: paper, onto: tissue, {PASTE}}}]
"""


def test_without_a_recorded_order_only_the_end_of_the_sitting_is_sure() -> None:
    found = played(UNORDERED)
    assert not found.order_known
    assert [(one.step, one.sure) for one in found.moments] == [
        (0, True),
        (3, False),
        (2, False),
        (1, True),
        (4, True),
    ]


def test_what_follows_in_order_may_be_a_contradiction_again() -> None:
    found = played(UNORDERED)
    assert faults(found) == [(4, "gone")]
    assert told(found.final) == ["paper on spine: stuck wheat-starch-paste"]


def test_with_an_order_everything_is_sure() -> None:
    found = played(LEDGER)
    assert found.order_known
    assert all(one.sure for one in found.moments)


def test_contradictions_stand_in_the_order_of_their_steps() -> None:
    text = f"steps: [{{adds: a, onto: spine, {PASTE}, temporary: yes}}, {{removes: b}}, {{adds: b, onto: a}}]"
    assert faults(played(text)) == [(1, "left"), (2, "later")]
