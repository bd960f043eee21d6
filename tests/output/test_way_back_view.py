"""The way back on a page: what was told before has its number alone, sources are lettered notes."""

from __future__ import annotations

from casebook.compute.way_back.numbering import numbered
from casebook.output.structure_view import StructureView, asked
from casebook.output.way_back_view import AnswerView, Telling, anchor_of
from casebook.output.wording import text_of
from tests.compute.way_back.built import back
from tests.compute.way_back.examples import EXAMPLES
from tests.output.test_structure_view import LINED, view


def told(name: str) -> tuple[tuple[AnswerView, ...], Telling]:
    built, tests = EXAMPLES[name]
    telling = Telling()
    answers = numbered(asked(back(built, *tests)))
    return tuple(telling.answer(one) for one in answers), telling


def numbers(one: AnswerView) -> list[str]:
    return [text_of(stretch.numbers) for stretch in one.stretches]


def layer(shown: StructureView, thing: str) -> AnswerView:
    return next(one for one in shown.layers if one.thing == thing)


def test_what_was_told_to_bare_a_part_is_named_by_number_to_take_off_a_layer() -> None:
    shown = view(LINED)
    (bare,) = shown.bare
    assert numbers(bare) == ["1 and 2"]
    assert [one.number for one in bare.stretches[0].openings] == [1, 2]
    tissue = layer(shown, "Tissue")
    assert numbers(tissue) == ["1 and 2"]
    assert tissue.stretches[0].openings == ()


def test_numbers_lead_to_the_openings_and_three_in_a_row_are_first_to_last() -> None:
    answers, _ = told("reback")
    longest = max(answers, key=lambda one: len(one.stretches[0].openings))
    assert numbers(longest)[0] == "1 to 3"
    assert [one.href for one in longest.stretches[0].numbers] == ["#opening-1", "", "#opening-3"]


def test_every_source_is_a_note_once_and_each_opening_names_its_letters() -> None:
    answers, telling = told("reback")
    letters = [text_of(line) for line in telling.sources]
    assert len(set(letters)) == len(letters)
    anchors = {run.anchor for line in telling.sources for run in line}
    shown = [one for answer in answers for part in answer.stretches for one in part.openings]
    hrefs = {run.href.removeprefix("#") for one in shown for run in one.sources if run.href}
    assert hrefs == anchors


def test_notes_go_on_after_z() -> None:
    from casebook.output.way_back_view import _letter

    assert [_letter(n) for n in (0, 25, 26, 27, 701, 702)] == ["a", "z", "aa", "ab", "zz", "aaa"]


def test_an_answer_has_a_name_that_can_be_linked_to() -> None:
    built, tests = EXAMPLES["reback"]
    assert anchor_of(back(built, *tests).free["board 1"]) == "free-board-1"
