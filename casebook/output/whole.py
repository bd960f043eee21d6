"""What the pages of one site share: its cases in order, their summaries, the ways to them."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field

from casebook.compute.likeness import Likeness
from casebook.compute.links import kindred
from casebook.compute.summary import summarise
from casebook.files import digest, package_digest
from casebook.model.archive import Case, Redacted
from casebook.model.base import items, known
from casebook.model.settings import DEFAULT_NAME
from casebook.output.contexts import Link
from casebook.output.kept import Store, kept
from casebook.output.lab_language import foreign_tag, notation_of
from casebook.output.own_page import titled, within_reach
from casebook.output.pictures import Pictures
from casebook.output.structure_view import (
    NO_STRUCTURE,
    StructureView,
    structure_view,
    work_out,
)
from casebook.output.typography import typeset_html
from casebook.output.ways import Way, ways_of
from casebook.output.wording import Wording, say
from casebook.vocabulary import Lexicon, used_terms


@dataclass(frozen=True, slots=True)
class Wishes:
    """What the door says of a site: its address on the web, its own pages, and faults to show.

    `gaps` and `faults` are sentences by case id; `own_pages` are links of hand-written pages. In
    `store` lies what was worked out before.
    """

    site_url: str = ""
    own_pages: tuple[Link, ...] = ()
    gaps: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    faults: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    store: Store | None = None


class Whole:
    """All that one audience may see, with what several pages need of it computed once."""

    def __init__(self, redacted: Redacted, pictures: Pictures, wishes: Wishes) -> None:
        self.shown = redacted
        self.archive = redacted.archive
        self.pictures = pictures
        self.wishes = wishes
        self.lexicon = Lexicon(self.archive.terms)
        self.cases = tuple(sorted(self.archive.cases, key=_newest_first))
        self.by_id = {case.id: case for case in self.cases}
        self.titles = dict(_titles(self.cases))
        self.kin = kindred(self.cases)
        self.likeness = Likeness(self.cases, self.lexicon)
        self.summaries = {case.id: summarise(case, self._operation) for case in self.cases}
        self.notation = notation_of(self.archive.settings)
        self.own = foreign_tag(self.archive.settings)
        self.ways = ways_of(self.cases, self.lexicon, self.notation)
        self.term_pages = frozenset(way.address for way in self.ways)
        self.leading_to: dict[str, list[Way]] = {case.id: [] for case in self.cases}
        for way in self.ways:
            for one in way.cases:
                self.leading_to[one].append(way)
        self._structures: dict[str, StructureView] = {}
        self.name = say(self.archive.settings.name) or DEFAULT_NAME

    def _operation(self, word: str) -> str:
        found = self.lexicon.resolve("operations", word)
        return found[1] if found else word

    def structure(self, case: Case) -> StructureView:
        """What is drawn and told of a case's structure; nothing where it is not shown."""
        if case.id in self.shown.withheld:
            return NO_STRUCTURE
        if case.id not in self._structures:
            used, notation = used_terms(self.lexicon, (case,)), self.notation
            key = digest(f"{package_digest()}\n{case!r}\n{used!r}\n{notation!r}")
            self._structures[case.id] = kept(
                self.wishes.store,
                "structure",
                key,
                StructureView,
                lambda: structure_view(case, self.lexicon, work_out(case, self.lexicon), notation),
            )
        return self._structures[case.id]

    def own_page(self, html: str, title: str) -> str:
        """A hand-written page: titled, its tables in reach, set in marks of the lab's language."""
        return typeset_html(within_reach(titled(html, title)), self.notation.language)

    def wording(self, root: str) -> Wording:
        """How words are written on a page from which `root` leads to the top."""
        return Wording(self.lexicon, root, self.titles, self.term_pages, self.notation)


def _titles(cases: Iterable[Case]) -> Iterator[tuple[str, tuple[str, str]]]:
    """The id and the title of each case by every id it has or had."""
    for case in cases:
        for name in (case.id, *items(case.was)):
            yield name, (case.id, known(case.title) or case.id)


def arrival(case: Case) -> datetime.date | None:
    """The day on which a case came, the first that it may be; None where it is not known."""
    dates = known(case.dates)
    received = known(dates.received) if dates else None
    return received.earliest_day() if received else None


def _newest_first(case: Case) -> tuple[int, str]:
    """The order of cases on a site: by the day they came, newest first, then by id."""
    day = arrival(case)
    return (-day.toordinal() if day else 0, case.id)
