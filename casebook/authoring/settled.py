"""The settled way to write each thing, found along the schema and by nothing else."""

from __future__ import annotations

import re
import types
import typing
from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum
from typing import Any

from casebook.authoring.edits import Change, Written
from casebook.authoring.short_forms import Said, joined
from casebook.model.base import Gap, Record, Unknowing, Words, known, schema
from casebook.reading import YES_NO, gap_from, read
from casebook.source import Entry, Node, Scalar
from casebook.source import Mapping as MappingNode
from casebook.source import Sequence as SequenceNode
from casebook.vocabulary import Lexicon, fold

PROSE = ("note", "story")
"""Keys with the writer's own words, of which not even a capital is touched."""

_GAP = re.compile(rf"({'|'.join(one.value for one in Unknowing)})(\s*(?:\(.*\))?)", re.IGNORECASE)
_SAFE = re.compile(r"[^\W_][^\[\]{},#:\n\"'?]*")
_TRAILING = re.compile(r"[ \t]+(?=\r|\n|\Z)")


@dataclass(frozen=True, slots=True)
class Settled:
    """A node as it should be, how a text on one line is then written, and what that changes."""

    node: Node
    text: str | None
    changes: tuple[Change, ...] = ()


@dataclass(frozen=True, slots=True)
class Slot:
    """Where a node stands: under which key of a type, and how it alone makes that key's value."""

    cls: type[Record]
    key: str
    whole: Callable[[Node], Node] = lambda node: node

    def within(self, around: Callable[[Node], Node]) -> Slot:
        """The place of one item inside this one."""
        return Slot(self.cls, self.key, lambda node: self.whole(around(node)))

    def reads_alike(self, one: Node, other: Node) -> bool:
        """Whether two nodes here read to the same value, both without a fault."""
        return self._read(one) == self._read(other) is not None

    def _read(self, node: Node) -> Record | None:
        entry = Entry(Scalar(self.key, node.span, plain=True), self.whole(node))
        value, faults = read(self.cls, MappingNode((entry,), node.span), "")
        return None if faults else value


