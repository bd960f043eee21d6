"""What the words of a test's result say: whether something bled, moved or darkened, or held."""

from __future__ import annotations

import re
from fractions import Fraction

from casebook.model.base import items, known
from casebook.model.condition import Test
from casebook.values.durations import Duration
from casebook.values.fault import NotUnderstood

_DOES = re.compile(
    r"\b(?:bleeds|bled|runs|ran|moves|moved|darkens|darkened|dissolves|dissolved|smears|smeared"
    r"|feathers|feathered|transfers|transferred|stains|stained|swims|swam|softens the ink"
    r"|cockles|cockled|shrinks|shrank"
    r"|blanches|blanched|soluble|(?:comes|came) (?:off|away)|loses colou?r|lost colou?r)\b",
    re.I,
)
"""Trouble told by a verb of its own: "no change, bleeds after a minute"."""

_NOUN = re.compile(
    r"\b(?:bleed|bleeding|run|running|move|movement|moving|darken|darkening|dissolve|dissolving"
    r"|smear|smearing|feathering|transfer|offset|stain|staining"
    r"|cockling|shrinkage|blanching|tide-?\s?lines?|colou?r loss)\b",
    re.I,
)
"""Trouble told by a noun or with a verb before it: it shares the "no" of what stands before."""

_NOT = re.compile(r"\b(?:no|not|never|nothing|none|without|neither|nor|free of|nil)\b|n't\b", re.I)
_NOT_BEHIND = re.compile(
    r"\s*:?\s*(?:is|was|were|are)?\s*(?:none|nil|absent|negative|not\b|no\b)", re.I
)
_HELD = re.compile(r"\b(?:fast|stable|holds?|held|insoluble|unchanged|negative)\b", re.I)
_SENTENCE = re.compile(r"[;.]\s|[;.]$|\bbut\b|\bthen\b|\bthough\b|\bexcept\b")
_OFTEN = re.compile(
    r"\b(?:three|four|five|six|[3-9]|1\d)\s*(?:times|x|×)|[x×]\s?(?:[3-9]|1\d)\b|\brepeated|\bthrice",
    re.I,
)
_LASTED = re.compile(r"\b\d+(?:[.,]\d+)?\s*(?:s|sec|seconds?|min|minutes?|h|hours?)\b", re.I)


def trouble(text: str) -> str:
    """The word for what went wrong, such as "bleeds"; "" if nothing did or nothing is said.

    A negation is understood: "no bleeding, movement or tideline", "does not bleed".
    """
    found = (_in_sentence(one) for one in _SENTENCE.split(text))
    return next((word for word in found if word), "")


def _in_sentence(sentence: str) -> str:
    """Trouble in one sentence; a noun behind a comma shares the negation of what came before."""
    carried = False
    for clause in sentence.split(","):
        for pattern, excused in ((_DOES, False), (_NOUN, carried)):
            for hit in pattern.finditer(clause):
                if not excused and not _negated(clause, hit):
                    return hit[0]
        carried = carried or bool(_NOT.search(clause))
    return ""


def _negated(clause: str, hit: re.Match[str]) -> bool:
    return bool(_NOT.search(clause, 0, hit.start()) or _NOT_BEHIND.match(clause, hit.end()))


def held(text: str) -> bool:
    """Whether a result says that nothing happened: no change, fast, nothing on the blotter."""
    return not trouble(text) and bool(_HELD.search(text) or _NOT.search(text))


def repeated(test: Test) -> bool:
    """Whether a test says that it was done three times or more on its spot."""
    times = known(test.times)
    if times is not None:
        return times.high is None or times.high >= 3
    return bool(_OFTEN.search(f"{known(test.method) or ''}; {known(test.result) or ''}"))


def lasted(test: Test) -> Duration | None:
    """The longest time that a test says its agent was left to act; None if it says none."""
    method = known(test.method) or ""
    written = (_duration(found[0]) for found in _LASTED.finditer(method))
    given = (known(one.lasts) for one in items(test.agent))
    every = [one for one in (*written, *given) if one is not None]
    return max(every, key=how_long, default=None)


def how_long(lasted: Duration) -> tuple[int, Fraction]:
    """What a length of time is compared by: its nights, then its minutes at the least."""
    return lasted.nights, lasted.least


def _duration(text: str) -> Duration | None:
    try:
        return Duration.parse(text)
    except NotUnderstood:  # a figure in prose that is no length of time after all
        return None
