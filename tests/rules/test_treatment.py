"""Steps: a material and a bond for what is added, and one verb."""

from __future__ import annotations

import pytest

from casebook.rules import NAMED
from tests.rules.written import messages, raised


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


def bond(said: str) -> list[str]:
    return messages(
        NAMED["bond-of-addition"], f"steps: [{{adds: patch, onto: spine, material: linen{said}}}]"
    )


@pytest.mark.parametrize(
    "said",
    [
        ", adhesive: paste",
        ", adhesive: unnamed",
        ", adhesive: unknown",
        ", adhesive: none",
        ", adhesive: not recorded (page lost)",
        ", held: sewn",
        ", bonds: [{onto: spine, held: sewn}]",
        ", soaks-in: leaf",
    ],
)
def test_what_was_laid_is_held_by_something(said: str):
    assert bond(said) == []


@pytest.mark.parametrize("said", ["", ", adhesive: not recorded"])
def test_on_your_own_bench_you_know_what_holds_it(said: str):
    assert bond(said) == ["the record does not say what holds `patch`"]


def test_what_only_lies_over_something_needs_no_bond():
    text = "steps: [{adds: wrapper, over: [board 1, board 2], material: polyester-film}]"
    assert messages(NAMED["bond-of-addition"], text) == []


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


def test_what_is_added_and_joins_is_told_to_be_laid_onto() -> None:
    (one,) = raised(
        NAMED["one-verb"], "steps: [{adds: hinge, joins: [sheet, mount], material: linen}]"
    )
    assert one.hint.startswith("write `adds: hinge, onto: [sheet, mount]`")
