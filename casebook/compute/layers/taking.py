"""What goes, comes off, is opened, comes back and is joined."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from dataclasses import dataclass, replace

from casebook.compute.layers.bench import ACROSS, Bench
from casebook.compute.structure import Bond, How, Thing


@dataclass(frozen=True, slots=True)
class Group:
    """Things that left together, with the bonds among them and those that held them."""

    things: tuple[Thing, ...]
    among: tuple[Bond, ...]
    beneath: tuple[Bond, ...]


@dataclass(frozen=True, slots=True)
class Left:
    """What became of something taken away: its group, and what stays though it held it.

    `still_held` are pairs: what goes, and the layer or part that holds it still.
    """

    group: Group
    still_held: tuple[tuple[str, str], ...]


def remove(bench: Bench, names: Collection[str]) -> Left:
    """Take things away for good, with what lies wholly on them.

    Original parts that ride on what goes are not lost: they come off and lie apart, with what is
    on them. Parts of the same thing, such as the corner of a board, go with it.
    """
    left = _freed(bench, names, bench.riders(names))
    going = {thing.name for thing in left.group.things}
    saved = _saved(bench, names, going - set(names))
    bonds = [
        key
        for name in saved
        for key in bench.keys(name)
        if {bench.bonds[key].lower, bench.bonds[key].upper} - saved
    ]
    for key in dict.fromkeys(bonds):
        bench.part(key)
    bench.set_apart(saved, True)
    bench.told.gone.update(dict.fromkeys(sorted(saved)))
    gone = [thing for thing in left.group.things if thing.name not in saved]
    for thing in gone:
        bench.take(thing.name)
        bench.told.gone[thing.name] = None
    among = tuple(one for one in left.group.among if not {one.lower, one.upper} & saved)
    return replace(left, group=Group(tuple(gone), among, left.group.beneath))


def _saved(bench: Bench, names: Collection[str], riders: Collection[str]) -> set[str]:
    """The original parts among what goes, with all that lies on them alone."""
    own = {
        one
        for one in riders
        if bench.original(one) and not any(one.startswith(f"{name}/") for name in names)
    }
    return own | (bench.riders(own) & set(riders) if own else set())


def take_off(bench: Bench, names: Collection[str]) -> Left:
    """Take things off that will come back, with what lies wholly on them; they lie apart now."""
    left = _freed(bench, names, bench.riders(names))
    for thing in left.group.things:
        bench.told.gone[thing.name] = None
    bench.set_apart((thing.name for thing in left.group.things), True)
    return left


def _freed(bench: Bench, names: Collection[str], riders: Collection[str]) -> Left:
    """Part some things and what rides on them from all the rest."""
    going = [name for name in bench.things if name in names or name in riders]
    inside = set(going)
    keys = dict.fromkeys(key for name in going for key in bench.keys(name))
    bonds = {key: bench.bonds[key] for key in keys}
    among = tuple(b for b in bonds.values() if b.lower in inside and b.upper in inside)
    crossing = {key: b for key, b in bonds.items() if not (b.lower in inside and b.upper in inside)}
    group = Group(
        tuple(bench.things[name] for name in going),
        among,
        tuple(b for b in crossing.values() if b.upper in inside and b.how not in ACROSS),
    )
    held = tuple(_still_held(bench, crossing.values(), inside))
    for key in crossing:
        bench.part(key)
    bench.uncover(inside)
    return Left(group, held)


def _still_held(
    bench: Bench, crossing: Iterable[Bond], going: Collection[str]
) -> Iterator[tuple[str, str]]:
    """What lies on things that go and holds to something else too, so that it stays."""
    layers = {bench.things[name].of for name in going}
    for bond in crossing:
        upper = bench.things[bond.upper]
        firm = bond.how in (How.STUCK, How.HELD) and not bond.opened and not upper.partly
        if bond.lower in going and firm and upper.of not in layers:
            yield bench.things[bond.lower].of, upper.of


def leave_partly(bench: Bench, names: Iterable[str], where: str) -> None:
    """Take a part of something away: the rest is there still."""
    for name in names:
        bench.put(replace(bench.things[name], partly=True, where=where))
        for key, bond in list(bench.beneath(name)):
            bench.change(key, replace(bond, partly=True))


def open_up(bench: Bench, names: Iterable[str], step: int) -> None:
    """Loosen what holds things to what carries them, without taking them off."""
    for name in names:
        for key, bond in list(bench.beneath(name)):
            bench.change(key, replace(bond, opened=(*bond.opened, step)))


def unfold(bench: Bench, names: Iterable[str], step: int) -> None:
    """Slit a tube along its folds, so that its walls hang together no more."""
    for name in names:
        for key in bench.keys(name):
            bond = bench.bonds[key]
            if bond.how is How.FOLD and step not in bond.opened:
                bench.change(key, replace(bond, opened=(*bond.opened, step)))


def loose(bench: Bench, names: Collection[str]) -> bool:
    """Whether all of some things lie apart, or have been opened."""
    return all(
        bench.things[name].apart or any(bond.opened for _, bond in bench.beneath(name))
        for name in names
    )


def bring_back(bench: Bench, group: Group) -> None:
    """Put things that had been removed for good on the bench again; they lie apart so far."""
    for thing in group.things:
        bench.put(replace(thing, apart=True))
    for bond in group.among:
        bench.hold(bond)


def attach(bench: Bench, upper: str, lower: str, bonds: Iterable[Bond]) -> None:
    """Hold a thing to another anew: what had been opened between them holds anew too.

    Without a bond the one merely lies on the other.
    """
    for key, bond in list(bench.beneath(upper)):
        if bond.lower == lower and bond.opened:
            bench.part(key)
    fresh = [replace(bond, lower=lower, upper=upper) for bond in bonds]
    for bond in fresh:
        bench.hold(bond)
    if not fresh:
        bench.cover(lower, upper)
    if not bench.things[lower].apart:
        lay_down(bench, upper)
    elif not bench.things[upper].apart:
        lay_down(bench, lower)


def lay_down(bench: Bench, name: str) -> None:
    """Let a thing lie apart no more, and with it all that hangs together with it."""
    bench.set_apart(_apart_with(bench, name), False)


def _apart_with(bench: Bench, name: str) -> list[str]:
    return [one for one in bench.together((name,)) if bench.things[one].apart]
