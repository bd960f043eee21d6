"""Every page of a site: where it stands, and how its body is made when it is asked for."""

from __future__ import annotations

import functools
from collections.abc import Callable, Iterator

from markupsafe import Markup

from casebook.compute.marks import marks
from casebook.compute.summary import total
from casebook.model.archive import Case
from casebook.model.base import items
from casebook.output import render
from casebook.output.apart import ApartPage, apart_page
from casebook.output.case_maker import CaseMaker
from casebook.output.case_page import describe, title_of
from casebook.output.contexts import (
    Card,
    HomePage,
    Link,
    LostPage,
    MovedPage,
    SearchPage,
    WaysPage,
)
from casebook.output.frame import LOST, NOTHING_MORE, SEARCH, About, Surround
from casebook.output.glossary import ADDRESS as GLOSSARY
from casebook.output.glossary import GlossaryPage, glossary_page
from casebook.output.lists import ALL, Lists, heading_of, sheets
from casebook.output.pictures import case_pictures, pair_of
from casebook.output.site import Page
from casebook.output.structure_view import layered
from casebook.output.tables import total_facts
from casebook.output.ways import INDEXES, PLURALS, Way, groups, natures
from casebook.output.whole import Whole
from casebook.output.wording import say

RECENT = 7

Make = Callable[[str], object]
"""Makes a template's context for a page, given the way from it to the site's top."""


class Maker:
    """The pages of a site, each body made only when it is asked for."""

    def __init__(self, whole: Whole, surround: Surround) -> None:
        self.of = whole
        self.surround = surround
        self.lists = Lists(whole)
        self.cases = CaseMaker(whole, self.lists)

    def pages(self) -> Iterator[Page]:
        """Every page, home first."""
        about = About(say(self.of.archive.settings.about) or f"Treatment cases of {self.of.name}.")
        yield self._page("index.html", self.of.name, "home", self._home, about)
        for case in self.of.cases:
            yield self._case(case)
            if layered(case) and case.id not in self.of.shown.withheld:
                yield self._apart(case)
            for old in items(case.was):
                yield self._moved(case, old)
        yield from self._everything()
        yield self._page("ways/index.html", "Ways in", "ways", self._all_ways)
        for kind, address in INDEXES.items():
            if any(way.kind == kind for way in self.of.ways):
                yield self._index(kind, address)
        for way in self.of.ways:
            yield from self._way(way)
        yield self._page(GLOSSARY, "The trade’s words", "glossary", self._glossary)
        yield self._page(
            SEARCH, "Search", "search", self._search, About(scripts=("finder", "search"))
        )
        yield self._page(LOST, "Not here", "lost", self._lost)

    def _page(
        self, address: str, title: str, template: str, context: Make, about: About = NOTHING_MORE
    ) -> Page:
        def body() -> Markup:
            made, language = context(self.surround.root(address)), self.of.notation.language
            return render.page(f"pages/{template}.html", language, self.of.own, page=made)

        return Page(address, title, body, lambda: self.surround.frame(address, title, about))

    def _case(self, case: Case) -> Page:
        address = f"cases/{case.id}/index.html"
        context = functools.partial(self.cases.page, case)
        return self._page(address, title_of(case), "case", context, self._about(case))

    def _apart(self, case: Case) -> Page:
        """How to take the work apart again: a page for printing and for the box."""
        address = f"cases/{case.id}/apart/index.html"

        def context(root: str) -> ApartPage:
            views = case_pictures(case, self.of.archive, self.of.pictures, root)
            lab, told = self.of.archive.settings, self.of.structure(case)
            return apart_page(case, lab, told, self.of.wording(root), pair_of(case, views))

        title = f"How to take this apart: {title_of(case)}"
        return self._page(address, title, "apart", context, About(case=case.id))

    def _about(self, case: Case) -> About:
        """What a case's page says of itself: its picture for previews, its data for programs."""
        views = case_pictures(case, self.of.archive, self.of.pictures, "")
        pair = pair_of(case, views)
        chosen = pair.after or pair.before
        data = self.cases.data(case)
        scripts = {"compare": pair.alike, "zoom": views, "stepper": layered(case)}
        scripts["marks"] = views and any(True for _ in marks(case))
        needed = tuple(name for name, wanted in scripts.items() if wanted)
        return About(
            describe(case), chosen.src if chosen else "", scripts=needed, data=data, case=case.id
        )

    def _moved(self, case: Case, old: str) -> Page:
        to = f"../{case.id}/index.html"
        page = MovedPage("This case has moved", Link(title_of(case), to))
        address = f"cases/{old}/index.html"
        return self._page(address, page.title, "moved", lambda _: page, About(redirect=to))

    def _home(self, root: str) -> HomePage:
        of = self.of
        sums = total((case, of.summaries[case.id]) for case in of.cases).own
        recent = self._recent(root)
        feature = next((one for one in recent if one.before and one.after), None)
        return HomePage(
            name=of.name,
            about=say(of.archive.settings.about),
            feature=feature,
            ways=groups(of.ways, root),
            recent=tuple(one for one in recent if one is not feature),
            all_cases=Link("All cases", f"{root}cases/index.html", str(len(of.cases))),
            totals=total_facts(len(of.cases), sums.areas, sums.hours, of.notation),
        )

    def _recent(self, root: str) -> tuple[Card, ...]:
        """The newest cases that can be seen, then the newest of the others."""
        pictured = [case for case in self.of.cases if self.of.archive.images.get(case.id)]
        others = [case for case in self.of.cases if not self.of.archive.images.get(case.id)]
        return self.lists.cards((*pictured, *others)[:RECENT], root)

    def _all_ways(self, root: str) -> WaysPage:
        intro = "Cases by what the object is, what had happened to it, and what was done."
        return WaysPage("Ways in", intro, groups(self.of.ways, root))

    def _index(self, kind: str, address: str) -> Page:
        def context(root: str) -> WaysPage:
            ways = [way for way in self.of.ways if way.kind == kind]
            return WaysPage(PLURALS[kind], "", natures(ways, root))

        return self._page(address, PLURALS[kind], "ways", context)

    def _everything(self) -> Iterator[Page]:
        """All cases, page by page."""
        for sheet in sheets(self.of.cases):
            make = functools.partial(self.lists.everything, sheet)
            yield self._page(sheet.address(ALL), sheet.title("All cases"), "list", make)

    def _way(self, way: Way) -> Iterator[Page]:
        """The cases of one way in, page by page."""
        title = heading_of(way)
        gloss = say(way.term.gloss) if way.term else ""
        about = About(f"{title}: {gloss}" if gloss else "")
        for sheet in sheets([self.of.by_id[one] for one in way.cases]):
            make = functools.partial(self.lists.way, way, sheet)
            yield self._page(sheet.address(way.address), sheet.title(title), "list", make, about)

    def _glossary(self, root: str) -> GlossaryPage:
        return glossary_page(self.of.archive.terms, root, self.of.term_pages)

    def _search(self, root: str) -> SearchPage:
        return SearchPage("Search", groups(self.of.ways, root))

    def _lost(self, root: str) -> LostPage:
        return LostPage("Not here", Link("Go to the home page", f"{root}index.html"))
