"""Marks for readers: quotes, apostrophes, primes, dashes, and spaces that no line is broken at.

A record is typed with the marks of a keyboard, and stays so; what a page shows of it is set here.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from casebook.values.language import ENGLISH, Language

APOSTROPHE, PRIME, DOUBLE_PRIME = "’", "′", "″"
_FIXED = "\N{NO-BREAK SPACE}"
_BEFORE_OPENING = frozenset(" \t\n\r\f\v([{<«‹“„‚‘-–—/\u00a0\u2009\u202f")
_SPACES = frozenset(" \t\n\r\f\v\u00a0\u2009\u202f")
_QUOTE = re.compile("[\"']")
_CLIPPED = re.compile(r"(?:tis|twas|twere|twill|til|em|n|\d\ds?)\b", re.IGNORECASE)
"""What an apostrophe may begin: 'tis, '90s."""
_CLOSES_LATER = re.compile(r"(?<=\S)'(?!\w)")
_UNITS = (
    "mm|cm|m|km|µm|nm|in|ft|yd|mm²|cm²|m²|in²|ft²|g|kg|mg|µg|g/m²|oz|lb|ml|cl|l|µl|h|min|s|%|°C|°F"
)
_FIRM = re.compile(
    rf" (?:(?=[–—] )|(?<=[\d⁄¼½¾] )(?=\d+/\d|(?:{_UNITS})(?![\w²/]))"
    r"|(?<=\b[cp]\. )(?=\d)|(?<=\b(?:ca|pp)\. )(?=\d))"
)
"""Spaces that a line is not broken at: before units, in mixed numbers, behind "c.", before a dash
that is a pause."""
_DOTS = re.compile(r"(?<!\.)\.\.\.(?!\.)")
_DASH = re.compile(r"(?<=\S )-{1,3}(?= \S)")


@dataclass(slots=True)
class _Setter:
    """Sets stretches of one text in turn; keeps the sign before, and which quotes are open."""

    language: Language
    before: str = " "
    open: list[str] = field(default_factory=list)

    def set(self, text: str, after: str = " ") -> str:
        """A stretch with its marks; `after` is the sign that follows it."""
        if not text:
            return text
        if '"' in text or "'" in text:
            whole = f"{self.before}{text}{after}"
            quoted = _QUOTE.sub(lambda found: self._mark(found, whole), whole[1:-1])
        else:
            quoted = text
        self.before = text[-1]
        return _plain(quoted)

    def _mark(self, found: re.Match[str], whole: str) -> str:
        at = found.start() + 1
        before, after = whole[at - 1], whole[at + 1]
        if found[0] == '"':
            return self._double(before, after)
        return self._single(before, after, whole[at:])

    def _double(self, before: str, after: str) -> str:
        if before.isdigit() and '"' not in self.open:
            return DOUBLE_PRIME
        if before in _BEFORE_OPENING and after not in _SPACES:
            return self._opened('"')
        lonely = before in _SPACES and after in _SPACES
        return '"' if lonely and '"' not in self.open else self._closed('"')

    def _single(self, before: str, after: str, rest: str) -> str:
        if before.isdigit() and "'" not in self.open and not after.isalpha():
            return PRIME
        if before not in _BEFORE_OPENING:
            return self._closed("'") if "'" in self.open and not after.isalnum() else APOSTROPHE
        if after in _SPACES:
            return "'"
        if not _CLIPPED.match(rest, 1) and _CLOSES_LATER.search(rest, 1):
            return self._opened("'")
        return APOSTROPHE

    def _opened(self, quote: str) -> str:
        self.open.append(quote)
        return self.language.phrases.quotes[0 if quote == '"' else 2]

    def _closed(self, quote: str) -> str:
        if quote in self.open:
            del self.open[self.open.index(quote) :]
        return self.language.phrases.quotes[1 if quote == '"' else 3]


def _plain(text: str) -> str:
    """Dots, dashes and spaces, which need nothing of what stands further off."""
    if "..." in text:
        text = _DOTS.sub("…", text)
    if " -" in text:
        text = _DASH.sub("–", text)
    return _FIRM.sub(_FIXED, text) if " " in text else text


def typeset(text: str, language: Language = ENGLISH) -> str:
    """A plain text with the marks of a language; nothing but quotes, dashes, dots, spaces differs.

    What is set already stays as it is.
    """
    return _Setter(language).set(text)


_KEPT = re.compile(
    r"<!--.*?-->|<(?P<name>script|style|code|pre|textarea)\b.*?</(?P=name)\s*>", re.DOTALL
)
_TAG = re.compile(r"""(<[^>"']*(?:"[^"]*"[^>"']*|'[^']*'[^>"']*)*>)""")
_INLINE = re.compile(r"</?(?:a|abbr|b|cite|dfn|em|i|small|span|strong|tspan)\b", re.IGNORECASE)
_CALLS = re.compile(r"[\d\"'&]|\.\.\.| [-–—] ")
"""What calls for a closer look at a text; most texts of a page have none of it."""
_ESCAPED = re.compile("&#3[49];|&quot;")


def typeset_html(html: str, language: Language) -> str:
    """The texts of a page typeset; tags with their attributes, scripts and code stay as they are.

    A quotation may begin in one tag and end in another, as long as both stand in one paragraph.
    """
    found: list[str] = []
    at, before = 0, " "
    for kept in _KEPT.finditer(html):
        found += (_set_texts(html[at : kept.start()], language, before), kept[0])
        before = "a" if kept["name"] == "code" else " "
        at = kept.end()
    found.append(_set_texts(html[at:], language, before))
    return "".join(found)


def _set_texts(html: str, language: Language, before: str) -> str:
    """Texts between tags; `before` is the sign that comes before the first."""
    pieces = _TAG.split(html)  # texts stand at even places, tags at odd ones
    setter, last = _Setter(language), 0
    for at in range(0, len(pieces), 2):
        text = pieces[at]
        if not _CALLS.search(text):
            continue
        if '"' in text or "'" in text or "&" in text:
            if not all(_INLINE.match(tag) for tag in pieces[last + 1 : at : 2]):
                setter.open.clear()
            setter.before = _sign_before(pieces, at, before)
            pieces[at] = setter.set(_unescaped(text), _sign_after(pieces, at))
            last = at
        else:
            pieces[at] = _plain(text)
    return "".join(pieces)


def _sign_before(pieces: list[str], at: int, first: str) -> str:
    """The sign that comes before a text in its paragraph; a space where there is none."""
    for place in range(at - 1, 0, -2):
        if not _INLINE.match(pieces[place]):
            return " "
        if text := pieces[place - 1]:
            return text[-1]
    return first


def _sign_after(pieces: list[str], at: int) -> str:
    """A letter where an inline tag opens behind a text, since something follows; else a space."""
    tag = pieces[at + 1] if at + 1 < len(pieces) else "/"
    return "a" if _INLINE.match(tag) and tag[1] != "/" else " "


def _unescaped(text: str) -> str:
    """A text with its quotes as such: only within a tag do they need escaping."""
    return _ESCAPED.sub(lambda found: "'" if found[0] == "&#39;" else '"', text)
