"""One case as a page and as a card: everything an audience may see of it, in reading order."""

from __future__ import annotations

from dataclasses import dataclass

from casebook.compute.likeness import Like
from casebook.compute.links import Kin
from casebook.compute.summary import Summary
from casebook.model.archive import Archive, Case, Kind, Standing, Status
from casebook.model.base import items, known
from casebook.model.object import Object
from casebook.model.outcome import Reversibility
from casebook.output.absence import absent, gap_lines
from casebook.output.case_contexts import CasePage
from casebook.output.charts import material_charts, time_charts
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
from casebook.output.contexts import Card, Link, Run
from casebook.output.kin_view import kin_lines
from casebook.output.like_view import like_lines
from casebook.output.marks_view import marked_views
from casebook.output.object_view import binding_facts, date_text, object_facts, part_facts
from casebook.output.pictures import Pictures, before_and_after, case_pictures, elsewhere
from casebook.output.plan_view import option_views, plan_lines, question_views
from casebook.output.prose import plain, prose
from casebook.output.structure_view import NO_STRUCTURE, StructureView, layered
from casebook.output.tables import hours_tables, linings, materials
from casebook.output.treatment_view import claim_line, episode_views, work_line
from casebook.output.wording import Wording, say, sentence, text_of

_STANDINGS = {
    Standing.UNDECIDED: "Not yet decided",
    Standing.DECLINED: "The treatment was declined",
    Standing.PROPOSED: "A treatment is proposed",
    Standing.IN_TREATMENT: "In treatment",
    Standing.STOPPED: "The treatment was stopped",
}
_SOURCES = {
    Kind.FROM_NOTES: "An old treatment, written up from what survives of its notes.",
    Kind.FROM_PUBLICATION: "A treatment by others, written up from a publication.",
}


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
    like: tuple[Like, ...] = ()


def title_of(case: Case) -> str:
    """What a reader calls the case; its id where it has no title."""
    return known(case.title) or case.id


def kicker_of(case: Case, wording: Wording) -> str:
    """Kind and date of the object in one line."""
    thing = known(case.object) or Object()
    kind = known(thing.kind)
    made = [date_text(one.is_) for one in items(thing.made)]
    words = [wording.lexicon.label("kinds", kind) if kind else "", *made[:1]]
    line = ", ".join(word for word in words if word)
    return line[:1].upper() + line[1:]


def status_of(case: Case) -> str:
    """The case's standing in a sentence; "" for a finished one."""
    status = known(case.status) or Status()
    standing = _STANDINGS.get(status.is_, "") if status.is_ else ""
    because = f"{standing}: {status.because}" if known(status.because) else standing
    left = f"It was left: {status.left}" if known(status.left) else ""
    told = (text_of(sentence((Run(one.removeprefix(": ")),))) for one in (because, left) if one)
    return " ".join(told)


def describe(case: Case) -> str:
    """The case in a sentence or two, for previews and search results."""
    thing = known(case.object) or Object()
    text = known(thing.about) or plain(case.story)
    return text if len(text) <= 200 else text[:200].rsplit(" ", 1)[0] + "…"


def card(case: Case, archive: Archive, pictures: Pictures, wording: Wording) -> Card:
    """The case in a list."""
    views = case_pictures(case, archive, pictures, wording.root)
    before, after = before_and_after(case, views)
    structures = [one.structure for one in items(case.bindings) if known(one.structure)][:1]
    words = [wording.lexicon.label("structures", str(one)) for one in structures]
    return Card(
        href=f"{wording.root}cases/{case.id}/index.html",
        title=title_of(case),
        about=", ".join(one for one in (kicker_of(case, wording), *words) if one),
        work=work_line(case, wording),
        status=status_of(case),
        before=before,
        after=after,
    )


def case_page(
    case: Case, archive: Archive, pictures: Pictures, wording: Wording, told: Told
) -> CasePage:
    """The context of a case's page."""
    views = case_pictures(case, archive, pictures, wording.root)
    before, after = before_and_after(case, views)
    thing, summary = archive.settings, told.summary
    undoing = known(case.reversibility) or Reversibility()
    return CasePage(
        title=title_of(case),
        kicker=kicker_of(case, wording),
        number=case.id,
        status=status_of(case),
        record_note=_record_note(case),
        before=before,
        after=after,
        story=prose(case.story),
        facts=object_facts(case, wording, thing.units),
        parts=part_facts(case, wording, thing.units),
        binding=binding_facts(case, wording),
        links=kin_lines(told.kin, wording),
        hazards=hazard_facts(case, wording),
        history=history_lines(case, wording),
        examination=examination_lines(case),
        findings=tuple(finding_view(one, wording, views) for one in items(case.findings)),
        marks=marked_views(case, archive, views, wording),
        found_layers=found_lines(case, wording),
        tests=test_lines(case, wording),
        plan=plan_lines(case),
        options=option_views(case, wording),
        questions=question_views(case, wording),
        left_alone=left_alone_lines(case, wording),
        episodes=episode_views(case, summary.hours, wording, views, told.withheld),
        matches=match_views(case, archive, wording),
        structure_withheld=told.withheld,
        structure=told.structure,
        apart=_apart(case, told),
        linings=None if told.withheld else linings(summary.areas, wording),
        hours=hours_tables(summary.hours, wording),
        materials=None if told.withheld else materials(summary.uses, wording),
        by_time=time_charts(case, summary),
        by_area=() if told.withheld else material_charts(case, summary, wording.lexicon),
        reversibility=prose(say(undoing.says)),
        claims=tuple(claim_line(one, wording) for one in items(undoing.claims)),
        like=like_lines(told.like, wording),
        care=prose(say(case.care)),
        follow_up=follow_lines(case, wording),
        photos=tuple(views.values()),
        elsewhere=(*absent(case, "photos"), *elsewhere(case, archive)),
        gaps=(*gap_lines(case), *told.gaps),
        diagnostics=told.faults,
        cite=_cite(case, archive),
        licence=say(archive.settings.licence),
        terms=told.ways,
    )


def _record_note(case: Case) -> str:
    note = _SOURCES.get(case.record, "") if case.record else ""
    written = known(case.written)
    sources = ", ".join(items(written.from_)) if written else ""
    return f"{note} Sources: {sources}." if note and sources else note


def _apart(case: Case, told: Told) -> Link | None:
    """The page for the box, where there is one."""
    there = layered(case) and not told.withheld
    return Link("How to take this apart", "apart/index.html") if there else None


def _cite(case: Case, archive: Archive) -> str:
    written = known(case.written)
    by = ", ".join(_name(case, one) for one in items(written.by)) if written else ""
    date = known(written.date) if written else None
    year = date.show() if date else ""
    words = [by, title_of(case), f"treatment case {case.id}", say(archive.settings.name), year]
    cited = ", ".join(word for word in words if word) + "."
    sources = items(written.from_) if written and case.record is Kind.FROM_PUBLICATION else ()
    return f"{cited} Written up from: {'; '.join(sources)}." if sources else cited


def _name(case: Case, initials: str) -> str:
    person = case.people.get(initials)
    return (known(person.name) if person else None) or initials
