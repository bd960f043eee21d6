"""What surrounds every page: head, header and footer, in the lab's name."""

from __future__ import annotations

from dataclasses import dataclass
from urllib.parse import urlsplit

from markupsafe import Markup, escape

from casebook.model.archive import Shown
from casebook.model.base import Audience, items
from casebook.model.settings import DEFAULT_NAME
from casebook.output.assets import ICON, Fixed
from casebook.output.contexts import FrameContext, Link
from casebook.output.lab_language import foreign_tag, notation_of, tag_of
from casebook.output.render import lang, page
from casebook.output.site import Frame
from casebook.output.typography import typeset
from casebook.output.wording import say
from casebook.values.language import ENGLISH

_BANNERS = {
    Audience.LAB: "The lab's own copy: it shows everything, and is not for publication.",
    Audience.CLIENT: "A copy for one client.",
    Audience.PUBLIC: "",
}
_EVERYWHERE = ("gloss",)
"""The scripts that every page loads."""


@dataclass(frozen=True, slots=True)
class About:
    """What a page says of itself to programs, and the scripts that it needs by name.

    `image` is the address of a picture for previews, `redirect` where to go at once, `data` what
    a program may read of the page, as JSON-LD. `case` is the id of the case that it is about.
    """

    description: str = ""
    image: str = ""
    redirect: str = ""
    scripts: tuple[str, ...] = ()
    data: str = ""
    case: str = ""


NOTHING_MORE = About()
"""A page that says nothing of itself but its title."""


@dataclass(frozen=True, slots=True)
class Surround:
    """What all pages of a site share: the lab, the links of the header, styles and scripts."""

    shown: Shown
    site_url: str
    nav: tuple[Link, ...]
    fixed: Fixed
    index: tuple[str, ...]
    """The addresses of the search index, which the search page alone loads."""
    logo: str = ""
    """The address of the lab's logo; "" where it has none."""
    feed: str = ""
    """The feed's address on the web; "" where there is none."""

    def frame(self, address: str, title: str, about: About = NOTHING_MORE) -> Frame:
        """The frame of one page, with every link relative to where it stands."""
        settings = self.shown.archive.settings
        context = self._context(address, title, about)
        language = notation_of(settings).language

        def made(part: str) -> Markup:
            return page(f"parts/{part}.html", language, frame=context)

        number = f"Case {about.case}" if about.case else ""
        words = dict.fromkeys((context.site_name, number, title))
        return Frame(
            language=context.language,
            own=lang(foreign_tag(settings)),
            foot=escape(typeset(" · ".join(one for one in words if one), language)),
            head=made("head"),
            header=made("header"),
            footer=made("footer"),
        )

    def root(self, address: str) -> str:
        """The way from a page to the site's top; that of the page for the lost is a full path.

        A server shows that page at any address, at any depth; so where the site's address is known
        its links start at the top. From disk nobody comes there.
        """
        if address == LOST and self.site_url:
            return urlsplit(self.site_url).path or "/"
        return root_of(address)

    def _context(self, address: str, title: str, about: About) -> FrameContext:
        settings = self.shown.archive.settings
        root = self.root(address)
        name = say(settings.name) or DEFAULT_NAME
        own = (say(settings.address), say(settings.contact), *items(settings.footer))
        footer = (name, *own, say(settings.licence))
        banner = (say(settings.invented), _BANNERS[self.shown.audience])
        return FrameContext(
            title=f"{title} – {name}" if title != name else name,
            description=about.description or f"{title}, in the treatment archive of {name}.",
            language=ENGLISH.tag if foreign_tag(settings) else tag_of(settings),
            site_name=name,
            home=f"{root}index.html",
            logo=root + self.logo if self.logo else "",
            nav=tuple(
                Link(one.text, root + one.href, current=_current(one.href, address))
                for one in self.nav
            ),
            search=root + SEARCH,
            icon=root + ICON,
            styles=(root + self.fixed.style,),
            scripts=tuple(root + one for one in self._scripts(address, about)),
            canonical="" if about.redirect or address == LOST else self._full(address),
            image=self._full(about.image) if about.image else "",
            banner=" ".join(one for one in banner if one),
            footer=tuple(one for one in footer if one),
            redirect=about.redirect,
            data=Markup(about.data),
            feed=self.feed,
        )

    def _scripts(self, address: str, about: About) -> tuple[str, ...]:
        index = self.index if address == SEARCH else ()
        names = (*_EVERYWHERE, *about.scripts)
        return (*index, *(self.fixed.scripts[name] for name in names))

    def _full(self, address: str) -> str:
        """An address on the web, where the site's is known; else ""."""
        return f"{self.site_url}{address}" if self.site_url else ""


SEARCH = "search/index.html"
LOST = "404.html"


_ALSO = {"ways/": ("materials/",)}
"""Parts of a site that stand in another folder than the page that leads to them."""


def _current(href: str, address: str) -> str:
    """Whether a link of the header leads to this page ("page") or to the part it is in ("true")."""
    if href == address:
        return "page"
    folder = href.removesuffix("index.html")
    within = folder.endswith("/") and address.startswith((folder, *_ALSO.get(folder, ())))
    return "true" if within else ""


def root_of(address: str) -> str:
    """The way from a page back to the site's top: "", "../" or "../../"."""
    return "../" * address.count("/")
