"""A case's page."""

from __future__ import annotations

from dataclasses import replace

import pytest

from casebook.compute.summary import summarise
from casebook.drawings.words import Drawing, State
from casebook.model.archive import Case, Standing, Status
from casebook.model.base import Gap, Unknowing
from casebook.output.case_page import (
    Told,
    about_line,
    case_page,
    describe,
    kicker_of,
    status_of,
    title_of,
)
from casebook.output.structure_view import StructureView
from tests.builders import PICTURES, RICH, WORDING, archive, record

CASE = record(Case, RICH)
STATE = State(0, 0, "", "As found", ())
DRAWING = Drawing("A drawing", "<svg></svg>")


def page(withheld: bool = False):
    told = Told(summarise(CASE, lambda word: word), withheld=withheld)
    return case_page(CASE, archive(CASE), PICTURES, WORDING, told)


def test_a_page_tells_the_whole_case() -> None:
    made = page()
    assert made.title == "Tide-gauge keeper's day book"
    assert len(made.episodes) == 1
    assert made.materials and made.linings
    assert made.cite.startswith("A. Marsh, “Tide-gauge keeper's day book”, treatment case 2025-031")
    assert made.byline == "Treated 14 March 2025 by A. Marsh."


def test_a_withheld_structure_leaves_no_tables() -> None:
    assert page(withheld=True).linings is None
    assert page(withheld=True).materials is None


def test_a_case_without_title_is_called_by_its_id() -> None:
    assert title_of(Case(id="c-1")) == "c-1"


def test_a_stopped_case_says_why() -> None:
    status = Status(is_=Standing.STOPPED, because="Owner died.")
    assert status_of(replace(CASE, status=status)) == "The treatment was stopped: Owner died."


def test_a_line_that_begins_with_a_circa_begins_small() -> None:
    assert kicker_of(record(Case, "{id: a, object: {made: c. 1780}}"), WORDING) == "c. 1780"


def test_a_long_story_is_described_in_its_first_words() -> None:
    assert describe(Case(story="word " * 90)).endswith("word…")


def test_advice_that_nobody_wrote_down_is_said_to_be_missing() -> None:
    told = Told(summarise(CASE, lambda word: word))
    bare = replace(CASE, care=Gap(Unknowing.NOT_RECORDED, "nothing in the notes"))
    made = case_page(bare, archive(bare), PICTURES, WORDING, told)
    assert made.care == "<p>How it is to be kept is not recorded (nothing in the notes).</p>"


def test_drawings_on_which_little_happens_stand_behind_those_that_lead() -> None:
    few, many = (
        replace(DRAWING, part=name, states=(STATE,) * n) for name, n in (("a", 2), ("b", 3))
    )
    told = Told(summarise(CASE, lambda word: word), structure=StructureView((few, many)))
    made = case_page(CASE, archive(CASE), PICTURES, WORDING, told)
    assert (made.drawings, made.other_drawings) == ((many,), (few,))
    alone = replace(told, structure=StructureView((few,)))
    made = case_page(CASE, archive(CASE), PICTURES, WORDING, alone)
    assert (made.drawings, made.other_drawings) == ((few,), ())


def test_a_standing_is_a_few_words_and_its_reason_a_sentence() -> None:
    status = Status(is_=Standing.STOPPED, because="the owner died", left="in its box")
    stopped = replace(CASE, status=status)
    told = Told(summarise(stopped, lambda word: word))
    made = case_page(stopped, archive(stopped), PICTURES, WORDING, told)
    assert made.standing == "The treatment was stopped"
    assert made.status == "The owner died. It was left: in its box."


@pytest.mark.parametrize(
    ("kind", "structure", "line"),
    [
        ("photograph-album", "photograph-album", "Photograph album"),
        ("ledger", "tight-back", "Ledger, tight back"),
    ],
)
def test_what_the_kind_says_is_not_repeated(kind: str, structure: str, line: str) -> None:
    case = record(
        Case, f"{{id: c, object: {{kind: {kind}}}, bindings: [{{structure: {structure}}}]}}"
    )
    assert about_line(case, WORDING) == line
