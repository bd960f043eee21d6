"""What a step says in detail: scope, bath, drying, trials, fate, hands, ways of doing it."""

from __future__ import annotations

import re
from collections.abc import Mapping
from enum import StrEnum
from typing import ClassVar

from casebook.model.base import CaseRef, Many, Maybe, Record, public, record
from casebook.model.condition import PersonRef
from casebook.model.marks import Swatch
from casebook.model.materials import Material, ToolWord
from casebook.model.object import PlaceRef, counted
from casebook.model.proposal import Choice
from casebook.values.durations import Duration
from casebook.values.quantities import Acidity, Count, Length, Temperature


class Fate(StrEnum):
    """What became of a thing that was removed."""

    DISCARDED = "discarded"
    KEPT = "kept-with-object"
    STORED = "stored-apart"
    OWN_CASE = "own-case"
    RETURNED = "returned"


@record
class WentTo(Record):
    """Where what was removed went. `kept-with-object` alone stands for `is`."""

    SHORT: ClassVar[str] = "is"

    is_: Maybe[Fate] = public(structural=True)
    """discarded, kept-with-object, stored-apart, own-case or returned."""
    where: Maybe[str] = public()
    """Where it is kept: an envelope in the box, a drawer."""
    case: Maybe[CaseRef] = public()
    """For `own-case`: the id of that case."""


class Strength(StrEnum):
    """How a repair compares with the original that it lies across."""

    WEAKER = "weaker"
    LIKE = "like"
    STRONGER = "stronger"


@record
class Against(Record):
    """How what was laid on compares with the original under it, in strength and stiffness."""

    SHORT: ClassVar[str] = "is"

    is_: Maybe[Strength] = public(structural=True)
    """weaker, like or stronger."""
    because: Maybe[str] = public()
    """Why it was chosen so."""


@record
class Hand(Record):
    """Somebody who did it, with the time it took them where several shared the work."""

    SHORT: ClassVar[str] = "who"

    who: Maybe[PersonRef] = public()
    """The initials, as under `people`."""
    time: Maybe[Duration] = public()
    """Their own time at the bench. Unit: duration."""


class Grain(StrEnum):
    """Direction of the grain: on a spine `along` is head to tail."""

    ALONG = "along"
    ACROSS = "across"


class Outcome(StrEnum):
    """What came of a step as a whole."""

    DONE = "done"
    PARTLY = "partly"
    GIVEN_UP = "given-up"


@record
class Drying(Record):
    """Drying after a step: how long, under what. `overnight under blotter + weights` says both."""

    SHORT: ClassVar[str] = "for"

    for_: Maybe[Duration] = public(structural=True)
    """How long. Nights are counted, never guessed at. Unit: duration."""
    under: Many[ToolWord] = public(())
    """What it dried under or between."""
    until: Maybe[str] = public()
    """What ended it, such as "dry to the touch"."""

    @classmethod
    def from_text(cls, text: str) -> Mapping[str, str | list[str]]:
        """Read a length of time and, behind "under" or "between", what lay on it."""
        found = re.fullmatch(r"(.*?)\s*\b(?:under|between|in)\s+(.+)", text.strip())
        if not found:
            return {"for": text}
        time, under = found.groups()
        things = [one.strip() for one in under.split("+")]
        return {"for": time, "under": things} if time else {"under": things}


@record
class Piece(Record):
    """Pieces of one size: how many, how big."""

    count: Maybe[Count] = public(structural=True)
    """How many of this size; one where left out. Unit: count."""
    height: Maybe[Length] = public(structural=True)
    """From head to tail. Unit: length."""
    width: Maybe[Length] = public(structural=True)
    """Across. Unit: length."""


@record
class Scope(Record):
    """How much of a part a step covers: N of M, patches, edges, where needed."""

    SHORT: ClassVar[str] = "where"

    done: Maybe[Count] = public(structural=True)
    """How many were done. Unit: count."""
    of: Maybe[Count] = public(structural=True)
    """Out of how many. Unit: count."""
    rest: Maybe[str] = public(structural=True)
    """What is said of the others."""
    where: Maybe[str] = public(structural=True)
    """Where, in words: along the fore-edge, where needed."""
    pieces: Many[Piece] = public((), structural=True)
    """The pieces, by number and size."""

    @classmethod
    def from_text(cls, text: str) -> Mapping[str, str | list[str]]:
        """Read "40 of 52", or a place in words."""
        return counted(text) or {"where": text}


@record
class Bath(Record):
    """A bath: the liquid, how long, how often."""

    SHORT: ClassVar[str] = "liquid"

    liquid: Maybe[Material] = public(structural=True)
    """What the bath was."""
    conditioned: Maybe[Material] = public(structural=True)
    """What was added to it."""
    ph: Maybe[Acidity] = public()
    """Its pH. Unit: pH."""
    temperature: Maybe[Temperature] = public()
    """Its temperature. Unit: °C."""
    each: Maybe[Duration] = public()
    """How long one bath lasted. Unit: duration."""
    or_until: Maybe[str] = public()
    """What could end one bath sooner."""
    times: Maybe[Count] = public()
    """How many baths. Unit: count."""
    until: Maybe[str] = public()
    """What ended the bathing."""


@record
class Leaves(Record):
    """What a step left behind of what it removed."""

    SHORT: ClassVar[str] = "layer"

    layer: Maybe[PlaceRef] = public(structural=True)
    """What is still there, in part; `none` if nothing is."""
    where: Maybe[str] = public(structural=True)
    """Where it is still."""


@record
class Trial(Record):
    """Something tried in the course of a step, and what came of it."""

    SHORT: ClassVar[str] = "what"

    what: Maybe[str] = public(structural=True)
    """What was tried."""
    material: Many[Material] = public((), structural=True)
    """The materials that were tried."""
    colour: Maybe[Swatch] = public()
    """The colour it came out in: as measured, or an area of a photo. Unit: CIELAB."""
    result: Maybe[str] = public(structural=True)
    """What came of it."""
    outcome: Maybe[Choice] = public(structural=True)
    """Whether it was chosen or given up."""
    because: Maybe[str] = public()
    """Why."""
    time: Maybe[Duration] = public()
    """Bench time it took, beyond the step's own. Unit: duration."""


@record
class Way(Record):
    """One of several ways in which one operation was done, on its own share of the part.

    What is left out here is as in the step itself.
    """

    SHORT: ClassVar[str] = "scope"

    scope: Maybe[Scope] = public(structural=True)
    """How much of the part was done this way, or where."""
    material: Maybe[Material] = public(structural=True)
    """What was laid on or put in."""
    adhesive: Maybe[Material] = public(structural=True)
    """What it was stuck with."""
    agent: Maybe[Material] = public(structural=True)
    """What acted and went."""
    tools: Many[ToolWord] = public(())
    """Tools and equipment used."""
    because: Maybe[str] = public()
    """Why it was done this way here."""
    result: Maybe[str] = public()
    """What came of it."""
