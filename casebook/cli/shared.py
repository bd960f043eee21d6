"""What the commands share: which archive, for whom, reading it, and telling what was found."""

from __future__ import annotations

import gc
import os
import re
import sys
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from datetime import date, datetime
from pathlib import Path

import click

from casebook.diagnostics import Diagnostic
from casebook.loading import Loaded
from casebook.model.base import Audience
from casebook.terminal import render, use_colour


@contextmanager
def uncollected() -> Iterator[None]:
    """Without Python's search for circles of references, for a command that runs once and ends.

    Records hold none, and searching all of them again and again is a third of a build's time.
    """
    was = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was:
            gc.enable()


def find_archive(folder: str | None) -> Path:
    """The archive named, or the nearest one from here upward; both hold a `lab.yml`."""
    if folder is not None:
        if not (Path(folder) / "lab.yml").is_file():
            raise click.ClickException(f"`{folder}` is no archive: it has no lab.yml")
        return Path(folder).absolute()
    here = Path.cwd()
    for place in (here, *here.parents):
        if (place / "lab.yml").is_file():
            return place
    hint = "go to an archive, name one with -C, or make one with `casebook init FOLDER`"
    raise click.ClickException(f"there is no lab.yml here or above: {hint}")


def today() -> date:
    """The day here: what the check of dates is handed."""
    return datetime.now().astimezone().date()


def read(root: Path) -> tuple[Loaded, tuple[Diagnostic, ...]]:
    """The archive, and all that the reader and the rules say of it."""
    from casebook import flow

    loaded = flow.load(root)
    return loaded, flow.check(loaded, today())


def tell(root: Path, found: Iterable[Diagnostic], *, err: bool, show_all: bool = False) -> None:
    """Print diagnostics with the lines they speak of."""
    from casebook.source import lines_of

    def lines(name: str) -> Sequence[str] | None:
        path = root / name
        return lines_of(path.read_bytes()) if path.is_file() else None

    colour = use_colour(sys.stderr if err else sys.stdout, os.environ)
    click.echo(render(found, lines, colour, show_all), nl=False, err=err, color=colour)


def say(text: str) -> None:
    """A word to the user, on standard error: standard output is for what was asked for."""
    click.echo(text, err=True)


def for_whom(loaded: Loaded, audience: str, client: str | None) -> tuple[Audience, str]:
    """The audience and the client's key, as asked for; the key must be one of `lab.yml`'s."""
    if (audience == "client") != bool(client):
        raise click.UsageError("a client's site needs both: --audience client --client KEY")
    if client and client not in loaded.archive.settings.clients:
        raise click.UsageError(f"lab.yml names no client `{client}` under `clients`")
    if client and not re.fullmatch(r"[A-Za-z0-9][A-Za-z0-9._-]*", client):
        raise click.UsageError(f"the key `{client}` cannot name a folder: use a-z, 0-9 and hyphens")
    return Audience(audience), client or ""


def place_of(root: Path, audience: Audience, client: str) -> Path:
    """The folder of an audience's site, beside the others."""
    tail = {Audience.PUBLIC: "", Audience.LAB: "-lab", Audience.CLIENT: f"-client-{client}"}
    return root / f"site{tail[audience]}"


archive_option = click.option(
    "-C", "--archive", metavar="FOLDER", help="The archive; else the nearest from here upward."
)
audience_option = click.option(
    "--audience", type=click.Choice([one.value for one in Audience]), help="Whom the site is for."
)
client_option = click.option("--client", metavar="KEY", help="The client's key in lab.yml.")
