"""The acts of a treatment: each verb of a step, done on the bench, with what contradicts it."""

from __future__ import annotations

from collections.abc import Iterator

from casebook.compute.layers.bench import Bench, Told
from casebook.compute.layers.checks import check_laid, hidden
from casebook.compute.layers.faults import Faults
from casebook.compute.layers.laid import Like, holdings, of_step
from casebook.compute.layers.laying import lay
from casebook.compute.layers.meeting import faced, targets
from casebook.compute.layers.names import FOLDS, Names, Spot
from casebook.compute.layers.soaking import soak
from casebook.compute.layers.taking import (
    Group,
    Left,
    attach,
    bring_back,
    lay_down,
    leave_partly,
    loose,
    open_up,
    remove,
    take_off,
    unfold,
)
from casebook.compute.steps import none
from casebook.compute.structure import Bond, How, Since
from casebook.model.base import Gap, items, known
from casebook.model.details import Outcome
from casebook.model.treatment import Step

_LOOSE = frozenset({"detached", "loose"})

_BENEATH = frozenset({"onto", "to"})
"""Fields that name what something is laid on or held to."""


class Acts:
    """Does the steps of a case on a bench, one after the other."""

    def __init__(self, bench: Bench, faults: Faults) -> None:
        self.bench = bench
        self.faults = faults
        self.names: Names = bench.names
        self.added: dict[str, int] = {}
        self._laid_at = _first_laid(self.names)
        self._removed: dict[str, int] = {}
        self._attic: dict[str, Group] = {}
        self._off: dict[str, tuple[Bond, ...]] = {}
        self._came_loose = frozenset(_loose(self.names))
        self._step = Step()

    def do(self, step: Step) -> None:
        """Let one step happen: what it takes goes first, then comes what it lays."""
        self.bench.told = Told()
        self._step = step
        if step.outcome is Outcome.GIVEN_UP:
            return
        self._cuts(step)
        self._removes(step)
        self._takes_off(step)
        self._opens(step)
        self._puts_back(step)
        if step.adds:
            self._adds(step, step.adds)
        self._joins(step)
        if not known(step.temporary):
            soak(self.bench, step, self.faults.number)

    def _there(self, place: str, field: str) -> tuple[str, ...]:
        """The things that a reference means; where there are none, that is told."""
        spot = self.names.spot(place)
        found = self.bench.named(spot) if spot else ()
        if spot and not found:
            self._absent(place, spot, field)
        return found

    def _absent(self, place: str, spot: Spot, field: str) -> None:
        removed = self._removed.get(place) or self._removed.get(spot.of, 0)
        laid = self._laid_at.get(spot.of, 0)
        if field in _BENEATH and spot.of in self._moved():
            self.faults.itself(place, field)
        elif spot.of in self.names.ground.parts:
            return  # a layer bears the name of a part: that is told as a name given twice
        elif removed:
            self.faults.gone(place, removed, field)
        elif laid > self.faults.number:
            self.faults.later(place, laid, field)
        else:
            self.faults.not_there(place, field)

    def _moved(self) -> frozenset[str]:
        """What the step in hand lays or puts somewhere: it cannot lie on itself."""
        step = self._step
        places = (*items(step.puts_back), *items(step.joins))
        spots = (spot for place in places if (spot := self.names.spot(place)))
        return frozenset({step.adds or "", *(spot.of for spot in spots)} - {""})

    def _cuts(self, step: Step) -> None:
        """Loosen the threads and slips that were cut so that something could be taken away."""
        takes = (step.removes, step.takes_off, step.opens)
        for place in items(step.cuts) if any(map(items, takes)) else ():
            spot = self.names.spot(place)
            for name in self.bench.named(spot) if spot else ():
                if any(bond.how is How.HELD for _, bond in self.bench.beneath(name)):
                    open_up(self.bench, (name,), self.faults.number)

    def _removes(self, step: Step) -> None:
        whole: dict[str, str] = {}
        for place in items(step.removes):
            found = self._there(place, "removes")
            spot = self.names.spot(place)
            if spot and self._stranger(spot):
                self.faults.not_there(place, "removes")
            if spot and (spot.where or _leaves(step, spot.of, self.names)):
                leave_partly(self.bench, found, _where(step, spot))
            else:
                whole.update(dict.fromkeys(found, place))
        if whole:
            left = remove(self.bench, list(whole))
            self._note(left, whole)
            self._tell_held(left, "removes")

    def _stranger(self, spot: Spot) -> bool:
        """Whether neither the case nor the vocabulary knows a name, so that nothing was there."""
        known_here = spot.of in self.names.layers or spot.of in self.names.ground.parts
        return not known_here and not self.names.lexicon.place(spot.of)

    def _note(self, left: Left, places: dict[str, str]) -> None:
        """Keep what was removed: by which step, and what went together."""
        for thing in left.group.things:
            self._attic[thing.name] = left.group
            self._removed[thing.name] = self.faults.number
            if not self.bench.of.get(thing.of):
                self._removed[thing.of] = self.faults.number
        self._removed.update(dict.fromkeys(places.values(), self.faults.number))

    def _tell_held(self, left: Left, field: str) -> None:
        for going, holder in dict.fromkeys(left.still_held):
            self.faults.still_held(going, holder, field)

    def _takes_off(self, step: Step) -> None:
        whole: dict[str, str] = {}
        for place in items(step.takes_off):
            found = self._there(place, "takes_off")
            if found and all(self.bench.things[one].apart for one in found):
                self.faults.already_off(place)
            whole.update(dict.fromkeys(found, place))
        if whole and step.outcome is Outcome.PARTLY:
            open_up(self.bench, whole, self.faults.number)
        elif whole:
            left = take_off(self.bench, list(whole))
            for bond in left.group.beneath:
                self._off[bond.upper] = (*self._off.get(bond.upper, ()), bond)
            self._tell_held(left, "takes_off")

    def _opens(self, step: Step) -> None:
        for place in items(step.opens):
            found, spot = self._there(place, "opens"), self.names.spot(place)
            if spot and spot.where.casefold() in FOLDS:
                unfold(self.bench, found, self.faults.number)
            else:
                open_up(self.bench, found, self.faults.number)

    def _puts_back(self, step: Step) -> None:
        for place in items(step.puts_back):
            spot = self.names.spot(place)
            found = self._to_put_back(place, spot) if spot else ()
            if found:
                self._hold_again(step, place, found)
                self.bench.told.laid.update(dict.fromkeys(found))

    def _to_put_back(self, place: str, spot: Spot) -> tuple[str, ...]:
        """What is to be put back; what had been removed for good is brought back first."""
        found = self.bench.named(spot)
        name = self.names.thing(spot.of, spot.zone) if spot.zone else spot.of
        group = next((self._attic[one] for one in (name, place) if one in self._attic), None)
        if not found and group:
            self.faults.not_off(place, self._removed[group.things[0].name])
            bring_back(self.bench, group)
            return self.bench.named(spot)
        if not found:
            self._absent(place, spot, "puts_back")
        elif not loose(self.bench, found) and spot.of not in self._came_loose:
            self.faults.not_off(place, 0)
        return found

    def _hold_again(self, step: Step, back: str, found: tuple[str, ...]) -> None:
        """Hold what is put back: where the step says, else where it was.

        What is sewn back, with no word to what, holds to what the thread goes through.
        """
        like = Like(Since.ADDED, self.faults.number, reused=True)
        places = (*items(step.onto), *items(step.to)) or tuple(self._sewn_to(step, found))
        for one in holdings(step, places, self.names, like):
            for place in one.places:
                self._hold_to(found, place, one.bonds, "onto")
                self._hold_zones(found, place, one.bonds)
        said = step.adhesive is not None or bool(items(step.held))
        if not places:
            own = next(holdings(step, ("",), self.names, like)).bonds if said else ()
            self._where_it_was(found, own, said, like)
        if said and not none(step.adhesive) and not any(self._lies(name) for name in found):
            self.faults.nowhere(back)
        for name in found:
            self._off.pop(name, None)

    def _sewn_to(self, step: Step, found: tuple[str, ...]) -> Iterator[str]:
        for place in items(step.cuts) if items(step.held) else ():
            spot = self.names.spot(place)
            if spot and not set(self.bench.named(spot)) & set(found):
                yield place

    def _lies(self, name: str) -> bool:
        """Whether something holds a thing, or it carries something that holds elsewhere too."""
        firm = any(bond.how is not How.GROWN for bond in self.bench.at(name))
        return firm or any(name in pair for pair in self.bench.covers)

    def _hold_zones(self, found: tuple[str, ...], place: str, bonds: tuple[Bond, ...]) -> None:
        """Hold each zone of a layer to the zone, over the same part, of that on which it comes."""
        spot = self.names.spot(place)
        if spot is None or spot.zone or spot.wall or len(found) < 2:
            return
        things = self.bench.things
        for upper in found:
            for lower in self.bench.named(spot):
                same = things[upper].zone and things[upper].zone == things[lower].zone
                held = any(bond.lower == lower for _, bond in self.bench.beneath(upper))
                if same and lower not in found and not held:
                    attach(self.bench, upper, lower, [faced(bond, spot.face) for bond in bonds])

    def _where_it_was(
        self, found: tuple[str, ...], own: tuple[Bond, ...], said: bool, like: Like
    ) -> None:
        for name in found:
            opened = [bond for _, bond in self.bench.beneath(name) if bond.opened]
            for old in (*self._off.get(name, ()), *opened):
                again = old if old.how is How.HELD else Bond("", "", How.UNKNOWN)
                bonds = own if said else (like.of(again, old.face, old.where, old.cuts),)
                for lower in self.bench.present(old.lower):
                    attach(self.bench, name, lower, bonds)
            if not any(self.bench.things[b.lower].apart for _, b in self.bench.beneath(name)):
                lay_down(self.bench, name)

    def _piece(self, found: tuple[str, ...], part: str) -> str:
        """The piece of a layer over a part: its zone there, else the first."""
        return next((one for one in found if self.bench.beds[one] == part), found[0])

    def _unseen(self, field: str) -> _Unseen:
        return _Unseen(self, field)

    def _adds(self, step: Step, name: str) -> None:
        laid = of_step(step, self.faults.number, self.names)
        if name in self.added:
            self.faults.twice(name, self.added[name])
        self.added.setdefault(name, self.faults.number)
        for old in list(self.bench.of.get(name, ())):
            self.bench.take(old)
        found = lay(self.bench, laid, self._unseen("onto"))
        check_laid(self.bench, self.faults, step, laid, found)
        self.bench.told.laid.update(dict.fromkeys(found))
        self.bench.told.hid.update(dict.fromkeys(hidden(self.bench, laid, found)))

    def _joins(self, step: Step) -> None:
        if step.adds or not items(step.joins):
            return
        like = Like(Since.ADDED, self.faults.number)
        joined = items(step.joins)
        to = items(step.to) or joined[:1]
        held = list(holdings(step, to, self.names, like))
        found_at = {place: self._there(place, "joins") for place in joined}
        for place in joined if items(step.to) else joined[1:]:
            found = found_at[place]
            for one in held if found else ():
                for target in one.places:
                    self._hold_to(found, target, one.bonds, "to")

    def _hold_to(
        self, found: tuple[str, ...], place: str, bonds: tuple[Bond, ...], field: str
    ) -> None:
        """Hold things to a place; a board is held by the zone of the layer that reaches over it."""
        narrow = self.bench.things[found[0]].part
        unseen = self._unseen(field)
        for part, lower, face in targets(self.bench, place, found[0], unseen, narrow=narrow):
            upper = self._piece(found, part)
            board = self.bench.things[lower].zone == upper and self.names.is_board(upper)
            ends = (lower, upper) if board else (upper, lower)
            attach(self.bench, *ends, [faced(bond, face) for bond in bonds])
            self.bench.told.laid[upper] = None


