"""The whole site of one audience as a value: what may be seen in, pages and assets out."""

from __future__ import annotations

from collections.abc import Iterator

from casebook.model.archive import LAB, LOGO, Redacted
from casebook.model.base import items, known
from casebook.output.assets import fixed_assets
from casebook.output.contexts import Link
from casebook.output.feed import ADDRESS as FEED
from casebook.output.feed import feed_of
from casebook.output.frame import LOST, Surround
from casebook.output.glossary import ADDRESS as GLOSSARY
from casebook.output.maker import Maker
from casebook.output.pictures import FOLDER, Pictures
from casebook.output.render import render
from casebook.output.search import index_assets, index_part, words_asset
from casebook.output.site import Asset, Page, Site
from casebook.output.whole import Whole, Wishes


def publish_site(redacted: Redacted, pictures: Pictures, wishes: Wishes) -> Site:
    """The site of what an audience may see; nothing is written, bodies are made on demand."""
    whole = Whole(redacted, pictures, wishes)
    accent = known(whole.archive.settings.accent)
    fixed = fixed_assets(accent.rgb if accent else None)
    index = tuple(_index(whole))
    nav = (
        Link("Cases", "cases/index.html"),
        Link("Ways in", "ways/index.html"),
        Link("Words", GLOSSARY),
        *whole.wishes.own_pages,
    )
    found = tuple(one.address for one in index)
    feed = feed_of(whole)
    address = feed.self if feed else ""
    url, logo = whole.wishes.site_url, _logo(whole)
    surround = Surround(whole.shown, url, nav, fixed, found, logo, address)
    maker = Maker(whole, surround)
    pages = tuple(maker.pages())
    news = [Asset(FEED, render("parts/feed.xml", feed=feed).encode())] if feed else []
    assets = (
        *fixed.assets,
        *index,
        *maker.cases.files(),
        *_photos(whole),
        *_sitemap(whole, pages),
        *news,
    )
    return Site(pages, assets, surround.frame, whole.own_page)


def _index(whole: Whole) -> Iterator[Asset]:
    """What the search reads: the words first, then the cases."""
    archive, pictures, wording = whole.archive, whole.pictures, whole.wording("")
    yield words_asset(whole.ways, wording)
    yield from index_assets(index_part(one, archive, pictures, wording) for one in whole.cases)


def _logo(whole: Whole) -> str:
    """The address of the lab's logo; "" where it has none, or none that can be shown."""
    image = whole.archive.images.get(LAB, {}).get(LOGO)
    picture = whole.pictures.get(image.digest) if image else None
    return f"{FOLDER}/{picture.widths[0].name}" if picture else ""


def _sitemap(whole: Whole, pages: tuple[Page, ...]) -> Iterator[Asset]:
    """The list of pages for search engines, where the site's address on the web is known."""
    if whole.wishes.site_url:
        own = [link.href for link in whole.wishes.own_pages]
        gone = {f"cases/{old}/index.html" for case in whole.cases for old in items(case.was)}
        addresses = [page.address for page in pages if page.address not in {LOST, *gone}]
        context = {"addresses": [whole.wishes.site_url + one for one in (*addresses, *own)]}
        yield Asset("sitemap.xml", render("parts/sitemap.xml", **context).encode())


def _photos(whole: Whole) -> Iterator[Asset]:
    """The derived pictures that some page of this site shows, each once."""
    images = [one for images in whole.archive.images.values() for one in images.values()]
    pictures = [whole.pictures.get(image.digest) for image in images]
    names = {one.name for picture in pictures if picture for one in picture.widths}
    for name in sorted(names):
        yield Asset(f"{FOLDER}/{name}", whole.pictures.path(name))
