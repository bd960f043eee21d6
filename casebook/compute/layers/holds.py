"""How things hold: what a record says of adhesive, material and mechanical hold, as bonds."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from casebook.compute.releases import wider
from casebook.compute.steps import none
from casebook.compute.structure import Bond, How
from casebook.model.base import Gap, Many, Maybe, Unknowing, items, known
from casebook.model.materials import Material
from casebook.vocabulary import Lexicon

STICKY = frozenset({"adhesive", "size"})
"""Classes of material that hold by themselves when nothing else is said to."""

STAYING = STICKY | {"coating", "colour"}
"""Classes of material that stay in what was treated with them."""

_GLUED = frozenset({"stuck", "glued", "pasted", "adhered", "tipped", "tipped in", "stuck down"})
"""Words under `held` that speak of an adhesive, which they do not name."""


@dataclass(frozen=True, slots=True)
class Named:
    """The words for one material: ids of the vocabulary or as written, the likeliest first.

    `guessed` says that one of them is right, else all are in it.
    """

    words: tuple[str, ...] = ()
    ruled_out: tuple[str, ...] = ()
    guessed: bool = False


NOTHING_NAMED = Named()


def named(material: Maybe[Material], lexicon: Lexicon) -> Named:
    """What a record calls a material."""
    said = known(material)
    if said is None:
        return NOTHING_NAMED
    sure = known(said.is_)
    guesses = () if sure else items(said.perhaps)
    words = (sure,) if sure else guesses or tuple(_composed(said))
    out = tuple(dict.fromkeys(_id(word, lexicon) for word in items(said.not_)))
    found = tuple(dict.fromkeys(_id(word, lexicon) for word in words if word))
    return Named(found, out, bool(guesses))


def _composed(material: Material) -> Iterator[str]:
    """The words for a material that has no name of its own: its shares, its plies, its product."""
    yield from material.mix
    for ply in items(material.built_of):
        yield from (word for word in (known(ply.is_), *items(ply.perhaps)) if word)
    if not material.mix and not items(material.built_of):
        yield known(material.product) or ""


def _id(word: str, lexicon: Lexicon) -> str:
    found = lexicon.resolve("materials", word)
    return found[1] if found else word


def splits(material: Maybe[Material], words: Iterable[str], lexicon: Lexicon) -> bool:
    """Whether it gives way in its own thickness: as the record says, else as the vocabulary."""
    said = known(material)
    own = known(said.splits) if said else None
    if own is not None:
        return own
    return any(_term_splits(word, lexicon) for word in words)


def _term_splits(word: str, lexicon: Lexicon) -> bool:
    """What the vocabulary says of a material, or of the nearest wider term that says it."""
    said = (term.splits for _, term in wider(word, lexicon))
    return next((one for one in said if isinstance(one, bool)), False)


def is_of(material: Maybe[Material], classes: frozenset[str], lexicon: Lexicon) -> bool:
    """Whether the likeliest word for a material is of one of these classes."""
    words = named(material, lexicon).words
    term = lexicon.term("materials", words[0]) if words else None
    return bool(term) and known(term.class_ if term else None) in classes


def holds(
    adhesive: Maybe[Material],
    held: Many[str],
    lexicon: Lexicon,
    material: Maybe[Material] = None,
) -> tuple[Bond, ...]:
    """The bonds that a record speaks of, without their ends; none where it says there is none.

    Where it names no adhesive, what is itself an adhesive, a coating or a colour holds by itself;
    where it says nothing at all, the bond is unknown. `material` is what the thing is made of.
    """
    ways = tuple(way for way in items(held) if way.casefold() not in _GLUED)
    if ways != items(held) and adhesive is None:
        adhesive = Gap(Unknowing.UNNAMED)
    mechanical = (Bond("", "", How.HELD, held=ways),) if ways else ()
    if adhesive is None and (ways or none(held)):
        return mechanical
    if adhesive is None or none(adhesive):
        own = tuple(_by_itself(material, lexicon))
        if own or none(adhesive):
            return (*own, *mechanical)
    return (*_stuck(adhesive, lexicon, bool(ways)), *mechanical)


def _by_itself(material: Maybe[Material], lexicon: Lexicon) -> Iterator[Bond]:
    """How a material holds that needs no adhesive: one that is an adhesive, or is painted on."""
    if is_of(material, STICKY, lexicon):
        yield from _stuck(material, lexicon, False)
    elif is_of(material, STAYING, lexicon):
        yield Bond("", "", How.SOAKED)


def _stuck(adhesive: Maybe[Material], lexicon: Lexicon, held_too: bool) -> Iterator[Bond]:
    said = named(adhesive, lexicon)
    if said.words or _unnamed(adhesive):
        yield Bond("", "", How.STUCK, said.words, said.ruled_out, guessed=said.guessed)
    elif not held_too:
        yield Bond("", "", How.UNKNOWN, ruled_out=said.ruled_out)


def _unnamed(adhesive: Maybe[Material]) -> bool:
    """Whether there is an adhesive of which the name is not known."""
    word = adhesive if isinstance(adhesive, Gap) else adhesive.is_ if adhesive else None
    return isinstance(word, Gap) and word.kind is Unknowing.UNNAMED
