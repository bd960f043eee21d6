"""The three clocks of a step: hands at the bench, hands free, and setting or drying."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from casebook.compute.figures import ZERO, Doubt, Effect, Figure, read, total
from casebook.compute.steps import Placed, none
from casebook.model.base import Gap, Maybe, items, known
from casebook.model.details import Drying
from casebook.model.treatment import Step
from casebook.values.durations import Duration

NO_TIME = Doubt(Effect.AT_LEAST, "step has no time", "steps have no time")
NO_WAIT = Doubt(Effect.AT_LEAST, "wait has no recorded length", "waits have no recorded length")
NO_DRYING = Doubt(
    Effect.AT_LEAST, "drying has no recorded length", "dryings have no recorded length"
)
EACH_OR_ALL = Doubt(
    Effect.AT_LEAST,
    "time in a run does not say whether it is for each",
    "times in runs do not say whether they are for each",
)
FROM_AGENT = Doubt(
    Effect.ABOUT,
    "wait is taken from how long a bath or an agent lasted",
    "waits are taken from how long baths or agents lasted",
)
ONE_ROUND = Doubt(
    Effect.AT_LEAST, "wait counts one round of those there were", "waits count one round each"
)


@dataclass(frozen=True, slots=True)
class Clock:
    """Time on one clock: whole minutes, and nights, which are counted and never turned to hours."""

    minutes: Figure = ZERO
    nights: Figure = ZERO


STOPPED = Clock()
"""A clock that never ran."""


@dataclass(frozen=True, slots=True)
class Hours:
    """The three clocks: hands at the bench, hands free, and setting or drying."""

    bench: Clock = STOPPED
    waiting: Clock = STOPPED
    drying: Clock = STOPPED


NO_HOURS = Hours()
"""No hours at all."""


def added(hours: Iterable[Hours]) -> Hours:
    """The sum of hours, clock by clock."""
    every = tuple(hours)
    return Hours(
        bench=added_up(one.bench for one in every),
        waiting=added_up(one.waiting for one in every),
        drying=added_up(one.drying for one in every),
    )


def hours_of(one: Placed, in_whole: bool = False) -> Hours:
    """The hours of a step; `in_whole` where its sitting was timed as a whole."""
    return Hours(
        bench=STOPPED if in_whole else _bench(one),
        waiting=_waiting(one),
        drying=added_up(_drying(drying, one.run) for drying in items(one.step.dries))
        if not isinstance(one.step.dries, Gap) or none(one.step.dries)
        else Clock(Figure(0, (NO_DRYING,))),
    )


def by_hand(one: Placed) -> tuple[tuple[str, Clock], ...]:
    """The bench time of each hand, where every one of them has a time of their own; else none."""
    hands = items(one.step.hands)
    times = [(known(hand.who), known(hand.time)) for hand in hands]
    if not all(who and time for who, time in times):
        return ()
    return tuple((who, clock(time, one.run)) for who, time in times if who and time)


def added_up(clocks: Iterable[Clock]) -> Clock:
    """The sum of clocks."""
    every = tuple(clocks)
    return Clock(total(one.minutes for one in every), total(one.nights for one in every))


def _bench(one: Placed) -> Clock:
    """A step's own time, that of its hands or of itself, and that of its trials on top of it."""
    return added_up([*_own(one), on_trials(one)])


def on_trials(one: Placed) -> Clock:
    """The bench time of what was tried in a step."""
    trials = (known(trial.time) for trial in items(one.step.tried))
    return added_up(clock(time, one.run) for time in trials if time is not None)


def is_timed(step: Step) -> bool:
    """Whether a step has a bench time: its own, or that of its hands."""
    return known(step.time) is not None or any(known(one.time) for one in items(step.hands))


def _own(one: Placed) -> Iterator[Clock]:
    if shares := by_hand(one):
        yield from (share for _, share in shares)
    elif one.step.time is None:
        yield Clock(Figure(0, (NO_TIME,)))
    else:
        yield _optional(one.step.time, NO_TIME, one.run)


def _waiting(one: Placed) -> Clock:
    """The time waited: as noted, else as long as a bath or an agent lasted."""
    if one.step.waits is not None:
        return _optional(one.step.waits, NO_WAIT, one.run)
    return added_up(_soaking(one.step))


def _soaking(step: Step) -> Iterator[Clock]:
    bath, agent = known(step.bath), known(step.agent)
    for once, times in (
        (known(bath.each), bath.times) if bath else (None, None),
        (known(agent.lasts), agent.times) if agent else (None, None),
    ):
        if once is not None:
            number = known(times)
            rounds = Figure(1) if number is None else read(number, 1, "count")
            said = ONE_ROUND if isinstance(times, Gap) else FROM_AGENT
            lasted = clock(once, False)
            yield Clock((lasted.minutes * rounds).but(said), lasted.nights * rounds)


def _drying(drying: Drying, run: bool) -> Clock:
    if drying.for_ is None:
        return Clock(Figure(0, (NO_DRYING,)))
    return _optional(drying.for_, NO_DRYING, run)


def _optional(time: Maybe[Duration], missing: Doubt, run: bool) -> Clock:
    """A time that may be left out or be none; where it is said not to be known, a doubt."""
    if time is None or none(time):
        return STOPPED
    return Clock(Figure(0, (missing,))) if isinstance(time, Gap) else clock(time, run)


def clock(time: Duration | None, run: bool = False, *doubts: Doubt) -> Clock:
    """A duration on a clock; in a run, one that says neither `each` nor `all` is doubtful."""
    if time is None:
        return STOPPED
    more = (EACH_OR_ALL,) if run and not time.per else ()
    minutes = read(time, 1, "time")
    nights = Figure(time.nights, minutes.doubts) if time.nights else ZERO
    return Clock(minutes.but(*more, *doubts), nights)
