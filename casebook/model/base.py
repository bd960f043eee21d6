"""What every record shares: who may see a field, where it stands, and what was not known."""

from __future__ import annotations

import functools
import typing
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field, fields
from enum import StrEnum
from types import MappingProxyType
from typing import Annotated, Any, ClassVar, TypeVar, Union, cast, dataclass_transform

from casebook.diagnostics import Span

T = TypeVar("T")

F = TypeVar("F", bound=Callable[..., Any])


def remembered(function: F) -> F:
    """`functools.cache` under the function's own type: a record type may be an argument."""
    return cast(F, functools.cache(function))


NOTHING: Mapping[str, Any] = MappingProxyType({})


class Audience(StrEnum):
    """Whom a built site is for; on a case, an item or a field, the widest that may see it."""

    LAB = "lab"
    CLIENT = "client"
    PUBLIC = "public"

    @property
    def reach(self) -> int:
        """How wide: 0 lab, 1 client, 2 public. A thing is seen by audiences no wider than it."""
        return _REACH[self.value]

    def may_see(self, widest: Audience) -> bool:
        """Whether this audience sees what is marked `widest`."""
        return self.reach <= widest.reach


_REACH = {"lab": 0, "client": 1, "public": 2}


class Unknowing(StrEnum):
    """The ways of not knowing, each with its own effect on rules and sums."""

    NOT_RECORDED = "not recorded"
    NOT_READ = "not read"
    UNKNOWN = "unknown"
    NONE = "none"
    UNNAMED = "unnamed"


@dataclass(frozen=True, slots=True)
class Gap:
    """A field that says how it is not known, with a reason if one was given in brackets."""

    kind: Unknowing
    reason: str = ""

    def __str__(self) -> str:
        return f"{self.kind.value} ({self.reason})" if self.reason else self.kind.value


Maybe = Union[T, Gap, None]  # noqa: UP007  mypy takes a bare variable first for a value
"""A value, a way of not knowing it, or None where the key was left out."""

Many = Union[tuple[T, ...], Gap]  # noqa: UP007
"""A list, or a way of not knowing it; a single item may be written without its list."""


def known(value: T | Gap | None) -> T | None:
    """The value itself, or None where it is not known in whichever way."""
    return None if isinstance(value, Gap) else value


def items(many: tuple[T, ...] | Gap) -> tuple[T, ...]:
    """The items of a list, none where the list is not known."""
    return () if isinstance(many, Gap) else many


@dataclass(frozen=True, slots=True)
class Words:
    """Marks a field as holding words of one vocabulary, such as `materials` or `parts`."""

    kind: str


@dataclass(frozen=True, slots=True)
class Points:
    """Marks a field as pointing at a `case`, `photo`, `test`, `layer`, `person` or `place`.

    A `place` is a part or a layer, such as `spine`, `board 1`, `sheet/verso` or `cloth-lining`.
    """

    kind: str


CaseRef = Annotated[str, Points("case")]


def public(default: Any = None, *, structural: bool = False) -> Any:
    """A field that everyone may see, where the case itself may be seen."""
    return _field(Audience.PUBLIC, default, structural)


def client(default: Any = None, *, structural: bool = False) -> Any:
    """A field that the lab and the object's own client may see."""
    return _field(Audience.CLIENT, default, structural)


def lab(default: Any = None, *, structural: bool = False) -> Any:
    """A field that only the lab sees: the default for anything new."""
    return _field(Audience.LAB, default, structural)


def _field(seen: Audience, default: Any, structural: bool) -> Any:
    metadata = {"seen": seen, "structural": structural}
    if isinstance(default, dict):
        return field(default_factory=lambda: NOTHING, metadata=metadata)
    return field(default=default, metadata=metadata)


@dataclass_transform(frozen_default=True, kw_only_default=True)
def record(cls: type[T]) -> type[T]:
    """Make a class of the schema: frozen, slotted, its fields given by name only."""
    return dataclass(frozen=True, slots=True, kw_only=True)(cls)


