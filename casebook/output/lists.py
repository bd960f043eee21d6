"""Pages that list cases: all of them by year, and those of each way in, at most 48 to a page."""

from __future__ import annotations

import functools
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from casebook.compute.outcomes import Name, Outcome, outcomes
from casebook.compute.term_uses import NO_USE, TermUse, term_uses
from casebook.model.archive import Case
from casebook.model.base import items
from casebook.model.vocabulary import Term
from casebook.output.cards import card
from casebook.output.contexts import Card, CardGroup, Link, ListPage, Pager
from casebook.output.outcome_view import folded, given_up_view, held_view
from casebook.output.term_facts import opening_lines, term_facts
from casebook.output.ways import INDEXES, TITLES, Way
from casebook.output.whole import Whole, arrival
from casebook.output.wording import capital_text, say

MOST = 48
"""Cases on one page of a list."""

ALL = "cases/index.html"
UNDATED = "Year not recorded"


@dataclass(frozen=True, slots=True)
class Sheet:
    """One page of a list: its number, of how many, and the cases on it."""

    number: int
    of: int
    cases: tuple[Case, ...]

    def address(self, first: str, number: int = 0) -> str:
        """Where a page of the list stands whose first page stands at `first`; this one for 0.

        `page` cannot be taken for a case: nothing else stands under a case's number.
        """
        n = number or self.number
        return first if n == 1 else f"{first.removesuffix('index.html')}page/{n}/index.html"

    def title(self, title: str) -> str:
        """The title of the page, which says which page it is."""
        return title if self.number == 1 else f"{title}, page {self.number} of {self.of}"


def sheets(cases: Sequence[Case]) -> Iterator[Sheet]:
    """A list in pages; an empty list has one."""
    of = max(-(-len(cases) // MOST), 1)
    for n in range(of):
        yield Sheet(n + 1, of, tuple(cases[n * MOST : (n + 1) * MOST]))


class Lists:
    """Makes the contexts of list pages; what they share is worked out once, when it is needed."""

    def __init__(self, whole: Whole) -> None:
        self.of = whole
        self._cards: dict[tuple[str, str], Card] = {}

    @functools.cached_property
    def _outcomes(self) -> Mapping[Name, tuple[Outcome, ...]]:
        return outcomes(self.of.cases, self.of.summaries, self.of.lexicon)

    @functools.cached_property
    def _uses(self) -> Mapping[Name, TermUse]:
        return term_uses(self.of.cases, self.of.summaries, self.of.lexicon)

    @functools.cached_property
    def _years(self) -> Mapping[str, tuple[int, int]]:
        """For each year, on which page it begins and how many cases it has."""
        counts = Counter(year_of(case) for case in self.of.cases)
        first: dict[str, int] = {}
        for sheet in sheets(self.of.cases):
            for case in sheet.cases:
                first.setdefault(year_of(case), sheet.number)
        return {year: (number, counts[year]) for year, number in first.items()}

    def cards(self, cases: Sequence[Case], root: str) -> tuple[Card, ...]:
        """The cards of cases, each made once for each depth, since it stands on many pages."""
        return tuple(self._card(one, root) for one in cases)

    def _card(self, case: Case, root: str) -> Card:
        if (case.id, root) not in self._cards:
            of = self.of
            self._cards[case.id, root] = card(case, of.archive, of.pictures, of.wording(root))
        return self._cards[case.id, root]

    def everything(self, sheet: Sheet, root: str) -> ListPage:
        """A page of all cases, the newest first, by the year in which they came."""
        found = groupby(sheet.cases, year_of)
        groups = tuple(
            CardGroup(year or UNDATED, anchor_of(year), self.cards(tuple(cases), root))
            for year, cases in found
        )
        jumps = tuple(self._jumps(sheet, root)) if sheet.number == 1 else ()
        title = sheet.title("All cases")
        return ListPage(title, groups, jumps=jumps, pager=pager(sheet, ALL, root))

    def _jumps(self, sheet: Sheet, root: str) -> Iterator[Link]:
        """The ways to the years, where there are enough cases to need them."""
        for year, (number, count) in self._years.items() if len(self._years) > 1 else ():
            page = "" if number == 1 else root + sheet.address(ALL, number)
            yield Link(year or UNDATED, f"{page}#{anchor_of(year)}", str(count))

    def way(self, way: Way, sheet: Sheet, root: str) -> ListPage:
        """A page of the cases of one way in; the first tells of its term."""
        page = ListPage(
            sheet.title(heading_of(way)),
            (CardGroup("", "", self.cards(sheet.cases, root)),) if sheet.cases else (),
            kicker=Link(TITLES[way.kind], root + INDEXES[way.kind]),
            pager=pager(sheet, way.address, root),
        )
        first = sheet.number == 1
        return self._told(page, way, way.term, root) if first and way.term else page

    def _told(self, page: ListPage, way: Way, term: Term, root: str) -> ListPage:
        """The first page of a term's cases, with what is known of the term."""
        wording = self.of.wording(root)
        name = (way.source, way.name)
        use = self._uses.get(name, NO_USE)
        listed = frozenset(way.cases)
        held = [one for one in self._outcomes.get(name, ()) if one.case in listed]
        return replace(
            page,
            gloss=say(term.gloss),
            also=", ".join(items(term.also)),
            caution=say(term.caution),
            facts=term_facts(way.kind, way.name, term, wording, use),
            held=held_view(way.kind, held, wording),
            given_up=given_up_view(use.given_up, wording),
            opens=folded(opening_lines(way.kind, way.name, self.of.lexicon), "more ways"),
        )


def heading_of(way: Way) -> str:
    """A way in as a heading, with a capital."""
    return capital_text(way.title)


def year_of(case: Case) -> str:
    """The year in which a case came; "" where it is not known."""
    day = arrival(case)
    return str(day.year) if day else ""


def anchor_of(year: str) -> str:
    """What leads to a year on its page."""
    return f"year-{year or 'unknown'}"


def pager(sheet: Sheet, first: str, root: str) -> Pager | None:
    """The ways to the pages before and behind; None where a list has one page."""
    if sheet.of == 1:
        return None
    before, behind = sheet.number - 1, sheet.number + 1
    newer = Link("Newer cases", root + sheet.address(first, before)) if before else None
    more = behind <= sheet.of
    earlier = Link("Earlier cases", root + sheet.address(first, behind)) if more else None
    return Pager(f"Page {sheet.number} of {sheet.of}", newer, earlier)
