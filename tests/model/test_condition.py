"""Condition and evidence: findings, tests, earlier treatments, layers, follow-ups."""

from __future__ import annotations

from casebook.model import condition
from casebook.model.base import Gap, Unknowing
from casebook.model.condition import (
    Finding,
    FollowUp,
    Found,
    Hazard,
    History,
    Holding,
    Origin,
    Stage,
)
from casebook.model.materials import Material
from casebook.values.dates import Date
from casebook.values.quantities import Acidity
from tests.model.reads import holds, reads


def test_every_field_is_documented_and_no_key_is_a_trap():
    holds(condition)


def test_what_is_seen_is_kept_apart_from_what_it_means():
    found = reads(Finding, "{part: joint front, damage: broken, seen: split, means: board loose}")
    assert (found.part, found.damage) == (("joint front",), ("broken",))
    assert (found.seen, found.means, found.stage) == ("split", "board loose", None)
    assert reads(Finding, "stage: after").stage is Stage.AFTER


def test_a_search_that_found_nothing_is_a_finding():
    found = reads(Finding, "{sought: watermark, found: not seen, because: the lining hides it}")
    assert (found.sought, found.found) == ("watermark", "not seen")


def test_a_layer_on_arrival_may_be_held_without_adhesive():
    found = reads(Found, "{id: stitches, joins: [board 1, text-block], held: sewn, adhesive: none}")
    assert (found.joins, found.held) == (("board 1", "text-block"), ("sewn",))
    assert found.adhesive == Gap(Unknowing.NONE)
    assert reads(Found, "{id: glue, origin: later}").origin is Origin.LATER


def test_a_test_may_use_several_agents():
    found = reads(condition.Test, "{id: ink, part: sheet, agent: [water, ethanol 70 %], ph: 5.5}")
    assert not isinstance(found.agent, Gap)
    assert [one.is_ for one in found.agent] == ["water", "ethanol"]
    assert found.agent[0] == Material(is_="water")
    assert found.ph == Acidity.parse("5.5")


def test_hands_of_an_earlier_treatment_may_be_unknown():
    found = reads(History, "{date: 19XX, hands: unknown, what: rebacked}")
    assert found.hands == Gap(Unknowing.UNKNOWN)
    assert found.date == Date.parse("19XX")


def test_a_later_look_says_how_a_layer_stands():
    found = reads(FollowUp, "{date: 2032-02-01, layer: lining, state: sound}")
    assert (found.layer, found.state) == (("lining",), Holding.SOUND)


def test_a_danger_may_be_named_in_a_word():
    assert reads(Hazard, "mould") == Hazard(what="mould")
