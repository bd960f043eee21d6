"""The whole site of one audience as a value: what may be seen in, pages and assets out."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field

from markupsafe import Markup

from casebook.compute.summary import summarise, total
from casebook.files import digest, templates_folder
from casebook.model.archive import Case, Redacted
from casebook.model.base import items, known
from casebook.model.settings import DEFAULT_NAME
from casebook.output.case_page import Told, card, case_page, describe, title_of
from casebook.output.contexts import (
    Card,
    HomePage,
    Line,
    Link,
    ListPage,
    LostPage,
    MovedPage,
    Run,
    SearchPage,
    WaysPage,
)
from casebook.output.contexts import Fact as FactView
from casebook.output.frame import SEARCH, Surround, root_of
from casebook.output.pictures import FOLDER, Pictures, before_and_after, case_pictures
from casebook.output.render import render
from casebook.output.search import index_assets, index_part
from casebook.output.site import Asset, Page, Site
from casebook.output.tables import total_facts
from casebook.output.ways import INDEXES, TITLES, Way, groups, ways_of
from casebook.output.wording import Wording, say
from casebook.vocabulary import Lexicon

RECENT = 6

Make = Callable[[str], object]
"""Makes a template's context for a page, given the way from it to the site's top."""


@dataclass(frozen=True, slots=True)
class Wishes:
    """What the door says of a site: its address on the web, its own pages, and faults to show.

    `gaps` and `faults` are sentences by case id; `own_pages` are links of hand-written pages.
    """

    site_url: str = ""
    own_pages: tuple[Link, ...] = ()
    gaps: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    faults: Mapping[str, tuple[str, ...]] = field(default_factory=dict)


class Publisher:
    """Makes the pages of one site; what several of them need is computed once."""

    def __init__(self, redacted: Redacted, pictures: Pictures, wishes: Wishes) -> None:
        self.shown = redacted
        self.archive = redacted.archive
        self.pictures = pictures
        self.wishes = wishes
        self.lexicon = Lexicon(self.archive.terms)
        self.cases = tuple(sorted(self.archive.cases, key=_newest_first))
        self.by_id = {case.id: case for case in self.cases}
        self.summaries = {case.id: summarise(case, self._operation) for case in self.cases}
        self.ways = ways_of(self.cases, self.lexicon)
        self.leading_to: dict[str, list[Way]] = {case.id: [] for case in self.cases}
        for way in self.ways:
            for one in way.cases:
                self.leading_to[one].append(way)
        self.name = say(self.archive.settings.name) or DEFAULT_NAME

    def _operation(self, word: str) -> str:
        found = self.lexicon.resolve("operations", word)
        return found[1] if found else word

    def site(self) -> Site:
        """All pages and assets, in a fixed order."""
        style, scripts, fixed = _fixed_assets()
        index = tuple(index_assets(index_part(case, self.wording("")) for case in self.cases))
        nav = (
            Link("Cases", "cases/index.html"),
            Link("Ways in", "ways/index.html"),
            *self.wishes.own_pages,
        )
        search = (*(one.address for one in index), scripts["search"])
        common = tuple(address for name, address in scripts.items() if name != "search")
        surround = Surround(self.shown, self.wishes.site_url, nav, style, common, search)
        pages = tuple(_Maker(self, surround).pages())
        assets = (*fixed, *index, *self._photos(), *self._sitemap(pages))
        return Site(pages, assets, surround.frame)

    def wording(self, root: str) -> Wording:
        """How words are written on a page from which `root` leads to the top."""
        return Wording(self.lexicon, root)

    def _sitemap(self, pages: tuple[Page, ...]) -> Iterator[Asset]:
        """The list of pages for search engines, where the site's address on the web is known."""
        if self.wishes.site_url:
            own = [link.href for link in self.wishes.own_pages]
            addresses = [page.address for page in pages if page.address != "404.html"]
            context = {"addresses": [self.wishes.site_url + one for one in (*addresses, *own)]}
            yield Asset("sitemap.xml", render("parts/sitemap.xml", **context).encode())

    def _photos(self) -> Iterator[Asset]:
        """The derived pictures that some page of this site shows, each once."""
        images = [one for images in self.archive.images.values() for one in images.values()]
        pictures = [self.pictures.get(image.digest) for image in images]
        names = {one.name for picture in pictures if picture for one in picture.widths}
        for name in sorted(names):
            yield Asset(f"{FOLDER}/{name}", self.pictures.path(name))


def _newest_first(case: Case) -> tuple[int, str]:
    """The order of cases on a site: by the day they came, newest first, then by id."""
    dates = known(case.dates)
    received = known(dates.received) if dates else None
    day = received.earliest_day() if received else None
    return (-day.toordinal() if day else 0, case.id)


