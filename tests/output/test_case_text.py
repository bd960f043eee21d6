"""A case as plain text: all that its page says, in lines that any program can show."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from casebook.audiences import redact
from casebook.model.archive import Case
from casebook.model.base import Audience
from casebook.output.case_maker import UP, CaseMaker
from casebook.output.case_text import WIDTH, case_text
from casebook.output.lists import Lists
from casebook.output.whole import Whole, Wishes
from tests.builders import PICTURES, RICH, archive, record


def text(source: str = RICH, story: str = "", structure: Audience | None = None) -> str:
    case = replace(record(Case, source), story=story, structure=structure)
    shown = redact(archive(case), Audience.PUBLIC)
    whole = Whole(shown, PICTURES, Wishes())
    (one,) = whole.cases
    return case_text(CaseMaker(whole, Lists(whole)).page(one, UP))


def test_a_case_is_told_from_its_title_to_its_licence() -> None:
    lines = text().splitlines()
    assert lines[:2] == ["Tide-gauge keeper's day book", "=" * 28]
    heads = [line for line, under in pairwise(lines) if under.startswith("---")]
    assert heads == [
        "THE OBJECT",
        "CONDITION",
        "WHAT WAS PROPOSED AND AGREED",
        "THE TREATMENT",
        "THE STRUCTURE",
        "THE WAY BACK",
        "MATERIALS",
        "TIME",
        "HOW IT HOLDS",
        "CARE",
        "WHAT THIS RECORD DOES NOT SAY",
        "CITING THIS CASE",
    ]
    told = " ".join(text().split())
    for words in (
        "2. Removed the old glue with water; discarded. (1 h at the bench)",
        "Hazard: red rot: The spine: mask and extraction.",
        "The front joint (broken): cords broken; taken to mean: held by the pastedown only.",
        "Course: reback (chosen).",
        "Recorded in words only: step 1.",
        "cloth lining (added in sitting 1, step 3)",
        "Soften with moisture",
        "linen: used as laid or put in; on spine",
    ):
        assert words in told


def test_no_line_is_longer_than_paper_and_no_blank_ends_one() -> None:
    lines = text(story="word " * 90 + "\n\n- one\n- two").splitlines()
    assert max(map(len, lines)) <= WIDTH
    assert all(line == line.rstrip() for line in lines)


def test_prose_is_told_without_its_markup() -> None:
    told = text(story="Some *words* & <b>more</b>\n\nAnd a [link](https://a.example/).")
    assert "Some words & more" in told
    assert "<" not in told


def test_how_advice_is_not_known_is_told_in_a_sentence() -> None:
    told = text("{id: c, audience: public, care: not recorded, reversibility: {says: unknown}}")
    assert "How it is to be kept is not recorded." in told
    assert "How it can be undone is unknown." in told


def test_a_structure_that_is_not_shown_is_not_told() -> None:
    told = text(structure=Audience.LAB)
    assert "The structure of this object is not shown in this copy of the archive." in told
    assert "MATERIALS" not in told
    assert "old glue" not in told.lower()


def test_a_run_and_what_was_tried_stand_under_their_step() -> None:
    told = text(
        "{id: c, audience: public, steps: [{do: press, treats: spine, tried: [{what: weights,"
        " outcome: given-up}]}, {each: [board 1], steps: [{do: clean, treats: each}]}]}"
    )
    assert "\n  Tried and given up: weights.\n" in told
    assert "\n2. On each of board 1:\n\n  1. Cleaned" in told
