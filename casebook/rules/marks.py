"""Rules about what is noted on photos: marks, scales, targets and points lie in the picture."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from casebook.compute.marks import SHAPES, crosses_itself, image_of, marks, shape_of
from casebook.compute.registration import fitted
from casebook.model.base import Record, items, key_of, known
from casebook.model.marks import Fit, Mark, Scale
from casebook.model.photos import Image, Photo
from casebook.rules.declare import MISTAKE, NO_SOURCE, OWN, SLIP, Raised, rule
from casebook.rules.look import Look
from casebook.values.points import Spot


def _image(look: Look, name: str | None) -> Image | None:
    """The image that a photo's name, its id or file, leads to; None where it is not there."""
    images = look.archive.images.get(look.case.id, {})
    named = (one for one in items(look.case.photos) if name and name in (one.id, one.file))
    return next((image_of(one, images) for one in named), None)


def _outside(
    record: Record, name: str, spots: Iterable[Spot], image: Image | None
) -> Iterator[Raised]:
    """What is said of places that run over the edge of a picture."""
    for spot in spots:
        if image and not spot.inside(image.width, image.height):
            message = f"`{str(spot)[:60]}` is outside the picture"
            hint = f"the picture is {image.width} pixels wide and {image.height} high, upright"
            yield Raised(message, record.span(key_of(name)), hint)


@rule(
    why="A mark is found again only if it says on which photo it is, and where on it.",
    source=OWN,
    fields=("Finding.marks", "Mark.photo", "Mark.box", "Mark.line", "Mark.outline", "Case.photos"),
    weight=MISTAKE,
    raises="findings: [{part: spine, seen: worn, marks: {photo: before.jpg}}]",
    passes="findings: [{part: spine, seen: worn, marks: {photo: before.jpg, box: 1% 2% 3% 4%}}]",
)
def mark_on_picture(look: Look) -> Iterator[Raised]:
    """A mark names its photo and has one box, line or outline that lies in the picture."""
    for _, mark in marks(look.case):
        shapes = [name for name in SHAPES if mark.tells(name)]
        if not known(mark.photo):
            hint = "add `photo: …`, the id or the file name of one of the photos"
            yield Raised("a mark names no photo", mark.span(), hint)
        if len(shapes) != 1:
            message = f"a mark has {len(shapes) or 'no'} shape{'s' if shapes else ''}, not one"
            hint = 'give it one of `box: 420 300 160 90`, `line: "…"` and `outline: "…"`'
            yield Raised(message, mark.span(), hint)
        yield from _outside(mark, shape_of(mark), _spots(mark), _image(look, known(mark.photo)))


def _spots(mark: Mark) -> list[Spot]:
    name = shape_of(mark)
    return [getattr(mark, name)] if name else []


@rule(
    why="The area inside an outline that crosses itself is no area of anything.",
    source="geometry: the shoelace formula holds for outlines that do not cross themselves",
    fields=("Finding.marks", "Mark.outline"),
    weight=SLIP,
    raises="findings: [{part: spine, seen: worn, marks: {photo: before.jpg, "
    'outline: "1 1, 9 9, 9 1, 1 9"}}]',
    passes="findings: [{part: spine, seen: worn, marks: {photo: before.jpg, "
    'outline: "1 1, 9 1, 9 9, 1 9"}}]',
)
def outline_crosses_itself(look: Look) -> Iterator[Raised]:
    """The outline of a mark does not cross itself."""
    for _, mark in marks(look.case):
        outline = known(mark.outline)
        if outline and crosses_itself(outline.corners(100, 100)):
            hint = "give its points in the order in which they follow one another round the edge"
            yield Raised("this outline crosses itself", mark.span("outline"), hint)


@rule(
    why="A scale in frame measures a mark only if two points on it and their distance are noted.",
    source=NO_SOURCE,
    fields=("Case.photos", "Photo.scale", "Scale.from_", "Scale.to", "Scale.length"),
    weight=MISTAKE,
    raises="photos: [{file: a.jpg, scale: {from: 10 10, to: 10 10, length: 10 mm}}]",
    passes="photos: [{file: a.jpg, scale: {from: 10 10, to: 90 10, length: 10 mm}}]",
)
def scale_can_be_read(look: Look) -> Iterator[Raised]:
    """The scale of a photo has two points, in the picture and apart, and the length between."""
    for photo in items(look.case.photos):
        scale = known(photo.scale)
        if scale:
            yield from _scale(scale, image_of(photo, look.archive.images.get(look.case.id, {})))


