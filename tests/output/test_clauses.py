"""What follows the main clause of a step."""

from __future__ import annotations

import pytest

from casebook.model.object import Bond, Walls
from casebook.model.treatment import Step
from casebook.output.clauses import (
    bath,
    beyond,
    bond_line,
    clauses,
    cuts_line,
    measures_text,
    often,
    scope_text,
    walls_text,
)
from casebook.output.wording import text_of
from casebook.values.quantities import Count
from tests.builders import WORDING, record


def said(text: str) -> list[str]:
    return [text_of(one) for one in clauses(record(Step, text), WORDING) if one]


@pytest.mark.parametrize(
    ("step", "told"),
    [
        ("{removes: twine, fate: stored-apart, scope: 2 of 5}", ["2 of 5", "stored apart"]),
        ("{removes: twine, fate: not read}", ["where it went was not read in the source"]),
        (
            "{removes: map, fate: {is: own-case, case: c-1}}",
            ["it has a case of its own: c-1"],
        ),
        (
            "{removes: map, fate: {is: kept-with-object, where: in the box}}",
            ["kept with the object (in the box)"],
        ),
        ("{removes: tape, leaves: none}", ["nothing of it is left"]),
        ("{removes: tape, leaves: unknown}", ["what is left is unknown"]),
        ("{removes: tape, leaves: {where: at the head}}", ["what is left of it: at the head"]),
        (
            "{adds: a, onto: spine, hides: tooling, over: label}",
            ["it covers the label", "it hides the tooling"],
        ),
        (
            "{adds: a, onto: spine, against-original: {is: like, because: no choice}}",
            ["as strong as the original that it lies across: no choice"],
        ),
        ("{adds: a, onto: spine, cut: not recorded}", ["size of the cut not recorded"]),
        ("{treats: spine, allowed-by: [a-b, c]}", ["allowed by the tests “a b” and “c”"]),
        ("{treats: spine, scope: unknown}", ["how much of it is unknown"]),
        (
            "{treats: spine, scope: {done: 2, rest: not recorded (page lost)}}",
            ["2 (of the rest nothing is recorded: page lost)"],
        ),
    ],
)
def test_a_clause_for_each_thing_said(step: str, told: list[str]) -> None:
    assert said(step) == told


def test_no_bath_is_no_clause_and_an_unknown_one_is_told() -> None:
    assert bath(Step(), WORDING) == ()
    unknown = record(Step, "{do: wash, bath: not recorded}")
    assert text_of(bath(unknown, WORDING)) == ", the bath not recorded"


@pytest.mark.parametrize(
    ("bond", "line"),
    [
        ("spine", "held to the spine"),
        ("{onto: spine, adhesive: none}", "not stuck to the spine"),
        ("{onto: spine, adhesive: none, held: sewn}", "sewn to the spine"),
        (
            "{onto: board 1, held: [sewn, knotted], cuts: board 1}",
            "sewn and knotted to and through board 1",
        ),
        (
            "{onto: board 1, held: laced, cuts: leaf}",
            "laced to board 1, it goes through the leaf",
        ),
        (
            "{onto: spine, adhesive: unnamed, face: inner, where: at the head}",
            "stuck with its inner face to the spine with an adhesive not named, at the head",
        ),
    ],
)
def test_each_bond_says_where_and_how(bond: str, line: str) -> None:
    assert text_of(bond_line(record(Bond, bond), WORDING)) == line


def test_what_was_cut_and_nothing_goes_through() -> None:
    assert text_of(cuts_line(("board 1",), (), WORDING)) == "board 1 was cut for it"
    assert cuts_line((), ("sewn",), WORDING) == ()


def test_a_tube_has_its_walls() -> None:
    assert walls_text(record(Walls, "1 on, 2 off")) == "a hollow tube, one on and two off"
    assert walls_text(record(Walls, "{outer: 12}")) == "a hollow tube, 12 off"
    assert walls_text(None) == ""


def test_how_often() -> None:
    assert [often(Count.parse(one)) for one in ("1", "2", "5")] == ["once", "twice", "5 times"]
    assert often(None) == ""


def test_measures_that_are_not_known_say_so() -> None:
    step = record(Step, "{adds: a, cut: {height: 39 mm, width: unknown}}")
    assert measures_text(step.cut, WORDING) == "39 mm high, width unknown"


def test_pieces_are_counted_with_their_size() -> None:
    step = record(Step, "{scope: {pieces: [{count: 3, height: 2 mm, width: 1 mm}, {count: 2}]}}")
    assert scope_text(step.scope, WORDING) == "3 pieces of 2 mm × 1 mm, 2 pieces"


def test_what_soaks_in_stays() -> None:
    step = record(Step, "{do: size, adds: new-size, soaks-in: leaf}")
    assert [text_of(one) for one in beyond(step, WORDING) if one] == ["it soaks in and stays"]
