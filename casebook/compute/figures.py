"""Figures that say how far they can be trusted: exact integers with doubts, and their sums."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass, replace
from enum import StrEnum
from fractions import Fraction
from typing import Protocol


class Effect(StrEnum):
    """What a doubt does to a figure: it is a lower bound, it is inexact, or nothing but a note."""

    AT_LEAST = "at least"
    ABOUT = "about"
    NOTE = "note"


@dataclass(frozen=True, slots=True, order=True)
class Doubt:
    """A reason why a figure is not the whole truth, and how often it applies.

    `one` and `many` are the words behind the count: "step has no time", "steps have no time".
    """

    effect: Effect
    one: str
    many: str
    count: int = 1

    def __str__(self) -> str:
        return f"{self.count} {self.one if self.count == 1 else self.many}"


@dataclass(frozen=True, slots=True)
class Figure:
    """A whole number of µm, µm², µg or minutes, as its field says, with the doubts about it.

    The flags follow from the doubts, so that no figure is doubtful without saying why.
    """

    value: int = 0
    doubts: tuple[Doubt, ...] = ()

    @property
    def at_least(self) -> bool:
        """Whether something is missing, so that the true figure is this or more."""
        return any(doubt.effect is Effect.AT_LEAST for doubt in self.doubts)

    @property
    def about(self) -> bool:
        """Whether an input was approximate or assumed."""
        return any(doubt.effect is Effect.ABOUT for doubt in self.doubts)

    @property
    def reasons(self) -> tuple[str, ...]:
        """The doubts in words, for a page: "2 steps have no time"."""
        return tuple(str(doubt) for doubt in self.doubts)

    def __add__(self, other: Figure) -> Figure:
        return Figure(self.value + other.value, merged((*self.doubts, *other.doubts)))

    def __mul__(self, other: Figure) -> Figure:
        return Figure(self.value * other.value, merged((*self.doubts, *other.doubts)))

    def __sub__(self, other: Figure) -> Figure:
        """The difference of two figures from the same inputs: a shared doubt counts once."""
        doubts = _counted(self.doubts) | _counted(other.doubts)
        return Figure(self.value - other.value, _listed(doubts))

    def but(self, *doubts: Doubt) -> Figure:
        """The same figure with more doubts."""
        return replace(self, doubts=merged((*self.doubts, *doubts)))


ZERO = Figure()
"""Nothing, and no doubt about it."""


def qualified(figure: Figure, text: str) -> str:
    """A figure's text with its honest "at least" or "about"."""
    if figure.at_least:
        return f"at least {text}"
    return f"about {text}" if figure.about else text


def merged(doubts: Iterable[Doubt]) -> tuple[Doubt, ...]:
    """Doubts of one wording counted together, in an order of their own."""
    return _listed(_counted(doubts))


def _counted(doubts: Iterable[Doubt]) -> Counter[tuple[Effect, str, str]]:
    counts: Counter[tuple[Effect, str, str]] = Counter()
    for doubt in doubts:
        counts[doubt.effect, doubt.one, doubt.many] += doubt.count
    return counts


def _listed(counts: Counter[tuple[Effect, str, str]]) -> tuple[Doubt, ...]:
    return tuple(sorted(Doubt(*key, count) for key, count in counts.items()))


def total(figures: Iterable[Figure]) -> Figure:
    """The exact sum of figures, with all their doubts; the order makes no difference."""
    every = tuple(figures)
    doubts = merged(doubt for figure in every for doubt in figure.doubts)
    return Figure(sum(figure.value for figure in every), doubts)


class Read(Protocol):
    """What a quantity of the record looks like from here: bounds in base units, and doubts."""

    @property
    def low(self) -> Fraction | None:
        """The lower bound, None where open."""

    @property
    def high(self) -> Fraction | None:
        """The upper bound, None where open."""

    @property
    def about(self) -> bool:
        """Whether it was written as approximate."""

    @property
    def doubtful(self) -> bool:
        """Whether it was written as doubtful."""


def nearest(value: Fraction) -> int:
    """The nearest whole number, halves up."""
    return math.floor(value + Fraction(1, 2))


def read(quantity: Read, scale: int = 1, noun: str = "measure") -> Figure:
    """A quantity as a figure: base units times `scale`, rounded to a whole number.

    A range counts by its middle, "about"; an open range by the bound it has. `noun` is what the
    doubts speak of.
    """
    low, high = quantity.low, quantity.high
    known = [Fraction(bound) for bound in (low, high) if bound is not None]
    value = nearest(sum(known, Fraction(0)) / max(len(known), 1) * scale)
    return Figure(value, merged(_doubts(quantity, noun)))


def _doubts(quantity: Read, noun: str) -> Iterable[Doubt]:
    if quantity.high is None:
        yield Doubt(Effect.AT_LEAST, f"{noun} is a lower bound", f"{noun}s are lower bounds")
    elif quantity.low is None:
        yield Doubt(Effect.ABOUT, f"{noun} is an upper bound", f"{noun}s are upper bounds")
    elif quantity.low != quantity.high:
        yield Doubt(Effect.ABOUT, f"{noun} is a range", f"{noun}s are ranges")
    if quantity.about:
        yield Doubt(Effect.ABOUT, f"{noun} is approximate", f"{noun}s are approximate")
    if quantity.doubtful:
        yield Doubt(Effect.ABOUT, f"{noun} is doubtful", f"{noun}s are doubtful")
