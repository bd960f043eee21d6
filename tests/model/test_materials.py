"""Materials as written: in a word, with a figure behind it, or with all that is known."""

from __future__ import annotations

import pytest

from casebook.model import materials
from casebook.model.materials import Basis, Material
from casebook.values.durations import Duration
from casebook.values.quantities import Count, Grammage, Percent, Ratio
from tests.model.reads import holds, reads


def test_every_field_is_documented_and_no_key_is_a_trap():
    holds(materials)


def test_a_word_alone_is_the_material():
    assert reads(Material, "linen") == Material(is_="linen")


@pytest.mark.parametrize(
    ("text", "name", "strength"),
    [
        ("methyl-cellulose 4 %", "methyl-cellulose", "4 %"),
        ("methyl cellulose, 2.5%", "methyl cellulose", "2.5%"),
        ("gelatine about 1 % w/v", "gelatine", "about 1 % w/v"),
        ("ethanol 70 % v/v", "ethanol", "70 % v/v"),
    ],
)
def test_a_per_cent_behind_the_name_is_the_concentration(text: str, name: str, strength: str):
    assert reads(Material, text) == Material(is_=name, concentration=Percent.parse(strength))


@pytest.mark.parametrize("text", ["tengujo 5 g/m²", "tengujo, 5 g/m2", "tengujo 5 gsm"])
def test_a_mass_per_area_behind_the_name_is_the_weight(text: str):
    assert reads(Material, text) == Material(is_="tengujo", weight=Grammage.parse("5 g/m²"))


def test_a_number_that_is_no_measure_belongs_to_the_name():
    assert reads(Material, "paste no. 3") == Material(is_="paste no. 3")


def test_each_figure_keeps_its_own_place_in_the_text():
    span = reads(Material, "methyl-cellulose 4 %").span("concentration")
    assert span is not None
    assert (span.column, span.end_column) == (18, 21)


def test_doubt_about_a_material_keeps_what_was_ruled_out_and_why():
    found = reads(Material, "{perhaps: [animal-glue, paste], not: bitumen, evidence: not tacky}")
    assert (found.perhaps, found.not_) == (("animal-glue", "paste"), ("bitumen",))
    assert found.evidence == "not tacky"


def test_a_mixture_has_parts_by_name():
    found = reads(Material, "{mix: {ethanol: 1, water: 2}, basis: volume}")
    assert {name: str(part) for name, part in found.mix.items()} == {"ethanol": "1", "water": "2"}
    assert all(isinstance(part, Ratio | Count) for part in found.mix.values())
    assert found.basis is Basis.VOLUME


def test_an_agent_tells_its_carrier_and_how_long_it_stayed():
    found = reads(Material, "{is: water, carrier: methyl-cellulose 4 %, lasts: 20 min, times: 3}")
    carrier = Material(is_="methyl-cellulose", concentration=Percent.parse("4 %"))
    assert found.carrier == carrier
    assert (found.lasts, found.times) == (Duration.parse("20 min"), Count.parse("3"))
