"""Reads a record of any type from a line of text, and looks at what every module of it must have."""

from __future__ import annotations

import ast
import inspect
from collections.abc import Iterator
from types import ModuleType
from typing import TypeVar

from casebook.model.base import Record, schema
from casebook.reading import read
from casebook.source import parse

R = TypeVar("R", bound=Record)

TAKEN_FOR_TRUTH = {"on", "off", "yes", "no", "y", "n"}
"""Words that YAML 1.1 takes for true or false."""


def reads(cls: type[R], text: str) -> R:
    """The record that a text says, against which the reader has nothing to say."""
    parsed = parse(text, "case.md")
    assert parsed.node is not None
    value, faults = read(cls, parsed.node, "test")
    assert (parsed.diagnostics, faults) == ((), ())
    return value


def records(module: ModuleType) -> list[type[Record]]:
    """The record types that a module declares."""
    found = (one for one in vars(module).values() if inspect.isclass(one))
    return [one for one in found if issubclass(one, Record) and one.__module__ == module.__name__]


def undocumented(module: ModuleType) -> list[str]:
    """The fields of record types without a docstring under them."""
    tree = ast.parse(inspect.getsource(module))
    names = {one.__name__ for one in records(module)} - {"Record"}
    classes = [one for one in tree.body if isinstance(one, ast.ClassDef) and one.name in names]
    return [f"{one.name}.{name}" for one in classes for name in _bare(one.body)]


def _bare(body: list[ast.stmt]) -> Iterator[str]:
    for one, below in zip(body, [*body[1:], ast.Pass()], strict=True):
        if isinstance(one, ast.AnnAssign) and "ClassVar" not in ast.unparse(one.annotation):
            said = isinstance(below, ast.Expr) and isinstance(below.value, ast.Constant)
            if not (said and ast.unparse(below).strip("\"' ")):
                yield ast.unparse(one.target)


def dangerous_keys(module: ModuleType) -> list[tuple[str, str]]:
    """The keys that a common YAML reader would take for true or false, by record type."""
    return [
        (one.__name__, key)
        for one in records(module)
        for key in schema(one)
        if key in TAKEN_FOR_TRUTH
    ]


def holds(module: ModuleType) -> None:
    """What holds for every module of the schema: documented fields, no key that is a trap."""
    assert records(module)
    assert undocumented(module) == []
    assert dangerous_keys(module) == []
