"""The built site as a value: pages whose bodies are made when asked for, and assets."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from markupsafe import Markup


@dataclass(frozen=True, slots=True)
class Frame:
    """What surrounds a page, as finished HTML: the inside of `head`, the header, the footer.

    `foot` stands at the foot of each printed sheet; `own` is the attribute for what the
    lab wrote where its language is not the page's, else "".
    """

    language: str
    own: Markup
    foot: Markup
    head: Markup
    header: Markup
    footer: Markup


@dataclass(frozen=True, slots=True)
class Page:
    """One page: where it stands, its title, and calls that make its body and its frame."""

    address: str
    title: str
    body: Callable[[], Markup]
    frame: Callable[[], Frame]


@dataclass(frozen=True, slots=True)
class Asset:
    """A file beside the pages: its address, and its bytes, the path of a file to link, or a call.

    A call makes the bytes, when they are asked for.
    """

    address: str
    content: bytes | Path | Callable[[], bytes]

    def made(self) -> bytes | Path:
        """Its bytes, made if need be, or the path of the file."""
        return self.content() if callable(self.content) else self.content


@dataclass(frozen=True, slots=True)
class Site:
    """All that is published for one audience, in a fixed order.

    `frame_for(address, title)` makes the frame of a hand-written page, `own_page(html, title)` what
    stands in it.
    """

    pages: tuple[Page, ...]
    assets: tuple[Asset, ...]
    frame_for: Callable[[str, str], Frame]
    own_page: Callable[[str, str], str]
