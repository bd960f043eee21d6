"""What tells things apart without colour: fillings for things, lines for bonds, and their key."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from casebook.compute.structure import Bond, How, Since
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

FILLS = {Since.ORIGINAL: "o", Since.FOUND: "f", Since.ADDED: "a"}
FILL_NAMES = {
    Since.ORIGINAL: "original to the object",
    Since.FOUND: "found on it, not original",
    Since.ADDED: "added in this treatment",
}


def definitions(prefix: str) -> Svg:
    """The fillings of a drawing: toned, hatched, dotted; and the leaves of a text block."""
    hatch = path("M", -1, 1, "l", 2, -2, "M", 0, 6, "l", 6, -6, "M", 5, 7, "l", 2, -2)
    return tag(
        "defs",
        _pattern(f"{prefix}-o", 8, TONE, "d-tone", Svg("")),
        _pattern(f"{prefix}-f", 6, PAPER, "d-paper", _lines(hatch, 1.3)),
        _pattern(f"{prefix}-a", 5, PAPER, "d-paper", _dots(((1.2, 1.2), (3.7, 3.7)))),
        _pattern(f"{prefix}-l", 5, TONE, "d-tone", _lines(path("M", 2.5, 0, "V", 5), 0.6)),
    )


def _pattern(name: str, size: float, ground: str, style: str, marks: Svg) -> Svg:
    sheet = tag("rect", width=size, height=size, class_=style, fill=ground)
    return tag(
        "pattern", sheet, marks, id=name, width=size, height=size, patternUnits="userSpaceOnUse"
    )


def _lines(data: str, width: float) -> Svg:
    return tag("path", d=data, class_="d-line", stroke=INK, stroke_width=width, fill="none")


def _dots(places: Sequence[tuple[float, float]]) -> Svg:
    return joined(tag("circle", cx=x, cy=y, r=0.75, class_="d-ink", fill=INK) for x, y in places)


def fill(prefix: str, since: Since) -> str:
    """The filling of a thing, by since when it has been there."""
    return f"url(#{prefix}-{FILLS[since]})"


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
    prefix: str, top: float, kinds: Sequence[Since], lines: Sequence[Line]
) -> tuple[Svg, float]:
    """The key under a drawing, and where it ends: fillings, then lines, one in a row."""
    rows: list[Svg] = []
    for n, since in enumerate(kinds):
        rows.append(_swatch(prefix, top + n * KEY_ROW, since))
    below = top + len(kinds) * KEY_ROW
    for n, line in enumerate(lines):
        rows.append(_sample(below + n * KEY_ROW, line))
    return tag("g", *rows, class_="d-key"), below + len(lines) * KEY_ROW


def _swatch(prefix: str, y: float, since: Since) -> Svg:
    box = tag(
        "rect", x=8, y=y, width=44, height=14, fill=fill(prefix, since), class_="d-edge", stroke=INK
    )
    return joined((box, _named(y, FILL_NAMES[since])))


def _sample(y: float, line: Line) -> Svg:
    data = path("M", 8, y + 7, "h", 44)
    drawn = tag("g", bond_line(data, line), stroke=INK, stroke_width=BOND, class_="d-edge")
    return joined((drawn, _named(y, line.name)))


def _named(y: float, name: str) -> Svg:
    return tag("text", name, x=62, y=y + 12, class_="d-text", fill=INK)
