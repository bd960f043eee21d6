"""Condition and evidence: findings, tests, earlier treatments, layers as found, follow-ups."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from typing import Annotated, ClassVar

from casebook.model.base import (
    Audience,
    CaseRef,
    Many,
    Maybe,
    Points,
    Record,
    Words,
    lab,
    public,
    record,
)
from casebook.model.marks import Mark, PhotoRef
from casebook.model.materials import Material
from casebook.model.object import Bond, PlaceRef, Walls
from casebook.values.dates import Date
from casebook.values.quantities import Acidity, Count, Grammage, Length

PersonRef = Annotated[str, Points("person")]
TestRef = Annotated[str, Points("test")]
LayerRef = Annotated[str, Points("layer")]


class Stage(StrEnum):
    """When in the treatment something was seen or photographed."""

    BEFORE = "before"
    DURING = "during"
    AFTER = "after"
    LATER = "later"


LATE = (Stage.AFTER, Stage.LATER)
"""The stages at which the treatment was over."""


class Origin(StrEnum):
    """Whether a layer belongs to the object as made, came later, or was put there by us."""

    ORIGINAL = "original"
    LATER = "later"


@record
class Found(Record):
    """A layer that was there on arrival. The list has no order: `onto` and `over` give it."""

    id: str = public("", structural=True)
    """Its name within the case; never used twice."""
    material: Maybe[Material] = public(structural=True)
    """What it is, or may be."""
    onto: Many[PlaceRef] = public((), structural=True)
    """What it is bonded to: a part or a layer."""
    over: Many[PlaceRef] = public((), structural=True)
    """What it covers without being bonded to it."""
    joins: Many[PlaceRef] = public((), structural=True)
    """What it holds together."""
    spans: Mapping[PlaceRef, Maybe[Length]] = public({}, structural=True)
    """Zones of a layer that covers several parts, each with its width. Unit: length."""
    bonds: Many[Bond] = public((), structural=True)
    """For what is held in several ways at once: each bond with its own place."""
    hides: Many[PlaceRef] = public((), structural=True)
    """What lies hidden under it though nothing bonds the two."""
    cuts: Many[PlaceRef] = public((), structural=True)
    """What its sewing, tack or slot goes through."""
    soaks_in: Many[PlaceRef] = public((), structural=True)
    """For a consolidant, a size or a dressing: what it went into and stays in."""
    walls: Maybe[Walls] = public(structural=True)
    """For a hollow tube: its plies on the spine and away from it, such as `1 on, 2 off`."""
    adhesive: Maybe[Material] = public(structural=True)
    """What it is stuck with: a material, `unknown`, `unnamed` (there, not named) or `none`."""
    held: Many[str] = public((), structural=True)
    """How it is held mechanically: sewn, laced, tacked, slotted."""
    origin: Maybe[Origin] = public(structural=True)
    """Original, later or unknown. Source: AIC Commentary 25 B, evidence of past treatment."""
    weight: Maybe[Grammage] = public(structural=True)
    """Mass per area. Unit: g/m²."""
    height: Maybe[Length] = public(structural=True)
    """From head to tail. Unit: length."""
    width: Maybe[Length] = public(structural=True)
    """Across. Unit: length."""
    thickness: Maybe[Length] = public(structural=True)
    """Through it. Unit: length."""
    note: Maybe[str] = public()
    """Anything else about it."""


@record
class History(Record):
    """An earlier treatment, on record or read from the object. Source: AIC Commentary 25 B."""

    date: Maybe[Date] = public()
    """When it was done."""
    hands: Many[str] = public(())
    """Who did it."""
    what: Maybe[str] = public()
    """What was done."""
    case: Maybe[CaseRef] = public()
    """The case that tells of it, where it is one of this archive."""
    state: Maybe[str] = public()
    """How it stands now: sound, failed, partly lost, half done and taken over."""
    because: Maybe[str] = public()
    """What made it fail, or how it is known."""
    audience: Audience | None = lab()
    """The widest audience for this item; left out, the case's own."""


