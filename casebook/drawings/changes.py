"""What each state of a drawing changed, in words: put on, taken off, fixed, freed, loosened."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from casebook.compute.structure import Bond, How
from casebook.drawings.facts import Facts
from casebook.drawings.stack import Seat, Story
from casebook.drawings.words import State, held, listed, plain, sentence

Seats = Mapping[str, Seat]
"""How the things of one layer sit, by name."""


def states(told: Story, facts: Facts) -> tuple[State, ...]:
    """All states of a drawing in words."""
    return tuple(_state(told, number, facts) for number in range(len(told.moments)))


def _state(told: Story, number: int, facts: Facts) -> State:
    moment = told.moments[number]
    title = f"After {facts.step(moment.step)}" if moment.step else "As found"
    lines = _found(told) if number == 0 else tuple(_changed(told, number, facts))
    return State(number, moment.step, moment.episode, title, lines)


def _found(told: Story) -> tuple[str, ...]:
    there = [name for name in _layers(told, 0) if name not in told.roots]
    said = listed([plain(one) for one in there])
    return (sentence(f"on it: {said}") if there else "Nothing was recorded on it.",)


def _changed(told: Story, number: int, facts: Facts) -> Iterator[str]:
    now, before = _layers(told, number), _layers(told, number - 1)
    layer_of = {sight.name: sight.layer for sight in told.sights}
    new = [name for name in now if name not in before]
    soaked = [plain(name) for name in new if _soaks(now[name])]
    on = [plain(name) for name in new if not _soaks(now[name])]
    off = [plain(name) for name in before if name not in now]
    for names, what in ((on, "put on"), (soaked, "soaked in"), (off, "taken off")):
        if names:
            yield sentence(f"{listed(names)} {what}")
    for name in now:
        if name in before and now[name] != before[name]:
            said = dict.fromkeys(_moved(before[name], now[name], layer_of, facts))
            yield sentence(f"{plain(name)} {'; '.join(said) or 'changed'}")


def _soaks(seats: Seats) -> bool:
    """Whether all of a layer soaked into what it was put on."""
    bonds = [bond for seat in seats.values() for bond in seat.bonds]
    return bool(bonds) and all(bond.how is How.SOAKED for bond in bonds)


def _layers(told: Story, number: int) -> Mapping[str, Seats]:
    """How everything sits in a state, by layer and by name."""
    found: dict[str, dict[str, Seat]] = {}
    for sight in told.sights:
        if sight.seen_in(number):
            found.setdefault(sight.layer, {})[sight.name] = sight.seat
    return found


def _moved(before: Seats, now: Seats, layer_of: Mapping[str, str], facts: Facts) -> Iterator[str]:
    """What became of a layer that is there before and after."""
    off = [_zone(before[name]) for name in before if name not in now]
    on = [_zone(now[name]) for name in now if name not in before]
    if off:
        yield f"taken off {listed(off)}"
    if on:
        yield f"put on {listed(on)}"
    both = [(before[name], now[name]) for name in now if name in before]
    if any(new.thing.partly and not old.thing.partly for old, new in both):
        yield "partly taken away"
    for what, lowers in _bonds(both, layer_of, facts).items():
        yield f"{what} {listed(tuple(lowers))}"


def _zone(seat: Seat) -> str:
    return plain(seat.thing.zone or seat.thing.name)


def _bonds(
    pairs: list[tuple[Seat, Seat]], layer_of: Mapping[str, str], facts: Facts
) -> Mapping[str, Mapping[str, None]]:
    """What was fixed, freed or loosened, each with the things from or to which it was."""
    found: dict[str, dict[str, None]] = {}
    for old, new in pairs:
        was, stands = set(map(_key, old.bonds)), set(map(_key, new.bonds))
        groups = (
            *((_fixed(bond, facts), bond) for bond in new.bonds if _key(bond) not in was),
            *(("freed from", bond) for bond in old.bonds if _key(bond) not in stands),
            *(("loosened from", bond) for bond in new.bonds if _opened(bond, old)),
        )
        for what, bond in groups:
            found.setdefault(what, {})[plain(layer_of.get(bond.lower, bond.lower))] = None
    return found


def _key(bond: Bond) -> tuple[str, How, tuple[str, ...], tuple[str, ...]]:
    return (bond.lower, bond.how, bond.adhesives, bond.held)


def _fixed(bond: Bond, facts: Facts) -> str:
    return "soaked into" if bond.how is How.SOAKED else f"now {held(bond, facts)}, to"


def _opened(bond: Bond, old: Seat) -> bool:
    """Whether a step loosened a bond that was there before."""
    same = (one for one in old.bonds if _key(one) == _key(bond))
    return any(len(bond.opened) > len(one.opened) for one in same)
