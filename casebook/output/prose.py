"""Prose from a record to HTML: Markdown, then an allow-list. Raw HTML in a record never runs."""

from __future__ import annotations

import functools
import re
from html import unescape

import nh3
from markdown import Markdown
from markupsafe import Markup

TAGS = {
    "p", "br", "em", "strong", "ul", "ol", "li", "blockquote", "code", "pre", "a", "h3", "h4",
    "sup", "sub", "hr", "table", "thead", "tbody", "tr", "th", "td",
}  # fmt: skip
SCHEMES = {"http", "https", "mailto"}


@functools.cache
def _markdown() -> Markdown:
    """One converter for all prose: making one costs more than using it."""
    return Markdown(extensions=["tables", "sane_lists"], output_format="html")


@functools.lru_cache(maxsize=4096)
def prose(text: str) -> Markup:
    """Prose as HTML that may stand in a page; empty for empty text.

    Headings in it begin at the third level, below the page's own.
    """
    if not text.strip():
        return Markup("")
    converter = _markdown()
    converter.reset()
    html = _lower_headings(converter.convert(text))
    clean = nh3.clean(html, tags=TAGS, attributes={"a": {"href"}}, url_schemes=SCHEMES)
    return Markup(_UNLINKED.sub(r"\1", clean))


_UNLINKED = re.compile(r"<a(?: rel=\"[^\"]*\")?>(.*?)</a>", re.DOTALL)
"""A link whose address was not allowed: its words stay."""


def _lower_headings(html: str) -> str:
    for level in (4, 3, 2, 1):
        lower = min(level + 2, 4)
        html = html.replace(f"<h{level}>", f"<h{lower}>").replace(f"</h{level}>", f"</h{lower}>")
    return html


def plain(text: str) -> str:
    """Prose as plain words, for descriptions."""
    if not text.strip():
        return ""
    converter = _markdown()
    converter.reset()
    return _bare(converter.convert(text))


def paragraphs(text: str) -> tuple[str, ...]:
    """Prose as plain words, a text for each paragraph, item or row of a table."""
    return paragraphs_in(prose(text))


def paragraphs_in(html: Markup) -> tuple[str, ...]:
    """The same of prose that is HTML already."""
    blocks = (_bare(block) for block in _BLOCK_ENDS.split(html))
    return tuple(block for block in blocks if block)


_BLOCK_ENDS = re.compile(r"</(?:p|li|h[34]|pre|tr)>")


def _bare(text: str) -> str:
    return " ".join(unescape(nh3.clean(text, tags=set())).split())
