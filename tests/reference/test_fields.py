"""The page of all fields, and the docstrings it is made from."""

from __future__ import annotations

from pathlib import Path

import pytest

from casebook.model.base import schema
from casebook.reference.fields import fields_page, holds, meaning, taken_apart
from casebook.rules.fields import field, records
from tests.reference import committed

PAGE = Path("docs/reference/fields.md")


def test_the_committed_page_is_the_one_the_code_makes(request):
    committed.holds(request, PAGE, fields_page())


@pytest.mark.parametrize("name", list(records()))
def test_every_field_of_the_schema_has_its_meaning(name):
    for info in schema(records()[name]).values():
        text, _, _ = taken_apart(meaning(name, info.name))
        assert text.endswith((".", "?", '."')), (name, info.name)


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
        ("Photo.scale", "yes or no"),
        ("Step.grain", "`along`, `across`"),
        ("Object.made", "list of [made](#made)"),
        ("Dates.received", "date"),
    ],
)
def test_what_a_key_holds_is_said_in_words(name, said):
    assert holds(field(name)) == said
