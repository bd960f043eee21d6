"""Every page of a site: where it stands, and how its body is made when it is asked for."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from markupsafe import Markup

from casebook.compute.likeness import Like
from casebook.compute.marks import marks
from casebook.compute.summary import total
from casebook.model.archive import Case
from casebook.model.base import items
from casebook.output.apart import ApartPage, apart_page
from casebook.output.case_contexts import CasePage
from casebook.output.case_page import Told, card, case_page, describe, title_of
from casebook.output.contexts import (
    Card,
    Fact,
    HomePage,
    Link,
    ListPage,
    LostPage,
    MovedPage,
    SearchPage,
    WaysPage,
)
from casebook.output.frame import LOST, NOTHING_MORE, SEARCH, About, Surround
from casebook.output.glossary import ADDRESS as GLOSSARY
from casebook.output.glossary import GlossaryPage, glossary_page, told_once
from casebook.output.linked_data import case_data, picture_addresses
from casebook.output.pictures import before_and_after, case_pictures
from casebook.output.render import render
from casebook.output.site import Page
from casebook.output.structure_view import layered
from casebook.output.tables import total_facts
from casebook.output.term_facts import term_facts
from casebook.output.ways import INDEXES, TITLES, Way, groups
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
        self.cards: dict[tuple[str, str], Card] = {}

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
        yield self._page("cases/index.html", "All cases", "list", self._all)
        yield self._page("ways/index.html", "Ways in", "ways", self._all_ways)
        for kind, address in INDEXES.items():
            if any(way.kind == kind for way in self.of.ways):
                yield self._index(kind, address)
        for way in self.of.ways:
            yield self._way(way)
        yield self._page(GLOSSARY, "The trade’s words", "glossary", self._glossary)
        yield self._page(SEARCH, "Search", "search", self._search, About(scripts=("search",)))
        yield self._page(LOST, "Not here", "lost", self._lost)

    def _page(
        self, address: str, title: str, template: str, context: Make, about: About = NOTHING_MORE
    ) -> Page:
        def body() -> Markup:
            return render(f"pages/{template}.html", page=context(self.surround.root(address)))

        return Page(address, title, body, lambda: self.surround.frame(address, title, about))

    def _case(self, case: Case) -> Page:
        address = f"cases/{case.id}/index.html"

        def context(root: str) -> CasePage:
            of = self.of
            told = self._told(case, root)
            return told_once(case_page(case, of.archive, of.pictures, of.wording(root), told))

        return self._page(address, title_of(case), "case", context, self._about(case, address))

    def _apart(self, case: Case) -> Page:
        """How to take the work apart again: a page for printing and for the box."""
        address = f"cases/{case.id}/apart/index.html"

        def context(root: str) -> ApartPage:
            views = case_pictures(case, self.of.archive, self.of.pictures, root)
            lab, told = self.of.archive.settings, self.of.structure(case)
            return apart_page(case, lab, told, self.of.wording(root), before_and_after(case, views))

        title = f"How to take this apart: {title_of(case)}"
        return self._page(address, title, "apart", context)

    def _about(self, case: Case, address: str) -> About:
        """What a case's page says of itself: its picture for previews, its data for programs."""
        of, url = self.of, self.of.wishes.site_url
        views = case_pictures(case, of.archive, of.pictures, "")
        before, after = before_and_after(case, views)
        chosen = after or before
        images = picture_addresses(url, views)
        data = case_data(case, of.archive, of.lexicon, url + address if url else "", images)
        scripts = {"compare": before and after, "zoom": views, "stepper": layered(case)}
        scripts["marks"] = views and any(True for _ in marks(case))
        needed = tuple(name for name, wanted in scripts.items() if wanted)
        return About(describe(case), chosen.src if chosen else "", scripts=needed, data=data)

    def _told(self, case: Case, root: str) -> Told:
        links = tuple(Link(way.title, root + way.address) for way in self.of.leading_to[case.id])
        return Told(
            summary=self.of.summaries[case.id],
            kin=self.of.kin[case.id],
            gaps=self.of.wishes.gaps.get(case.id, ()),
            faults=self.of.wishes.faults.get(case.id, ()),
            ways=links,
            withheld=case.id in self.of.shown.withheld,
            structure=self.of.structure(case),
            like=self._like(case),
        )

    def _like(self, case: Case) -> tuple[Like, ...]:
        """Cases like this one that are not named on its page already."""
        kin = [one.case for one in self.of.kin[case.id]]
        return self.of.likeness.to(case.id, without=kin)

    def _moved(self, case: Case, old: str) -> Page:
        to = f"../{case.id}/index.html"
        page = MovedPage("This case has moved", Link(title_of(case), to))
        address = f"cases/{old}/index.html"
        return self._page(address, page.title, "moved", lambda _: page, About(redirect=to))

    def _cards(self, cases: tuple[Case, ...], root: str) -> tuple[Card, ...]:
        return tuple(self._card(one, root) for one in cases)

    def _card(self, case: Case, root: str) -> Card:
        """A case's card; made once for each depth, since it stands on many pages."""
        if (case.id, root) not in self.cards:
            of = self.of
            self.cards[case.id, root] = card(case, of.archive, of.pictures, of.wording(root))
        return self.cards[case.id, root]

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
            totals=total_facts(len(of.cases), sums.areas, sums.hours),
        )

    def _recent(self, root: str) -> tuple[Card, ...]:
        """The newest cases that can be seen, then the newest of the others."""
        pictured = [case for case in self.of.cases if self.of.archive.images.get(case.id)]
        others = [case for case in self.of.cases if not self.of.archive.images.get(case.id)]
        return self._cards((*pictured, *others)[:RECENT], root)

    def _all(self, root: str) -> ListPage:
        return self._list("All cases", "", self.of.cases, root)

    def _list(self, title: str, kicker: str, cases: tuple[Case, ...], root: str) -> ListPage:
        cards = self._cards(cases, root)
        return ListPage(title, kicker, "", "", "", (), cards, ())

    def _all_ways(self, root: str) -> WaysPage:
        intro = "Cases by what the object is, what had happened to it, and what was done."
        return WaysPage("Ways in", intro, groups(self.of.ways, root))

    def _index(self, kind: str, address: str) -> Page:
        def context(root: str) -> WaysPage:
            ways = [way for way in self.of.ways if way.kind == kind]
            return WaysPage(TITLES[kind], "", groups(ways, root, 0))

        return self._page(address, TITLES[kind], "ways", context)

    def _way(self, way: Way) -> Page:
        def context(root: str) -> ListPage:
            cases = tuple(self.of.by_id[one] for one in way.cases)
            term = way.term
            gloss = say(term.gloss) if term else ""
            also = ", ".join(items(term.also)) if term else ""
            caution = say(term.caution) if term else ""
            cards = self._cards(cases, root)
            up = Link(f"All under {TITLES[way.kind].lower()}", root + INDEXES[way.kind])
            title = way.title[:1].upper() + way.title[1:]
            return ListPage(
                title,
                TITLES[way.kind],
                gloss,
                also,
                caution,
                self._facts(way),
                cards,
                (up,),
            )

        title = way.title[:1].upper() + way.title[1:]
        gloss = say(way.term.gloss) if way.term else ""
        about = About(f"{title}: {gloss}" if gloss else "")
        return self._page(way.address, title, "list", context, about)

    def _glossary(self, root: str) -> GlossaryPage:
        return glossary_page(self.of.archive.terms, root, self.of.term_pages)

    def _facts(self, way: Way) -> tuple[Fact, ...]:
        if way.term is None:
            return ()
        return term_facts(way.kind, way.name, way.term, self.of.lexicon)

    def _search(self, root: str) -> SearchPage:
        return SearchPage("Search", groups(self.of.ways, root))

    def _lost(self, root: str) -> LostPage:
        return LostPage("Not here", Link("Go to the home page", f"{root}index.html"))