def _fixed_assets() -> tuple[str, dict[str, str], tuple[Asset, ...]]:
    """The style, the scripts by name and the icon, as they are named on the site."""
    folder = templates_folder() / "assets"
    assets: list[Asset] = []
    scripts: dict[str, str] = {}
    style = ""
    for path in sorted(folder.iterdir()):
        data = path.read_bytes()
        named = f"assets/{path.stem}-{digest(data)[:12]}{path.suffix}"
        address = f"assets/{path.name}" if path.suffix == ".svg" else named
        assets.append(Asset(address, data))
        if path.suffix == ".js":
            scripts[path.stem] = address
        elif path.suffix == ".css":
            style = address
    return style, scripts, tuple(assets)


class _Maker:
    """The pages of a site, each body made only when it is asked for."""

    def __init__(self, publisher: Publisher, surround: Surround) -> None:
        self.of = publisher
        self.surround = surround
        self.cards: dict[tuple[str, str], Card] = {}

    def pages(self) -> Iterator[Page]:
        """Every page, home first."""
        yield self._page("index.html", self.of.name, "home", self._home)
        for case in self.of.cases:
            yield self._case(case)
            for old in items(case.was):
                yield self._moved(case, old)
        yield self._page("cases/index.html", "All cases", "list", self._all)
        yield self._page("ways/index.html", "Ways in", "ways", self._all_ways)
        for kind, address in INDEXES.items():
            if any(way.kind == kind for way in self.of.ways):
                yield self._index(kind, address)
        for way in self.of.ways:
            yield self._way(way)
        yield self._page(SEARCH, "Search", "search", self._search)
        yield self._page("404.html", "Not here", "lost", self._lost)

    def _page(self, address: str, title: str, template: str, context: Make, **more: str) -> Page:
        def body() -> Markup:
            return render(f"pages/{template}.html", page=context(root_of(address)))

        return Page(address, title, body, lambda: self.surround.frame(address, title, **more))

    def _case(self, case: Case) -> Page:
        address = f"cases/{case.id}/index.html"
        return self._page(
            address,
            title_of(case),
            "case",
            lambda root: case_page(
                case,
                self.of.archive,
                self.of.pictures,
                self.of.wording(root),
                self._told(case, root),
            ),
            description=describe(case),
            image=self._preview(case),
        )

    def _preview(self, case: Case) -> str:
        views = case_pictures(case, self.of.archive, self.of.pictures, "")
        before, after = before_and_after(case, views)
        chosen = after or before
        return chosen.src if chosen else ""

    def _told(self, case: Case, root: str) -> Told:
        links = tuple(Link(way.title, root + way.address) for way in self.of.leading_to[case.id])
        return Told(
            summary=self.of.summaries[case.id],
            gaps=self.of.wishes.gaps.get(case.id, ()),
            faults=self.of.wishes.faults.get(case.id, ()),
            ways=links,
            withheld=case.id in self.of.shown.withheld,
        )

    def _moved(self, case: Case, old: str) -> Page:
        to = f"../{case.id}/index.html"
        page = MovedPage("This case has moved", Link(title_of(case), to))
        address = f"cases/{old}/index.html"
        return self._page(address, page.title, "moved", lambda _: page, redirect=to)

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
        return HomePage(
            name=of.name,
            about=say(of.archive.settings.about),
            ways=groups(of.ways, root),
            recent=self._cards(of.cases[:RECENT], root),
            all_cases=Link("All cases", f"{root}cases/index.html", str(len(of.cases))),
            totals=total_facts(len(of.cases), sums.areas, sums.hours),
        )

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
                _facts(way),
                cards,
                (up,),
            )

        title = way.title[:1].upper() + way.title[1:]
        return self._page(way.address, title, "list", context)

    def _search(self, root: str) -> SearchPage:
        return SearchPage("Search", groups(self.of.ways, root))

    def _lost(self, root: str) -> LostPage:
        return LostPage("Not here", Link("Go to the home page", f"{root}index.html"))


def _facts(way: Way) -> tuple[FactView, ...]:
    """A term's identifiers in open vocabularies, with where each pairing was read."""
    ids = items(way.term.ids) if way.term else ()
    lines: tuple[Line, ...] = tuple((Run(f"{one.scheme} {one.id} ({one.source})"),) for one in ids)
    return (FactView("Identifiers", lines),) if lines else ()


def publish_site(redacted: Redacted, pictures: Pictures, wishes: Wishes) -> Site:
    """The site of what an audience may see; nothing is written, bodies are made on demand."""
    return Publisher(redacted, pictures, wishes).site()
