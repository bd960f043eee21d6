"""The trade's words in plain ones: a page of all that this site uses, and each word told once."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, fields, is_dataclass, replace
from itertools import groupby
from typing import Any, TypeVar

from casebook.model.base import items, known
from casebook.model.vocabulary import Terms
from casebook.output.contexts import Run
from casebook.output.wording import way_address

ADDRESS = "glossary/index.html"
T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class GlossaryEntry:
    """One word: its anchor, what it means, other words for it, the page of its cases or ""."""

    anchor: str
    label: str
    gloss: str
    also: str
    href: str


@dataclass(frozen=True, slots=True)
class GlossaryLetter:
    """The words under one letter, which is also their anchor's end: `letter-a`."""

    letter: str
    entries: tuple[GlossaryEntry, ...]


@dataclass(frozen=True, slots=True)
class GlossaryPage:
    """`pages/glossary.html`: every word in use that is explained, letter by letter."""

    title: str
    letters: tuple[GlossaryLetter, ...]


def glossary_page(terms: Terms, root: str, pages: frozenset[str]) -> GlossaryPage:
    """Every term in use that is explained, by its label; `pages` are the addresses that are there.

    A word that stands for two things, such as a part and an operation, has an entry for each.
    """
    entries = sorted(_entries(terms, root, pages), key=lambda one: (one.label.lower(), one.gloss))
    grouped = groupby(entries, lambda one: one.label[:1].upper())
    letters = (GlossaryLetter(letter, tuple(found)) for letter, found in grouped)
    return GlossaryPage("The trade’s words", tuple(letters))


def _entries(terms: Terms, root: str, pages: frozenset[str]) -> Iterator[GlossaryEntry]:
    seen: set[tuple[str, str]] = set()
    for kind, found in terms.items():
        for name, term in found.items():
            gloss = known(term.gloss)
            if gloss and (term.label, gloss) not in seen:
                seen.add((term.label, gloss))
                address = way_address(kind, name)
                href = root + address if address in pages else ""
                also = ", ".join(items(term.also))
                yield GlossaryEntry(f"{kind}-{name}", term.label, gloss, also, href)


def told_once(page: T) -> T:
    """A page on which each trade word is explained where it first stands, and not again."""
    told: T = _told(page, set())
    return told


def _told(value: Any, seen: set[str]) -> Any:
    if isinstance(value, Run):
        return _run(value, seen)
    if isinstance(value, tuple):
        found = [_told(one, seen) for one in value]
        same = all(new is old for new, old in zip(found, value, strict=True))
        return value if same else tuple(found)
    if not is_dataclass(value) or isinstance(value, type):
        return value
    pairs = ((one.name, getattr(value, one.name)) for one in fields(value))
    changes = {name: new for name, old in pairs if (new := _told(old, seen)) is not old}
    return replace(value, **changes) if changes else value


def _run(run: Run, seen: set[str]) -> Run:
    """A run without its explanation, if its word had it before; a link needs none."""
    if not run.gloss or run.href:
        return run
    if run.gloss in seen:
        return replace(run, gloss="")
    seen.add(run.gloss)
    return run
