"""Sections as shapes: outlines with their fillings, lines of bonds, each layer once, the key."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from casebook.compute.structure import Since
from casebook.drawings import badges, patterns, words
from casebook.drawings.badges import Badge, End
from casebook.drawings.lanes import Band, Lane
from casebook.drawings.patterns import INK
from casebook.drawings.pile import scattered
from casebook.drawings.section import Section, Seen
from casebook.drawings.stack import Runs, Sight
from casebook.drawings.svg import Svg, tag

EDGE, THIN_EDGE = 0.9, 0.4
"""The width of outlines, in units."""

LOOSE = "5 3"
"""The outline of what is not fixed."""


def broken(band: Band) -> Iterator[Band]:
    """A strip in three pieces with gaps between: what lies in places only."""
    step = (band.end - band.start) / 3
    for n in range(3):
        start = band.start + n * step
        yield Band(start + 0.1 * step, start + 0.9 * step, band.low, band.high)


def strip(seen: Seen, lane: Lane, band: Band) -> str:
    """The outline of a thing: a strip, in pieces where it lies in places only."""
    return "".join(lane.band(one) for one in pieces(seen, band))


def pieces(seen: Seen, band: Band) -> tuple[Band, ...]:
    """The strips that a thing is drawn as: one, or three where it lies in places only."""
    return tuple(broken(band)) if scattered(seen.sight) else (band,)


def filled(section: Section, sight: Sight, data: str) -> Svg:
    """An outline with the filling of its kind; that of what is not fixed is broken."""
    fixed = sight.seat.below or sight.name in section.told.roots
    return tag(
        "path",
        d=data,
        fill=patterns.filling(sight.thing, section.facts).fill(section.prefix),
        stroke_width=str(EDGE if section.thin == 1 else THIN_EDGE),
        stroke_dasharray=None if fixed else LOOSE,
    )


@dataclass(frozen=True, slots=True)
class Outline:
    """A thing on one part as it is drawn: its outline, and the line of what holds it."""

    seen: Seen
    data: str
    line: patterns.Line | None = None
    line_data: str = ""


def outline(section: Section, seen: Seen, lane: Lane, band: Band, data: str) -> Outline:
    """A thing with the line of what holds it, in the gap under it."""
    line = None if section.crowded else line_of(section, seen)
    low = band.low - seen.slot.gap / 2
    at = "".join(lane.line(one.start, one.end, low) for one in pieces(seen, band))
    return Outline(seen, data, line, at if line else "")


def line_of(section: Section, seen: Seen) -> patterns.Line | None:
    """The line of the first bond that has one."""
    return next((one for bond in seen.bonds if (one := section.inks.line(bond))), None)


def layers(section: Section, outlines: Iterable[Outline]) -> Iterator[Svg]:
    """Every layer once, its zones together as far as they are seen in the same states."""
    groups: dict[tuple[str, Runs, bool], list[Outline]] = {}
    for one in outlines:
        sight = one.seen.sight
        groups.setdefault((sight.layer, sight.runs, bool(sight.seat.below)), []).append(one)
    for group in groups.values():
        first = group[0].seen.sight
        lines: dict[patterns.Line, str] = {}
        for one in group:
            if one.line:
                lines[one.line] = lines.get(one.line, "") + one.line_data
        bonds = (patterns.bond_line(data, line) for line, data in lines.items())
        whole = filled(section, first, "".join(one.data for one in group))
        yield shown(section, first, *bonds, whole)


def fillings(section: Section) -> tuple[patterns.Filling, ...]:
    """The fillings of everything that is seen at some time, in the order of the key."""
    order = list(Since)
    found = {patterns.filling(one.thing, section.facts) for one in section.told.sights}
    return tuple(sorted(found, key=lambda one: (order.index(one.since), one.cloth)))


def key(section: Section, top: float) -> tuple[Svg, float]:
    """The key of a drawing under it, and where it ends."""
    every = [] if section.crowded else list(section.everything())
    found = [line_of(section, seen) for seen in every]
    lines = {line.name: line for line in found if line}
    return patterns.key(section.prefix, top, fillings(section), list(lines.values()))


def bands(section: Section, *inside: Svg) -> Svg:
    """The group that parts and layers stand in; what it says of lines is meant for bonds."""
    width = patterns.BOND * max(section.thin, 0.2)
    return tag("g", *inside, class_="d-bands", stroke=INK, stroke_width=width, fill="none")


def shown(section: Section, sight: Sight, *inside: Svg) -> Svg:
    """What is drawn of a thing, seen in its own states."""
    return badges.seen(sight.runs, section.told.last, *inside, layer=sight.layer)


def badge(section: Section, sight: Sight, end: End, runs: Runs | None = None) -> Badge:
    """The number of a thing with its label, in all of its states or in some of them."""
    number, label = section.number[sight.layer], words.label(sight, section.facts)
    return Badge(number, sight.runs if runs is None else runs, end, label)
