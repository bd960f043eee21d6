"""What surrounds every page: head, header and footer, in the lab's name."""

from __future__ import annotations

from dataclasses import dataclass

from casebook.model.archive import Shown
from casebook.model.base import Audience
from casebook.model.settings import DEFAULT_NAME
from casebook.output.contexts import FrameContext, Link
from casebook.output.render import render
from casebook.output.site import Frame
from casebook.output.wording import say

_BANNERS = {
    Audience.LAB: "The lab's own copy: it shows everything, and is not for publication.",
    Audience.CLIENT: "A copy for one client.",
    Audience.PUBLIC: "",
}


@dataclass(frozen=True, slots=True)
class Surround:
    """What all pages of a site share: the lab, the links of the header, styles and scripts."""

    shown: Shown
    site_url: str
    nav: tuple[Link, ...]
    style: str
    scripts: tuple[str, ...]
    search_scripts: tuple[str, ...]

    def frame(
        self, address: str, title: str, description: str = "", image: str = "", redirect: str = ""
    ) -> Frame:
        """The frame of one page, with every link relative to where it stands."""
        settings = self.shown.archive.settings
        context = self._context(address, title, description, image, redirect)
        return Frame(
            language=say(settings.language) or "en",
            head=render("parts/head.html", frame=context),
            header=render("parts/header.html", frame=context),
            footer=render("parts/footer.html", frame=context),
        )

    def _context(
        self, address: str, title: str, description: str, image: str, redirect: str
    ) -> FrameContext:
        settings = self.shown.archive.settings
        root = root_of(address)
        name = say(settings.name) or DEFAULT_NAME
        scripts = self.search_scripts if address == SEARCH else ()
        footer = (name, say(settings.address), say(settings.contact), say(settings.licence))
        banner = (say(settings.invented), _BANNERS[self.shown.audience])
        return FrameContext(
            title=f"{title} – {name}" if title != name else name,
            description=description,
            language=say(settings.language) or "en",
            root=root,
            site_name=name,
            home=f"{root}index.html",
            nav=tuple(Link(one.text, root + one.href) for one in self.nav),
            search=root + SEARCH,
            styles=(root + self.style,),
            scripts=tuple(root + one for one in (*self.scripts, *scripts)),
            canonical=f"{self.site_url}{address}" if self.site_url else "",
            image=f"{self.site_url}{image}" if self.site_url and image else "",
            banner=" ".join(one for one in banner if one),
            footer=tuple(one for one in footer if one),
            redirect=redirect,
        )


SEARCH = "search/index.html"


def root_of(address: str) -> str:
    """The way from a page back to the site's top: "", "../" or "../../"."""
    return "../" * address.count("/")
