"""Rules about the record itself: who wrote it, when, what for, and what it was made from."""

from __future__ import annotations

from collections.abc import Iterator

from casebook.rules.declare import AIC_24B, MUST, NO_SOURCE, PMG, SHOULD, Raised, rule
from casebook.rules.look import Look

_BOTH = f"{AIC_24B}; {PMG}"
_ROW = "written documentation gives purpose, author and date"


@rule(
    why="A reader weighs a record by who wrote it, and may want to ask.",
    source=_BOTH,
    fields=("Case.written", "Written.by"),
    weight=MUST,
    raises="written: {date: 2025-04-03, for: treatment record}",
    passes="written: {by: AM, date: 2025-04-03, for: treatment record}",
    rows=("name of documentor", _ROW),
    gap="The record does not say who wrote it.",
)
def writer_of_record(look: Look) -> Iterator[Raised]:
    """The record says who wrote it."""
    if not look.tells(look.case, "written", "by"):
        message = "the record does not say who wrote it"
        hint = "write `written: {by: AM}` with the initials from `people`"
        yield Raised(message, look.place("written", "by"), hint)


@rule(
    why="What was known, and what was usual, depends on when it was written down.",
    source=_BOTH,
    fields=("Case.written", "Written.date"),
    weight=MUST,
    raises="written: {by: AM, for: treatment record}",
    passes="written: {by: AM, date: spring 2025, for: treatment record}",
    rows=("date of document", _ROW),
    gap="The record does not say when it was written.",
)
def date_of_record(look: Look) -> Iterator[Raised]:
    """The record says when it was written."""
    if not look.tells(look.case, "written", "date"):
        message = "the record does not say when it was written"
        hint = "write `written: {date: 2025-04-03}`; a month or season will do"
        yield Raised(message, look.place("written", "date"), hint)


@rule(
    why="A note for an insurer, a survey and a treatment record leave out different things.",
    source=_BOTH,
    fields=("Case.written", "Written.for_"),
    weight=MUST,
    raises="written: {by: AM, date: 2025-04-03}",
    passes="written: {by: AM, date: 2025-04-03, for: treatment record for owner and lab}",
    rows=("purpose of the documentation", _ROW),
    gap="The record does not say what it was written for.",
)
def purpose_of_record(look: Look) -> Iterator[Raised]:
    """The record says what it was written for."""
    if not look.tells(look.case, "written", "for_"):
        message = "the record does not say what it was written for"
        hint = "write `written: {for: treatment record for owner and lab}`, or what else it is for"
        yield Raised(message, look.place("written", "for_"), hint)


@rule(
    why="An old treatment can be weighed only by what its record was written up from.",
    source=NO_SOURCE,
    fields=("Case.record", "Case.written", "Written.from_"),
    weight=SHOULD,
    raises="record: from-notes",
    passes="record: from-notes\nwritten: {by: AM, from: [bench book 1987, 12 slides]}",
    gap="The record does not say what it was written up from.",
)
def origin_of_record(look: Look) -> Iterator[Raised]:
    """A record written up afterwards says from what."""
    if look.old and not look.tells(look.case, "written", "from_"):
        message = f"the record is {look.case.record} and does not say from which"
        hint = 'write `written: {from: ["bench book 1987, pp. 3-5"]}`, or the publication'
        yield Raised(message, look.place("written", "from_"), hint)


PRACTICE = (writer_of_record, date_of_record, purpose_of_record, origin_of_record)
