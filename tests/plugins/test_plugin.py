"""`mkdocs build` by itself: the same pages, and an old site that stays when a record is broken."""

from __future__ import annotations

import shutil
from pathlib import Path
from typing import Any

import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.exceptions import Abort

from casebook import flow
from casebook.cli import main
from casebook.photos.derive import Unusable
from casebook.swaps import foreign_files
from tests.stories.archives import break_case, edit, small_archive, tree


@pytest.fixture(scope="module")
def made(tmp_path_factory) -> Path:
    archive = small_archive(tmp_path_factory.mktemp("made") / "archive")
    with pytest.raises(SystemExit) as end:
        main(["build", "-C", str(archive)])
    assert end.value.code == 0
    return archive


@pytest.fixture
def archive(made, tmp_path) -> Path:
    """An archive with a site that `casebook build` made, for one test alone."""
    return Path(shutil.copytree(made, tmp_path / "archive"))


def mkdocs_build(archive: Path, **settings: Any) -> None:
    config = load_config(str(archive / "mkdocs.yml"), **settings)
    config.plugins.on_startup(command="build", dirty=False)
    build(config)


def test_mkdocs_build_makes_the_same_bytes(archive):
    before = tree(archive / "site")
    mkdocs_build(archive)
    assert tree(archive / "site") == before


def test_what_mkdocs_build_made_is_known_as_ours(archive):
    edit(archive / "cases" / "2025-002", "title: not recorded", "title: Something new")
    mkdocs_build(archive)
    assert foreign_files(archive / "site", archive / ".casebook") == []


def test_hidden_files_that_mkdocs_leaves_in_place_do_not_become_ours(archive):
    (archive / "site" / ".git").mkdir()
    (archive / "site" / ".git" / "HEAD").write_text("ref: x")
    mkdocs_build(archive)
    assert ".git/HEAD" in foreign_files(archive / "site", archive / ".casebook")


def test_a_broken_record_stops_mkdocs_before_it_empties_the_site(archive, caplog):
    before = tree(archive / "site")
    break_case(archive, "2025-001")
    with pytest.raises(Abort):
        mkdocs_build(archive)
    assert tree(archive / "site") == before
    assert "1 error" in caplog.text
    assert "nothing was built" in caplog.text


def test_warnings_about_records_count_for_strict(archive, caplog):
    with pytest.raises(Abort, match="strict"):
        mkdocs_build(archive, strict=True)
    warned = [one for one in caplog.records if one.name == "mkdocs.plugins.casebook"]
    assert any("cases/2025-001/case.md:4: " in one.getMessage() for one in warned)


def test_the_audience_may_be_set_in_mkdocs_yml(archive):
    settings = archive / "mkdocs.yml"
    text = settings.read_text("utf-8").replace("- casebook", "- casebook: {audience: lab}")
    settings.write_text(text, "utf-8")
    edit(archive / "cases" / "2025-002", "audience: public", "audience: lab")
    mkdocs_build(archive)
    assert (archive / "site" / "cases" / "2025-002" / "index.html").exists()


def test_a_hand_written_page_in_a_folder_finds_the_style_sheets(archive):
    page = archive / "pages" / "notes" / "paste.md"
    page.parent.mkdir()
    page.write_text("# Our paste\n\n!!! note\n    Cook it slowly.\n", "utf-8")
    mkdocs_build(archive)
    text = (archive / "site" / "notes" / "paste.html").read_text("utf-8")
    sheets = [part.partition('"')[0] for part in text.split('rel="stylesheet" href="')[1:]]
    assert len(sheets) == 3
    assert all((archive / "site" / "notes" / sheet).is_file() for sheet in sheets)
    assert 'class="admonition note"' in text
    assert "Our paste" in (archive / "site" / "index.html").read_text("utf-8")


def test_without_hand_written_pages_no_byte_of_the_theme_is_there(archive):
    shutil.rmtree(archive / "pages")
    (archive / "pages").mkdir()
    mkdocs_build(archive)
    assert not (archive / "site" / "assets" / "stylesheets").exists()
    assert not (archive / "site" / "assets" / "own-page.css").exists()


def test_a_hand_written_page_may_link_to_a_case(archive):
    (archive / "pages" / "best.md").write_text("See [it](cases/2025-001/index.md).\n", "utf-8")
    mkdocs_build(archive)
    text = (archive / "site" / "best.html").read_text("utf-8")
    assert 'href="cases/2025-001/index.html"' in text


def test_a_photo_that_went_bad_meanwhile_stops_the_build_with_its_name(
    archive, monkeypatch, caplog
):
    def bad(*_: object) -> None:
        raise Unusable("spine.jpg", "it changed while it was worked on")

    monkeypatch.setattr(flow, "derive", bad)
    before = tree(archive / "site")
    with pytest.raises(Abort):
        mkdocs_build(archive)
    assert "`spine.jpg` cannot be used: it changed" in caplog.text
    assert tree(archive / "site") == before
