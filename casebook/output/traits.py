"""What a case is found by, in the trade's own terms: "tight back", "joint: broken", "1870s"."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from casebook.model.archive import Case
from casebook.model.base import items, known, walk
from casebook.model.condition import LATE, Finding
from casebook.model.object import Binding, Object
from casebook.model.vocabulary import Term
from casebook.output.wording import Wording, say
from casebook.values.date_speech import ordinal
from casebook.values.dates import Date
from casebook.vocabulary import Lexicon, terms_of

_ORDER = ("operations", "kinds", "sewing", "materials", "agents", "parts", "tools")


@dataclass(frozen=True, slots=True)
class Trait:
    """A few words as a result shows them, with the labels of the terms that they speak of."""

    text: str
    labels: tuple[str, ...] = ()


def traits_of(case: Case, wording: Wording) -> tuple[Trait, ...]:
    """The traits of a case, each text once: what it is and has, what was done, its numbers."""
    found = (
        *_bindings(case, wording.lexicon),
        *_damages(case, wording),
        *_terms(case, wording.lexicon),
        *_dates(case),
        *_numbers(case),
    )
    unique: dict[str, Trait] = {}
    for one in found:
        unique.setdefault(one.text, one)
    return tuple(one for text, one in unique.items() if text)


def _bindings(case: Case, lexicon: Lexicon) -> Iterator[Trait]:
    """Each structure; one that the treatment gave the book is said to be so."""
    for binding in items(case.bindings):
        if name := known(binding.structure):
            label = lexicon.label("structures", name)
            yield Trait(f"{label}{_when(binding)}", (label,))


def _when(binding: Binding) -> str:
    return " after treatment" if known(binding.state) == "after" else ""


def _damages(case: Case, wording: Wording) -> Iterator[Trait]:
    """Each damage with its part; what was seen after the treatment, or is sound, is none."""
    for one in walk(case):
        if isinstance(one, Finding) and one.stage not in LATE:
            for damage in items(one.damage):
                yield from _damage(damage, items(one.part), wording)


def _damage(word: str, places: Iterable[str], wording: Wording) -> Iterator[Trait]:
    term = wording.lexicon.term("damages", word)
    if term and term.class_ == "state":
        return
    label = wording.lexicon.label("damages", word)
    for place in places:
        where = wording.place(place).removeprefix("the ")
        parts = (_labelled(found, wording.lexicon) for found in wording.lexicon.place(place))
        yield Trait(f"{where}: {label}", (label, *parts))
    yield Trait(label, (label,))


def _terms(case: Case, lexicon: Lexicon) -> Iterator[Trait]:
    """Every other term that the record uses."""
    used = dict.fromkeys(found for one in walk(case) for found in terms_of(one, lexicon))
    for kind in _ORDER:
        labels = (_labelled(found, lexicon) for found in used if found[0] == kind)
        yield from (Trait(label, (label,)) for label in labels)


def _labelled(found: tuple[str, str], lexicon: Lexicon) -> str:
    kind, name = found
    return lexicon.terms[kind][name].label or name


def _dates(case: Case) -> Iterator[Trait]:
    """When the object was made: as written, by decade, by century."""
    thing = known(case.object) or Object()
    for made in items(thing.made):
        if isinstance(date := known(made.is_), Date):
            yield Trait(date.show())
            decades = date.decades()
            yield from (Trait(f"{one}s") for one in decades)
            yield from (Trait(_century(one)) for one in decades)


def _century(year: int) -> str:
    return f"{ordinal(year // 100 + 1)} century"


def _numbers(case: Case) -> Iterator[Trait]:
    """Where it is from and is kept, and its numbers, old ones too."""
    thing = known(case.object) or Object()
    holder = known(thing.held_by)
    yield Trait(say(known(thing.place)))
    yield Trait(f"shelfmark {holder.shelfmark}" if holder and known(holder.shelfmark) else "")
    yield from (Trait(f"case {one}") for one in (case.id, *items(case.was)))


def other_words(term: Term, lexicon: Lexicon, kind: str) -> tuple[str, ...]:
    """Other words for a term: its synonyms, its forms as a deed, and the wider terms above it."""
    forms = (*items(term.also), known(term.noun) or "", known(term.past) or "")
    words = (*forms, *_wider(term, lexicon, kind))
    return tuple(dict.fromkeys(one for one in words if one and one != term.label))


def _wider(term: Term, lexicon: Lexicon, kind: str) -> Iterator[str]:
    """The labels of the terms above a term; a circle among them ends where it closes."""
    terms = lexicon.terms[kind]
    seen = {""}
    while (broader := known(term.broader) or "") in terms and broader not in seen:
        seen.add(broader)
        term = terms[broader]
        yield term.label
