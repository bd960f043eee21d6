"""What lies on a part, state by state, and in which order: the stack that a drawing shows."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Protocol

from casebook.compute.structure import Bond, How, Structure, Thing
from casebook.drawings.carried import CARRIES, INNER, carried, root_of, turned
from casebook.drawings.facts import layer_of

Runs = tuple[tuple[int, int], ...]


class Moment(Protocol):
    """The structure after one step; step 0 is as found."""

    @property
    def step(self) -> int:
        """The step, counted from 1 through the case; 0 for what was found."""

    @property
    def episode(self) -> str:
        """The number of the sitting, "" outside any."""

    @property
    def structure(self) -> Structure:
        """What lies on what after it."""


@dataclass(frozen=True, slots=True)
class Seat:
    """How a thing sits at one moment: its bonds to what carries it, and what it only covers."""

    thing: Thing
    bonds: tuple[Bond, ...] = ()
    over: tuple[str, ...] = ()

    @property
    def below(self) -> tuple[str, ...]:
        """The things that it lies on."""
        own = self.thing.name
        ends = (bond.upper if bond.lower == own else bond.lower for bond in self.bonds)
        return (*ends, *self.over)

    @property
    def loose(self) -> bool:
        """Whether nothing holds it, as what only covers, or all that does was loosened."""
        return all(bond.opened for bond in self.bonds)

    @property
    def turned(self) -> bool:
        """Whether it lies on the inner face, or on the verso."""
        faces = {bond.face.strip().casefold() for bond in self.bonds if bond.face}
        return bool(faces) and faces <= INNER


@dataclass(frozen=True, slots=True, eq=False)
class Sight:
    """A thing in one seat, and the states in which it is seen there: runs of first and last.

    A story has each once, so that two are the same only if they are one.
    """

    seat: Seat
    runs: Runs

    @property
    def thing(self) -> Thing:
        """The thing that is seen."""
        return self.seat.thing

    @property
    def name(self) -> str:
        """The thing's name."""
        return self.seat.thing.name

    @property
    def layer(self) -> str:
        """The layer or part that it is, or is a zone of."""
        return layer_of(self.seat.thing)

    def meets(self, other: Sight) -> bool:
        """Whether both are seen in one state at least."""
        return meet(self.runs, other.runs)

    def seen_in(self, state: int) -> bool:
        """Whether it is seen in a state."""
        return any(first <= state <= last for first, last in self.runs)

    @property
    def order(self) -> tuple[bool, int, int, str]:
        """First come, first laid; then by step and name. What is loose comes last.

        For what is laid while a thing is loose goes under it.
        """
        return (self.seat.loose, self.runs[0][0], self.thing.step, self.name)


@dataclass(frozen=True, slots=True)
class Story:
    """What happens on some original parts: the moments that change it, and all that is seen."""

    roots: tuple[str, ...]
    moments: tuple[Moment, ...]
    sights: tuple[Sight, ...]

    @property
    def last(self) -> int:
        """The number of the final state."""
        return len(self.moments) - 1

    def carriers(self) -> Iterator[Sight]:
        """All that is seen but the parts themselves."""
        return (one for one in self.sights if one.name not in self.roots)


def story(moments: Sequence[Moment], roots: tuple[str, ...], *, inside: bool = True) -> Story:
    """The states of some parts and of what lies on them; moments that change nothing are left out.

    `inside` false leaves out what lies on the inner faces of the parts.

    Every moment counts as the state before it where nothing on these parts was touched.
    """
    kept: list[Moment] = []
    states: list[Mapping[str, Seat]] = []
    for n, moment in enumerate(moments):
        if n and moment.structure is moments[n - 1].structure:
            continue
        seats = seats_on(moment.structure, roots, inside=inside)
        if not states or seats != states[-1]:
            kept.append(moment)
            states.append(seats)
    return Story(roots, tuple(kept), _sights(states))


def _sights(states: Sequence[Mapping[str, Seat]]) -> tuple[Sight, ...]:
    """Every seat once, with the runs of states in which it is taken."""
    found: dict[Seat, list[int]] = {}
    for number, seats in enumerate(states):
        for seat in seats.values():
            found.setdefault(seat, []).append(number)
    return tuple(sorted((Sight(s, _runs(n)) for s, n in found.items()), key=lambda one: one.order))


