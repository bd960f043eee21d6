"""The object and its binding in facts and sentences."""

from __future__ import annotations

from casebook.model.archive import Case
from casebook.model.object import Came, Made, Size
from casebook.output.object_view import (
    binding_facts,
    came_text,
    fact,
    made_text,
    object_facts,
    part_facts,
    parts,
    size_text,
)
from casebook.output.wording import Wording, text_of
from casebook.values.notation import Notation, Units
from tests.builders import RICH, WORDING, record

METRIC = Wording(WORDING.lexicon, "", notation=Notation(units=Units.METRIC))


def lines(text: str) -> list[str]:
    facts = object_facts(record(Case, text), WORDING)
    return [f"{one.label}: {text_of(line)}" for one in facts for line in one.lines]


def test_a_size_is_as_written_and_in_the_lab_s_measure() -> None:
    size = record(Size, "{height: 16 1/4 in}")
    assert size_text(size, WORDING) == "height 16 1/4 in"
    assert "mm" in size_text(size, METRIC)


def test_facts_are_labelled() -> None:
    labels = [one.label for one in object_facts(record(Case, RICH), WORDING)]
    assert labels[0] == "Kind"
    assert {"Made", "Size", "Owner", "Received", "People"} <= set(labels)


def test_parts_stand_apart_from_the_whole() -> None:
    labels = [one.label for one in part_facts(record(Case, RICH), WORDING)]
    assert "Spine" in labels
    assert "Size" not in labels


def test_a_fact_without_a_text_is_none() -> None:
    assert fact("Place", "") is None


def test_a_date_is_shown_or_how_it_is_not_known() -> None:
    assert lines("{id: c, dates: {received: 2025-03}}") == ["Received: March 2025"]
    assert lines("{id: c, object: {made: unknown}}") == ["Made: unknown"]


def test_who_says_when_it_was_made_and_why() -> None:
    made = record(Made, "{is: 1881, says: the paper, because: it has a watermark}")
    assert made_text(made, WORDING) == "1881, according to the paper, because it has a watermark"


def test_of_a_set_some_came() -> None:
    assert came_text(record(Came, "3 of 5")) == "3 of 5 came"
    came = record(Came, "{done: 3, of: 5, rest: still on loan}")
    assert came_text(came) == "3 of 5 came; the others: still on loan"
    unknown = record(Came, "{done: 3, rest: unknown}")
    assert came_text(unknown) == "3 came; where the others are is unknown"


def test_parts_stand_in_their_tree() -> None:
    case = record(Case, "{id: c, parts: {volume 1: {parts: {section: {count: 52}}}}}")
    (whole, section) = parts(case.parts, WORDING)
    assert text_of(whole.lines[0]) == "its parts: section"
    assert whole.lines[0][0].anchor == "part-volume-1"
    (bare,) = parts(record(Case, "{id: c, parts: {sheet: {}}}").parts, WORDING)
    assert text_of(bare.lines[0]) == "no more is recorded"
    assert section and section.label == "Section of volume 1"
    assert text_of(section.lines[0]) == "52 of them"
    assert section.lines[0][0].anchor == "part-volume-1-section"


def test_a_binding_is_told_in_sentences() -> None:
    (binding,) = binding_facts(record(Case, RICH), WORDING)
    assert binding.label == "Binding on arrival"
    assert text_of(binding.lines[-1]) == "Covered in calf."


def test_boards_and_how_they_are_attached() -> None:
    case = record(
        Case,
        "{id: c, bindings: {boards: {material: pasteboard, thickness: 3 mm, attached: laced}}}",
    )
    (binding,) = binding_facts(case, WORDING)
    assert text_of(binding.lines[0]) == "Boards of pasteboard, 3 mm thick, laced."
