"""The colour of a repair against the original: CIEDE2000 between what was measured or photographed.

A measured colour is taken as it is, for the light D65. A colour read from a photo is the mean of an
area in linear light, corrected by the grey target in frame where the true colours of its patches
are on record: in each channel apart, true = gain · seen, and with two patches or more that differ
true = gain · seen + rest, by least squares. That takes out exposure, a cast of the light and stray
light; it does not take out what the camera's own filters get wrong, nor uneven lighting.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import Enum
from statistics import fmean

from casebook.compute.marks import image_of
from casebook.model.archive import Case
from casebook.model.base import Maybe, items, known, walk
from casebook.model.details import Trial
from casebook.model.marks import Match, Swatch
from casebook.model.photos import Image, Photo
from casebook.model.proposal import Choice
from casebook.model.treatment import Step
from casebook.values.colours import Colour

Three = tuple[float, float, float]
"""L, a and b of CIELAB for D65; or red, green and blue of sRGB in linear light."""


class Basis(Enum):
    """What a colour rests on, the surest first."""

    MEASURED = 0
    CORRECTED = 1
    AS_SHOT = 2


@dataclass(frozen=True, slots=True)
class Tone:
    """A colour in CIELAB for D65, what it rests on, and the photo it was read from ("" if none).

    `off` is how far, by CIEDE2000, the worst patch of the photo's target lies from its own colour
    after correcting; None without a target of three patches or more.
    """

    lab: Three
    basis: Basis
    photo: str = ""
    off: float | None = None


@dataclass(frozen=True, slots=True)
class Tried:
    """A colour beside the original: that of a trial, or (`trial` None) of the repair as it lies.

    `difference` is CIEDE2000, `within` whether that is no more than the lab's tolerance (None
    without one).
    """

    trial: Trial | None
    tone: Tone
    difference: float
    within: bool | None

    @property
    def chosen(self) -> bool:
        """Whether it is what was taken in the end."""
        return self.trial is None or self.trial.outcome is Choice.CHOSEN


@dataclass(frozen=True, slots=True)
class Matched:
    """One comparison of a step: the original, and every colour that was held against it."""

    step: Step
    match: Match
    original: Tone
    tried: tuple[Tried, ...]

    @property
    def mixed(self) -> bool:
        """Whether colours of different standing are compared, so that a difference is less sure."""
        return len({self.original.basis, *(one.tone.basis for one in self.tried)}) > 1


def matches(
    case: Case, images: Mapping[str, Image], tolerance: float | None
) -> tuple[Matched, ...]:
    """The comparisons of a case in the order of its steps; one without an original is left out."""
    photos = {name: one for one in items(case.photos) for name in (one.file, one.id) if name}
    sight = Sight(photos, images)
    found = (_matched(step, one, sight, tolerance) for step, one in _asked(case))
    return tuple(one for one in found if one is not None)


def _asked(case: Case) -> Iterator[tuple[Step, Match]]:
    for one in walk(case):
        if isinstance(one, Step):
            yield from ((one, match) for match in items(one.match))


@dataclass(frozen=True, slots=True)
class Sight:
    """The photos of a case by name, and their images with the areas that were read."""

    photos: Mapping[str, Photo]
    images: Mapping[str, Image]

    def tone(self, swatch: Maybe[Swatch]) -> Tone | None:
        """A colour: as measured if it was, else as read from a photo; None where neither is."""
        told = known(swatch)
        if told is None:
            return None
        measured = known(told.colour)
        return Tone(lab_of(measured), Basis.MEASURED) if measured else self._read(told)

    def _read(self, swatch: Swatch) -> Tone | None:
        name, box = known(swatch.photo), known(swatch.box)
        photo = self.photos.get(name or "")
        image = image_of(photo, self.images) if photo else None
        if not (photo and image and box and box.canonical() in image.areas):
            return None
        seen = image.areas[box.canonical()]
        way = correction(photo, image)
        basis = Basis.CORRECTED if way else Basis.AS_SHOT
        lab = lab_of_linear(way(seen) if way else seen)
        return Tone(lab, basis, photo.id or photo.file, way.off if way else None)


def _matched(step: Step, match: Match, sight: Sight, tolerance: float | None) -> Matched | None:
    original = sight.tone(match.original)
    if original is None:
        return None
    colours = ((trial, trial.colour) for trial in items(step.tried))
    tones = [(trial, sight.tone(one)) for trial, one in (*colours, (None, match.fill))]
    tried = tuple(_tried(trial, tone, original, tolerance) for trial, tone in tones if tone)
    return Matched(step, match, original, tried) if tried else None


def _tried(trial: Trial | None, tone: Tone, original: Tone, tolerance: float | None) -> Tried:
    difference = ciede2000(original.lab, tone.lab)
    return Tried(trial, tone, difference, None if tolerance is None else difference <= tolerance)


# --- the grey target -------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class Channel:
    """How one channel was seen and how it is: true = gain · seen + rest, in linear light."""

    gain: float
    rest: float

    def __call__(self, seen: float) -> float:
        """The true value of a seen one."""
        return self.gain * seen + self.rest


@dataclass(frozen=True, slots=True)
class Correction:
    """What takes the colours of a photo to the true ones, and how far that leaves its patches off.

    `off` is the largest difference by CIEDE2000; None with fewer than three patches, through which
    a line always goes.
    """

    channels: tuple[Channel, Channel, Channel]
    off: float | None = None

    def __call__(self, seen: Three) -> Three:
        """The true colour of a seen one, both in linear light."""
        red, green, blue = (one(part) for one, part in zip(self.channels, seen, strict=True))
        return red, green, blue


def correction(photo: Photo, image: Image) -> Correction | None:
    """How a photo's colours are corrected by its target; None where that cannot be."""
    target = known(photo.target)
    pairs = (
        [pair for one in items(target.patches) if (pair := _patch(one, image))] if target else []
    )
    if not pairs:
        return None
    found = [
        channel([seen[n] for seen, _ in pairs], [true[n] for _, true in pairs]) for n in range(3)
    ]
    red, green, blue = found
    if not (red and green and blue):
        return None
    way = Correction((red, green, blue))
    return replace(way, off=_off(way, pairs)) if len(pairs) >= 3 else way


