"""Materials by the vocabulary: what is wider than what, what is wet, what has a grain."""

from __future__ import annotations

import pytest

from casebook.model.materials import Material
from casebook.model.treatment import Step
from casebook.model.vocabulary import Term
from casebook.rules.look import Look
from casebook.rules.matter import (
    adhesives,
    agents,
    classes,
    dispersion,
    has_grain,
    ids,
    solvents,
    sorts,
    terms,
    water_borne,
    words,
)
from casebook.vocabulary import Lexicon
from tests.model.reads import reads
from tests.rules.written import TODAY, archive, case, look


def material(text: str) -> Material:
    return reads(Material, text)


def test_a_word_is_all_that_its_wider_terms_are():
    assert ids(look(), "materials", "tengujo") >= {"tengujo", "japanese-tissue", "paper"}
    assert ids(look(), "materials", "a word of my own") == frozenset()


def test_wider_terms_that_go_in_a_circle_end_where_it_closes():
    one = case()
    circle = {"a": Term(label="a", broader="b"), "b": Term(label="b", broader="a")}
    seen = Look(one, archive(one), TODAY, Lexicon({"materials": circle}))
    assert [name for name, _ in terms(seen, "materials", "a")] == ["a", "b"]


@pytest.mark.parametrize(
    ("text", "named"),
    [
        ("is: linen", ("linen",)),
        ("perhaps: [animal-glue, dextrin]", ("animal-glue", "dextrin")),
        ("mix: {ethanol: 1, water: 1}", ("ethanol", "water")),
    ],
)
def test_a_material_is_what_it_is_may_be_or_is_mixed_of(text: str, named: tuple[str, ...]):
    assert words(material(text)) == named


@pytest.mark.parametrize(
    ("text", "wet"),
    [
        ("is: water", True),
        ("is: wheat-starch-paste", True),
        ("is: ethanol", False),
        ("{is: ethanol, carrier: methyl-cellulose}", True),
        ("mix: {ethanol: 1, water: 1}", True),
        ("is: hydroxypropyl-cellulose", False),
        ("{is: methyl-cellulose, solvent: ethanol}", False),
        ("{is: gelatine, solvent: water}", True),
    ],
)
def test_water_comes_with_a_material_its_carrier_or_its_mixture(text: str, wet: bool):
    assert water_borne(look(), material(text)) is wet


def test_nothing_known_is_neither_wet_nor_of_any_sort():
    assert not water_borne(look(), None)
    assert sorts(look(), None) == classes(look(), None) == solvents(look(), None) == frozenset()


def test_solvents_are_found_in_mixtures_and_carriers():
    assert solvents(look(), material("mix: {ethanol: 1, water: 1}")) == {"ethanol"}
    assert solvents(look(), material("{is: acrylic-resin, solvent: acetone}")) == {"acetone"}
    assert solvents(look(), material("is: water")) == frozenset()


@pytest.mark.parametrize(
    ("name", "grained"),
    [
        ("linen", True),
        ("machine-made-paper", True),
        ("kraft-paper", True),
        ("tengujo", False),
        ("handmade-paper", False),
        ("kozo-paper", False),
        ("handmade cotton paper of ours", False),
    ],
)
def test_hand_made_paper_has_no_grain_that_could_be_told(name: str, grained: bool):
    assert has_grain(look(), material(f"is: {name}")) is grained


def test_the_nearest_term_that_speaks_of_grain_is_believed():
    one = case()
    own = {
        "ours": Term(label="ours", broader="kozo-paper", grain=True),
        "kozo-paper": Term(label="kozo paper", grain=False),
    }
    seen = Look(one, archive(one), TODAY, Lexicon({"materials": own}))
    assert has_grain(seen, material("is: ours"))
    assert not has_grain(seen, material("is: kozo-paper"))


def test_a_step_has_agents_and_adhesives_in_its_bath_its_bonds_and_its_ways():
    step = reads(
        Step,
        "{agent: water, bath: {liquid: deionised-water, conditioned: calcium-hydroxide}, "
        "adhesive: paste, bonds: [{onto: spine, adhesive: polyvinyl-acetate}], "
        "ways: [{scope: edges, agent: ethanol, adhesive: isinglass}]}",
    )
    used = [words(one)[0] for one in agents(step)]
    assert used == ["water", "deionised-water", "calcium-hydroxide", "ethanol"]
    stuck = [words(one)[0] for one in adhesives(step)]
    assert stuck == ["paste", "polyvinyl-acetate", "isinglass"]


def test_a_mixture_with_a_dispersion_is_one():
    assert dispersion(look(), material("is: pva-and-paste"))
    assert dispersion(look(), material("mix: {polyvinyl-acetate: 1, methyl-cellulose: 1}"))
    assert not dispersion(look(), material("is: wheat-starch-paste"))
