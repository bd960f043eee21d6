"""Hours by sitting on a calendar: blocks as high as the hours, drying as a dotted strip between."""

from __future__ import annotations

import datetime
import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from casebook.compute.figures import ZERO, qualified
from casebook.drawings.badges import SIZE
from casebook.drawings.patterns import DOTTED, INK, PAPER, TONED, definitions
from casebook.drawings.section import WIDTH
from casebook.drawings.sittings import Rest, Sitting
from casebook.drawings.svg import Frame, Svg, joined, path, tag
from casebook.drawings.words import Drawing, Row
from casebook.values.notation import PLAIN, Notation
from casebook.values.showing import count_of, hours

LEFT, RIGHT = 44.0, WIDTH - 10
HIGH = 130.0
"""The height of the longest sitting, in units."""
STRIP = 10.0
COLUMN = 16.0
LONGEST = 60
"""Nights of one drying that are drawn at most."""
TOP = 14.0


def timeline(every: Sequence[Sitting], prefix: str, notation: Notation = PLAIN) -> Drawing | None:
    """Sittings on a calendar; None where no day of any is known, or neither work nor drying."""
    dated = [one for one in every if one.first and one.last]
    most = max((one.bench.minutes.value for one in dated), default=0)
    if not most and not any(one.rests for one in dated):
        return None
    axis = _axis(dated)
    floor = TOP + 2 * SIZE + 26 + (HIGH if most else 0)
    drawn = (
        *_grid(most, floor),
        *(_strip(axis, rest, floor, prefix) for one in dated for rest in one.rests),
        *_blocks(axis, dated, most, floor, prefix),
        *_labels(axis, floor, notation),
        *_key(floor + 54, prefix),
    )
    said = tuple(Row(n, "", _said(one, notation)) for n, one in enumerate(every, 1))
    frame = Frame(
        prefix, WIDTH, floor + 102, "Sittings and drying", "; ".join(map(str, said)), "chart"
    )
    lost = len(every) - len(dated)
    note = f"Not drawn, since no day is known: {lost}." if lost else ""
    return Drawing(
        "Sittings and drying",
        frame.around(definitions(prefix, (TONED.letter, DOTTED.letter)), *drawn),
        said,
        note,
    )


@dataclass(frozen=True, slots=True)
class Axis:
    """The calendar: first and last day, in units from left to right."""

    first: int
    last: int

    def at(self, day: float) -> float:
        """Where a day begins."""
        return LEFT + (day - self.first) * (RIGHT - LEFT) / (self.last + 1 - self.first)


def _axis(dated: Sequence[Sitting]) -> Axis:
    first = min(one.first for one in dated if one.first)
    ends = [one.last for one in dated if one.last]
    rests = [rest.day + min(rest.nights, LONGEST) for one in dated for rest in one.rests]
    return Axis(first, max((*ends, *rests)))


def _height(one: Sitting, most: int) -> float:
    return max(HIGH * one.bench.minutes.value / most if most else 0.0, 5.0)


