"""Steps and sittings: a material for what is added, one verb, hands and dates."""

from __future__ import annotations

import pytest

from casebook.rules import NAMED
from tests.rules.written import messages


def material(said: str) -> list[str]:
    step = f"steps: [{{adds: patch, onto: spine{said}}}]"
    return messages(NAMED["material-of-addition"], step)


@pytest.mark.parametrize(
    "said",
    [
        ", material: linen",
        ", material: {perhaps: [linen, cotton]}",
        ", material: {mix: {linen: 1, cotton: 1}}",
        ", material: {product: Harbour cloth}",
        ", material: unknown (label lost)",
    ],
)
def test_what_was_added_is_made_of_something(said: str):
    assert material(said) == []


@pytest.mark.parametrize(
    "said", ["", ", material: unknown", ", material: unnamed", ", material: {colour: grey}"]
)
def test_on_your_own_bench_you_know_what_you_added(said: str):
    assert material(said) == ["`patch` was added, and the record does not say what it is made of"]


def test_hands_and_dates_may_stand_at_the_sitting_or_at_each_step():
    both = "{words: cleaned, hands: AM, date: 2025-03}"
    neither = "{words: sewed}"
    for name, lack in (("hands", "who did the work"), ("date-of-sitting", "no date")):
        assert messages(NAMED[name], f"episodes: [{{steps: [{both}]}}]") == []
        (told,) = messages(NAMED[name], f"episodes: [{{steps: [{both}, {neither}]}}]")
        assert lack in told
        (told,) = messages(NAMED[name], f"steps: [{both}, {neither}]")
        assert lack in told


def test_a_step_in_words_only_needs_no_verb():
    assert messages(NAMED["one-verb"], "steps: [cleaned the spine]") == []


def test_a_step_that_names_a_material_and_no_verb_is_asked_for_one():
    (told,) = messages(NAMED["one-verb"], "steps: [{do: line, material: linen}]")
    assert told == "this step names a material, and not what was done with it"


def test_a_material_in_words_of_ones_own_says_its_product():
    rule = NAMED["composition-of-material"]
    own = "steps: [{adds: patch, onto: spine, material: {is: pilot cloth, product: Harbour 4}}]"
    assert messages(rule, own) == []
    assert messages(rule, own.replace(", product: Harbour 4", ""))
