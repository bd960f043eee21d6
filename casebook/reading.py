"""From nodes to any type of the schema, by its fields alone; faults are values beside the data."""

from __future__ import annotations

import difflib
import types
import typing
from collections.abc import Callable, Mapping
from enum import StrEnum
from typing import Any, TypeVar

from casebook.diagnostics import Diagnostic, Severity, Span
from casebook.model.base import FieldInfo, Gap, Record, Unknowing, remembered, schema
from casebook.source import Entry, Node, Scalar, Sequence
from casebook.source import Mapping as MappingNode
from casebook.values.fault import NotUnderstood

R = TypeVar("R", bound=Record)
Read = Callable[[Node, "Reader"], Any]

YES_NO = {"yes": True, "true": True, "no": False, "false": False}
ANSWERS = {
    "on": "did you mean `onto` or `date`?",
    "glue": "did you mean `adhesive`?",
    "op": "did you mean `do`?",
    "operation": "did you mean `do`?",
    "duration": "did you mean `time`?",
    "hours": "did you mean `time`?",
    "who": "did you mean `hands`?",
    "images": "did you mean `photos`?",
    "pictures": "did you mean `photos`?",
}


class _Failed(Exception):
    """A value could not be read; its diagnostic has been noted."""


class Reader:
    """Collects the faults of one case while its nodes are read."""

    def __init__(self, case: str) -> None:
        self.case = case
        self.faults: list[Diagnostic] = []

    def note(
        self,
        rule: str,
        span: Span,
        message: str,
        hint: str = "",
        severity: Severity = Severity.ERROR,
    ) -> None:
        """Keep a fault."""
        self.faults.append(Diagnostic(rule, severity, message, span, hint, self.case))

    def fail(self, rule: str, span: Span, message: str, hint: str = "") -> typing.NoReturn:
        """Keep a fault and give up on this value."""
        self.note(rule, span, message, hint)
        raise _Failed


def read(cls: type[R], node: Node, case: str) -> tuple[R, tuple[Diagnostic, ...]]:
    """Read a record of any type from its node, with every fault met on the way.

    The record is always there: a field that could not be read is empty, its place kept.
    """
    reader = Reader(case)
    try:
        value = _record(cls)(node, reader)
    except _Failed:
        value = cls(places={"": node.span})
    return value, tuple(reader.faults)


@remembered
def _reader_of(hint: Any) -> Read:
    """How to read a value of a type, from its annotation."""
    origin = typing.get_origin(hint)
    if origin is typing.Annotated:
        return _reader_of(typing.get_args(hint)[0])
    if origin in (typing.Union, types.UnionType):
        return _union(typing.get_args(hint))
    if origin is tuple:
        return _many(_reader_of(typing.get_args(hint)[0]))
    if origin is not None:
        return _table(_reader_of(typing.get_args(hint)[1]))
    return _single(hint)


def _single(hint: type) -> Read:
    """How to read a value of a plain type."""
    if issubclass(hint, Record):
        return _record(hint)
    if issubclass(hint, StrEnum):
        return _choice(hint)
    if hint is bool:
        return _yes_no
    if hint is str:
        return _text
    return _value(hint)


def _union(args: tuple[Any, ...]) -> Read:
    rest = [arg for arg in args if arg is not types.NoneType and arg is not Gap]
    readers = [_reader_of(arg) for arg in rest]
    inner = readers[0] if len(readers) == 1 else _first_that_reads(readers)
    return _or_gap(inner) if Gap in args else inner


def _first_that_reads(readers: list[Read]) -> Read:
    def read_either(node: Node, reader: Reader) -> Any:
        for one in readers[:-1]:
            aside = Reader(reader.case)
            try:
                return one(node, aside)
            except _Failed:
                continue
        return readers[-1](node, reader)

    return read_either


def gap_from(text: str) -> Gap | None:
    """A way of not knowing, such as `not recorded (page lost)`; None if the text is none."""
    words, bracket, reason = text.partition("(")
    if bracket and not reason.rstrip().endswith(")"):
        return None
    kind = next((one for one in Unknowing if one.value == words.strip()), None)
    return Gap(kind, reason.strip().removesuffix(")").strip()) if kind else None


def _or_gap(inner: Read) -> Read:
    def read_or_gap(node: Node, reader: Reader) -> Any:
        if isinstance(node, Scalar) and (gap := gap_from(node.text)):
            return gap
        return inner(node, reader)

    return read_or_gap


def _many(inner: Read) -> Read:
    def read_many(node: Node, reader: Reader) -> tuple[Any, ...]:
        nodes = node.items if isinstance(node, Sequence) else (node,)
        return tuple(_read_each(inner, nodes, reader))

    return read_many


def _read_each(inner: Read, nodes: tuple[Node, ...], reader: Reader) -> list[Any]:
    found = []
    for one in nodes:
        try:
            found.append(inner(one, reader))
        except _Failed:
            continue
    return found


def _table(inner: Read) -> Read:
    def read_table(node: Node, reader: Reader) -> Mapping[str, Any]:
        if not isinstance(node, MappingNode):
            reader.fail("wrong-shape", node.span, "here stand names, each with a value", _SHAPE)
        found = {}
        for entry in node.entries:
            try:
                found[entry.key.text] = inner(entry.value, reader)
            except _Failed:
                continue
        return types.MappingProxyType(found)

    return read_table


_SHAPE = "write it as `name: value` lines, or as `{name: value, name: value}`"


