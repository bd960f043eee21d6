"""The treatment for a case page: the sittings with their steps, how it is undone, what was done."""

from __future__ import annotations

from dataclasses import replace

from casebook.compute.hours import Timesheet
from casebook.compute.runs import inner_steps
from casebook.model.archive import Case
from casebook.model.base import Gap, Unknowing, items, known
from casebook.model.outcome import Claim
from casebook.model.treatment import Episode
from casebook.output.case_contexts import EpisodeView
from casebook.output.contexts import Line, Run
from casebook.output.marks_view import Views
from casebook.output.prose import prose
from casebook.output.steps_view import Sitting, pictures_of, step_views, veiled, words_only
from casebook.output.tables import NOT_TIMED, clock_text
from casebook.output.times import hands_line
from casebook.output.wording import Wording, capital_text, say, sentence, text_of

_ORDERS = {
    Unknowing.NOT_RECORDED: "In no recorded order",
    Unknowing.NOT_READ: "In an order that was not read in the source",
    Unknowing.UNKNOWN: "In an order that nobody can tell",
}


def episode_views(
    case: Case, sheet: Timesheet, wording: Wording, views: Views, withheld: bool = False
) -> tuple[EpisodeView, ...]:
    """Every sitting; steps written without one stand in a sitting of their own.

    `withheld` is whether the structure of the case, and so what its steps did, is not shown.
    """
    loose = (Episode(steps=case.steps, order=case.order),) if items(case.steps) else ()
    episodes = (*loose, *items(case.episodes))
    times = {row.keys: clock_text(row.hours.bench) for row in sheet.by_episode}
    found = (
        _episode(one, n, times.get((_name(one, n),), ""), wording, views)
        for n, one in enumerate(episodes, start=1)
    )
    return tuple(_noted(_veiled(one) if withheld else one) for one in found)


def _veiled(episode: EpisodeView) -> EpisodeView:
    return replace(episode, steps=tuple(veiled(one) for one in episode.steps))


def _noted(episode: EpisodeView) -> EpisodeView:
    return replace(episode, words_only=words_only(episode.steps))


def _shared(episode: Episode) -> Episode:
    """The sitting with the hands and the date that all its steps have, where it has none itself."""
    steps = items(episode.steps)
    if not steps:
        return episode
    first, *others = steps
    hands = first.hands if all(one.hands == first.hands for one in others) else ()
    date = first.date if all(one.date == first.date for one in others) else None
    return replace(episode, hands=episode.hands or hands, date=episode.date or date)


def _name(episode: Episode, n: int) -> str:
    return say(episode.episode) or str(n)


def _episode(episode: Episode, n: int, time: str, wording: Wording, views: Views) -> EpisodeView:
    episode, order = _shared(episode), order_text(episode.order)
    sitting = Sitting(episode.hands, episode.date, ordered=not order)
    climate = f" ({episode.climate})" if known(episode.climate) else ""
    return EpisodeView(
        number=n,
        title=say(episode.title) or f"Sitting {_name(episode, n)}",
        when=_when(episode, wording) + climate,
        hands=f"By {hands_line(episode.hands)}" if episode.hands else "",
        time=_time(time),
        story=prose(episode.story),
        steps=step_views(items(episode.steps), wording, views, sitting),
        photos=pictures_of(episode.photo, views),
        order=order,
    )


def _time(time: str) -> str:
    if time == NOT_TIMED:
        return "Bench time not recorded"
    return f"{time} at the bench" if time else ""


def _when(episode: Episode, wording: Wording) -> str:
    if isinstance(episode.date, Gap):
        return f"Date {say(episode.date)}"
    return wording.say(episode.date)


def order_text(order: str | Gap | None) -> str:
    """What stands above steps whose order nobody knows; "" where they stand in order."""
    if not isinstance(order, Gap):
        return ""
    reason = f" ({order.reason})" if order.reason else ""
    return f"{_ORDERS[order.kind]}{reason}:" if order.kind in _ORDERS else ""


def claim_line(claim: Claim, wording: Wording) -> Line:
    """How a layer comes off again, in a sentence."""
    line: list[Run] = [
        *wording.places(claim.takes_off),
        Run(" come off" if _several(claim) else " comes off"),
    ]
    if claim.with_ is not None:
        line.extend(_opened_with(claim, wording))
    if claim.leaves is not None:
        leaves = "they leave" if _several(claim) else "it leaves"
        line.append(Run(f"; {leaves} {_left(claim.leaves)}"))
    if known(claim.because):
        line.append(Run(f" ({claim.because})"))
    return sentence(line)


def _opened_with(claim: Claim, wording: Wording) -> Line:
    """With what it comes off: "with water", "by hand"; "with nothing" of what stays for good."""
    if isinstance(claim.with_, Gap) and claim.with_.kind is Unknowing.NONE:
        return (Run(" with nothing"),)
    named = wording.material(claim.with_, "agent")
    return (Run(" " if text_of(named).startswith("by ") else " with "), *named)


def _left(leaves: str | Gap) -> str:
    nothing = isinstance(leaves, Gap) and leaves.kind is Unknowing.NONE
    return "nothing" if nothing else say(leaves)


def _several(claim: Claim) -> bool:
    """Whether a claim speaks of several things: two layers, or one that is named in the plural."""
    names = items(claim.takes_off)
    return len(names) > 1 or any(one.endswith("s") and not one.endswith("ss") for one in names)


def work_line(case: Case, wording: Wording) -> str:
    """What was done, in the names of its operations, for a card."""
    steps = [*items(case.steps), *(s for one in items(case.episodes) for s in items(one.steps))]
    names = dict.fromkeys(known(step.do) for step in inner_steps(steps) if known(step.do))
    nouns = []
    for name in names:
        term = wording.lexicon.term("operations", name or "")
        nouns.append((known(term.noun) if term else "") or name or "")
    return capital_text(", ".join(list(dict.fromkeys(noun for noun in nouns if noun))[:5]))
