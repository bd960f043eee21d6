"""What programs may read of a case page: JSON-LD in the words of schema.org."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from typing import Any

from casebook.model.archive import Archive, Case
from casebook.model.base import items, known
from casebook.model.object import Made, Object
from casebook.model.settings import DEFAULT_NAME
from casebook.output.case_page import describe, title_of
from casebook.output.citing import author
from casebook.output.contexts import PictureView
from casebook.output.lab_language import tag_of
from casebook.output.wording import say
from casebook.values.dates import Date
from casebook.vocabulary import Lexicon

CONTEXT = "https://schema.org"

_TYPES = {"map": "Map", "chart": "Map", "manuscript": "Manuscript"}
"""What schema.org calls a kind of object; a bound thing is a Book, anything else a CreativeWork."""

_ISO_DATE = re.compile(r"\d{4}(?:-\d\d){0,2}")


def case_data(
    case: Case, archive: Archive, lexicon: Lexicon, address: str, images: tuple[str, ...]
) -> str:
    """The case as an article about an object, safe inside a script element.

    `address` is the page's own on the web, `images` those of its pictures; both may be empty.
    Terms: schema.org, checked against the npm package schema-dts 1.1.5, but for `identifier`,
    `headline`, `datePublished`, `dateCreated`, `size` and `author`, which are from memory.
    """
    data = {
        "@context": CONTEXT,
        "@type": "Article",
        "@id": address,
        "url": address,
        "identifier": case.id,
        "headline": title_of(case),
        "description": describe(case),
        "inLanguage": tag_of(archive.settings),
        "creator": _creators(case),
        "publisher": {
            "@type": "Organization",
            "name": say(archive.settings.name) or DEFAULT_NAME,
        },
        "datePublished": _written(case),
        "copyrightNotice": say(archive.settings.licence),
        "image": list(images),
        "about": _about(case, lexicon),
    }
    return dumped(_said(data))


def dumped(data: Mapping[str, Any]) -> str:
    """Data as JSON that cannot end a script element, whatever stands in it."""
    text = json.dumps(data, ensure_ascii=False)
    return text.replace("<", "\\u003c").replace(">", "\\u003e").replace("&", "\\u0026")


def _said(data: Mapping[str, Any]) -> dict[str, Any]:
    """Only what is said."""
    return {key: value for key, value in data.items() if value}


def _creators(case: Case) -> list[dict[str, str]]:
    written = known(case.written)
    names = [author(case, one) for one in items(written.by)] if written else []
    return [{"@type": "Person", "name": name} for name in names if name]


def _written(case: Case) -> str:
    written = known(case.written)
    date = known(written.date) if written else None
    day = date.earliest_day() if date else None
    return day.isoformat() if day else ""


def _about(case: Case, lexicon: Lexicon) -> dict[str, Any]:
    """The object itself."""
    thing = known(case.object) or Object()
    return _said(
        {
            "@type": _type(case, thing, lexicon),
            "name": title_of(case),
            "author": say(thing.author),
            "dateCreated": next((_made(one) for one in items(thing.made)), ""),
            "material": _covering(case, lexicon),
            "size": _size(thing),
        }
    )


def _type(case: Case, thing: Object, lexicon: Lexicon) -> str:
    found = lexicon.resolve("kinds", known(thing.kind) or "")
    named = _TYPES.get(found[1]) if found else None
    return named or ("Book" if items(case.bindings) else "CreativeWork")


def _made(made: Made) -> str:
    """The date of the object where it is one that ISO 8601 knows: a year, a month or a day."""
    date = known(made.is_)
    text = date.canonical() if isinstance(date, Date) else ""
    return text if _ISO_DATE.fullmatch(text) else ""


def _covering(case: Case, lexicon: Lexicon) -> list[str]:
    words = [word for one in items(case.bindings)[:1] for word in items(one.covering)]
    return [lexicon.label("materials", word) for word in words]


def _size(thing: Object) -> str:
    """The measures as they were written, in one line."""
    size = known(thing.size)
    sides = (size.height, size.width, size.thickness) if size else ()
    return " × ".join(str(one) for one in sides if known(one) is not None)


def picture_addresses(site_url: str, views: Mapping[str, PictureView]) -> tuple[str, ...]:
    """The addresses on the web of a case's pictures; none where the site's is not known."""
    return tuple(site_url + one.src for one in views.values()) if site_url else ()
