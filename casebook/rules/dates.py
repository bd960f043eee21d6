"""Rules about dates: their order, none of them still to come, and none with two readings."""

from __future__ import annotations

from collections.abc import Iterator

from casebook.model.archive import Dates
from casebook.model.base import Maybe, Record, items, known, schema
from casebook.rules.declare import MISTAKE, NO_SOURCE, SLIP, Raised, rule
from casebook.rules.look import Look
from casebook.values.dates import Date

Point = tuple[str, Date, Record, str]
"""What happened, when, and the record and key that say so."""


def _points(look: Look) -> Iterator[Point]:
    """What must have happened in this order: received, examined, the sittings, returned."""
    dates = known(look.case.dates) or Dates()
    landmarks = {name: _point(f"it was {name}", dates, name) for name in ("received", "examined")}
    yield from landmarks["received"]
    yield from landmarks["examined"]
    for number, one in enumerate(items(look.case.episodes), 1):
        yield from _point(f"sitting {number}", one, "date")
    yield from _point("it was returned", dates, "returned")


def _point(what: str, record: Record, name: str) -> Iterator[Point]:
    value: Maybe[Date] = getattr(record, name)
    date = known(value)
    if date is not None and not date.approximate and not date.uncertain:
        yield what, date, record, name


@rule(
    why="One of the two dates is wrong, and nobody but you can still say which.",
    source=NO_SOURCE,
    fields=("Dates.received", "Dates.examined", "Dates.returned", "Episode.date"),
    weight=MISTAKE,
    raises="dates: {received: 2025-01-20, examined: 2024-01-28}",
    passes="dates: {received: 2025-01-20, examined: 2025-01}",
)
def dates_in_order(look: Look) -> Iterator[Raised]:
    """An object is received, examined, treated and returned in this order; so are its sittings."""
    last: Point | None = None
    for point in _points(look):
        what, date, record, key = point
        if last and date.before(last[1]):
            message = f"{what} on {date}, which is before {last[0]} ({last[1]})"
            yield Raised(message, record.span(key), "look which of the two dates is meant")
        else:
            last = point


@rule(
    why="A record tells what was done; a day that has not come is a slip of the pen.",
    source=NO_SOURCE,
    fields=("Dates.received", "Episode.date", "Step.date", "Photo.date", "Written.date"),
    weight=MISTAKE,
    raises="written: {by: AM, date: 2999-04-03, for: treatment record}",
    passes="written: {by: AM, date: 2025-04-03, for: treatment record}",
)
def date_to_come(look: Look) -> Iterator[Raised]:
    """What has been done, seen or written was so before today."""
    for record in look.records:
        names = ("received", "examined", "returned") if isinstance(record, Dates) else ("date",)
        for name in names:
            date = getattr(record, name, None)
            first = date.earliest_day() if isinstance(date, Date) else None
            if first and first > look.today:
                message = f"{date} has not come yet"
                yield Raised(message, record.span(name), "look at the year first")


@rule(
    why="EDTF and a tired hand write the same signs for different times.",
    source="EDTF specification 2019-02-04 (a year and a month or season)",
    fields=("Made.is_", "History.date", "Binding.date", "Episode.date"),
    weight=SLIP,
    raises="object: {kind: ledger, housing: none, made: 1805-12}",
    passes="object: {kind: ledger, housing: none, made: 1805/1812}",
)
def date_two_readings(look: Look) -> Iterator[Raised]:
    """A date cannot be read in two ways: as a month of one year, or as a range of years."""
    for record in look.records:
        for info in schema(type(record)).values():
            date = getattr(record, info.name)
            if isinstance(date, Date) and date.other_reading:
                message = f"`{date}` is read as {date.show()}; did you mean a range of years?"
                hint = f"for the years write `{date.other_reading}`; else write the month in words"
                yield Raised(message, record.span(info.key), hint)


PRACTICE = (dates_in_order, date_to_come, date_two_readings)
