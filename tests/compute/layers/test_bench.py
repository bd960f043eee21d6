"""Things are put on the bench, held, parted and taken; what rides on what is told."""

from __future__ import annotations

from dataclasses import replace

from casebook.compute.layers.bench import Bench
from casebook.compute.layers.names import Names
from casebook.compute.structure import Bond, How, Since, Thing
from tests.compute.layers.told import LEXICON
from tests.compute.written import case


def bench(*pairs: tuple[str, str], across: tuple[tuple[str, str], ...] = ()) -> Bench:
    """A bench of layers, each pair saying what lies on what, or beside what."""
    found = Bench(Names(case("id: test"), LEXICON))
    for name in sorted({one for pair in (*pairs, *across) for one in pair}):
        found.put(Thing(name, name, since=Since.ADDED))
    for upper, lower in pairs:
        found.hold(Bond(lower, upper, How.STUCK))
    for upper, lower in across:
        found.hold(Bond(lower, upper, How.JOINT))
    return found


def test_what_lies_wholly_on_a_thing_rides_on_it_at_whatever_height() -> None:
    found = bench(("b", "a"), ("c", "b"), ("d", "c"), ("e", "other"))
    assert found.riders({"a"}) == {"b", "c", "d"}


def test_what_also_holds_elsewhere_does_not_ride_nor_what_is_held_by_it_alone() -> None:
    found = bench(("b", "a"), ("c", "b"), ("c", "board"), ("d", "c"))
    assert found.riders({"a"}) == {"b"}
    assert found.riders({"c"}) == {"d"}


def test_a_zone_rides_only_with_the_zones_beside_it() -> None:
    held = bench(("z1", "a"), ("z2", "board"), across=(("z1", "z2"),))
    assert held.riders({"a"}) == set()
    assert held.riders({"a", "board"}) == {"z1", "z2"}


def test_pieces_that_hold_to_nothing_else_ride_together() -> None:
    found = bench(("inner", "a"), ("cover", "outer"), across=(("inner", "outer"),))
    assert found.riders({"a"}) == {"inner", "outer", "cover"}


def test_a_thing_never_holds_to_itself() -> None:
    found = bench(("b", "a"))
    found.hold(Bond("a", "a", How.STUCK))
    assert len(found.bonds) == 1


def test_what_is_taken_takes_its_bonds_and_covers_with_it() -> None:
    found = bench(("b", "a"), ("c", "b"))
    found.cover("a", "c")
    found.hide("print", "c")
    assert found.take("c").name == "c"
    frozen = found.freeze()
    assert [(one.lower, one.upper) for one in frozen.bonds] == [("a", "b")]
    assert (frozen.covers, frozen.hides) == ((), ())


def test_a_bond_takes_the_place_of_mere_covering() -> None:
    found = bench(("b", "a"))
    found.put(Thing("c", "c"))
    found.cover("a", "c")
    found.hold(Bond("a", "c", How.STUCK))
    assert found.covers == {}


def test_what_lay_on_what_went_is_found_further_down() -> None:
    found = bench(("b", "a"), ("c", "b"))
    for name in ("c", "b"):
        found.take(name)
    assert list(found.present("c")) == ["a"]
    assert list(found.present("nothing")) == []


def test_while_nothing_changes_the_structure_is_the_same_one() -> None:
    found = bench(("b", "a"))
    first = found.freeze()
    assert found.freeze() is first
    found.set_apart(["b"], False)
    assert found.freeze() is first
    found.set_apart(["b"], True)
    assert found.freeze() is not first
    assert not first.things["b"].apart


def test_all_that_hangs_together_is_found_from_any_of_it() -> None:
    found = bench(("b", "a"), ("d", "c"), across=(("b", "e"),))
    assert found.together(("e",)) == {"a", "b", "e"}


def test_an_original_part_is_told_from_a_part_that_was_added() -> None:
    found = bench(("b", "a"))
    found.put(Thing("spine", "spine", part=True))
    found.put(replace(found.things["a"], part=True))
    assert found.original("spine")
    assert not found.original("a")
