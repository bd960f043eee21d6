"""What a hand-written page needs beside its Markdown: a title, tables within reach, no styles."""

from __future__ import annotations

import re

from markupsafe import escape

_TABLE = re.compile(r"<table>.*?</table>", re.DOTALL)
_ALIGNED = re.compile(r'<(t[hd]) style="text-align: (left|center|right);">')


def titled(html: str, title: str) -> str:
    """The page under a heading of its own, or under its title where it has none."""
    return html if "<h1" in html else f"<h1>{escape(title)}</h1>\n{html}"


def within_reach(html: str) -> str:
    """Each table in a box of its own, in which it moves sideways and which the keyboard reaches.

    A column is aligned by a class: the security policy of our pages allows no style inside them.
    """
    aligned = _ALIGNED.sub(r'<\1 class="to-\2">', html)
    return _TABLE.sub(r'<div class="across" tabindex="0">\g<0></div>', aligned)