def _scale(scale: Scale, image: Image | None) -> Iterator[Raised]:
    noted = [name for name in ("from_", "to", "length") if scale.tells(name)]
    lacking = [key_of(name) for name in ("from_", "to", "length") if name not in noted]
    if noted and lacking:
        message = f"the scale says no `{'` and no `'.join(lacking)}`"
        yield Raised(message, scale.span(), "`{from: 120 1480, to: 1320 1484, length: 100 mm}`")
    if noted and scale.in_frame is False:
        yield Raised("the scale has points and is said not to be in frame", scale.span("in-frame"))
    ends = {name: point for name in ("from_", "to") if (point := known(getattr(scale, name)))}
    if len(ends) == 2 and ends["from_"] == ends["to"]:
        yield Raised("both ends of the scale are one point", scale.span("to"))
    for name, point in ends.items():
        yield from _outside(scale, name, [point], image)


@rule(
    why="Two points that are the same on both photos lay one over the other; fewer do not.",
    source="a similarity of the plane is given by two points and their images",
    fields=("Case.photos", "Photo.fit", "Fit.over", "Fit.here", "Fit.there"),
    weight=MISTAKE,
    raises="photos: [{file: a.jpg}, {file: b.jpg, fit: {over: a.jpg, here: [1 2], there: [1 2]}}]",
    passes="photos: [{file: a.jpg}, "
    "{file: b.jpg, fit: {over: a.jpg, here: [1 2, 30 40], there: [1 2, 31 40]}}]",
)
def fit_has_two_points(look: Look) -> Iterator[Raised]:
    """What lays a photo over another names that one, and two points on each, apart."""
    for photo in items(look.case.photos):
        fit = known(photo.fit)
        if fit:
            yield from _fit(look, photo, fit)


def _fit(look: Look, photo: Photo, fit: Fit) -> Iterator[Raised]:
    if not known(fit.over) or known(fit.over) in (photo.id, photo.file):
        yield Raised("`fit` names no other photo", fit.span("over"), "add `over: …`")
    images = _image(look, photo.id or photo.file), _image(look, known(fit.over))
    for name, image in zip(("here", "there"), images, strict=True):
        points = items(getattr(fit, name))
        if len(points) != 2 or points[0] == points[1]:
            message = f"`{name}` has {_count(len(points))}, not two"
            hint = f"give two, far apart: `{name}: [210 96, 1880 1422]`"
            yield Raised(message, fit.span(name), hint)
        yield from _outside(fit, name, points, image)


@rule(
    why="Points in another order turn a photo upside down, and nobody sees at once why.",
    source=NO_SOURCE,
    fields=("Case.photos", "Photo.fit", "Fit.over", "Fit.here", "Fit.there"),
    weight=SLIP,
    raises="photos: [{file: a.jpg}, "
    "{file: b.jpg, fit: {over: a.jpg, here: [1% 1%, 9% 9%], there: [9% 9%, 1% 1%]}}]",
    passes="photos: [{file: a.jpg}, "
    "{file: b.jpg, fit: {over: a.jpg, here: [1% 1%, 9% 9%], there: [1% 2%, 9% 9%]}}]",
)
def fit_is_likely(look: Look) -> Iterator[Raised]:
    """A photo that is laid over another is turned and scaled a little, not upside down."""
    for photo in items(look.case.photos):
        fit = known(photo.fit)
        if fit is None:
            continue
        here = _image(look, photo.id or photo.file) or _ANY
        there = _image(look, known(fit.over)) or _ANY
        found = fitted(fit, here, there)
        if found is None:
            continue
        times = found.scale * here.width / there.width
        if not 1 / _MOST_TIMES <= times <= _MOST_TIMES or abs(found.degrees) > _MOST_DEGREES:
            message = f"this would turn the photo by {found.degrees:.0f} degrees"
            hint = "are both points in the same order on either photo?"
            yield Raised(f"{message} and make it {times:.2f} times as large", fit.span(), hint)


_ANY = Image("", 1000, 1000)
"""What a photo that is not here is taken for: points in per cent can be looked at even so."""
_MOST_TIMES = 2.0
_MOST_DEGREES = 45.0


def _count(points: int) -> str:
    return {0: "no point", 1: "one point", 2: "one point twice"}.get(points, f"{points} points")


PRACTICE = (
    mark_on_picture,
    outline_crosses_itself,
    scale_can_be_read,
    fit_has_two_points,
    fit_is_likely,
)
