"""The steps of a sitting for a case page: sentences, ways, runs over members, remarks, trials."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import dataclass, replace

from casebook.compute.runs import as_for
from casebook.model.base import Gap, Many, Maybe, Unknowing, items, key_of, known
from casebook.model.details import Hand, Outcome, Trial, Way
from casebook.model.marks import Swatch
from casebook.model.proposal import Choice
from casebook.model.treatment import Differs, Step
from casebook.output.case_contexts import StepView, TrialView
from casebook.output.clauses import scope_text
from casebook.output.condition_view import finding_view
from casebook.output.contexts import Line, PictureView, Run
from casebook.output.marks_view import Views
from casebook.output.sentences import step_sentence, verb_of
from casebook.output.times import duration_text, hands_line, time_line
from casebook.output.wording import (
    Wording,
    capital_text,
    how_known,
    key_words,
    listed,
    listed_text,
    say,
    sentence,
    sentence_text,
    text_of,
)
from casebook.values.dates import Date

_CHOICES = {
    Choice.CHOSEN: "; chosen",
    Choice.REJECTED: "; not taken",
    Choice.DEFERRED: "; put off",
}
_OUTCOMES = {Outcome.PARTLY: "It was only partly done", Outcome.GIVEN_UP: "It was given up"}


@dataclass(frozen=True, slots=True)
class Sitting:
    """What is said of a sitting as a whole, and so not again of its steps."""

    hands: Many[Hand] = ()
    date: Maybe[Date] = None
    ordered: bool = True


ANY_SITTING = Sitting()


def step_views(
    steps: Collection[Step], wording: Wording, views: Views, sitting: Sitting = ANY_SITTING
) -> tuple[StepView, ...]:
    """The steps as a page shows them, numbered from 1; in no known order they have no number."""
    return tuple(
        (_run if one.each or one.steps else _step)(
            one, number if sitting.ordered else 0, wording, views, sitting
        )
        for number, one in enumerate(steps, start=1)
    )


def words_only(steps: Collection[StepView]) -> str:
    """Which steps are recorded in words only, in a sentence; "" if none."""
    named = list(_words_only(steps))
    if not named:
        return ""
    if not all(named):
        return f"{len(named)} of these steps {'is' if len(named) == 1 else 'are'} in words only."
    return f"Recorded in words only: {listed_text(named)}."


def _words_only(steps: Collection[StepView]) -> Iterator[str]:
    for one in steps:
        name = f"step {one.number}" if one.number else ""
        if one.words_only:
            yield name
        for inner in _words_only(one.steps):
            yield f"{inner} within {name}" if inner and name else ""


def veiled(view: StepView) -> StepView:
    """A step of a case whose structure is not shown: that it is not told is said instead."""
    hidden = sentence((Run("what was done is not shown in this copy"),))
    inner = tuple(veiled(one) for one in view.steps)
    return replace(view, sentence=view.sentence or hidden, words_only=False, steps=inner)


def _step(step: Step, number: int, wording: Wording, views: Views, sitting: Sitting) -> StepView:
    return StepView(
        number=number,
        sentence=step_sentence(step, wording),
        details=_details(step, wording, sitting),
        remarks=_remarks(step),
        tried=tuple(_trial(one, wording) for one in items(step.tried)),
        finds=tuple(finding_view(one, wording, views) for one in items(step.finds)),
        photos=pictures_of(step.photo, views),
        words_only=not verb_of(step) and not known(step.do),
        layer=step.adds or "",
        ways=tuple(way_line(one, wording) for one in items(step.ways)),
    )


def _run(step: Step, number: int, wording: Wording, views: Views, sitting: Sitting) -> StepView:
    """Steps written once that were done on every member, and where a member was otherwise."""
    words = known(step.words)
    meanwhile = "meanwhile, " if known(step.beside) else ""
    members = wording.places(step.each)
    where = "on each of " if members else "on every member"
    head = (Run(f"{meanwhile}{f'{words}: ' if words else ''}{where}"), *members)
    return StepView(
        number=number,
        sentence=(*sentence(head)[:-1], Run(":")),
        details=_details(step, wording, sitting),
        remarks=_remarks(step),
        tried=tuple(_trial(one, wording) for one in items(step.tried)),
        finds=tuple(finding_view(one, wording, views) for one in items(step.finds)),
        photos=pictures_of(step.photo, views),
        words_only=False,
        layer="",
        steps=step_views(items(step.steps), wording, views, replace(sitting, ordered=True)),
        differs=tuple(differs_line(one, step, wording) for one in items(step.differs)),
    )


def differs_line(differs: Differs, run: Step, wording: Wording) -> Line:
    """Where a member was treated otherwise: "Volume 4 otherwise: step 2 was left out"."""
    members = wording.places(differs.in_)
    because = f", because {differs.because}" if known(differs.because) else ""
    head: Line = (*members, Run(f" otherwise{because}: "))
    found = as_for(differs, items(run.steps))
    number, other = found or (0, None)
    step = f"step {number}" if number else say(differs.step) or "a step"
    if known(differs.left_out):
        return sentence((*head, Run(f"{step} was left out")))
    if other is None:
        return sentence((*head, Run(f"{step} was not done in the same way")))
    told = step_sentence(other, wording)
    time = time_line(other, wording)
    timed = (Run(f"; {time}"),) if time else ()
    return sentence((*head, Run(f"{step}, "), *_inside(told), *timed))


def _inside(line: Line) -> Line:
    """A sentence that goes on inside another: no capital, no full stop."""
    first, *rest = line
    runs = [Run(first.text[:1].lower() + first.text[1:], first.href, first.gloss), *rest]
    return tuple(runs[:-1] if runs[-1].text == "." else runs)


def way_line(way: Way, wording: Wording) -> Line:
    """One of several ways: "12 of 40: kozo paper stuck with paste, because the ink holds"."""
    where = scope_text(way.scope, wording)
    tools = wording.terms("tools", way.tools) if way.tools else ()
    used: list[Line] = [
        _stuck(way, wording),
        (Run("with "), *wording.material(way.agent, "agent")) if way.agent else (),
        (Run("using "), *tools) if tools else (),
    ]
    told = [line for line in used if text_of(line)] or [(Run("as said above"),)]
    because = f", because {way.because}" if known(way.because) else ""
    result = f"; the result: {way.result}" if known(way.result) else ""
    head = f"{where}: " if where else ""
    return sentence((Run(head), *listed(told, ", "), Run(because + result)))


def _stuck(way: Way, wording: Wording) -> Line:
    """The material of one way, and what it was stuck with."""
    material = wording.material(way.material)
    glue = wording.adhesive(way.adhesive)
    joint = " stuck with " if material else "stuck with "
    return (*material, Run(joint), *glue) if glue else material


def pictures_of(names: Many[str], views: Views) -> tuple[PictureView, ...]:
    """The pictures that are named and may be shown."""
    return tuple(views.pictures[one] for one in items(names) if one in views.pictures)


def _remarks(step: Step) -> tuple[str, ...]:
    """Reasons, results and what a recipe filled in, each a short sentence.

    A result that follows the step itself needs no label.
    """
    why = _told("Why: {}", "why", step.because)
    texts = [
        why,
        _told("Result: {}" if why else "{}", "the result", step.result),
        f"It fell short of what was wished for: {step.falls_short}"
        if known(step.falls_short)
        else "",
        _OUTCOMES.get(step.outcome, "") if isinstance(step.outcome, Outcome) else "",
        _recipe(step),
        f"For the lab: {step.note}" if known(step.note) else "",
    ]
    return tuple(sentence_text(text) for text in texts if text)


def _details(step: Step, wording: Wording, sitting: Sitting) -> str:
    """Time; who and when, where the sitting as a whole does not say it; tools."""
    own = (
        hands_line(step.hands) if step.hands and step.hands != sitting.hands else "",
        wording.measured(step.date, "{}", "date {}") if step.date != sitting.date else "",
    )
    told = (time_line(step, wording), ", ".join(one for one in own if one), _tools(step, wording))
    return " · ".join(one for one in told if one)


def _tools(step: Step, wording: Wording) -> str:
    if isinstance(step.tools, Gap):
        none = step.tools.kind is Unknowing.NONE
        return "without tools" if none else f"with which tools {how_known(step.tools)}"
    return f"with {text_of(wording.terms('tools', step.tools))}" if step.tools else ""


def _told(form: str, name: str, value: object) -> str:
    """Something said, or in a sentence of its own how it is not known."""
    if isinstance(value, Gap):
        return f"{capital_text(name)}: {say(value)}"
    return form.format(value) if value else ""


def _recipe(step: Step) -> str:
    """What a recipe of the lab filled in: its steps leave that unsaid."""
    if not step.like:
        return ""
    like = f"After the lab's recipe “{say(step.like).replace('-', ' ')}”"
    assumed = sorted(_the(key_words(key_of(name))) for name in step.assumed)
    verb = "comes" if len(assumed) == 1 else "come"
    return f"{like}, from which {verb} {listed_text(assumed)}" if assumed else like


def _the(words: str) -> str:
    return words if words.startswith(("the ", "wh")) else f"the {words}"


def _trial(trial: Trial, wording: Wording) -> TrialView:
    materials = text_of(listed([wording.material(one) for one in items(trial.material)]))
    said = say(trial.what)
    what = f"{said} ({materials})" if said and materials and materials not in said else said
    what = what or materials
    measured = known(trial.colour) or Swatch()
    colour = f", which came out as {measured.colour}" if known(measured.colour) else ""
    result = f" – {say(trial.result)}" if trial.result else ""
    because = f" ({trial.because})" if known(trial.because) else ""
    chosen = _CHOICES.get(trial.outcome, "") if isinstance(trial.outcome, Choice) else ""
    spent = known(trial.time)
    time = f"; {duration_text(spent)} at the bench" if spent else ""
    text = f"{what}{colour}{result}{because}{chosen}{time}."
    return TrialView(text, trial.outcome is Choice.GIVEN_UP)
