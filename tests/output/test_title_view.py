"""Under the title: who treated it and when, and what on the object can hurt."""

from __future__ import annotations

import pytest

from casebook.model.archive import Case
from casebook.output.title_view import byline, dangers, record_note
from tests.builders import WORDING, record


@pytest.mark.parametrize(
    ("case", "line"),
    [
        ("{id: c}", ""),
        ("{id: c, episodes: [{date: 2025-03-04}]}", "Treated 4 March 2025."),
        ("{id: c, episodes: [{hands: [AM]}]}", "Treated by AM."),
        (
            (
                "{id: c, people: {AM: {name: A. Marsh}}, episodes: [{date: 2025-03-04/2025-03-05,"
                " hands: [AM]}, {date: 2025-03-20, steps: [{do: wash, hands: [RT, AM]}]}]}"
            ),
            "Treated in March 2025 by A. Marsh and RT.",
        ),
        (
            "{id: c, episodes: [{date: 2024-11-30}, {date: 2025-01-02}]}",
            "Treated November 2024 – January 2025.",
        ),
        ("{id: c, episodes: [{date: 1984}, {date: 1984}]}", "Treated in 1984."),
        ("{id: c, steps: [{date: 1984~}, {date: 1984-05}]}", "Treated in c. 1984."),
        ("{id: c, episodes: [{date: unknown}, {date: ../1984}]}", "Treated until 1984."),
        (
            "{id: c, status: declined, episodes: [{date: 2025-03-04, hands: [AM]}]}",
            "Worked on 4 March 2025 by AM.",
        ),
        ("{id: c, episodes: [{hands: [A, B, C, D, E]}]}", "Treated by A, B, C and others."),
    ],
)
def test_who_treated_it_and_when_is_a_sentence(case: str, line: str) -> None:
    assert byline(record(Case, case), WORDING) == line


@pytest.mark.parametrize(
    ("case", "line"),
    [
        ("hazards: [{what: green cloth, part: [board 1]}]", "green cloth (on board 1)"),
        ("hazards: [{what: mould}, {what: scalpel blades}, {what: ethanol}]", "mould"),
        ("hazards: [{what: old mould, part: spine}, {what: red rot}]", "old mould (on the spine); red rot"),
        ("hazards: [{part: spine}]", "a danger (on the spine)"),
        ("hazards: [{what: finishing tools}, {what: propan-2-ol}]", ""),
        ("hazards: none", ""),
        ("hazards: [{what: red rot, part: old}], steps: [{removes: old}]", ""),
        (
            ("hazards: [{what: red rot, part: old}],"
            " steps: [{removes: old, leaves: {layer: old, where: in the folds}}]"),
            "red rot (on the old)",
        ),
    ],
)  # fmt: skip
def test_what_on_the_object_can_hurt_stands_under_the_title(case: str, line: str) -> None:
    assert dangers(record(Case, f"{{id: c, {case}}}"), WORDING) == line


def test_what_an_old_record_was_made_from_is_said() -> None:
    case = record(Case, "{id: c, record: from-notes, written: {from: [bench book, slides]}}")
    assert record_note(case).endswith(
        "from what survives of its notes. Sources: bench book; slides."
    )
    assert record_note(record(Case, "{id: c}")) == ""
