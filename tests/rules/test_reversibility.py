"""A note on how it comes off for every layer that was added and is still there."""

from __future__ import annotations

from casebook.diagnostics import Severity
from casebook.rules import NAMED
from tests.rules.written import raised

RULE = NAMED["reversibility-of-layers"]


def told(changes: str) -> list[tuple[str, Severity]]:
    return [(one.message, one.cap) for one in raised(RULE, changes)]


def test_without_prose_and_claim_each_layer_is_named():
    (one,) = told("# no reversibility")
    assert one == ("the record does not say how `cloth-lining` can be taken off again", 3)


def test_with_prose_a_layer_without_a_claim_is_only_suggested():
    (one,) = told("reversibility: the lining lifts with water")
    assert one == ("no claim under `reversibility` says how `cloth-lining` comes off again", 1)


def test_a_claim_about_another_layer_does_not_serve():
    claims = "reversibility: {claims: [{takes-off: patch, with: water}]}\n"
    steps = "steps: [{adds: patch, onto: spine, material: linen}]"
    assert len(told(claims + steps)) == 1


def test_a_claim_about_one_zone_of_a_layer_serves():
    assert told("reversibility: {claims: [{takes-off: cloth-lining/spine, with: water}]}") == []


def test_what_is_temporary_gone_or_a_part_needs_no_note():
    gone = "{adds: facing, onto: sheet, material: tengujo}, {removes: facing}"
    temporary = "{adds: shim, onto: sheet, material: paper, temporary: yes}"
    part = "{adds: ties, is: part, material: linen}"
    assert told(f"steps: [{gone}, {temporary}, {part}]") == []


def test_that_nobody_wrote_it_down_needs_a_reason():
    assert len(told("reversibility: not recorded")) == 1
    assert told("reversibility: not recorded (the adhesive was never named)") == []
