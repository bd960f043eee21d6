"""What a reference means: a part or a layer, and a zone, a wall, a face or a spot of it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from casebook.compute.places import FACES, Ground, ground
from casebook.compute.steps import none, placed
from casebook.model.archive import Case
from casebook.model.base import Record, items, known, schema
from casebook.model.condition import Found
from casebook.model.treatment import Step
from casebook.values.quantities import Length
from casebook.vocabulary import Lexicon, words_in

_WALLS = {"inner": "inner", "inside": "inner", "outer": "outer", "outside": "outer"}
FOLDS = frozenset({"fold", "folds"})
"""Where the two walls of a tube hang together."""

_BOARDS = frozenset({"board", "front-board", "back-board"})
_NUMBER = re.compile(r"\s*\d+$")
_HOLLOW = ("operations", "make-hollow")
_UNBODILY = ("hides",)
"""Fields that may also name a finding, so that a word in them alone makes no part."""


@dataclass(frozen=True, slots=True)
class Spot:
    """What one reference means.

    `of` is the part or layer; `zone` the part that a zone of it covers, `wall` inner or outer,
    `face` a side of it, `where` a place on a layer that is no zone of its own, such as its head.
    """

    of: str
    zone: str = ""
    wall: str = ""
    face: str = ""
    where: str = ""


class Names:
    """The names of a case: its layers and its parts, and what a reference to them means."""

    def __init__(self, case: Case, lexicon: Lexicon) -> None:
        self.case = case
        self.lexicon = lexicon
        self.ground: Ground = ground(case)
        self.steps: tuple[Step, ...] = tuple(one.step for one in placed(case))
        self.layers = frozenset(self._own())
        self.tubes = frozenset(self._hollow())
        self.heights: dict[str, Length] = dict(self._heights())
        self._spots: dict[str, Spot | None] = {}
        self._spanned = frozenset(self._spans())
        self.zones = self._zones()

    def _own(self) -> Iterator[str]:
        yield from (one.id for one in items(self.case.as_found) if one.id)
        yield from (step.adds for step in self.steps if step.adds)

    def _heights(self) -> Iterator[tuple[str, Length]]:
        """How long layers are, from head to tail, as the record says."""
        for found in items(self.case.as_found):
            if height := known(found.height):
                yield found.id, height
        for step in self.steps:
            cut = known(step.cut)
            height = known(cut.height) if cut else None
            if step.adds and height:
                yield step.adds, height

    def _hollow(self) -> Iterator[str]:
        for found in items(self.case.as_found):
            if found.walls is not None and not none(found.walls):
                yield found.id
        for step in self.steps:
            said = step.walls is not None and not none(step.walls)
            if step.adds and (said or self._makes_hollow(step)):
                yield step.adds

    def _makes_hollow(self, step: Step) -> bool:
        word = known(step.do)
        return bool(word) and self.lexicon.resolve("operations", word or "") == _HOLLOW

    def spot(self, place: str) -> Spot | None:
        """What a reference means; None for one that says nothing, such as a lone slash."""
        if place not in self._spots:
            words = [word for one in place.split("/") if (word := one.strip())]
            self._spots[place] = self._spot(words) if words else None
        return self._spots[place]

    def _spot(self, words: list[str]) -> Spot:
        ends = range(len(words), 0, -1)
        length = next((n for n in ends if "/".join(words[:n]) in self.layers), 0)
        if length:
            return self._on_layer("/".join(words[:length]), words[length:])
        rest, face = _without_face(words[1:])
        return Spot(self.part("/".join([words[0], *rest])), face=face)

    def _on_layer(self, layer: str, words: list[str]) -> Spot:
        if layer in self.tubes and words and words[0].casefold() in _WALLS:
            return Spot(layer, wall=_WALLS[words[0].casefold()])
        if layer in self.tubes and words and words[0].casefold() in FOLDS:
            return Spot(layer, where=words[0])
        rest, face = _without_face(words)
        zone = self._zone(layer, "/".join(rest)) if rest else ""
        if zone and (layer, zone) not in self._spanned and self.is_place(zone):
            return Spot(layer, face=face, where=zone)
        return Spot(layer, zone, face=face)

    def _zone(self, layer: str, words: str) -> str:
        """The part that a zone covers; in a run it is the member's own."""
        member = layer.rpartition("/")[0]
        own = f"{member}/{words}"
        return own if member and not words.startswith(f"{member}/") else self.part(words)

    def part(self, name: str) -> str:
        """A part by its whole path, also where only its last name was written."""
        paths = self.ground.parts
        if name in paths:
            return name
        longer = [path for path in paths if path.endswith(f"/{name}")]
        return longer[0] if len(longer) == 1 else name

    def is_place(self, name: str) -> bool:
        """Whether a word only says where on something, such as head or joint front."""
        if name in self.ground.parts:
            return False
        found = self.lexicon.place(name.rpartition("/")[2])
        return bool(found) and all(_class(self.lexicon, one) == "place" for one in found)

    def word(self, name: str) -> str:
        """What a part is, by the vocabulary: the id of its term, or ""."""
        own = known(self.ground.part(name).is_) or _NUMBER.sub("", name.rpartition("/")[2])
        whole = self.lexicon.resolve("parts", own)
        if whole:
            return whole[1]
        found = self.lexicon.place(own)
        return next((one[1] for one in found if _class(self.lexicon, one) != "place"), "")

    def is_board(self, name: str) -> bool:
        """Whether a part is a board of a book."""
        return self.word(name) in _BOARDS

    def thing(self, layer: str, zone: str) -> str:
        """The name of one zone of a layer: short where both belong to one member of a run."""
        member = layer.rpartition("/")[0]
        return f"{layer}/{zone.removeprefix(f'{member}/') if member else zone}"

    def _spans(self) -> Iterator[tuple[str, str]]:
        found = ((one.id, one.spans) for one in items(self.case.as_found))
        laid = ((step.adds or "", step.spans) for step in self.steps)
        for layer, spans in (*found, *laid):
            yield from ((layer, part) for part in self.ground.under(spans))

    def _zones(self) -> dict[str, dict[str, bool]]:
        """Zones of layers that are named somewhere: whether each is joined only later."""
        zones: dict[str, dict[str, bool]] = {}
        for place in references(self.case, self.steps):
            spot = self.spot(place)
            if spot and spot.zone:
                zones.setdefault(spot.of, {}).setdefault(spot.zone, False)
        for layer, part in self._joined():
            zones.setdefault(layer, {})[part] = True
        return zones

    def _joined(self) -> Iterator[tuple[str, str]]:
        """Layers that a step sticks to parts, or boards to them, each with the part in question."""
        for step in self.steps:
            if step.adhesive is None and items(step.held):
                continue
            parts = list(self._held_by(items(step.to)))
            for spot in self._layers_in(items(step.joins)):
                yield from ((spot.of, part) for part in ([spot.zone] if spot.zone else parts))
            moved = map(self.spot, (*items(step.joins), *items(step.puts_back)))
            boards = [one.of for one in moved if one and self.is_board(one.of)]
            for spot in self._layers_in((*items(step.to), *items(step.onto)) if boards else ()):
                yield from ((spot.of, board) for board in boards if not spot.zone)

    def _held_by(self, places: Iterable[str]) -> Iterator[str]:
        """The part that each place comes down to; a layer that joins several is one place."""
        for place in places:
            under = self.ground.under((place,))
            spot = self.spot(place)
            one_place = spot is not None and spot.of in self.layers
            yield from (self.part(one) for one in (under[:1] if one_place else under))

    def _layers_in(self, places: Iterable[str]) -> Iterator[Spot]:
        """The layers among some references, walls of tubes left out."""
        for spot in map(self.spot, places):
            if spot and spot.of in self.layers and not spot.wall:
                yield spot


def _class(lexicon: Lexicon, found: tuple[str, str]) -> str:
    return known(lexicon.terms[found[0]][found[1]].class_) or ""


def _without_face(words: list[str]) -> tuple[list[str], str]:
    """The words of a path without those that name a face, and the last of these."""
    faces = [word for word in words if word.casefold() in FACES]
    rest = [word for word in words if word.casefold() not in FACES]
    return rest, faces[-1].casefold() if faces else ""


def references(case: Case, steps: Iterable[Step]) -> Iterator[str]:
    """Every reference to a part or layer from which the structure is worked out."""
    for record in (*items(case.as_found), *items(case.tests), *steps):
        yield from places_in(record)


def places_in(record: Record) -> Iterator[str]:
    """The references to parts and layers in one record, its bonds too."""
    for info in schema(type(record)).values():
        if info.points == "place" and info.name not in _UNBODILY:
            yield from words_in(getattr(record, info.name))
    if isinstance(record, (Found, Step)):
        for bond in items(record.bonds):
            yield from places_in(bond)
