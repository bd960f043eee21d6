"""What is pointed at is there; no name is given twice."""

from __future__ import annotations

import pytest

from casebook.diagnostics import Severity
from casebook.rules import NAMED
from tests.rules.written import messages, raised

RULE = NAMED["unknown-reference"]


@pytest.mark.parametrize(
    "there",
    [
        "steps: [{treats: cloth-lining/spine, photo: during.jpg, allowed-by: red-bleeds}]",
        "steps: [{treats: [board 1, endband head, sheet/verso, volume 2 / spine]}]",
        "parts: {cartouche: {parts: {rim: {width: 2 mm}}}}\nsteps: [{treats: [rim, cartouche 2]}]",
        "photos: [{id: a, shows: tear}]\nfindings: [{id: tear, part: sheet, seen: torn, photo: a}]",
        "steps: [{treats: spine, hands: unknown}]",
    ],
)
def test_what_is_there_may_be_pointed_at(there: str):
    assert messages(RULE, there) == []


@pytest.mark.parametrize(
    ("lost", "word", "cap"),
    [
        ("findings: [{part: sheet, seen: torn, photo: befor.jpg}]", "befor.jpg", Severity.ERROR),
        ("steps: [{treats: spine, allowed-by: bleeds}]", "bleeds", Severity.ERROR),
        ("steps: [{treats: spine, hands: ZZ}]", "ZZ", Severity.ERROR),
        ("reversibility: {claims: [{takes-off: spine, with: water}]}", "spine", Severity.ERROR),
        ("steps: [{treats: qwrtz 2}]", "qwrtz 2", Severity.WARNING),
    ],
)
def test_what_is_not_there_is_told_once_with_its_word(lost: str, word: str, cap: Severity):
    (one,) = raised(RULE, f"{lost}\ntime: {{spent: 3 h}}")
    assert f"`{word}`" in one.message
    assert one.cap is cap
    assert one.hint


def test_a_near_miss_is_answered_with_the_name_that_is_there():
    (one,) = raised(RULE, "findings: [{part: sheet, seen: torn, photo: befor.jpg}]")
    assert one.hint == "did you mean `before.jpg`?"


def test_parts_layers_photos_findings_and_tests_share_one_set_of_names():
    rule = NAMED["id-twice"]
    (told,) = messages(rule, "findings: [{id: red-bleeds, part: spine, seen: red}]")
    assert told == "the id `red-bleeds` is given twice: to a finding and to a test"
    (told,) = messages(rule, "steps: [{adds: spine, onto: sheet, material: linen}]")
    assert "to a part and to a layer added" in told


@pytest.mark.parametrize(
    ("name", "why"),
    [
        ("not recorded", "not known"),
        ("each", "the member itself"),
        ("inner", "a face"),
        ("lining/", "a slash"),
    ],
)
def test_a_word_that_means_something_else_is_no_name_for_a_layer(name: str, why: str) -> None:
    (told,) = messages(
        NAMED["name-of-layer"], f"steps: [{{adds: {name}, onto: sheet, material: linen}}]"
    )
    assert f"`{name}`" in told and why in told


def test_a_layer_named_for_its_member_of_a_set_has_a_name() -> None:
    assert messages(NAMED["name-of-layer"], "as-found: [{id: volume 1/calf, onto: spine}]") == []
