"""The Atom feed: the newest cases, for readers that look for news by themselves."""

from __future__ import annotations

import datetime
from dataclasses import dataclass

from casebook.model.archive import Case
from casebook.model.base import Audience, items, known
from casebook.output.case_page import describe, title_of
from casebook.output.whole import Whole
from casebook.output.wording import say

ADDRESS = "feed.xml"
NEWEST = 30
_LONG_AGO = datetime.date(1970, 1, 1)


@dataclass(frozen=True, slots=True)
class Entry:
    """One case in the feed; `updated` is a time of RFC 3339."""

    id: str
    title: str
    href: str
    updated: str
    author: str
    """"" where the record names nobody."""
    summary: str


@dataclass(frozen=True, slots=True)
class Feed:
    """`parts/feed.xml`: the newest cases, newest first; `self` is the feed's own address."""

    id: str
    title: str
    home: str
    self: str
    updated: str
    entries: tuple[Entry, ...]


def feed_of(whole: Whole) -> Feed | None:
    """The feed of a public site; None without the address and the tag that make its ids last.

    Ids are tag URIs (RFC 4151) of the lab's own authority, so that they outlive the address. Dates
    are those of the record, so that the same record gives the same feed (RFC 4287, `updated`).
    """
    tag = known(whole.archive.settings.tag)
    public = whole.shown.audience is Audience.PUBLIC
    if not (public and whole.wishes.site_url and tag):
        return None
    newest = sorted(whole.cases, key=lambda case: (_day(case), case.id), reverse=True)[:NEWEST]
    entries = tuple(_entry(case, whole, tag) for case in newest)
    return Feed(
        id=f"tag:{tag}:cases",
        title=whole.name,
        home=whole.wishes.site_url,
        self=whole.wishes.site_url + ADDRESS,
        updated=entries[0].updated if entries else _time(_LONG_AGO),
        entries=entries,
    )


def _entry(case: Case, whole: Whole, tag: str) -> Entry:
    written = known(case.written)
    return Entry(
        id=f"tag:{tag}:cases/{case.id}",
        title=title_of(case),
        href=f"{whole.wishes.site_url}cases/{case.id}/index.html",
        updated=_time(_day(case)),
        author=", ".join(items(written.by)) if written else whole.name,
        summary=describe(case) or say(case.title),
    )


def _day(case: Case) -> datetime.date:
    """The last day that the record names of its own making: written, returned, or looked at."""
    written, dates = known(case.written), known(case.dates)
    named = [
        known(written.date) if written else None,
        known(dates.returned) if dates else None,
        known(dates.received) if dates else None,
        *(known(one.date) for one in items(case.follow_up)),
    ]
    days = [day for one in named if one is not None and (day := one.earliest_day())]
    return max(days, default=_LONG_AGO)


def _time(day: datetime.date) -> str:
    return f"{day.isoformat()}T00:00:00Z"
