"""What a case's page tells in sentences, passage by passage, for the search to quote."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from casebook.model.archive import Case
from casebook.model.base import items, known
from casebook.model.object import Object
from casebook.model.outcome import Reversibility
from casebook.output.absence import care_text, undoing_text
from casebook.output.case_contexts import FindingView, OptionView, StepView
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
from casebook.output.contexts import Fact
from casebook.output.marks_view import NO_VIEWS
from casebook.output.object_view import binding_facts, object_facts, part_facts
from casebook.output.plan_view import option_views, plan_lines, question_views
from casebook.output.prose import paragraphs
from casebook.output.steps_view import step_views
from casebook.output.treatment_view import claim_line
from casebook.output.wording import Wording, say, sentence, sentence_text, text_of

_ELSEWHERE = frozenset({"About", "Kind", "Place"})
"""Facts that stand among the traits, or first among the passages."""


def facts_of(case: Case, wording: Wording) -> tuple[str, ...]:
    """What the object is beyond its traits, its bindings and parts: "Extent: 416 ruled leaves"."""
    found = (
        *object_facts(case, wording),
        *binding_facts(case, wording),
        *part_facts(case, wording),
    )
    return tuple(_fact(one) for one in found if one.label not in _ELSEWHERE)


def passages_of(case: Case, wording: Wording) -> tuple[str, ...]:
    """The prose of a case and its sentences, in reading order: what it is about first."""
    thing = known(case.object) or Object()
    found = (say(known(thing.about)), *paragraphs(case.story), *_condition(case, wording))
    return tuple(one for one in (*found, *_treatment(case, wording), *_after(case, wording)) if one)


def _fact(fact: Fact) -> str:
    """A fact in a line; several lines of it as sentences."""
    lines = fact.lines if len(fact.lines) == 1 else map(sentence, fact.lines)
    return f"{fact.label}: {' '.join(map(text_of, lines))}"


def _condition(case: Case, wording: Wording) -> Iterator[str]:
    yield from map(text_of, history_lines(case, wording))
    yield from map(text_of, examination_lines(case, wording))
    yield from (_finding(finding_view(one, wording, NO_VIEWS)) for one in items(case.findings))
    yield from map(text_of, found_lines(case, wording))
    yield from (_fact(one) for one in hazard_facts(case, wording))
    yield from map(text_of, test_lines(case, wording))


def _finding(view: FindingView) -> str:
    """A finding in a line: "The front joint: broken. Leather gone. Board held by the twine."."""
    head = ": ".join(text for text in (text_of(view.where), text_of(view.damage)) if text)
    return " ".join(sentence_text(one) for one in (head, view.seen, view.means) if one)


def _treatment(case: Case, wording: Wording) -> Iterator[str]:
    yield from map(text_of, plan_lines(case, wording))
    yield from (_option(one) for one in option_views(case, wording))
    for question in question_views(case, wording):
        yield question.asks
        yield from (_option(one) for one in question.options)
    yield from map(text_of, left_alone_lines(case, wording))
    yield from _steps(step_views(items(case.steps), wording, NO_VIEWS))
    for episode in items(case.episodes):
        yield from paragraphs(episode.story)
        yield from _steps(step_views(items(episode.steps), wording, NO_VIEWS))


def _option(view: OptionView) -> str:
    """A course in a line: "New calf reback: strong; stiff. Would take 28 h, with calf."."""
    weighed = "; ".join(one for one in (view.merits, view.faults) if one)
    head = ": ".join(one for one in (view.name, weighed) if one)
    return f"{sentence_text(head)} {view.details}".strip()


def _steps(views: Iterable[StepView]) -> Iterator[str]:
    """Each step with its remarks, then what was tried, found and done otherwise in it."""
    for view in views:
        yield " ".join((text_of(view.sentence), *view.remarks)).strip()
        yield from (one.text for one in view.tried)
        yield from (_finding(one) for one in view.finds)
        yield from map(text_of, (*view.ways, *view.differs))
        yield from _steps(view.steps)


def _after(case: Case, wording: Wording) -> Iterator[str]:
    undoing = known(case.reversibility) or Reversibility()
    yield from paragraphs(undoing_text(case))
    yield from (text_of(claim_line(one, wording)) for one in items(undoing.claims))
    yield from paragraphs(care_text(case))
    yield from map(text_of, follow_lines(case, wording))
    yield from (say(known(photo.caption)) for photo in items(case.photos))
