"""What each template is given: one documented class per template, finished values only.

Templates do no arithmetic and make no choices about audiences: every text here may be shown. Text
is escaped by the renderer; the only HTML that comes finished is prose, in fields of type `Markup`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from markupsafe import Markup


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch of a sentence; with `href` a link, with `gloss` a trade word explained."""

    text: str
    href: str = ""
    gloss: str = ""
    anchor: str = ""
    """What `#anchor` leads to, such as `part-spine` or `layer-old-glue`; "" if nothing."""


Line = tuple[Run, ...]
"""A sentence in runs, to be joined without spaces between them."""


@dataclass(frozen=True, slots=True)
class Link:
    """A link with its text, and a figure behind it such as a number of cases ("" if none)."""

    text: str
    href: str
    figure: str = ""
    current: str = ""
    """In the header: "page" on the page it leads to, "true" elsewhere in its part, else ""."""


@dataclass(frozen=True, slots=True)
class Source:
    """One `<source>` of a picture: MIME type and srcset."""

    type: str
    srcset: str


@dataclass(frozen=True, slots=True)
class PictureView:
    """A picture: `<picture>` sources, the fallback `<img>`, its true size, its words."""

    id: str
    """The photo's anchor on its case page, without `photo-`."""
    src: str
    sources: tuple[Source, ...]
    width: int
    height: int
    alt: str
    caption: str
    stage: str
    """before, during, after, later or ""."""
    details: str
    """View, light and date in one line, such as "spine, raking light, 3 March 2025"."""
    large: str
    """The address of the largest version."""
    fits: Mapping[str, str] = field(default_factory=dict)
    """For photos it can be laid over, by id: the six numbers of the matrix that does it."""
    fit: str = ""
    """As the second of a pair: the matrix that lays it over the first, "" where none is known."""


@dataclass(frozen=True, slots=True)
class Pair:
    """A picture before and one after."""

    before: PictureView | None = None
    after: PictureView | None = None
    alike: bool = False
    """Whether both show the same side, so that one may be laid over the other."""
    laid: bool = False
    """Whether the page begins with the one laid over the other."""


@dataclass(frozen=True, slots=True)
class Fact:
    """A label and what stands beside it."""

    label: str
    lines: tuple[Line, ...]


@dataclass(frozen=True, slots=True)
class Card:
    """A case in a list: where it leads, what it is, its before and after (None if no photo)."""

    href: str
    title: str
    about: str
    """Kind, date and structure in one line."""
    work: str
    """What was done, in a few words."""
    status: str
    """"" for a finished case, else its standing in words."""
    before: PictureView | None
    after: PictureView | None
    shape: str = ""
    """Its pictures: "" cropped a little, "whole" on a mount, or "wide", one above the other."""


@dataclass(frozen=True, slots=True)
class CardGroup:
    """Cases in a list that stand together, such as those of a year; no title for an only group."""

    title: str
    anchor: str
    cards: tuple[Card, ...]


@dataclass(frozen=True, slots=True)
class Pager:
    """Where a page of a list stands, and the ways to its neighbours (None at either end)."""

    text: str
    """Such as "Page 2 of 21"."""
    newer: Link | None
    earlier: Link | None


@dataclass(frozen=True, slots=True)
class Folded:
    """Sentences of which the first are shown and the rest are folded under `summary`, if any."""

    lines: tuple[Line, ...] = ()
    summary: str = ""
    rest: tuple[Line, ...] = ()
    note: str = ""
    """What stands at their end, such as how many more there are; or ""."""


@dataclass(frozen=True, slots=True)
class HeldView:
    """How work held: counts in a sentence, an interval or "", a line for each case that tells."""

    counts: str
    interval: str
    told: Folded


@dataclass(frozen=True, slots=True)
class Table:
    """A small table: heads, rows of cells, and a closing row; `note` says what the figures lack."""

    caption: str
    heads: tuple[str, ...]
    rows: tuple[tuple[Line, ...], ...]
    total: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class WayGroup:
    """One way in, such as structure or material: its page and the terms most used."""

    title: str
    href: str
    links: tuple[Link, ...]
    total: int
    """How many terms there are in all."""


@dataclass(frozen=True, slots=True)
class HomePage:
    """`pages/home.html`: search first, ways in, recent cases, totals."""

    name: str
    about: str
    feature: Card | None
    """The newest case with pictures, shown large; the recent cases are others."""
    ways: tuple[WayGroup, ...]
    recent: tuple[Card, ...]
    all_cases: Link
    totals: tuple[Fact, ...]


@dataclass(frozen=True, slots=True)
class ListPage:
    """`pages/list.html`: cases under one heading: all, or those of one way in; or a page of them.

    What is told of a term stands on the first page alone.
    """

    title: str
    groups: tuple[CardGroup, ...]
    kicker: Link | None = None
    """Which way in it is, with the way to all of it."""
    gloss: str = ""
    also: str = ""
    """Other words for it, in one line, or ""."""
    caution: str = ""
    facts: tuple[Fact, ...] = ()
    held: HeldView | None = None
    """How it held, for a material or an operation."""
    given_up: Folded = field(default_factory=Folded)
    """What was tried with it and given up."""
    opens: Folded = field(default_factory=Folded)
    """What opens a material, each with its source."""
    jumps: tuple[Link, ...] = ()
    """Ways to the years, each with its number of cases."""
    pager: Pager | None = None


@dataclass(frozen=True, slots=True)
class WaysPage:
    """`pages/ways.html`: all terms of one way in, group by group, or all ways in."""

    title: str
    intro: str
    groups: tuple[WayGroup, ...]


@dataclass(frozen=True, slots=True)
class SearchPage:
    """`pages/search.html`: the search with its results, and what to do without scripts."""

    title: str
    ways: tuple[WayGroup, ...]


@dataclass(frozen=True, slots=True)
class LostPage:
    """`pages/lost.html`: the page for an address that leads nowhere."""

    title: str
    home: Link


@dataclass(frozen=True, slots=True)
class MovedPage:
    """`pages/moved.html`: where a case with an earlier id stands now."""

    title: str
    to: Link


@dataclass(frozen=True, slots=True)
class FrameContext:
    """`parts/head.html`, `parts/header.html`, `parts/footer.html`: what surrounds every page."""

    title: str
    """The title of the browser's tab: page and archive."""
    description: str
    language: str
    site_name: str
    home: str
    """The address of the home page from here."""
    logo: str
    """The address of the lab's logo from here, or ""."""
    nav: tuple[Link, ...]
    """Links of the header: cases, ways in, the lab's own pages."""
    search: str
    """The address of the search page from here, which takes `?q=` (http) or `#q=` (disk)."""
    icon: str
    styles: tuple[str, ...]
    scripts: tuple[str, ...]
    canonical: str
    image: str
    """The address of a picture for previews, or ""."""
    banner: str
    """A sentence on every page: that the archive is invented, or who this copy is for; or ""."""
    footer: tuple[str, ...] = ()
    redirect: str = ""
    """For a moved page: where to go at once."""
    data: Markup = Markup()
    """What a program may read of the page, as JSON-LD that cannot end its element; or ""."""
    feed: str = ""
    """The address of the feed on the web, or ""."""
