"""The command that proposes how photos lie over one another: it prints, the record decides."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import click

from casebook.cli.shared import archive_option, find_archive, say, uncollected
from casebook.loading import Loaded
from casebook.model.archive import Case
from casebook.model.base import items, known
from casebook.model.condition import Stage
from casebook.model.photos import Photo
from casebook.photos.align import EXTRA, NoFit, Proposed, propose
from casebook.terminal import visible
from casebook.vocabulary import fold

CLEAN, FAULTS = 0, 1

Pair = tuple[Photo, Photo]
"""A photo, and the one it is to be laid over."""


@click.command()
@click.argument("case")
@click.argument("photo", required=False)
@click.argument("over", required=False)
@archive_option
@uncollected()
def align(case: str, photo: str | None, over: str | None, archive: str | None) -> int:
    """Propose `fit:` lines that lay the photos after treatment over those before it.

    For a CASE, by id or folder, or for one PHOTO of it and the one it goes OVER, by id or file
    name. Nothing is written: the lines are printed, to be pasted into the photo's record when they
    look right. Two photos that do not fit are named, and the exit code is 1. Needs the extra
    `align`.

    \b
    Examples:
      casebook align 2025-031
      casebook align 2025-031 front-after front-before
    """
    from casebook import flow

    root = find_archive(archive)
    loaded = flow.load(root)
    named = (one for one in loaded.archive.cases if case in (one.id, loaded.folders.get(one.id)))
    found = next(named, None)
    if found is None:
        raise click.UsageError(f"there is no case `{case}` in this archive")
    pairs = [_named(found, photo, over)] if photo else list(_pairs(found))
    if not pairs:
        say("no photo after treatment shows the same view as one before it, or all are fitted")
    try:
        return max((_told(one, found, loaded) for one in pairs), default=CLEAN)
    except ImportError:
        raise click.ClickException(f"this needs OpenCV: {EXTRA}") from None


def _named(case: Case, photo: str, over: str | None) -> Pair:
    if over is None:
        raise click.UsageError("name the photo that it goes over, too")
    by_name = {name: one for one in items(case.photos) for name in (one.file, one.id) if name}
    for name in (photo, over):
        if name not in by_name:
            raise click.UsageError(f"the case has no photo `{name}`")
    return by_name[photo], by_name[over]


def _pairs(case: Case) -> Iterator[Pair]:
    """Each photo after treatment without a fit, with the first before it of the same view."""
    before = [one for one in items(case.photos) if one.stage is Stage.BEFORE and _view(one)]
    for photo in items(case.photos):
        if photo.stage is Stage.AFTER and _view(photo) and not photo.fit:
            under = next((one for one in before if _view(one) == _view(photo)), None)
            if under:
                yield photo, under


def _view(photo: Photo) -> str:
    view = known(photo.view)
    return fold(view) if view else ""


def _told(pair: Pair, case: Case, loaded: Loaded) -> int:
    """Print what is proposed for a pair; 1 where it does not fit."""
    names = [visible(one.id or one.file) for one in pair]
    try:
        here, there = (_path(one, case, loaded) for one in pair)
        found = propose(here, there)
    except NoFit as no:
        say(f"{names[0]} over {names[1]}: {no.reason}")
        return FAULTS
    say(
        f"{names[0]} over {names[1]}: {found.kept} of {found.alike} places that look alike agree; "
        f"{found.scale:.3f} times as large, turned by {found.degrees:.1f} degrees"
    )
    click.echo(f"    fit: {_line(found, pair[1])}")
    return CLEAN


def _path(photo: Photo, case: Case, loaded: Loaded) -> Path:
    image = loaded.archive.images.get(case.id, {}).get(photo.file)
    if image is None:
        raise NoFit(f"{visible(photo.file or photo.id)} is no picture that can be used")
    return loaded.originals[image.digest]


def _line(found: Proposed, under: Photo) -> str:
    here, there = (", ".join(map(str, points)) for points in (found.here, found.there))
    return f"{{over: {under.id or under.file}, here: [{here}], there: [{there}]}}"
