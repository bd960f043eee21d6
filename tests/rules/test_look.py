"""When a record says something, and when a gap is answer enough."""

from __future__ import annotations

import pytest

from casebook.model.archive import Case
from casebook.reading import read
from casebook.rules.look import Due, Look
from casebook.source import parse
from tests.rules.written import LEXICON, TODAY, archive, look


@pytest.mark.parametrize(
    ("housing", "said", "in_reach", "on_page"),
    [
        ("a box", True, True, True),
        ("none", True, False, False),
        ("unknown", True, False, False),
        ("unknown (box lost)", True, True, False),
        ("not recorded", False, False, False),
        ("not recorded (page lost)", True, True, False),
        ("unnamed", False, False, False),
    ],
)
def test_a_gap_answers_by_its_kind_and_reason(housing, said, in_reach, on_page):
    path = ("object", "housing")
    text = f"object: {{kind: ledger, housing: {housing}}}"
    seen, page = look(text), look(text, page=True)
    assert seen.tells(seen.case, *path) is said
    assert seen.tells(seen.case, *path, in_reach=True) is in_reach
    assert page.tells(page.case, *path, in_reach=True) is on_page


def test_a_gap_on_the_way_answers_for_all_below_it():
    seen = look("proposal: not recorded (before the book was kept)")
    assert seen.tells(seen.case, "proposal", "decided", "by")


def test_one_item_of_a_list_answers_for_the_list():
    seen = look()
    assert seen.tells(seen.case, "findings", "stage")
    assert not seen.tells(seen.case, "findings", "extent")


def test_a_key_that_could_not_be_read_is_said():
    node = parse("id: a\ndates: {received: the day it rained}", "case.md").node
    assert node is not None
    one, faults = read(Case, node, "a")
    assert faults
    assert Look(one, archive(one), TODAY, LEXICON).tells(one, "dates", "received")


@pytest.mark.parametrize(
    ("status", "due"),
    [
        ("undecided", Due.EXAMINED),
        ("declined", Due.EXAMINED),
        ("proposed", Due.PLANNED),
        ("in-treatment", Due.TREATED),
        ("stopped", Due.TREATED),
        ("complete", Due.FINISHED),
    ],
)
def test_a_case_has_come_as_far_as_its_status(status: str, due: Due):
    assert look(f"status: {status}").stage is due


def test_without_a_status_steps_show_that_treatment_has_begun():
    assert look("# no status").stage is Due.TREATED
    assert look("# no status\n# no episodes").stage is Due.EXAMINED


def test_gaps_waive_a_key_in_an_old_record_and_only_what_was_looked_for_in_a_new_one():
    old = look("record: from-notes\ngaps: {not recorded: [housing], none: [tests]}")
    new = look("gaps: {not recorded: [housing], none: [tests]}")
    assert (old.waived("housing"), old.waived("tests"), old.waived("care")) == (True, True, False)
    assert (new.waived("housing"), new.waived("tests")) == (False, True)


def test_a_place_is_the_innermost_that_is_there():
    seen = look("written: {by: AM}")
    start = seen.case.places[""]
    assert seen.place("written", "date") != start
    assert seen.place("hazards") == start
