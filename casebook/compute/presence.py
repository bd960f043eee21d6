"""What still lies there at the end of the record: there, partly there, or gone."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from enum import StrEnum

from casebook.compute.layers import Moment, Replay, replay
from casebook.compute.steps import placed
from casebook.compute.structure import Structure, Thing
from casebook.model.archive import Case
from casebook.model.base import known
from casebook.model.details import Outcome
from casebook.vocabulary import Lexicon

_WORDLESS = Lexicon({})
"""Whether something lies there follows from the names of a case, not from what its words mean."""


class Presence(StrEnum):
    """Whether a layer that was laid lies there at the end of the record."""

    THERE = "there"
    PARTLY = "partly there"
    GONE = "gone"


def presence(case: Case, played: Replay | None = None) -> Mapping[str, Presence]:
    """For each layer that was laid, whether it lies there still; a temporary one never does.

    What lies wholly on something that goes, goes with it, and comes back with it. `played` is the
    replay of the case, where there is one already.
    """
    steps = (one.step for one in placed(case))
    laid = [step for step in steps if step.adds and step.outcome is not Outcome.GIVEN_UP]
    temporary = {step.adds for step in laid if known(step.temporary)}
    states = _states(played or replay(case, _WORDLESS))
    return {
        name: Presence.GONE if name in temporary else states.get(name, Presence.GONE)
        for step in laid
        if (name := step.adds)
    }


def _states(played: Replay) -> Mapping[str, Presence]:
    final = played.moments[-1].structure
    things: dict[str, dict[str, None]] = {}
    for moment in played.moments:
        for thing in _added(moment):
            things.setdefault(thing.of, {})[thing.name] = None
    return {layer: _state(final, tuple(names)) for layer, names in things.items()}


def _added(moment: Moment) -> Iterator[Thing]:
    """The things that a step added, not those that it put back or joined."""
    things = (moment.structure.things.get(name) for name in moment.laid)
    return (one for one in things if one and one.step == moment.step)


def _state(final: Structure, names: tuple[str, ...]) -> Presence:
    there = [name for name in names if name in final.things and not _off(final, name)]
    if not there:
        return Presence.GONE
    whole = len(there) == len(names) and not any(final.things[one].partly for one in there)
    return Presence.THERE if whole else Presence.PARTLY


def _off(final: Structure, name: str) -> bool:
    """Whether a thing lies apart, and not on a part of the object that was itself taken off."""
    waiting, seen = [name], set[str]()
    while waiting:
        one = waiting.pop()
        if final.things[one].part or not final.things[one].apart:
            return False
        seen.add(one)
        beneath = (bond.lower for bond in final.at(one) if bond.upper == one)
        waiting.extend(lower for lower in beneath if lower not in seen)
    return True
