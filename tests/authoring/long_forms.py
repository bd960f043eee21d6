"""Records written at length: any of the schema's types as YAML, with comments, quotes and blanks."""

from __future__ import annotations

import types
import typing
from enum import StrEnum
from typing import Any

from hypothesis import strategies as st

from casebook.model.base import Gap, Record, Words, schema

VALUES = {
    "Acidity": ["8.0"],
    "Box": ["420 300 160 90", "5% 5% 2% 2%"],
    "Colour": ["lab(52.1 3.4 -10)"],
    "Count": ["3", "about 4"],
    "Date": ["1873", "c. 1780"],
    "Difference": ["3.0"],
    "Duration": ["2 h", "3 h 40 min", "overnight"],
    "Grammage": ["5 g/m²", "9 gsm"],
    "Length": ["40 mm", "16 1/4 in"],
    "Outline": ["120 80, 460 92, 300 240"],
    "Path": ["120 80, 460 92"],
    "Percent": ["4 %"],
    "Point": ["1204 860", "40% 28.5%"],
    "Ratio": ["1:3"],
    "Temperature": ["20 °C"],
}
TEXTS = [
    "linen",
    "a b",
    "2 h",
    "5 g/m²",
    "x, y",
    "k: v",
    "it's so",
    'a "b"',
    "- c",
    "3 of 4",
    "# d",
]
GAPS = ["not recorded", "unknown (page lost)", "none"]
WORDS = ["linen", "tengujo", "wheat-starch-paste", "blotter"]
INITIALS = ["AM", "NO", "010"]

Tree = str | list[Any] | dict[str, Any]


@st.composite
def long_record(draw: st.DrawFn, cls: type[Record], depth: int = 3) -> dict[str, Tree]:
    """A group of keys of a type, with few keys: a short form may stand for them."""
    infos = [one for one in schema(cls).values() if depth or not _holds_record(one.type)]
    some = draw(st.lists(st.sampled_from(infos), min_size=1, max_size=3, unique_by=id))
    return {one.key: draw(_value(one.type, depth)) for one in some}


def _value(hint: Any, depth: int) -> st.SearchStrategy[Tree]:
    origin, args = typing.get_origin(hint), typing.get_args(hint)
    if origin is typing.Annotated:
        is_word = any(isinstance(one, Words) for one in args[1:])
        return st.sampled_from(WORDS) if is_word else _value(args[0], depth)
    if origin in (typing.Union, types.UnionType):
        rest = [one for one in args if one not in (Gap, types.NoneType)]
        gaps = [st.sampled_from(GAPS)] if Gap in args else []
        return st.one_of(_value(rest[0], depth), *gaps)
    if origin is tuple:
        one = _value(args[0], depth)
        return st.one_of(st.lists(one, min_size=1, max_size=2), one)
    if origin is not None:
        names = st.sampled_from(["linen", "water", "spine"])
        return st.dictionaries(names, _value(args[1], depth), min_size=1, max_size=2)
    return _single(hint, depth)


def _single(hint: type, depth: int) -> st.SearchStrategy[Tree]:
    if issubclass(hint, Record):
        return long_record(hint, depth - 1) if depth else st.just("linen")
    if issubclass(hint, StrEnum):
        words = [one.value for one in hint]
        return st.sampled_from([*words, *(one.replace("-", " ").title() for one in words)])
    if hint is bool:
        return st.sampled_from(["yes", "No", "true", "False"])
    if hint is str:
        return st.sampled_from([*TEXTS, *INITIALS])
    return st.sampled_from(VALUES[hint.__name__])


def _holds_record(hint: Any) -> bool:
    if isinstance(hint, type) and issubclass(hint, Record):
        return True
    return any(_holds_record(one) for one in typing.get_args(hint))


@st.composite
def written(draw: st.DrawFn, tree: dict[str, Tree]) -> str:
    """A group of keys as YAML: on lines or in braces, quoted or bare, commented or not."""
    return "".join(f"{line}\n" for line in _lines(draw, tree, 0))


def _lines(draw: st.DrawFn, tree: dict[str, Tree], depth: int) -> list[str]:
    margin = "  " * depth
    lines = []
    for key, value in tree.items():
        if draw(st.integers(0, 5)) == 0:
            lines.append(f"{margin}# about {key}: why")
        on_lines = not isinstance(value, str) and draw(st.booleans())
        if not on_lines:
            lines.append(f"{margin}{_key(key)}: {_flow(draw, value)}{_tail(draw)}")
        elif isinstance(value, dict):
            lines.append(f"{margin}{_key(key)}:{_tail(draw)}")
            lines += _lines(draw, value, depth + 1)
        else:
            lines.append(f"{margin}{_key(key)}:{_tail(draw)}")
            lines += [f"{margin}  - {_flow(draw, one)}{_tail(draw)}" for one in value]
    return lines


def _tail(draw: st.DrawFn) -> str:
    return draw(st.sampled_from(["", "", "", "  ", "\t", "  # said by AM", " # {x: [y]}  "]))


def _key(key: str) -> str:
    return f'"{key}"' if key == "#" else key


def _flow(draw: st.DrawFn, value: Tree) -> str:
    if isinstance(value, str):
        plain = not set(value) & set("#,:\"'-") and draw(st.booleans())
        return value if plain else "'" + value.replace("'", "''") + "'"
    if isinstance(value, list):
        return "[" + ", ".join(_flow(draw, one) for one in value) + "]"
    return "{" + ", ".join(f"{key}: {_flow(draw, one)}" for key, one in value.items()) + "}"
