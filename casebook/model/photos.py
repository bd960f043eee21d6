"""Photographs: what each shows, when and in what light, and the image file behind it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import ClassVar

from casebook.model.base import Audience, Many, Maybe, Record, lab, public, record
from casebook.model.condition import PersonRef, Stage
from casebook.model.marks import Fit, Scale, Target
from casebook.model.object import PlaceRef
from casebook.values.dates import Date


@dataclass(frozen=True, slots=True)
class Image:
    """An image file as inspected: size in pixels after turning upright, and where its bytes are.

    `digest` names the original's bytes; it is a key to pictures and never published itself.
    `areas` gives the mean of the areas that the record compares by colour, by the canonical text
    of their boxes: red, green and blue of sRGB in linear light, 0 to 1.
    """

    digest: str
    width: int
    height: int
    areas: Mapping[str, tuple[float, float, float]] = field(default_factory=dict)


@record
class Photo(Record):
    """One photograph. Source: AIC Commentary 27 B; AIC wiki, PMG Examination and Documentation."""

    SHORT: ClassVar[str] = "file"

    file: str = lab("")
    """The image's file name in the case's folder or its `photos/`."""
    id: str = public("")
    """Its name within the case, for links that last."""
    stage: Stage | None = public()
    """Before, during, after, or later. Source: AIC Commentary 27 B."""
    view: Maybe[str] = public()
    """What is in front of the lens: spine, front, opening, detail."""
    light: Maybe[str] = public()
    """The light: normal, raking from the left, transmitted, UV."""
    date: Maybe[Date] = public()
    """When it was taken. Source: AIC Commentary 27 B."""
    by: Many[PersonRef] = public(())
    """Who took it."""
    shows: Many[PlaceRef] = public(())
    """Parts, layers and findings that can be seen in it."""
    medium: Maybe[str] = public()
    """What it is, if not a file here: slide, negative, print, X-ray film."""
    held: Maybe[str] = public()
    """Where it is kept, if not here."""
    caption: Maybe[str] = public()
    """What a reader should see in it."""
    scale: Maybe[Scale] = public()
    """Whether a scale is in frame; two points on it give lengths. Source: AIC wiki, PMG."""
    target: Maybe[Target] = public()
    """Whether a colour or grey target is in frame; its patches correct colours. Source: AIC wiki,
    PMG."""
    fit: Maybe[Fit] = public()
    """Two points by which it is laid over another photo of the same view."""
    audience: Audience | None = lab()
    """The widest audience for this photo; left out, the case's own."""
