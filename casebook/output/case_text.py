"""A case as plain text: the page's words written anew, for any program, and for thirty years."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Iterator
from itertools import chain

from casebook.drawings.words import Drawing
from casebook.output.case_contexts import (
    CasePage,
    EpisodeView,
    FindingView,
    OptionView,
    StepView,
    TrialView,
)
from casebook.output.contexts import Fact, PictureView, Table
from casebook.output.prose import paragraphs_in
from casebook.output.way_back_view import AnswerView, OpeningView
from casebook.output.wording import text_of

WIDTH = 78
"""Signs in a line: a terminal and a sheet of paper hold as many."""

INDENT = "  "


def case_text(page: CasePage) -> str:
    """A case's page as text in paragraphs."""
    sections = (
        ("THE OBJECT", (*_facts(page.facts), *_facts(page.binding), *_facts(page.parts))),
        ("CASES THAT BELONG WITH IT", map(text_of, page.links)),
        ("CONDITION", _condition(page)),
        ("WHAT WAS PROPOSED AND AGREED", _proposal(page)),
        ("THE TREATMENT", chain.from_iterable(map(_sitting, page.episodes))),
        ("THE STRUCTURE", _structure(page)),
        ("THE WAY BACK", _way_back(page)),
        ("MATERIALS", _table(page.materials)),
        ("TIME", [one for table in page.hours for one in _table(table)]),
        ("HOW IT HOLDS", map(text_of, page.follow_up)),
        ("CARE", paragraphs_in(page.care)),
        ("PHOTOGRAPHS", (*map(_photo, page.photos), *map(text_of, page.elsewhere))),
        ("WHAT THIS RECORD DOES NOT SAY", page.gaps),
        ("CITING THIS CASE", (page.cite, page.licence)),
    )
    blocks = list(_head(page))
    for title, texts in sections:
        told = [text for text in texts if text]
        blocks.extend((f"\n{title}\n{'-' * len(title)}", *map(_wrapped, told)) if told else ())
    return "\n\n".join(blocks) + "\n"


def _wrapped(text: str) -> str:
    """A paragraph in lines; what begins with blanks or a number keeps its place under it."""
    bare = text.lstrip()
    margin = text[: len(text) - len(bare)]
    number = bare.partition(" ")[0] if bare[:1].isdigit() and ". " in bare[:5] else ""
    under = margin + " " * (len(number) + 1 if number else 0)
    return textwrap.fill(
        bare,
        WIDTH,
        initial_indent=margin,
        subsequent_indent=under,
        break_long_words=False,
        break_on_hyphens=False,
    )


def _head(page: CasePage) -> Iterator[str]:
    yield f"{page.title}\n{'=' * len(page.title)}"
    kicker = f"{page.kicker}. " if page.kicker else ""
    first = (
        f"{kicker}Case {page.number}.",
        f"{page.standing}." if page.standing else "",
        page.status,
        page.byline,
        page.record_note,
    )
    yield _wrapped(" ".join(one for one in first if one))
    if page.dangers:
        yield _wrapped(f"To be handled with care: {page.dangers}.")
    yield from map(_wrapped, paragraphs_in(page.story))


def _facts(facts: Iterable[Fact]) -> Iterator[str]:
    for fact in facts:
        lines = tuple(map(text_of, fact.lines))
        joint = " " if all(one.endswith(".") for one in lines) else "; "
        yield f"{fact.label}: {joint.join(lines)}"


def _condition(page: CasePage) -> Iterator[str]:
    yield from (f"Hazard: {text}" for text in _facts(page.hazards))
    yield from map(text_of, page.examination)
    yield from map(_finding, page.findings)
    yield from map(text_of, page.history)
    yield from (f"Layer found: {text}" for text in map(text_of, page.found_layers))
    yield from (f"Test: {text}" for text in map(text_of, page.tests))


def _finding(view: FindingView) -> str:
    where, damage = text_of(view.where), text_of(view.damage)
    head = f"{where} ({damage})" if where and damage else where or damage
    means = f"taken to mean: {view.means}" if view.means else ""
    marks = ", ".join(one.measure for one in view.marks if one.measure)
    told = "; ".join(one for one in (view.seen, means, view.details, marks) if one)
    return f"{': '.join(one for one in (head, told) if one)}."


