"""The treatment: short forms of steps, drying and scope; what a step says and of what."""

from __future__ import annotations

import pytest

from casebook.model import treatment
from casebook.model.base import Gap, Unknowing, schema
from casebook.model.details import Bath, Drying, Fate, Grain, Scope, WentTo
from casebook.model.materials import Material
from casebook.model.outcome import Claim, Lump, Reversibility
from casebook.model.treatment import VERBS, Recipe, Step
from casebook.values.durations import Duration
from casebook.values.quantities import Acidity, Count, Length, Percent
from tests.model.reads import holds, reads


def test_every_field_is_documented_and_no_key_is_a_trap():
    holds(treatment)


def test_overnight_under_blotter_and_weights_says_how_long_and_under_what():
    found = reads(Drying, "overnight under blotter + weights")
    assert found == Drying(for_=Duration.parse("overnight"), under=("blotter", "weights"))
    assert isinstance(found.for_, Duration)
    assert (found.for_.nights, found.for_.least) == (1, 0)


@pytest.mark.parametrize(
    ("text", "drying"),
    [
        ("2 h", Drying(for_=Duration.parse("2 h"))),
        ("under weights", Drying(under=("weights",))),
        ("3 days between felts", Drying(for_=Duration.parse("3 days"), under=("felts",))),
        ("not recorded", Drying(for_=Gap(Unknowing.NOT_RECORDED))),
    ],
)
def test_drying_may_say_only_a_part_of_it(text: str, drying: Drying):
    assert reads(Drying, text) == drying


def test_plain_text_is_a_step_in_words_only():
    assert reads(Step, "photographed the tooling") == Step(words="photographed the tooling")


def test_each_verb_of_a_step_is_a_structural_key():
    by_name = {info.name: info for info in schema(Step).values()}
    assert all(by_name[verb].structural for verb in VERBS)


def test_a_step_says_what_was_laid_on_what_and_with_what():
    found = reads(
        Step,
        "{do: line, adds: lining, onto: spine, material: tengujo 5 g/m², adhesive: paste,"
        " grain: along, cut: {height: 390 mm}, time: 40 min}",
    )
    assert (found.adds, found.onto, found.grain) == ("lining", ("spine",), Grain.ALONG)
    assert found.adhesive == Material(is_="paste")
    assert found.time == Duration.parse("40 min")


def test_a_layer_may_lie_on_several_parts_each_with_its_width():
    found = reads(Step, "{adds: cloth, spans: {spine: 300 mm, board 1: 40 mm}}")
    assert found.spans == {"spine": Length.parse("300 mm"), "board 1": Length.parse("40 mm")}


def test_what_was_not_named_is_told_apart_from_what_was_not_there():
    assert reads(Step, "{joins: a, adhesive: unnamed}").adhesive == Gap(Unknowing.UNNAMED)
    assert reads(Step, "{joins: a, adhesive: none}").adhesive == Gap(Unknowing.NONE)


def test_a_scope_counts_or_says_where():
    assert reads(Scope, "where needed") == Scope(where="where needed")
    found = reads(Scope, "{done: 40, of: 52, rest: not recorded}")
    assert (found.done, found.of) == (Count.parse("40"), Count.parse("52"))
    assert found.rest == Gap(Unknowing.NOT_RECORDED)


def test_a_bath_may_be_a_liquid_alone():
    assert reads(Bath, "deionised water") == Bath(liquid=Material(is_="deionised water"))
    assert reads(Bath, "{liquid: water, ph: 8.0}").ph == Acidity.parse("8.0")


def test_what_was_removed_has_a_fate_and_may_be_left_in_part():
    found = reads(Step, "{removes: glue, fate: kept with object, leaves: glue}")
    assert found.fate == WentTo(is_=Fate.KEPT)
    assert found.leaves is not None
    assert not isinstance(found.leaves, Gap)
    assert found.leaves.layer == "glue"


def test_reversibility_may_be_prose_or_claims():
    assert reads(Reversibility, "Water opens it.") == Reversibility(says="Water opens it.")
    found = reads(Reversibility, "claims: [{takes-off: lining, with: ethanol 50 %}]")
    ethanol = Material(is_="ethanol", concentration=Percent.parse("50 %"))
    assert found.claims == (Claim(takes_off=("lining",), with_=ethanol),)


def test_a_lump_of_time_is_what_was_spent():
    assert reads(Lump, "at least 113 h") == Lump(spent=Duration.parse("at least 113 h"))


def test_a_recipe_is_a_step_with_a_name():
    assert reads(Recipe, "{label: Lining, step: {do: line}}").step == Step(do="line")
