"""What sort of thing a material of the record is, by the vocabulary: its terms, wetness, grain."""

from __future__ import annotations

import re
from collections.abc import Iterator

from casebook.model.base import Gap, Maybe, items, known
from casebook.model.materials import Material
from casebook.model.treatment import Step
from casebook.model.vocabulary import Term
from casebook.rules.look import Look

BY_HAND = re.compile(r"hand-?\s?made|kozo|tengu|gampi|mitsumata|mulberry|washi", re.I)
"""Names of papers that are formed by hand as a rule, whatever the vocabulary says of them."""

DISPERSIONS = frozenset({"polyvinyl-acetate", "vinyl-acetate-ethylene", "acrylic-dispersion"})
"""Synthetic dispersions in water: a dry film of them keeps water out."""


def terms(look: Look, kind: str, word: str) -> Iterator[tuple[str, Term]]:
    """The term of a word and its wider terms, each with its id; a circle ends where it closes."""
    family, one = look.lexicon.resolve(kind, word) or ("", "")
    there = look.lexicon.terms.get(family, {})
    seen: set[str] = set()
    while one in there and one not in seen:
        seen.add(one)
        yield one, there[one]
        one = known(there[one].broader) or ""


def ids(look: Look, kind: str, word: str) -> frozenset[str]:
    """The ids of a word's term and of its wider terms; none if nobody knows the word."""
    return frozenset(one for one, _ in terms(look, kind, word))


def words(material: Maybe[Material]) -> tuple[str, ...]:
    """What a material is said to be: its name, what it may be, and what it is mixed of."""
    if material is None or isinstance(material, Gap):
        return ()
    name = known(material.is_)
    return (*((name,) if name else ()), *items(material.perhaps), *material.mix)


def sorts(look: Look, material: Maybe[Material]) -> frozenset[str]:
    """The ids of all that a material is said to be, with their wider terms."""
    return frozenset(one for word in words(material) for one in ids(look, "materials", word))


def classes(look: Look, material: Maybe[Material]) -> frozenset[str]:
    """The classes of what a material is said to be: paper, tissue, cloth, adhesive, solvent."""
    found = (look.lexicon.term("materials", word) for word in words(material))
    return frozenset(said for term in found if term and (said := known(term.class_)))


def water_borne(look: Look, material: Maybe[Material]) -> bool:
    """Whether a material brings water with it: itself, by its carrier or by what it is mixed of."""
    if material is None or isinstance(material, Gap):
        return False
    solvent = known(material.solvent)
    if solvent and words(solvent):
        return water_borne(look, solvent)
    own = any(_wet(look, word) for word in words(material))
    return own or water_borne(look, material.carrier)


def _wet(look: Look, word: str) -> bool:
    said = (known(term.water_borne) for _, term in terms(look, "materials", word))
    return next((one for one in said if one is not None), False)


def solvents(look: Look, material: Maybe[Material]) -> frozenset[str]:
    """The ids of the solvents in a material, without their wider terms where they have a name."""
    if material is None or isinstance(material, Gap):
        return frozenset()
    inner = (known(material.solvent), known(material.carrier))
    named = {one for part in inner for one in solvents(look, part)}
    for word in words(material):
        term = look.lexicon.term("materials", word)
        found = look.lexicon.resolve("materials", word)
        if term and found and known(term.class_) == "solvent":
            named.add(found[1])
    return frozenset(named)


def has_grain(look: Look, material: Maybe[Material]) -> bool:
    """Whether a paper, cloth or board has a grain that can be told; hand-made paper has none."""
    return bool(words(material)) and not any(_grainless(look, one) for one in words(material))


def _grainless(look: Look, word: str) -> bool:
    """Whether the nearest term that says so has no grain; else whether it is made by hand."""
    found = tuple(terms(look, "materials", word))
    said = (known(term.grain) for _, term in found)
    told = next((one for one in said if one is not None), None)
    if told is not None:
        return not told
    return any(BY_HAND.search(name) for name in (word, *(term.label for _, term in found)))


def agents(step: Step) -> Iterator[Material]:
    """What acted and went in a step: agent, bath and what was added to it, in all its ways."""
    bath = known(step.bath)
    baths = (bath.liquid, bath.conditioned) if bath else ()
    for one in (step.agent, *baths, *(way.agent for way in items(step.ways))):
        if material := known(one):
            yield material


def adhesives(step: Step) -> Iterator[Material]:
    """What a step stuck things with: its adhesive, that of each bond and of each way."""
    bonds = (bond.adhesive for bond in items(step.bonds))
    for one in (step.adhesive, *bonds, *(way.adhesive for way in items(step.ways))):
        if material := known(one):
            yield material


def dispersion(look: Look, material: Maybe[Material]) -> bool:
    """Whether a material is, or holds, a synthetic dispersion."""
    return bool(sorts(look, material) & DISPERSIONS)
