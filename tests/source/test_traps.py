"""What YAML lets pass in silence is told, and nothing that was honestly meant."""

from __future__ import annotations

import pytest

from casebook.diagnostics import Diagnostic, Severity
from casebook.source import Mapping, Scalar, parse


def told(text: str) -> list[Diagnostic]:
    return list(parse(text, "case.md").diagnostics)


def only(text: str, rule: str) -> tuple[Diagnostic, str]:
    """The one fault of a text of one line, with what its caret stands under."""
    faults = told(text)
    assert [fault.rule for fault in faults] == [rule]
    span = faults[0].span
    assert span is not None
    return faults[0], text[span.column - 1 : span.end_column - 1]


def test_a_comma_that_cut_prose_is_told_under_what_was_cut_off() -> None:
    fault, under = only("{seen: cords broken at head, tail loose}", "comma-in-text")
    assert under == "tail loose"
    assert fault.message == "the comma ended the text: put it in quotes"
    assert fault.hint == 'write `seen: "cords broken at head, tail loose"`'


def test_prose_cut_twice_is_told_once_and_put_together_again() -> None:
    parsed = parse("{seen: a, b, c, because: d}", "case.md")
    assert [fault.rule for fault in parsed.diagnostics] == ["comma-in-text"]
    assert isinstance(parsed.node, Mapping)
    read = [(entry.key.text, entry.value) for entry in parsed.node.entries]
    assert [key for key, _ in read] == ["seen", "because"]
    assert isinstance(read[0][1], Scalar)
    assert read[0][1].text == "a, b, c"


@pytest.mark.parametrize("text", ["{a: b, c: }", "{a: , b: c}", "{a: b, c: d}", "{}", "[a, b]"])
def test_an_empty_value_behind_a_colon_is_no_cut_prose(text: str) -> None:
    assert told(text) == []


@pytest.mark.parametrize("text", ["{loose}", '{seen: "broken", loose}', "{a: [x], loose}"])
def test_a_word_alone_in_braces_is_told(text: str) -> None:
    _, under = only(text, "lone-word")
    assert under == "loose"


@pytest.mark.parametrize(
    ("text", "under"), [("a: see #12 b", "#12 b"), ("a: #12", "#12"), ("- folder #b", "#b")]
)
def test_a_text_lost_to_a_hash_is_told(text: str, under: str) -> None:
    fault, shown = only(text, "hash-in-text")
    assert shown == under
    assert fault.severity is Severity.WARNING


@pytest.mark.parametrize(
    "text", ["a: b # see", "a: b#1", 'a: "b #1"', "#note\na: b", "a: b\n  #note", "a: |\n  b #1"]
)
def test_an_honest_comment_and_a_hash_in_quotes_are_left_alone(text: str) -> None:
    assert told(text) == []


@pytest.mark.parametrize("text", ["{result: bleeds?}", "{result: bleeds? }"])
def test_a_question_mark_before_a_brace_is_told_in_either_parser(text: str) -> None:
    faults = told(text)
    assert len(faults) == 1
    assert faults[0].hint == "put the text in quotes"


@pytest.mark.parametrize("text", ['{result: "bleeds?"}', "result: bleeds?", "[bleeds?]"])
def test_a_question_mark_elsewhere_is_left_alone(text: str) -> None:
    assert told(text) == []


def test_a_repeated_key_points_at_both() -> None:
    faults = told("title: a\nkind: b\ntitle: c\n")
    assert [fault.rule for fault in faults] == ["repeated-key"]
    assert faults[0].span is not None
    assert faults[0].span.line == 3
    assert "first on line 1" in faults[0].message


def test_the_first_of_two_repeated_keys_is_kept() -> None:
    node = parse("a: 1\na: 2\n", "case.md").node
    assert isinstance(node, Mapping)
    value = node.entries[0].value
    assert isinstance(value, Scalar)
    assert (len(node.entries), value.text) == (1, "1")


@pytest.mark.parametrize(
    ("text", "rule"),
    [("<<: {a: 1}", "merge-key"), ("? [a]\n: b", "key-not-text"), ("{[x]: b}", "key-not-text")],
)
def test_keys_that_are_no_text_are_refused(text: str, rule: str) -> None:
    assert [fault.rule for fault in told(text)] == [rule]


def test_a_quoted_merge_sign_is_a_key_like_any_other() -> None:
    assert told('"<<": a') == []


def test_a_tab_that_indents_is_refused_and_one_inside_a_text_is_not() -> None:
    assert [fault.rule for fault in told("a: [b,\n\tc]\n")] == ["tab"]
    assert told("a: b\tc\nd: |\n  x\n  \ty\n") == []
