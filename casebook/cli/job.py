"""What is asked of a site builder, and how the one that is installed is found."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from importlib.metadata import entry_points
from pathlib import Path
from typing import Protocol

import click

from casebook.diagnostics import Diagnostic
from casebook.loading import Loaded
from casebook.model.base import Audience
from casebook.terminal import visible


def _silent(done: int, total: int) -> None:
    """Tell nobody how far it has come."""


@dataclass(frozen=True)
class Job:
    """What a builder is to build: an archive that was read and checked, and for whom."""

    loaded: Loaded
    found: tuple[Diagnostic, ...]
    audience: Audience
    client: str = ""
    leave_out: frozenset[str] = frozenset()
    """Ids of the cases that are not built."""
    report: Callable[[int, int], None] = field(default=_silent)
    """Told how many of how many pictures are made."""

    def notes(self) -> Mapping[str, tuple[str, ...]]:
        """What the check says of each case, by its id."""
        return {
            name: tuple(in_a_line(one) for one in self.found if one.case == folder)
            for name, folder in self.loaded.folders.items()
        }


class Builder(Protocol):
    """What a site builder offers under the entry point `casebook.builders`."""

    def build(self, job: Job, place: Path) -> None:
        """Build into the folder `place`, whole or not at all.

        Raises `Busy`, `NotOurs`, `OSError`, or a `ClickException` with what the user is to do.
        """

    def make(self, job: Job, stage: Path, site_url: str | None = None) -> None:
        """Build straight into the folder `stage`; `site_url` replaces the configured one."""

    def serve(
        self, notes: Path, watched: Iterable[Path], port: int, make: Callable[[Path], None]
    ) -> None:
        """Serve what `make` puts into a folder, anew when one of the `watched` changes."""


def in_a_line(one: Diagnostic) -> str:
    """A diagnostic as one line, such as `cases/x/case.md:3: no title (hint: write one)`."""
    place = f"{one.span.file}:{one.span.line}: " if one.span else ""
    hint = f" (hint: {one.hint})" if one.hint else ""
    return visible(f"{place}{one.message}{hint}")


def installed_builder() -> Builder:
    """The site builder that is installed."""
    found = sorted(entry_points(group="casebook.builders"), key=lambda one: one.name)
    missing = "casebook_mkdocs"
    for one in found:
        try:
            loaded: Builder = one.load()
        except ModuleNotFoundError as fault:
            missing = fault.name or missing
        else:
            return loaded
    hint = "install Casebook with its site builder: pip install casebook mkdocs mkdocs-material"
    raise click.ClickException(f"no site can be built, `{missing}` is not installed; {hint}")
