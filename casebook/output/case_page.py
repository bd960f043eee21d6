"""One case as a page: everything an audience may see of it, in reading order."""

from __future__ import annotations

from dataclasses import dataclass

from casebook.compute.likeness import Like
from casebook.compute.links import Kin
from casebook.compute.summary import Summary
from casebook.drawings.words import Drawing
from casebook.model.archive import Archive, Case, Standing, Status
from casebook.model.base import items, known
from casebook.model.object import Object
from casebook.model.outcome import Reversibility
from casebook.output.absence import absent, care_text, gap_lines, undoing_text
from casebook.output.case_contexts import CasePage
from casebook.output.charts import material_charts, time_charts
from casebook.output.citing import citation, cited
from casebook.output.colour_view import match_views
from casebook.output.condition_view import (
    examination_lines,
    finding_view,
    follow_lines,
    found_lines,
    hazard_facts,
    history_lines,
    left_alone_lines,
    test_lines,
)
from casebook.output.contexts import Card, Link
from casebook.output.cover_view import cover_facts
from casebook.output.downloads import files_of
from casebook.output.kin_view import kin_lines
from casebook.output.like_view import like_views
from casebook.output.marks_view import marked_views, views_of
from casebook.output.object_view import binding_facts, object_facts, part_facts
from casebook.output.pictures import (
    Pictures,
    case_pictures,
    elsewhere,
    pair_of,
)
from casebook.output.plan_view import option_views, plan_lines, question_views
from casebook.output.prose import plain, prose
from casebook.output.structure_view import NO_STRUCTURE, StructureView, layered
from casebook.output.tables import hours_tables, linings, materials
from casebook.output.title_view import byline, dangers, record_note
from casebook.output.treatment_view import claim_line, episode_views
from casebook.output.wording import Wording, capital_text, say, sentence_text

_STANDINGS = {
    Standing.UNDECIDED: "Not yet decided",
    Standing.DECLINED: "The treatment was declined",
    Standing.PROPOSED: "A treatment is proposed",
    Standing.IN_TREATMENT: "In treatment",
    Standing.STOPPED: "The treatment was stopped",
}

FEW_STATES = 2
"""A drawing with no more states than this is folded where another leads."""


@dataclass(frozen=True, slots=True)
class Told:
    """What is known of a case beside its record: its summary, gaps, faults, kin, and ways in."""

    summary: Summary
    kin: tuple[Kin, ...] = ()
    gaps: tuple[str, ...] = ()
    faults: tuple[str, ...] = ()
    ways: tuple[Link, ...] = ()
    withheld: bool = False
    structure: StructureView = NO_STRUCTURE
    like: tuple[tuple[Like, Card], ...] = ()
    """The like cases, each with its card."""
    address: str = ""
    """Where the page stands on the web; "" if nobody said."""


def title_of(case: Case) -> str:
    """What a reader calls the case; its id where it has no title."""
    return known(case.title) or case.id


def kicker_of(case: Case, wording: Wording) -> str:
    """Kind and date of the object in one line."""
    thing = known(case.object) or Object()
    kind = known(thing.kind)
    made = [wording.say(one.is_) for one in items(thing.made)]
    words = [wording.lexicon.label("kinds", kind) if kind else "", *made[:1]]
    return capital_text(", ".join(word for word in words if word))


def about_line(case: Case, wording: Wording) -> str:
    """Kind, date and structure in one line, for lists; what the kind says is not repeated."""
    structures = [one.structure for one in items(case.bindings) if known(one.structure)][:1]
    words = [wording.lexicon.label("structures", str(one)) for one in structures]
    kicker = kicker_of(case, wording)
    told = kicker.partition(",")[0].casefold()
    return ", ".join(one for one in (kicker, *(w for w in words if w.casefold() != told)) if one)


def status_of(case: Case) -> str:
    """The case's standing in a sentence; "" for a finished one."""
    because, left = _why_so(case)
    told = ": ".join(one for one in (standing_of(case), because) if one)
    return " ".join(sentence_text(one) for one in (told, left) if one)


