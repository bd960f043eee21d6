"""What a record says it does not know or did not find: each in a sentence where it would stand."""

from __future__ import annotations

from casebook.model.archive import Case
from casebook.model.base import Gap, Maybe, Unknowing, items, known
from casebook.model.outcome import Reversibility
from casebook.output.contexts import Line, Run
from casebook.output.wording import (
    how_known,
    key_words,
    listed_text,
    sentence,
    sentence_text,
    text_of,
)

_ABSENT = {
    "history": ("No sign of an earlier treatment was found", "whether it was treated before"),
    "findings": ("No damage was seen", "in what condition it was"),
    "tests": ("No tests were made", "whether tests were made"),
    "as_found": ("No added layers were found", "which layers lay on it"),
    "hazards": ("No danger was found", "whether anything on it is dangerous"),
    "left_alone": ("Nothing was left alone on purpose", "what was left alone"),
    "follow_up": ("It has not been looked at again", "whether it was looked at again"),
    "photos": ("No photographs were taken", "whether photographs were taken"),
    "steps": ("Nothing was done", "what was done"),
    "episodes": ("There were no sittings", "what was done in which sitting"),
}
"""For a list of a case: the sentence where there was nothing, and what else is not known."""


def absent(case: Case, name: str) -> tuple[Line, ...]:
    """The sentence that stands where a list of a case would, if it is said not to be known."""
    gap = getattr(case, name)
    if not isinstance(gap, Gap):
        return ()
    nothing, topic = _ABSENT[name]
    reason = f" ({gap.reason})" if gap.reason else ""
    if gap.kind is Unknowing.NONE:
        return (sentence((Run(nothing + reason),)),)
    return (sentence((Run(f"{topic} {how_known(gap)}"),)),)


def undoing_text(case: Case) -> str:
    """What a case says of how it can be undone, or in a sentence how that is not known."""
    undoing = known(case.reversibility) or Reversibility()
    return _advice(undoing.says, "how it can be undone")


def care_text(case: Case) -> str:
    """How a case is to be kept, or in a sentence how that is not known."""
    return _advice(case.care, "how it is to be kept")


def _advice(text: Maybe[str], what: str) -> str:
    return sentence_text(f"{what} {how_known(text)}") if isinstance(text, Gap) else text or ""


_BULK = {
    "not recorded": "Nobody wrote down",
    "not read": "Not read in the source",
    "unknown": "Looked for, and could not be told",
    "none": "Looked for, and absent",
    "unnamed": "There, and not named",
}


def gap_lines(case: Case) -> tuple[str, ...]:
    """What a record does not know of its steps, and in bulk: "Nobody wrote down: time."."""
    told = [text_of(line) for name in ("steps", "episodes") for line in absent(case, name)]
    bulk = (
        f"{_BULK[kind]}: {listed_text([key_words(one) for one in items(keys)])}."
        for kind, keys in case.gaps.items()
        if kind in _BULK and items(keys)
    )
    return (*told, *bulk)