def meet(one: Runs, other: Runs) -> bool:
    """Whether two lists of runs have a state in common."""
    return any(a <= d and c <= b for a, b in one for c, d in other)


def without(runs: Runs, others: Iterable[Runs]) -> Runs:
    """The runs of the states that no other has."""
    taken = {n for other in others for a, b in other for n in range(a, b + 1)}
    return _runs([n for a, b in runs for n in range(a, b + 1) if n not in taken])


def _runs(numbers: Sequence[int]) -> Runs:
    runs: list[tuple[int, int]] = []
    for number in numbers:
        if runs and runs[-1][1] == number - 1:
            runs[-1] = (runs[-1][0], number)
        else:
            runs.append((number, number))
    return tuple(runs)


def seats_on(
    structure: Structure, roots: Iterable[str], *, inside: bool = True
) -> Mapping[str, Seat]:
    """The parts themselves and all that they carry, directly or by way of another, by name."""
    there = tuple(name for name in roots if name in structure.things)
    members = carried(structure, there, inside=inside)
    bonds = _under(structure, members, () if inside else there)
    over: dict[str, set[str]] = {}
    for low, up in structure.covers:
        if low in members and low != up:
            over.setdefault(up, set()).add(low)
    return {
        name: _seat(structure.things[name], bonds.get(name, ()), over.get(name, ()))
        if name not in there
        else _seat(structure.things[name], (), ())
        for name in sorted(members)
    }


def _seat(thing: Thing, bonds: Iterable[Bond], over: Iterable[str]) -> Seat:
    """How a thing sits; that something lies apart for a while is no change to what it carries."""
    there = replace(thing, apart=False) if thing.apart else thing
    return Seat(there, tuple(sorted(bonds, key=_by)), tuple(sorted(over)))


def _under(
    structure: Structure, members: frozenset[str], outside: tuple[str, ...]
) -> Mapping[str, list[Bond]]:
    """The bonds that say what carries each thing; an outer wall is carried by its folds.

    Of the parts `outside` the bonds on their inner faces do not count.
    """
    found: dict[str, list[Bond]] = {}
    for bond in structure.bonds:
        there = bond.lower in members and bond.upper in members and bond.lower != bond.upper
        if there and not turned(bond, outside):
            if bond.how in CARRIES:
                found.setdefault(bond.upper, []).append(bond)
            elif bond.how is How.FOLD:
                outer = next((e for e in _ends_of(bond) if structure.things[e].wall == "outer"), "")
                found.setdefault(outer, []).append(bond)
    return found


def _ends_of(bond: Bond) -> tuple[str, str]:
    return (bond.upper, bond.lower)


def _by(bond: Bond) -> tuple[str, str, tuple[str, ...]]:
    return (bond.lower, bond.how.value, bond.adhesives)


def columns(told: Story) -> Mapping[Sight, frozenset[str]]:
    """For each thing the parts that it comes down to where it lies, by way of what carries it.

    A zone is on its own part; a part that was put back is on one part only, the first.
    """
    by_name: dict[str, list[Sight]] = {}
    for sight in told.sights:
        by_name.setdefault(sight.name, []).append(sight)
    ends = {sight: _ends(sight, told.roots, by_name) for sight in told.sights}
    return {
        sight: frozenset(sorted(found, key=told.roots.index)[:1]) if sight.thing.part else found
        for sight, found in ends.items()
    }


def _ends(
    sight: Sight, roots: tuple[str, ...], by_name: Mapping[str, Sequence[Sight]]
) -> frozenset[str]:
    """The parts that a thing comes down to; things that lie on one another in a ring, on none."""
    waiting, seen, ends = [sight], set[Sight](), set[str]()
    while waiting:
        one = waiting.pop()
        if one in seen:
            continue
        seen.add(one)
        own = one.name if one.name in roots else root_of(one.thing.zone, roots)
        if own:
            ends.add(own)
        else:
            below = (low for name in one.seat.below for low in by_name.get(name, ()))
            waiting.extend(low for low in below if low.meets(one))
    return frozenset(ends)
