"""The original parts of a case, and which of them are of one thing as it was made."""

from __future__ import annotations

import functools
from collections.abc import Iterator, Mapping

from casebook.compute.layers.holds import named, splits
from casebook.compute.layers.names import Names, references
from casebook.compute.measures import length
from casebook.compute.structure import Since, Thing
from casebook.model.base import known
from casebook.model.object import Part
from casebook.values.quantities import Length

_TEXT = ("text-block", "spine")

BELONGS: Mapping[str, tuple[str, ...]] = {
    "spine": ("text-block",),
    **dict.fromkeys(("section", "first-section", "last-section"), _TEXT),
    **dict.fromkeys(("leaf", "title-page", "plate", "foldout", "endleaves", "flyleaf"), _TEXT),
    **dict.fromkeys(("sewing", "sewing-support", "kettle-stitch", "edges"), _TEXT),
    "bifolium": ("section", *_TEXT),
    "page": ("leaf", *_TEXT),
    "spine-fold": ("spine", "section", "text-block"),
    "endband": ("spine", "text-block"),
    "endband-core": ("endband",),
    "endband-tiedown": ("endband",),
    "board-edge": ("board",),
    "board-corner": ("board",),
    "clasp": ("strap",),
    **dict.fromkeys(("fold", "margin", "image", "text", "plate-mark", "inscription"), ("sheet",)),
    **dict.fromkeys(("stamp", "media", "support", "seam", "recto", "verso"), ("sheet",)),
}
"""Which part belongs to which as made, by the words of the vocabulary. Common practice, no source.

Boards, covers and what is laced, nailed or pasted on belong to no other part: they were put on.
"""

PUT_ON = frozenset(
    {"board", "front-board", "back-board", "cover", "case", "text-block", "volume", "box"}
    | {"wrapper", "frame", "box-tray", "box-lid", "roller", "mounted-item"}
)
"""Parts that are no piece of what their path names before them: a board of a volume."""

_PIECES = frozenset({"turn-in", "endcap", "flap", "corner-covering"})
"""Pieces of a covering itself: as zones they lie over no part of that name."""


def parts(names: Names) -> Mapping[str, Thing]:
    """Every original part that a case declares or names, with those that carry it in its path."""
    declared = (name for name in names.ground.parts if name not in names.layers)
    found = dict.fromkeys([*declared, *_named(names)])
    whole = dict.fromkeys(one for path in found for one in _paths(path))
    return {name: _thing(names, name) for name in whole}


def _named(names: Names) -> Iterator[str]:
    owners = (known(part.of) for part in names.ground.parts.values())
    for place in (*(one for one in owners if one), *references(names.case, names.steps)):
        spot = names.spot(place)
        if spot and spot.of not in names.layers:
            yield spot.of
        if spot and spot.zone and not is_piece(names, spot.zone):
            yield spot.zone


def _paths(path: str) -> Iterator[str]:
    """A path with all that stand before it, the shortest first."""
    words = path.split("/")
    yield from ("/".join(words[:end]) for end in range(1, len(words) + 1))


def _thing(names: Names, name: str) -> Thing:
    part = names.ground.parts.get(name, Part())
    material = named(part.material, names.lexicon)
    later = name not in names.ground.parts and _is_layer(names, name)
    return Thing(
        name=name,
        of=name,
        part=not later,
        since=Since.FOUND if later else Since.ORIGINAL,
        materials=material.words,
        ruled_out=material.ruled_out,
        splits=splits(part.material, material.words, names.lexicon),
        thickness_um=micrometres(part.thickness) or thickness(part.material),
        height_um=micrometres(part.height),
        width_um=micrometres(part.width) or micrometres(part.length),
    )


def _is_layer(names: Names, name: str) -> bool:
    """Whether a name is the vocabulary's word for what is put on: a repair, a strip of tape."""
    terms = [names.lexicon.terms[kind][word] for kind, word in names.lexicon.place(name)]
    return bool(terms) and known(terms[0].class_) == "layer"


def thickness(material: object) -> int | None:
    """The thickness of a material as the record gives it, in µm."""
    return micrometres(getattr(material, "thickness", None))


def micrometres(said: object) -> int | None:
    """A length in µm, or None where there is none."""
    return _micrometres(said) if isinstance(said, Length) else None


@functools.lru_cache(maxsize=10_000)
def _micrometres(said: Length) -> int | None:
    found = length(said)
    return found.value if found else None


def parents(names: Names, found: Mapping[str, Thing]) -> Mapping[str, str]:
    """For each part that is of one thing with a larger one: that larger one."""
    words = {name: names.word(name) for name in found}
    pairs = ((name, _parent(names, name, words)) for name in found)
    return {name: parent for name, parent in pairs if parent and parent != name}


def is_piece(names: Names, zone: str) -> bool:
    """Whether a zone is a piece of its layer, such as a turn-in, and no part that this covers."""
    return zone not in names.ground.parts and names.word(zone) in _PIECES


def _parent(names: Names, name: str, words: Mapping[str, str]) -> str:
    said = known(names.ground.part(name).of)
    spot = names.spot(said) if said else None
    if spot and spot.of in words:
        return spot.of
    above = name.rpartition("/")[0]
    for wanted in BELONGS.get(words[name], ()):
        beside = [
            one for one, word in words.items() if word == wanted and one.rpartition("/")[0] == above
        ]
        if len(beside) == 1 and beside[0] != name:
            return beside[0]
    return above if words[name] not in PUT_ON else ""
