"""The summary of a case and the totals of an archive: areas, hours and materials together."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from fractions import Fraction
from itertools import chain

from casebook.compute.areas import NO_AREAS, Areas, areas, summed
from casebook.compute.clocks import added
from casebook.compute.figures import Figure
from casebook.compute.figures import total as add
from casebook.compute.geometry import roundness
from casebook.compute.hours import NO_PLAN, NO_SHEET, Plan, Row, Timesheet, folded, timesheet
from casebook.compute.measures import length, spine_width
from casebook.compute.places import Ground, ground
from casebook.compute.steps import NameOperation
from casebook.compute.uses import Role, Use, uses
from casebook.model.archive import Case, Kind


@dataclass(frozen=True, slots=True)
class Spine:
    """A declared spine: its arc in µm (None without a width) and its rise over its width."""

    part: str
    arc: Figure | None
    roundness: Fraction | None


@dataclass(frozen=True, slots=True)
class Summary:
    """What is computed about one case."""

    spines: tuple[Spine, ...] = ()
    areas: Areas = NO_AREAS
    hours: Timesheet = NO_SHEET
    uses: tuple[Use, ...] = ()


@dataclass(frozen=True, slots=True)
class MaterialTotal:
    """How often a material, as written, was used for something, and in how many cases."""

    material: str
    role: Role
    uses: int
    cases: int


@dataclass(frozen=True, slots=True)
class Totals:
    """Sums over cases. Sittings have numbers within their case only, so there are none here."""

    cases: int = 0
    areas: Areas = NO_AREAS
    hours: Timesheet = NO_SHEET
    materials: tuple[MaterialTotal, ...] = ()


NO_TOTALS = Totals()
"""The totals of no case."""


@dataclass(frozen=True, slots=True)
class ArchiveTotals:
    """The lab's own cases, and apart from them those that were read in a publication."""

    own: Totals = NO_TOTALS
    published: Totals = NO_TOTALS


def summarise(case: Case, name_operation: NameOperation) -> Summary:
    """Everything computed about a case, whole, redacted or half-written; it never raises.

    `name_operation` turns an operation as written into its id in the vocabulary, and gives back
    an unknown word as it is.
    """
    return Summary(
        spines=_spines(ground(case)),
        areas=areas(case, name_operation),
        hours=timesheet(case, name_operation),
        uses=uses(case),
    )


def total(cases: Iterable[tuple[Case, Summary]]) -> ArchiveTotals:
    """The totals of an archive, in whichever order its cases come."""
    every = sorted(cases, key=lambda pair: pair[0].id)
    published = [pair for pair in every if pair[0].record is Kind.FROM_PUBLICATION]
    own = [pair for pair in every if pair[0].record is not Kind.FROM_PUBLICATION]
    return ArchiveTotals(_totals(own), _totals(published))


def _spines(below: Ground) -> tuple[Spine, ...]:
    return tuple(
        Spine(place, spine_width(below, place), _roundness(below, place))
        for place in below.parts
        if below.is_spine(place)
    )


def _roundness(below: Ground, place: str) -> Fraction | None:
    part = below.part(place)
    width, rise = length(part.width), length(part.rise)
    if width is None or rise is None:
        return None
    return roundness(Fraction(width.value), Fraction(rise.value))


def _totals(pairs: list[tuple[Case, Summary]]) -> Totals:
    summaries = [summary for _, summary in pairs]
    return Totals(
        cases=len(pairs),
        areas=summed(chain.from_iterable(one.areas.layers for one in summaries)),
        hours=_hours([one.hours for one in summaries]),
        materials=_materials(summaries),
    )


def _hours(sheets: list[Timesheet]) -> Timesheet:
    def rows(table: Callable[[Timesheet], tuple[Row, ...]]) -> tuple[Row, ...]:
        return folded(chain.from_iterable(table(sheet) for sheet in sheets))

    return Timesheet(
        whole=added(sheet.whole for sheet in sheets),
        by_operation=rows(lambda sheet: sheet.by_operation),
        by_part=rows(lambda sheet: sheet.by_part),
        by_hand=rows(lambda sheet: sheet.by_hand),
        plan=_plan([sheet.plan for sheet in sheets]),
        steps=sum(sheet.steps for sheet in sheets),
        in_words=sum(sheet.in_words for sheet in sheets),
    )


def _plan(plans: list[Plan]) -> Plan:
    """Planned against actual over the cases that have both, so that like is set against like."""
    both = [(plan.planned, plan.actual) for plan in plans if plan.planned and plan.actual]
    if not both:
        return NO_PLAN
    return Plan(planned=add(one for one, _ in both), bench=add(one for _, one in both))


def _materials(summaries: list[Summary]) -> tuple[MaterialTotal, ...]:
    used = Counter((use.material, use.role) for one in summaries for use in one.uses)
    cases = Counter(key for one in summaries for key in {(u.material, u.role) for u in one.uses})
    return tuple(MaterialTotal(*key, used[key], cases[key]) for key in sorted(used))