def _proposal(page: CasePage) -> Iterator[str]:
    yield from map(text_of, page.plan)
    yield from map(_option, page.options)
    for question in page.questions:
        yield question.asks
        yield from map(_option, question.options)
        yield from map(text_of, question.decided)
    yield from (f"Left alone: {text}" for text in map(text_of, page.left_alone))


def _option(view: OptionView) -> str:
    told = [
        f"{view.name} ({view.outcome})" if view.outcome else view.name,
        f"For: {view.merits}" if view.merits else "",
        f"Against: {view.faults}" if view.faults else "",
        view.details,
    ]
    return f"Course: {'. '.join(one.rstrip('.') for one in told if one)}."


def _sitting(view: EpisodeView) -> Iterator[str]:
    yield view.title.upper()
    yield "; ".join(one for one in (view.when, view.hands, view.time) if one)
    yield from paragraphs_in(view.story)
    yield view.order
    yield from _steps(view.steps, "")
    yield view.words_only


def _steps(steps: Iterable[StepView], margin: str) -> Iterator[str]:
    for step in steps:
        number = f"{step.number}. " if step.number else ""
        details = f"({step.details})" if step.details else ""
        told = (text_of(step.sentence), *step.remarks, details)
        yield f"{margin}{number}{' '.join(one for one in told if one)}"
        inside = margin + INDENT
        yield from (f"{inside}{text}" for text in map(text_of, step.ways))
        yield from _steps(step.steps, inside)
        yield from (f"{inside}{text}" for text in map(text_of, step.differs))
        yield from (f"{inside}{_tried(one)}" for one in step.tried)
        yield from (f"{inside}Found meanwhile: {_finding(one)}" for one in step.finds)


def _tried(view: TrialView) -> str:
    return f"Tried{' and given up' if view.given_up else ''}: {view.text}"


def _structure(page: CasePage) -> Iterator[str]:
    if page.structure_withheld:
        yield "The structure of this object is not shown in this copy of the archive."
    for drawing in page.structure.drawings:
        yield from _drawing(drawing)
    yield page.structure.note
    yield from _table(page.linings)


def _drawing(drawing: Drawing) -> Iterator[str]:
    yield f"{drawing.title}. What is there now, from the original outwards:"
    yield from (f"{INDENT}{row.number}. {row.text}" for row in drawing.alternative)
    if drawing.gone:
        yield "What was there before:"
        yield from (f"{INDENT}{row.number}. {row.text}" for row in drawing.gone)
    if len(drawing.states) > 1:
        yield "State by state:"
        yield from (f"{INDENT}{one.title}: {' '.join(one.lines)}" for one in drawing.states)


def _way_back(page: CasePage) -> Iterator[str]:
    yield from paragraphs_in(page.reversibility)
    yield from map(text_of, page.claims)
    answers = (*page.structure.bare, *page.structure.free)
    if answers:
        yield (
            "What follows is worked out by fixed rules from what the record says. It knows nothing "
            "that nobody wrote down: test first, and stop where the object says otherwise. Safety "
            "data sheets, local codes and licensed practice come first."
        )
    for one in answers:
        yield from _answer(one)


def _answer(view: AnswerView) -> Iterator[str]:
    yield f"{view.title}:"
    for stretch in view.stretches:
        yield " ".join(stretch.why)
        if stretch.openings:
            yield from map(_opening, stretch.openings)
        else:
            yield f"{INDENT}As told above under {text_of(stretch.numbers)}."
    yield from (f"{INDENT}{text}" for text in (*view.stops, *view.stays))


def _opening(view: OpeningView) -> str:
    told = (*view.do, *view.off, *view.stays, *view.mind, *view.cannot)
    return f"{INDENT}{view.number}. {' '.join(told)}"


def _table(table: Table | None) -> Iterator[str]:
    """A table row by row, each cell behind its head."""
    if table is None:
        return
    yield f"{table.caption}:"
    rows = [tuple(map(text_of, row)) for row in table.rows]
    for row in (*rows, *((table.total,) if table.total else ())):
        first, *others = zip(table.heads, row, strict=True)
        told = (f"{head.lower()} {cell}" for head, cell in others if cell not in ("", "–"))
        yield f"{INDENT}{first[1]}: {'; '.join(told)}"
    yield from table.notes


def _photo(view: PictureView) -> str:
    about = ", ".join(one for one in (view.stage, view.details) if one)
    return f"{view.caption or 'Photograph'}{f' ({about})' if about else ''}"
