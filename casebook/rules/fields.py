"""The fields that rules declare to read, looked up in the schema by names such as `Written.by`."""

from __future__ import annotations

import functools
import typing
from collections.abc import Iterator, Mapping

from casebook.model.archive import Case
from casebook.model.base import FieldInfo, Record, schema
from casebook.model.settings import Settings
from casebook.model.treatment import Recipe


def record_types(hint: object) -> Iterator[type[Record]]:
    """The record types that stand anywhere in an annotation."""
    if isinstance(hint, type) and issubclass(hint, Record):
        yield hint
    for arg in typing.get_args(hint):
        yield from record_types(arg)


@functools.cache
def records() -> Mapping[str, type[Record]]:
    """Every record type of an archive's files by its name, in the order in which they are met."""
    found: dict[str, type[Record]] = {}
    waiting: list[type[Record]] = [Case, Settings, Recipe]
    while waiting:
        cls = waiting.pop(0)
        if cls.__name__ not in found:
            found[cls.__name__] = cls
            hints = [info.type for info in schema(cls).values()]
            waiting.extend(one for hint in hints for one in record_types(hint))
    return found


@functools.cache
def field(name: str) -> FieldInfo:
    """The field of a name such as `Written.by` or `Case.as_found`; KeyError if there is none."""
    record, _, attribute = name.partition(".")
    return {info.name: info for info in schema(records()[record]).values()}[attribute]
