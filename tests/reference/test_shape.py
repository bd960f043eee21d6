"""The JSON Schema: valid itself, true to the reader, committed. Source: JSON Schema 2020-12."""

from __future__ import annotations

from pathlib import Path
from typing import Any, cast

import pytest
from jsonschema import Draft202012Validator

from casebook.model.base import schema
from casebook.reference.shape import json_schema, json_schema_text
from casebook.rules import ALL
from casebook.rules.fields import records
from casebook.source import Mapping, Node, Scalar, parse, read_document
from tests.reference.committed import ROOT, holds
from tests.rules.written import BASE

PAGE = Path("docs/reference/case.schema.json")
CASES = sorted((ROOT / "cases").glob("*/case.md"))


def plain(node: Node) -> object:
    """Nodes as texts, lists and tables."""
    if isinstance(node, Scalar):
        return node.text
    if isinstance(node, Mapping):
        return {one.key.text: plain(one.value) for one in node.entries}
    return [plain(one) for one in node.items]


def faults(text: str) -> list[str]:
    node = parse(text, "case.md").node
    assert node is not None
    return [one.message for one in Draft202012Validator(json_schema()).iter_errors(plain(node))]


def test_the_committed_schema_is_the_one_the_code_makes(request):
    holds(request, PAGE, json_schema_text())


def test_the_schema_is_a_valid_schema():
    Draft202012Validator.check_schema(json_schema())


def test_it_describes_every_key_of_every_record():
    shapes: dict[str, Any] = cast("dict[str, Any]", json_schema()["$defs"])
    for name, cls in records().items():
        keys = shapes[name].get("properties") or shapes[name]["anyOf"][0]["properties"]
        assert list(keys) == list(schema(cls))
        assert all(one["description"] for one in keys.values())


def test_a_complete_case_is_valid():
    assert faults(BASE) == []


@pytest.mark.parametrize("rule", ALL, ids=lambda rule: rule.name)
def test_the_examples_of_the_rules_are_valid(rule):
    for text in (rule.raises, rule.passes):
        assert faults(f"{text}\nid: a") == []


@pytest.mark.parametrize("path", CASES, ids=lambda path: path.parent.name)
def test_the_demo_cases_are_valid(path):
    front = read_document(path.read_bytes(), "case.md").front
    assert front is not None
    assert list(Draft202012Validator(json_schema()).iter_errors(plain(front))) == []


@pytest.mark.parametrize(
    "text",
    [
        "status: finished",
        "dates: [2025]",
        "episodes: [{steps: [{adds: [a, b]}]}]",
        "photos: [{stage: sometime}]",
        "people: AM",
    ],
)
def test_what_the_reader_would_refuse_is_refused(text):
    assert faults(text)


def test_short_forms_gaps_single_items_and_keys_of_ones_own_are_valid():
    text = "photos: a.jpg\nhistory: none\nobject: not recorded (page lost)\nmood: good"
    assert faults(text) == []