@record
class Finding(Record):
    """An observation about a part; what is seen is kept apart from what it is taken to mean."""

    id: str = public("")
    """Its name within the case, for photos and marks."""
    part: Many[PlaceRef] = public(())
    """Where: a part or a layer."""
    damage: Many[Annotated[str, Words("damages")]] = public(())
    """The damage or state, in trade words."""
    seen: Maybe[str] = public()
    """What is seen. Source: AIC Commentary 25 B, observation kept distinct from interpretation."""
    means: Maybe[str] = public()
    """What it is taken to mean. Source: AIC Commentary 25 B."""
    stage: Stage | None = public()
    """When it was seen; before treatment where left out."""
    date: Maybe[Date] = public()
    """The day it was seen."""
    count: Maybe[Count] = public()
    """How many. Unit: count."""
    extent: Maybe[str] = public()
    """How far it reaches, in words or figures."""
    sought: Maybe[str] = public()
    """What was looked for, where the finding is the outcome of a search."""
    found: Maybe[str] = public()
    """The outcome of the search, such as "not seen"."""
    because: Maybe[str] = public()
    """Why it was found or not found so."""
    photo: Many[PhotoRef] = public(())
    """Photos that show it."""
    marks: Many[Mark] = public(())
    """Where it is seen on photos, each with a box, a line or an outline."""
    audience: Audience | None = lab()
    """The widest audience for this item; left out, the case's own."""


@record
class Test(Record):
    """A try-out or an analysis, on the object or on a stand-in. Source: AIC Commentary 25 B."""

    id: str = public("", structural=True)
    """Its name within the case, so that a step can point at it."""
    part: Many[PlaceRef] = public((), structural=True)
    """What it was made on."""
    of: Maybe[str] = public(structural=True)
    """What exactly: the red thread, the black ink."""
    agent: Many[Material] = public((), structural=True)
    """What was put on it; nothing for an analysis by light or X-ray."""
    method: Maybe[str] = public(structural=True)
    """How: damp swab for 30 s, spot test, UV light, XRF."""
    result: Maybe[str] = public(structural=True)
    """What came of it: bleeds, no change, or a reading."""
    ph: Maybe[Acidity] = public(structural=True)
    """A measured pH. Unit: pH."""
    times: Maybe[Count] = public(structural=True)
    """How often it was repeated on the same spot. Unit: count."""
    stand_in: Maybe[str] = public(structural=True)
    """What it was made on, if not the object itself: a like sheet, an offcut."""
    sample: Maybe[str] = public()
    """What was taken from the object for it, from where, and what became of it."""
    laboratory: Maybe[str] = public()
    """Where it was made, if not in this lab."""
    by: Many[PersonRef] = public(())
    """Who made it."""
    date: Maybe[Date] = public()
    """When it was made."""
    means: Maybe[str] = public()
    """What the result is taken to mean."""
    photo: Many[PhotoRef] = public(())
    """Photos that show it."""


@record
class Examination(Record):
    """Why, how and by whom the object was examined. Source: AIC Commentary 25 B."""

    because: Maybe[str] = public()
    """Its purpose and circumstances."""
    method: Many[str] = public(())
    """How it was looked at: raking light, loupe, UV."""
    by: Many[PersonRef] = public(())
    """Who looked."""
    date: Maybe[Date] = public()
    """When."""


class Holding(StrEnum):
    """How a repair stands at a follow-up."""

    SOUND = "sound"
    LIFTING = "lifting"
    FAILED = "failed"
    CHANGED = "changed"


@record
class FollowUp(Record):
    """A later look at the object: did it hold?"""

    date: Maybe[Date] = public(structural=True)
    """When it was looked at."""
    layer: Many[PlaceRef] = public((), structural=True)
    """Which layers or parts; all where left out."""
    state: Maybe[Holding] = public(structural=True)
    """How it stands: sound, lifting, failed, changed or unknown."""
    seen: Maybe[str] = public()
    """What was seen."""
    because: Maybe[str] = public()
    """What it is put down to."""
    by: Many[PersonRef] = public(())
    """Who looked."""
    photo: Many[PhotoRef] = public(())
    """Photos taken then."""
    next: Maybe[Date] = public()
    """When it should be looked at again."""


@record
class LeftAlone(Record):
    """Something left as it is on purpose, and why."""

    part: Many[PlaceRef] = public(())
    """The part concerned."""
    what: Maybe[str] = public()
    """What was not done to it."""
    because: Maybe[str] = public()
    """Why."""


@record
class Hazard(Record):
    """A danger of the object or of the work, and the caution that goes with it."""

    SHORT: ClassVar[str] = "what"

    what: Maybe[str] = public()
    """What it is: mould, arsenical green, lead, red rot."""
    part: Many[PlaceRef] = public(())
    """Where it is."""
    caution: Maybe[str] = public()
    """What was and is to be minded."""
