"""Whatever a file holds, reading it raises nothing and every place lies within the file."""

from __future__ import annotations

from collections.abc import Iterator

from hypothesis import given
from hypothesis import strategies as st

from casebook.diagnostics import Diagnostic, Span
from casebook.source import RULES, Mapping, Node, Sequence, lines_of, parse, read_document

SIGNS = "\"'{}[]:-#?|>&*!%,ab\u00e9\\\t\r\n\0\x07\u2028\ufeff \N{OPEN BOOK}"
WORDS = [": ", "- ", "\n  ", " #a", "&x ", "*x", ", ", "\r\n", "---\n", "...\n", "<<: ", "\nk: v"]
PIECES = st.sampled_from([*SIGNS, *WORDS])
TEXTS = st.one_of(st.lists(PIECES, max_size=30).map("".join), st.text(max_size=60))


def places(node: Node | None) -> Iterator[Span]:
    if node is None:
        return
    yield node.span
    if isinstance(node, Sequence):
        for item in node.items:
            yield from places(item)
    if isinstance(node, Mapping):
        for entry in node.entries:
            yield entry.key.span
            yield from places(entry.value)


def assert_within(spans: list[Span], lines: list[str]) -> None:
    for span in spans:
        assert 1 <= span.line <= span.end_line <= len(lines)
        assert 1 <= span.column <= len(lines[span.line - 1]) + 1
        assert 1 <= span.end_column <= len(lines[span.end_line - 1]) + 1
        assert (span.line, span.column) <= (span.end_line, span.end_column)


def of_faults(faults: tuple[Diagnostic, ...]) -> list[Span]:
    assert {fault.rule for fault in faults} <= set(RULES)
    return [fault.span for fault in faults if fault.span]


@given(TEXTS)
def test_any_text_is_read_with_places_inside_it(text: str) -> None:
    parsed = parse(text, "case.md")
    lines = text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n").split("\n")
    assert_within([*places(parsed.node), *of_faults(parsed.diagnostics)], lines)


@given(st.one_of(st.binary(max_size=60), TEXTS.map(lambda text: f"---\n{text}\n---\nb".encode())))
def test_any_bytes_are_read_as_a_document(data: bytes) -> None:
    document = read_document(data, "case.md")
    lines = lines_of(data)
    assert_within([*places(document.front), *of_faults(document.diagnostics)], lines)
    assert 1 <= document.body_line <= len(lines)
    assert document.front is not None or document.diagnostics


@given(TEXTS)
def test_reading_twice_says_the_same(text: str) -> None:
    assert parse(text, "case.md") == parse(text, "case.md")


def test_behind_a_broken_section_the_reading_goes_on() -> None:
    text = 'a: *x\nb: "open\nc: {d: e, f}\ng:\n  - [1\nh: i\nh: j\n'
    parsed = parse(text, "case.md")
    told = [(fault.rule, fault.span.line) for fault in parsed.diagnostics if fault.span]
    assert told == [
        ("alias", 1),
        ("yaml", 2),
        ("comma-in-text", 3),
        ("yaml", 5),
        ("repeated-key", 7),
    ]
    assert isinstance(parsed.node, Mapping)
    assert [entry.key.text for entry in parsed.node.entries] == ["a", "c", "h"]


def test_a_key_repeated_across_a_broken_section_is_told() -> None:
    faults = parse("a: 1\nb: [\na: 2\n", "case.md").diagnostics
    assert [fault.rule for fault in faults] == ["yaml", "repeated-key"]
    assert "first on line 1" in faults[1].message


def test_a_broken_list_at_the_root_has_no_node_and_its_earlier_faults() -> None:
    parsed = parse("- *x\n- 'y\n", "case.md")
    assert parsed.node is None
    assert [fault.rule for fault in parsed.diagnostics] == ["alias", "yaml"]


def test_a_file_of_broken_lines_ends_in_bounded_time() -> None:
    parsed = parse("k: [\n" * 5_000, "case.md")
    assert 1 <= len(parsed.diagnostics) <= 20
