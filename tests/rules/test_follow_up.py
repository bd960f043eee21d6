"""A later look that was due is asked for, gently."""

from __future__ import annotations

import pytest

from casebook.diagnostics import Severity
from casebook.rules import NAMED
from tests.rules.written import TODAY, look, messages

RULE = NAMED["follow-up-overdue"]


@pytest.mark.parametrize(
    ("looks", "overdue"),
    [
        ("[{date: 2025-05-01, next: 2025-11}]", True),
        ("[{date: 2025-05-01, next: 2025}]", True),
        ("[{date: 2025-05-01, next: 2026-01-01}]", False),
        ("[{date: 2025-05-01, next: 2026}]", False),
        ("[{date: 2025-05-01}]", False),
        ("[{date: 2025-05-01, next: unknown}]", False),
        ("[{date: 2024-05-01, next: 2025-01}, {date: 2025-02-01, state: sound}]", False),
        ("[{date: 2024-05-01, next: 2025-01}, {date: 2024-09-01, state: sound}]", False),
        ("[{next: 2025-01}, {date: 2024-09-01, state: sound}]", True),
        ("[]", False),
    ],
)
def test_it_is_overdue_when_its_date_has_gone_by_and_nobody_looked(looks: str, overdue: bool):
    assert TODAY.isoformat() == "2026-01-01"
    assert bool(messages(RULE, f"follow-up: {looks}")) is overdue


@pytest.mark.parametrize("status", ["complete", "in-treatment"])
def test_it_is_never_more_than_a_suggestion(status: str):
    assert RULE.severity(look(f"status: {status}")) is Severity.SUGGESTION
