"""The figures of a case where people would rather look than read, each with the same in words."""

from __future__ import annotations

from dataclasses import replace

from markupsafe import Markup

from casebook.compute.summary import Summary
from casebook.drawings.bars import by_material, planned_and_actual
from casebook.drawings.facts import facts_of
from casebook.drawings.sittings import sittings
from casebook.drawings.timeline import timeline
from casebook.drawings.words import Drawing
from casebook.model.archive import Case
from casebook.output.wording import Wording
from casebook.values.notation import Notation


def time_charts(case: Case, summary: Summary, notation: Notation) -> tuple[Drawing, ...]:
    """Sittings and drying on a calendar, and planned against actual."""
    sheet = summary.hours
    return _there(
        timeline(sittings(case, sheet), "timeline", notation),
        planned_and_actual(sheet.plan, "planned"),
    )


def material_charts(case: Case, summary: Summary, wording: Wording) -> tuple[Drawing, ...]:
    """Materials by the area that they cover; one bar alone says nothing."""
    facts = facts_of(case, wording.lexicon, wording.notation)
    drawing = by_material(summary.areas, facts, "areas")
    return _there(drawing if drawing and len(drawing.alternative) > 1 else None)


def _there(*drawings: Drawing | None) -> tuple[Drawing, ...]:
    """The drawings there are; every text in their SVG is escaped already."""
    return tuple(replace(one, svg=Markup(one.svg)) for one in drawings if one)