class _Unseen:
    """Tells of a place on which something is laid, and where nothing lies."""

    def __init__(self, acts: Acts, field: str) -> None:
        self._acts = acts
        self._field = field

    def __call__(self, place: str, spot: Spot) -> None:
        self._acts._absent(place, spot, self._field)


def _first_laid(names: Names) -> dict[str, int]:
    found: dict[str, int] = {}
    for number, step in enumerate(names.steps, 1):
        if step.adds and step.outcome is not Outcome.GIVEN_UP:
            found.setdefault(step.adds, number)
    return found


def _loose(names: Names) -> Iterator[str]:
    """The parts that a finding says had come loose."""
    every = (*items(names.case.findings), *(f for step in names.steps for f in items(step.finds)))
    for finding in every:
        words = (names.lexicon.resolve("damages", word) for word in items(finding.damage))
        if any(found and found[1] in _LOOSE for found in words):
            yield from (spot.of for one in items(finding.part) if (spot := names.spot(one)))


def _leaves(step: Step, of: str, names: Names) -> bool:
    """Whether something of what a step removes is there still."""
    if step.outcome is Outcome.PARTLY:
        return True
    leaves = known(step.leaves)
    if leaves is None:
        return isinstance(step.leaves, Gap) and not none(step.leaves)
    layer = known(leaves.layer)
    spot = names.spot(layer) if layer else None
    return not none(leaves.layer) and (spot is None or spot.of == of)


def _where(step: Step, spot: Spot) -> str:
    leaves = known(step.leaves)
    said = (known(leaves.where) if leaves else None) or ""
    return said or (f"no more at {spot.where}" if spot.where else "")
