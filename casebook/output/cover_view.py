"""The head of a printed report: whose it is, for whom, from when till when, and how far it came."""

from __future__ import annotations

from collections.abc import Iterator

from casebook.model.archive import Archive, Case, Standing, Status
from casebook.model.base import items, known
from casebook.model.settings import DEFAULT_NAME
from casebook.output.citing import author
from casebook.output.contexts import Fact, Run
from casebook.output.wording import Wording, listed_text, say


def cover_facts(case: Case, archive: Archive, wording: Wording, status: str) -> tuple[Fact, ...]:
    """What a sheet of paper must say by itself; `status` is the case's standing in a sentence."""
    lab = archive.settings
    own = items(lab.footer)
    named = {
        "Treatment report": [f"Case {case.id}"],
        "By": [say(lab.name) or DEFAULT_NAME, say(lab.address), say(lab.contact), *own],
        "For": [_client(case, archive)],
        "Dates": list(_stay(case, wording)),
        "Status": [status or _finished(case)],
        "Written": [_written(case, wording)],
    }
    facts = ((label, tuple((Run(one),) for one in texts if one)) for label, texts in named.items())
    return tuple(Fact(label, lines) for label, lines in facts if lines)


def _client(case: Case, archive: Archive) -> str:
    """The client's name, where this audience may see whose the case is."""
    client = archive.settings.clients.get(known(case.client) or "")
    return say(client.name) if client else ""


def _stay(case: Case, wording: Wording) -> Iterator[str]:
    dates = known(case.dates)
    if dates:
        yield wording.measured(dates.received, "received {}", "received: {}")
        yield wording.measured(dates.returned, "returned {}", "returned: {}")


def _finished(case: Case) -> str:
    status = known(case.status) or Status()
    return "Complete" if status.is_ is Standing.COMPLETE else ""


def _written(case: Case, wording: Wording) -> str:
    """Who wrote the record, and when."""
    written = known(case.written)
    if written is None:
        return ""
    by = listed_text([author(case, one) for one in items(written.by)])
    return ", ".join(one for one in (by, wording.say(written.date)) if one)
