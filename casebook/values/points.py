"""Places on a photo: a point, a box, a line, an outline, in pixels or in per cent of the picture.

Measured from the top left corner of the upright original, x to the right, y down; 0 0 is the outer
corner of the first pixel.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from fractions import Fraction
from typing import ClassVar, Self

from casebook.values.fault import NotUnderstood
from casebook.values.numbers import numeral

LONGEST = 4000
"""Longer texts are refused."""
MOST_POINTS = 200
"""More points than these nobody sets by hand."""

_NUMBER = re.compile(r"(?P<number>[0-9]{1,6}(?:\.[0-9]{1,4})?)(?P<sign>\s*%)?(?=[\s,]|$)", re.ASCII)

Pair = tuple[Fraction, Fraction]
"""A point in pixels."""


@dataclass(frozen=True, slots=True)
class Spot:
    """What the places share: their numbers as written, two to a point, and their unit."""

    numbers: tuple[Fraction, ...]
    per_cent: bool = False
    printed: str = field(default="", compare=False)

    noun: ClassVar[str] = "place"
    hint: ClassVar[str] = ""
    fewest: ClassVar[int] = 1
    most: ClassVar[int] = MOST_POINTS
    joined: ClassVar[str] = ", "

    @classmethod
    def parse(cls, text: str) -> Self:
        """Read a text as printed. Raises NotUnderstood, with offsets, if it says no such place."""
        found, per_cent = _numbers(text, cls.noun, cls.hint)
        if len(found) % 2 or not cls.fewest <= len(found) // 2 <= cls.most:
            raise _fault(text, f"{cls.noun} is {cls.hint.partition(',')[0]}", cls.hint)
        value = cls(found, per_cent, text.strip())
        if wrong := value._wrong():
            raise _fault(text, wrong, cls.hint)
        return value

    def __str__(self) -> str:
        """The place exactly as it was printed."""
        return self.printed or self.canonical()

    def canonical(self) -> str:
        """The same place written from its values alone; `parse` reads it back equal."""
        unit = "%" if self.per_cent else ""
        texts = [f"{numeral(one)}{unit}" for one in self.numbers]
        pairs = zip(texts[::2], texts[1::2], strict=True)
        return self.joined.join(f"{x} {y}" for x, y in pairs)

    def corners(self, width: int, height: int) -> tuple[Pair, ...]:
        """Its points in pixels of a picture of that size; a box has four, clockwise."""
        across = Fraction(width, 100) if self.per_cent else Fraction(1)
        down = Fraction(height, 100) if self.per_cent else Fraction(1)
        xs, ys = self.numbers[::2], self.numbers[1::2]
        return tuple((x * across, y * down) for x, y in zip(xs, ys, strict=True))

    def inside(self, width: int, height: int) -> bool:
        """Whether all of it lies in a picture of that size."""
        return all(0 <= x <= width and 0 <= y <= height for x, y in self.corners(width, height))

    def _wrong(self) -> str:
        """What is wrong with its numbers, "" if nothing is."""
        over = self.per_cent and max(self.numbers) > 100
        return "nothing in a picture is beyond 100 per cent of it" if over else ""


@dataclass(frozen=True, slots=True)
class Point(Spot):
    """One point: `1204 860`, or `40% 28.5%`."""

    noun: ClassVar[str] = "a point"
    hint: ClassVar[str] = "two numbers, x and y, as in 1204 860 or 40% 28.5%"
    most: ClassVar[int] = 1

    def on(self, width: int, height: int) -> Pair:
        """The point in pixels of a picture of that size."""
        return self.corners(width, height)[0]


@dataclass(frozen=True, slots=True)
class Box(Spot):
    """An upright rectangle: `x y width height`, x and y its upper left corner."""

    noun: ClassVar[str] = "a box"
    hint: ClassVar[str] = "four numbers, x y width height, as in 420 300 160 90 or 10% 20% 5% 8%"
    fewest: ClassVar[int] = 2
    most: ClassVar[int] = 2
    joined: ClassVar[str] = " "

    def corners(self, width: int, height: int) -> tuple[Pair, ...]:
        """Its four corners in pixels of a picture of that size, clockwise from the upper left."""
        (x, y), (across, down) = super(Box, self).corners(width, height)
        return ((x, y), (x + across, y), (x + across, y + down), (x, y + down))

    def _wrong(self) -> str:
        x, y, across, down = self.numbers
        if not across or not down:
            return "a box has a width and a height"
        if self.per_cent and (x + across > 100 or y + down > 100):
            return "nothing in a picture is beyond 100 per cent of it"
        return ""


@dataclass(frozen=True, slots=True)
class Path(Spot):
    """A line from point to point: `x y, x y`, and more where it bends."""

    noun: ClassVar[str] = "a line"
    hint: ClassVar[str] = "two points or more, as in 120 80, 460 92"
    fewest: ClassVar[int] = 2


@dataclass(frozen=True, slots=True)
class Outline(Spot):
    """The edge of a patch, from point to point and back to the first: `x y, x y, x y`."""

    noun: ClassVar[str] = "an outline"
    hint: ClassVar[str] = "three points or more, as in 120 80, 460 92, 300 240"
    fewest: ClassVar[int] = 3


def _numbers(text: str, noun: str, hint: str) -> tuple[tuple[Fraction, ...], bool]:
    """The numbers of a text that is made of nothing else, and whether they are per cent."""
    if not text.strip() or len(text) > LONGEST:
        raise _fault(text, f"{noun} is {'empty' if not text.strip() else 'too long'}", hint)
    numbers: list[Fraction] = []
    signs: set[bool] = set()
    at = len(text) - len(text.lstrip())
    while at < len(text):
        found = _NUMBER.match(text, at)
        if found is None:
            end = next((n for n in range(at, len(text)) if text[n].isspace()), len(text))
            raise NotUnderstood(
                f"`{text[at:end][:20]}` is no number here", hint=f"write {hint}", start=at, end=end
            )
        numbers.append(Fraction(found["number"]))
        signs.add(bool(found["sign"]))
        at = _next(text, found.end(), len(numbers))
    if len(signs) > 1:
        raise _fault(text, f"{noun} is in pixels or in per cent, not in both", hint)
    return tuple(numbers), signs == {True}


def _next(text: str, at: int, read: int) -> int:
    """Where the next number stands: behind spaces, and behind one comma after a second number."""
    gap = re.compile(r"\s*,\s*|\s*" if read % 2 == 0 else r"\s*").match(text, at)
    return gap.end() if gap else at


def _fault(text: str, message: str, hint: str) -> NotUnderstood:
    start = len(text) - len(text.lstrip()) if text.strip() else 0
    end = len(text.rstrip()) or len(text) or 1
    return NotUnderstood(message, hint=f"write {hint}", start=start, end=end)
