"""The JSON Schema: valid itself, true to the reader, committed. Source: JSON Schema 2020-12."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any, cast

import pytest
from jsonschema import Draft202012Validator

from casebook.model.base import schema
from casebook.reference.examples import as_json, example, plain
from casebook.reference.shape import DIALECT, json_schema, json_schema_text
from casebook.rules import ALL
from casebook.rules.fields import records
from casebook.source import parse, read_document
from casebook.vocabulary import builtin
from tests.reference.committed import ROOT, holds
from tests.rules.written import BASE

PAGE = Path("docs/reference/case.schema.json")
FOLDERS = (ROOT / "cases", ROOT / "tests/outside/archive/cases")
CASES = sorted(path for folder in FOLDERS for path in folder.glob("*/case.md"))
SITTINGS = sorted(path for folder in FOLDERS for path in folder.glob("*/episodes/*.md"))
DEMANDS = sorted((ROOT / "tests/golden/demands").glob("*.txt"))
_FILE = re.compile(r"^-- (\S+\.md) --\n(.*?)(?=^-- )", re.MULTILINE | re.DOTALL)
PARTS = cast("dict[str, Any]", json_schema()["$defs"])


def part(name: str) -> Draft202012Validator:
    """The schema of one record type."""
    return Draft202012Validator({"$schema": DIALECT, "$ref": f"#/$defs/{name}", "$defs": PARTS})


def keys_of(name: str) -> dict[str, Any]:
    shape = PARTS[name]
    found = shape.get("properties") or shape["anyOf"][0]["properties"]
    return cast("dict[str, Any]", found)


def faults(text: str) -> list[str]:
    node = parse(text, "case.md").node
    assert node is not None
    return [one.message for one in Draft202012Validator(json_schema()).iter_errors(plain(node))]


def test_the_committed_schema_is_the_one_the_code_makes(request):
    holds(request, PAGE, json_schema_text())


def test_the_schema_is_a_valid_schema():
    Draft202012Validator.check_schema(json_schema())


def test_it_describes_every_key_of_every_record():
    for name, cls in records().items():
        keys = keys_of(name)
        assert list(keys) == list(schema(cls))
        assert all(one["description"] for one in keys.values())


@pytest.mark.parametrize("name", list(records()))
def test_every_key_has_an_example_that_is_valid_in_it(name):
    validator = part(name)
    for info in schema(records()[name]).values():
        text = example(name, info)
        value = as_json(info.key, text)
        shown = keys_of(name)[info.key]
        assert shown.get("examples", [value]) == [value]
        assert "examples" in shown or shown["description"].endswith(f"Example: {text}")
        assert list(validator.iter_errors({info.key: value})) == [], (name, info.key)


def test_an_editor_is_told_what_a_key_means_and_never_what_a_shared_piece_is():
    shared = [one for name, one in PARTS.items() if name not in records()]
    assert shared
    assert all("description" not in one for one in shared)


def test_words_of_the_trade_are_offered_and_those_of_a_lab_allowed():
    words = PARTS["words-materials"]["examples"]
    assert set(words) >= {*builtin()["materials"], *builtin()["agents"]}
    assert faults("steps: [{material: a word of our own, agent: wheat-starch-paste}]") == []
    assert keys_of("Step")["do"]["anyOf"][0] == {"$ref": "#/$defs/words-operations"}


def test_an_editor_is_given_texts_to_offer_and_never_a_group_of_keys():
    every = [keys_of(name)[key] for name, cls in records().items() for key in schema(cls)]
    offered = [one for shown in every for one in shown.get("examples", [])]
    assert offered
    assert all(isinstance(one, str) for one in offered)


def test_where_a_text_stands_for_a_material_its_words_are_offered():
    assert PARTS["Material"]["anyOf"][1] == {"$ref": "#/$defs/words-materials"}
    assert PARTS["Bath"]["anyOf"][1] == PARTS["Material"]["anyOf"][1]
    assert PARTS["Hand"]["anyOf"][1] == {"$ref": "#/$defs/initials"}
    assert PARTS["WentTo"]["anyOf"][1]["enum"][0] == "discarded"


def test_a_thing_may_hold_its_like():
    run = "{each: [volume 1], steps: [{each: [leaf 1], steps: [{do: %s}]}]}"
    agent = "{is: water, carrier: {is: gel, carrier: %s}}"
    assert faults(f"steps: [{run % 'line'}, {{agent: {agent % 'paste'}}}]") == []
    assert faults(f"steps: [{run % '[a, b]'}]")
    assert faults(f"steps: [{{agent: {agent % '[a, b]'}}}]")


def test_a_complete_case_is_valid():
    assert faults(BASE) == []


@pytest.mark.parametrize("rule", ALL, ids=lambda rule: rule.name)
def test_the_examples_of_the_rules_are_valid(rule):
    for text in (rule.raises, rule.passes):
        assert faults(f"{text}\nid: a") == []


@pytest.mark.parametrize("path", CASES, ids=lambda path: path.parent.name)
def test_cases_as_people_write_them_are_valid(path):
    front = read_document(path.read_bytes(), "case.md").front
    assert front is not None
    assert list(Draft202012Validator(json_schema()).iter_errors(plain(front))) == []


@pytest.mark.parametrize("path", SITTINGS, ids=lambda path: f"{path.parts[-3]}-{path.stem}")
def test_sittings_in_files_of_their_own_are_valid(path):
    front = read_document(path.read_bytes(), path.name).front
    assert front is not None
    assert list(part("Episode").iter_errors(plain(front))) == []


@pytest.mark.parametrize("path", DEMANDS, ids=lambda path: path.stem)
def test_what_real_treatments_ask_of_the_record_is_valid(path):
    files = _FILE.findall(path.read_text(encoding="utf-8"))
    assert files
    for name, text in files:
        front = read_document(f"---\n{text.replace('---', '')}\n---\n".encode(), name).front
        kind = "Episode" if "episodes/" in name else "Case"
        wrong = part(kind).iter_errors(plain(front)) if front else ()
        assert [one.message for one in wrong] == []


@pytest.mark.parametrize(
    "text",
    [
        "status: finished",
        "parts: [spine]",
        "steps: [{grain: sideways}]",
        "steps: [{temporary: perhaps}]",
        "steps: [{adhesive: {carrier: [a, b]}}]",
        "steps: [{fate: eaten}]",
        "links: [{case: a, is: cousin}]",
        "follow-up: [{state: fine}]",
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
