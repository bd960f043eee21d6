"""Claims that the way back does not bear out, and bonds of ours that nobody can open."""

from __future__ import annotations

from casebook.diagnostics import Severity
from casebook.rules import NAMED
from tests.rules.written import case, messages, raised

CLAIMS = NAMED["claim-and-way-back"]
RELEASES = NAMED["release-known"]


def claimed(claim: str, steps: str = "", more: str = "") -> str:
    """A patch on the spine, and a claim about it."""
    patch = "{adds: patch, onto: spine, material: linen, adhesive: wheat-starch-paste}"
    return f"steps: [{steps or patch}]\nreversibility: {{claims: [{claim}]}}\n{more}"


def test_a_claim_that_names_another_agent_is_told_in_what_it_differs():
    (one,) = raised(CLAIMS, claimed("{takes-off: patch, with: acetone}"))
    assert one.message == (
        "`patch` is not opened with that, but with water, given slowly (damp blotter, poultice)"
    )
    assert one.span is not None
    assert "releases" in one.hint


def test_a_claim_against_a_test_is_told_with_the_test():
    tests = "tests: [{part: spine, agent: water, result: bleeds}]"
    (one,) = messages(CLAIMS, claimed("{takes-off: patch, with: water}", more=tests))
    assert one.startswith("`patch` cannot be taken off with that here:")
    assert "water is ruled out by a test" in one


def test_an_agent_that_failed_is_told():
    steps = (
        "{adds: patch, onto: spine, material: linen, adhesive: pva-and-paste}, "
        "{removes: patch, agent: water, outcome: given-up}, "
        "{removes: patch, agent: poultice, outcome: given-up}"
    )
    (one,) = messages(CLAIMS, claimed("{takes-off: patch, with: water}", steps))
    assert "`patch`" in one


def test_pulling_a_cloth_off_a_tissue_leaves_half_of_it():
    steps = (
        "{adds: tissue, onto: spine, material: tengujo, adhesive: wheat-starch-paste}, "
        "{adds: patch, onto: tissue, material: linen, adhesive: polyvinyl-acetate}"
    )
    (one,) = messages(CLAIMS, claimed("{takes-off: patch, with: by hand, leaves: nothing}", steps))
    assert one == "taking off `patch` leaves something: half of the tissue"


def test_what_another_rule_says_of_a_dispersion_is_not_said_twice():
    steps = "{adds: patch, onto: board 1, material: linen, adhesive: polyvinyl-acetate}"
    claim = claimed("{takes-off: patch, with: water, leaves: nothing}", steps)
    assert messages(NAMED["dispersion-leaves-something"], claim)
    assert messages(CLAIMS, claim) == []


def test_a_bond_that_nobody_can_open_is_told_once_for_its_layer():
    steps = "steps: [{adds: patch, onto: [spine, board 1], material: linen, adhesive: unnamed}]\n"
    (one,) = raised(RELEASES, steps + "reversibility: {claims: [{takes-off: cloth-lining}]}")
    assert "nobody can tell how `patch` comes off" in one.message
    assert "how it holds is not named" in one.message
    assert one.cap is Severity.WARNING
    assert one.span is not None


def test_a_claim_or_a_word_that_names_the_layer_is_enough():
    steps = "steps: [{adds: new-patch, onto: spine, material: linen, adhesive: casein}]\n"
    assert messages(RELEASES, steps)
    for word in (
        "reversibility: {claims: [{takes-off: new-patch, with: ammonia}]}",
        "reversibility: the new patch was tried on an offcut",
        "reversibility: not recorded (the recipe is lost)",
    ):
        assert messages(RELEASES, steps + word) == []


def test_a_bond_between_two_layers_of_ours_is_nobodys_loss():
    steps = (
        "steps: [{adds: tissue, onto: spine, material: tengujo, adhesive: wheat-starch-paste}, "
        "{adds: patch, onto: tissue, material: linen, adhesive: unnamed}]"
    )
    assert messages(RELEASES, steps) == []


def test_what_was_found_is_not_asked_after():
    assert messages(RELEASES, "as-found: [{id: old, onto: spine, material: linen}]") == []


def test_a_complete_case_has_nothing_to_answer_for():
    assert case().reversibility is not None
    assert messages(CLAIMS) == []
    assert messages(RELEASES) == []
