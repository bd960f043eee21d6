"""The search index: a part for each case, joined into script files that need no server.

A case stands in the file that its id's digest points at, so that a changed case changes one file.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from casebook.files import digest
from casebook.model.archive import Archive, Case
from casebook.model.base import items, known
from casebook.output.case_page import about_line, title_of
from casebook.output.passages import facts_of, passages_of
from casebook.output.pictures import FOLDER, Pictures, case_pictures, pair_of
from casebook.output.site import Asset
from casebook.output.traits import Trait, other_words, traits_of
from casebook.output.typography import typeset
from casebook.output.ways import Way
from casebook.output.wording import Wording

CASES_IN_A_FILE = 32
"""How many cases a file has at most, on average; half as many where the archive outgrew one."""

Thumb = tuple[str, int, int]
"""A small picture: its file's name, width and height in pixels."""


@dataclass(frozen=True, slots=True)
class IndexPart:
    """What the search knows of one case; all of it stands on the case's page."""

    id: str
    title: str
    about: str
    """Kind, date and structure in one line."""
    thumbs: tuple[Thumb, ...]
    """Before and after, or the one there is."""
    traits: tuple[Trait, ...]
    facts: tuple[str, ...]
    passages: tuple[str, ...]

    def entry(self) -> dict[str, object]:
        """The part as it stands in a script."""
        return {
            "id": self.id,
            "title": self.title,
            "about": self.about,
            "thumbs": self.thumbs,
            "traits": [_written(one) for one in self.traits],
            "facts": self.facts,
            "passages": self.passages,
        }


def _written(trait: Trait) -> str | list[str]:
    """A trait as its text; with the labels of its terms where it is not just one of these."""
    plain = trait.labels in ((), (trait.text,))
    return trait.text if plain else [trait.text, *trait.labels]


def index_part(case: Case, archive: Archive, pictures: Pictures, wording: Wording) -> IndexPart:
    """A case's part: how a result shows it, and all the words that it is found by."""
    language = wording.notation.language
    return IndexPart(
        id=case.id,
        title=typeset(title_of(case), language),
        about=about_line(case, wording),
        thumbs=tuple(_thumbs(case, archive, pictures)),
        traits=traits_of(case, wording),
        facts=facts_of(case, wording),
        passages=tuple(typeset(one, language) for one in passages_of(case, wording)),
    )


def _thumbs(case: Case, archive: Archive, pictures: Pictures) -> Iterator[Thumb]:
    images = archive.images.get(case.id, {})
    pair = pair_of(case, case_pictures(case, archive, pictures, ""))
    for view in (pair.before, pair.after):
        picture = pictures.get(images[view.id].digest) if view else None
        if picture:
            small = min(picture.widths, key=lambda one: (one.width, one.size))
            yield f"{FOLDER}/{small.name}", small.width, small.height


def index_assets(parts: Iterable[IndexPart]) -> Iterator[Asset]:
    """The parts as scripts, each named by its content."""
    every = tuple(parts)
    files: dict[int, list[str]] = {}
    for part in sorted(every, key=lambda one: one.id):
        place = int(digest(part.id)[:8], 16) % _count(len(every))
        files.setdefault(place, []).append(_json(part.entry()))
    for _, entries in sorted(files.items()):
        inside = ",\n".join(entries)
        yield _script(f"(window.casebookIndex = window.casebookIndex || []).push(\n{inside}\n);\n")


def _count(cases: int) -> int:
    """The number of files: a power of two, so that it seldom changes."""
    count = 1
    while count * CASES_IN_A_FILE < cases:
        count *= 2
    return count


def words_asset(ways: Iterable[Way], wording: Wording) -> Asset:
    """The other words for the archive's terms, and the pages that a word leads to, as a script."""
    also = dict(_also(wording))
    leads = [_lead(way) for way in ways]
    data = _json({"also": also, "ways": leads})
    return _script(f"window.casebookWords = {data};\n")


def _also(wording: Wording) -> Iterator[tuple[str, list[str]]]:
    """Other words by the label they stand for; terms of one label share theirs."""
    found: dict[str, dict[str, None]] = {}
    for kind, terms in wording.lexicon.terms.items():
        for name, term in terms.items():
            words = other_words(term, wording.lexicon, kind)
            found.setdefault(term.label or name, {}).update(dict.fromkeys(words))
    return ((label, list(words)) for label, words in found.items() if words)


_SAID = {
    "structures": "with the structure “{}”",
    "damages": "with the damage “{}”",
    "operations": "with the treatment “{}”",
    "materials": "with {}",
    "decades": "from the {}",
}


def _lead(way: Way) -> list[object]:
    """A page of cases: how a link says it, its address, how many cases, and what it is called."""
    term = way.term
    also = (*items(term.also), known(term.noun) or "") if term else ()
    names = [one for one in (way.title, *also) if one]
    return [_SAID[way.kind].format(way.title), way.address, len(way.cases), *names]


def _json(data: object) -> str:
    """JSON that may stand in a script: it can end no element, and no line but its own."""
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":"))
    return text.replace("<", "\\u003c").replace("\u2028", "\\u2028").replace("\u2029", "\\u2029")


def _script(text: str) -> Asset:
    return Asset(f"search/{digest(text)[:16]}.js", text.encode())