def _scalar(node: Node, reader: Reader) -> Scalar:
    if isinstance(node, Scalar):
        return node
    what = "a list" if isinstance(node, Sequence) else "a group of keys"
    reader.fail("wrong-shape", node.span, f"one value is expected here, not {what}")


def _text(node: Node, reader: Reader) -> str:
    return _scalar(node, reader).text.strip()


def _yes_no(node: Node, reader: Reader) -> bool:
    scalar = _scalar(node, reader)
    answer = YES_NO.get(scalar.text.strip().lower())
    if answer is None:
        reader.fail("not-understood", scalar.span, f"`{_cut(scalar.text)}` is not yes or no")
    return answer


def _choice(options: type[StrEnum]) -> Read:
    def read_choice(node: Node, reader: Reader) -> StrEnum:
        scalar = _scalar(node, reader)
        word = scalar.text.strip()
        for one in options:
            if one.value == word.lower().replace(" ", "-") or one.value == word.lower():
                return one
        names = [one.value for one in options]
        message = f"`{_cut(word)}` is not one of {_listed(names)}"
        reader.fail("unknown-choice", scalar.span, message, did_you_mean(word, names))

    return read_choice


def _value(cls: Any) -> Read:
    def read_value(node: Node, reader: Reader) -> Any:
        scalar = _scalar(node, reader)
        try:
            return cls.parse(scalar.text)
        except NotUnderstood as fault:
            span = scalar.at(fault.start, fault.end)
            reader.fail("not-understood", span, fault.message, fault.hint)

    return read_value


@remembered
def _record(cls: type[Record]) -> Read:
    def read_record(node: Node, reader: Reader) -> Record:
        if isinstance(node, MappingNode):
            return _from_mapping(cls, node, reader)
        if isinstance(node, Scalar) and (keys := cls.from_text(node.text)):
            return _from_text(cls, node, keys, reader)
        what = "a list" if isinstance(node, Sequence) else "plain text"
        keys_here = _listed(list(schema(cls))[:6])
        hint = f"keys such as {keys_here} stand here"
        reader.fail("wrong-shape", node.span, f"a group of keys is expected, not {what}", hint)

    return read_record


def _from_text(
    cls: type[Record], node: Scalar, keys: Mapping[str, str | list[str]], reader: Reader
) -> Record:
    """Read the keys that a short form stands for, each at its own place in the text."""
    entries = tuple(Entry(_part(node, key), _inside(node, keys[key])) for key in keys)
    return _from_mapping(cls, MappingNode(entries, node.span), reader)


def _inside(node: Scalar, text: str | list[str]) -> Node:
    if isinstance(text, list):
        return Sequence(tuple(_inside(node, one) for one in text), node.span)
    start = node.text.find(text)
    span = node.at(start, start + len(text)) if start >= 0 and text else node.span
    return Scalar(text, span, node.plain)


def _part(node: Scalar, key: str) -> Scalar:
    return Scalar(key, node.span, True)


def _from_mapping(cls: type[Record], node: MappingNode, reader: Reader) -> Record:
    known_keys = schema(cls)
    values: dict[str, Any] = {}
    places: dict[str, Span] = {"": _head(node)}
    unknown: dict[str, str] = {}
    for entry in node.entries:
        key = entry.key.text
        places[key] = entry.value.span if isinstance(entry.value, Scalar) else entry.key.span
        info = known_keys.get(key)
        if info is None:
            unknown[key] = outline(entry.value)
            _tell_unknown(cls, entry, reader)
        else:
            _read_field(info, entry, values, reader)
    return cls(places=places, unknown=unknown, **values)


def _head(node: MappingNode) -> Span:
    """The place of a whole record: its first key, since the rest may run over many lines."""
    return node.entries[0].key.span if node.entries else node.span


def _read_field(info: FieldInfo, entry: Entry, values: dict[str, Any], reader: Reader) -> None:
    if isinstance(entry.value, Scalar) and not entry.value.text and entry.value.plain:
        message = f"`{info.key}` has nothing behind it"
        hint = "leave the key out, or say `not recorded`, `unknown` or `none`"
        reader.note("empty-key", entry.key.span, message, hint, Severity.WARNING)
        return
    try:
        values[info.name] = _reader_of(info.type)(entry.value, reader)
    except _Failed:
        return


def _tell_unknown(cls: type[Record], entry: Entry, reader: Reader) -> None:
    key = entry.key.text
    hint = ANSWERS.get(key) or did_you_mean(key, list(schema(cls)))
    kind = cls.__name__.lower()
    message = f"`{_cut(key)}` is not a key of a {kind}; it is kept, but nothing reads it"
    reader.note("unknown-key", entry.key.span, message, hint, Severity.WARNING)


def did_you_mean(word: str, options: list[str]) -> str:
    """A hint naming the closest options, or "" if none is close."""
    close = difflib.get_close_matches(word.lower(), options, n=2, cutoff=0.7)
    return f"did you mean {' or '.join(f'`{one}`' for one in close)}?" if close else ""


def outline(node: Node) -> str:
    """A node's text on one line, so that what nobody understood is still kept."""
    if isinstance(node, Scalar):
        return node.text
    if isinstance(node, Sequence):
        return "[" + ", ".join(outline(one) for one in node.items) + "]"
    pairs = (f"{entry.key.text}: {outline(entry.value)}" for entry in node.entries)
    return "{" + ", ".join(pairs) + "}"


def _listed(names: list[str]) -> str:
    return ", ".join(f"`{name}`" for name in names)


def _cut(text: str) -> str:
    return text if len(text) <= 60 else text[:57] + "…"