class Settler:
    """Walks the nodes of one file along the schema."""

    def __init__(self, written: Written, lexicon: Lexicon) -> None:
        self.written = written
        self.lexicon = lexicon

    def record(self, cls: type[Record], node: Node, slot: Slot | None = None) -> Settled:
        """A record: its short form where it has one, else its keys one by one."""
        if isinstance(node, Scalar):
            return self._short(cls, node)
        if not isinstance(node, MappingNode):
            return Settled(node, None)
        fields = schema(cls)
        if any(one.key.text not in fields for one in node.entries):
            slot = None  # a key that nobody understood is kept as it stands
        found = {
            one.key.text: self.value(fields[one.key.text].type, one.value, Slot(cls, one.key.text))
            for one in node.entries
            if one.key.text in fields
        }
        short = self._shortened(cls, node, found) if slot else None
        if slot and short and slot.reads_alike(self._with(node, found), short.node):
            return self._change(node, short.node, short.text) or self._kept(node, found)
        return self._kept(node, found)

    def _short(self, cls: type[Record], node: Scalar) -> Settled:
        """A record in its short form: settled as the one key for which the text stands."""
        if cls.from_text(node.text) != {cls.SHORT: node.text}:
            return self._as_written(node)
        return self.value(schema(cls)[cls.SHORT].type, node, Slot(cls, cls.SHORT))

    def _with(self, node: MappingNode, found: dict[str, Settled]) -> MappingNode:
        pairs = ((one, found.get(one.key.text)) for one in node.entries)
        entries = (Entry(one.key, to.node if to else one.value) for one, to in pairs)
        return MappingNode(tuple(entries), node.span)

    def _kept(self, node: MappingNode, found: dict[str, Settled]) -> Settled:
        changes = tuple(change for one in found.values() for change in one.changes)
        return Settled(self._with(node, found), None, changes)

    def _shortened(
        self, cls: type[Record], node: MappingNode, found: dict[str, Settled]
    ) -> Settled | None:
        """The short form of a group of keys, before it is known to read back alike."""
        only = found.get(cls.SHORT) if len(found) == 1 else None
        if only and only.text and isinstance(only.node, Scalar):
            return Settled(Scalar(only.node.text, node.span, only.node.plain), only.text)
        said = {key: _said(one) for key, one in found.items()}
        texts = {key: one for key, one in said.items() if one}
        text = joined(cls, texts) if len(texts) == len(said) else None
        return Settled(Scalar(text, node.span, plain=True), _quoted(text)) if text else None

    def value(self, hint: Any, node: Node, slot: Slot, words: str = "") -> Settled:
        """A value of any type of the schema."""
        origin, args = typing.get_origin(hint), typing.get_args(hint)
        if origin is typing.Annotated:
            mark = next((one.kind for one in args[1:] if isinstance(one, Words)), "")
            return self.value(args[0], node, slot, mark)
        if origin in (typing.Union, types.UnionType):
            return self._union(args, node, slot)
        if origin is tuple:
            return self._many(args[0], node, slot)
        if origin is not None:
            return self._table(args, node, slot)
        if issubclass(hint, Record):
            return self.record(hint, node, slot)
        return self._one(hint, node, words)

    def _union(self, args: tuple[Any, ...], node: Node, slot: Slot) -> Settled:
        if Gap in args and isinstance(node, Scalar):
            if gap_from(node.text):
                return self._as_written(node)
            if node.plain and slot.key not in PROSE and (gap := _gap(node.text)):
                return self._renamed(node, gap)
        rest = [one for one in args if one not in (Gap, types.NoneType)]
        return self.value(rest[0], node, slot) if len(rest) == 1 else self._as_written(node)

    def _many(self, hint: Any, node: Node, slot: Slot) -> Settled:
        """A list: a written-out one of a single text becomes that text."""
        if not isinstance(node, SequenceNode):
            return self.value(hint, node, slot)
        inside = slot.within(lambda one: SequenceNode((one,), one.span))
        found = [self.value(hint, one, inside) for one in node.items]
        whole = SequenceNode(tuple(one.node for one in found), node.span)
        if len(found) == 1 and found[0].text and self.written.slice(node).startswith("["):
            (only,) = found
            if slot.reads_alike(whole, only.node) and (
                short := self._change(node, only.node, only.text)
            ):
                return short
        return Settled(whole, None, tuple(change for one in found for change in one.changes))

    def _table(self, args: tuple[Any, ...], node: Node, slot: Slot) -> Settled:
        """Names with values; the names may be words of the vocabulary."""
        if not isinstance(node, MappingNode):
            return Settled(node, None)
        taken = {one.key.text for one in node.entries}
        pairs = []
        for one in node.entries:
            key = self.value(args[0], one.key, slot)
            if isinstance(key.node, Scalar) and key.changes and key.node.text in taken:
                key = Settled(one.key, None)
            pairs.append((key, self.value(args[1], one.value, slot.within(_under(one.key)))))
        entries = tuple(
            Entry(key.node, one.node) for key, one in pairs if isinstance(key.node, Scalar)
        )
        changes = tuple(change for pair in pairs for one in pair for change in one.changes)
        return Settled(MappingNode(entries, node.span), None, changes)

    def _one(self, hint: type, node: Node, words: str) -> Settled:
        """A single text: an answer, a choice, a word of the vocabulary, or anything else."""
        if not isinstance(node, Scalar):
            return Settled(node, None)
        text = node.text.strip()
        if issubclass(hint, StrEnum):
            return self._renamed(node, _choice(hint, text))
        if hint is bool:
            answer = YES_NO.get(text.lower())
            return self._renamed(node, None if answer is None else "yes" if answer else "no")
        return self._renamed(node, self._word(words, text) if words else None)

    def _word(self, kind: str, word: str) -> str | None:
        """The id of a term written in another spelling of its id or label; not its synonyms.

        A synonym may say more than its term (`gouache`, `nitrile gloves`): it is kept.
        """
        found = self.lexicon.resolve(kind, word)
        if found is None or self.lexicon.resolve(kind, found[1]) != found:
            return None
        term = self.lexicon.terms[found[0]][found[1]]
        names = (found[1], term.label, *(known(term.was) or ()))
        return found[1] if fold(word) in map(fold, names) else None

    def _renamed(self, node: Scalar, text: str | None) -> Settled:
        """A text that is to be another; one over several lines is left."""
        if text is None or text == node.text or node.span.line != node.span.end_line:
            return self._as_written(node)
        start, end = self.written.offsets(node)
        new, written = Scalar(text, node.span, plain=True), _quoted(text)
        return Settled(new, written, (Change(start, end, written, node.span, node, new),))

    def _as_written(self, node: Node) -> Settled:
        """A node left as it is; a text on one line may be moved as it stands."""
        movable = isinstance(node, Scalar) and node.text and node.span.line == node.span.end_line
        return Settled(node, self.written.slice(node) if movable else None)

    def _change(self, old: Node, new: Node, text: str | None) -> Settled | None:
        """A whole node in one text; None where a comment stands in the way."""
        found = self._region(old)
        if text is None or found is None or "#" in self.written.bare[slice(*found)]:
            return None
        start, end = found
        put = f" {text}" if start < self.written.offsets(old)[0] else text
        return Settled(new, text, (Change(start, end, put, old.span, old, new),))

    def _region(self, node: Node) -> tuple[int, int] | None:
        """What a text takes the place of: all behind the key where the value is on later lines."""
        start, end = self.written.offsets(node)
        before = self.written.bare[:start]
        gap = before[len(before.rstrip()) :]
        if "\n" not in gap and "\r" not in gap:
            return start, end
        above = before.rstrip()
        last_line = re.split("[\r\n]", above)[-1]
        return (len(above), end) if above.endswith(":") and "#" not in last_line else None


def trailing(written: Written) -> list[Change]:
    """White space at the ends of lines among the keys, outside texts that run over lines."""
    found = _TRAILING.finditer(written.bare, written.top, written.bottom)
    spans = (match.span() for match in found if not written.in_block(match.start()))
    return [Change(start, end, "", written.span(start, end)) for start, end in spans]


def _under(key: Scalar) -> Callable[[Node], Node]:
    return lambda node: MappingNode((Entry(key, node),), node.span)


def _choice(options: type[StrEnum], word: str) -> str | None:
    """The settled value of a choice that the reader takes in other spellings too."""
    folded = {word.lower(), word.lower().replace(" ", "-")}
    return next((one.value for one in options if one.value in folded), None)


def _gap(text: str) -> str | None:
    """A way of not knowing that was written with capitals, as it is read."""
    found = _GAP.fullmatch(text.strip())
    return found[1].lower() + found[2] if found else None


def _said(one: Settled) -> Said | None:
    """What a settled value says, if that is a text or a list of texts, each on one line."""
    if isinstance(one.node, Scalar):
        return one.node.text if one.text else None
    items = one.node.items if isinstance(one.node, SequenceNode) else ()
    texts = [item.text for item in items if isinstance(item, Scalar)]
    return texts if texts and len(texts) == len(items) else None


def _quoted(text: str) -> str:
    """A text as YAML takes it, bare where that is safe in any place."""
    if _SAFE.fullmatch(text) and not text.endswith(" "):
        return text
    if '"' in text or "\\" in text:
        return "'" + text.replace("'", "''") + "'"
    return f'"{text}"'
