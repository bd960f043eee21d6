"""A text knows the place of each of its stretches in the file."""

from __future__ import annotations

import pytest

from casebook.diagnostics import Span
from casebook.source import Mapping, Scalar, parse


def value_of(text: str) -> Scalar:
    node = parse(text, "case.md").node
    assert isinstance(node, Mapping)
    value = node.entries[0].value
    assert isinstance(value, Scalar)
    return value


@pytest.mark.parametrize("written", ["16 1/4 inch", '"16 1/4 inch"', "'16 1/4 inch'"])
def test_a_word_inside_a_text_of_one_line_is_found_exactly(written: str) -> None:
    line = f"height: {written}"
    value = value_of(line)
    place = value.at(value.text.index("inch"), len(value.text))
    assert line[place.column - 1 : place.end_column - 1] == "inch"
    assert place.line == place.end_line == 1


@pytest.mark.parametrize(
    "written", [r'"say \"inch\""', "'it''s inch'", "a text\n  of two inch", "|\n  an inch"]
)
def test_a_rewritten_text_answers_with_its_whole_place(written: str) -> None:
    value = value_of(f"a: {written}")
    assert value.at(2, 4) == value.span


def test_offsets_outside_the_text_are_brought_back_to_its_ends() -> None:
    value = value_of("a: paper")
    assert value.at(-5, 99) == Span("case.md", 1, 4, 1, 9)
    assert value.at(5, 6) == Span("case.md", 1, 9, 1, 9)


def test_an_empty_value_is_a_plain_text_behind_its_colon() -> None:
    value = value_of("title:\nkind: ledger")
    assert (value.text, value.plain, value.span) == ("", True, Span("case.md", 1, 7, 1, 7))