def standing_of(case: Case) -> str:
    """How far a case has come, in a few words; "" for a finished one."""
    status = known(case.status) or Status()
    return _STANDINGS.get(status.is_, "") if status.is_ else ""


def _why_so(case: Case) -> tuple[str, str]:
    """Why a case stands so, and how the object was left; "" where nothing is said."""
    status = known(case.status) or Status()
    return known(status.because) or "", f"It was left: {status.left}" if known(status.left) else ""


def describe(case: Case) -> str:
    """The case in a sentence or two, for previews and search results."""
    thing = known(case.object) or Object()
    text = known(thing.about) or plain(case.story)
    return text if len(text) <= 200 else text[:200].rsplit(" ", 1)[0] + "…"


def case_page(
    case: Case, archive: Archive, pictures: Pictures, wording: Wording, told: Told
) -> CasePage:
    """The context of a case's page."""
    undoing = known(case.reversibility) or Reversibility()
    views = views_of(case, archive, case_pictures(case, archive, pictures, wording.root), wording)
    return CasePage(
        title=title_of(case),
        kicker=kicker_of(case, wording),
        number=case.id,
        standing=standing_of(case),
        status=" ".join(sentence_text(one) for one in _why_so(case) if one),
        byline=byline(case, wording),
        dangers=dangers(case, wording),
        record_note=record_note(case),
        cover=cover_facts(case, archive, wording, status_of(case)),
        pair=pair_of(case, views.pictures),
        story=prose(case.story),
        facts=object_facts(case, wording),
        parts=part_facts(case, wording),
        binding=binding_facts(case, wording),
        links=kin_lines(told.kin, wording),
        hazards=hazard_facts(case, wording),
        history=history_lines(case, wording),
        examination=examination_lines(case, wording),
        findings=tuple(finding_view(one, wording, views) for one in items(case.findings)),
        marks=marked_views(case, archive, views, wording),
        found_layers=found_lines(case, wording),
        tests=test_lines(case, wording),
        plan=plan_lines(case, wording),
        options=option_views(case, wording),
        questions=question_views(case, wording),
        left_alone=left_alone_lines(case, wording),
        episodes=episode_views(case, told.summary.hours, wording, views, told.withheld),
        matches=match_views(case, archive, wording),
        structure_withheld=told.withheld,
        structure=told.structure,
        drawings=_leading(told.structure),
        other_drawings=_others(told.structure),
        apart=_apart(case, told),
        linings=None if told.withheld else linings(told.summary.areas, wording),
        hours=hours_tables(told.summary.hours, wording),
        materials=None if told.withheld else materials(told.summary.uses, wording),
        by_time=time_charts(case, told.summary, wording.notation),
        by_area=() if told.withheld else material_charts(case, told.summary, wording),
        reversibility=prose(undoing_text(case)),
        claims=tuple(claim_line(one, wording) for one in items(undoing.claims)),
        like=like_views(told.like, wording),
        care=prose(care_text(case)),
        follow_up=follow_lines(case, wording),
        photos=tuple(views.pictures.values()),
        elsewhere=(*absent(case, "photos"), *elsewhere(case, archive)),
        gaps=(*gap_lines(case), *told.gaps),
        diagnostics=told.faults,
        cite=cited(citation(case, archive, told.address)),
        files=files_of(case),
        licence=say(archive.settings.licence),
        terms=told.ways,
    )


def _leading(structure: StructureView) -> tuple[Drawing, ...]:
    """The drawings on which something happens; where there is no such, all of them."""
    found = tuple(one for one in structure.drawings if len(one.states) > FEW_STATES)
    return found or structure.drawings


def _others(structure: StructureView) -> tuple[Drawing, ...]:
    leading = _leading(structure)
    return tuple(one for one in structure.drawings if one not in leading)


def _apart(case: Case, told: Told) -> Link | None:
    """The page for the box, where there is one."""
    there = layered(case) and not told.withheld
    return Link("How to take this apart", "apart/index.html") if there else None
