"""Builds a site through MkDocs into a folder aside, and exchanges it in when it is whole."""

from __future__ import annotations

import shutil
from pathlib import Path

import click
from mkdocs.commands.build import build as mkdocs_build
from mkdocs.config import load_config

from casebook.cli.job import Job
from casebook.locks import lock
from casebook.swaps import NotOurs, finish_swaps, foreign_files, swap
from casebook_mkdocs.plugin import CasebookPlugin
from casebook_mkdocs.serve import serve


class MkDocsBuilder:
    """What the commands call, found by its entry point: a `casebook.cli.Builder`."""

    serve = staticmethod(serve)

    def build(self, job: Job, place: Path) -> None:
        """Build aside and exchange the folder into `place`; else all stays as it was."""
        notes = job.loaded.root / ".casebook"
        with lock(notes / f"{place.name}.lock", f"building {place.name}"):
            finish_swaps(notes)
            if foreign := foreign_files(place, notes):
                raise NotOurs(place, foreign)
            stage = notes / f"building-{place.name}"
            try:
                self.make(job, stage)
                swap(stage, place, notes)
            finally:  # gone if it was exchanged; what cannot be removed, the next build empties
                shutil.rmtree(stage, ignore_errors=True)

    def make(self, job: Job, stage: Path, site_url: str | None = None) -> None:
        """Build into the folder `stage`, which MkDocs empties first."""
        config = load_config(str(job.loaded.root / "mkdocs.yml"), site_dir=str(stage))
        plugin = config.plugins.get("casebook")
        if not isinstance(plugin, CasebookPlugin):
            raise click.ClickException("mkdocs.yml does not say `plugins: [casebook]`")
        plugin.job = job
        config.site_url = config.site_url if site_url is None else site_url
        config.plugins.on_startup(command="build", dirty=False)
        try:
            mkdocs_build(config)
        finally:
            config.plugins.on_shutdown()


BUILDER = MkDocsBuilder()
