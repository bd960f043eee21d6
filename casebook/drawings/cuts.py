"""The way back on a drawing: numbered cuts, each a heavy broken line where two things part."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from casebook.drawings.badges import PITCH, SIZE
from casebook.drawings.lanes import Lane
from casebook.drawings.patterns import INK, KEY_ROW, PAPER
from casebook.drawings.section import Seen, Shape
from casebook.drawings.svg import Point, Svg, joined, path, tag
from casebook.drawings.words import plain, sentence

Ends = tuple[Point, Point]


@dataclass(frozen=True, slots=True)
class Cut:
    """One opening of the way back: its number, the things it parts, and what is said of it.

    The same thing twice: it is split in its own thickness. Two zones or walls of one layer: it is
    slit at the joint, or at its folds.
    """

    number: int
    lower: str
    upper: str
    label: str = ""


@dataclass(frozen=True, slots=True)
class Mark:
    """Where a cut runs on a drawing, and its two ends, one of which its number points at."""

    number: int
    data: str
    ends: Ends
    part: str

    @property
    def left(self) -> Point:
        """The end that is further left."""
        return min(self.ends)

    @property
    def right(self) -> Point:
        """The end that is further right."""
        return max(self.ends)


def marks(shape: Shape, cuts: Sequence[Cut]) -> tuple[Mark, ...]:
    """The places of cuts on a drawing; a cut between things that are not on it has none."""
    return tuple(mark for cut in cuts for mark in _of(shape, cut))


def cut_words(cuts: Sequence[Cut]) -> tuple[str, ...]:
    """The cuts in words, in their order."""
    return tuple(_said(cut) for cut in cuts)


def _said(cut: Cut) -> str:
    if cut.lower == cut.upper:
        where = f"through {plain(cut.lower)}, in its own thickness"
    else:
        where = f"between {plain(cut.lower)} and {plain(cut.upper)}"
    return f"Cut {cut.number}: {sentence(': '.join(one for one in (where, cut.label) if one))}"


def _of(shape: Shape, cut: Cut) -> Iterator[Mark]:
    last = shape.section.told.last
    there = [seen for seen in shape.section.everything() if seen.sight.seen_in(last)]
    for seen in there:
        found = _place(shape, cut, seen, there)
        if found:
            yield Mark(cut.number, *found, seen.part)


def _place(shape: Shape, cut: Cut, seen: Seen, there: Sequence[Seen]) -> tuple[str, Ends] | None:
    """Where a cut runs at one thing: through it, under it, at its joint or its folds."""
    lane, band = shape.lane(seen.part), shape.band(seen)
    ends = {cut.lower, cut.upper}
    other = next((one for one in there if one.sight.name in ends and one is not seen), None)
    if ends == {seen.sight.name}:
        return _along(lane, band.start, band.end, band.middle)
    if seen.sight.name not in ends:
        return None
    if other and other.sight.layer == seen.sight.layer:
        return _across(shape, seen, other)
    if cut.upper == seen.sight.name and cut.lower in seen.sight.seat.below:
        return _along(lane, band.start, band.end, band.low - seen.slot.gap / 2)
    return None


def _along(lane: Lane, start: float, end: float, height: float) -> tuple[str, Ends]:
    """A cut that runs between two things, from end to end."""
    wide = 0.04 * (end - start)
    ends = (lane.point(start + wide, height), lane.point(end - wide, height))
    return lane.line(start, end, height), ends


def _across(shape: Shape, seen: Seen, other: Seen) -> tuple[str, Ends] | None:
    """A cut through a layer: at both folds of a tube, or at the joint beside the spine."""
    if seen.sight.thing.wall:
        return _at_folds(shape, seen, other) if seen.sight.thing.wall == "outer" else None
    if seen.part == other.part or seen.part == shape.section.told.roots[0]:
        return None
    lane, band = shape.lane(seen.part), shape.band(seen)
    low, high = lane.point(0, band.low - 5), lane.point(0, band.high + 5)
    return path("M", *low, "L", *high), (high, high)


def _at_folds(shape: Shape, outer: Seen, inner: Seen) -> tuple[str, Ends]:
    lane, over, under = shape.lane(outer.part), shape.band(outer), shape.band(inner)
    lines = []
    for t in (over.start, over.end):
        low, high = lane.point(t, under.low - 3), lane.point(t, over.high + 3)
        lines.append(path("M", *low, "L", *high))
    ends = (lane.point(over.start, over.middle), lane.point(over.end, over.middle))
    return "".join(lines), ends


def cut_lines(prefix: str, found: Sequence[Mark]) -> Svg:
    """All cuts as heavy lines with a broken light core, which no adhesive has."""
    lines = joined(tag("path", d=mark.data) for mark in found)
    return _heavy(f"{prefix}-cuts", lines) if found else Svg("")


def _heavy(name: str, lines: Svg) -> Svg:
    again: dict[str, str] = {"href": f"#{name}", "stroke": PAPER, "class_": "d-halo"}
    halo = tag("use", stroke_width="6.4", **again)
    line = tag("g", tag("g", lines, id=name), class_="d-cut", stroke=INK, stroke_width="4.2")
    core = tag("use", stroke_width="1.4", stroke_dasharray="7 4", **again)
    return tag("g", halo, line, core, fill="none")


def cut_key(prefix: str, found: Sequence[Mark], top: float) -> tuple[Svg, float]:
    """The row of the key that says what a cut looks like, and where it ends."""
    if not found:
        return Svg(""), top
    sample = tag("path", d=path("M", 8, top + 7, "h", 44))
    name = tag("text", "cut of the way back", x=62, y=top + 12, fill=INK)
    return tag("g", _heavy(f"{prefix}-cut", sample), name, class_="d-key"), top + KEY_ROW


@dataclass(frozen=True, slots=True)
class Numbers:
    """Where the numbers of cuts stand: a column at the left or the right, from its top down."""

    x: float
    top: float
    at_left: bool

    def draw(self, found: Sequence[Mark]) -> tuple[Svg, float]:
        """The numbers, dark so that they are no layer's, one under another; where they end.

        A cut that runs in several places has one number with a line to each.
        """
        ends: dict[int, list[Point]] = {}
        for mark in found:
            end = mark.left if self.at_left else mark.right
            ends.setdefault(mark.number, []).append(end)
        order = sorted(ends, key=lambda number: (min(y for _, y in ends[number]), number))
        every = [self._number(row, number, ends[number]) for row, number in enumerate(order)]
        group = tag("g", *every, text_anchor="middle", font_size="15", font_weight="bold")
        return (group if every else Svg("")), self.top + len(every) * PITCH

    def _number(self, row: int, number: int, ends: Sequence[Point]) -> Svg:
        y = self.top + row * PITCH
        lines = "".join(path("M", self.x, y, "L", *end) for end in ends)
        return joined(
            (
                tag("path", d=lines, class_="d-halo", stroke=PAPER, stroke_width="3.4"),
                tag("path", d=lines, class_="d-lead", stroke=INK, stroke_width="1.4"),
                tag("circle", cx=self.x, cy=y, r=SIZE, class_="d-ink", fill=INK),
                tag("text", str(number), x=self.x, y=y + 5.3, class_="d-cut-no", fill=PAPER),
            )
        )
