"""How a spine is laid out: its curve true to width and rise, its boards, how far things reach."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from casebook.compute.structure import Thing
from casebook.drawings import section
from casebook.drawings.facts import Facts
from casebook.drawings.lanes import Arc, Band, Board, Lane
from casebook.drawings.section import Section, Seen, extent
from casebook.drawings.stack import Story

MIDDLE = 196.0
CHORD = 216.0
"""The width across the back in units, where the pile on it leaves room for it."""
SIDE = 160.0
"""From the middle to the columns of numbers, in units."""
TOP = 24.0
JOINT = 9.0
BOARD = 10.0
"""The thickness of a board nobody measured, in units."""
REACH = 60.0
"""How far a layer runs down a board where nobody measured it, in units."""
OVERHANG = 1.12
"""How far a layer that is wider than the spine hangs free beyond it, at most."""
FURTHEST = 150.0
BESIDE = 52.0
"""The room for what lies on a board, in units."""
UNKNOWN_WIDTH = 50_000
"""The width of a spine nobody measured, in µm, so that something can be drawn."""


@dataclass(frozen=True, slots=True)
class SpineShape:
    """The lanes of one spine: its arc, and the outside of its boards by name."""

    section: Section
    part: str
    arc: Arc
    boards: Mapping[str, Board]
    per_um: float

    def lane(self, part: str) -> Lane:
        """The lane of a part."""
        return self.boards.get(part, self.arc)

    @property
    def bottom(self) -> float:
        """Where text block and boards are broken off."""
        reach = max((one.reach for one in self.boards.values()), default=REACH)
        return self.arc.floor + JOINT + reach + 26

    def thick(self, name: str) -> float:
        """The thickness of a board; one that nobody measured is drawn all the same."""
        true = (root(self.section.told, name).thickness_um or 0) * self.per_um
        return min(true or BOARD, self.arc.chord / 5)

    def band(self, seen: Seen) -> Band:
        """Where a thing runs on its part."""
        if seen.part in self.boards:
            return self._down(seen)
        start, end = extent(seen, self.arc.length, self.per_um, OVERHANG)
        if any(self._goes_on(seen, board) for board in self.boards):
            start, end = -1.0, 1.0
        return Band(start, end, seen.slot.low, seen.slot.high)

    def _goes_on(self, seen: Seen, board: str) -> bool:
        """Whether a layer that covers the spine goes on over a board."""
        others = self.section.by_part.get(board, ())
        same = (one for one in others if one.sight.layer == seen.sight.layer)
        return bool(seen.sight.thing.zone) and any(one.sight.meets(seen.sight) for one in same)

    def _down(self, seen: Seen) -> Band:
        """How far down the board a zone reaches; as far as others where nobody measured it."""
        reach = self.boards[seen.part].reach
        run = _run(seen, self.per_um) or REACH
        down = min(run / reach, 1.0)
        return Band(0, max(down, 0.08), seen.slot.low, seen.slot.high)


def shaped(told: Story, facts: Facts, prefix: str) -> SpineShape:
    """Lay out the section; where the pile needs room at its sides, the spine is drawn narrower."""
    part, boards = told.roots[0], told.roots[1:]
    measured = root(told, part).width_um
    width = measured or UNKNOWN_WIDTH
    rise = min(facts.rises.get(part, 0), width // 2)
    chord = CHORD
    on, room = section.on_parts(told), dict.fromkeys(boards, BESIDE)
    for _ in range(2):
        laid = section.section(prefix, told, facts, on, chord / width, room)
        turn = Arc(0, 0, width, rise).half
        chord = min(CHORD, 2 * (SIDE - laid.top(part) * math.sin(turn)))
    laid = replace(laid, notes=_notes(measured, facts.rises.get(part)))
    chord = 2 * round(chord / 2)
    high = rise * chord / width
    arc = Arc(MIDDLE, round(TOP + laid.top(part) + high), chord, high)
    reach = _reach(laid, boards, chord / width)
    sides = {name: Board(arc, side, JOINT, reach) for name, side in _sides(boards)}
    return SpineShape(laid, part, arc, sides, chord / width)


def root(told: Story, part: str) -> Thing:
    """The part itself; one that no state has is as good as unmeasured."""
    return next((one.thing for one in told.sights if one.name == part), Thing(part, part))


def _notes(width: int | None, rise: int | None) -> tuple[str, ...]:
    """What of the shape nobody measured."""
    wide = "" if width else "The width of the spine is not recorded."
    high = "" if rise is not None else "The rise of the spine is not recorded: it is drawn flat."
    return tuple(one for one in (wide, high) if one)


def _sides(boards: Sequence[str]) -> Iterator[tuple[str, int]]:
    """The first board at the left, the second at the right; a lone second one stays right."""
    for n, name in enumerate(boards[:2]):
        yield name, 1 if n == 1 or is_right(name) else -1


def is_right(board: str) -> bool:
    """Whether a board is by its name the second of two."""
    own = set(board.rpartition("/")[2].casefold().replace("-", " ").split())
    return bool(own & {"2", "back", "lower", "right"})


def _reach(laid: Section, boards: Sequence[str], per_um: float) -> float:
    """The longest run down a board, in units."""
    runs = (_run(seen, per_um) for board in boards for seen in laid.by_part.get(board, ()))
    return round(min(max((REACH, *runs)), FURTHEST))


def _run(seen: Seen, per_um: float) -> float:
    """How far a zone runs down its board, in units; 0 where nobody measured it."""
    thing = seen.sight.thing
    return (thing.width_um or 0) * per_um - JOINT if thing.zone and thing.width_um else 0.0
