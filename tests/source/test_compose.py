"""Nodes hold texts as written, and whatever else YAML can do is refused with its place."""

from __future__ import annotations

import pytest
import yaml

from casebook.diagnostics import Span
from casebook.source import MAX_DEPTH, Mapping, Node, Scalar, Sequence, compose, parse


def outline(node: Node | None) -> object:
    """A tree as plain lists and pairs."""
    if isinstance(node, Sequence):
        return [outline(item) for item in node.items]
    if isinstance(node, Mapping):
        return {entry.key.text: outline(entry.value) for entry in node.entries}
    return node.text if node else None


@pytest.mark.parametrize(
    "word", ["NO", "on", "010", "1:20", "~", "null", "1e3", "2025-03-14", "0x1F", "=", ".5", "y"]
)
def test_no_word_is_taken_for_anything_but_text(word: str) -> None:
    assert outline(parse(f"a: {word}", "case.md").node) == {"a": word}
    assert outline(parse(f"{word}: a", "case.md").node) == {word: "a"}


def test_lists_and_groups_keep_their_order_and_place() -> None:
    text = "b: [x, {y: z}]\na:\n- 1\n-   k: v\n\n# end\nc: >\n  one\n  two\n\n"
    node = parse(text, "case.md", first_line=5).node
    assert outline(node) == {"b": ["x", {"y": "z"}], "a": ["1", {"k": "v"}], "c": "one two\n"}
    assert isinstance(node, Mapping)
    spans = [entry.value.span for entry in node.entries]
    assert spans == [
        Span("case.md", 5, 4, 5, 15),
        Span("case.md", 7, 1, 8, 9),
        Span("case.md", 11, 4, 13, 6),
    ]
    assert node.span == Span("case.md", 5, 1, 13, 6)


def test_places_count_characters_not_bytes() -> None:
    node = parse("a: 📖📖 b # c\nd: é", "case.md").node
    assert isinstance(node, Mapping)
    assert node.entries[0].value.span == Span("case.md", 1, 4, 1, 8)


@pytest.mark.parametrize(
    ("text", "rules", "columns"),
    [
        ("a: &x 1", ["alias"], [4]),
        ("a: *x", ["alias"], [4]),
        ("a: &x [*x, *y]", ["alias", "alias", "alias"], [4, 8, 12]),
        ("a: !!str x", ["tag"], [4]),
        ("a: !important", ["tag"], [4]),
        ("a: !t {b: 1}", ["tag"], [4]),
        ("a: *see below*", ["alias"], [4]),
    ],
)
def test_aliases_anchors_and_tags_are_refused(
    text: str, rules: list[str], columns: list[int]
) -> None:
    faults = parse(text, "case.md").diagnostics
    assert [fault.rule for fault in faults] == rules
    assert [fault.span.column for fault in faults if fault.span] == columns


def test_a_second_document_is_refused_and_the_first_is_read() -> None:
    parsed = parse("a: 1\n---\nb: 2\n", "case.md")
    assert outline(parsed.node) == {"a": "1"}
    assert [fault.rule for fault in parsed.diagnostics] == ["several-documents"]


@pytest.mark.parametrize("opening", ["[", "{a: "])
def test_the_depth_is_bounded(opening: str) -> None:
    closing = "]" if opening == "[" else "}"
    deepest = opening * MAX_DEPTH + closing * MAX_DEPTH
    assert parse(deepest.replace("{a: }", "{a: b}"), "case.md").diagnostics == ()
    faults = parse(opening * 100_000, "case.md").diagnostics
    assert [fault.rule for fault in faults] == ["too-deep"]


@pytest.mark.parametrize("text", ["", "\n\n", "# only a comment\n"])
def test_a_text_without_a_node_has_none_and_no_fault(text: str) -> None:
    parsed = parse(text, "case.md")
    assert (parsed.node, parsed.diagnostics) == (None, ())


def test_the_slower_parser_reads_the_same(monkeypatch: pytest.MonkeyPatch) -> None:
    text = 'a: {b: [c, "d, e"]}\nf: see #1\ng:\n  - h: |\n      i\n  - *j\na: k\n'
    quick = parse(text, "case.md")
    monkeypatch.setattr(compose, "LOADER", yaml.SafeLoader)
    assert parse(text, "case.md") == quick
    assert isinstance(quick.node, Mapping)
    assert isinstance(quick.node.entries[1].value, Scalar)
