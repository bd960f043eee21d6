"""What a rule takes from the function it is made of, and how heavy it is."""

from __future__ import annotations

import pytest

from casebook.diagnostics import Severity
from casebook.rules.declare import MUST, Raised, rule
from casebook.rules.look import Due
from tests.rules.written import look


@rule(
    why="Why.",
    source="a source",
    fields=("Case.title",),
    weight=MUST,
    raises="",
    passes="",
    due=Due.TREATED,
)
def a_title(seen):
    """A case has a title,
    in one line.

    More about it.
    """
    yield Raised(f"{seen.case.id} has none")


def test_the_name_and_the_sentence_come_from_the_function():
    assert a_title.name == "a-title"
    assert a_title.what == "A case has a title, in one line."


@pytest.mark.parametrize(
    ("text", "severity"),
    [
        ("status: proposed", None),
        ("status: in-treatment", Severity.WARNING),
        ("status: complete", Severity.ERROR),
        ("status: complete\nrecord: from-notes", Severity.SUGGESTION),
    ],
)
def test_severity_follows_status_and_kind_of_record(text, severity):
    assert a_title.severity(look(text)) is severity
