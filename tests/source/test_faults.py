"""Each fault of grammar is told in our own words, under the very character."""

from __future__ import annotations

import re

import pytest
import yaml

from casebook.source import compose, parse

FAULTS = [
    # text, what stands under the caret, words of the message
    ('a: "x\nb: 2\n', (1, 4), 'the quote " is opened here and never closed'),
    ("a: 'x\nb: 2\n", (1, 4), "the quote ' is opened here and never closed"),
    ("a: 'it's'\n", (1, 8), "text follows behind the closing quote"),
    ('a: "x" y\n', (1, 8), "text follows behind the closing quote"),
    ('a: {b: "c"d}\n', (1, 11), "text follows behind the closing quote"),
    ("a: [x] y\n", (1, 8), "text follows behind the closing bracket"),
    ('a: "\\q"\n', (1, 5), "a backslash has a meaning of its own"),
    ("a: [1, 2\nb: 3\n", (1, 4), "the bracket [ is opened here and never closed"),
    ("a: {b: 1\nc: 3\n", (1, 4), "the bracket { is opened here and never closed"),
    ("k:\n  - {a: x\n  - {b: y}\n", (2, 5), "the bracket { is opened here and never closed"),
    ("a: [1}\n", (1, 6), "} cannot close the bracket [ opened on line 1"),
    ("a: [1]]\n", (1, 7), "] closes nothing: no [ is open"),
    ("a: {x: y,, z: 1}\n", (1, 10), "nothing stands before this comma"),
    ('a: {b: "x"\n    c: d}\n', (2, 5), "a comma is missing before this"),
    ("a: {b: x\n  c: d}\n", (2, 4), "a comma is missing before this key"),
    ("a: x: y\n", (1, 5), "a second `: ` stands in this text"),
    ("a: {b: x: y}\n", (1, 9), "a second `: ` stands in this text"),
    ("a: 1\n  b: 2\n", (2, 3), "indented as if it belonged to the line above"),
    ("a:\n    b: 2\n  c: 3\n", (3, 3), "does not line up with the keys above it"),
    ("a: 1\n- b\n", (2, 1), "a list item stands here where a key is expected"),
    ("- a\nb: 1\n", (2, 1), "neither an item of the list above"),
    ("a: 1\nb\nc: 2\n", (2, 1), "this line has no `: `"),
    (": b\n", (1, 1), "its key is missing"),
    ("a: %x\n", (1, 4), "cannot begin with %"),
    ("a: @x\n", (1, 4), "cannot begin with @"),
    ("a: `x\n", (1, 4), "cannot begin with `"),
    ("a: * x\n", (1, 4), "cannot begin with *"),
    ("a: & x\n", (1, 4), "cannot begin with &"),
    ("a: , x\n", (1, 4), "cannot begin with ,"),
    ("a: ? x\n", (1, 4), "cannot begin with ?"),
    ("a: - b\n", (1, 4), "a list cannot begin on the line of its key"),
    ("a: |x\n  y\n", (1, 5), "behind | the text begins on the next line"),
    ("a:\n\tb: 1\n", (2, 1), "a tab indents this line"),
    (f"{'a' * 1100}: x\n", (1, 1101), "too long for a key"),
]


@pytest.mark.parametrize("loader", ["CSafeLoader", "SafeLoader"])
@pytest.mark.parametrize(("text", "place", "words"), FAULTS)
def test_a_fault_is_told_in_our_words_at_its_place(
    text: str, place: tuple[int, int], words: str, loader: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(compose, "LOADER", getattr(yaml, loader))
    faults = parse(text, "case.md").diagnostics
    assert len(faults) == 1
    assert words in faults[0].message
    assert faults[0].hint
    assert faults[0].span is not None
    assert (faults[0].span.line, faults[0].span.column) == place


def test_an_unclosed_bracket_behind_a_hash_says_why() -> None:
    faults = parse("a: {b: see #3, c: d}\ne: 1\n", "case.md").diagnostics
    assert [fault.rule for fault in faults] == ["yaml", "hash-in-text"]
    assert "a # behind a space hides the rest of its line" in faults[0].hint


@pytest.mark.parametrize("text", ["a: 1\n...\nb: 2\n", "%YAML 9\na: 1\n"])
def test_whatever_else_goes_wrong_is_plain_english(text: str) -> None:
    fault = parse(text, "case.md").diagnostics[0]
    jargon = r"scalar|token|mapping|sequence|stream|node|flow|expected <"
    assert not re.search(jargon, f"{fault.message} {fault.hint}")
