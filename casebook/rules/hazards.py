"""Rules about what can hurt: a danger is named, and its caution stands beside it."""

from __future__ import annotations

from collections.abc import Iterator

from casebook.model.archive import Case
from casebook.model.base import Record, items, known, schema
from casebook.rules.declare import NO_SOURCE, SHOULD, Raised, rule
from casebook.rules.look import Look
from casebook.vocabulary import words_in

_SOURCES = (
    "sources stand in the vocabulary under `caution-source`; that a record says it: "
    f"{NO_SOURCE}. Safety data sheets, local codes and licensed practice come first"
)


@rule(
    why="A danger without its caution frightens readers and protects nobody.",
    source=_SOURCES,
    fields=("Case.hazards", "Hazard.what", "Hazard.caution"),
    weight=SHOULD,
    raises="hazards: [{what: mould, part: board 1}]",
    passes="hazards: [{what: mould, part: board 1, caution: isolate and dry it first}]",
    gap="The record names a danger and not what is to be minded.",
)
def caution_of_hazard(look: Look) -> Iterator[Raised]:
    """A danger that a record names has its caution."""
    for one in items(look.case.hazards):
        if not look.tells(one, "caution"):
            usual = _usual(look, known(one.what) or "")
            hint = f"usual: {usual}" if usual else "follow safety data sheets and local codes"
            message = f"`{known(one.what) or 'this danger'}` has no `caution`"
            yield Raised(message, one.span(), hint)


def _usual(look: Look, word: str) -> str:
    """The usual caution for a thing, by the vocabulary."""
    for kind in ("damages", "materials"):
        term = look.lexicon.term(kind, word)
        if term and known(term.caution):
            return known(term.caution) or ""
    return ""


@rule(
    why="Who takes the object in hand next reads the dangers first, not the findings.",
    source=_SOURCES,
    fields=(
        "Case.hazards",
        "Finding.damage",
        "Found.material",
        "Part.material",
        "Binding.covering",
    ),
    weight=SHOULD,
    raises="findings: [{part: board 1, damage: mould}]\n# no hazards",
    passes="findings: [{part: board 1, damage: mould}]\nhazards: none (dead and cleaned off)",
)
def hazard_named(look: Look) -> Iterator[Raised]:
    """What is on the object and can hurt stands under `hazards` too."""
    if look.tells(look.case, "hazards"):
        return
    seen: set[str] = set()
    for kind, word, record, key in _on_the_object(look.case, look.records):
        term = look.lexicon.term(kind, word)
        caution = known(term.caution) if term else None
        if term and caution and term.label not in seen:
            seen.add(term.label)
            message = f"`{word}` can hurt, and the record names no hazard"
            hint = f'write `hazards: [{{what: {word}, caution: "…"}}]`; usual: {caution}'
            yield Raised(message, record.span(key), hint)


def _on_the_object(
    case: Case, records: tuple[Record, ...]
) -> Iterator[tuple[str, str, Record, str]]:
    """Words for damages and for what the object is made of, not for what was used on it."""
    own = [one for one in records if type(one).__name__ in ("Finding", "Binding", "Boards")]
    made = [*items(case.as_found), *(one for one in records if type(one).__name__ == "Part")]
    for record in own:
        for info in schema(type(record)).values():
            if info.words in ("damages", "materials"):
                words = words_in(getattr(record, info.name))
                yield from ((info.words, word, record, info.key) for word in words)
    for one in made:
        yield from (("materials", w, one, "material") for w in _materials(one))


def _materials(record: Record) -> Iterator[str]:
    material = known(getattr(record, "material", None))
    word = known(material.is_) if material else None
    if word:
        yield word


PRACTICE = (caution_of_hazard, hazard_named)
