"""Steps come in order, with their sitting, their hands and a name for what was done."""

from __future__ import annotations

import pytest

from casebook.compute.steps import lays, operation, placed
from casebook.model.treatment import Step
from tests.compute.written import case


def step(text: str) -> Step:
    return next(placed(case(f"steps: [{text}]"))).step


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
