"""What YAML lets pass in silence and a writer did not mean: commas, hashes, repeats, tabs."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import groupby

from casebook.diagnostics import Diagnostic, Span
from casebook.source.nodes import Entry, Node, Scalar
from casebook.source.text import Source, error, warning

_COLON = re.compile(r"\s*:")
_HASH = re.compile(r":?[ \t]+(#(?=\w)[^\n]*)")
_CLOSING = re.compile(r"[ \t]*}")
_TABBED = re.compile(r"^ *\t[ \t]*(?=[^\s])", re.MULTILINE)


@dataclass(frozen=True, slots=True)
class Placed:
    """A node with the offsets at which it begins and ends."""

    node: Node
    start: int
    end: int


@dataclass(frozen=True, slots=True)
class Pair:
    """A key and its value before the key is known to be a text."""

    key: Placed
    value: Placed


def entries_of(
    source: Source, pairs: Iterable[Pair], faults: list[Diagnostic], *, flow: bool
) -> tuple[Entry, ...]:
    """The entries of a group of keys, with every trap in it told."""
    whole = _rejoined(source, pairs, faults) if flow else pairs
    return _without_repeats(_with_text_keys(whole, faults), faults)


def _is_lone(source: Source, pair: Pair) -> bool:
    """Whether a key inside braces has neither a value nor a colon."""
    value = pair.value.node
    empty = isinstance(value, Scalar) and value.plain and not value.text
    is_text = isinstance(pair.key.node, Scalar)
    return empty and is_text and not _COLON.match(source.text, pair.key.end)


def _rejoined(source: Source, pairs: Iterable[Pair], faults: list[Diagnostic]) -> list[Pair]:
    """The pairs with texts that a comma had cut put together again, each cut told once."""
    kept: list[Pair] = []
    for lone, run in groupby(pairs, lambda pair: _is_lone(source, pair)):
        if not lone:
            kept += run
            continue
        words = list(run)
        if kept and _is_prose(kept[-1].value.node):
            kept[-1] = _joined(source, kept[-1], words, faults)
        else:
            faults += [_lone_word(word.key.node) for word in words]
    return kept


def _is_prose(node: Node) -> bool:
    return isinstance(node, Scalar) and node.plain and bool(node.text)


def _joined(source: Source, cut: Pair, words: list[Pair], faults: list[Diagnostic]) -> Pair:
    start, end = cut.value.start, words[-1].key.end
    text = " ".join(source.text[start:end].split())
    hint = f"write `{_shown(_key_text(cut.key.node))}: {quoted(text)}`"
    message = "the comma ended the text: put it in quotes"
    faults.append(error("comma-in-text", words[0].key.node.span, message, hint))
    return Pair(cut.key, Placed(Scalar(text, source.span(start, end), plain=True), start, end))


def _lone_word(node: Node) -> Diagnostic:
    word = _shown(_key_text(node))
    message = f"`{word}` stands alone inside {{ }}: a key needs a value"
    hint = f"write `{word}: ...`; a list of words stands in [ ], a text with a comma in quotes"
    return error("lone-word", node.span, message, hint)


def quoted(text: str) -> str:
    """A text in quotes as YAML wants them, cut to a length that can be shown."""
    shown = _shown(text)
    if '"' in shown or "\\" in shown:
        return "'" + shown.replace("'", "''") + "'"
    return f'"{shown}"'


def _shown(text: str) -> str:
    return text if len(text) <= 60 else text[:57] + "..."


def _key_text(node: Node) -> str:
    return node.text if isinstance(node, Scalar) else ""


def _with_text_keys(pairs: Iterable[Pair], faults: list[Diagnostic]) -> Iterator[Entry]:
    for pair in pairs:
        key = pair.key.node
        if not isinstance(key, Scalar) or not (key.text or not key.plain):
            message = "a key must be a text of one line"
            hint = "write `name: value`; if this is prose, put it in quotes"
            faults.append(error("key-not-text", key.span, message, hint))
        elif key.plain and key.text == "<<":
            message = "the merge key `<<` is not read"
            hint = "write the keys out, or use a recipe of the lab (`like: ...`)"
            faults.append(error("merge-key", key.span, message, hint))
        else:
            yield Entry(key, pair.value.node)


def _without_repeats(entries: Iterable[Entry], faults: list[Diagnostic]) -> tuple[Entry, ...]:
    first: dict[str, Entry] = {}
    for entry in entries:
        before = first.setdefault(entry.key.text, entry)
        if before is not entry:
            message = f"`{_shown(entry.key.text)}` stands twice: first on line "
            hint = "keep one of the two; several values of one key are written as a list"
            line = before.key.span.line
            faults.append(error("repeated-key", entry.key.span, f"{message}{line}", hint))
    return tuple(first.values())


def lost_to_hash(source: Source, end: int) -> Diagnostic | None:
    """A text behind ` #` that was taken for a comment; `end` is where the plain value ends."""
    match = _HASH.match(source.text, end)
    if not match:
        return None
    span = source.span(match.start(1), match.start(1) + len(match[1].rstrip()))
    message = "everything after # is a comment and was not read: put the text in quotes"
    hint = "if it is meant as a comment, write a space after the #"
    return warning("hash-in-text", span, message, hint)


def question_before_brace(source: Source, end: int) -> Diagnostic | None:
    """A value in braces that ends in `?` directly before `}`; `end` is where it ends."""
    if source.text[end - 1 : end] != "?" or not _CLOSING.match(source.text, end):
        return None
    message = "some readers of YAML refuse a `?` directly before `}`"
    hint = "put the text in quotes"
    return warning("question-mark", source.span(end - 1, end), message, hint)


def tabs(source: Source, texts: list[tuple[int, int]]) -> Iterator[Diagnostic]:
    """Lines indented by a tab, save those inside a quoted or block text (`texts`, in order)."""
    starts = [start for start, _ in texts]
    for match in _TABBED.finditer(source.text):
        before = bisect_right(starts, match.start()) - 1
        if before < 0 or match.start() >= texts[before][1]:
            yield tab(source.span(*match.span()))


def tab(span: Span) -> Diagnostic:
    """A line that is indented by a tab."""
    return error("tab", span, "a tab indents this line", "indent with spaces, two for each level")
