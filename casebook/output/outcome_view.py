"""How a term's work held, and what was tried and given up with it: in sentences, with the cases."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import replace

from casebook.compute.elapsed import Elapsed
from casebook.compute.outcomes import ENOUGH, WORST, Again, Look, Outcome, score_interval
from casebook.compute.steps import operation
from casebook.compute.term_uses import GivenUp
from casebook.model.base import items, known
from casebook.model.condition import Holding
from casebook.model.treatment import Step
from casebook.output.contexts import Folded, HeldView, Line, Run
from casebook.output.wording import Wording, listed_text, say, sentence, text_of
from casebook.values.showing import count_of

MOST = 48
"""Cases that are told one by one; the others are counted."""

SHORT, SHOWN = 5, 3
"""So many sentences are not folded; of more, so many are shown."""

_SCOPES = {"operations": "in which something of it stayed on the object"}
_IN_WHICH = "in which it was left on the object"


def held_view(kind: str, found: Sequence[Outcome], wording: Wording) -> HeldView | None:
    """How it held, in one sentence of counts and a line for each case that tells; None if none."""
    own = [one for one in found if one.own]
    telling = sorted((one for one in found if one.looks or one.again), key=_worst_first)
    lines = tuple(_line(one, wording) for one in telling[:MOST])
    more = f"{len(telling) - MOST} more cases tell of it." if len(telling) > MOST else ""
    counts = _counts(own, _SCOPES.get(kind, _IN_WHICH)) if own else ""
    told = folded(lines, "more that tell of it", more)
    return HeldView(counts, _interval(own), told) if counts or lines else None


def folded(lines: tuple[Line, ...], words: str, note: str = "") -> Folded:
    """A few sentences as they are; of more than that, the first ones and the rest folded."""
    if len(lines) <= SHORT:
        return Folded(lines, note=note)
    return Folded(lines[:SHOWN], f"{len(lines) - SHOWN} {words}", lines[SHOWN:], note)


def _counts(own: Sequence[Outcome], which: str) -> str:
    """Looked at again, and not: what nobody looked at is never counted as held."""
    looked = [one for one in own if one.looks]
    again = sum(1 for one in own if one.again and not one.looks)
    rest = len(own) - len(looked) - again
    if len(own) == 1:
        state = f"looked at again: {_states(looked)}" if looked else "not looked at again"
        return f"The one case {which} was {'treated again later' if again else state}."
    told = f"{len(looked)} {_were(len(looked))} looked at again: {_states(looked)}"
    later = f"{again} {_were(again)} treated again without such a look" if again else ""
    left = f"{rest} {_were(rest)} not looked at again" if rest else ""
    if len(looked) == len(own):
        return f"All {len(own)} cases {which} were looked at again: {_states(looked)}."
    if not looked and not again:
        return f"None of the {len(own)} cases {which} was looked at again."
    told = "; ".join(one for one in (told if looked else "", later, left) if one)
    return f"Of {len(own)} cases {which}, {told}."


def _states(looked: Sequence[Outcome]) -> str:
    """In how many cases it was found how; one alone needs no number."""
    counts = Counter(one.state for one in looked)
    if len(looked) == 1:
        state = looked[0].state
        return state.value if state else "how it stood is not recorded"
    said = [f"{one.value} in {counts[one]}" for one in reversed(WORST) if one and counts[one]]
    unsaid = [f"not told how it stood in {counts[None]}"] if counts[None] else []
    return ", ".join((*said, *unsaid))


def _were(number: int) -> str:
    return "was" if number == 1 else "were"


def _interval(own: Iterable[Outcome]) -> str:
    """Between how many in a hundred would be found sound, where enough were looked at to say."""
    states = [one.state for one in own if one.state]
    if len(states) < ENOUGH:
        return ""
    held = sum(1 for one in states if one is Holding.SOUND)
    low, high = score_interval(held, len(states))
    return (
        "If those looked at stand for all, "
        f"between {math.floor(low * 100)} and {math.ceil(high * 100)} in a hundred are sound "
        "(95 % score interval, Wilson 1927)."
    )


def _worst_first(one: Outcome) -> tuple[int, int, str]:
    """What gave way first, then what was looked at after the longest time."""
    longest = max((look.since.middle for look in one.looks if look.since), default=-1)
    return (WORST.index(one.state), -longest, one.case)


def _line(one: Outcome, wording: Wording) -> Line:
    case = wording.case(one.case)
    there = replace(case, href=f"{case.href}#follow-up") if one.looks and case.href else case
    told: list[Line] = [(Run(_look(look, wording)),) for look in one.looks]
    told += [_again(again, wording, why=not one.looks) for again in one.again]
    others = () if one.own else ((Run("by others, written up from a publication"),),)
    runs = [run for line in (*told, *others) for run in (Run("; "), *line)]
    return sentence((there, Run(": "), *runs[1:]))


def _look(look: Look, wording: Wording) -> str:
    """One look: "the cloth lining, sound after 1 year"; what gave way says why."""
    where = listed_text([wording.place(one) for one in look.places]) or "the whole"
    state = look.state.value if look.state else "how it stood is not recorded"
    when = ""
    if look.since:
        when = f" after {since_text(look.since)}"
    elif look.date:
        when = f" ({wording.say(look.date)})"
    because = "" if look.state is Holding.SOUND or not look.because else f" ({look.because})"
    return f"{where}, {state}{when}{because}"


def _again(again: Again, wording: Wording, *, why: bool) -> Line:
    """That it was treated again, and where; `why` adds what is said there of the first time."""
    said = ": ".join(one for one in (again.state, again.because) if one) if why else ""
    reason = f" ({said})" if said else ""
    return (Run("treated again in "), wording.case(again.case), Run(reason))


def since_text(since: Elapsed) -> str:
    """A time in words, only as sure as its dates: "1 year 2 months", "about 42 years"."""
    if since.days is not None:
        days = count_of(since.days, "day") if since.days else "less than a day"
        return _span(since.least) or days
    spread = since.most - since.least
    if spread > since.middle or not since.middle:
        return f"less than {_span(since.most + 1)}"
    if spread > _ROUGH or since.middle >= _LONG:
        return f"about {_span(12 * max((since.middle + 6) // 12, 1))}"
    return f"about {_span(since.middle)}"


_ROUGH = 3
"""Dates that leave more months open than this tell no months."""

_LONG = 120
"""From ten years on nobody asks for the months."""


def _span(months: int) -> str:
    years, rest = divmod(months, 12)
    whole = count_of(years, "year") if years else ""
    over = count_of(rest, "month") if rest and months < _LONG else ""
    return " ".join(one for one in (whole, over) if one)


def given_up_view(found: Sequence[GivenUp], wording: Wording) -> Folded:
    """What was tried and given up, each in a sentence with the way to the sitting."""
    lines = tuple(_given_up(one, wording) for one in found[:MOST])
    more = f"{len(found) - MOST} more were given up." if len(found) > MOST else ""
    return folded(lines, "more", more)


def _given_up(one: GivenUp, wording: Wording) -> Line:
    case = wording.case(one.case)
    anchor = f"episode-{one.episode}" if one.episode else "treatment"
    there = replace(case, href=f"{case.href}#{anchor}") if case.href else case
    trial, step = one.trial, one.step
    if trial:
        with_ = [text_of(wording.material(each)) for each in items(trial.material)]
        what = say(trial.what) or listed_text(with_) or "a trial"
        why = [trial.result, trial.because]
    else:
        what, why = _work(step, wording), [step.result, step.falls_short, step.because]
    said = "; ".join(str(text) for text in why if known(text))
    return sentence((there, Run(f": {what}{f' – {said}' if said else ''}")))


def _work(step: Step, wording: Wording) -> str:
    """What a step was, as a noun, and where: "mending, the leaf"."""
    word = operation(step, lambda said: said)
    term = wording.lexicon.term("operations", word) if word else None
    noun = (known(term.noun) if term else "") or word or say(step.words) or "a step"
    places = (*items(step.treats), *items(step.onto), *items(step.removes))
    where = listed_text([wording.place(place) for place in places])
    return f"{noun}, {where}" if where else noun
