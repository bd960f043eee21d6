"""What a builder is given, and how it is found or missed."""

from __future__ import annotations

from importlib.metadata import EntryPoint

import click
import pytest

from casebook.cli import job
from casebook.cli.job import Job, in_a_line, installed_builder
from casebook.cli.shared import read
from casebook.diagnostics import Diagnostic, Severity, Span
from casebook.model.base import Audience
from tests.stories.archives import break_case, small_archive


def offer(monkeypatch, *places: str) -> None:
    """Have these and no other builders be installed."""
    found = [EntryPoint(f"b{n}", place, "casebook.builders") for n, place in enumerate(places)]
    monkeypatch.setattr(job, "entry_points", lambda group: found)


def test_the_builder_that_is_installed_is_found(monkeypatch):
    offer(monkeypatch, "casebook.cli.job:JOB_FOR_TESTS")
    monkeypatch.setattr(job, "JOB_FOR_TESTS", builder := object(), raising=False)
    assert installed_builder() == builder


def test_without_a_builder_the_message_says_what_to_install(monkeypatch):
    offer(monkeypatch)
    with pytest.raises(click.ClickException, match=r"casebook_mkdocs.*pip install"):
        installed_builder()


def test_a_builder_that_lacks_something_names_it(monkeypatch):
    offer(monkeypatch, "no_such_site_builder.build:BUILDER")
    with pytest.raises(click.ClickException, match="`no_such_site_builder` is not installed"):
        installed_builder()


def test_a_diagnostic_in_a_line_has_its_place_and_hint():
    one = Diagnostic("x", Severity.ERROR, "no \x1b[1mtitle", Span("a.md", 3, 1, 3, 2), "write one")
    assert in_a_line(one) == "a.md:3: no \\x1b[1mtitle (hint: write one)"
    assert in_a_line(Diagnostic("x", Severity.ERROR, "no file")) == "no file"


def test_the_notes_of_a_job_are_by_case(tmp_path):
    archive = small_archive(tmp_path / "archive")
    renamed = archive / "cases" / "2025-001"
    renamed.rename(renamed.with_name("the-ledger"))
    break_case(archive, "2025-002")
    loaded, found = read(archive)
    notes = Job(loaded, found, Audience.LAB).notes()
    assert set(notes) == {"2025-001", "2025-002"}
    assert any(line.startswith("cases/2025-002/case.md:6: ") for line in notes["2025-002"])
    assert all("2025-002" not in line for line in notes["2025-001"])