def _off(way: Correction, pairs: Sequence[tuple[Three, Three]]) -> float:
    """How far the worst patch lies from its own colour after correcting."""
    return max(ciede2000(lab_of_linear(way(seen)), lab_of_linear(true)) for seen, true in pairs)


def channel(seen: Sequence[float], true: Sequence[float]) -> Channel | None:
    """The straight line through patches of one channel; through 0 where they do not differ."""
    middle, meant = fmean(seen), fmean(true)
    spread = sum((one - middle) ** 2 for one in seen)
    if spread > _ONE_LEVEL:
        along = sum((a - middle) * (b - meant) for a, b in zip(seen, true, strict=True))
        gain = along / spread
        return Channel(gain, meant - gain * middle) if gain > 0 else None
    return Channel(meant / middle, 0.0) if middle > 0 and meant > 0 else None


_ONE_LEVEL = 0.05**2
"""Patches whose light differs by less (in squares summed) give no second point of a line."""


def _patch(one: Swatch, image: Image) -> tuple[Three, Three] | None:
    colour, box = known(one.colour), known(one.box)
    seen = image.areas.get(box.canonical()) if box else None
    return (seen, linear_of(lab_of(colour))) if colour and seen else None


# --- colour spaces, by coloraide -------------------------------------------------------------


def ciede2000(one: Three, other: Three) -> float:
    """The difference of two colours, both CIELAB for one white. Source: CIE 142-2001 (not read)."""
    from coloraide import Color  # noqa: PLC0415 - most cases compare no colours

    return float(Color("lab-d65", one).delta_e(Color("lab-d65", other), method="2000"))


def lab_of(colour: Colour) -> Three:
    """A colour of the record in CIELAB, as given, or from sRGB for D65."""
    if colour.lab is not None:
        light, a, b = (float(part) for part in colour.lab)
        return light, a, b
    return _converted("srgb", [level / 255 for level in colour.rgb or (0, 0, 0)], "lab-d65")


def lab_of_linear(light: Three) -> Three:
    """CIELAB for D65 of sRGB in linear light."""
    return _converted("srgb-linear", light, "lab-d65")


def linear_of(lab: Three) -> Three:
    """The sRGB in linear light of CIELAB for D65; a part may lie outside 0 to 1."""
    return _converted("lab-d65", lab, "srgb-linear")


def shown(lab: Three) -> str:
    """The colour as a screen can come nearest to it: `#rrggbb`."""
    from coloraide import Color  # noqa: PLC0415

    return str(Color("lab-d65", lab).convert("srgb").clip().to_string(hex=True))


def _converted(space: str, parts: Sequence[float], other: str) -> Three:
    from coloraide import Color  # noqa: PLC0415

    first, second, third = Color(space, list(parts)).convert(other).coords(nans=False)
    return float(first), float(second), float(third)
