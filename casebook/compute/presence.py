"""What still lies there: layers laid, taken off, put back and removed, step by step."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from enum import StrEnum

from casebook.compute.places import Ground
from casebook.compute.steps import none, placed
from casebook.model.archive import Case
from casebook.model.base import Gap, items, known
from casebook.model.details import Outcome
from casebook.model.treatment import Step


class Presence(StrEnum):
    """Whether a layer that was laid lies there at the end of the record."""

    THERE = "there"
    PARTLY = "partly there"
    GONE = "gone"


def presence(case: Case, ground: Ground) -> Mapping[str, Presence]:
    """For each layer that was laid, whether it lies there still; a temporary one never does.

    What lies wholly on something that goes, goes with it, and comes back with it.
    """
    lying = _Lying(ground)
    for one in placed(case):
        if one.step.outcome is not Outcome.GIVEN_UP:
            lying.replay(one.step)
    return lying.states


class _Lying:
    """The layers laid so far and what became of them."""

    def __init__(self, ground: Ground) -> None:
        self.states: dict[str, Presence] = {}
        self._ground = ground
        self._carriers: dict[str, frozenset[str]] = {}
        self._together: dict[str, frozenset[str]] = {}

    def replay(self, step: Step) -> None:
        """Let one step happen."""
        if step.adds:
            self.states[step.adds] = Presence.GONE if known(step.temporary) else Presence.THERE
            self._carriers[step.adds] = _carriers(step, self._ground)
        for place in items(step.removes):
            self._leave(self._ground.layer(place), self._left(step, place))
        for place in items(step.takes_off):
            self._take_off(place)
        for place in items(step.puts_back):
            name = self._ground.layer(place)
            back = self._together.pop(name, frozenset()) | {name}
            self._set(back & self.states.keys(), Presence.THERE)

    def _take_off(self, place: str) -> None:
        """Take off what comes back; a part that is taken off keeps the layers it carries."""
        name = self._ground.layer(place)
        if name in self.states:
            state = Presence.PARTLY if self._is_zone(place) else Presence.GONE
            self._together[name] = self._leave(name, state)

    def _is_zone(self, place: str) -> bool:
        """Whether a place is one zone of a layer, such as `cloth-lining/board 1`."""
        return self._ground.layer(place) != self._ground.bare(place)

    def _left(self, step: Step, place: str) -> Presence:
        """Whether something of what a step removed is still there."""
        partly = (
            self._is_zone(place)
            or step.outcome is Outcome.PARTLY
            or _leaves(step, self._ground.layer(place))
        )
        return Presence.PARTLY if partly else Presence.GONE

    def _leave(self, place: str, state: Presence) -> frozenset[str]:
        """Let a thing go, and with it what lies wholly on it: all that went."""
        gone = {place}
        while state is Presence.GONE and (more := self._riders(gone)):
            gone |= more
        went = {one for one in gone if self.states.get(one) not in (None, Presence.GONE)}
        self._set(went, state)
        return frozenset(went)

    def _riders(self, gone: set[str]) -> set[str]:
        return {
            layer
            for layer, below in self._carriers.items()
            if below and below <= gone and layer not in gone
        }

    def _set(self, layers: Iterable[str], state: Presence) -> None:
        self.states.update(dict.fromkeys(layers, state))


def _carriers(step: Step, ground: Ground) -> frozenset[str]:
    """What a layer lies on: its `onto`, and the zones that this does not come down to."""
    onto = frozenset(ground.bare(place) for place in items(step.onto))
    zones = frozenset(ground.bare(zone) for zone in step.spans)
    return onto | (zones - frozenset(ground.under(onto)))


def _leaves(step: Step, layer: str) -> bool:
    """Whether a step is said to leave something of a layer, here or unnamed."""
    leaves = known(step.leaves)
    if leaves is None:
        return isinstance(step.leaves, Gap) and not none(step.leaves)
    return not none(leaves.layer) and known(leaves.layer) in (None, layer)
