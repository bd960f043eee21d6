"""Severities are ordered and worded; spans sort as a reader reads."""

from __future__ import annotations

from casebook.diagnostics import Severity, Span


def test_an_error_weighs_most_and_a_suggestion_least() -> None:
    assert Severity.ERROR > Severity.WARNING > Severity.SUGGESTION


def test_a_severity_is_printed_as_its_own_word() -> None:
    assert [one.word for one in Severity] == ["suggestion", "warning", "error"]


def test_spans_sort_by_file_then_line_then_column() -> None:
    later = Span("a/case.md", 2, 1, 2, 3)
    first = Span("a/case.md", 1, 9, 1, 12)
    other = Span("b/case.md", 1, 1, 1, 2)
    assert sorted([other, later, first]) == [first, later, other]
