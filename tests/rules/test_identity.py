"""What the object is, whose, and how far the case has come."""

from __future__ import annotations

import pytest

from casebook.rules import NAMED
from tests.rules.written import messages, raised


@pytest.mark.parametrize(
    "said", ["marks: [a red stamp]", "made: 187X", "author: unknown", "owner: the harbour"]
)
def test_any_of_the_examples_tells_an_object_from_others(said: str):
    assert messages(NAMED["identified"], f"# no title\nobject: {{kind: ledger, {said}}}") == []


def test_a_client_nearly_named_is_suggested():
    (one,) = raised(NAMED["client-key"], "client: harbor")
    assert one.hint == "did you mean `harbour`?"


def test_a_declined_case_says_why_and_need_not_say_how_it_was_left():
    rule = NAMED["status-stopped-why"]
    assert messages(rule, "status: declined") == ["the case is declined and does not say why"]
    assert messages(rule, "status: {is: declined, because: too costly}") == []
