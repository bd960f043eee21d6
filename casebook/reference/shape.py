"""The JSON Schema of a case, for editors: made from the same fields that the reader reads.

JSON Schema, draft 2020-12 (json-schema.org). It is looser than the reader, which knows dates and
quantities: here they are text. Keys that the schema does not know are allowed, since the reader
reports and keeps them.
"""

from __future__ import annotations

import json
import types
import typing
from collections.abc import Mapping
from enum import StrEnum

from casebook.model.archive import Case
from casebook.model.base import FieldInfo, Gap, Record, Unknowing, key_of, schema
from casebook.reference.fields import meaning
from casebook.rules.fields import records

Schema = dict[str, object]

DIALECT = "https://json-schema.org/draft/2020-12/schema"
_TEXT: Schema = {"$ref": "#/$defs/text"}
_GAP: Schema = {"$ref": "#/$defs/gap"}
_YES_NO: Schema = {"enum": ["yes", "no", "true", "false", True, False]}


def json_schema() -> Schema:
    """The schema of a case's front matter; an episode's own is `#/$defs/Episode`."""
    own = {name: _record(name, cls) for name, cls in records().items()}
    return {
        "$schema": DIALECT,
        "title": "Casebook case",
        "description": "The front matter of cases/…/case.md. Other keys are kept, and reported.",
        "$ref": f"#/$defs/{Case.__name__}",
        "$defs": {**_common(), **own},
    }


def json_schema_text() -> str:
    """The schema as the text of its file."""
    return json.dumps(json_schema(), indent=1, ensure_ascii=False) + "\n"


def _common() -> Schema:
    ways = "|".join(one.value for one in Unknowing)
    return {
        "text": {
            "description": "Text; an editor may take it for a number, the reader does not.",
            "type": ["string", "number", "boolean"],
        },
        "gap": {
            "description": "A way of not knowing, with a reason in brackets if wished.",
            "type": "string",
            "pattern": rf"^({ways})( *\(.*\) *)?$",
        },
    }


def _record(name: str, cls: type[Record]) -> Schema:
    """A record type: a group of keys, and a plain text where it has a short form."""
    keys: Schema = {
        "description": " ".join((cls.__doc__ or "").split()),
        "type": "object",
        "properties": {info.key: _property(name, info) for info in schema(cls).values()},
        "additionalProperties": True,
    }
    return {"anyOf": [keys, _short(cls)]} if cls.from_text("x") else keys


def _short(cls: type[Record]) -> Schema:
    """What a plain text may be that stands for a record: a choice where it stands for one."""
    info = schema(cls).get(key_of(cls.SHORT))
    options = _options(_value(info.type)) if info else []
    return next((one for one in options if "enum" in one), _TEXT)


def _property(record: str, info: FieldInfo) -> Schema:
    return {"description": meaning(record, info.name), **_value(info.type)}


def _value(hint: object) -> Schema:
    """The schema of a value from its annotation."""
    origin, args = typing.get_origin(hint), typing.get_args(hint)
    if origin is typing.Annotated:
        return _value(args[0])
    if origin in (typing.Union, types.UnionType):
        return _any_of([_value(arg) for arg in args if arg is not types.NoneType])
    if origin is tuple:
        one = _value(args[0])
        return _any_of([{"type": "array", "items": one}, one])
    if isinstance(origin, type) and issubclass(origin, Mapping):
        return {"type": "object", "additionalProperties": _value(args[1])}
    return _single(hint)


def _any_of(options: list[Schema]) -> Schema:
    """One of several schemas, without repeats; the only one as it is."""
    flat = [one for option in options for one in _options(option)]
    unique = [one for number, one in enumerate(flat) if one not in flat[:number]]
    return unique[0] if len(unique) == 1 else {"anyOf": unique}


def _options(option: Schema) -> list[Schema]:
    inner = option.get("anyOf")
    return inner if isinstance(inner, list) and len(option) == 1 else [option]


def _single(hint: object) -> Schema:
    if hint is Gap:
        return _GAP
    if hint is bool:
        return _YES_NO
    if isinstance(hint, type) and issubclass(hint, Record):
        return {"$ref": f"#/$defs/{hint.__name__}"}
    if isinstance(hint, type) and issubclass(hint, StrEnum):
        return {"enum": [one.value for one in hint]}
    return _TEXT
