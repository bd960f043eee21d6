"""The treatment for a case page: the plan, the episodes with their steps, and how it is undone."""

from __future__ import annotations

from collections.abc import Mapping

from casebook.compute.hours import Timesheet
from casebook.compute.steps import hands_of
from casebook.model.archive import Case
from casebook.model.base import Gap, Many, Record, items, known
from casebook.model.details import Hand, Trial
from casebook.model.outcome import Claim
from casebook.model.proposal import Choice, Option, Proposal
from casebook.model.treatment import Episode, Step
from casebook.output.contexts import (
    EpisodeView,
    Line,
    OptionView,
    PictureView,
    Run,
    StepView,
    TrialView,
)
from casebook.output.object_view import date_text, finding_view
from casebook.output.prose import prose
from casebook.output.sentences import step_sentence, time_line, verb_of
from casebook.output.tables import clock_text
from casebook.output.wording import Wording, listed, say, sentence, text_of
from casebook.values.dates import Date

Views = Mapping[str, PictureView]


def labelled(record: Record, *fields: tuple[str, str]) -> tuple[Line, ...]:
    """Fields of a record as sentences, each with its label: "Use: reading room."."""
    pairs = ((label, _words(getattr(record, name))) for label, name in fields)
    return tuple(sentence((Run(f"{label}: {text}"),)) for label, text in pairs if text)


def _words(value: object) -> str:
    if isinstance(value, tuple):
        return ", ".join(say(one) for one in value)
    return date_text(value) if isinstance(value, Date) else say(value)


def plan_lines(case: Case) -> tuple[Line, ...]:
    """Use, aims, approval with its limits, changes of plan."""
    proposal = known(case.proposal)
    if proposal is None:
        return ()
    decided = known(proposal.decided)
    approval = (
        labelled(
            decided,
            ("Agreed", "date"),
            ("Agreed by", "by"),
            ("How", "how"),
            ("Limits", "limits"),
        )
        if decided
        else ()
    )
    fields = (("Use", "use"), ("Aims", "aims"), ("Proposed", "date"), ("Proposed by", "by"))
    return (*labelled(proposal, *fields), *approval, *_changes(proposal))


def _changes(proposal: Proposal) -> tuple[Line, ...]:
    found = []
    for one in items(proposal.changes):
        because = f", because {one.because}" if known(one.because) else ""
        agreed = f"; agreed: {one.agreed}" if known(one.agreed) else ""
        found.append(sentence((Run(f"Change of plan: {say(one.what)}{because}{agreed}"),)))
    return tuple(found)


def option_views(case: Case, wording: Wording) -> tuple[OptionView, ...]:
    """The courses considered, the chosen one marked."""
    proposal = known(case.proposal)
    return tuple(_option(one, wording) for one in items(proposal.options)) if proposal else ()


def _option(option: Option, wording: Wording) -> OptionView:
    materials = text_of(listed([wording.material(one) for one in items(option.materials)]))
    details = [say(option.time), say(option.cost), materials]
    outcome = f"{say(option.outcome)}: {option.because}" if known(option.because) else None
    return OptionView(
        name=say(option.name),
        outcome=outcome or say(option.outcome),
        merits=say(option.merits),
        faults=say(option.faults),
        details=", ".join(one for one in details if one),
        chosen=option.outcome is Choice.CHOSEN,
    )


def episode_views(
    case: Case, sheet: Timesheet, wording: Wording, views: Views
) -> tuple[EpisodeView, ...]:
    """Every sitting; steps written without one stand in a sitting of their own."""
    loose = (Episode(steps=case.steps),) if case.steps and not isinstance(case.steps, Gap) else ()
    episodes = (*loose, *items(case.episodes))
    times = {row.keys: clock_text(row.hours.bench) for row in sheet.by_episode}
    return tuple(
        _episode(one, n, times.get((_name(one, n),), ""), wording, views)
        for n, one in enumerate(episodes, start=1)
    )


def _name(episode: Episode, n: int) -> str:
    return say(episode.episode) or str(n)


