"""Edits at the places of nodes: replace there, read again, and let nothing else change."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from casebook.diagnostics import Diagnostic, Span
from casebook.source import Entry, Node, Scalar, decode, parse, read_document
from casebook.source import Mapping as MappingNode
from casebook.source import Sequence as SequenceNode

_BOM = "\ufeff"
_LINE_END = re.compile("\r\n|\r|\n")
_COMMENT = re.compile(r"#[^\r\n]*")
_COVER = "\0"


@dataclass(frozen=True, slots=True)
class Change:
    """One place to be written otherwise: `text` for what stands from `start` to `end`.

    `old` is the node there and `new` the one that is meant after it; both None for white space.
    Offsets are characters of the file's text, `span` is the place for people.
    """

    start: int
    end: int
    text: str
    span: Span
    old: Node | None = None
    new: Node | None = None


class Written:
    """A file of keys as it was written, with or without prose below: its text and its nodes.

    `text` keeps the line ends and the mark of order of the file. `root` is None, and `faults` say
    why, where it cannot be read. `bare` is the text with every value and key covered, so that a
    `#` in it is a comment. `top` and `bottom` bound the keys.
    """

    def __init__(self, data: bytes, file: str) -> None:
        self.data = data
        self.file = file
        self.text = ""
        self.root: Node | None = None
        self.faults: tuple[Diagnostic, ...] = ()
        self._body_line: int | None = None
        self._read()
        self._starts = _line_starts(self.text)
        self.top, self.bottom = self._bounds()
        self._blocks: set[int] = set()
        self.bare = self._covered()

    def _read(self) -> None:
        text, self.faults = decode(self.data, self.file)
        if text is None:
            return
        self.text = self.data.decode("utf-8")
        if self.file.endswith(".md"):
            document = read_document(self.data, self.file)
            self.root, self.faults = document.front, document.diagnostics
            self._body_line = document.body_line if document.front else None
        else:
            parsed = parse(text, self.file)
            self.root, self.faults = parsed.node, parsed.diagnostics

    def _bounds(self) -> tuple[int, int]:
        """Where the keys begin and end: between the lines `---`, or the whole file."""
        if self._body_line is None:
            return 0, len(self.text)
        above = self._starts[self._body_line - 2]
        last = above if self.text.startswith("---", above) else self._starts[self._body_line - 1]
        return self._starts[1], last

    def _covered(self) -> str:
        """The text with every key and value covered, character by character."""
        if self.root is None:
            return self.text
        pieces, at = [], 0
        for start, end in sorted(map(self.offsets, _scalars(self.root))):
            pieces += [self.text[at:start], _COVER * (end - start)]
            at = end
            if self.text[start:end].startswith(("|", ">")):
                self._blocks.add(end)
        return "".join([*pieces, self.text[at:]])

    def in_block(self, at: int) -> bool:
        """Whether white space at an offset may belong to a text written in a block (`|`, `>`)."""
        while at > 0 and self.bare[at - 1].isspace():
            at -= 1
        return at in self._blocks

    def offsets(self, node: Node | Span) -> tuple[int, int]:
        """Where a node, or a place, begins and ends in the text."""
        span = node if isinstance(node, Span) else node.span
        start = self._starts[span.line - 1] + span.column - 1
        return start, self._starts[span.end_line - 1] + span.end_column - 1

    def slice(self, node: Node) -> str:
        """A node as it is written in the file, quotes and all."""
        start, end = self.offsets(node)
        return self.text[start:end]

    def span(self, start: int, end: int) -> Span:
        """The place of a stretch of one line of the text."""
        line = bisect_right(self._starts, start)
        column = start - self._starts[line - 1] + 1
        return Span(self.file, line, column, line, column + end - start)

    def comments(self) -> list[str]:
        """Every comment among the keys, in order, without white space at its end."""
        found = _COMMENT.findall(self.bare[self.top : self.bottom])
        return [one.rstrip() for one in found]

    def changed(self, changes: Iterable[Change]) -> Written | None:
        """The file with changes that do not overlap; None where it would then say anything else.

        It is read again: the nodes are the ones that are meant, no comment is lost, no fault is
        new, and the prose below is the same.
        """
        changes = sorted(changes, key=lambda one: one.start)
        after = Written(_rewritten(self.text, changes).encode(), self.file)
        meant = {id(one.old): one.new for one in changes if one.old and one.new}
        holds = (
            same(after.root, replaced(self.root, meant))
            and after.comments() == self.comments()
            and not Counter(_rules(after)) - Counter(_rules(self))
            and after.text[after.bottom :] == self.text[self.bottom :]
        )
        return after if holds else None


def apply(written: Written, changes: Sequence[Change]) -> tuple[Written, tuple[Change, ...]]:
    """The file with all changes that hold together, and those that had to be left out."""
    if not changes:
        return written, ()
    if whole := written.changed(changes):
        return whole, ()
    kept: list[Change] = []
    after, left = written, []
    for one in changes:
        if one_more := written.changed([*kept, one]):
            after = one_more
            kept.append(one)
        else:
            left.append(one)
    return after, tuple(left)


def _rewritten(text: str, changes: Iterable[Change]) -> str:
    pieces, at = [], 0
    for one in changes:
        pieces += [text[at : one.start], one.text]
        at = one.end
    return "".join([*pieces, text[at:]])


def _rules(written: Written) -> list[str]:
    return [one.rule for one in written.faults]


def _line_starts(text: str) -> list[int]:
    """Where each line begins; the first one behind the mark of order, if there is one."""
    first = 1 if text.startswith(_BOM) else 0
    return [first, *(match.end() for match in _LINE_END.finditer(text))]


def _scalars(node: Node) -> Iterator[Scalar]:
    """Every key and value that is a text."""
    if isinstance(node, Scalar):
        yield node
    elif isinstance(node, SequenceNode):
        for item in node.items:
            yield from _scalars(item)
    else:
        for entry in node.entries:
            yield entry.key
            yield from _scalars(entry.value)


def replaced(node: Node | None, meant: Mapping[int, Node]) -> Node | None:
    """The tree with other nodes in the place of those named by their identity."""
    if node is None or id(node) in meant:
        return meant[id(node)] if node else None
    if isinstance(node, SequenceNode):
        return SequenceNode(tuple(_inside(one, meant) for one in node.items), node.span)
    if isinstance(node, MappingNode):
        pairs = ((_inside(one.key, meant), _inside(one.value, meant)) for one in node.entries)
        entries = (Entry(key, value) for key, value in pairs if isinstance(key, Scalar))
        return MappingNode(tuple(entries), node.span)
    return node


def _inside(node: Node, meant: Mapping[int, Node]) -> Node:
    found = replaced(node, meant)
    assert found is not None  # only no node at all becomes none
    return found


def same(one: Node | None, other: Node | None) -> bool:
    """Whether two trees say the same, wherever they stand and however they are quoted."""
    return _said(one) == _said(other)


_Said = str | tuple[object, ...] | None


def _said(node: Node | None) -> _Said:
    if node is None or isinstance(node, Scalar):
        return node.text if node else None
    if isinstance(node, SequenceNode):
        return ("list", *map(_said, node.items))
    return ("keys", *((one.key.text, _said(one.value)) for one in node.entries))
