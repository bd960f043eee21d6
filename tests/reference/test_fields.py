"""The page of all fields, and the docstrings it is made from."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from casebook.model.base import schema
from casebook.reference.fields import described, fields_page, holds, meaning, taken_apart
from casebook.rules.fields import field
from tests.reference import committed

PAGE = Path("docs/reference/fields.md")


def test_the_committed_page_is_the_one_the_code_makes(request):
    committed.holds(request, PAGE, fields_page())


@pytest.mark.parametrize("name", list(described()))
def test_every_field_of_the_schema_has_its_meaning(name):
    for info in schema(described()[name]).values():
        text, _, _ = taken_apart(meaning(name, info.name))
        assert text.endswith((".", "?", '."')), (name, info.name)


MEASURED = {
    "acidity": "pH",
    "colour": "CIELAB",
    "count": "count",
    "duration": "duration",
    "grammage": "g/m²",
    "length": "length",
    "percent": "per cent, with its basis if known",
    "temperature": "°C",
}

NOT_MEASURED = {"Episode.episode", "Settings.accent"}
"""A sitting's place in the row, and the colour of links on a screen."""


@pytest.mark.parametrize("name", list(described()))
def test_what_is_measured_has_its_unit(name):
    for info in schema(described()[name]).values():
        _, unit, _ = taken_apart(meaning(name, info.name))
        if holds(info) in MEASURED and f"{name}.{info.name}" not in NOT_MEASURED:
            assert unit, f"say `Unit: {MEASURED[holds(info)]}.` under {name}.{info.name}"


def test_every_row_of_the_page_has_meaning_example_and_reader():
    rows = [line for line in fields_page().splitlines() if line.startswith("| `")]
    assert len(rows) == sum(len(schema(cls)) for cls in described().values())
    for row in rows:
        key, _, text, _, shown, _, seen = re.split(r"(?<!\\) ?\| ?", row)[1:8]
        assert key
        assert text
        assert shown.strip("`")
        assert seen in ("everyone", "lab and client", "the lab alone")


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("Its pH. Unit: pH.", ("Its pH.", "pH", "")),
        ("When. Source: AIC Commentary 27 B.", ("When.", "", "AIC Commentary 27 B")),
        ("How long. Unit: duration. Source: AIC 26 B.", ("How long.", "duration", "AIC 26 B")),
        ("Why.", ("Why.", "", "")),
    ],
)
def test_a_docstring_is_taken_apart(text, parts):
    assert taken_apart(text) == parts


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("Case.title", "text"),
        ("Case.photos", "list of [photo](#photo)"),
        ("Case.parts", "table of [part](#part)"),
        ("Step.removes", "list of place"),
        ("Step.do", "word: operations"),
        ("Step.temporary", "yes or no"),
        ("Step.grain", "`along`, `across`"),
        ("Object.made", "list of [made](#made)"),
        ("Dates.received", "date"),
    ],
)
def test_what_a_key_holds_is_said_in_words(name, said):
    assert holds(field(name)) == said
