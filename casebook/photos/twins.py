"""Pictures that look alike, found among many without holding each against each."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import cached_property
from itertools import combinations
from typing import Generic, TypeVar

from casebook.photos.pixels import COARSE_BITS, FINE_BITS

NEAR = 5
"""Pictures that look alike differ in no more of the coarse bits of their fingerprints."""
TELLING = 32
"""A picture with fewer fields lighter than their neighbour, or darker, is too plain to compare."""
MOST = 32
"""So many pictures that share a part of their fingerprint are held against another; of more that
all look alike, some pairs are missed."""

_BANDS = 7  # of which NEAR changed bits leave two whole
Kept = TypeVar("Kept")


@dataclass(frozen=True)
class Looks:
    """A fingerprint, as `pixels.fingerprint` writes it."""

    text: str

    @cached_property
    def coarse(self) -> int:
        """The coarse bits."""
        return int(self.text[: COARSE_BITS // 4] or "0", 16)

    @cached_property
    def fine(self) -> int:
        """The fine bits."""
        return int(self.text[COARSE_BITS // 4 :] or "0", 16)

    @property
    def telling(self) -> bool:
        """Whether there is enough in the picture to know it by."""
        return TELLING <= self.fine.bit_count() <= FINE_BITS - TELLING

    def apart(self, other: Looks) -> int | None:
        """In how many fine bits two pictures differ; None when they do not look alike at all."""
        if (self.coarse ^ other.coarse).bit_count() > NEAR:
            return None
        return (self.fine ^ other.fine).bit_count()

    def parts(self) -> Iterator[tuple[int, int, int, int]]:
        """Parts of the coarse bits; pictures that look alike have one of them in common.

        The bits of a part lie all over the picture, since its edges are often alike.
        """
        bands = [(at, self._band(at)) for at in range(_BANDS)]
        return ((*one, *other) for one, other in combinations(bands, 2))

    def _band(self, at: int) -> int:
        return sum((self.coarse >> bit & 1) << bit for bit in range(at, COARSE_BITS, _BANDS))


@dataclass(frozen=True, slots=True)
class Shelf(Generic[Kept]):
    """Things by what their pictures look like. Time and room grow as the number of pictures."""

    _places: dict[tuple[int, int, int, int], list[tuple[Looks, Kept]]] = field(default_factory=dict)

    def meet(self, looks: Looks, thing: Kept) -> list[tuple[int, Kept]]:
        """All that looks like a new thing, with how many fine bits differ; then keep it, too."""
        if not looks.telling:
            return []
        found: dict[int, tuple[int, Kept]] = {}
        for key in looks.parts():
            place = self._places.setdefault(key, [])
            for other, kept in place:
                if (bits := looks.apart(other)) is not None:
                    found[id(kept)] = (bits, kept)
            if len(place) < MOST:
                place.append((looks, thing))
        return sorted(found.values(), key=lambda one: one[0])