def _episode(episode: Episode, n: int, time: str, wording: Wording, views: Views) -> EpisodeView:
    steps = items(episode.steps)
    hands = ", ".join(hands_of(episode.hands, ()))
    climate = f" ({episode.climate})" if known(episode.climate) else ""
    return EpisodeView(
        number=n,
        title=say(episode.title) or f"Sitting {_name(episode, n)}",
        when=date_text(episode.date) + climate,
        hands=f"By {hands}" if hands else "",
        time=f"{time} at the bench" if time else "",
        story=prose(episode.story),
        steps=tuple(_step(one, k, wording, views) for k, one in enumerate(steps, start=1)),
        photos=pictures_of(episode.photo, views),
    )


def pictures_of(names: Many[str], views: Views) -> tuple[PictureView, ...]:
    """The pictures that are named and may be shown."""
    return tuple(views[one] for one in items(names) if one in views)


def _step(step: Step, number: int, wording: Wording, views: Views) -> StepView:
    return StepView(
        number=number,
        sentence=step_sentence(step, wording),
        time=time_line(step, wording),
        remarks=_remarks(step, wording),
        tried=tuple(_trial(one) for one in items(step.tried)),
        finds=tuple(finding_view(one, wording, views) for one in items(step.finds)),
        photos=pictures_of(step.photo, views),
        words_only=not verb_of(step) and not known(step.do),
        layer=step.adds or "",
    )


def _remarks(step: Step, wording: Wording) -> tuple[str, ...]:
    """Reasons, results, tools, hands and what a recipe filled in, each a short sentence."""
    tools = text_of(wording.terms("tools", step.tools)) if step.tools else ""
    assumed = ", ".join(sorted(name.rstrip("_").replace("_", " ") for name in step.assumed))
    texts = [
        f"Why: {step.because}" if known(step.because) else "",
        f"Result: {step.result}" if known(step.result) else "",
        f"Outcome: {step.outcome}" if known(step.outcome) else "",
        f"With {tools}" if tools else "",
        f"Done by {', '.join(_hand(one) for one in items(step.hands))}" if step.hands else "",
        date_text(step.date),
        f"Taken from the recipe {step.like}: {assumed}" if assumed else "",
        f"For the lab: {step.note}" if known(step.note) else "",
    ]
    return tuple(text_of(sentence((Run(text),))) for text in texts if text)


def _hand(hand: Hand) -> str:
    """Initials, with the time of one's own: "RT (20 min)"."""
    return f"{say(hand.who)} ({hand.time})" if known(hand.time) else say(hand.who)


def _trial(trial: Trial) -> TrialView:
    because = f" ({trial.because})" if known(trial.because) else ""
    result = f": {trial.result}" if known(trial.result) else ""
    return TrialView(f"{say(trial.what)}{result}{because}.", trial.outcome is Choice.GIVEN_UP)


def claim_line(claim: Claim, wording: Wording) -> Line:
    """How a layer comes off again, in a sentence."""
    line: list[Run] = [*wording.places(claim.takes_off), Run(" comes off")]
    if claim.with_ is not None:
        line.extend((Run(" with "), *wording.material(claim.with_)))
    if claim.leaves is not None:
        line.append(Run(f"; it leaves {say(claim.leaves)}"))
    if known(claim.because):
        line.append(Run(f" ({claim.because})"))
    return sentence(line)


def work_line(case: Case, wording: Wording) -> str:
    """What was done, in the names of its operations, for a card."""
    steps = [*items(case.steps), *(s for one in items(case.episodes) for s in items(one.steps))]
    names = dict.fromkeys(known(step.do) for step in steps if known(step.do))
    nouns = []
    for name in names:
        term = wording.lexicon.term("operations", name or "")
        nouns.append((known(term.noun) if term else "") or name or "")
    words = list(dict.fromkeys(noun for noun in nouns if noun))[:5]
    return ", ".join([words[0][:1].upper() + words[0][1:], *words[1:]]) if words else ""