@record
class Record:
    """What every record keeps besides its own fields: its place, and what was not understood.

    `SHORT` names the field that a plain text stands for, where the record may be written as one;
    a type with a richer short form overrides `from_text`.

    `places` gives the span of each key by its name in the file, "" for the record itself. A key
    that was there but could not be read keeps its place while the field stays empty. `unknown`
    holds keys that the schema has no field for, as their text in the file. Neither is compared,
    and redaction drops both.
    """

    SHORT: ClassVar[str] = ""

    places: Mapping[str, Span] = field(
        default_factory=lambda: NOTHING, compare=False, repr=False, metadata={"own": True}
    )
    unknown: Mapping[str, str] = field(
        default_factory=lambda: NOTHING, compare=False, repr=False, metadata={"own": True}
    )

    @classmethod
    def from_text(cls, text: str) -> Mapping[str, str | list[str]]:
        """The keys that a plain text stands for; empty where the type has no short form."""
        return {cls.SHORT: text} if cls.SHORT else {}

    def span(self, key: str = "") -> Span | None:
        """The place of a key, or of the record where the key has none."""
        return self.places.get(key) or self.places.get("")

    def tells(self, name: str) -> bool:
        """Whether the record has anything under a field: a value, a gap, or an unread key."""
        value = getattr(self, name)
        return value not in (None, (), "", NOTHING) or key_of(name) in self.places


@dataclass(frozen=True, slots=True)
class FieldInfo:
    """One field of the schema: its name here, its key in the file, its type, who may see it."""

    name: str
    key: str
    type: Any
    seen: Audience
    structural: bool
    words: str
    """The vocabulary whose words stand here, or ""."""
    points: str
    """What the references here point at, or ""."""


def key_of(name: str) -> str:
    """The key in a file for a field's name: `as_found` is `as-found`, `is_` is `is`."""
    return name.rstrip("_").replace("_", "-")


@remembered
def schema(cls: type[Record]) -> Mapping[str, FieldInfo]:
    """The fields of a record type by their keys, in the order they are declared."""
    hints = typing.get_type_hints(cls, include_extras=True)
    found = (_info(one, hints[one.name]) for one in fields(cls) if "own" not in one.metadata)
    return MappingProxyType({info.key: info for info in found})


def _info(one: Any, hint: Any) -> FieldInfo:
    return FieldInfo(
        name=one.name,
        key=key_of(one.name),
        type=hint,
        seen=one.metadata.get("seen", Audience.LAB),
        structural=one.metadata.get("structural", False),
        words=_mark_in(hint, Words),
        points=_mark_in(hint, Points),
    )


def _mark_in(hint: Any, mark: type[Words] | type[Points]) -> str:
    """The kind named by a mark anywhere inside an annotation that is not a record's own."""
    for one in getattr(hint, "__metadata__", ()):
        if isinstance(one, mark):
            return one.kind
    return next((kind for arg in typing.get_args(hint) if (kind := _mark_in(arg, mark))), "")


def _may_hold(hint: Any) -> bool:
    """Whether a record may stand in a value of this type, at any depth."""
    if isinstance(hint, type) and issubclass(hint, Record):
        return True
    return any(_may_hold(one) for one in typing.get_args(hint))


@remembered
def holding(cls: type[Record]) -> tuple[str, ...]:
    """The names of a record type's fields in which other records may stand, in their order."""
    return tuple(info.name for info in schema(cls).values() if _may_hold(info.type))


def children(value: object) -> Iterator[Record]:
    """The records directly inside a value: itself a record, a list or a table."""
    if isinstance(value, Record):
        yield value
    elif isinstance(value, (tuple, Mapping)):
        for one in value.values() if isinstance(value, Mapping) else value:
            yield from children(one)


def walk(top: Record) -> Iterator[Record]:
    """A record and every record inside it, outermost first, in the order of the schema."""
    yield top
    for name in holding(type(top)):
        value = getattr(top, name)
        if value:
            for child in children(value):
                yield from walk(child)
