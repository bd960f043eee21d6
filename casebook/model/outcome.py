"""What remains of a treatment: how it can be undone, and the time that it took as a whole."""

from __future__ import annotations

from typing import ClassVar

from casebook.model.base import Many, Maybe, Record, public, record
from casebook.model.condition import LayerRef
from casebook.model.materials import Material
from casebook.values.durations import Duration


@record
class Claim(Record):
    """One statement on how a layer comes off again."""

    takes_off: Many[LayerRef] = public((), structural=True)
    """The layer or layers it speaks of."""
    with_: Maybe[Material] = public(structural=True)
    """What opens it: an agent, or `by hand` in words."""
    leaves: Maybe[str] = public(structural=True)
    """What stays behind."""
    because: Maybe[str] = public()
    """What the claim rests on."""


@record
class Reversibility(Record):
    """How the treatment can be undone. Source: ECCO Professional Guidelines II (2003) Art. 9."""

    SHORT: ClassVar[str] = "says"

    says: Maybe[str] = public(structural=True)
    """In prose, for readers."""
    claims: Many[Claim] = public((), structural=True)
    """Layer by layer, so that it can be checked."""


@record
class Lump(Record):
    """Time for the whole, where it was not kept step by step; never added to the steps."""

    SHORT: ClassVar[str] = "spent"

    estimated: Maybe[Duration] = public()
    """What was estimated. Unit: duration. Source: AIC Commentary 26 B."""
    spent: Maybe[Duration] = public()
    """What it took. Unit: duration."""
    covers: Maybe[str] = public()
    """What the figure covers, such as "whole treatment"."""
