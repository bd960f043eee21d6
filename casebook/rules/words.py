"""Rules about words: whether the vocabulary knows them, and whether they mean one thing."""

from __future__ import annotations

from collections.abc import Iterator

from casebook.diagnostics import Span
from casebook.model.base import Record, Unknowing, known, schema
from casebook.rules.declare import ADVICE, NO_SOURCE, SLIP, Raised, rule
from casebook.rules.look import Look
from casebook.rules.places import strangers, whole_stranger
from casebook.vocabulary import fold, words_in

SHORT = 5
"""Letters at most of a synonym that may stand for something else, such as pva, mc or hinge."""

_WAYS = frozenset(one.value for one in Unknowing)
_FIELDS = (
    "Object.kind",
    "Binding.structure",
    "Sewing.pattern",
    "Part.is_",
    "Finding.damage",
    "Step.do",
    "Step.tools",
    "Material.is_",
)


def _written(look: Look) -> Iterator[tuple[str, str, Span | None]]:
    """Vocabulary, word and place of every word that should be one of the trade's."""
    for record in look.records:
        for info in schema(type(record)).values():
            if info.words and info.name not in getattr(record, "assumed", ()):
                words = words_in(getattr(record, info.name))
                yield from ((info.words, one, record.span(info.key)) for one in words)


def _place_words(look: Look) -> Iterator[tuple[str, str, Span | None]]:
    """The same for the words of references to parts, where something in them is known."""
    for record in look.records:
        for info, place in _places(record):
            if place not in _WAYS and not whole_stranger(look, place):
                yield from (("parts", one, record.span(info)) for one in strangers(look, place))


def _places(record: Record) -> Iterator[tuple[str, str]]:
    for info in schema(type(record)).values():
        if info.points == "place":
            yield from ((info.key, one) for one in words_in(getattr(record, info.name)))


@rule(
    why="Pages explain, count and find only the words that the vocabulary knows.",
    source=NO_SOURCE,
    fields=_FIELDS,
    weight=SLIP,
    raises="object: {kind: leger, housing: none}",
    passes="object: {kind: ledger, housing: none}",
)
def unknown_word(look: Look) -> Iterator[Raised]:
    """The words of the trade in a record are known to the vocabulary, or declared in the case."""
    seen: set[tuple[str, str]] = set()
    for kind, word, span in (*_written(look), *_place_words(look)):
        if (kind, word) in seen or not word or word in _WAYS or word in look.names:
            continue
        seen.add((kind, word))
        if look.lexicon.resolve(kind, word) is None:
            hint = look.lexicon.suggest(kind, word) or _own(kind)
            yield Raised(f"no vocabulary knows `{word[:60]}` among {kind}", span, hint)


def _own(kind: str) -> str:
    return f"it is kept as written; if it is a word of yours, add it to `vocabulary/{kind}.yml`"


@rule(
    why="Two conservators read one short word as two things, and treat accordingly.",
    source=f"{NO_SOURCE}; of PVA: Conservation DistList 1997-11-07 (cdl/1997/1413), 2001-08-09",
    fields=_FIELDS,
    weight=ADVICE,
    raises="steps: [{adds: patch, onto: spine, material: linen, adhesive: pva}]",
    passes="steps: [{adds: patch, onto: spine, material: linen, adhesive: polyvinyl-acetate}]",
)
def ambiguous_word(look: Look) -> Iterator[Raised]:
    """A short word that others take for something else is written out."""
    seen: set[str] = set()
    for kind, word, span in (*_written(look), *_part_words(look)):
        found = look.lexicon.resolve(kind, word)
        if found is None or word in seen or word in look.names or len(fold(word)) > SHORT:
            continue
        term = look.lexicon.terms[found[0]][found[1]]
        hint = known(term.hint)
        if hint and fold(word) not in (fold(found[1]), fold(term.label)):
            seen.add(word)
            message = f"`{word}` is taken here for {term.label}"
            yield Raised(message, span, f"{hint} To be sure, write `{found[1]}`.")


def _part_words(look: Look) -> Iterator[tuple[str, str, Span | None]]:
    for record in look.records:
        for key, place in _places(record):
            for word in place.replace("/", " ").split():
                yield "parts", word, record.span(key)


PRACTICE = (unknown_word, ambiguous_word)
