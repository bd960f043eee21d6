"""Front matter and prose are parted, and each way of getting it wrong is told once."""

from __future__ import annotations

import pytest

from casebook.source import Document, Mapping, read_document


def keys(document: Document) -> list[str]:
    assert document.front is not None
    return [entry.key.text for entry in document.front.entries]


@pytest.mark.parametrize("mark", [b"", b"\xef\xbb\xbf"])
@pytest.mark.parametrize("end", [b"\n", b"\r\n", b"\r"])
def test_keys_and_prose_are_read_whatever_the_line_ends(mark: bytes, end: bytes) -> None:
    data = mark + end.join([b"---", b"id: a", b"kind: b", b"--- ", b"", b"Prose.", b"---"])
    document = read_document(data, "case.md")
    assert document.diagnostics == ()
    assert keys(document) == ["id", "kind"]
    assert (document.body, document.body_line) == ("\nProse.\n---", 5)
    assert isinstance(document.front, Mapping)
    assert document.front.entries[1].value.span.line == 3


def test_front_matter_without_prose_is_whole() -> None:
    document = read_document(b"---\na: 1\n---", "case.md")
    assert (document.body, document.diagnostics, document.body_line) == ("", (), 3)


@pytest.mark.parametrize(
    ("data", "rule", "line", "words"),
    [
        (b"", "empty-file", 1, "the file is empty"),
        (b" \n\n", "empty-file", 1, "the file is empty"),
        (b"---\n---\nProse", "empty-file", 1, "the front matter is empty"),
        (b"---\n# nothing yet\n---\n", "empty-file", 1, "the front matter is empty"),
        (b"# Title\n", "front-matter", 1, "does not begin with front matter"),
        (b"\n\n---\na: 1\n---\n", "front-matter", 3, "blank lines stand before"),
        (b"----\na: 1\n---\n", "front-matter", 1, "`----` is not the `---`"),
        ("—\na: 1\n---\n".encode(), "front-matter", 1, "`—` is not the `---`"),
        (b"---\na: 1\n", "front-matter", 1, "begins here and has no end"),
        (b"---\na: 1\n--\nProse", "front-matter", 3, "`--` is not the `---`"),
        (b"---\n- a\n- b\n---\n", "front-matter", 2, "no group of keys"),
        (b"---\njust prose\n---\n", "front-matter", 2, "no group of keys"),
        (b"---\na: caf\xe9\n---\n", "encoding", 2, "not UTF-8"),
        (b"---\na: \0\n---\n", "encoding", 2, "NUL"),
        ("---\na: 1\n---\n".encode("utf-16"), "encoding", 1, "UTF-16"),
    ],
)
def test_each_broken_file_has_one_clear_fault(
    data: bytes, rule: str, line: int, words: str
) -> None:
    document = read_document(data, "case.md")
    assert document.front is None
    assert [fault.rule for fault in document.diagnostics] == [rule]
    fault = document.diagnostics[0]
    assert words in fault.message
    assert fault.span is not None
    assert fault.span.line == line


def test_behind_broken_front_matter_the_prose_is_still_there() -> None:
    document = read_document(b'---\na: "x\nb: 1\n---\nProse.\n', "case.md")
    assert (document.body, document.body_line) == ("Prose.\n", 5)
    assert [fault.rule for fault in document.diagnostics] == ["yaml"]
    assert keys(document) == ["b"]
