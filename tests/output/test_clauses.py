"""What follows the main clause of a step."""

from __future__ import annotations

from casebook.model.treatment import Step
from casebook.output.clauses import bath, clauses
from casebook.output.wording import text_of
from tests.builders import WORDING, record


def test_a_clause_for_each_thing_said() -> None:
    step = record(Step, "{removes: twine, fate: stored-apart, scope: {done: 2, of: 5}}")
    assert [text_of(one) for one in clauses(step, WORDING) if one] == ["2 of 5", "stored apart"]


def test_no_bath_is_no_clause() -> None:
    assert bath(Step(), WORDING) == ()
