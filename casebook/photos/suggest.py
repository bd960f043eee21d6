"""What photo files suggest for the record: their dates by the tags, and twins among them."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field

from casebook.diagnostics import Diagnostic
from casebook.model.archive import Case
from casebook.model.base import items, known
from casebook.model.photos import Photo
from casebook.photos.inspect import Inspected
from casebook.photos.told import DATE_DIFFERS, DATE_IN_TAGS, NEAR_TWIN, TWICE, TWO_CASES, Telling
from casebook.photos.twins import Looks, Shelf
from casebook.values.showing import count_of

TWIN = 12
"""Photos of one stage, view and light that differ in no more fine bits look alike."""
SAME = 32
"""Photos of two cases that differ in no more are one picture, saved again. Both are bounds of the
project: saved again smaller, pictures differed by up to 28; those of two objects by 46 and more."""
_SHAPES = 0.02


@dataclass(frozen=True, slots=True)
class Album:
    """A case with what its photo files tell, by the names the record has for them."""

    folder: str
    case: Case
    inspected: Mapping[str, Inspected]


@dataclass(frozen=True, slots=True)
class _Met:
    """A photo met before, in the case of a folder."""

    folder: str
    photo: Photo
    seen: Inspected


def suggestions(albums: Iterable[Album]) -> Iterator[Diagnostic]:
    """What the photos of an archive suggest, case by case."""
    met = _Archive()
    for album in albums:
        yield from _dates(album)
        for photo, seen in _seen(album):
            yield from met.meet(_Met(album.folder, photo, seen))


def _seen(album: Album) -> Iterator[tuple[Photo, Inspected]]:
    for photo in items(album.case.photos):
        if seen := album.inspected.get(photo.file):
            yield photo, seen


def _suggested(
    telling: Telling, message: str, hint: str, photo: Photo, folder: str, key: str = "file"
) -> Diagnostic:
    return telling.of(message, photo.span(key), hint, folder)


# --- dates -----------------------------------------------------------------------------------


def _dates(album: Album) -> Iterator[Diagnostic]:
    """A date that only the tags know, and once for a case those that they know otherwise.

    A scan of a print or slide was taken long after what it shows; of such nothing is said.
    """
    differing: list[tuple[Photo, Inspected]] = []
    for photo, seen in _seen(album):
        day = seen.taken[:10]
        date, medium = known(photo.date), known(photo.medium)
        if not day or medium:
            continue
        if date is None:
            message = f"{photo.file} was taken on {day} by its tags{_by(seen)}, and has no date"
            yield _suggested(DATE_IN_TAGS, message, f"add `date: {day}`", photo, album.folder)
        elif _differs(day, date.earliest_day(), date.latest_day()):
            differing.append((photo, seen))
    if differing:
        yield _date_differs(differing, album.folder)


def _date_differs(differing: list[tuple[Photo, Inspected]], folder: str) -> Diagnostic:
    """The first of the photos whose tags tell another day, and how many more there are."""
    photo, seen = differing[0]
    day, date, more = seen.taken[:10], known(photo.date), len(differing) - 1
    message = f"{photo.file} was taken on {day} by its tags{_by(seen)}, not on {date}"
    if more:
        message += f"; so it is with {count_of(more, 'more photo')} of this case"
    hint = "correct the date, or leave it where the camera's clock was wrong"
    return _suggested(DATE_DIFFERS, message, hint, photo, folder, "date")


def _by(seen: Inspected) -> str:
    return f" ({seen.device})" if seen.device else ""


def _differs(day: str, earliest: datetime.date | None, latest: datetime.date | None) -> bool:
    """Whether a day lies outside a date by more than the time zones of the earth."""
    taken, spare = datetime.date.fromisoformat(day), datetime.timedelta(days=1)
    early = earliest is not None and taken < earliest - spare
    return early or (latest is not None and taken > latest + spare)


# --- twins -----------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Archive:
    """The photos met so far: each file's first in the archive and in each case, and their looks."""

    files: dict[str, _Met] = field(default_factory=dict)
    of_case: dict[tuple[str, str], _Met] = field(default_factory=dict)
    looks: Shelf[_Met] = field(default_factory=Shelf)

    def meet(self, new: _Met) -> Iterator[Diagnostic]:
        """What is to be said of a photo beside those met before it; then it is one of them."""
        name = new.seen.digest
        if twin := self.of_case.get((new.folder, name)):
            yield _twice(new, twin)
        elif twin := self.files.get(name):
            yield _two_cases(new, twin)
        else:
            alike = self.looks.meet(Looks(new.seen.looks), new)
            yield from _told_first(new, alike)
        self.of_case.setdefault((new.folder, name), new)
        self.files.setdefault(name, new)


def _twice(new: _Met, twin: _Met) -> Diagnostic:
    message = f"{new.photo.file} is the same picture as {twin.photo.file}"
    hint = "name it once; a picture may show several things under `shows`"
    return _suggested(TWICE, message, hint, new.photo, new.folder)


def _two_cases(new: _Met, twin: _Met) -> Diagnostic:
    message = f"{new.photo.file} is the same picture as {twin.photo.file} of cases/{twin.folder}"
    hint = "see which case it belongs to; where to both, nothing need be done"
    return _suggested(TWO_CASES, message, hint, new.photo, new.folder)


def _told_first(new: _Met, alike: list[tuple[int, _Met]]) -> Iterator[Diagnostic]:
    """The nearest of those that look like a photo, if it looks like them too much."""
    for bits, twin in alike:
        if twin.folder == new.folder and bits <= TWIN and _of_one_kind(new.photo, twin.photo):
            message = f"{new.photo.file} looks much like {twin.photo.file}"
            hint = "keep the better one, or say in `view` or `light` in what they differ"
            yield _suggested(NEAR_TWIN, message, hint, new.photo, new.folder)
            return
        if twin.folder != new.folder and bits <= SAME and _may_be_one(new.seen, twin.seen):
            yield _two_cases(new, twin)
            return


def _of_one_kind(photo: Photo, other: Photo) -> bool:
    """Whether two photos are of one stage, view and light, so that they should differ."""
    kinds = ((one.stage, known(one.view), known(one.light)) for one in (photo, other))
    return next(kinds) == next(kinds)


def _may_be_one(seen: Inspected, other: Inspected) -> bool:
    """Whether two files may be one picture: of one shape, and not taken at two moments."""
    shapes = [one.width / one.height for one in (seen, other)]
    moments = {one.taken for one in (seen, other)} - {""}
    return abs(shapes[0] / shapes[1] - 1) <= _SHAPES and len(moments) < 2
