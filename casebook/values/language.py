"""A language in which a site writes its dates and numbers: its phrases and its order of a day."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path

from casebook.values.day_forms import DayForms, day_forms

_FOLDER = Path(__file__).with_name("languages")
_TAG = re.compile(r"[a-z]{2,3}(?:-[a-z0-9]{2,8})*", re.IGNORECASE | re.ASCII)
_LEAST = 5
"""Digits from which on a number is grouped by threes; common practice, no source."""


@dataclass(frozen=True, slots=True)
class Phrases:
    """What a date says beside days and months, as the files in `languages/` give it.

    In a phrase `{}` is the date as it stands alone, `{the}` as it stands behind a preposition, and
    `{end}` the second of two so; what is in angle brackets is said behind a preposition only.
    `{number}`, `{th}` and `{roman}` are the number of a century, `{of}` a whole of which a part is
    meant. `joined` gives words that run together.
    """

    source: str
    about: str
    doubt: str
    estimate: str
    probably: Mapping[str, str]
    bounds: Mapping[str, str]
    links: Mapping[str, str]
    missing: Mapping[str, str]
    doubts: Mapping[str, str]
    eras: Mapping[str, str]
    articles: Mapping[str, str]
    century: Mapping[str, str]
    decade: Mapping[str, str]
    parts: Mapping[str, str]
    year_parts: Mapping[str, str]
    seasons: Mapping[str, str]
    hemispheres: Mapping[str, str]
    joined: tuple[tuple[str, str], ...]
    first_day: str
    quotes: tuple[str, str, str, str]
    """The marks for double quotes, then those for single ones: each an opening and a closing."""


@dataclass(frozen=True, slots=True)
class Language:
    """A language by its tag, with its phrases and its forms of a day."""

    tag: str
    phrases: Phrases
    forms: DayForms

    def number(self, text: str) -> str:
        """A number in digits, such as "12345.6", with this language's signs: "12.345,6"."""
        whole, point, rest = text.partition(".")
        digits = whole.lstrip("-−")
        if len(digits) >= _LEAST:
            whole = whole.replace(digits, f"{int(digits):,}".replace(",", self.forms.group))
        return f"{whole}{self.forms.decimal if point else ''}{rest}"


def is_tag(text: str) -> bool:
    """Whether a text may be the tag of a language (RFC 5646, without its rarer forms)."""
    return bool(_TAG.fullmatch(text))


def is_english(tag: str) -> bool:
    """Whether a tag is that of English, of any country."""
    return _primary(tag) == "en"


def _primary(tag: str) -> str:
    return tag.partition("-")[0].lower()


@cache
def known_languages() -> tuple[str, ...]:
    """The tags of the languages that have phrases, without a country."""
    return tuple(sorted(path.stem for path in _FOLDER.glob("*.json")))


@cache
def _phrases(primary: str) -> Phrases:
    data = json.loads((_FOLDER / f"{primary}.json").read_text(encoding="utf-8"))
    data["joined"] = tuple((old, new) for old, new in data["joined"])
    return Phrases(**{**data, "quotes": tuple(data["quotes"])})


ENGLISH = Language("en", _phrases("en"), DayForms())
"""The language of a site that names none, with days as in Britain."""


@cache
def language(tag: str) -> Language | None:
    """The language of a tag such as `de` or `en-US` (RFC 5646); None where it has no phrases."""
    tag = tag.strip().replace("_", "-")
    if not is_tag(tag) or _primary(tag) not in known_languages():
        return None
    if tag.lower() in ("en", "en-gb"):
        return replace(ENGLISH, tag=tag)
    return Language(tag, _phrases(_primary(tag)), day_forms(tag))
