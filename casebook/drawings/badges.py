"""Numbers beside a drawing with lines to what they mean: in two columns, none over another."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass

from casebook.drawings.patterns import INK, PAPER
from casebook.drawings.stack import Runs, meet
from casebook.drawings.svg import Point, Svg, joined, path, tag

PITCH = 25.0
"""From one number to the next, in units."""
SIZE = 12.0
"""Radius of a number's ring."""


End = Callable[[float], Point]
"""Where the line of a number ends; it is given how far down its column the number is, 0 to 1."""


@dataclass(frozen=True, slots=True)
class Badge:
    """A number, the states in which it is seen, where its line ends, and its label."""

    number: int
    runs: Runs
    end: End
    label: str


def rows(badges: Sequence[Badge]) -> tuple[int, ...]:
    """The row of each number, counted from the top; numbers seen together never share one.

    They come in the order given, the topmost first, so that no line crosses another.
    """
    found: list[int] = []
    for badge in badges:
        above = (r for r, o in zip(found, badges, strict=False) if meet(badge.runs, o.runs))
        found.append(max(above, default=-1) + 1)
    return tuple(found)


@dataclass(frozen=True, slots=True)
class Column:
    """Where a column of numbers stands; labels stand at the right of the right one only."""

    x: float
    top: float
    labelled: bool = True

    def draw(self, badges: Sequence[Badge], last: int) -> tuple[Svg, float]:
        """The numbers with their lines, and where the column ends."""
        placed = rows(badges)
        count = max(placed, default=-1) + 1
        drawn = (
            seen(one.runs, last, self._badge(one, row, row / max(count - 1, 1)))
            for one, row in zip(badges, placed, strict=True)
        )
        return joined(drawn), self.top + count * PITCH

    def _badge(self, badge: Badge, row: int, down: float) -> Svg:
        """A line from the middle of the ring; ring and dot are markers, which keeps it small."""
        y = self.top + row * PITCH
        line = tag("path", d=path("M", self.x, y, "L", *badge.end(down)))
        label = tag("tspan", badge.label, x=self.x + 18, class_="d-label")
        inside = (str(badge.number), *((label,) if self.labelled else ()))
        return joined((line, tag("text", *inside, x=self.x, y=y + 5, stroke="none")))


def markers(prefix: str) -> Svg:
    """The ring around a number and the dot at the end of its line."""
    ring = tag("circle", cx=SIZE + 1, cy=SIZE + 1, r=SIZE, class_="d-ring", fill=PAPER, stroke=INK)
    dot = tag("circle", cx=3, cy=3, r=2.6, class_="d-dot", fill=INK, stroke=PAPER)
    return joined((_marker(f"{prefix}-n", SIZE + 1, ring), _marker(f"{prefix}-e", 3, dot)))


def _marker(name: str, half: float, inside: Svg) -> Svg:
    return tag(
        "marker",
        inside,
        id=name,
        refX=half,
        refY=half,
        markerWidth=2 * half,
        markerHeight=2 * half,
        markerUnits="userSpaceOnUse",
    )


def marked(prefix: str, numbers: Svg) -> Svg:
    """All numbers of a drawing, with what they share; a light copy behind keeps lines clear."""
    inner = tag("g", numbers, id=f"{prefix}-m")
    halo = tag(
        "use", href=f"#{prefix}-m", class_="d-halo", stroke=PAPER, stroke_width="3.4", fill="none"
    )
    lines = tag(
        "g",
        inner,
        class_="d-marks",
        stroke=INK,
        stroke_width="0.9",
        fill=INK,
        marker_start=f"url(#{prefix}-n)",
        marker_end=f"url(#{prefix}-e)",
    )
    return tag("g", halo, lines, text_anchor="middle", font_size="15")


def seen(runs: Runs, last: int, *inside: Svg, layer: str | None = None) -> Svg:
    """A group that is seen in some states; without scripts it is seen if it is so in the last."""
    return tag(
        "g",
        *inside,
        data_layer=layer,
        data_in=None if runs == ((0, last),) else written(runs),
        display=None if runs and runs[-1][1] == last else "none",
    )


def written(runs: Runs) -> str:
    """Runs of states as text: "0-3 7" is seen in the states 0 to 3 and in 7."""
    return " ".join(str(a) if a == b else f"{a}-{b}" for a, b in runs)


def numbers(layers: Iterable[str]) -> Mapping[str, int]:
    """Numbers for layers in their order, from 1."""
    return {name: n for n, name in enumerate(dict.fromkeys(layers), 1)}
