"""What was there on arrival, whatever the order of the list."""

from __future__ import annotations

import itertools

from casebook.compute.structure import Structure
from tests.compute.layers.told import played, told

LAYERS = (
    "{id: old-glue, onto: spine, material: animal-glue}",
    "{id: leather, onto: [old-glue, board 1, board 2], adhesive: {perhaps: [animal-glue]}}",
    "{id: label, onto: leather, adhesive: wheat-starch-paste}",
)


def arrived(*layers: str) -> Structure:
    return played(f"as-found: [{', '.join(layers)}]").moments[0].structure


def test_layers_are_laid_from_below_whatever_their_order() -> None:
    structures = [arrived(*order) for order in itertools.permutations(LAYERS)]
    assert {frozenset(told(one)) for one in structures} == {
        frozenset(
            {
                "old-glue on spine: stuck animal-glue",
                "leather/spine on old-glue: stuck animal-glue guessed",
                "leather/board 1 on board 1: stuck animal-glue guessed",
                "leather/board 2 on board 2: stuck animal-glue guessed",
                "leather/board 1 beside leather/spine",
                "leather/board 2 beside leather/spine",
                "label/spine on leather/spine: stuck wheat-starch-paste",
                "label/board 1 on leather/board 1: stuck wheat-starch-paste",
                "label/board 2 on leather/board 2: stuck wheat-starch-paste",
                "label/board 1 beside label/spine",
                "label/board 2 beside label/spine",
            }
        )
    }


def test_layers_that_lie_on_one_another_in_a_ring_do_no_harm() -> None:
    found = arrived("{id: a, onto: b}", "{id: b, onto: a}", "{id: c, onto: c}")
    assert {"a", "b", "c"} <= set(found.things)


def test_what_joins_two_things_holds_to_both() -> None:
    found = arrived("{id: twine, joins: [board 1, text-block], held: sewn, cuts: section 1}")
    assert told(found) == ["twine on board 1: held sewn", "twine on text-block: held sewn"]
    assert found.bonds[-1].cuts == ("section 1",)


def test_bonds_as_found_stand_one_by_one() -> None:
    found = arrived(
        "{id: mull, bonds: [{onto: spine, adhesive: animal-glue}, "
        "{onto: board 1, adhesive: unnamed, where: 20 mm at the joint}]}"
    )
    assert told(found)[:2] == [
        "mull/spine on spine: stuck animal-glue",
        "mull/board 1 on board 1: stuck partly (20 mm at the joint)",
    ]


def test_original_parts_of_one_thing_are_grown_together() -> None:
    found = played("parts: {strap: {of: board 2, parts: {clasp: {}}}}").final
    assert told(found, grown=True) == ["strap of board 2", "strap/clasp of strap"]
