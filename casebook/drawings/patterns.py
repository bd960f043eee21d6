"""What tells things apart without colour: fillings for things, lines for bonds, and their key."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from casebook.compute.structure import Bond, How, Since, Thing
from casebook.drawings.facts import Facts
from casebook.drawings.svg import Svg, joined, path, tag

INK = "#1d1b18"
PAPER = "#fcfcfa"
TONE = "#cfc7b8"
"""Defaults where no style sheet reaches the drawing; drawings.css themes them by class."""

DASHES = ("1.2 3.4", "7 2.2", "6 2 1.2 2", "3 2.6", "10 2 1.2 2 1.2 2")
"""The lines of the adhesives of one drawing, in the order in which they come."""
OTHER_DASH = "2 1.5"
UNNAMED_DASH = "1.2 7"
HELD_DASH = "1.4 5"

BOND = 2.4
"""The width of the line of an adhesive, in units."""


@dataclass(frozen=True, slots=True, order=True)
class Filling:
    """What tells a thing: toned, hatched or dotted by since when it is there; cloth has a weave.

    All differ in their marks alone, so that no reader needs the tone.
    """

    since: Since
    cloth: bool = False

    @property
    def letter(self) -> str:
        """The end of the pattern's id."""
        return f"{_LETTERS[self.since]}{'w' if self.cloth else ''}"

    @property
    def name(self) -> str:
        """What the key calls it."""
        return f"{_NAMES[self.since]}{', cloth' if self.cloth else ''}"

    def fill(self, prefix: str) -> str:
        """The value of `fill`."""
        return f"url(#{prefix}-{self.letter})"


_LETTERS = {Since.ORIGINAL: "o", Since.FOUND: "f", Since.ADDED: "a"}
_NAMES = {
    Since.ORIGINAL: "original to the object",
    Since.FOUND: "found on it, not original",
    Since.ADDED: "added in this treatment",
}
LEAVES = "l"
"""The letter of the filling of a text block: toned, with the lines of its leaves."""

TONED, HATCHED, DOTTED = (Filling(one) for one in (Since.ORIGINAL, Since.FOUND, Since.ADDED))


def filling(thing: Thing, facts: Facts) -> Filling:
    """The filling of a thing; whether it is cloth is known by the likeliest word for it."""
    return Filling(thing.since, any(facts.is_cloth(word) for word in thing.materials[:1]))


def definitions(prefix: str, letters: Iterable[str]) -> Svg:
    """The fillings that a drawing uses, by their letters."""
    found = sorted(set(letters))
    return tag("defs", *(_pattern(f"{prefix}-{one}", *_PATTERNS[one]) for one in found))


def _pattern(name: str, size: float, ground: tuple[str, str], marks: Svg) -> Svg:
    style, colour = ground
    sheet = tag("rect", width=size, height=size, class_=style, fill=colour)
    return tag(
        "pattern", sheet, marks, id=name, width=size, height=size, patternUnits="userSpaceOnUse"
    )


def _lines(width: float, *parts: str | float) -> Svg:
    return tag("path", d=path(*parts), class_="d-line", stroke=INK, stroke_width=width, fill="none")


def _dots(*places: float) -> Svg:
    return joined(tag("circle", cx=at, cy=at, r=0.75, class_="d-ink", fill=INK) for at in places)


_HATCH = ("M", -1, 1, "l", 2, -2, "M", 0, 6, "l", 6, -6, "M", 5, 7, "l", 2, -2)
_BACK = ("M", -1, 5, "l", 2, 2, "M", 0, 0, "l", 6, 6, "M", 5, -1, "l", 2, 2)
_WEAVE = ("M", 0, 0.5, "h", 5, "M", 0.5, 0, "v", 5)
_TONED, _PLAIN = ("d-tone", TONE), ("d-paper", PAPER)
_PATTERNS: Mapping[str, tuple[float, tuple[str, str], Svg]] = {
    "o": (8, _TONED, Svg("")),
    "ow": (3.5, _TONED, _lines(0.6, *_WEAVE)),
    "f": (6, _PLAIN, _lines(1.3, *_HATCH)),
    "fw": (6, _PLAIN, _lines(1, *_HATCH, *_BACK)),
    "a": (5, _PLAIN, _dots(1.25, 3.75)),
    "aw": (5, _PLAIN, joined((_lines(0.6, *_WEAVE), _dots(3)))),
    "l": (5, _TONED, _lines(0.6, "M", 2.5, 0, "V", 5)),
}
"""The size of each tile, its ground and its marks."""


@dataclass(frozen=True, slots=True)
class Line:
    """How a bond is drawn: its dashes, and what the key calls it."""

    dash: str
    name: str


@dataclass(frozen=True, slots=True)
class Inks:
    """The lines of one drawing: each adhesive has its own as long as there are enough."""

    by_adhesive: Mapping[str, Line]

    def line(self, bond: Bond) -> Line | None:
        """How a bond is drawn; None where nothing lies between."""
        if bond.how is How.STUCK and bond.adhesives:
            return self.by_adhesive[bond.adhesives[0]]
        return _LINES.get(bond.how)


_LINES = {
    How.STUCK: Line(UNNAMED_DASH, "adhesive not named"),
    How.UNKNOWN: Line(UNNAMED_DASH, "bond not known"),
    How.HELD: Line(HELD_DASH, "sewn, laced or held"),
}


def inks(bonds: Sequence[Bond], facts: Facts) -> Inks:
    """The lines for the adhesives of a drawing, in the order in which they come."""
    words = dict.fromkeys(b.adhesives[0] for b in bonds if b.how is How.STUCK and b.adhesives)
    named = {
        word: Line(dash, facts.material(word)) for word, dash in zip(words, DASHES, strict=False)
    }
    rest = {word: Line(OTHER_DASH, "another adhesive") for word in words if word not in named}
    return Inks({**named, **rest})


def bond_line(data: str, line: Line) -> Svg:
    """An adhesive, or a row of stitches, along a path; the rest is said by its group."""
    width = "6" if line.dash == HELD_DASH else None
    return tag("path", d=data, stroke_width=width, stroke_dasharray=line.dash)


KEY_ROW = 23.0


def key(
    prefix: str, top: float, kinds: Sequence[Filling], lines: Sequence[Line]
) -> tuple[Svg, float]:
    """The key under a drawing, and where it ends: fillings, then lines, one in a row."""
    rows: list[Svg] = []
    for n, kind in enumerate(kinds):
        rows.append(_swatch(prefix, top + n * KEY_ROW, kind))
    below = top + len(kinds) * KEY_ROW
    for n, line in enumerate(lines):
        rows.append(_sample(below + n * KEY_ROW, line))
    return tag("g", *rows, class_="d-key"), below + len(lines) * KEY_ROW


def _swatch(prefix: str, y: float, kind: Filling) -> Svg:
    box = tag(
        "rect", x=8, y=y, width=44, height=14, fill=kind.fill(prefix), class_="d-edge", stroke=INK
    )
    return joined((box, _named(y, kind.name)))


def _sample(y: float, line: Line) -> Svg:
    data = path("M", 8, y + 7, "h", 44)
    drawn = tag("g", bond_line(data, line), stroke=INK, stroke_width=BOND, class_="d-edge")
    return joined((drawn, _named(y, line.name)))


def _named(y: float, name: str) -> Svg:
    return tag("text", name, x=62, y=y + 12, fill=INK)
