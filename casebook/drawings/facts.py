"""What a drawing needs beyond the structure: the rise of spines, weights, the words for things."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from itertools import groupby

from casebook.compute.measures import assumed_width, length
from casebook.compute.places import ground
from casebook.compute.steps import placed
from casebook.compute.structure import Thing
from casebook.model.archive import Case
from casebook.model.base import items, known
from casebook.model.materials import Material
from casebook.values.notation import PLAIN, Notation
from casebook.vocabulary import Lexicon


@dataclass(frozen=True, slots=True)
class Facts:
    """What the record says beside the structure.

    `rises` in µm by spine, `widths` in µm of parts that have the object's, `weights` the mass per
    area as written by layer, `spines` the parts that are spines whatever they are called, `steps`
    what a step of a number is called where the case lists it: "sitting 3, step 1".
    """

    rises: Mapping[str, int] = field(default_factory=dict)
    widths: Mapping[str, int] = field(default_factory=dict)
    weights: Mapping[str, str] = field(default_factory=dict)
    spines: frozenset[str] = frozenset()
    steps: Mapping[int, str] = field(default_factory=dict)
    lexicon: Lexicon | None = None
    notation: Notation = PLAIN

    def material(self, word: str) -> str:
        """How a material is written."""
        return (self.lexicon.label("materials", word) if self.lexicon else word).replace("-", " ")

    def is_cloth(self, word: str) -> bool:
        """Whether a material is a cloth, by the vocabulary."""
        term = self.lexicon.term("materials", word) if self.lexicon else None
        return term is not None and known(term.class_) == "cloth"

    def step(self, number: int) -> str:
        """What a step is called, counted from 1 through the case."""
        return self.steps.get(number, f"step {number}")

    def is_spine(self, name: str) -> bool:
        """Whether a part is a spine, by its own name or by what the record calls it."""
        return name in self.spines or name.rpartition("/")[2].strip().casefold() == "spine"


FACES = ("sheet", "leaf")
"""Parts that are as wide as the object where nobody measured them."""

NO_FACTS = Facts()
"""Nothing is known beyond the structure."""


def layer_of(thing: Thing) -> str:
    """The layer that a zone or a wall belongs to; any other thing stands for itself."""
    return thing.of or thing.name


def facts_of(case: Case, lexicon: Lexicon, notation: Notation = PLAIN) -> Facts:
    """What the record of a case says of the curve of spines and the weight of layers."""
    below = ground(case)
    rises = {place: length(part.rise) for place, part in below.parts.items()}
    found = ((one.id, one.material) for one in items(case.as_found))
    laid = ((one.step.adds or "", one.step.material) for one in placed(case))
    return Facts(
        rises={place: rise.value for place, rise in rises.items() if rise},
        widths={one: wide.value for one in FACES if (wide := assumed_width(below, one))},
        weights=dict(_weights((*found, *laid))),
        spines=frozenset(place for place in below.parts if below.is_spine(place)),
        steps=dict(enumerate(_steps(case), 1)),
        lexicon=lexicon,
        notation=notation,
    )


def _steps(case: Case) -> Iterator[str]:
    """Each step by its sitting and its place there; in a sitting with runs by the sitting alone."""
    for number, group in groupby(placed(case), key=lambda one: one.episode):
        steps = tuple(group)
        sitting = f"sitting {number}" if number else ""
        runs = any(one.run for one in steps)
        for place, _ in enumerate(steps, 1):
            listed = "" if runs and sitting else f"step {place}"
            yield ", ".join(said for said in (sitting, listed) if said)


def _weights(laid: Iterable[tuple[str, object]]) -> Iterable[tuple[str, str]]:
    for name, material in laid:
        weight = known(material.weight) if isinstance(material, Material) else None
        if weight is not None:
            yield name, str(weight)
