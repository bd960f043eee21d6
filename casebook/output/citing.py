"""How a case is cited: in a sentence, as BibTeX, and as CSL-JSON for programs that keep sources."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any
from urllib.parse import quote

from casebook.model.archive import Archive, Case, Kind, Written
from casebook.model.base import items, known
from casebook.model.settings import DEFAULT_NAME
from casebook.output.lab_language import tag_of
from casebook.output.wording import listed_text, say
from casebook.values.dates import Date

GENRE = "treatment case"


@dataclass(frozen=True, slots=True)
class Citation:
    """What a citation is made of; `date` None where nobody wrote one, `address` "" off the web.

    `sources` are those of a case that was written up from a publication.
    """

    authors: tuple[str, ...]
    title: str
    lab: str
    number: str
    date: Date | None
    address: str
    language: str
    sources: tuple[str, ...] = ()

    @property
    def key(self) -> str:
        """What the case is called among other sources."""
        return f"case-{self.number}"

    @property
    def date_parts(self) -> tuple[int, ...]:
        """Year, month and day, as far as the date is one of each; () for none."""
        first, last = (
            (self.date.earliest_day(), self.date.latest_day()) if self.date else (None, None)
        )
        if first is None or last is None:
            return ()
        pairs = zip(first.timetuple()[:3], last.timetuple()[:3], strict=True)
        return tuple(_while_equal(pairs))

    @property
    def year(self) -> str:
        """The year for readers; of a date that spans several, the whole of it."""
        parts = self.date_parts
        return str(parts[0]) if parts else self.date.show() if self.date else ""


def _while_equal(pairs: Iterator[tuple[int, int]]) -> Iterator[int]:
    for one, other in pairs:
        if one != other:
            return
        yield one


def citation(case: Case, archive: Archive, address: str = "") -> Citation:
    """What is cited of a case; `address` is that of its page on the web, or ""."""
    written = known(case.written) or Written()
    published = case.record is Kind.FROM_PUBLICATION
    return Citation(
        authors=tuple(author(case, one) for one in items(written.by)),
        title=known(case.title) or case.id,
        lab=say(archive.settings.name) or DEFAULT_NAME,
        number=case.id,
        date=known(written.date),
        address=address,
        language=tag_of(archive.settings),
        sources=items(written.from_) if published else (),
    )


def author(case: Case, initials: str) -> str:
    """A person by name, where it may be shown; else by initials."""
    person = case.people.get(initials)
    return (known(person.name) if person else None) or initials


def cited(one: Citation) -> str:
    """The citation as a sentence, for a footnote."""
    by = listed_text(one.authors)
    words = (by, f"“{one.title}”", f"{GENRE} {one.number}", one.lab, one.year, one.address)
    line = ", ".join(word for word in words if word)
    stop = "" if one.address or line.endswith(".") else "."
    return f"{line}{stop} {_written_up(one)}".rstrip()


def _written_up(one: Citation) -> str:
    return f"Written up from: {'; '.join(one.sources)}." if one.sources else ""


# --- for programs ----------------------------------------------------------------------------


def bibtex(one: Citation) -> str:
    """The citation as a BibTeX entry in UTF-8, for BibTeX and biber alike.

    Entry type and fields: Patashnik, BibTeXing (1988), from memory; `url` is read as it stands.
    A name stays whole, since nobody said which part of it is the family's.
    """
    fields = {
        "author": " and ".join(f"{{{escaped(name)}}}" for name in one.authors),
        "title": f"{{{escaped(one.title)}}}",
        "institution": f"{{{escaped(one.lab)}}}",
        "type": GENRE.capitalize(),
        "number": escaped(one.number),
        "year": escaped(one.year),
        "url": re.sub(r"[{}\\\s]", lambda found: quote(found[0]), one.address),
        "note": escaped(_written_up(one)),
    }
    lines = [f"  {name} = {{{text}}},\n" for name, text in fields.items() if text]
    return f"@techreport{{{one.key},\n{''.join(lines)}}}\n"


_SPECIAL = {
    "\\": r"\textbackslash{}",
    "{": r"\textbraceleft{}",
    "}": r"\textbraceright{}",
    "~": r"\textasciitilde{}",
    "^": r"\textasciicircum{}",
    **{sign: f"\\{sign}" for sign in "&%#_$"},
}
"""What TeX reads as more than itself; braces by name: BibTeX counts them behind a backslash too."""

_RUNS = re.compile(r"(?<=[-'`,<>!?])(?=[-'`,<>])")
"""Between signs that TeX's fonts would draw as one: dashes, quotation marks."""


def escaped(text: str) -> str:
    """Text as TeX shows it sign by sign, on one line."""
    apart = _RUNS.sub("\0", " ".join(text.split()))
    return "".join(_SPECIAL.get(sign, sign) for sign in apart).replace("\0", "{}")


def csl_json(one: Citation) -> str:
    """The citation as a list of one item of CSL-JSON.

    Source: `schemas/input/csl-data.json` of the Citation Style Language's schema repository.
    """
    item: dict[str, Any] = {
        "id": one.key,
        "type": "report",
        "genre": GENRE.capitalize(),
        "title": one.title,
        "author": [{"literal": name} for name in one.authors],
        "publisher": one.lab,
        "number": one.number,
        "issued": _issued(one),
        "URL": one.address,
        "language": one.language,
        "note": _written_up(one),
    }
    told = {name: value for name, value in item.items() if value}
    return json.dumps([told], ensure_ascii=False, indent=2) + "\n"


def _issued(one: Citation) -> dict[str, Any]:
    if not one.date:
        return {}
    doubt = {"circa": True} if one.date.approximate or one.date.uncertain else {}
    parts = one.date_parts
    return {"date-parts": [list(parts)], **doubt} if parts else {"literal": one.date.show()}
