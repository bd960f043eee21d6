"""The steps of a case in the order they were done, each with its sitting and its operation."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from casebook.model.archive import Case
from casebook.model.base import Gap, Many, Unknowing, items, known
from casebook.model.treatment import Episode, Outcome, Step

NameOperation = Callable[[str], str]
"""From an operation as written to its name in the vocabulary, or the same word if unknown."""

IN_WORDS = ""
"""The operation of a step that is told in words only."""

_BY_VERB = (
    ("removes", "remove"),
    ("takes_off", "detach"),
    ("puts_back", "reattach"),
    ("opens", "lift"),
    ("joins", "attach"),
    ("treats", "treat"),
)
"""What a step without `do` is called by the key that says what happened."""


@dataclass(frozen=True, slots=True)
class Placed:
    """A step with the number of its sitting ("" outside any) and the hands that did it."""

    episode: str
    step: Step
    hands: tuple[str, ...]


def placed(case: Case) -> Iterator[Placed]:
    """Every step of a case: those outside sittings first, then sitting by sitting."""
    for step in items(case.steps):
        yield Placed("", step, _hands(step.hands, ()))
    for number, episode in enumerate(items(case.episodes), 1):
        for step in items(episode.steps):
            yield Placed(number_of(episode, number), step, _hands(step.hands, episode.hands))


def number_of(episode: Episode, place: int) -> str:
    """The number of a sitting as written, else its place in the order."""
    count = known(episode.episode)
    written = count.low if count else None
    return str(place if written is None else int(written))


def _hands(own: Many[str], sitting: Many[str]) -> tuple[str, ...]:
    """Whose step it is; "unknown" is an answer, so that the sitting's hands do not replace it."""
    hands = sitting if own == () else own
    return tuple(sorted(set(items(hands))))


def none(value: object) -> bool:
    """Whether a field says that there is none: looked for, and absent."""
    return isinstance(value, Gap) and value.kind is Unknowing.NONE


def lays(step: Step) -> bool:
    """Whether a step laid a layer down with an adhesive: a part, a wrapper or a sewn piece is not.

    An adhesive that was used but not named or not recorded is one all the same.
    """
    if not step.adds or known(step.is_) == "part" or step.outcome is Outcome.GIVEN_UP:
        return False
    held_only = step.adhesive is None and bool(items(step.held))
    lies = bool(items(step.onto) or step.spans or known(step.in_thickness_of))
    return lies and not none(step.adhesive) and not held_only


def operation(step: Step, name: NameOperation) -> str:
    """What a step is called: its own word, or what its structural key says; "" in words only."""
    word = known(step.do) or _by_structure(step)
    return name(word) if word else IN_WORDS


def _by_structure(step: Step) -> str:
    if step.adds:
        return _laying(step)
    return next((word for verb, word in _BY_VERB if items(getattr(step, verb))), IN_WORDS)


def _laying(step: Step) -> str:
    scope = known(step.scope)
    if known(step.in_thickness_of):
        return "infill"
    if not lays(step):
        return "make" if known(step.is_) == "part" else "apply"
    return "patch" if scope and items(scope.pieces) else "line"
