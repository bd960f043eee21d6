"""Steps come in order, with their sitting, their hands and a name for what was done."""

from __future__ import annotations

import pytest

from casebook.compute.steps import lays, operation, placed
from casebook.model.treatment import Step
from tests.compute.written import case


def step(text: str) -> Step:
    return placed(case(f"steps: [{text}]"))[0].step


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("{do: Reback, adds: a}", "Reback"),
        ("{adds: a, onto: spine, adhesive: pva}", "line"),
        ("{adds: a, onto: leaf, adhesive: pva, scope: {pieces: [{count: 2}]}}", "patch"),
        ("{adds: a, in-thickness-of: leaf}", "infill"),
        ("{adds: a, is: part}", "make"),
        ("{adds: a, over: spine}", "apply"),
        ("{removes: a}", "remove"),
        ("{takes-off: a}", "detach"),
        ("{puts-back: a}", "reattach"),
        ("{opens: a}", "lift"),
        ("{joins: a}", "attach"),
        ("{treats: a}", "treat"),
        ("photographed it", ""),
    ],
)
def test_a_step_is_called_by_its_own_word_or_by_what_happened(text: str, name: str) -> None:
    assert operation(step(text), str) == name


def test_a_word_goes_through_the_vocabulary() -> None:
    assert operation(step("{do: Re-Backed}"), {"Re-Backed": "reback"}.__getitem__) == "reback"


def test_an_adhesive_that_is_not_named_is_an_adhesive() -> None:
    assert lays(step("{adds: a, onto: spine, adhesive: unnamed}"))
    assert not lays(step("{adds: a, onto: spine, adhesive: none}"))


def test_steps_outside_sittings_come_first_and_sittings_have_numbers() -> None:
    text = """
steps: [one]
episodes: [{episode: 7, hands: [RT, AM], steps: [two]}, {steps: [{do: wash, hands: RT}]}]
"""
    found = [(one.episode, one.hands) for one in placed(case(text))]
    assert found == [("", ()), ("7", ("AM", "RT")), ("2", ("RT",))]


@pytest.mark.parametrize(
    ("text", "laid"),
    [
        ("{adds: a, bonds: [{onto: spine, adhesive: paste}]}", True),
        ("{adds: a, bonds: [{onto: spine, held: sewn}]}", False),
        (
            "{adds: a, bonds: [{onto: spine, adhesive: none}, {onto: leaf, adhesive: unnamed}]}",
            True,
        ),
        ("{adds: a, onto: spine, held: nailed}", False),
        ("{adds: a, soaks-in: leaf, material: size}", False),
    ],
)
def test_a_layer_is_laid_where_one_of_its_bonds_sticks(text: str, laid: bool) -> None:
    (one,) = placed(case(f"steps: [{text}]"))
    assert lays(one.step) is laid


def test_in_a_run_each_step_is_told_for_each_member_by_the_run_s_hands() -> None:
    found = list(
        placed(case("steps: [{each: [a, b], hands: AM, steps: [{do: wash, treats: each}]}]"))
    )
    assert [(one.step.treats, one.hands, one.run) for one in found] == [
        (("a",), ("AM",), True),
        (("b",), ("AM",), True),
    ]


@pytest.mark.parametrize(
    ("written", "hands"),
    [
        ("[RT, unknown]", ("RT", "unknown")),
        ("[RT, AM]", ("AM", "RT")),
        ("unknown", ()),
        ("[unknown]", ()),
        ("[RT, none]", ("RT",)),
    ],
)
def test_a_hand_that_nobody_knows_works_beside_the_one_that_is_named(
    written: str, hands: tuple[str, ...]
) -> None:
    (one,) = placed(case(f"steps: [{{do: wash, treats: a, hands: {written}}}]"))
    assert one.hands == hands
