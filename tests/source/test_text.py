"""Bytes become clean text, or one fault that says what is the matter."""

from __future__ import annotations

import pytest

from casebook.diagnostics import Severity, Span
from casebook.source import MAX_BYTES, decode, lines_of, parse
from casebook.source.text import Source, clean


@pytest.mark.parametrize(
    ("data", "rule", "line", "column"),
    [
        (b"a: 1\nb: caf\xe9\n", "encoding", 2, 7),
        ("a: 1\nb: é ".encode() + b"\xff", "encoding", 2, 6),
        (b"a: 1\r\nb: \x00", "encoding", 2, 4),
        ("a: 1".encode("utf-16"), "encoding", 1, 1),
        (b"a" * (MAX_BYTES + 1), "too-big", 1, 1),
    ],
)
def test_what_is_no_text_is_told_once_with_its_place(
    data: bytes, rule: str, line: int, column: int
) -> None:
    text, faults = decode(data, "case.md")
    assert text is None
    assert [fault.rule for fault in faults] == [rule]
    assert faults[0].span is not None
    assert (faults[0].span.line, faults[0].span.column) == (line, column)


def test_a_mark_of_byte_order_is_taken_away_without_a_word() -> None:
    assert decode(b"\xef\xbb\xbfa: 1", "case.md") == ("a: 1", ())


def test_a_file_of_exactly_the_limit_is_read() -> None:
    assert decode(b"#" * MAX_BYTES, "case.md")[1] == ()


def test_every_line_end_counts_once() -> None:
    assert lines_of(b"\xef\xbb\xbfa\r\nb\rc\nd\x0be") == ["a", "b", "c", "d\x0be"]


def test_control_characters_are_told_at_their_place_and_read_as_spaces() -> None:
    source, faults = clean("a: x\x07\x08y\nb: \x1b", "case.md")
    assert source.text == "a: x  y\nb:  "
    assert [(fault.severity, fault.span) for fault in faults] == [
        (Severity.ERROR, Span("case.md", 1, 5, 1, 7)),
        (Severity.ERROR, Span("case.md", 2, 4, 2, 5)),
    ]


def test_a_pasted_line_separator_is_only_a_warning() -> None:
    _, faults = clean("a: x\u2028y", "case.md")
    assert [fault.severity for fault in faults] == [Severity.WARNING]


def test_a_text_over_the_limit_is_refused_by_the_parser_too() -> None:
    parsed = parse("é" * (MAX_BYTES // 2 + 1), "case.md")
    assert parsed.node is None
    assert [fault.rule for fault in parsed.diagnostics] == ["too-big"]


def test_a_part_of_a_source_keeps_its_lines() -> None:
    source = Source("a\nbb\nccc\n", "case.md", first_line=10)
    assert source.part(2, 9).span(4, 6) == source.span(6, 8) == Span("case.md", 12, 2, 12, 4)
