"""The vocabulary: one loader for our terms and the lab's own, and the resolving of words."""

from __future__ import annotations

import functools
import re
from collections.abc import Iterator, Mapping
from dataclasses import fields, replace
from pathlib import Path
from types import MappingProxyType

from casebook.diagnostics import Diagnostic, Severity
from casebook.model.base import Record, items, remembered, schema, walk
from casebook.model.vocabulary import KINDS, Term, Terms
from casebook.reading import did_you_mean, read
from casebook.source import Mapping as MappingNode
from casebook.source import parse

FAMILIES: Mapping[str, tuple[str, ...]] = {
    "materials": ("materials", "agents"),
    "tools": ("tools", "materials", "agents"),
    "damages": ("damages", "operations"),
    "structures": ("structures", "kinds"),
    "kinds": ("kinds", "structures"),
}
"""Where a field's words may come from, first its own vocabulary; others look only in theirs."""

_SEPARATORS = re.compile(r"[\s\-_'’.,/()]+")


@functools.lru_cache(maxsize=20_000)
def fold(word: str) -> str:
    """A word as it is matched: lower case, without hyphens, spaces, dots or apostrophes."""
    return _SEPARATORS.sub("", word.casefold())


def _singulars(folded: str) -> Iterator[str]:
    """The word itself, then what it is the plural of, in case it is one."""
    yield folded
    for ending, single in (("ies", "y"), ("ves", "f"), ("es", ""), ("s", "")):
        if folded.endswith(ending) and len(folded) > len(ending) + 2:
            yield folded.removesuffix(ending) + single


class Lexicon:
    """All terms with an index of their spellings, for resolving words as written."""

    def __init__(self, terms: Terms) -> None:
        self.terms = terms
        self._index = {kind: _spellings(terms.get(kind, {})) for kind in KINDS}
        self._found: dict[tuple[str, str], tuple[str, str] | None] = {}

    def resolve(self, kind: str, word: str) -> tuple[str, str] | None:
        """The vocabulary and the id that a word stands for, or None if nobody knows it."""
        key = (kind, word)
        if key not in self._found:
            self._found[key] = self._look_up(kind, word)
        return self._found[key]

    def _look_up(self, kind: str, word: str) -> tuple[str, str] | None:
        for folded in _singulars(fold(word)):
            for family in FAMILIES.get(kind, (kind,)):
                if found := self._index[family].get(folded):
                    return family, found
        return None

    def place(self, reference: str) -> list[tuple[str, str]]:
        """The terms in a reference to a part, such as `endband head` or `volume 2 / spine`."""
        whole = self.resolve("parts", reference)
        words = [word for word in re.split(r"[\s/]+", reference) if not word.isdigit()]
        found = [whole] if whole else [self.resolve("parts", word) for word in words]
        return [one for one in found if one]

    def term(self, kind: str, word: str) -> Term | None:
        """The term that a word stands for."""
        found = self.resolve(kind, word)
        return self.terms[found[0]][found[1]] if found else None

    def label(self, kind: str, word: str) -> str:
        """How a page writes a word: its term's label, or the word itself."""
        term = self.term(kind, word)
        return term.label if term and term.label else word

    def suggest(self, kind: str, word: str) -> str:
        """A hint with the closest terms, or ""."""
        labels = {
            spelling: one
            for family in FAMILIES.get(kind, (kind,))
            for one, term in self.terms.get(family, {}).items()
            for spelling in (one, term.label.lower(), *(also.lower() for also in items(term.also)))
        }
        return did_you_mean(word, list(labels))


def _spellings(terms: Mapping[str, Term]) -> dict[str, str]:
    """Every spelling of every term, folded; an id wins over a synonym of another term."""
    found: dict[str, str] = {}
    for name, term in terms.items():
        for word in (*items(term.was), *items(term.also), term.label):
            if word:
                found.setdefault(fold(word), name)
    found.update((fold(name), name) for name in terms)
    return found


@functools.cache
def builtin() -> Terms:
    """The terms that come with the tool. Faults in them are bugs and raise."""
    folder = Path(__file__).parent
    found = {kind: _builtin_kind(folder / f"{kind}.yml") for kind in KINDS}
    return MappingProxyType(found)


