"""Hours: bench, waiting and drying apart, by operation, part, sitting and hand; plan and lump."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace

from casebook.compute.clocks import (
    NO_HOURS,
    STOPPED,
    Clock,
    Hours,
    added,
    by_hand,
    clock,
    hours_of,
    is_timed,
    on_trials,
)
from casebook.compute.figures import ZERO, Doubt, Effect, Figure, read, total
from casebook.compute.places import ground
from casebook.compute.runs import inner_steps
from casebook.compute.steps import (
    NameOperation,
    Placed,
    hands_of,
    none,
    number_of,
    operation,
    placed,
)
from casebook.compute.uses import touched
from casebook.model.archive import Case
from casebook.model.base import Maybe, items, known
from casebook.model.proposal import Choice, courses
from casebook.model.treatment import Episode, Step
from casebook.values.durations import Duration

SITTING_USED = Doubt(Effect.NOTE, "sitting is timed as a whole", "sittings are timed as a whole")
SITTING_LEFT = Doubt(
    Effect.NOTE,
    "sitting has a time of its own that is not added to its steps",
    "sittings have times of their own that are not added to their steps",
)
EMPTY_SITTING = Doubt(Effect.AT_LEAST, "sitting has no time", "sittings have no time")
OPTION_WITHOUT = Doubt(Effect.AT_LEAST, "chosen option has no time", "chosen options have no time")


@dataclass(frozen=True, slots=True)
class Row:
    """The hours under one heading.

    Several names in `keys` share the hours, which nobody divided: two hands at one step, one
    step on two parts. No name: it is not recorded, or a sitting was timed as a whole.
    """

    keys: tuple[str, ...]
    hours: Hours

    @property
    def shared(self) -> bool:
        """Whether several share these hours."""
        return len(self.keys) > 1


@dataclass(frozen=True, slots=True)
class Plan:
    """Planned against actual, in minutes at the bench; None where it is not recorded.

    `planned` is the time of the chosen options, else the estimate for the whole. `estimated` and
    `spent` are the lumps noted for the whole; the latter is never added to `bench`, what sums up
    from steps and sittings. The actual time is `bench`, or the lump where no step or sitting has
    a time (`by_lump`).
    """

    planned: Figure | None = None
    estimated: Figure | None = None
    spent: Figure | None = None
    bench: Figure | None = None
    covers: str = ""

    @property
    def by_lump(self) -> bool:
        """Whether the actual time is known from the lump alone."""
        return self.bench is None and self.spent is not None

    @property
    def actual(self) -> Figure | None:
        """What the work took."""
        return self.spent if self.bench is None else self.bench


NO_PLAN = Plan()
"""Nothing planned and nothing noted."""


@dataclass(frozen=True, slots=True)
class Timesheet:
    """All hours of a case or an archive, and how they fall out.

    The rows of each table together hold the same minutes as `whole`.
    """

    whole: Hours = NO_HOURS
    by_operation: tuple[Row, ...] = ()
    by_part: tuple[Row, ...] = ()
    by_episode: tuple[Row, ...] = ()
    by_hand: tuple[Row, ...] = ()
    plan: Plan = NO_PLAN
    steps: int = 0
    in_words: int = 0


NO_SHEET = Timesheet()
"""The timesheet of no case."""


@dataclass(frozen=True, slots=True)
class Spent:
    """The hours of one step, or of a sitting that was timed as a whole."""

    hours: Hours
    operation: tuple[str, ...] = ()
    parts: tuple[str, ...] = ()
    episode: tuple[str, ...] = ()
    hands: tuple[str, ...] = ()


def timesheet(case: Case, name: NameOperation) -> Timesheet:
    """The hours of a case."""
    spent = tuple(_spent(case, name))
    steps = [one.step for one in placed(case)]
    return Timesheet(
        whole=added(one.hours for one in spent),
        by_operation=_rows(spent, lambda one: one.operation),
        by_part=_rows(spent, lambda one: one.parts),
        by_episode=_rows(spent, lambda one: one.episode),
        by_hand=_rows(spent, lambda one: one.hands),
        plan=_plan(case, spent),
        steps=len(steps),
        in_words=sum(in_words_only(step) for step in steps),
    )


def folded(rows: Iterable[Row]) -> tuple[Row, ...]:
    """Rows of one heading added up, in the order of their headings."""
    groups: dict[tuple[str, ...], list[Hours]] = {}
    for row in rows:
        groups.setdefault(row.keys, []).append(row.hours)
    return tuple(Row(keys, added(groups[keys])) for keys in sorted(groups))


def in_words_only(step: Step) -> bool:
    """Whether a step is told in words and names neither an operation nor what happened."""
    return known(step.words) is not None and operation(step, str) == ""


def _rows(spent: Iterable[Spent], key: Callable[[Spent], tuple[str, ...]]) -> tuple[Row, ...]:
    return folded(Row(key(one), one.hours) for one in spent)


def _spent(case: Case, name: NameOperation) -> Iterator[Spent]:
    """Every step with its hours, and every sitting that has a time of its own for its steps."""
    whole = {number for number, one in _sittings(case) if _timed_as_whole(one)}
    below = ground(case)
    for one in placed(case):
        word = operation(one.step, name)
        parts = {part for step in (one.step, *one.siblings) for part in touched(below, step)}
        spent = Spent(
            hours=hours_of(one, one.episode in whole),
            operation=(word,) if word else (),
            parts=tuple(sorted(parts)),
            episode=(one.episode,) if one.episode else (),
            hands=one.hands,
        )
        yield from _shared_out(spent, one, one.episode in whole)
    for number, sitting in _sittings(case):
        if (bench := _sitting(sitting)) != STOPPED:
            hands = hands_of(sitting.hands, ())
            yield Spent(Hours(bench=bench), episode=(number,), hands=hands)


def _shared_out(spent: Spent, one: Placed, in_whole: bool) -> Iterator[Spent]:
    """A step's hours, with the bench time given to each hand where each has its own."""
    shares = () if in_whole else by_hand(one)
    rest = replace(spent.hours, bench=on_trials(one)) if shares else spent.hours
    if rest != NO_HOURS or not shares:
        yield replace(spent, hours=rest)
    for who, share in shares:
        yield replace(spent, hours=Hours(bench=share), hands=(who,))


