"""Claims on how a layer comes off, held against the computed way back."""

from __future__ import annotations

from casebook.compute.structure import Structure
from casebook.compute.way_back.claims import Against, disagreements, layers_of, uncovered
from casebook.model.outcome import Claim
from tests.compute.way_back.built import LEXICON, PASTE, PVA, layer, part, soaked, structure, stuck
from tests.compute.way_back.examples import LINED, LINED_MAP, PULLED
from tests.compute.written import case
from tests.model.reads import reads


def told(
    claim: str, built: Structure, more: str = "title: invented"
) -> list[tuple[str, Against, str]]:
    one = case(f"reversibility: {{claims: [{claim}]}}\n{more}")
    return [(one.layer, one.against, one.why) for one in disagreements(one, built, LEXICON)]


def pasted(*adhesives: str, on: str = "board 1") -> Structure:
    return structure(part(on), layer("lining", "linen"), stuck(on, "lining", *adhesives))


def test_a_claim_that_the_way_back_bears_out_is_left_alone():
    assert told("{takes-off: lining, with: water, leaves: nothing}", pasted(PASTE)) == []
    assert told("{takes-off: sheet-lining, with: damp blotter}", LINED_MAP) == []
    assert told("{takes-off: lining}", pasted(PASTE)) == []


def test_an_agent_that_is_not_among_those_that_open_it_is_told_with_those_that_do():
    (one,) = told("{takes-off: lining, with: acetone}", pasted(PASTE))
    assert one == (
        "lining",
        Against.OTHER_AGENT,
        "water, given slowly (damp blotter, poultice)",
    )


def test_an_agent_that_a_test_rules_out_here_is_told_with_the_test():
    tests = "tests: [{part: board 1, agent: water, result: stains}]"
    (one,) = told("{takes-off: lining, with: water}", pasted(PASTE), tests)
    assert one[1] is Against.FAILS_HERE
    assert "water is ruled out by a test: it harms board 1" in one[2]


def test_an_agent_that_is_ruled_out_where_another_works_is_told_too():
    tests = "tests: [{part: board 1, agent: water, result: stains}]"
    (one,) = told("{takes-off: lining, with: water}", pasted(PVA), tests)
    assert one[1:] == (
        Against.FAILS_HERE,
        "water is ruled out by a test: it harms board 1",
    )


def test_an_agent_that_cannot_come_to_it_is_told_with_what_keeps_it_off():
    sealed = structure(
        part("board 1"), layer("lining", "polyester-film"), stuck("board 1", "lining", PASTE)
    )
    (one,) = told("{takes-off: lining, with: water}", sealed)
    assert one[1] is Against.OUT_OF_REACH
    assert "moisture may not go through the lining" in one[2]


def test_what_hardly_ever_comes_off_is_told():
    (one,) = told("{takes-off: lining, with: water}", pasted(PVA, on="leaf"))
    assert one[1] is Against.CANNOT
    assert "hardly anything opens polyvinyl acetate" in one[2]


def test_where_nobody_named_the_bond_the_claim_is_the_word_on_it():
    assert told("{takes-off: lining, with: water}", pasted()) == []
    assert told("{takes-off: lining, with: water}", pasted("casein")) == []


def test_a_claim_that_nothing_stays_is_told_of_a_dispersion_on_an_original():
    (one,) = told("{takes-off: lining, with: water, leaves: nothing}", pasted(PVA))
    assert one == (
        "lining",
        Against.LEAVES,
        "polyvinyl acetate that has gone into board 1 stays in it",
    )
    assert told("{takes-off: lining, with: water, leaves: a film}", pasted(PVA)) == []


def test_a_claim_that_pulling_leaves_nothing_is_told_of_the_half_that_stays():
    (one,) = told("{takes-off: linen-lining, with: by hand, leaves: none}", PULLED)
    assert one == ("linen-lining", Against.LEAVES, "half of the release tissue")
    assert told("{takes-off: linen-lining, with: by hand, leaves: half the tissue}", PULLED) == []


def test_what_is_soaked_in_does_not_leave_nothing():
    size = structure(part("spine"), layer("size", "gelatine"), soaked("spine", "size"))
    (one,) = told("{takes-off: size, leaves: nothing}", size)
    assert one[1:] == (Against.LEAVES, "the size, soaked into the spine")
    assert told("{takes-off: size, with: none, leaves: all of it}", size) == []


def test_a_claim_speaks_of_a_layer_by_any_of_its_zones_and_of_no_part():
    claim = reads(Claim, "{takes-off: [linen-lining/spine, spine, lost]}")
    assert layers_of(claim, LINED) == ("linen-lining",)


def test_a_layer_of_ours_that_no_claim_covers_is_named():
    one = case("reversibility: {claims: [{takes-off: linen-lining}]}")
    assert uncovered(one, PULLED) == ("release-tissue",)
    assert uncovered(case("title: none"), LINED) == ("linen-lining", "release-tissue")


def test_without_claims_there_is_nothing_to_hold_against_the_way_back():
    assert disagreements(case("reversibility: it comes off"), PULLED, LEXICON) == ()
