"""A structure tells the pieces of a layer and the bonds of a thing."""

from __future__ import annotations

from casebook.compute.structure import Bond, How, Structure, Thing

STRUCTURE = Structure(
    {
        one.name: one
        for one in (
            Thing("spine", "spine", part=True),
            Thing("cloth/spine", "cloth", zone="spine"),
            Thing("cloth/board 1", "cloth", zone="board 1"),
        )
    },
    (
        Bond("spine", "cloth/spine", How.STUCK),
        Bond("cloth/spine", "cloth/board 1", How.JOINT),
    ),
)


def test_the_pieces_of_a_layer_come_in_the_order_of_their_names() -> None:
    assert [one.name for one in STRUCTURE.zones("cloth")] == ["cloth/board 1", "cloth/spine"]
    assert [one.name for one in STRUCTURE.zones("spine")] == ["spine"]
    assert list(STRUCTURE.zones("nothing")) == []


def test_a_thing_has_part_in_bonds_from_below_and_from_above() -> None:
    assert [one.how for one in STRUCTURE.at("cloth/spine")] == [How.STUCK, How.JOINT]
    assert [one.how for one in STRUCTURE.at("spine")] == [How.STUCK]


def test_a_structure_says_nothing_that_it_is_not_told() -> None:
    (bare,) = Structure({"a": Thing("a", "a")}).zones("a")
    assert not (bare.apart or bare.patches or bare.partly or bare.temporary or bare.part)
    bond = Bond("a", "b", How.STUCK)
    assert not (bond.reused or bond.guessed or bond.within or bond.opened or bond.adhesives)
