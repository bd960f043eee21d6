"""The steps of a case in the order they were done, each with its sitting and its operation."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator
from dataclasses import dataclass

from casebook.compute.once import once
from casebook.compute.runs import own_names, unrolled
from casebook.model.archive import Case
from casebook.model.base import Gap, Many, Unknowing, items, known
from casebook.model.details import Hand, Outcome
from casebook.model.object import Bond
from casebook.model.treatment import Episode, Step

NameOperation = Callable[[str], str]
"""From an operation as written to its name in the vocabulary, or the same word if unknown."""

UNKNOWN_HAND = "unknown"
"""Somebody at the bench whom the record does not name, beside a hand that it names."""

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
    """A step with the number of its sitting ("" outside any) and the hands that did it.

    In a run, a step is told for each member; `siblings` are the same step on the other members,
    where its times are for all of them together.
    """

    episode: str
    step: Step
    hands: tuple[str, ...]
    run: bool = False
    siblings: tuple[Step, ...] = ()


@once
def placed(case: Case) -> tuple[Placed, ...]:
    """Every step: those outside sittings first, then sitting by sitting; runs are unrolled."""
    return tuple(_placed(case))


def _placed(case: Case) -> Iterator[Placed]:
    names = _names(case)
    yield from _sitting(items(case.steps), "", (), names)
    for number, episode in enumerate(items(case.episodes), 1):
        steps = items(episode.steps)
        yield from _sitting(steps, number_of(episode, number), episode.hands, names)


def _sitting(
    steps: Collection[Step], episode: str, hands: Many[Hand], names: Collection[str]
) -> Iterator[Placed]:
    for step in steps:
        if not step.each:
            yield Placed(episode, step, hands_of(step.hands, hands))
            continue
        for done in unrolled(step, names):
            own = hands_of(done.step.hands, hands_of_run(step, hands))
            yield Placed(episode, done.step, own, True, done.siblings)


def hands_of_run(run: Step, sitting: Many[Hand]) -> Many[Hand]:
    """The hands of a run: its own where it names any, else those of its sitting."""
    return sitting if run.hands == () else run.hands


def _names(case: Case) -> frozenset[str]:
    """The names of layers that are the case's own, not those of a member of a run."""
    found = {one.id for one in items(case.as_found)}
    every = [*items(case.steps), *(s for one in items(case.episodes) for s in items(one.steps))]
    added = {step.adds for step in every if step.adds}
    inside = {name for step in every if step.each for name in own_names(step)}
    return frozenset((found | added) - inside - {"", None})


def number_of(episode: Episode, place: int) -> str:
    """The number of a sitting as written, else its place in the order."""
    count = known(episode.episode)
    written = count.low if count else None
    return str(place if written is None else int(written))


def hands_of(own: Many[Hand], sitting: Many[Hand]) -> tuple[str, ...]:
    """Whose step it is; "unknown" is an answer, so that the sitting's hands do not replace it.

    Somebody unknown beside a known hand is named last: the one did not do it alone.
    """
    hands = items(sitting if own == () else own)
    named = sorted({who for one in hands if (who := known(one.who))})
    beside = any(isinstance(one.who, Gap) and not none(one.who) for one in hands)
    return (*named, UNKNOWN_HAND) if named and beside else tuple(named)


def none(value: object) -> bool:
    """Whether a field says that there is none: looked for, and absent."""
    return isinstance(value, Gap) and value.kind is Unknowing.NONE


def lays(step: Step) -> bool:
    """Whether a step laid a layer down with an adhesive: a part, a wrapper or a sewn piece is not.

    An adhesive that was used but not named or not recorded is one all the same.
    """
    if not step.adds or known(step.is_) == "part" or step.outcome is Outcome.GIVEN_UP:
        return False
    if step.bonds:
        return any(items(bond.onto) for bond in items(step.bonds) if sticks(bond))
    lies = bool(items(step.onto) or step.spans or known(step.in_thickness_of))
    return lies and sticks(step)


def sticks(bond: Step | Bond) -> bool:
    """Whether something is held with an adhesive, be it one that nobody named."""
    held_only = bond.adhesive is None and bool(items(bond.held))
    return not none(bond.adhesive) and not held_only


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
