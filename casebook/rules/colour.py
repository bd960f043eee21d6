"""Rules about colours compared: both are there, can be read, and are near enough or explained."""

from __future__ import annotations

from collections.abc import Iterator

from casebook.compute.colour import matches
from casebook.compute.marks import image_of
from casebook.model.base import items, known
from casebook.model.marks import Swatch, Target
from casebook.model.photos import Image, Photo
from casebook.model.treatment import Step
from casebook.rules.declare import ADVICE, MISTAKE, NO_SOURCE, OWN, SHOULD, Raised, rule
from casebook.rules.look import Look

_AREA = "`{photo: front-after, box: 420 300 60 60}`, or a measured colour such as `L 52 a 3 b 10`"


@rule(
    why="A comparison needs two colours, and each must be measured, or be found on a photo.",
    source=OWN,
    fields=(
        *("Step.match", "Match.original", "Match.fill", "Step.tried", "Trial.colour"),
        *("Swatch.colour", "Swatch.photo", "Swatch.box", "Case.photos"),
    ),
    weight=MISTAKE,
    raises="steps: [{do: infill, match: {original: L 52 a 3 b 10}}]",
    passes="steps: [{do: infill, match: {original: L 52 a 3 b 10, fill: L 53 a 3 b 11}}]",
)
def colours_to_compare(look: Look) -> Iterator[Raised]:
    """A `match` has an original and a fill, or trials with a colour; areas lie in their photo."""
    for step in look.steps:
        for match in items(step.match):
            if not match.tells("original"):
                hint = f"add `original: …`: {_AREA}"
                yield Raised("nothing says what the original's colour is", match.span(), hint)
            if not match.tells("fill") and not any(
                one.tells("colour") for one in items(step.tried)
            ):
                hint = f"add `fill: …`, or `colour: …` to what was tried: {_AREA}"
                yield Raised("no colour is held against the original", match.span(), hint)
        for swatch in _swatches(step):
            yield from _area(look, swatch)


def _swatches(step: Step) -> Iterator[Swatch]:
    """The colours that a step compares."""
    given = [side for one in items(step.match) for side in (one.original, one.fill)]
    for one in (*given, *(trial.colour for trial in items(step.tried))):
        swatch = known(one)
        if swatch is not None:
            yield swatch


def _area(look: Look, swatch: Swatch) -> Iterator[Raised]:
    """What is said of a colour that is neither measured nor found on a photo."""
    name, box = known(swatch.photo), known(swatch.box)
    if swatch.tells("colour"):
        return
    if not name or not box:
        lacking = "photo" if not name else "box"
        yield Raised(f"this colour has no `{lacking}`", swatch.span(), f"write {_AREA}")
        return
    image = next((_image(look, one) for one in _photos(look) if name in (one.id, one.file)), None)
    if image and not box.inside(image.width, image.height):
        message = f"`{box}` is outside the picture"
        hint = f"the picture is {image.width} pixels wide and {image.height} high, upright"
        yield Raised(message, swatch.span("box"), hint)


def _photos(look: Look) -> tuple[Photo, ...]:
    return items(look.case.photos)


def _image(look: Look, photo: Photo) -> Image | None:
    return image_of(photo, look.archive.images.get(look.case.id, {}))


@rule(
    why="A patch corrects a photo's colours only if its place and its true colour are both known.",
    source=NO_SOURCE,
    fields=("Case.photos", "Photo.target", "Target.patches", "Swatch.box", "Swatch.colour"),
    weight=MISTAKE,
    raises="photos: [{file: a.jpg, target: {patches: [{box: 1 1 9 9}]}}]",
    passes="photos: [{file: a.jpg, target: {patches: [{box: 1 1 9 9, colour: L 50 a 0 b 0}]}}]",
)
def patch_of_target(look: Look) -> Iterator[Raised]:
    """Each patch of a target says where it is on the photo, and what its true colour is."""
    for photo in _photos(look):
        target = known(photo.target)
        for patch in items(target.patches) if target else ():
            yield from _patch(patch, _image(look, photo))
        if target and items(target.patches) and target.in_frame is False:
            span = target.span("in-frame")
            yield Raised("the target has patches and is said not to be in frame", span)


def _patch(patch: Swatch, image: Image | None) -> Iterator[Raised]:
    lacking = [name for name in ("box", "colour") if not patch.tells(name)]
    if lacking:
        message = f"a patch of the target has no `{'` and no `'.join(lacking)}`"
        hint = "write `{box: 40 40 60 60, colour: L 95 a 0 b 0}`; the maker gives the colour"
        yield Raised(message, patch.span(), hint)
    box = known(patch.box)
    if box and image and not box.inside(image.width, image.height):
        message = f"`{box}` is outside the picture"
        hint = f"the picture is {image.width} pixels wide and {image.height} high, upright"
        yield Raised(message, patch.span("box"), hint)


@rule(
    why="A repair that is seen to differ was meant to, or was not; only the record can say which.",
    source=NO_SOURCE,
    fields=("Step.match", "Match.because", "Settings.tolerance", "Match.original", "Match.fill"),
    weight=SHOULD,
    raises="steps: [{do: infill, match: {original: L 52 a 3 b 10, fill: L 80 a 3 b 10}}]",
    passes="steps: [{do: infill, match: {original: L 52 a 3 b 10, fill: L 80 a 3 b 10, "
    "because: lighter on purpose}}]",
)
def difference_explained(look: Look) -> Iterator[Raised]:
    """A repair whose colour is further from the original than the lab's tolerance says why."""
    limit = known(look.archive.settings.tolerance)
    most = float(limit.high) if limit and limit.high is not None else None
    images = look.archive.images.get(look.case.id, {})
    for found in matches(look.case, images, most):
        for one in found.tried:
            if one.trial is None and one.within is False and not look.tells(found.match, "because"):
                message = f"the repair differs from the original by {one.difference:.1f}"
                hint = f"the lab's tolerance is {limit}; add `because: …`"
                yield Raised(message, found.match.span("fill"), hint)


@rule(
    why="The colours of a photo that no target corrects are those of its camera and its light.",
    source=NO_SOURCE,
    fields=("Step.match", "Photo.target", "Target.patches", "Match.original", "Match.fill"),
    weight=ADVICE,
    raises="photos: [{file: a.jpg, target: yes}]\n"
    "steps: [{match: {original: L 52 a 3 b 10, fill: {photo: a.jpg, box: 9 1 9 9}}}]",
    passes="steps: [{match: {original: L 52 a 3 b 10, fill: L 53 a 3 b 10}}]",
)
def photographed_colour_corrected(look: Look) -> Iterator[Raised]:
    """A photo from which a colour is read has its target's patches on record."""
    photos = {name: one for one in _photos(look) for name in (one.id, one.file) if name}
    told: set[str] = set()
    for swatch in (one for step in look.steps for one in _swatches(step)):
        name = known(swatch.photo) or ""
        photo = photos.get(name)
        if photo and name not in told and not swatch.tells("colour") and not _patches(photo):
            told.add(name)
            message = f"a colour is read from `{name}`, whose target has no patches on record"
            hint = "add `target: {patches: [{box: 40 40 60 60, colour: L 95 a 0 b 0}]}` to it"
            yield Raised(message, swatch.span(), hint)


def _patches(photo: Photo) -> bool:
    target = known(photo.target) or Target()
    return bool(items(target.patches))


PRACTICE = (
    colours_to_compare,
    patch_of_target,
    difference_explained,
    photographed_colour_corrected,
)
