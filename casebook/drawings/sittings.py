"""The sittings of a case for a calendar: first and last day, hours, and the drying in or after."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from casebook.compute.clocks import Clock
from casebook.compute.hours import Timesheet
from casebook.compute.steps import number_of
from casebook.model.archive import Case
from casebook.model.base import items, known
from casebook.model.treatment import Episode, Step
from casebook.values.dates import Date
from casebook.values.durations import Duration


@dataclass(frozen=True, slots=True)
class Rest:
    """Drying: the day after which it began, and for how many nights."""

    day: int
    nights: int


@dataclass(frozen=True, slots=True)
class Sitting:
    """One sitting: its number and title, first and last day, hours, and the drying in or after it.

    Days are ordinals of the calendar, None where no day is known.
    """

    number: str
    title: str
    first: int | None
    last: int | None
    bench: Clock
    drying: Clock
    rests: tuple[Rest, ...] = ()


def sittings(case: Case, sheet: Timesheet) -> tuple[Sitting, ...]:
    """The sittings of a case with their days and hours."""
    rows = {row.keys[0]: row.hours for row in sheet.by_episode if len(row.keys) == 1}
    found = []
    for place, episode in enumerate(items(case.episodes), 1):
        number = number_of(episode, place)
        hour = rows.get(number)
        first, last = days(known(episode.date))
        found.append(
            Sitting(
                number,
                known(episode.title) or "",
                first,
                last,
                hour.bench if hour else Clock(),
                hour.drying if hour else Clock(),
                tuple(_rests(episode, first)),
            )
        )
    return tuple(found)


def days(date: Date | None) -> tuple[int | None, int | None]:
    """The first and the last day that a date allows; an open end is as good as none."""
    first = date.earliest_day() if date else None
    last = date.latest_day() if date else None
    both = first and last and first <= last
    return (first.toordinal(), last.toordinal()) if both and first and last else (None, None)


def _rests(episode: Episode, first: int | None) -> Iterator[Rest]:
    for step in items(episode.steps):
        day = days(known(step.date))[1] or first
        nights = sum(_nights(step))
        if day and nights:
            yield Rest(day, nights)


def _nights(step: Step) -> Iterator[int]:
    for drying in items(step.dries):
        time = known(drying.for_)
        if isinstance(time, Duration) and time.nights:
            yield int(time.nights)
