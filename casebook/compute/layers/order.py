"""Steps of which nobody recorded the order, in one in which they can have been done."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from casebook.compute.layers.names import Names, places_in
from casebook.model.base import Many, items
from casebook.model.treatment import Step

Numbered = tuple[int, Step]


@dataclass(frozen=True, slots=True)
class _Turn:
    """What decides when a step can have been done: names of parts and layers."""

    number: int
    step: Step
    uses: frozenset[str]
    removes: frozenset[str]
    off: frozenset[str]
    back: frozenset[str]


def likely(steps: Iterable[Numbered], names: Names) -> list[Numbered]:
    """The steps so that each thing is laid before it is used, used before it goes, off before back.

    Else they stay as they are listed, and so does what goes round in a ring.
    """
    waiting = [_turn(number, step, names) for number, step in steps]
    laid = {turn.step.adds for turn in waiting}
    after = {turn.number: set(_before(turn, waiting, laid)) for turn in waiting}
    done: list[Numbered] = []
    while waiting:
        left = {turn.number for turn in waiting}
        ready = next((one for one in waiting if not after[one.number] & left), waiting[0])
        waiting.remove(ready)
        done.append((ready.number, ready.step))
    return done


def _turn(number: int, step: Step, names: Names) -> _Turn:
    return _Turn(
        number,
        step,
        _of(tuple(places_in(step)), names),
        _of(step.removes, names),
        _of(step.takes_off, names),
        _of(step.puts_back, names),
    )


def _of(places: Many[str], names: Names) -> frozenset[str]:
    return frozenset(spot.of for place in items(places) if (spot := names.spot(place)))


def _before(turn: _Turn, every: list[_Turn], laid: set[str | None]) -> Iterator[int]:
    """The numbers of the steps that one step must come after."""
    going = {name for name in turn.removes if name in laid}
    for one in every:
        comes_first = one.step.adds in turn.uses or bool(turn.back & one.off)
        used_before = bool(going & (one.uses - one.removes))
        if one is not turn and (comes_first or used_before):
            yield one.number
