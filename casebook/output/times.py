"""The time of a step in words: at the bench, waiting, drying stage by stage, hand by hand."""

from __future__ import annotations

import re

from casebook.model.base import Gap, Many, Maybe, Unknowing, items, known
from casebook.model.details import Drying, Hand
from casebook.model.treatment import Step
from casebook.output.wording import Wording, listed_text, say, text_of, unknown
from casebook.values.durations import Duration

_OF_WHAT = {"each": " for each", "all": " for all together"}


def time_line(step: Step, wording: Wording) -> str:
    """Bench time, waiting and drying in one line; "" where nothing is said."""
    parts = (
        _clocked(step.time, "{} at the bench", "bench time"),
        _clocked(step.waits, "{} waiting", "length of the wait"),
        drying_line(step.dries, wording),
    )
    return "; ".join(part for part in parts if part)


def duration_text(time: Duration) -> str:
    """A length of time; in a run, whether it is for each member or for all of them together."""
    return bare_text(time) + _OF_WHAT.get(time.per, "")


def bare_text(time: Duration) -> str:
    """A length of time as written, without a last "each" or "all"."""
    if not time.per:
        return str(time)
    return re.sub(rf"\s+{time.per}(?=\s*(?:\([^()]*\)\s*)?$)", "", str(time), flags=re.I)


def _clocked(time: Maybe[Duration], form: str, name: str) -> str:
    if isinstance(time, Gap):
        return "" if time.kind is Unknowing.NONE else f"{name} {say(time)}"
    return form.format(bare_text(time)) + _OF_WHAT.get(time.per, "") if time else ""


def drying_line(dries: Many[Drying], wording: Wording) -> str:
    """How it dried, stage by stage: "dried 2 h under blotter, then overnight under weights"."""
    if isinstance(dries, Gap):
        return "no drying" if dries.kind is Unknowing.NONE else f"drying {say(dries)}"
    stages = [_stage(one, wording) for one in dries]
    return f"dried {', then '.join(stages)}" if stages else ""


def _stage(dries: Drying, wording: Wording) -> str:
    time = dries.for_
    length = f"for a time {say(time)}" if isinstance(time, Gap) else ""
    things = text_of(wording.terms("tools", dries.under)) if dries.under else ""
    words = [
        duration_text(time) if isinstance(time, Duration) else length,
        f"under {things}" if things else "",
        f"until {dries.until}" if known(dries.until) else "",
    ]
    return " ".join(word for word in words if word)


def hands_line(hands: Many[Hand]) -> str:
    """Who did it, each with the minutes of their own: "AM (1 h) and RT (20 min)"."""
    if isinstance(hands, Gap):
        return unknown(hands, "hand")
    return listed_text([_hand(one) for one in items(hands)])


def _hand(hand: Hand) -> str:
    who = unknown(hand.who, "hand") if isinstance(hand.who, Gap) else hand.who or "somebody"
    return f"{who} ({duration_text(hand.time)})" if isinstance(hand.time, Duration) else who
