"""The replay: over what was found, step by step, the structure after each."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import groupby

from casebook.compute.layers.acts import Acts
from casebook.compute.layers.bench import Bench
from casebook.compute.layers.checks import left_behind
from casebook.compute.layers.faults import Fault, Faults
from casebook.compute.layers.found import found
from casebook.compute.layers.names import Names
from casebook.compute.layers.nights import check_nights
from casebook.compute.layers.order import likely
from casebook.compute.layers.taking import remove
from casebook.compute.once import once
from casebook.compute.steps import Placed, number_of, placed
from casebook.compute.structure import Structure
from casebook.model.archive import Case, Standing
from casebook.model.base import Gap, items, known
from casebook.model.treatment import Step
from casebook.vocabulary import Lexicon


@dataclass(frozen=True, slots=True)
class Moment:
    """The structure after one step, and what that step did.

    `step` counts the steps of the case from 1 as they are listed, 0 is as found. `laid` names the
    things put there or put back, `gone` those removed or taken off, `hid` what lies under what was
    laid and could be seen before. `sure` is false in the midst of steps of which nobody recorded
    the order: the structure after the last of them is sure again.
    """

    step: int
    episode: str
    structure: Structure
    laid: tuple[str, ...] = ()
    gone: tuple[str, ...] = ()
    hid: tuple[str, ...] = ()
    sure: bool = True


@dataclass(frozen=True, slots=True)
class Replay:
    """What lay there at each moment, and the contradictions met on the way.

    `final` is the structure at the end of the record. Of a case that is complete it leaves out what
    was said to be temporary, though no step removed it.
    """

    moments: tuple[Moment, ...]
    faults: tuple[Fault, ...]
    order_known: bool
    final: Structure
    steps: tuple[Step, ...] = ()

    def step(self, number: int) -> Step:
        """The step of a number, as it was for one member where it belongs to a run."""
        return self.steps[number - 1]


@dataclass(frozen=True, slots=True)
class _Turn:
    """One step in its turn: its number, and whether the order about it is known."""

    number: int
    placed: Placed
    ordered: bool
    sure: bool


@once
def replay(case: Case, lexicon: Lexicon) -> Replay:
    """Replay a case. It never raises for what a record says: contradictions become faults."""
    names = Names(case, lexicon)
    steps = tuple(placed(case))
    bench, faults = found(names), Faults(steps)
    acts = Acts(bench, faults)
    unordered = _unordered(case)
    check_nights(case, steps, faults)
    moments = [Moment(0, "", bench.freeze())]
    for turn in _turns(steps, names, unordered):
        faults.begin(turn.number, ordered=turn.ordered)
        acts.do(turn.placed.step)
        moments.append(_moment(turn, bench))
    left_behind(bench, faults)
    told = sorted(faults.found, key=lambda one: one.step)
    return Replay(tuple(moments), tuple(told), not unordered, _final(bench, case), names.steps)


def _moment(turn: _Turn, bench: Bench) -> Moment:
    told = bench.told
    return Moment(
        turn.number,
        turn.placed.episode,
        bench.freeze(),
        tuple(told.laid),
        tuple(told.gone),
        tuple(told.hid),
        turn.sure,
    )


def _turns(steps: tuple[Placed, ...], names: Names, unordered: frozenset[str]) -> Iterator[_Turn]:
    """The steps in the order in which they were done, or can have been done."""
    numbered = enumerate(steps, 1)
    for episode, group in groupby(numbered, key=lambda one: one[1].episode):
        sitting = dict(group)
        if episode not in unordered:
            yield from (_Turn(number, one, True, True) for number, one in sitting.items())
            continue
        order = [n for n, _ in likely([(n, one.step) for n, one in sitting.items()], names)]
        for number in order:
            yield _Turn(number, sitting[number], False, number == order[-1])


def _unordered(case: Case) -> frozenset[str]:
    """The sittings of which nobody can say in which order their steps were done; "" outside any."""
    sittings = enumerate(items(case.episodes), 1)
    found = {number_of(one, place) for place, one in sittings if isinstance(one.order, Gap)}
    return frozenset(found | ({""} if isinstance(case.order, Gap) else set()))


def _final(bench: Bench, case: Case) -> Structure:
    """What lies there at the end."""
    status = known(case.status)
    if status and status.is_ is Standing.COMPLETE:
        temporary = [one.name for one in bench.things.values() if one.temporary]
        if temporary:
            remove(bench, temporary)
    return bench.freeze()
