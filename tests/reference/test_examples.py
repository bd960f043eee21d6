"""Every field has an example, and each reads with the field's own reader."""

from __future__ import annotations

import pytest

from casebook.model.base import Gap, Record, schema
from casebook.reading import read
from casebook.reference.examples import as_json, example, written_examples
from casebook.reference.fields import described
from casebook.source import parse

FIELDS = [(name, info) for name, cls in described().items() for info in schema(cls).values()]


@pytest.mark.parametrize(("name", "info"), FIELDS, ids=lambda one: getattr(one, "key", one))
def test_a_field_has_an_example_that_its_own_reader_reads(name, info):
    text = example(name, info)
    assert text, f"give `{name}` a line for `{info.key}` in casebook/reference/examples.yml"
    parsed = parse(f"{info.key}: {text}\n", "example")
    assert not parsed.diagnostics
    assert parsed.node is not None
    cls: type[Record] = described()[name]
    found, faults = read(cls, parsed.node, "example")
    assert not faults
    value = getattr(found, info.name)
    assert value not in (None, (), "", {})
    assert not isinstance(value, Gap) or info.name == "order"


def test_no_example_is_left_of_a_field_that_is_gone():
    known = {name: set(schema(cls)) for name, cls in described().items()}
    own = {name: set(keys) for name, keys in written_examples().items()}
    assert own.pop("records") <= set(known)
    assert {
        name: sorted(keys - known[name]) for name, keys in own.items() if keys - known[name]
    } == {}


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("40 of 52", "40 of 52"),
        ("[calf, marbled-paper]", ["calf", "marbled-paper"]),
        ("{is: c. 1780, says: owner}", {"is": "c. 1780", "says": "owner"}),
        ('"1 on, 2 off"', "1 on, 2 off"),
    ],
)
def test_an_example_is_a_value_of_json_too(text, value):
    assert as_json("key", text) == value