def _builtin_kind(path: Path) -> Mapping[str, Term]:
    parsed = parse(path.read_text(encoding="utf-8"), path.name)
    terms, faults = _terms(parsed.node)
    if parsed.diagnostics or faults:
        raise ValueError((*parsed.diagnostics, *faults))
    return terms


def _terms(node: object) -> tuple[dict[str, Term], list[Diagnostic]]:
    found: dict[str, Term] = {}
    faults: list[Diagnostic] = []
    for entry in node.entries if isinstance(node, MappingNode) else ():
        term, more = read(Term, entry.value, "")
        found[entry.key.text] = term
        faults.extend(more)
    return found, faults


def extend(base: Terms, kind: str, text: str, file: str) -> tuple[Terms, tuple[Diagnostic, ...]]:
    """Our terms with the lab's own of one vocabulary: new ones added, known ones overridden.

    Of a known term, only what the lab's file says is replaced. `file` is the path for messages.
    """
    parsed = parse(text, file)
    own, faults = _terms(parsed.node)
    merged = dict(base.get(kind, {}))
    for name, term in own.items():
        merged[name] = _over(merged[name], term) if name in merged else _with_label(name, term)
    clashes = _clashes(own, merged)
    combined = MappingProxyType({**base, kind: MappingProxyType(merged)})
    return combined, (*parsed.diagnostics, *faults, *clashes)


def _with_label(name: str, term: Term) -> Term:
    return term if term.label else replace(term, label=name.replace("-", " "))


def _over(base: Term, own: Term) -> Term:
    """A known term with what the lab says in its place."""
    said = {one.name: getattr(own, one.name) for one in fields(own)}
    given = {name: value for name, value in said.items() if value not in (None, (), "")}
    return replace(base, **given)


def _clashes(own: Mapping[str, Term], merged: Mapping[str, Term]) -> Iterator[Diagnostic]:
    """A spelling of the lab's that already stands for another term."""
    owner = {fold(name): name for name in merged}
    for name, term in merged.items():
        for word in (term.label, *items(term.also)):
            other = owner.setdefault(fold(word), name)
            if other != name and (name in own or other in own):
                span = term.span("also") or merged[other].span("also")
                yield Diagnostic(
                    "vocabulary-clash",
                    Severity.WARNING,
                    f"`{word}` is written for both `{other}` and `{name}`",
                    span,
                    "one spelling stands for one term: take it out of one of them",
                )


def words_in(value: object) -> Iterator[str]:
    """The words in a field's value: itself, the items of a list, or the names of a table."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, (tuple, Mapping)):
        yield from (one for one in value if isinstance(one, str))


@remembered
def _worded(cls: type[Record]) -> tuple[tuple[str, str], ...]:
    """The fields of a record type that hold words: name, and vocabulary or "" for a place.

    What a material is not (`not`) is left out: nobody used it.
    """
    found = schema(cls).values()
    return tuple(
        (one.name, one.words)
        for one in found
        if (one.words and one.name != "not_") or one.points == "place"
    )


def terms_of(record: Record, lexicon: Lexicon) -> Iterator[tuple[str, str]]:
    """Vocabulary and id of every known term that a record itself uses (not those inside it)."""
    for name, kind in _worded(type(record)):
        for word in words_in(getattr(record, name)):
            if kind and (found := lexicon.resolve(kind, word)):
                yield found
            elif not kind:
                yield from lexicon.place(word)


def used_terms(lexicon: Lexicon, cases: tuple[Record, ...]) -> Terms:
    """The terms that records use, with their wider terms, by vocabulary."""
    names = {one for case in cases for record in walk(case) for one in terms_of(record, lexicon)}
    wider = {one for name in names for one in _wider(lexicon.terms, name)}
    return {
        kind: {one: terms[one] for one in terms if (kind, one) in names or (kind, one) in wider}
        for kind, terms in lexicon.terms.items()
    }


def _wider(terms: Terms, name: tuple[str, str]) -> Iterator[tuple[str, str]]:
    """The terms above a term; a circle among them ends where it closes."""
    kind, one = name
    seen = {one}
    while (broader := terms[kind][one].broader) in terms[kind] and broader not in seen:
        one = str(broader)
        seen.add(one)
        yield kind, one
