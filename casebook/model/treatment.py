"""The treatment: the episodes and their steps, with what each laid, took and treated."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import field
from enum import StrEnum
from typing import Annotated, ClassVar

from casebook.model.base import Many, Maybe, Record, Words, lab, public, record
from casebook.model.condition import Finding, PersonRef, PhotoRef, TestRef
from casebook.model.materials import Material, ToolWord
from casebook.model.object import PlaceRef, Size
from casebook.model.proposal import Choice
from casebook.values.dates import Date
from casebook.values.durations import Duration
from casebook.values.quantities import Acidity, Count, Length, Temperature


class Fate(StrEnum):
    """Where a thing that was removed went."""

    DISCARDED = "discarded"
    KEPT = "kept-with-object"
    STORED = "stored-apart"
    OWN_CASE = "own-case"
    RETURNED = "returned"


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
    result: Maybe[str] = public(structural=True)
    """What came of it."""
    outcome: Maybe[Choice] = public(structural=True)
    """Whether it was chosen or given up."""
    because: Maybe[str] = public()
    """Why."""
    time: Maybe[Duration] = public()
    """Bench time it took, beyond the step's own. Unit: duration."""


@record
class Step(Record):
    """One operation: what was done, to which part, with what; time; drying; what came of it.

    Plain text is a step in words only: it is counted and searchable, and said to be words only.
    Exactly one structural key says what happened: `adds`, `removes`, `takes-off`, `puts-back`,
    `opens`, `joins` or `treats`. `do` names the operation where that does not say it.
    """

    SHORT: ClassVar[str] = "words"

    words: Maybe[str] = public()
    """The step in words."""
    do: Maybe[Annotated[str, Words("operations")]] = public(structural=True)
    """The operation: a trade word such as line, wash, attach."""
    adds: str | None = public(structural=True)
    """The id of the layer or part that is laid on: new within the case."""
    removes: Many[PlaceRef] = public((), structural=True)
    """What is taken away for good."""
    takes_off: Many[PlaceRef] = public((), structural=True)
    """What is taken off and comes back later."""
    puts_back: Many[PlaceRef] = public((), structural=True)
    """What was taken off and is put on again."""
    opens: Many[PlaceRef] = public((), structural=True)
    """What is lifted or opened without coming off."""
    joins: Many[PlaceRef] = public((), structural=True)
    """What is joined to something else, named in `to`."""
    treats: Many[PlaceRef] = public((), structural=True)
    """What is treated in place: cleaned, washed, consolidated, dressed."""
    onto: Many[PlaceRef] = public((), structural=True)
    """What it is laid on: a part, a layer, or a face such as `sheet/verso`."""
    over: Many[PlaceRef] = public((), structural=True)
    """What it covers without being bonded to it."""
    to: Many[PlaceRef] = public((), structural=True)
    """What it is joined to."""
    spans: Mapping[PlaceRef, Length] = public({}, structural=True)
    """Zones of a layer that covers several parts, each with its width. Unit: length."""
    in_thickness_of: Maybe[PlaceRef] = public(structural=True)
    """For an infill: the part in whose thickness it lies."""
    hides: Many[PlaceRef] = public((), structural=True)
    """What lies hidden under it though nothing bonds the two."""
    is_: Maybe[str] = public(structural=True)
    """What the added thing is, if not a layer: `part`."""
    material: Maybe[Material] = public(structural=True)
    """What was laid on or put in."""
    adhesive: Maybe[Material] = public(structural=True)
    """What it was stuck with; or `none`, `unnamed` (there, not named), `unknown`."""
    agent: Maybe[Material] = public(structural=True)
    """What acted and went: water, a solvent, a gel."""
    held: Many[str] = public((), structural=True)
    """How it is held mechanically: sewn, laced, tacked, slotted."""
    face: Maybe[str] = public(structural=True)
    """Which face of the part: inner, outer, recto, verso."""
    grain: Maybe[Grain] = public(structural=True)
    """Direction of the grain: on a spine `along` is head to tail; else along or across the part."""
    cut: Maybe[Size] = public(structural=True)
    """The size it was cut to; width defaults to the spine's arc. Unit: length."""
    temporary: Maybe[bool] = public(structural=True)
    """Whether it comes off again before the end: yes or no."""
    scope: Maybe[Scope] = public(structural=True)
    """How much of the part it covers; the whole where left out."""
    bath: Maybe[Bath] = public(structural=True)
    """The bath, for washing and the like."""
    leaves: Maybe[Leaves] = public(structural=True)
    """What is still there of what was removed."""
    fate: Maybe[Fate] = public(structural=True)
    """Where what was removed went: discarded, kept-with-object, stored-apart, own-case."""
    like: Maybe[str] = public(structural=True)
    """A recipe of the lab: what is not written here comes from it, and is shown as such."""
    except_: Maybe[str] = public(structural=True)
    """What was left out of it, and why."""
    allowed_by: Many[TestRef] = public((), structural=True)
    """The test that allowed it."""
    because: Maybe[str] = public()
    """Why it was done so."""
    tools: Many[ToolWord] = public(())
    """Tools and equipment used."""
    tried: Many[Trial] = public((), structural=True)
    """What was tried on the way."""
    result: Maybe[str] = public()
    """What came of it."""
    outcome: Maybe[Outcome] = public(structural=True)
    """Whether it was done, partly done or given up; done where left out."""
    finds: Many[Finding] = public(())
    """What came to light in doing it."""
    hands: Many[PersonRef] = public(())
    """Who did it; the episode's hands where left out. Source: AIC Commentary 27 B."""
    date: Maybe[Date] = public()
    """When, if not on the episode's dates. Source: AIC Commentary 27 B."""
    time: Maybe[Duration] = public()
    """Time at the bench. Unit: duration."""
    waits: Maybe[Duration] = public()
    """Time waited with hands free, as for a poultice. Unit: duration."""
    dries: Maybe[Drying] = public()
    """Drying after it. Unit: duration."""
    photo: Many[PhotoRef] = public(())
    """Photos that show it. Source: AIC Commentary 27 B, images of what will be obscured."""
    note: Maybe[str] = lab()
    """A note for the lab alone."""
    assumed: frozenset[str] = field(default=frozenset(), metadata={"own": True})
    """The fields that were filled in from the recipe named in `like`."""


