"""Which agents of a release are left where some have failed."""

from __future__ import annotations

from casebook.compute.evidence import Failed
from casebook.compute.releases import Means
from casebook.compute.way_back.agents import agents_left
from casebook.model.vocabulary import Opener
from tests.compute.way_back.built import LEXICON, WATER


def test_a_release_whose_agent_nobody_knows_is_closed_by_any_failure_of_its_kind():
    usual = Means("the usual stuff", (Opener.SOLVENT,), 4)
    solvent = Failed("lining", "acetone", frozenset({Opener.SOLVENT}))
    assert agents_left(usual, [solvent], set(), LEXICON) == ""
    assert agents_left(usual, [Failed("lining", "water", WATER)], set(), LEXICON) == usual.agent


def test_where_every_solvent_failed_none_is_proposed_and_where_one_did_another_may_be():
    chosen = Means("organic solvent chosen by solubility chart", (Opener.SOLVENT,), 2)
    kinds = frozenset({Opener.SOLVENT})
    assert agents_left(chosen, [Failed("lining", "acetone", kinds)], set(), LEXICON)
    assert agents_left(chosen, [Failed("lining", "solvent", kinds)], set(), LEXICON) == ""


def test_an_agent_that_is_of_the_kind_that_failed_fails_too():
    blotter = Means("damp blotter, or gellan", (Opener.MOISTURE,), 4)
    assert agents_left(blotter, [Failed("lining", "water", WATER)], set(), LEXICON) == "gellan"


def test_an_agent_that_would_harm_is_left_out_where_another_will_do():
    both = Means("ethanol, acetone or water", (Opener.SOLVENT,), 4)
    assert agents_left(both, [], {Opener.MOISTURE}, LEXICON) == "ethanol or acetone"
    assert agents_left(both, [], set(), LEXICON) == "ethanol, acetone or water"
