"""The treatment plan: the courses considered, the approval, and what changed after it."""

from __future__ import annotations

from casebook.model import proposal
from casebook.model.base import Audience, schema
from casebook.model.materials import Material
from casebook.model.proposal import Change, Choice, Decision, Option, Proposal
from casebook.values.dates import Date
from casebook.values.durations import Duration
from tests.model.reads import holds, reads


def test_every_field_is_documented_and_no_key_is_a_trap():
    holds(proposal)


def test_an_option_says_its_time_its_materials_and_what_became_of_it():
    found = reads(Option, "{name: reback, materials: [linen, paste], time: 14 h, outcome: chosen}")
    assert found.materials == (Material(is_="linen"), Material(is_="paste"))
    assert (found.time, found.outcome) == (Duration.parse("14 h"), Choice.CHOSEN)


def test_a_choice_may_be_written_with_a_space():
    assert reads(Option, "outcome: given up").outcome is Choice.GIVEN_UP


def test_the_cost_of_an_option_is_for_the_client():
    assert schema(Option)["cost"].seen is Audience.CLIENT


def test_a_plan_keeps_its_approval_and_its_changes():
    found = reads(
        Proposal,
        "{use: reading, decided: {date: 2031-02-10, by: owner, limits: shape of the spine},"
        " changes: {what: no new sewing, agreed: by letter}}",
    )
    day = Date.parse("2031-02-10")
    assert found.decided == Decision(date=day, by=("owner",), limits="shape of the spine")
    assert found.changes == (Change(what="no new sewing", agreed="by letter"),)
