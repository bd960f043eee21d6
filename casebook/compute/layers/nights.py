"""Nights of drying against the dates of a sitting."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from casebook.compute.layers.faults import Faults
from casebook.compute.steps import Placed, number_of
from casebook.model.archive import Case
from casebook.model.base import Gap, Maybe, items, known
from casebook.model.treatment import Step
from casebook.values.dates import Date


@dataclass(frozen=True, slots=True)
class _Sitting:
    """The first and the last day of a sitting, and the last day of what is dated after it.

    Days are counted from 1 January of the year 0; None where not recorded or in doubt.
    """

    first: int | None
    last: int | None
    later: int | None
    ordered: bool


def check_nights(case: Case, steps: tuple[Placed, ...], faults: Faults) -> None:
    """Tell of each step in a sitting that dries for more nights than its dates have days.

    What dries last may do so beyond the sitting, as long as the next dated one, or the return of
    the object, leaves it the time; with an order that nobody recorded, any step may be the last.
    """
    sittings = _sittings(case)
    lasts = {one.episode: number for number, one in enumerate(steps, 1)}
    for number, one in enumerate(steps, 1):
        sitting = sittings.get(one.episode)
        nights = _nights(one.step)
        if not sitting or not nights:
            continue
        first, last = _days(one.step, sitting)
        may_be_last = not sitting.ordered or lasts[one.episode] == number
        if first is None or last is None or nights <= last - first + 1:
            continue
        if not (may_be_last and sitting.later is not None and first + nights <= sitting.later):
            faults.nights(nights, last - first + 1, number)


def _nights(step: Step) -> int:
    return sum(time.nights for dry in items(step.dries) if (time := known(dry.for_)))


def _days(step: Step, sitting: _Sitting) -> tuple[int | None, int | None]:
    """From when to when a step has time to dry: from its own date to the end of the sitting."""
    first, last = _span(step.date)
    if first is None:
        return sitting.first, sitting.last
    ends = [one for one in (last, sitting.last) if one is not None]
    return (first, max(ends)) if sitting.last is not None else (None, None)


def _sittings(case: Case) -> dict[str, _Sitting]:
    """The sittings by their numbers."""
    dates = known(case.dates)
    later = _span(dates.returned)[1] if dates else None
    found: dict[str, _Sitting] = {}
    for place, one in reversed(list(enumerate(items(case.episodes), 1))):
        first, last = _span(one.date)
        ordered = not isinstance(one.order, Gap)
        found[number_of(one, place)] = _Sitting(first, last, later, ordered)
        later = _latest((last, *(_span(step.date)[1] for step in items(one.steps)))) or later
    return found


def _latest(days: Iterable[int | None]) -> int | None:
    return max((day for day in days if day is not None), default=None)


def _span(date: Maybe[Date]) -> tuple[int | None, int | None]:
    """The first and the last day that a date allows; none where it is in doubt."""
    said = known(date)
    if said is None or said.approximate or said.uncertain:
        return None, None
    first, last = said.earliest, said.latest
    return (first.ordinal() if first else None), (last.ordinal() if last else None)
