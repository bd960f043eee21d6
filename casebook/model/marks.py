"""What is noted on a photo: marks, a scale, a colour target, points to lay it over another."""

from __future__ import annotations

from typing import Annotated, ClassVar

from casebook.model.base import Many, Maybe, Points, Record, items, known, public, record
from casebook.values.colours import Colour
from casebook.values.points import Box, Outline, Path, Point
from casebook.values.quantities import Length

PhotoRef = Annotated[str, Points("photo")]


@record
class Mark(Record):
    """A place marked on a photo, by one of `box`, `line` and `outline`.

    Points are in pixels of the upright original or in per cent of it, from the top left corner.
    """

    photo: Maybe[PhotoRef] = public()
    """The photo it is drawn on."""
    box: Maybe[Box] = public()
    """An upright rectangle: `x y width height`. Unit: px or %."""
    line: Maybe[Path] = public()
    """A line from point to point: `x y, x y`. Unit: px or %."""
    outline: Maybe[Outline] = public()
    """The edge of a patch: `x y, x y, x y`. Unit: px or %."""
    label: Maybe[str] = public()
    """What exactly is marked, where the finding does not say it."""


@record
class Scale(Record):
    """A scale in frame: `yes` or `no`, or two points on it and the length between them."""

    SHORT: ClassVar[str] = "in-frame"

    in_frame: Maybe[bool] = public()
    """Whether a scale is in frame: yes or no; yes where points are given."""
    from_: Maybe[Point] = public()
    """One end of a length read off the scale. Unit: px or %."""
    to: Maybe[Point] = public()
    """The other end. Unit: px or %."""
    length: Maybe[Length] = public()
    """The length between the two. Unit: length."""


@record
class Swatch(Record):
    """A colour: as measured (plain text), or an area of a photo that shows it."""

    SHORT: ClassVar[str] = "colour"

    colour: Maybe[Colour] = public()
    """The colour as measured, for the light D65. Unit: CIELAB."""
    photo: Maybe[PhotoRef] = public()
    """The photo on which it is seen."""
    box: Maybe[Box] = public()
    """The area of the photo, `x y width height`. Unit: px or %."""


@record
class Target(Record):
    """A colour or grey target in frame: `yes` or `no`, or its patches with their true colours."""

    SHORT: ClassVar[str] = "in-frame"

    in_frame: Maybe[bool] = public()
    """Whether a colour or grey target is in frame: yes or no; yes where patches are given."""
    patches: Many[Swatch] = public(())
    """Its grey patches: each an area of this photo, with the colour its maker gives."""


@record
class Fit(Record):
    """How a photo lies over another of the same view: two points that are the same on both."""

    over: Maybe[PhotoRef] = public()
    """The photo it is laid over."""
    here: Many[Point] = public(())
    """Two points on this photo. Unit: px or %."""
    there: Many[Point] = public(())
    """The same two points on the other photo, in the same order. Unit: px or %."""


@record
class Match(Record):
    """How near the colour of a repair comes to the original, beside the trials of the step."""

    original: Maybe[Swatch] = public()
    """The colour of the original: as measured, or an area of a photo."""
    fill: Maybe[Swatch] = public()
    """The colour of the repair: as measured, or an area of a photo."""
    because: Maybe[str] = public()
    """Why it is near enough, or why it was meant to differ."""


def in_frame(one: Scale | Target) -> bool | None:
    """Whether the scale or target is in frame; None where that is not said."""
    noted = (one.from_, one.to, one.length) if isinstance(one, Scale) else items(one.patches)
    return True if any(known(each) for each in noted) else known(one.in_frame)
