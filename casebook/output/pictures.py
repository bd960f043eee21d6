"""Photographs as a page shows them: sources by width, words for those who do not see them."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from casebook.compute.registration import Similarity, fitted, matrix
from casebook.files import Cache
from casebook.model.archive import Archive, Case
from casebook.model.base import Gap, items, known
from casebook.model.photos import Image, Photo
from casebook.output.contexts import Line, Pair, PictureView, Run, Source
from casebook.output.lab_language import notation_of
from casebook.output.wording import capital_text, measured, say, sentence
from casebook.photos.derive import Derivative, Picture
from casebook.values.dates import Date
from casebook.values.notation import Notation


@dataclass(frozen=True, slots=True)
class Pictures:
    """The derived pictures by the digest of the original, and the cache that holds their bytes."""

    made: Mapping[str, Picture]
    cache: Cache

    def get(self, original: str) -> Picture | None:
        """The picture made of an original."""
        return self.made.get(original)

    def path(self, name: str) -> Path:
        """Where the bytes of a derivative lie."""
        return self.cache.path("picture", name)


FOLDER = "photos"
TYPES = {"JPEG": "image/jpeg", "WebP": "image/webp", "WEBP": "image/webp", "PNG": "image/png"}


def case_pictures(
    case: Case, archive: Archive, pictures: Pictures, root: str
) -> dict[str, PictureView]:
    """The pictures of a case by the names its photos have, in their order."""
    images = archive.images.get(case.id, {})
    fitted_by_points = any(photo.fit for photo in items(case.photos))
    notation = notation_of(archive.settings)
    found = {}
    for photo in items(case.photos):
        image = images.get(photo.id)
        picture = pictures.get(image.digest) if image else None
        if picture:
            view = _view(photo, picture, case, root, notation)
            fits = dict(_fits(photo, case, images)) if fitted_by_points else {}
            found[photo.id] = replace(view, fits=fits)
    return found


def _fits(photo: Photo, case: Case, images: Mapping[str, Image]) -> Iterator[tuple[str, str]]:
    """What lays a photo over others, by their id: its own two points, or theirs the other way."""
    for other in items(case.photos):
        here, there = images.get(photo.id), images.get(other.id)
        if here and there:
            over, under = known(photo.fit), known(other.fit)
            if over and over.over == other.id and (found := fitted(over, here, there)):
                yield other.id, _matrix(found, here, there)
            elif under and under.over == photo.id and (found := fitted(under, there, here)):
                yield other.id, _matrix(found.back(), here, there)


def _matrix(found: Similarity, here: Image, there: Image) -> str:
    return " ".join(f"{float(part):.6f}" for part in matrix(found, here, there))


def elsewhere(case: Case, archive: Archive) -> tuple[Line, ...]:
    """Photographs of a case that are no image here: what each is, and where it is kept."""
    images = archive.images.get(case.id, {})
    notation = notation_of(archive.settings)
    return tuple(_not_here(one, notation) for one in items(case.photos) if one.id not in images)


def _not_here(photo: Photo, notation: Notation) -> Line:
    """A photograph that is kept elsewhere, in a sentence."""
    words = [
        say(photo.view) or "no view named",
        f"{photo.stage.value} treatment" if photo.stage else "",
        light_words(say(photo.light)),
        _date(photo.date, notation),
        say(photo.medium),
        measured(photo.held, "kept at {}", "where it is kept is {}"),
    ]
    head = ", ".join(word for word in words if word)
    caption = f": {photo.caption}" if known(photo.caption) else ""
    return sentence((Run(f"not here: {head}{caption}", anchor=f"photo-{photo.id}"),))


def _view(photo: Photo, picture: Picture, case: Case, root: str, notation: Notation) -> PictureView:
    widest = picture.widths[-1]
    plain = [one for one in picture.widths if one.format == "JPEG"]
    modern = [one for one in picture.widths if one.format != "JPEG"]
    fallback = plain[min(1, len(plain) - 1)] if plain else widest
    large = plain[-1] if plain else widest
    return PictureView(
        id=photo.id,
        src=_address(fallback, root),
        sources=_sources(modern, root) + _sources(plain, root),
        width=large.width,
        height=large.height,
        alt=_alt(photo, case),
        caption=known(photo.caption) or "",
        stage=photo.stage.value if photo.stage else "",
        details=_details(photo, notation),
        large=_address(large, root),
    )


def _sources(files: list[Derivative], root: str) -> tuple[Source, ...]:
    if not files:
        return ()
    srcset = ", ".join(f"{_address(one, root)} {one.width}w" for one in files)
    return (Source(TYPES[files[0].format], srcset),)


def _address(one: Derivative, root: str) -> str:
    return f"{root}{FOLDER}/{one.name}"


def _details(photo: Photo, notation: Notation) -> str:
    """View, light and date: "Spine, in raking light from the left, 3 March 2025"."""
    date = notation.date(photo.date) if isinstance(photo.date, Date) else ""
    words = (say(photo.view), light_words(say(photo.light)), date)
    return capital_text(", ".join(one for one in words if one))


def _date(date: Date | Gap | None, notation: Notation) -> str:
    """A date, or that it is not known."""
    if isinstance(date, Date):
        return notation.date(date)
    return f"date {say(date)}" if date else ""


_LIGHTS = {
    **dict.fromkeys(("uv", "ultraviolet"), "ultraviolet light"),
    **dict.fromkeys(("ir", "infrared"), "infrared light"),
    "daylight": "daylight",
}
_LIGHT = re.compile(
    r"(?P<kind>normal|raking|transmitted|reflected|specular|diffuse|visible|ambient|"
    r"(?:cross-)?polari[sz]ed|uv|ultraviolet|ir|infrared|daylight)(?:\s+light)?"
    r"(?P<rest>(?:\s+(?:from|at|through|with|and|on)\b[^,;:]*)?)(?:[,;:]\s*(?P<more>.*))?",
    re.IGNORECASE,
)


def light_words(light: str) -> str:
    """The light of a photo as a reader would say it: "in raking light from the left".

    What comes behind a comma is put in brackets; a light of another kind stays as written.
    """
    found = _LIGHT.fullmatch(light.strip())
    if found is None:
        return light.strip()
    kind = found["kind"].lower()
    more = f" ({found['more']})" if found["more"] else ""
    return f"in {_LIGHTS.get(kind, f'{kind} light')}{found['rest']}{more}"


def _alt(photo: Photo, case: Case) -> str:
    """What is in the picture: its caption, or its view, then stage and light, of which object.

    Normal light is not worth a word to those who do not see it.
    """
    words = (known(photo.caption) or say(photo.view) or "photograph").rstrip(" .")
    stage = f", {photo.stage.value} treatment" if photo.stage else ""
    light = light_words(say(photo.light))
    lit = f", {light}" if light and not light.startswith("in normal light") else ""
    return f"{words}{stage}{lit}: {say(case.title) or case.id}"


def pair_of(case: Case, views: Mapping[str, PictureView]) -> Pair:
    """A case before and after, and whether one picture may be laid over the other."""
    before, after = _before_and_after(case, views)
    if before is None or after is None:
        return Pair(before, after)
    sides = {known(one.view) for one in items(case.photos) if one.id in (before.id, after.id)}
    alike = bool(after.fit) or len({say(one) for one in sides if one}) < 2
    return Pair(before, after, alike, alike and (bool(after.fit) or _alike_in_shape(before, after)))


def _alike_in_shape(one: PictureView, other: PictureView) -> bool:
    """Whether neither would cut off much of the other, and the first is no tall strip."""
    shape, against = one.width / one.height, other.width / other.height
    return shape > 0.5 and max(shape / against, against / shape) < 1.4


def _before_and_after(
    case: Case, views: Mapping[str, PictureView]
) -> tuple[PictureView | None, PictureView | None]:
    """One picture before and one after: laid over one another by points, or of the same view."""
    before = [one for one in items(case.photos) if one.id in views and _is(one, "before")]
    after = [one for one in items(case.photos) if one.id in views and _is(one, "after")]
    for first in before:
        for second in after:
            if fit := views[second.id].fits.get(first.id):
                return views[first.id], replace(views[second.id], fit=fit)
    for one in before:
        for other in after:
            if known(one.view) and say(one.view) == say(other.view):
                return views[one.id], views[other.id]
    return _first(before, views), _first(after, views)


def _is(photo: Photo, stage: str) -> bool:
    return photo.stage is not None and photo.stage.value == stage


def _first(photos: list[Photo], views: Mapping[str, PictureView]) -> PictureView | None:
    return views[photos[0].id] if photos else None
