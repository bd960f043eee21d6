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
from casebook.output.object_view import date_text
from casebook.output.prose import prose
from casebook.output.steps_view import Views, pictures_of, step_views, veiled
from casebook.output.tables import NOT_TIMED, clock_text
from casebook.output.times import hands_line
from casebook.output.wording import Wording, say, sentence

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
    found = tuple(
        _episode(one, n, times.get((_name(one, n),), ""), wording, views)
        for n, one in enumerate(episodes, start=1)
    )
    return tuple(_veiled(one) for one in found) if withheld else found


def _veiled(episode: EpisodeView) -> EpisodeView:
    return replace(episode, steps=tuple(veiled(one) for one in episode.steps))


def _name(episode: Episode, n: int) -> str:
    return say(episode.episode) or str(n)


def _episode(episode: Episode, n: int, time: str, wording: Wording, views: Views) -> EpisodeView:
    order = order_text(episode.order)
    climate = f" ({episode.climate})" if known(episode.climate) else ""
    return EpisodeView(
        number=n,
        title=say(episode.title) or f"Sitting {_name(episode, n)}",
        when=_when(episode) + climate,
        hands=f"By {hands_line(episode.hands)}" if episode.hands else "",
        time=_time(time),
        story=prose(episode.story),
        steps=step_views(items(episode.steps), wording, views, ordered=not order),
        photos=pictures_of(episode.photo, views),
        order=order,
    )


def _time(time: str) -> str:
    if time == NOT_TIMED:
        return "Bench time not recorded"
    return f"{time} at the bench" if time else ""


def _when(episode: Episode) -> str:
    if isinstance(episode.date, Gap):
        return f"Date {say(episode.date)}"
    return date_text(episode.date)


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
        line.extend((Run(" with "), *wording.material(claim.with_)))
    if claim.leaves is not None:
        leaves = "they leave" if _several(claim) else "it leaves"
        line.append(Run(f"; {leaves} {_left(claim.leaves)}"))
    if known(claim.because):
        line.append(Run(f" ({claim.because})"))
    return sentence(line)


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
    words = list(dict.fromkeys(noun for noun in nouns if noun))[:5]
    return ", ".join([words[0][:1].upper() + words[0][1:], *words[1:]]) if words else ""
