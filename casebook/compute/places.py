"""Where things lie: parts by name, and the parts that a layer rests on in the end."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from casebook.compute.once import once
from casebook.compute.steps import placed
from casebook.model.archive import Case
from casebook.model.base import items, known
from casebook.model.condition import Found
from casebook.model.object import Part, Size
from casebook.model.treatment import Step

FACES = frozenset({"recto", "verso", "inner", "outer", "inside", "outside", "front", "back"})
"""Words behind a slash that name a face of a part or layer, not a part of its own."""

_NUMBER = re.compile(r"\s*\d+$")
_NO_PART = Part()


@dataclass(frozen=True, slots=True)
class Ground:
    """What a case lays its layers on: declared parts by path, layers by what they lie on."""

    parts: Mapping[str, Part]
    layers: Mapping[str, tuple[str, ...]]
    size: Size

    def under(self, places: Iterable[str]) -> tuple[str, ...]:
        """The parts that places come down to, layers followed to what carries them.

        A layer of which nobody says what it lies on stands for itself, and so do layers that are
        said to lie on one another in a ring.
        """
        first = [self.bare(place) for place in places]
        waiting, seen, found = list(first), set[str](), dict[str, None]()
        while waiting:
            place = self.bare(waiting.pop(0))
            if place not in seen:
                seen.add(place)
                carriers = self.layers.get(place, ())
                waiting[:0] = carriers
                found.update({} if carriers else {place: None})
        return tuple(found or dict.fromkeys(first))

    def bare(self, place: str) -> str:
        """A place without its face: `sheet/verso` is `sheet`; a layer's zone is the part."""
        words = [word.strip() for word in place.split("/") if word.strip()]
        named = words[:1] + [word for word in words[1:] if word.casefold() not in FACES]
        layer = self._layer_in(named)
        return "/".join(named[layer:] if 0 < layer < len(named) else named)

    def layer(self, place: str) -> str:
        """The layer that a place is, or is a zone or a face of; a part stands for itself."""
        words = [word.strip() for word in place.split("/") if word.strip()]
        layer = self._layer_in(words)
        return "/".join(words[:layer]) if layer else self.bare(place)

    def _layer_in(self, words: list[str]) -> int:
        """How many words of a path name a layer, whose own name may be a path in a run; else 0."""
        ends = range(len(words), 0, -1)
        return next((n for n in ends if "/".join(words[:n]) in self.layers), 0)

    def part(self, place: str) -> Part:
        """The declared part at a place, found by its path or by a name borne once; else empty."""
        if place in self.parts:
            return self.parts[place]
        named = [part for path, part in self.parts.items() if path.endswith(f"/{place}")]
        return named[0] if len(named) == 1 else _NO_PART

    def is_spine(self, place: str) -> bool:
        """Whether a part is a spine, by its own name or by what it is said to be."""
        return _word(place) == "spine" or _word(known(self.part(place).is_) or "") == "spine"

    def is_face(self, place: str) -> bool:
        """Whether a part is about as big as the whole object: a sheet, leaf or board."""
        return _word(place) in {"sheet", "leaf", "board", "recto", "verso"}


def _word(place: str) -> str:
    """The last word of a path in lower case, without a number behind it: `board` of `Board 1`."""
    return _NUMBER.sub("", place.rpartition("/")[2].strip().casefold())


@once
def ground(case: Case) -> Ground:
    """The parts and layers of a case, as declared, found and laid."""
    found = {one.id: _below_found(one) for one in items(case.as_found) if one.id}
    laid = {
        one.step.adds: _below_laid(one.step)
        for one in placed(case)
        if one.step.adds and known(one.step.is_) != "part"
    }
    whole = known(case.object)
    size = known(whole.size) if whole else None
    return Ground(dict(_tree(case.parts, "")), {**found, **laid}, size or Size())


def _tree(parts: Mapping[str, Part], above: str) -> Iterator[tuple[str, Part]]:
    for name, part in parts.items():
        yield above + name, part
        yield from _tree(part.parts, f"{above}{name}/")


def _below_found(layer: Found) -> tuple[str, ...]:
    bonded = tuple(place for bond in items(layer.bonds) for place in items(bond.onto))
    lies = items(layer.onto) or bonded or tuple(layer.spans) or items(layer.soaks_in)
    return lies or items(layer.over) or items(layer.joins)


def _below_laid(step: Step) -> tuple[str, ...]:
    inside = known(step.in_thickness_of)
    within = (inside,) if inside else ()
    bonded = tuple(place for bond in items(step.bonds) for place in items(bond.onto))
    lies = items(step.onto) or bonded or items(step.soaks_in)
    return lies or items(step.over) or tuple(step.spans) or within or items(step.joins)