VERBS = ("adds", "removes", "takes_off", "puts_back", "opens", "joins", "treats")
"""The structural fields of a step, one of which says what happened."""


@record
class Episode(Record):
    """One sitting or a few: dates, hands, steps, prose. Source: AIC Commentary 27 B."""

    episode: Maybe[Count] = public()
    """Its number; by the order of the files where left out."""
    title: Maybe[str] = public()
    """What it was about, in a few words."""
    date: Maybe[Date] = public()
    """The day or days. Source: AIC Commentary 27 B, dated record of all treatment actions."""
    hands: Many[PersonRef] = public(())
    """Who was at the bench. Source: AIC Commentary 27 B."""
    climate: Maybe[str] = public()
    """Temperature and humidity of the room, where they matter."""
    steps: Many[Step] = public(())
    """What was done, in order."""
    photo: Many[PhotoRef] = public(())
    """Photos of the sitting as a whole."""
    time: Maybe[Duration] = public()
    """Bench time of the whole sitting, where steps have none of their own. Unit: duration."""
    story: str = public("")
    """The sitting in prose: the text below the front matter."""


@record
class Recipe(Record):
    """A way of working that the lab repeats: a step names it in `like`."""

    label: Maybe[str] = public()
    """What the lab calls it."""
    gloss: Maybe[str] = public()
    """What it is for, in plain words."""
    step: Step = public(Step())
    """What a step takes from it where it does not say otherwise itself."""
