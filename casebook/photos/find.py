"""The images that a record names: where each lies, what it is, and what is wrong with it."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path

from casebook.diagnostics import Diagnostic, Span
from casebook.files import Cache
from casebook.model.archive import LOGO, Case
from casebook.model.base import items, known, walk
from casebook.model.marks import Swatch
from casebook.model.photos import Image, Photo
from casebook.model.settings import Settings
from casebook.photos.areas import areas_of
from casebook.photos.inspect import Inspected, inspect
from casebook.photos.told import MISSING, NO_LOGO
from casebook.reading import did_you_mean
from casebook.values.points import Box


@dataclass(frozen=True, slots=True)
class Found:
    """Images by the name a record has for them, the originals by digest, and every fault.

    `inspected` gives what each image's file tells of itself, by the same name.
    """

    images: Mapping[str, Image] = field(default_factory=dict)
    originals: Mapping[str, Path] = field(default_factory=dict)
    inspected: Mapping[str, Inspected] = field(default_factory=dict)
    diagnostics: tuple[Diagnostic, ...] = ()


def find_photos(case: Case, folder: Path, cache: Cache) -> Found:
    """The photos of a case, in its folder or its `photos/`."""
    names = _names(folder)
    boxes = _boxes(case)
    images: dict[str, Image] = {}
    originals: dict[str, Path] = {}
    seen: dict[str, Inspected] = {}
    faults: list[Diagnostic] = []
    for photo in items(case.photos):
        if photo.file:
            inspected, path, more = _one(folder, names, photo, cache)
            faults.extend(more)
            if inspected and path:
                seen[photo.file] = inspected
                originals[inspected.digest] = path
                areas = areas_of(path, inspected.digest, _asked(photo, boxes), cache)
                images[photo.file] = replace(_image(inspected), areas=areas)
    return Found(images, originals, seen, tuple(faults))


def _image(seen: Inspected) -> Image:
    return Image(seen.digest, seen.width, seen.height)


def _boxes(case: Case) -> Mapping[str, list[Box]]:
    """The areas of photos whose colour the record asks for, by the name it has for the photo."""
    found: dict[str, list[Box]] = {}
    for one in walk(case) if case.photos else ():
        if isinstance(one, Swatch) and (name := known(one.photo)) and (box := known(one.box)):
            found.setdefault(name, []).append(box)
    return found


def _asked(photo: Photo, boxes: Mapping[str, list[Box]]) -> Iterator[Box]:
    """The areas asked for of one photo: those compared, and the patches of its target."""
    for name in {photo.file, photo.id} - {""}:
        yield from boxes.get(name, ())
    target = known(photo.target)
    patches = items(target.patches) if target else ()
    yield from (box for one in patches if (box := known(one.box)))


def _names(folder: Path) -> Mapping[Path, frozenset[str]]:
    """The files of a case's folder and of its `photos/`, as they are called on the disk."""
    places = (folder, folder / "photos")
    return {place: frozenset(_files(place)) for place in places if place.is_dir()}


def _files(place: Path) -> Iterator[str]:
    return (one.name for one in place.iterdir() if one.is_file())


def _one(
    folder: Path, names: Mapping[Path, frozenset[str]], photo: Photo, cache: Cache
) -> tuple[Inspected | None, Path | None, tuple[Diagnostic, ...]]:
    span = photo.span("file")
    path = _file(folder, names, photo.file)
    if path is None:
        here = [name for found in names.values() for name in sorted(found)]
        return None, None, (_missing(folder, here, photo.file, span),)
    inspected = inspect(path, span, folder.name, cache)
    return inspected.photo, path, inspected.diagnostics


def find_logo(settings: Settings, root: Path, cache: Cache) -> Found:
    """The lab's logo, beside `lab.yml`."""
    name, span = known(settings.logo), settings.span("logo")
    if not name:
        return Found()
    path = root / name
    if not _is_file(path) or not path.resolve().is_relative_to(root.resolve()):
        message = f"the logo `{name[:60]}` is not beside `lab.yml`"
        hint = "put the file there, or take the line out"
        return Found(diagnostics=(NO_LOGO.of(message, span, hint, ""),))
    inspected = inspect(path, span, "", cache)
    if inspected.photo is None:
        return Found(diagnostics=inspected.diagnostics)
    seen = inspected.photo
    originals = {seen.digest: path}
    return Found({LOGO: _image(seen)}, originals, diagnostics=inspected.diagnostics)


def _file(folder: Path, names: Mapping[Path, frozenset[str]], name: str) -> Path | None:
    """The image a photo names; None if it is not there under just that name.

    Some disks find a file under other capitals too, and other computers then do not.
    """
    for place, there in names.items():
        path = place / name
        if _is_file(path) and path.resolve().is_relative_to(folder.resolve()):
            below = path.parent != place
            return path if below or path.name in there else None
    return None


def _is_file(path: Path) -> bool:
    try:
        return path.is_file()
    except OSError:  # a name longer than the disk takes is the name of no file
        return False


def _missing(folder: Path, here: list[str], name: str, span: Span | None) -> Diagnostic:
    twin = next((one for one in here if _alike(one) == _alike(Path(name).name)), None)
    if twin:
        message = f"the photo `{name[:60]}` is called `{twin}` on the disk: {_other(twin, name)}"
        hint = f"write `{twin}`; on another computer the two are different files"
    else:
        message = f"the photo `{name[:60]}` is not in `cases/{folder.name}` nor in its `photos/`"
        hint = did_you_mean(name, here)
    return MISSING.of(message, span, hint, folder.name)


def _alike(name: str) -> str:
    return unicodedata.normalize("NFC", name).casefold()


def _other(twin: str, name: str) -> str:
    same_form = unicodedata.normalize("NFC", twin) == unicodedata.normalize("NFC", name)
    return "the accents are stored in another form" if same_form else "only the capitals differ"
