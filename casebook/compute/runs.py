"""Runs of steps: written once for several members, here told member by member."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any, TypeVar

from casebook.model.base import Gap, Many, Record, Unknowing, items, key_of, known, schema
from casebook.model.treatment import Differs, Step
from casebook.values.durations import Duration

R = TypeVar("R", bound=Record)

SELF = "each"
"""The place, within a run, that stands for the member itself."""

COUNTED_ELSEWHERE = Gap(Unknowing.NONE)
"""The time of a step that the same step on another member has already counted."""


@dataclass(frozen=True, slots=True)
class Done:
    """One step on one member of a run.

    `siblings` are the same step on the other members where its times are for all together; they
    have none of their own then.
    """

    step: Step
    siblings: tuple[Step, ...] = ()


def inner_steps(steps: Collection[Step]) -> Iterator[Step]:
    """The steps as written, those of runs in the place of their run."""
    for step in steps:
        if step.each:
            yield from inner_steps(items(step.steps))
        else:
            yield step


def unrolled(run: Step, outside: Collection[str] = ()) -> Iterator[Done]:
    """The steps of a run, member by member; `outside` are names that stay as they are.

    A place becomes the member's own: `spine` is `volume 3/spine`; `each` is the member itself.
    Times that do not say `each` are counted once, for all members together.
    """
    own = own_names(run)
    kept = {*outside} - own
    for number, step in enumerate(items(run.steps), 1):
        told = [
            (member, found)
            for member in items(run.each)
            if (found := _for_member(step, number, member, items(run.differs)))
        ]
        if step.each:
            for member, inner in told:
                yield from _nested(inner, member, kept, own)
        else:
            yield from _counted_once([_of_member(one, member, kept) for member, one in told])


def own_names(run: Step) -> frozenset[str]:
    """The layers and parts that the steps of a run add, by the names written there."""
    return frozenset(step.adds for step in inner_steps(items(run.steps)) if step.adds)


def _of_member(step: Step, member: str, kept: Collection[str]) -> Step:
    """A step with its places made the member's own."""
    return _renamed(step, lambda place: _own_place(place, member, kept))


def _nested(run: Step, member: str, kept: Collection[str], own: Collection[str]) -> Iterator[Done]:
    """A run within the run: its members are parts of the member; `own` are names of the outer run.

    `each` in it is its own member, and a time for all is for all of its own members.
    """
    outer = {*own} - own_names(run)

    def rename(place: str) -> str:
        return _own_place(place, member, kept)

    inner = _renamed(run, lambda one: rename(one) if one.partition("/")[0] in outer else one)
    members = tuple(rename(one) for one in items(run.each))
    differs = tuple(
        replace(one, in_=tuple(rename(place) for place in items(one.in_)))
        for one in items(inner.differs)
    )
    told = replace(inner, each=members, differs=differs)
    yield from unrolled(told, {*kept, *(rename(name) for name in outer)})


def _own_place(place: str, member: str, kept: Collection[str]) -> str:
    first = place.partition("/")[0].strip()
    if place == SELF:
        return member
    if first == SELF:
        return member + place[len(SELF) :]
    if place in kept or first in kept or first == member.partition("/")[0]:
        return place
    return f"{member}/{place}"


def _for_member(step: Step, number: int, member: str, differs: Collection[Differs]) -> Step | None:
    """A step as it was for one member; None where it was left out."""
    for one in differs:
        if member in items(one.in_) and _speaks_of(one, step, number):
            if known(one.left_out):
                return None
            step = _instead(step, known(one.instead))
    return step


def as_for(differs: Differs, steps: Collection[Step]) -> tuple[int, Step | None] | None:
    """The step that an exception speaks of: its number from 1, and how it was done instead.

    None where no step of the run is meant; no step where it was left out or is not described.
    """
    for number, step in enumerate(steps, 1):
        if _speaks_of(differs, step, number):
            instead = known(differs.instead)
            return number, _instead(step, instead) if instead else None
    return None


def _speaks_of(differs: Differs, step: Step, number: int) -> bool:
    word = known(differs.step)
    return bool(word) and word in (step.adds, known(step.do), str(number))


def _instead(step: Step, other: Step | None) -> Step:
    """A step with what another says in the place of its own."""
    if other is None:
        return step
    said = {
        info.name: getattr(other, info.name)
        for info in schema(Step).values()
        if other.tells(info.name) and getattr(other, info.name) not in (None, ())
    }
    return replace(step, **said)


def _renamed(record: R, rename: Callable[[str], str]) -> R:
    """A record with every place in it renamed, however deep; an added layer too."""
    changed: dict[str, Any] = {}
    for info in schema(type(record)).values():
        value = getattr(record, info.name)
        place = info.points == "place" or (isinstance(record, Step) and info.name == "adds")
        new = _renamed_in(value, rename, place)
        if new is not value:
            changed[info.name] = new
    return replace(record, **changed) if changed else record


def _renamed_in(value: Any, rename: Callable[[str], str], place: bool) -> Any:
    if isinstance(value, Record):
        return _renamed(value, rename)
    if isinstance(value, str):
        return rename(value) if place and value else value
    if isinstance(value, tuple) and value:
        return tuple(_renamed_in(one, rename, place) for one in value)
    if isinstance(value, Mapping) and value and place:
        return {rename(key): one for key, one in value.items()}
    return value


def _counted_once(told: list[Step]) -> Iterator[Done]:
    """The same step on every member: times that are for all stand in the first alone."""
    if not told or not _shares_time(told[0]):
        yield from (Done(step) for step in told)
        return
    rest = tuple(_without_shared(step) for step in told[1:])
    yield Done(told[0], rest)
    yield from (Done(step) for step in rest)


def shared(time: object) -> bool:
    """Whether a time in a run is for all members together; one that says neither counts so."""
    return isinstance(time, Duration) and time.per != "each"


def _shares_time(step: Step) -> bool:
    trials = (one.time for one in items(step.tried))
    hands = (one.time for one in items(step.hands))
    dryings = (one.for_ for one in items(step.dries))
    return any(shared(one) for one in (step.time, step.waits, *trials, *hands, *dryings))


def _without_shared(step: Step) -> Step:
    return replace(
        step,
        time=COUNTED_ELSEWHERE if shared(step.time) else step.time,
        waits=COUNTED_ELSEWHERE if shared(step.waits) else step.waits,
        dries=_rest(step.dries, "for_"),
        tried=_rest(step.tried, "time"),
        hands=_rest(step.hands, "time"),
    )


def _rest(many: Many[R], name: str) -> Many[R]:
    """A list of records without the times that are for all members together."""
    if isinstance(many, Gap):
        return many
    elsewhere: dict[str, Any] = {name: COUNTED_ELSEWHERE}
    return tuple(replace(one, **elsewhere) if shared(getattr(one, name)) else one for one in many)


def unsaid(step: Step) -> tuple[str, ...]:
    """The keys of a step in a run whose time says neither `each` nor `all`."""
    found = [key_of(name) for name in ("time", "waits") if _mute(getattr(step, name))]
    dries = ["dries"] if any(_mute(one.for_) for one in items(step.dries)) else []
    return (*found, *dries)


def _mute(time: object) -> bool:
    return isinstance(time, Duration) and not time.per
