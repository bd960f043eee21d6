"""The builder that the commands find: what it does around MkDocs."""

from __future__ import annotations

from importlib.metadata import entry_points

import click
import pytest

from casebook.cli.job import Job, installed_builder
from casebook.cli.shared import read
from casebook.model.base import Audience
from casebook_mkdocs.build import BUILDER
from tests.stories.archives import break_case, small_archive, tree


@pytest.fixture
def archive(tmp_path):
    return small_archive(tmp_path / "archive")


def test_it_is_found_by_its_entry_point():
    assert entry_points(group="casebook.builders", name="mkdocs")
    assert installed_builder() is BUILDER


def test_the_address_of_a_site_can_be_replaced(archive, tmp_path):
    settings = archive / "mkdocs.yml"
    settings.write_text(settings.read_text("utf-8") + "site_url: https://books.example/\n", "utf-8")
    job = Job(*read(archive), Audience.PUBLIC)
    BUILDER.make(job, tmp_path / "own")
    BUILDER.make(job, tmp_path / "other", site_url="")
    page = "cases/2025-001/index.html"
    assert f"https://books.example/{page}" in (tmp_path / "own" / page).read_text("utf-8")
    assert "books.example" not in (tmp_path / "other" / page).read_text("utf-8")


def test_a_broken_case_can_be_shown_with_what_is_wrong(archive, tmp_path):
    break_case(archive, "2025-001")
    loaded, found = read(archive)
    BUILDER.make(Job(loaded, found, Audience.LAB), tmp_path / "lab")
    text = (tmp_path / "lab" / "cases" / "2025-001" / "index.html").read_text("utf-8")
    assert "cases/2025-001/case.md:6: " in text


def test_nothing_of_a_failed_build_stays(archive):
    (archive / "mkdocs.yml").unlink()
    with pytest.raises(click.ClickException, match="does not exist"):
        BUILDER.build(Job(*read(archive), Audience.PUBLIC), archive / "site")
    assert not (archive / "site").exists()
    assert not [name for name in tree(archive) if "building" in name]
