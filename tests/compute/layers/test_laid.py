"""Found or added, a layer is told in one shape before it is laid."""

from __future__ import annotations

from casebook.compute.layers.laid import Laid, of_found, of_step
from casebook.compute.layers.names import Names
from casebook.compute.structure import How, Since
from casebook.model.base import items
from tests.compute.layers.told import LEXICON
from tests.compute.written import case


def found(text: str) -> Laid:
    names = Names(case(f"as-found: [{{{text}}}]"), LEXICON)
    return of_found(items(names.case.as_found)[0], names)


def added(text: str) -> Laid:
    names = Names(case(f"steps: [{{{text}}}]"), LEXICON)
    return of_step(names.steps[0], 7, names)


def test_a_found_layer_is_original_only_where_the_record_says_so() -> None:
    assert found("id: a, origin: original").since is Since.ORIGINAL
    assert found("id: a, origin: later").since is Since.FOUND
    assert found("id: a").since is Since.FOUND


def test_a_found_layer_brings_its_measures() -> None:
    one = found("id: a, height: 398 mm, width: 68 mm, thickness: 0.2 mm")
    assert (one.height, one.width, one.thickness) == (398_000, 68_000, 200)


def test_what_a_step_adds_knows_its_step_and_every_bond_too() -> None:
    one = added("adds: a, onto: spine, adhesive: wheat-starch-paste, face: outer, cuts: section 1")
    ((bond,),) = (holding.bonds for holding in one.holdings)
    assert (one.step, bond.step, bond.face, bond.cuts) == (7, 7, "outer", ("section 1",))
    assert bond.since is Since.ADDED


def test_bonds_one_by_one_and_the_rest_by_the_steps_own_words() -> None:
    one = added(
        "adds: guard, onto: [section 1, section 2], adhesive: wheat-starch-paste, "
        "bonds: [{onto: section 1, held: sewn, where: at the fold}, {onto: leaf 1, adhesive: pva}]"
    )
    told = [(holding.places, [bond.how for bond in holding.bonds]) for holding in one.holdings]
    assert told == [
        (("section 1",), [How.HELD]),
        (("leaf 1",), [How.STUCK]),
        (("section 2",), [How.STUCK]),
    ]
    assert one.holdings[0].bonds[0].where == "at the fold"


def test_a_bond_that_says_nothing_of_its_own_holds_as_the_step_does() -> None:
    one = added("adds: a, adhesive: wheat-starch-paste, bonds: [{onto: spine}]")
    assert one.holdings[0].bonds[0].adhesives == ("wheat-starch-paste",)


def test_several_ways_are_a_bond_each_on_its_own_share() -> None:
    one = added(
        "do: mend, adds: mends, onto: leaf, material: kozo-paper, adhesive: wheat-starch-paste, "
        "ways: [{scope: {where: clean edges}}, "
        "{scope: {where: over ink}, material: tengujo, adhesive: gelatine}]"
    )
    bonds = one.holdings[0].bonds
    assert [(bond.adhesives[0], bond.where, bond.partly) for bond in bonds] == [
        ("wheat-starch-paste", "clean edges", True),
        ("gelatine", "over ink", True),
    ]
    assert one.named.words == ("kozo-paper", "tengujo")


def test_pieces_and_places_cover_only_a_part() -> None:
    whole, some = added("adds: a, onto: leaf"), added("adds: a, onto: leaf, scope: where needed")
    assert (whole.patches, some.patches, some.where) == (False, True, "where needed")
    pieces = added("adds: a, onto: leaf, scope: {pieces: [{count: 3}]}")
    assert (pieces.scattered, some.scattered) == (True, False)


def test_what_is_temporary_a_part_half_done_or_made_to_split_says_so() -> None:
    one = added(
        "adds: a, is: part, temporary: yes, outcome: partly, material: {is: x, splits: yes}"
    )
    assert (one.part, one.temporary, one.partly, one.splits) == (True, True, True, True)
