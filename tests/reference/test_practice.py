"""Rules explained, and the page that lists them."""

from __future__ import annotations

from pathlib import Path

import pytest

from casebook.photos.told import TELLINGS
from casebook.reference import explain, rules_page, suggest_rule
from casebook.rules import ALL
from tests.reference.committed import holds

PAGE = Path("docs/reference/rules.md")


def test_the_committed_page_is_the_one_the_code_makes(request):
    holds(request, PAGE, rules_page())


@pytest.mark.parametrize("rule", ALL, ids=lambda rule: rule.name)
def test_a_rule_is_explained_whole(rule):
    text = explain(rule.name)
    assert all(part in text for part in (rule.what, rule.why, rule.source))
    assert all(f"    {line}" in text for line in f"{rule.raises}\n{rule.passes}".splitlines())
    assert f"{rule.weight.finished.word} (finished)" in text


@pytest.mark.parametrize("one", TELLINGS, ids=lambda one: one.name)
def test_what_is_told_of_photo_files_is_explained_as_a_rule_is(one):
    text = explain(one.name)
    assert all(part in text for part in (one.what, one.why, one.source, f"    {one.example}"))
    assert f"Severity: {one.severity.word}" in text
    assert f"### {one.name}\n\n{one.what}" in rules_page()


def test_a_name_that_is_no_rule_is_answered_with_the_nearest():
    assert suggest_rule("before-and-aftr") == "did you mean `before-and-after`?"
    assert "rules.md" in suggest_rule("zzz")
    with pytest.raises(KeyError):
        explain("zzz")
