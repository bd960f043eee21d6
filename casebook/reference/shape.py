"""The JSON Schema of a case, for editors: made from the same fields that the reader reads.

JSON Schema, draft 2020-12 (json-schema.org). It is looser than the reader, which knows dates and
quantities: here they are text. Keys that the schema does not know are allowed, since the reader
reports and keeps them. Words of a vocabulary are examples and no enumeration, since a lab has words
of its own. Shared pieces carry no description: an editor would show that instead of the key's.
"""

from __future__ import annotations

import json
import types
import typing
from collections.abc import Mapping
from enum import StrEnum

from casebook.model.archive import Case
from casebook.model.base import (
    FieldInfo,
    Gap,
    Points,
    Record,
    Unknowing,
    Words,
    key_of,
    schema,
)
from casebook.model.vocabulary import KINDS
from casebook.reference.examples import as_json, example
from casebook.reference.fields import meaning
from casebook.rules.fields import records
from casebook.vocabulary import FAMILIES, builtin

Schema = dict[str, object]

DIALECT = "https://json-schema.org/draft/2020-12/schema"
_TEXT: Schema = {"$ref": "#/$defs/text"}
_INITIALS: Schema = {"$ref": "#/$defs/initials"}
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
    """What many keys share: text, initials, ways of not knowing, the words of each vocabulary."""
    ways = [one.value for one in Unknowing]
    pattern = rf"^({'|'.join(ways)})( *\(.*\) *)?$"
    return {
        "text": {"type": ["string", "number"]},
        "initials": {"type": ["string", "number", "boolean"]},
        "gap": {"type": "string", "pattern": pattern, "examples": ways},
        **{_words(kind): {"type": "string", "examples": _terms(kind)} for kind in KINDS},
    }


def _words(kind: str) -> str:
    return f"words-{kind}"


def _terms(kind: str) -> list[str]:
    """The ids of the built-in terms that may stand under a key for a vocabulary's words."""
    terms = builtin()
    return [one for family in FAMILIES.get(kind, (kind,)) for one in terms[family]]


def _record(name: str, cls: type[Record]) -> Schema:
    """A record type: a group of keys, and a plain text where it has a short form."""
    keys: Schema = {
        "description": " ".join((cls.__doc__ or "").split()),
        "type": "object",
        "properties": {info.key: _property(name, info) for info in schema(cls).values()},
        "additionalProperties": True,
    }
    return {"anyOf": [keys, _short(cls)]} if _takes_text(cls) else keys


def _takes_text(cls: type[Record]) -> bool:
    """Whether a record may be written as a plain text, be it only one of a certain form."""
    own = any("from_text" in vars(one) for one in cls.__mro__ if one is not Record)
    return own or bool(cls.SHORT)


def _short(cls: type[Record]) -> Schema:
    """What a plain text may be that stands for a record: a choice, a word, initials, or any."""
    info = schema(cls).get(key_of(cls.SHORT))
    options = _options(_value(info.type)) if info else []
    texts = (one for one in options if one != _GAP and one.get("type") != "array")
    found = next(texts, _TEXT)
    inner = records().get(str(found.get("$ref", "")).rpartition("/")[2])
    return _short(inner) if inner else found


def _property(record: str, info: FieldInfo) -> Schema:
    """A key with its meaning and an example; editors offer the texts among these for completion."""
    text = example(record, info)
    value = as_json(info.key, text)
    said = meaning(record, info.name)
    if isinstance(value, str):
        return {"description": said, "examples": [value], **_value(info.type)}
    return {"description": f"{said} Example: {text}", **_value(info.type)}


def _value(hint: object) -> Schema:
    """The schema of a value from its annotation."""
    origin, args = typing.get_origin(hint), typing.get_args(hint)
    if origin is typing.Annotated:
        return _marked(args[0], args[1])
    if origin in (typing.Union, types.UnionType):
        return _any_of([_value(arg) for arg in args if arg is not types.NoneType])
    if origin is tuple:
        one = _value(args[0])
        return _any_of([{"type": "array", "items": one}, one])
    if isinstance(origin, type) and issubclass(origin, Mapping):
        return {"type": "object", "additionalProperties": _value(args[1])}
    return _single(hint)


def _marked(hint: object, mark: object) -> Schema:
    """A word of a vocabulary, or a reference: initials may look like a yes or no."""
    if isinstance(mark, Words):
        return {"$ref": f"#/$defs/{_words(mark.kind)}"}
    return _INITIALS if isinstance(mark, Points) and mark.kind == "person" else _value(hint)


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
