"""Fields for readers: what each means, its unit and source, and who may see it."""

from __future__ import annotations

import ast
import functools
import inspect
import re
import sys
import types
import typing
from collections.abc import Iterator, Mapping
from enum import StrEnum

from casebook.model.base import Audience, FieldInfo, Gap, Record, schema
from casebook.model.vocabulary import Identifier, Release, Term
from casebook.reference.examples import example
from casebook.rules.fields import record_types, records

_SEEN = {
    Audience.PUBLIC: "everyone",
    Audience.CLIENT: "lab and client",
    Audience.LAB: "the lab alone",
}
_PARTS = re.compile(r"(?P<text>.*?)(?: ?Unit: (?P<unit>.*?)\.)?(?: ?Source: (?P<source>.*))?")
_HEAD = """\
# Fields

<!-- Made from the code by casebook.reference.fields_page; a test holds it to that. -->

Every key that a record can hold: of a case (`case.md`, `episodes/`), of the lab (`lab.yml`:
settings), of its recipes and words (`vocabulary/`: recipe, term). [Writing a
case](../writing-a-case.md) shows how they go together.

*Seen by* is the widest audience: a case or an item may narrow it, never widen it. The *example*
is what may stand behind the key; all are invented. A unit of *length* is mm, cm, m, in or ft, of
*duration* min, h, days or nights. Where a value is not known, most keys take `not recorded`, `not
read`, `unknown`, `none` or `unnamed`, with a reason in brackets if wished: `not recorded (page
lost)`. A single item may stand without its list.
"""


@functools.cache
def described() -> Mapping[str, type[Record]]:
    """Every record type of the files by its name: of the archive's, and of its vocabulary."""
    return {**records(), **{cls.__name__: cls for cls in (Term, Identifier, Release)}}


@functools.cache
def meaning(record: str, name: str) -> str:
    """The docstring under a field of a record type, on one line; KeyError if there is none."""
    return _docs(described()[record].__module__)[record][name]


@functools.cache
def _docs(module: str) -> Mapping[str, Mapping[str, str]]:
    """The docstrings under the fields of every class of a module, read from its source once."""
    tree = ast.parse(inspect.getsource(sys.modules[module]))
    classes = (one for one in tree.body if isinstance(one, ast.ClassDef))
    return {one.name: dict(_of_class(one)) for one in classes}


def _of_class(node: ast.ClassDef) -> Iterator[tuple[str, str]]:
    for one, below in zip(node.body, node.body[1:], strict=False):
        if not (isinstance(one, ast.AnnAssign) and isinstance(one.target, ast.Name)):
            continue
        if isinstance(below, ast.Expr) and isinstance(below.value, ast.Constant):
            yield one.target.id, " ".join(str(below.value.value).split())


def fields_page() -> str:
    """All fields as Markdown, one table a record, outermost first."""
    tables = (_table(name, cls) for name, cls in described().items())
    return "\n".join((_HEAD, *(line for table in tables for line in table)))


def _table(name: str, cls: type[Record]) -> Iterator[str]:
    yield f"## {name.lower()}\n"
    yield f"{inspect.getdoc(cls)}\n"
    yield "| key | holds | meaning | unit | example | source | seen by |"
    yield "|---|---|---|---|---|---|---|"
    for info in schema(cls).values():
        text, unit, source = taken_apart(meaning(name, info.name))
        shown = f"`{example(name, info)}`"
        cells = (f"`{info.key}`", holds(info), text, unit, shown, source, _SEEN[info.seen])
        yield "| " + " | ".join(cell.replace("|", "\\|") for cell in cells) + " |"
    yield ""


def taken_apart(text: str) -> tuple[str, str, str]:
    """A field's docstring as its meaning, unit and source; "" for what it does not say."""
    found = _PARTS.fullmatch(text)
    assert found is not None  # every part of the pattern may be empty
    return found["text"], found["unit"] or "", (found["source"] or "").removesuffix(".")


def holds(info: FieldInfo) -> str:
    """What stands under a key, in words: text, a date, a list of steps."""
    many = _many(info.type)
    if info.words:
        return f"{many}words: {info.words}" if many else f"word: {info.words}"
    return many + (info.points or " or ".join(dict.fromkeys(_kinds(info.type))))


def _many(hint: object) -> str:
    """ "list of " or "table of " where a field holds more than one."""
    origin = typing.get_origin(hint)
    if origin is tuple:
        return "list of "
    if isinstance(origin, type) and issubclass(origin, Mapping):
        return "table of "
    return "list of " if any(_many(one) for one in typing.get_args(hint)) else ""


def _kinds(hint: object) -> Iterator[str]:
    """The kinds of value in an annotation, without gaps; of a table only what its names hold."""
    args = typing.get_args(hint)
    origin = typing.get_origin(hint)
    if isinstance(origin, type) and issubclass(origin, Mapping):
        args = args[1:]
    if origin is typing.Annotated:
        args = args[:1]
    for arg in args or (hint,):
        if arg is not hint and typing.get_args(arg):
            yield from _kinds(arg)
        elif arg not in (Gap, types.NoneType, Ellipsis):
            yield _kind(arg)


def _kind(cls: object) -> str:
    if not isinstance(cls, type):
        return str(cls)
    if any(record_types(cls)):
        return f"[{cls.__name__.lower()}](#{cls.__name__.lower()})"
    if issubclass(cls, StrEnum):
        return ", ".join(f"`{one.value}`" for one in cls)
    return {"str": "text", "bool": "yes or no"}.get(cls.__name__, cls.__name__.lower())