def _sittings(case: Case) -> list[tuple[str, Episode]]:
    return [(number_of(one, place), one) for place, one in enumerate(items(case.episodes), 1)]


def _timed_as_whole(sitting: Episode) -> bool:
    """Whether a sitting's own time counts: it has one, and no step in it has."""
    timed = any(is_timed(step) for step in inner_steps(items(sitting.steps)))
    return known(sitting.time) is not None and not timed


def _sitting(sitting: Episode) -> Clock:
    """What a sitting adds to its steps: its own time, or only a word about it."""
    time = known(sitting.time)
    if _timed_as_whole(sitting):
        return clock(time, False, SITTING_USED)
    if time is not None:
        return Clock(Figure(0, (SITTING_LEFT,)))
    return STOPPED if items(sitting.steps) else Clock(Figure(0, (EMPTY_SITTING,)))


def _plan(case: Case, spent: Iterable[Spent]) -> Plan:
    lump = known(case.time)
    timed = any(is_timed(one.step) for one in placed(case))
    as_whole = any(_timed_as_whole(sitting) for _, sitting in _sittings(case))
    bench = total(one.hours.bench.minutes for one in spent)
    return Plan(
        planned=_planned(case),
        estimated=_minutes(lump.estimated) if lump else None,
        spent=_minutes(lump.spent) if lump else None,
        bench=bench if timed or as_whole else None,
        covers=known(lump.covers) or "" if lump else "",
    )


def _planned(case: Case) -> Figure | None:
    """The time of the options that were chosen, together; else the estimate for the whole."""
    proposal = known(case.proposal)
    options = courses(proposal) if proposal else ()
    chosen = [_option(one.time) for one in options if known(one.outcome) is Choice.CHOSEN]
    if any(one is not None for one in chosen):
        return total(one or Figure(0, (OPTION_WITHOUT,)) for one in chosen)
    lump = known(case.time)
    return _minutes(lump.estimated) if lump else None


def _option(time: Maybe[Duration]) -> Figure | None:
    """The time of an option; one that takes none, such as leaving things alone, has zero."""
    return ZERO if none(time) else _minutes(time)


def _minutes(time: Maybe[Duration]) -> Figure | None:
    said = known(time)
    return None if said is None else read(said, 1, "time")