def _grid(most: int, floor: float) -> Iterator[Svg]:
    """Lines at whole hours, not more than five of them."""
    step = max(math.ceil(most / 60 / 4), 1)
    for hour in range(0, most // 60 + 1, step):
        y = floor - HIGH * hour * 60 / most if most else floor
        yield tag(
            "path",
            d=path("M", LEFT - 4, y, "H", RIGHT),
            class_="d-grid",
            stroke=INK,
            stroke_width="0.4",
        )
        yield tag("text", f"{hour} h", x=LEFT - 8, y=y + 5, text_anchor="end", fill=INK)


def _strip(axis: Axis, rest: Rest, floor: float, prefix: str) -> Svg:
    """Drying: from the middle of its day, night by night, under the strip of the sittings."""
    x, end = axis.at(rest.day + 0.5), axis.at(rest.day + 0.5 + min(rest.nights, LONGEST))
    y = floor + STRIP
    data = path("M", x, y, "h", max(end - x, 3), "v", STRIP, "H", x, "Z")
    return tag("path", d=data, fill=DOTTED.fill(prefix), class_="d-edge", stroke=INK)


def _blocks(
    axis: Axis, dated: Sequence[Sitting], most: int, floor: float, prefix: str
) -> Iterator[Svg]:
    """For each sitting its days on the calendar, and on their middle a column of its hours."""
    spots = [(axis.at(one.first or 0), axis.at((one.last or 0) + 1)) for one in dated]
    middles = [(a + b) / 2 for a, b in spots]
    places = apart(middles, 2 * SIZE + 2, LEFT + SIZE, RIGHT - SIZE)
    for one, (start, end), x in zip(dated, spots, places, strict=True):
        high, middle = _height(one, most), (start + end) / 2
        column = path("M", middle - COLUMN / 2, floor, "v", -high, "h", COLUMN, "v", high, "Z")
        span = path("M", start, floor, "h", max(end - start, 3), "v", STRIP, "H", start, "Z")
        loose = None if one.bench.minutes.value else "3 2"
        look = {"fill": TONED.fill(prefix), "class_": "d-edge", "stroke": INK}
        yield tag("path", d=span, **look)
        yield tag("path", d=column, stroke_dasharray=loose, **look)
        yield _number(one.number, x, TOP + SIZE, (middle, floor - high))


def apart(wanted: Sequence[float], pitch: float, low: float, high: float) -> tuple[float, ...]:
    """Places as near to those wanted as can be, in their order, none nearer than a pitch.

    Where there is no room for all, they are spread evenly.
    """
    order = sorted(range(len(wanted)), key=lambda n: (wanted[n], n))
    found = [0.0] * len(wanted)
    step = min(pitch, (high - low) / max(len(wanted) - 1, 1))
    at = low - step
    for n in order:
        at = max(at + step, wanted[n])
        found[n] = at
    at = high + step
    for n in reversed(order):
        at = min(at - step, found[n])
        found[n] = at
    return tuple(found)


def _number(number: str, x: float, y: float, end: tuple[float, float]) -> Svg:
    return joined(
        (
            tag(
                "path",
                d=path("M", x, y, "L", *end),
                class_="d-lead",
                stroke=INK,
                stroke_width="0.7",
            ),
            tag("circle", cx=x, cy=y, r=SIZE, class_="d-ring", fill=PAPER, stroke=INK),
            tag("text", number, x=x, y=y + 5.5, text_anchor="middle", fill=INK),
        )
    )


def _labels(axis: Axis, floor: float, notation: Notation) -> Iterable[Svg]:
    """The first and the last day under the calendar."""
    y = floor + 2 * STRIP + 18
    first, last = (datetime.date.fromordinal(day) for day in (axis.first, axis.last))
    return (
        tag("text", notation.day(first), x=LEFT, y=y, fill=INK),
        tag("text", notation.day(last), x=RIGHT, y=y, text_anchor="end", fill=INK),
    )


def _key(y: float, prefix: str) -> Iterable[Svg]:
    rows = ((TONED, "at the bench, columns by hours"), (DOTTED, "drying, night by night"))
    for n, (kind, name) in enumerate(rows):
        top = y + n * 23
        yield tag(
            "rect",
            x=8,
            y=top,
            width=44,
            height=14,
            fill=kind.fill(prefix),
            class_="d-edge",
            stroke=INK,
        )
        yield tag("text", name, x=62, y=top + 12, fill=INK)


UNTIMED = "time at the bench not recorded"


def _said(one: Sitting, notation: Notation) -> str:
    """A sitting in words: its days, its hours at the bench, its drying."""
    minutes = one.bench.minutes
    bench = f"{qualified(minutes, hours(minutes.value))} at the bench" if minutes.value else UNTIMED
    head = f"sitting {one.number}" + (f", {one.title}" if one.title else "")
    drying = _drying(one)
    return f"{head} ({_span(one, notation)}): {bench}" + (f"; {drying}" if drying else "")


def _span(one: Sitting, notation: Notation) -> str:
    if not one.first or not one.last:
        return "day not recorded"
    first, last = (datetime.date.fromordinal(day) for day in (one.first, one.last))
    return notation.day(first) if first == last else notation.days(first, last)


def _drying(one: Sitting) -> str:
    nights, minutes = one.drying.nights, one.drying.minutes
    counted = count_of(nights.value, "night") if nights != ZERO else ""
    timed = hours(minutes.value) if minutes.value else ""
    said = " and ".join(text for text in (counted, timed) if text)
    return f"dried {said}" if said else ""
