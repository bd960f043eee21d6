"""The search index: a part for each case, joined into small script files that need no server."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from casebook.files import digest
from casebook.model.archive import Case
from casebook.model.base import Record, items, known, schema, walk
from casebook.output.case_page import describe, kicker_of, title_of
from casebook.output.prose import plain
from casebook.output.site import Asset
from casebook.output.wording import Wording
from casebook.vocabulary import terms_of

MAX_PART = 150_000


@dataclass(frozen=True, slots=True)
class IndexPart:
    """What the search knows of one case."""

    address: str
    title: str
    kicker: str
    words: str

    def entry(self) -> dict[str, str]:
        """The part as it stands in a script."""
        return {"u": self.address, "t": self.title, "k": self.kicker, "w": self.words}


def index_part(case: Case, wording: Wording) -> IndexPart:
    """A case's part: its prose and texts, and its terms with all their synonyms."""
    texts = [describe(case), *_texts(case), *_synonyms(case, wording)]
    return IndexPart(
        address=f"cases/{case.id}/index.html",
        title=title_of(case),
        kicker=kicker_of(case, wording),
        words=" ".join(dict.fromkeys(" ".join(text.split()) for text in texts if text)),
    )


def _texts(case: Case) -> Iterator[str]:
    yield plain(case.story)
    for one in items(case.episodes):
        yield plain(one.story)
    for record in walk(case):
        yield from _own_texts(record)


def _own_texts(record: Record) -> Iterator[str]:
    for info in schema(type(record)).values():
        value = getattr(record, info.name)
        if isinstance(value, str) and info.name != "story" and info.points == "":
            yield value.replace("-", " ") if info.words else value


def _synonyms(case: Case, wording: Wording) -> Iterator[str]:
    names = dict.fromkeys(
        name for record in walk(case) for name in terms_of(record, wording.lexicon)
    )
    for kind, name in names:
        term = wording.lexicon.terms[kind][name]
        yield term.label
        yield from items(term.also)
        yield known(term.noun) or ""


def index_assets(parts: Iterable[IndexPart]) -> Iterator[Asset]:
    """The parts as scripts of a bounded size, named by their content."""
    chunk: list[str] = []
    size = 0
    for part in parts:
        text = json.dumps(part.entry(), ensure_ascii=False, sort_keys=True).replace("<", "\\u003c")
        if chunk and size + len(text) > MAX_PART:
            yield _script(chunk)
            chunk, size = [], 0
        chunk.append(text)
        size += len(text)
    if chunk:
        yield _script(chunk)


def _script(entries: list[str]) -> Asset:
    inside = ",\n".join(entries)
    text = f"(window.casebookIndex = window.casebookIndex || []).push(...[{inside}]);\n"
    return Asset(f"search/{digest(text)[:16]}.js", text.encode())
