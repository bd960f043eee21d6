"""Materials are found wherever a record names them, as written."""

from __future__ import annotations

from casebook.compute.uses import Role, material_name, uses
from casebook.model.base import Gap, Unknowing
from casebook.model.materials import Material
from tests.compute.written import LEDGER, case


def test_the_ledger_names_its_layers_adhesives_agent_and_carrier() -> None:
    found = [(use.material, use.role) for use in uses(case(LEDGER))]
    assert found == [
        ("water", Role.AGENT),
        ("methyl-cellulose", Role.CARRIER),
        ("tengujo", Role.LAYER),
        ("wheat-starch-paste", Role.ADHESIVE),
        ("linen", Role.LAYER),
        ("pva", Role.ADHESIVE),
    ]


def test_a_use_says_where_and_from_which_lot() -> None:
    use = uses(case(LEDGER))[2]
    assert (use.episode, use.step, use.layer) == ("2", 3, "release-lining")
    assert (use.parts, use.lot) == (("spine",), "24-7")


def test_mixtures_guesses_baths_and_tests_are_uses_too() -> None:
    text = """
steps:
  - {treats: sheet, agent: {mix: {ethanol: 1, water: 1}}, adhesive: {perhaps: [animal-glue]}}
  - {treats: sheet, bath: {liquid: deionised water, conditioned: calcium hydroxide}}
tests: [{part: sheet, agent: [acetone]}]
"""
    found = {(use.material, use.role, use.mixed, use.perhaps) for use in uses(case(text))}
    assert found == {
        ("ethanol", Role.AGENT, True, False),
        ("water", Role.AGENT, True, False),
        ("animal-glue", Role.ADHESIVE, False, True),
        ("deionised water", Role.BATH, False, False),
        ("calcium hydroxide", Role.CONDITIONER, False, False),
        ("acetone", Role.TEST, False, False),
    }


def test_what_was_there_without_a_name_is_kept_and_what_was_not_there_is_no_use() -> None:
    text = "steps: [{adds: a, adhesive: unnamed}, {adds: b, adhesive: none}, {adds: c}]"
    assert [(use.material, use.named) for use in uses(case(text))] == [("unnamed", False)]


def test_a_material_has_one_name_for_a_table() -> None:
    assert material_name(Material(is_="linen")) == "linen"
    assert material_name(Material(perhaps=("calf", "sheep"))) == "calf"
    assert material_name(Gap(Unknowing.UNKNOWN)) == material_name(None) == ""


def test_the_adhesive_of_one_of_several_bonds_is_used_where_that_bond_is() -> None:
    found = uses(
        case(
            "steps: [{adds: strap, material: calf, bonds: [{onto: board 1, adhesive: paste},"
            " {onto: board 2, adhesive: glue}]}]"
        )
    )
    assert [(use.material, use.parts) for use in found] == [
        ("calf", ("board 1", "board 2")),
        ("paste", ("board 1",)),
        ("glue", ("board 2",)),
    ]


def test_solvents_colours_and_what_was_built_up_are_uses_too() -> None:
    found = uses(
        case(
            "steps: [{treats: spine, material: {is: resin, solvent: {mix: {ethanol: 1, water: 1}}}},"
            " {adds: a, onto: spine, material: {built-of: [tengujo, linen], toned: dye before}}]"
        )
    )
    assert [(use.material, use.role.value) for use in found] == [
        ("resin", "layer"),
        ("ethanol", "solvent"),
        ("water", "solvent"),
        ("tengujo", "layer"),
        ("linen", "layer"),
        ("dye", "colour"),
    ]


def test_what_a_new_part_is_made_of_is_used_on_that_part() -> None:
    (use,) = uses(case("steps: [{adds: new-leaf, is: part, material: paper}]"))
    assert use.parts == ("new-leaf",)


def test_in_a_run_a_material_is_used_once_for_each_member() -> None:
    found = uses(case("steps: [{each: [a, b], steps: [{adds: l, onto: spine, material: linen}]}]"))
    assert [(use.layer, use.parts) for use in found] == [
        ("a/l", ("a/spine",)),
        ("b/l", ("b/spine",)),
    ]
