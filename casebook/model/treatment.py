"""The treatment: the episodes and their steps, with what each laid, took and treated."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import Annotated, ClassVar

from casebook.model.base import Many, Maybe, Record, Words, lab, public, record
from casebook.model.condition import Finding, TestRef
from casebook.model.details import (
    Against,
    Bath,
    Drying,
    Grain,
    Hand,
    Leaves,
    Outcome,
    Scope,
    Trial,
    Way,
    WentTo,
)
from casebook.model.marks import Match, PhotoRef
from casebook.model.materials import Material, ToolWord
from casebook.model.object import Bond, PlaceRef, Size, Walls
from casebook.values.dates import Date
from casebook.values.durations import Duration
from casebook.values.quantities import Count, Length


@record
class Step(Record):
    """One operation: what was done, to which part, with what; time; drying; what came of it.

    Plain text is a step in words only: it is counted and searchable, and said to be words only.
    Exactly one structural key says what happened: `adds`, `removes`, `takes-off`, `puts-back`,
    `opens`, `joins` or `treats`. `do` names the operation where that does not say it.

    A run says `each` and `steps` instead: its steps were done on every member. A place in it is
    the member's own (`spine` is `volume 3/spine`), and so is a layer it adds (`volume 3/lining`).
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
    spans: Mapping[PlaceRef, Maybe[Length]] = public({}, structural=True)
    """Zones of a layer that covers several parts, each with its width. Unit: length."""
    bonds: Many[Bond] = public((), structural=True)
    """For what is held in several ways at once: each bond with its own place."""
    in_thickness_of: Maybe[PlaceRef] = public(structural=True)
    """For an infill: the part in whose thickness it lies."""
    hides: Many[PlaceRef] = public((), structural=True)
    """What lies hidden under it though nothing bonds the two."""
    cuts: Many[PlaceRef] = public((), structural=True)
    """What a sewing, a tack or a slot goes through, or what was cut for it."""
    soaks_in: Many[PlaceRef] = public((), structural=True)
    """For a consolidant or a size: what it went into and stays in."""
    walls: Maybe[Walls] = public(structural=True)
    """For a hollow tube: its plies on the spine and away from it, such as `1 on, 2 off`."""
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
    fate: Maybe[WentTo] = public(structural=True)
    """Where what was removed went: discarded, kept-with-object, stored-apart, own-case."""
    against_original: Maybe[Against] = public(structural=True)
    """Whether it is weaker than, like or stronger than the original that it lies across."""
    ways: Many[Way] = public((), structural=True)
    """Where one operation was done in several ways: each with its share of the part."""
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
    match: Many[Match] = public(())
    """How near the colour of the repair, and of the trials, comes to the original."""
    result: Maybe[str] = public()
    """What came of it."""
    falls_short: Maybe[str] = public()
    """What was wished for and not reached."""
    outcome: Maybe[Outcome] = public(structural=True)
    """Whether it was done, partly done or given up; done where left out."""
    finds: Many[Finding] = public(())
    """What came to light in doing it."""
    hands: Many[Hand] = public(())
    """Who did it; the episode's hands where left out. Source: AIC Commentary 27 B."""
    date: Maybe[Date] = public()
    """When, if not on the episode's dates. Source: AIC Commentary 27 B."""
    time: Maybe[Duration] = public()
    """Time at the bench. Unit: duration."""
    waits: Maybe[Duration] = public()
    """Time waited with hands free, as for a poultice. Unit: duration."""
    dries: Many[Drying] = public(())
    """Drying after it, stage by stage. Unit: duration."""
    beside: Maybe[bool] = public(structural=True)
    """Whether it was done at the same time as the step before it: yes or no."""
    photo: Many[PhotoRef] = public(())
    """Photos that show it. Source: AIC Commentary 27 B, images of what will be obscured."""
    each: Many[PlaceRef] = public((), structural=True)
    """For a run of steps: the members on which it was done one after the other."""
    steps: Many[Step] = public(())
    """For a run: its steps, written once; a time says `each` or `all`."""
    differs: Many[Differs] = public((), structural=True)
    """For a run: where a member was treated otherwise."""
    note: Maybe[str] = lab()
    """A note for the lab alone."""
    assumed: tuple[str, ...] = field(default=(), metadata={"own": True})
    """The fields that were filled in from the recipe named in `like`, in order: no set, since the
    same case must always read the same to be found again."""


@record
class Differs(Record):
    """How one step of a run was otherwise for some of its members."""

    in_: Many[PlaceRef] = public((), structural=True)
    """The members it speaks of."""
    step: Maybe[str] = public(structural=True)
    """Which step: what it adds, its operation, or its number in the run."""
    instead: Maybe[Step] = public(structural=True)
    """What was otherwise: the keys written here take the place of the step's own."""
    left_out: Maybe[bool] = public(structural=True)
    """Whether the step was left out for them: yes or no."""
    because: Maybe[str] = public()
    """Why."""


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
    hands: Many[Hand] = public(())
    """Who was at the bench. Source: AIC Commentary 27 B."""
    climate: Maybe[str] = public()
    """Temperature and humidity of the room, where they matter."""
    steps: Many[Step] = public(())
    """What was done, in order."""
    order: Maybe[str] = public(structural=True)
    """`not recorded` or `unknown` where nobody can say in which order the steps were done."""
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
