"""The summaries as small tables: linings, hours, materials, each with what its figures lack."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from casebook.compute.areas import Areas
from casebook.compute.clocks import Clock
from casebook.compute.figures import Figure, qualified
from casebook.compute.hours import Row, Timesheet
from casebook.compute.uses import Role, Use
from casebook.output.contexts import Fact, Line, Run, Table
from casebook.output.wording import Wording
from casebook.values.notation import PLAIN, Notation
from casebook.values.showing import count_of, hours

UM2_OF_MM2 = 10**6
NOT_TIMED = "not recorded"
"""What a clock says on which nothing is recorded."""


def area_text(figure: Figure, notation: Notation = PLAIN) -> str:
    """An area in µm² for readers, such as "at least 294 cm²"; of nothing known no figure."""
    if not figure.value and figure.at_least:
        return "not known"
    return qualified(figure, notation.area(Fraction(figure.value, UM2_OF_MM2)))


def clock_text(clock: Clock) -> str:
    """A time for readers: "at least 3 h 40 min", "2 nights"; "" where the clock never ran."""
    nights = clock.nights.value
    counted = count_of(nights, "night") if nights else ""
    minutes = clock.minutes
    if not minutes.value and (counted or not minutes.at_least):
        return counted
    timed = qualified(minutes, hours(minutes.value)) if minutes.value else NOT_TIMED
    return f"{timed} and {counted}" if counted else timed


def _text(text: str) -> Line:
    return (Run(text),)


def linings(areas: Areas, wording: Wording) -> Table | None:
    """Every layer laid with an adhesive: on what, of what, how much bonded and overhanging."""
    if not areas.layers:
        return None

    def area(figure: Figure) -> str:
        return area_text(figure, wording.notation)

    rows = tuple(
        (
            _text((one.layer or "no name").replace("-", " ")),
            (wording.term("materials", one.material),) if one.material else _text("not recorded"),
            _text(_on(one.parts, wording)),
            _text(area(one.tally.bonded)),
            _text(area(one.tally.overhang) if one.tally.overhang.value else "–"),
        )
        for one in areas.layers
    )
    lining = areas.lining
    total = ("All linings", "", "", area(lining.bonded), area(lining.overhang))
    notes = sorted({*lining.bonded.reasons, *lining.overhang.reasons})
    heads = ("Layer", "Material", "On", "Bonded", "Overhang")
    return Table("Layers laid", heads, rows, total if lining.bonded.value else (), tuple(notes))


def _on(places: Iterable[str], wording: Wording) -> str:
    """Places in words, each once: "spine, corner of board 1"."""
    return ", ".join(dict.fromkeys(wording.place(one).removeprefix("the ") for one in places))


def hours_tables(sheet: Timesheet, wording: Wording) -> tuple[Table, ...]:
    """Hours by operation and by hand, and planned against actual."""
    if not sheet.steps and sheet.plan.planned is None and sheet.plan.spent is None:
        return ()
    heads = ("At the bench", "Waiting", "Drying")
    by_operation = _by("By operation", "Operation", sheet.by_operation, wording, "operations")
    by_hand = _by("By hand", "Hands", sheet.by_hand, wording, "")
    whole = sheet.whole
    cells = tuple(clock_text(one) or "–" for one in (whole.bench, whole.waiting, whole.drying))
    notes = (*whole.bench.minutes.reasons, *whole.drying.minutes.reasons)
    total = Table("In all", heads, (tuple(_text(cell) for cell in cells),), (), notes)
    tables = [total, *_plan(sheet), by_operation, by_hand]
    return tuple(one for one in tables if one and one.rows)


def _by(caption: str, head: str, rows: Iterable[Row], wording: Wording, kind: str) -> Table | None:
    """The hours under each heading; what stands under none comes last."""
    cells = [
        (
            tuple(wording.term(kind, key) if kind else Run(key) for key in row.keys)
            or _text("not recorded"),
            _text(clock_text(row.hours.bench) or "–"),
            _text(clock_text(row.hours.drying) or "–"),
        )
        for row in sorted(rows, key=lambda row: not row.keys)
    ]
    named = tuple((_joined(names), bench, drying) for names, bench, drying in cells)
    return Table(caption, (head, "At the bench", "Drying"), named) if len(named) > 1 else None


def _joined(names: Line) -> Line:
    found: list[Run] = []
    for n, run in enumerate(names):
        found.extend((Run(" with "), run) if n else (run,))
    return tuple(found)


def _plan(sheet: Timesheet) -> tuple[Table, ...]:
    plan = sheet.plan
    whole = "noted for the whole"
    figures = (
        ("Estimated", plan.planned),
        (f"Estimated, {whole}", None if plan.estimated == plan.planned else plan.estimated),
        ("Spent", plan.actual),
        (f"Spent, {whole}", None if plan.by_lump else plan.spent),
    )
    rows = tuple(
        (_text(label), _text(qualified(one, hours(one.value)))) for label, one in figures if one
    )
    notes = (f"What is {whole} covers: {plan.covers}",) if plan.covers else ()
    return (Table("Planned and actual", ("Figure", "Bench time"), rows, (), notes),) if rows else ()


_ROLES = {Role.LAYER: "laid or put in", Role.COLOUR: "colour for toning"}


def materials(used: Iterable[Use], wording: Wording) -> Table | None:
    """What went in: each material once, in which roles, on which parts, with maker and lot."""
    groups: dict[str, list[Use]] = {}
    for use in used:
        groups.setdefault(use.material, []).append(use)
    rows = tuple(
        (
            (wording.term("materials", name),) if uses[0].named else _text(name),
            _text(", ".join(dict.fromkeys(_ROLES.get(use.role, use.role.value) for use in uses))),
            _text(_on((part for use in uses for part in use.parts), wording)),
            _text(", ".join(dict.fromkeys(_label(use) for use in uses if _label(use)))),
        )
        for name, uses in groups.items()
    )
    heads = ("Material", "Used as", "On", "Product, maker, lot")
    shown = len(heads) if any(_label(use) for many in groups.values() for use in many) else -1
    cut = tuple(row[:shown] for row in rows)
    return Table("Materials used", heads[:shown], cut) if cut else None


def _label(use: Use) -> str:
    lot = f"lot {use.lot}" if use.lot else ""
    return ", ".join(one for one in (use.product, use.maker, lot) if one)


def total_facts(
    cases: int, areas: Areas, sheet: Timesheet, notation: Notation = PLAIN
) -> tuple[Fact, ...]:
    """The totals of an archive for its home page."""
    figures = [
        ("Cases", str(cases)),
        ("Bench time", clock_text(sheet.whole.bench)),
        ("Drying", clock_text(sheet.whole.drying)),
        ("Linings laid", area_text(areas.lining.bonded, notation) if areas.layers else ""),
    ]
    return tuple(Fact(label, (_text(text),)) for label, text in figures if text)
