"""The plan for a case page: use and aims, courses for and against, questions, what was agreed."""

from __future__ import annotations

from casebook.model.archive import Case
from casebook.model.base import Gap, Record, items, known
from casebook.model.proposal import Change, Choice, Decision, Option, Proposal, Question
from casebook.output.case_contexts import OptionView, QuestionView
from casebook.output.contexts import Line, Run
from casebook.output.times import duration_text
from casebook.output.wording import (
    Wording,
    how_known,
    listed,
    listed_text,
    say,
    sentence,
    sentence_text,
    text_of,
)

_OUTCOMES = {
    Choice.CHOSEN: "chosen",
    Choice.REJECTED: "not chosen",
    Choice.DEFERRED: "put off",
    Choice.GIVEN_UP: "given up",
}


def labelled(record: Record, wording: Wording, *fields: tuple[str, str]) -> tuple[Line, ...]:
    """Fields of a record as sentences, each with its label: "Use: reading room."."""
    pairs = ((label, _words(getattr(record, name), wording)) for label, name in fields)
    return tuple(sentence((Run(f"{label}: {text}"),)) for label, text in pairs if text)


def _words(value: object, wording: Wording) -> str:
    if isinstance(value, tuple):
        return ", ".join(wording.say(one) for one in value)
    return wording.say(value)


def plan_lines(case: Case, wording: Wording) -> tuple[Line, ...]:
    """Use, aims, approval with its limits, changes of plan."""
    proposal = case.proposal
    if isinstance(proposal, Gap):
        return (sentence((Run(f"What was proposed {how_known(proposal)}"),)),)
    if proposal is None:
        return ()
    told = labelled(proposal, wording, ("Use", "use"), ("Aims", "aims"))
    changes = tuple(_change(one, wording) for one in items(proposal.changes))
    return (*told, *_proposed(proposal, wording), *agreed(proposal.decided, wording), *changes)


def _proposed(proposal: Proposal, wording: Wording) -> tuple[Line, ...]:
    """Who wrote the plan, and when."""
    by = listed_text([say(one) for one in items(proposal.by)])
    words = [f" by {by}" if by else "", f", {wording.say(proposal.date)}" if proposal.date else ""]
    return (sentence((Run(f"Proposed{''.join(words)}"),)),) if any(words) else ()


def agreed(decided: Decision | Gap | None, wording: Wording) -> tuple[Line, ...]:
    """Who agreed, when and how; and what the owner wanted left alone."""
    if isinstance(decided, Gap):
        return (sentence((Run(f"Who agreed to it {how_known(decided)}"),)),)
    if decided is None:
        return ()
    by = "" if isinstance(decided.by, Gap) else listed_text([_the(one) for one in decided.by])
    words = [
        f" by {by}" if by else "",
        f", {wording.say(decided.date)}" if decided.date else "",
        f" ({decided.how})" if known(decided.how) else "",
    ]
    line = sentence((Run(f"Agreed{''.join(words)}"),)) if any(words) else ()
    limits = (Run(f"The limits set: {decided.limits}"),) if known(decided.limits) else ()
    return tuple(one for one in (line, sentence(limits)) if one)


def _the(name: str) -> str:
    """An office with its article: "the owner"; a name, which has a capital, stays as it is."""
    return f"the {name}" if name[:1].islower() and not name.startswith(("the ", "a ")) else name


def _change(change: Change, wording: Wording) -> Line:
    when = f" ({wording.say(change.date)})" if change.date else ""
    because = f", because {change.because}" if known(change.because) else ""
    agreed = f"; agreed: {say(change.agreed)}" if change.agreed else ""
    return sentence((Run(f"The plan was changed{when}: {say(change.what)}{because}{agreed}"),))


def option_views(case: Case, wording: Wording) -> tuple[OptionView, ...]:
    """The courses considered for the plan as a whole, the chosen one marked."""
    proposal = known(case.proposal) or Proposal()
    return tuple(_option(one, wording) for one in items(proposal.options))


def question_views(case: Case, wording: Wording) -> tuple[QuestionView, ...]:
    """Each question of the plan with its own courses, and its own approval where it has one."""
    proposal = known(case.proposal) or Proposal()
    return tuple(_question(one, wording) for one in items(proposal.questions))


def _question(question: Question, wording: Wording) -> QuestionView:
    options = tuple(_option(one, wording) for one in items(question.options))
    return QuestionView(
        say(question.asks) or "A question", options, agreed(question.decided, wording)
    )


def _option(option: Option, wording: Wording) -> OptionView:
    materials = text_of(listed([wording.material(one) for one in items(option.materials)]))
    time = known(option.time)
    details = [
        f"would take {duration_text(time)}" if time else "",
        f"at a cost of {option.cost}" if known(option.cost) else "",
        f"with {materials}" if materials else "",
    ]
    outcome = _OUTCOMES[option.outcome] if isinstance(option.outcome, Choice) else ""
    because = f"{outcome or 'said of it'}: {option.because}" if known(option.because) else ""
    told = (sentence_text(one) for one in (", ".join(filter(None, details)), because))
    return OptionView(
        name=say(option.name),
        outcome=outcome or say(option.outcome),
        merits=say(option.merits),
        faults=say(option.faults),
        details=" ".join(one for one in told if one),
        chosen=option.outcome is Choice.CHOSEN,
    )
