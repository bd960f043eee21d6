"""Which cases belong together, told from both sides: what one record says, the other page shows."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum

from casebook.compute.runs import inner_steps
from casebook.model.archive import Case, Kinship
from casebook.model.base import items, known


class Tie(StrEnum):
    """What another case is to this one."""

    RETREATS = "retreats"
    """The object was treated there before."""
    RETREATED_IN = "retreated in"
    """The object was treated again there."""
    SAME_SET = "same set"
    LIKE = "like"
    OLD_CARRIER = "old carrier"
    """This came off that."""
    CARRIED = "carried"
    """That came off this."""
    OTHER = "other"
    """A link that does not say what it is."""


_INVERSE = {
    Tie.RETREATS: Tie.RETREATED_IN,
    Tie.RETREATED_IN: Tie.RETREATS,
    Tie.OLD_CARRIER: Tie.CARRIED,
    Tie.CARRIED: Tie.OLD_CARRIER,
}
"""What a tie is from the other side, where that is not the same."""

_TIES = {
    Kinship.RETREATS: Tie.RETREATS,
    Kinship.SAME_SET: Tie.SAME_SET,
    Kinship.LIKE: Tie.LIKE,
    Kinship.OLD_CARRIER: Tie.OLD_CARRIER,
}


@dataclass(frozen=True, slots=True)
class Kin:
    """Another case, by its id, and what it is to this one; `because` as the record words it."""

    case: str
    tie: Tie
    because: str = ""


def kin(case: Case, cases: Iterable[Case]) -> tuple[Kin, ...]:
    """The cases among `cases` that belong with one of them, whichever of the two says so."""
    return kindred(cases).get(case.id, ())


def kindred(cases: Iterable[Case]) -> Mapping[str, tuple[Kin, ...]]:
    """For each case, by its id, the others that belong with it; each pair and tie once.

    A case that is not among `cases` is left out, as is one that points at itself. Its own words
    come first, then those of the others in the order of the cases.
    """
    every = tuple(cases)
    ids = {name: one.id for one in every for name in (one.id, *items(one.was))}
    found: dict[str, dict[tuple[str, Tie], Kin]] = {one.id: {} for one in every}
    said = [(one.id, ids[kin.case], kin) for one in every for kin in _said(one) if kin.case in ids]
    for here, there, one in said:
        if here != there:
            found[here].setdefault((there, one.tie), Kin(there, one.tie, one.because))
    for here, there, one in said:
        if here != there:
            tie = _INVERSE.get(one.tie, one.tie)
            found[there].setdefault((here, tie), Kin(here, tie, one.because))
    return {name: tuple(kin.values()) for name, kin in found.items()}


def _said(case: Case) -> Iterator[Kin]:
    """What a case says itself: its links, its earlier treatments, and what left it."""
    for link in items(case.links):
        if link.case:
            is_ = known(link.is_)
            yield Kin(link.case, _TIES[is_] if is_ else Tie.OTHER, known(link.because) or "")
    for past in items(case.history):
        if name := known(past.case):
            yield Kin(name, Tie.RETREATS)
    steps = [*items(case.steps), *(s for one in items(case.episodes) for s in items(one.steps))]
    for step in inner_steps(steps):
        fate = known(step.fate)
        if fate and (name := known(fate.case)):
            yield Kin(name, Tie.CARRIED)
