"""From YAML text to nodes with places, every refusal noted; the only module that runs PyYAML."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field

import yaml

from casebook.diagnostics import Diagnostic
from casebook.source.faults import MAX_DEPTH, explain, too_deep
from casebook.source.nodes import Mapping, Node, Scalar, Sequence
from casebook.source.text import Source, error
from casebook.source.traps import (
    Pair,
    Placed,
    entries_of,
    lost_to_hash,
    question_before_brace,
    tabs,
)

LOADER: type[yaml.SafeLoader | yaml.CSafeLoader] = getattr(yaml, "CSafeLoader", yaml.SafeLoader)

_WORD = re.compile(r"[^\s,\]}]+")
_Collection = yaml.MappingStartEvent | yaml.SequenceStartEvent
_COLLECTION_START = (yaml.MappingStartEvent, yaml.SequenceStartEvent)
_COLLECTION_END = (yaml.MappingEndEvent, yaml.SequenceEndEvent)


@dataclass(slots=True)
class Frame:
    """A list or group of keys that is still open."""

    is_mapping: bool
    flow: bool
    start: int
    items: list[Placed] = field(default_factory=list)
    pairs: list[Pair] = field(default_factory=list)
    key: Placed | None = None

    def add(self, placed: Placed) -> None:
        """Take in the next node; in a group of keys, key and value by turns."""
        if not self.is_mapping:
            self.items.append(placed)
        elif self.key is None:
            self.key = placed
        else:
            self.pairs.append(Pair(self.key, placed))
            self.key = None

    def end(self) -> int:
        """Where the last thing in it ends; the parser puts a block's end on the next key."""
        if self.is_mapping:
            return self.pairs[-1].value.end if self.pairs else self.start
        return self.items[-1].end if self.items else self.start


def _offsets(event: yaml.Event) -> tuple[int, int]:
    """Where an event begins and ends; every event of the parser has both marks."""
    start, end = event.start_mark, event.end_mark
    assert start is not None and end is not None
    return start.index, end.index


def _on_one_line(one: Diagnostic, other: Diagnostic) -> bool:
    return one.span is not None and other.span is not None and one.span.line == other.span.line


class _TooDeepError(Exception):
    """Raised to leave the parser; the fault has been kept."""


class Composer:
    """Builds the tree of one text from the parser's events, without recursion."""

    def __init__(self, source: Source) -> None:
        self.source = source
        self.faults: list[Diagnostic] = []
        self.failure: Diagnostic | None = None
        self.root: Node | None = None
        self._open: list[Frame] = []
        self._texts: list[tuple[int, int]] = []
        self._compose()

    def _compose(self) -> None:
        try:
            for event in self._events():
                self._take(event)
        except yaml.YAMLError as trouble:
            self.failure = self._failure(trouble)
        except _TooDeepError:
            return
        else:
            self.faults += tabs(self.source, self._texts)

    def _failure(self, trouble: yaml.YAMLError) -> Diagnostic:
        """The fault that ended the reading; prose taken for an alias or tag is told as that."""
        opened = [frame.start for frame in self._open if frame.flow]
        found = explain(trouble, self.source, opened[-1] if opened else None)
        before = self.faults[-1] if self.faults else None
        if before and before.rule in ("alias", "tag") and _on_one_line(before, found):
            return self.faults.pop()
        return found

    def _events(self) -> Iterator[yaml.Event]:
        """The events of the first document; a second one is told and not read."""
        documents = 0
        for event in yaml.parse(self.source.text, Loader=LOADER):
            if isinstance(event, yaml.DocumentStartEvent):
                documents += 1
            if documents > 1:
                self.faults.append(self._second_document(event))
                return
            yield event

    def _second_document(self, event: yaml.Event) -> Diagnostic:
        start, _ = _offsets(event)
        message = "a second document begins here; one file holds one"
        hint = "delete the line `---`, or put what follows into a file of its own"
        return error("several-documents", self.source.span(start, start + 3), message, hint)

    def _take(self, event: yaml.Event) -> None:
        if isinstance(event, yaml.ScalarEvent):
            self._scalar(event)
        elif isinstance(event, _COLLECTION_START):
            self._begin(event)
        elif isinstance(event, _COLLECTION_END):
            self._finish(event)
        elif isinstance(event, yaml.AliasEvent):
            self._alias(event)

    def _add(self, node: Node, start: int, end: int) -> None:
        if self._open:
            self._open[-1].add(Placed(node, start, end))
        else:
            self.root = node

    def _scalar(self, event: yaml.ScalarEvent) -> None:
        start, end = _offsets(event)
        plain = not event.style
        if start == end:
            start = end = self._after_colon(start)
        elif event.style in ("|", ">"):
            end = start + len(self.source.text[start:end].rstrip())
        if not plain:
            self._texts.append((start, end))
        self._refuse_marks(event)
        self._tell_traps(event)
        self._add(Scalar(event.value, self.source.span(start, end), plain), start, end)

    def _after_colon(self, index: int) -> int:
        """The place of an empty value: the parser gives the end of its key."""
        return index + 1 if self.source.text[index : index + 1] == ":" else index

    def _tell_traps(self, event: yaml.ScalarEvent) -> None:
        if event.style:
            return
        _, end = _offsets(event)
        inside = bool(self._open) and self._open[-1].flow and self._open[-1].key is not None
        found = lost_to_hash(self.source, end)
        asked = question_before_brace(self.source, end) if inside else None
        self.faults += [fault for fault in (found, asked) if fault]

    def _refuse_marks(self, event: yaml.NodeEvent) -> None:
        start, _ = _offsets(event)
        tag = getattr(event, "tag", None)
        if event.anchor is not None:
            self._refuse("alias", start, f"the anchor `&{event.anchor}` is not read")
        if tag is not None:
            self._refuse("tag", start, "a text that begins with `!` is a tag, which is not read")

    def _refuse(self, rule: str, start: int, message: str) -> None:
        word = _WORD.match(self.source.text, start)
        span = self.source.span(start, word.end() if word else start)
        self.faults.append(error(rule, span, message, "if it is text, put it in quotes"))

    def _alias(self, event: yaml.AliasEvent) -> None:
        start, end = _offsets(event)
        self._refuse("alias", start, f"the alias `*{event.anchor}` is not read")
        self._add(Scalar(f"*{event.anchor}", self.source.span(start, end), plain=True), start, end)

    def _begin(self, event: _Collection) -> None:
        start, _ = _offsets(event)
        if len(self._open) >= MAX_DEPTH:
            self.failure = too_deep(self.source, start)
            raise _TooDeepError
        self._refuse_marks(event)
        is_mapping = isinstance(event, yaml.MappingStartEvent)
        self._open.append(Frame(is_mapping, bool(event.flow_style), start))

    def _finish(self, event: yaml.Event) -> None:
        frame = self._open.pop()
        end = _offsets(event)[1] if frame.flow else frame.end()
        span = self.source.span(frame.start, end)
        if frame.is_mapping:
            entries = entries_of(self.source, frame.pairs, self.faults, flow=frame.flow)
            self._add(Mapping(entries, span), frame.start, end)
        else:
            self._add(Sequence(tuple(item.node for item in frame.items), span), frame.start, end)

    def top(self) -> Frame | None:
        """The outermost group of keys of a text that broke off; None if there is none to save."""
        if not self._open:
            return None if self.root else Frame(is_mapping=True, flow=False, start=0)
        return self._open[0] if self._open[0].is_mapping and not self._open[0].flow else None
