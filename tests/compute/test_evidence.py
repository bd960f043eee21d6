"""What tests and failures say: results read carefully, agents by kind, places and their parts."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook.compute.evidence import Evidence, Result, evidence, kinds_of, result_of, word_kinds
from casebook.model.base import Gap, Unknowing
from casebook.model.materials import Material
from casebook.model.vocabulary import Opener
from casebook.vocabulary import Lexicon, builtin
from tests.compute.written import case
from tests.model.reads import reads

LEXICON = Lexicon(builtin())
WATER = (Opener.MOISTURE,)


@pytest.mark.parametrize(
    "said",
    [
        "bleeds",
        "red bleeds at once",
        "does not bleed but darkens",
        "no change after 30 s, bleeds after 60 s",
        "a brown edge on the blotter",
        "not only bleeds",
        "colour moves",
        "leaves a tideline",
        "stains",
        "safe for ten seconds, then it runs",
        "doubtful, perhaps bleeds",
    ],
)
def test_harm_that_is_not_denied_is_harm(said: str):
    assert result_of(said) is Result.HARM


@pytest.mark.parametrize(
    ("of", "said", "result"),
    [
        ("emulsion", "swells", Result.HARM),
        ("", "gelatin softens at once", Result.HARM),
        ("emulsion", "does not swell", Result.SAFE),
        ("emulsion", "no change; paper beside it swells", Result.HARM),
        ("paste", "swells", Result.UNCLEAR),
        ("", "glue softens", Result.UNCLEAR),
    ],
)
def test_an_emulsion_is_harmed_by_what_a_paste_is_to_do(of: str, said: str, result: Result):
    assert result_of(said, of) is result


@pytest.mark.parametrize(
    "said",
    [
        "no change",
        "no change of colour; dirt moves",
        "none",
        "no bleeding",
        "does not bleed",
        "didn't bleed",
        "holds",
        "No change; droplet on bare paper first: no tideline",
        "no change, nothing on the blotter",
        "without tideline",
        "nothing moved",
        "does not bleed, run or fade",
        "unchanged",
        Gap(Unknowing.NONE),
    ],
)
def test_harm_that_is_denied_and_plain_words_are_harmless(said: str | Gap):
    assert result_of(said) is Result.SAFE


@pytest.mark.parametrize(
    "said",
    [
        "",
        None,
        "acid",
        "not tested",
        "does not hold",
        "not stable",
        "no bleeding seen; doubtful",
        "dirt moves",
        "stain half as dark",
        "swells and rolls off; stain lighter",
        "see photo",
        Gap(Unknowing.NOT_RECORDED),
        Gap(Unknowing.UNKNOWN),
    ],
)
def test_what_cannot_be_read_with_certainty_is_unclear(said: str | Gap | None):
    assert result_of(said) is Result.UNCLEAR


@given(st.text())
def test_any_result_at_all_is_read(said: str):
    assert result_of(said) in Result


@pytest.mark.parametrize(
    ("word", "kinds"),
    [
        ("water", {Opener.MOISTURE}),
        ("gellan", {Opener.MOISTURE}),
        ("wheat-starch-paste", {Opener.MOISTURE}),
        ("ethanol", {Opener.SOLVENT}),
        ("solvent gel", {Opener.SOLVENT}),
        ("amylase", {Opener.ENZYME, Opener.MOISTURE}),
        ("steam", {Opener.HEAT, Opener.MOISTURE}),
        ("heat", {Opener.HEAT}),
        ("by hand", {Opener.MECHANICAL}),
        ("eraser", set()),
        ("moonlight", set()),
    ],
)
def test_the_vocabulary_says_what_kind_of_agent_a_word_is(word: str, kinds: set[Opener]):
    assert word_kinds(word, LEXICON) == kinds


def test_a_mixture_and_a_carrier_bring_their_own_kinds():
    mixed = reads(Material, "{mix: {ethanol: 1, water: 1}, basis: volume}")
    assert kinds_of(mixed, LEXICON) == {Opener.MOISTURE, Opener.SOLVENT}
    carried = reads(Material, "{is: acetone, carrier: methyl-cellulose 4 %}")
    assert kinds_of(carried, LEXICON) == {Opener.MOISTURE, Opener.SOLVENT}
    assert kinds_of(Gap(Unknowing.NONE), LEXICON) == set()


def found(text: str) -> Evidence:
    return evidence(case(text), LEXICON)


def test_a_part_that_bleeds_forbids_that_kind_of_agent_there_and_no_other():
    seen = found("tests: [{id: t, part: endband head, of: silk, agent: water, result: bleeds}]")
    (one,) = seen.harm(["endband head"], WATER)
    assert (one.id, one.of, one.agent) == ("t", "silk", "water")
    assert seen.harm(["endband tail"], WATER) == ()
    assert seen.harm(["endband head"], (Opener.SOLVENT,)) == ()


def test_a_test_that_did_no_harm_counts_for_the_part_and_all_within_it():
    seen = found("tests: [{part: board, agent: water, result: no change}]")
    assert seen.tested(["board 1"], WATER)
    assert seen.tested(["board/corner"], WATER)
    assert not seen.tested(["boards"], WATER)
    assert not seen.tested(["board 1"], (Opener.SOLVENT,))


def test_what_only_the_ink_of_a_title_does_says_nothing_of_the_rest_of_the_cover():
    text = "tests: [{part: cover/title, of: ink, agent: water, result: bleeds}]"
    assert not found(text).harm(["cover"], WATER)
    assert found(text).harm(["cover/title"], WATER)
    assert found(text).harm_in(["cover"], WATER)


def test_a_test_on_a_corner_says_nothing_of_the_board_unless_it_harms():
    seen = found("tests: [{part: board 1/corner, agent: water, result: holds}]")
    assert not seen.tested(["board 1"], WATER)
    seen = found("tests: [{part: board 1/corner, agent: water, result: stains}]")
    assert seen.harm(["board 1"], WATER)


def test_a_face_stands_for_its_sheet():
    seen = found("tests: [{part: sheet/verso, agent: water, result: no change}]")
    assert seen.tested(["sheet"], WATER)


def test_what_is_done_dry_needs_no_test():
    assert found("title: none").tested(["spine"], (Opener.MECHANICAL,))
    assert not found("title: none").tested(["spine"], WATER)


def test_every_kind_that_acts_together_needs_its_own_test():
    seen = found("tests: [{part: spine, agent: water, result: no change}]")
    assert not seen.tested(["spine"], (Opener.MOISTURE, Opener.HEAT))


def test_a_test_on_a_stand_in_or_with_an_unclear_result_counts_for_nothing():
    seen = found(
        "tests: [{part: spine, agent: water, result: no change, stand-in: offcut},"
        " {part: spine, agent: water, result: wetted}]"
    )
    assert not seen.tested(["spine"], WATER)
    assert seen.harm(["spine"], WATER) == ()


def test_that_old_adhesive_moves_is_no_harm_to_the_part():
    seen = found("tests: [{part: sheet, of: old tape, agent: acetone, result: dissolves}]")
    assert seen.harm(["sheet"], (Opener.SOLVENT,)) == ()
    assert not seen.tested(["sheet"], (Opener.SOLVENT,))


def test_an_agent_that_was_given_up_failed_there():
    seen = found(
        "as-found: [{id: glue, onto: spine, material: animal-glue}]\n"
        "steps: [{removes: glue, agent: water, outcome: given-up}]"
    )
    (one,) = seen.failures(["glue"])
    assert (one.agent, one.kinds) == ("water", {Opener.MOISTURE})
    assert seen.failures(["spine"]) == ()


def test_an_agent_that_was_tried_and_given_up_failed_there_and_a_tool_did_not():
    seen = found(
        "as-found: [{id: glue, onto: spine, material: animal-glue}]\n"
        "steps:\n"
        "  - removes: glue\n"
        "    agent: {is: water, applied: poultice}\n"
        "    tried:\n"
        "      - {what: solvent, material: acetone, outcome: given-up}\n"
        "      - {what: brush, material: linen, outcome: given-up}\n"
        "      - {what: more water, material: ethanol, outcome: chosen}\n"
    )
    assert [one.agent for one in seen.failures(["glue"])] == ["acetone"]


def test_the_order_of_the_record_makes_no_difference():
    one = "{id: a, part: spine, agent: water, result: bleeds}"
    other = "{id: b, part: leaf, agent: ethanol, result: no change}"
    assert found(f"tests: [{one}, {other}]") == found(f"tests: [{other}, {one}]")
