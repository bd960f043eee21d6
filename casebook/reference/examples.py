"""An example for every field: its own from `examples.yml`, else that of its kind of value."""

from __future__ import annotations

import functools
import types
import typing
from collections.abc import Mapping
from enum import StrEnum
from pathlib import Path

from casebook.model.base import FieldInfo, Gap
from casebook.source import Mapping as MappingNode
from casebook.source import Node, Scalar, parse

_FILE = Path(__file__).parent / "examples.yml"
_RECORDS = "records"

_VALUES = {
    "Acidity": "7.1",
    "Box": "420 300 160 90",
    "Colour": "L 52 a 3 b 10",
    "Count": "3",
    "Date": "2025-03-14",
    "Difference": "3.0",
    "Duration": "1 h 30 min",
    "Grammage": "5 g/m²",
    "Length": "68 mm",
    "Outline": '"120 80, 460 92, 300 240"',
    "Path": '"120 80, 460 92"',
    "Percent": "4 %",
    "Point": "1204 860",
    "Ratio": "1:3",
    "Temperature": "20 °C",
    "bool": "yes",
}
_WORDS = {
    "agents": "water",
    "damages": "broken",
    "kinds": "ledger",
    "materials": "wheat-starch-paste",
    "operations": "line",
    "parts": "spine",
    "sewing": "all-along",
    "structures": "tight-back",
    "tools": "bone-folder",
}
_POINTS = {
    "case": "1984-017",
    "layer": "cloth-lining",
    "person": "AM",
    "photo": "spine-before",
    "place": "spine",
    "test": "red-bleeds",
}


def example(record: str, info: FieldInfo) -> str:
    """What may stand behind a key, as it is written in a file; "" where nobody gave an example."""
    own = written_examples().get(record, {}).get(info.key)
    if own is not None:
        return own
    if info.words or info.points:
        return _WORDS.get(info.words) or _POINTS[info.points]
    return _of_type(info.type)


def plain(node: Node) -> object:
    """A node as JSON has it: texts, lists and tables."""
    if isinstance(node, Scalar):
        return node.text
    if isinstance(node, MappingNode):
        return {one.key.text: plain(one.value) for one in node.entries}
    return [plain(one) for one in node.items]


def as_json(key: str, text: str) -> object:
    """An example as a JSON value: what the text behind a key holds."""
    node = parse(f"{key}: {text}\n", "example").node
    assert isinstance(node, MappingNode)  # a test reads every example
    return plain(node.entries[0].value)


@functools.cache
def written_examples() -> Mapping[str, Mapping[str, str]]:
    """The file of examples: by record and key; under `records` a whole value of each record."""
    node = parse(_FILE.read_text(encoding="utf-8"), _FILE.name).node
    return typing.cast("Mapping[str, Mapping[str, str]]", plain(node) if node else {})


def _of_type(hint: object) -> str:
    """The example of the first kind of value in an annotation that has one."""
    origin, args = typing.get_origin(hint), typing.get_args(hint)
    if origin in (typing.Union, types.UnionType, tuple, typing.Annotated):
        found = (_of_type(one) for one in args if one not in (Gap, types.NoneType))
        return next((one for one in found if one), "")
    if not isinstance(hint, type):
        return ""
    if issubclass(hint, StrEnum):
        return str(next(iter(hint)).value)
    return _VALUES.get(hint.__name__) or written_examples()[_RECORDS].get(hint.__name__, "")
