"""Bars beside one another: materials by area, planned against actual; the figures stand as text."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from casebook.compute.areas import Areas
from casebook.compute.figures import Figure, qualified, total
from casebook.compute.hours import Plan
from casebook.drawings.facts import Facts
from casebook.drawings.patterns import DOTTED, INK, TONED, Filling, definitions
from casebook.drawings.section import WIDTH
from casebook.drawings.svg import Frame, Svg, joined, path, tag
from casebook.drawings.words import Drawing, Row, sentence
from casebook.values.notation import Notation
from casebook.values.showing import hours

ROW = 46.0
BAR = 15.0
EDGE = 8.0
MOST = 46
"""Signs of a name and its figure together; the list has all of the name."""
UM2_OF_MM2 = 10**6


@dataclass(frozen=True, slots=True)
class Bar:
    """One bar: its name, its length in any unit, its figure in words, and which filling.

    The fillings are those of the cross-sections. `open_` says that the figure is a lower bound:
    the bar has no straight end.
    """

    name: str
    value: int
    figure: str
    filling: Filling = TONED
    open_: bool = False


def by_material(areas: Areas, facts: Facts, prefix: str) -> Drawing | None:
    """The area of everything that was laid, as bonded, by material; None where nothing was laid."""
    groups: dict[str, list[Figure]] = {}
    for layer in areas.layers:
        name = facts.material(layer.material) if layer.material else "material not recorded"
        groups.setdefault(name, []).append(layer.tally.bonded)
    sums = {name: total(figures) for name, figures in groups.items()}
    order = sorted(sums, key=lambda name: (-sums[name].value, name))
    rows = [_area(name, sums[name], facts.notation) for name in order if sums[name].value]
    notes = dict.fromkeys(reason for name in order for reason in sums[name].reasons)
    return bars("Materials by area bonded", rows, prefix, "; ".join(notes)) if rows else None


def _area(name: str, area: Figure, notation: Notation) -> Bar:
    text = qualified(area, notation.area(Fraction(area.value, UM2_OF_MM2)))
    return Bar(name, area.value, text, DOTTED, area.at_least)


def planned_and_actual(plan: Plan, prefix: str) -> Drawing | None:
    """Bench time as planned and as it was; None unless both are known."""
    if plan.planned is None or plan.actual is None:
        return None
    pairs = (("planned", plan.planned, DOTTED), ("actual", plan.actual, TONED))
    rows = [
        Bar(name, figure.value, qualified(figure, hours(figure.value)), filling, figure.at_least)
        for name, figure, filling in pairs
    ]
    notes = (*plan.planned.reasons, *plan.actual.reasons)
    return bars("Planned and actual time at the bench", rows, prefix, "; ".join(notes))


def bars(title: str, rows: Sequence[Bar], prefix: str, note: str = "") -> Drawing:
    """Horizontal bars, each under its name and figure, in the order given."""
    most = max((row.value for row in rows), default=0)
    drawn = tag("g", *_drawn(rows, most, prefix), class_="d-bands", stroke=INK)
    said = tuple(Row(n, "", f"{row.name}: {row.figure}") for n, row in enumerate(rows, 1))
    frame = Frame(
        prefix, WIDTH, len(rows) * ROW + 6, title, "; ".join(row.text for row in said), "chart"
    )
    return Drawing(
        title,
        frame.around(definitions(prefix, {row.filling.letter for row in rows}), drawn),
        said,
        sentence(note),
    )


def _drawn(rows: Sequence[Bar], most: int, prefix: str) -> Iterable[Svg]:
    for n, row in enumerate(rows):
        y = n * ROW + 20
        name = _shortened(row.name, MOST - len(row.figure))
        yield joined(
            (
                tag("text", name, x=EDGE, y=y, stroke="none", fill=INK),
                tag(
                    "text",
                    row.figure,
                    x=WIDTH - EDGE,
                    y=y,
                    stroke="none",
                    fill=INK,
                    text_anchor="end",
                ),
                _bar(row, y + 6, most, prefix),
            )
        )


def _shortened(name: str, most: int) -> str:
    return name if len(name) <= most else f"{name[: most - 1].rstrip()}…"


def _bar(row: Bar, y: float, most: int, prefix: str) -> Svg:
    """A bar; that of a lower bound ends in a broken edge."""
    wide = (WIDTH - 2 * EDGE) * row.value / most if most else 0.0
    wide = max(wide, 2.0)
    end = ("l", 4, BAR / 4, "l", -4, BAR / 4, "l", 4, BAR / 4, "l", -4, BAR / 4)
    right: tuple[str | float, ...] = end if row.open_ and wide > 8 else ("v", BAR)
    data = path(
        "M", EDGE, y, "h", wide - (4 if row.open_ and wide > 8 else 0), *right, "H", EDGE, "Z"
    )
    return tag("path", d=data, fill=row.filling.fill(prefix))
