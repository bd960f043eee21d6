"""What photo files suggest for the record: their dates by the tags, and twins among them."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import combinations

from casebook.diagnostics import Diagnostic, Severity
from casebook.model.archive import Case
from casebook.model.base import items, known
from casebook.model.photos import Photo
from casebook.photos.inspect import Inspected

NEAR = 8
"""Fingerprints that differ in no more of their 256 bits look alike (a bound of the project)."""
TELLING = 32
"""A picture with fewer fields lighter than their neighbour, or darker, is too plain to compare."""
_BITS = 256


@dataclass(frozen=True, slots=True)
class Album:
    """A case with what its photo files tell, by the names the record has for them."""

    folder: str
    case: Case
    inspected: Mapping[str, Inspected]


def suggestions(albums: Iterable[Album]) -> Iterator[Diagnostic]:
    """What the photos of an archive suggest, case by case."""
    first: dict[str, tuple[str, str]] = {}
    for album in albums:
        yield from _dates(album)
        yield from _twins(album)
        yield from _elsewhere(album, first)


# --- dates -----------------------------------------------------------------------------------


def _dates(album: Album) -> Iterator[Diagnostic]:
    """A date that only the tags know, and one that they know otherwise.

    A scan of a print or slide was taken long after what it shows; of such nothing is said.
    """
    for photo, seen in _seen(album):
        day = seen.taken[:10]
        date, medium = known(photo.date), known(photo.medium)
        if not day or medium:
            continue
        if date is None:
            message = f"{photo.file} was taken on {day} by its tags{_by(seen)}, and has no date"
            yield _suggested("photo-date-in-tags", message, f"add `date: {day}`", photo, album)
        elif _differs(day, date.earliest_day(), date.latest_day()):
            message = f"{photo.file} was taken on {day} by its tags{_by(seen)}, not on {date}"
            hint = "correct the date, or leave it where the camera's clock was wrong"
            yield _suggested("photo-date-differs", message, hint, photo, album, "date")


def _by(seen: Inspected) -> str:
    return f" ({seen.device})" if seen.device else ""


def _differs(day: str, earliest: datetime.date | None, latest: datetime.date | None) -> bool:
    """Whether a day lies outside a date by more than the time zones of the earth."""
    taken, spare = datetime.date.fromisoformat(day), datetime.timedelta(days=1)
    early = earliest is not None and taken < earliest - spare
    return early or (latest is not None and taken > latest + spare)


# --- twins -----------------------------------------------------------------------------------


def _twins(album: Album) -> Iterator[Diagnostic]:
    """Two photos of one case that are one file, or of one stage that look alike."""
    for (photo, seen), (other, again) in combinations(_seen(album), 2):
        if seen.digest == again.digest:
            message = f"{other.file} is the same picture as {photo.file}"
            hint = "name it once; a picture may show several things under `shows`"
            yield _suggested("photo-twice", message, hint, other, album)
        elif photo.stage == other.stage and _alike(seen.looks, again.looks):
            message = f"{other.file} looks much like {photo.file}"
            hint = "keep the better one, or say in `view` or `light` in what they differ"
            if (known(photo.view), known(photo.light)) == (known(other.view), known(other.light)):
                yield _suggested("photo-near-twin", message, hint, other, album)


def _elsewhere(album: Album, first: dict[str, tuple[str, str]]) -> Iterator[Diagnostic]:
    """A photo whose file is another case's too; `first` keeps where each file was met first."""
    for photo, seen in _seen(album):
        folder, name = first.setdefault(seen.digest, (album.folder, photo.file))
        if folder != album.folder:
            message = f"{photo.file} is the same picture as {name} of cases/{folder}"
            hint = "see which case it belongs to; where to both, nothing need be done"
            yield _suggested("photo-in-two-cases", message, hint, photo, album)


def _alike(one: str, other: str) -> bool:
    bits = [int(text or "0", 16) for text in (one, other)]
    telling = all(TELLING <= each.bit_count() <= _BITS - TELLING for each in bits)
    return telling and (bits[0] ^ bits[1]).bit_count() <= NEAR


def _seen(album: Album) -> Iterator[tuple[Photo, Inspected]]:
    for photo in items(album.case.photos):
        if seen := album.inspected.get(photo.file):
            yield photo, seen


def _suggested(
    rule: str, message: str, hint: str, photo: Photo, album: Album, key: str = "file"
) -> Diagnostic:
    span = photo.span(key)
    return Diagnostic(rule, Severity.SUGGESTION, message, span, hint, album.folder)
