"""Which places a step touches, and whether two places of a record have something in common."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from casebook.model.base import items, known
from casebook.model.treatment import Step
from casebook.rules.look import Look

LEAVES = frozenset(
    {
        "text-block",
        "volume",
        "section",
        "first-section",
        "last-section",
        "bifolium",
        "leaf",
        "page",
        "title-page",
        "plate",
        "foldout",
        "endleaves",
        "flyleaf",
        "album-leaf",
        "sheet",
        "fold",
        "image",
        "text",
        "media",
        "support",
        "inscription",
        "stamp",
        "recto",
        "verso",
        "margin",
        "watermark",
    }
)
"""Parts that are the leaves of a book or a sheet, or lie in them: what wets one may wet another."""

_AT_THE_FOLDS = frozenset({"spine", "spine-fold", "sewing", "guard"})
"""Parts that the folds of the leaves make up."""

_Named = Mapping[str, frozenset[str]]
"""Parts or layers by id, each with the numbers and sides that tell it from others of its name."""


def touched(look: Look, step: Step) -> tuple[str, ...]:
    """What a step acts on, and what that lies on: what a liquid reaches."""
    places = _acted_on(step)
    return tuple(dict.fromkeys((*places, *look.ground.under(places))))


def stuck(step: Step) -> tuple[str, ...]:
    """What a step brings together with an adhesive: what is laid or put back, and on what."""
    inside = known(step.in_thickness_of)
    bonds = (place for bond in items(step.bonds) for place in items(bond.onto))
    on = (*items(step.onto), *items(step.to), *step.spans, *((inside,) if inside else ()), *bonds)
    return (*items(step.puts_back), *items(step.joins), *on)


def _acted_on(step: Step) -> tuple[str, ...]:
    return (*items(step.treats), *items(step.removes), *items(step.takes_off), *items(step.opens))


def own(look: Look) -> frozenset[str]:
    """The layers and parts that the treatment itself added."""
    return frozenset(step.adds for step in look.steps if step.adds)


def meets(look: Look, one: str, other: str) -> bool:
    """Whether two places may be the same, or one lie in the other: `leaf` and `section 6` may."""
    first, second = named(look, one), named(look, other)
    shared = first.keys() & second.keys()
    if any(_differ(first[name], second[name]) for name in shared):
        return False
    if first.keys() <= second.keys() or second.keys() <= first.keys():
        return True
    return bool(first.keys() & LEAVES and second.keys() & LEAVES)


def near(look: Look, one: str, other: str) -> bool:
    """Whether a test of one place says something of the other: leaves and their folds too."""
    both = (named(look, one).keys(), named(look, other).keys())
    at_fold = any(a & LEAVES and b & _AT_THE_FOLDS for a, b in (both, both[::-1]))
    return at_fold or meets(look, one, other)


def any_meets(look: Look, some: Iterable[str], others: Iterable[str]) -> bool:
    """Whether a place among some may be, or lie in, one among others."""
    there = tuple(others)
    return any(meets(look, one, other) for one in some for other in there)


def _differ(one: frozenset[str], other: frozenset[str]) -> bool:
    """Whether numbers or sides tell two parts of one name apart: `board 1` and `board 2`."""
    return bool(one and other) and not (one <= other or other <= one)


def named(look: Look, place: str) -> _Named:
    """What a place names, from the whole to the part, without its face."""
    segments = [one.strip() for one in look.ground.bare(place).split("/") if one.strip()]
    return {name: marks for one in segments for name, marks in _segment(look, one)}


def _segment(look: Look, segment: str) -> Iterator[tuple[str, frozenset[str]]]:
    whole = look.lexicon.resolve("parts", segment)
    if segment in look.layers or whole:
        yield (whole[1] if whole and segment not in look.layers else segment), frozenset()
        return
    found = [(word.casefold(), look.lexicon.resolve("parts", word)) for word in segment.split()]
    parts = [one for _, one in found if one and not _is_side(look, one)]
    marks = frozenset(word for word, one in found if one is None or _is_side(look, one))
    if parts:
        yield from ((one[1], marks) for one in parts)
    else:
        yield segment.casefold(), frozenset()


def _is_side(look: Look, found: tuple[str, str]) -> bool:
    """Whether a word says where rather than what: head, front, left."""
    term = look.lexicon.terms[found[0]][found[1]]
    return known(term.class_) == "place"
