"""Openings numbered through all answers: one number for one act, and every answer still whole."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings

from casebook.compute.way_back import WayBack, way_back
from casebook.compute.way_back.classes import Class
from casebook.compute.way_back.instructions import Answer, Opening
from casebook.compute.way_back.numbering import act, numbered
from casebook.compute.way_back.sentences import instruction
from tests.compute.way_back.built import LEXICON, back
from tests.compute.way_back.examples import EXAMPLES
from tests.compute.way_back.random_structures import EVIDENCE, structures


def every(found: WayBack) -> tuple[Answer, ...]:
    return (*found.bare.values(), *found.free.values(), *found.take_off.values())


def words(opening: Opening) -> tuple[str, ...]:
    """What is said of an opening, but for why it comes first and on which piece it is done."""
    return instruction(replace(opening, hiding="", in_piece=0)).every


def check(answers: tuple[Answer, ...]) -> None:
    """Each opening has its own number or that of an equal one, met before in full."""
    told: dict[int, Opening] = {}
    for before, after in zip(answers, numbered(answers), strict=True):
        assert replace(after, openings=()) == replace(before, openings=())
        own = {0: 0}
        for one, found in zip(before.openings, after.openings, strict=True):
            own[one.number] = found.number
            assert found.number <= len(told) + 1
            first = told.setdefault(found.number, found)
            assert found.in_piece == own[one.in_piece] == first.in_piece
            assert act(first) == act(one)
            assert words(first) == words(one)
    acts = [(act(one, one.in_piece), words(one)) for one in told.values()]
    assert len(set(acts)) == len(acts)


@pytest.mark.parametrize("name", EXAMPLES)
def test_a_worked_example_is_told_once_and_wholly(name: str) -> None:
    built, tests = EXAMPLES[name]
    check(every(back(built, *tests)))


@given(structures(), EVIDENCE)
@settings(max_examples=40, suppress_health_check=[HealthCheck.too_slow])
def test_whatever_the_structure_no_opening_is_lost_and_none_is_told_twice(built, found) -> None:
    check(every(way_back(built, found, LEXICON)))


def test_to_bare_and_to_take_off_begin_with_the_same_opening() -> None:
    built, tests = EXAMPLES["pulled-linen"]
    found = back(built, *tests)
    bare, off = numbered((found.bare["spine"], found.take_off["release-tissue"]))
    assert [one.number for one in bare.openings] == [one.number for one in off.openings]


def test_what_is_done_on_another_piece_is_another_opening() -> None:
    one = Opening(2, "label", (), Class.HAND, ("label",), frees="label", in_piece=1)
    assert act(one, 1) != act(one, 3)
