"""What is not known or not there is said in a sentence."""

from __future__ import annotations

import pytest

from casebook.model.archive import Case
from casebook.output.absence import absent, gap_lines
from casebook.output.wording import text_of
from tests.builders import record


@pytest.mark.parametrize(
    ("said", "line"),
    [
        ("none (all soluble)", "No tests were made (all soluble)."),
        ("not recorded", "Whether tests were made is not recorded."),
        ("not read", "Whether tests were made was not read in the source."),
        ("unknown", "Whether tests were made is unknown."),
    ],
)
def test_each_way_of_not_knowing_has_its_sentence(said: str, line: str) -> None:
    (found,) = absent(record(Case, f"{{id: c, tests: {said}}}"), "tests")
    assert text_of(found) == line


def test_a_list_that_is_there_has_none() -> None:
    assert absent(Case(), "tests") == ()


def test_gaps_in_bulk_are_told_in_words() -> None:
    case = record(
        Case,
        "{id: c, steps: not recorded, gaps: {not recorded: [time, dries], unknown: follow-up}}",
    )
    assert gap_lines(case) == (
        "What was done is not recorded.",
        "Nobody wrote down: time and the drying.",
        "Looked for, and could not be told: later looks.",
    )
