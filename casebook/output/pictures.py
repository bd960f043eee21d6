"""Photographs as a page shows them: sources by width, words for those who do not see them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from casebook.compute.registration import Similarity, fitted, matrix
from casebook.files import Cache
from casebook.model.archive import Archive, Case
from casebook.model.base import items, known
from casebook.model.photos import Image, Photo
from casebook.output.contexts import Line, PictureView, Run, Source
from casebook.output.wording import measured, say, sentence
from casebook.photos.derive import Derivative, Picture
from casebook.values.dates import Date


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
    found = {}
    for photo in items(case.photos):
        image = images.get(photo.id)
        picture = pictures.get(image.digest) if image else None
        if picture:
            view = _view(photo, picture, case, root)
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
    return tuple(_not_here(one) for one in items(case.photos) if one.id not in images)


def _not_here(photo: Photo) -> Line:
    """A photograph that is kept elsewhere, in a sentence."""
    words = [
        say(photo.view) or "no view named",
        f"{photo.stage.value} treatment" if photo.stage else "",
        _light(photo),
        photo.date.show() if isinstance(photo.date, Date) else measured(photo.date, "", "date {}"),
        say(photo.medium),
        measured(photo.held, "kept at {}", "where it is kept is {}"),
    ]
    head = ", ".join(word for word in words if word)
    caption = f": {photo.caption}" if known(photo.caption) else ""
    return sentence((Run(f"not here: {head}{caption}", anchor=f"photo-{photo.id}"),))


def _view(photo: Photo, picture: Picture, case: Case, root: str) -> PictureView:
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
        details=_details(photo),
        large=_address(large, root),
    )


def _sources(files: list[Derivative], root: str) -> tuple[Source, ...]:
    if not files:
        return ()
    srcset = ", ".join(f"{_address(one, root)} {one.width}w" for one in files)
    return (Source(TYPES[files[0].format], srcset),)


def _address(one: Derivative, root: str) -> str:
    return f"{root}{FOLDER}/{one.name}"


def _details(photo: Photo) -> str:
    date = known(photo.date)
    words = [
        say(photo.view),
        _light(photo),
        date.show() if date else "",
    ]
    return ", ".join(word for word in words if word)


def _light(photo: Photo) -> str:
    """The light in words: "raking light"."""
    light = say(photo.light)
    return f"{light} light" if light.isalpha() else light


def _alt(photo: Photo, case: Case) -> str:
    """What is in the picture: its caption, or its view and stage, of which object."""
    words = known(photo.caption) or say(photo.view) or "photograph"
    stage = f", {photo.stage.value} treatment" if photo.stage else ""
    return f"{words}{stage}: {say(case.title) or case.id}"


def before_and_after(
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
