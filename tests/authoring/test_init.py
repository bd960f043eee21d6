"""A new archive can be checked and built at once, and nothing is ever written over."""

from __future__ import annotations

import pytest

from casebook import flow
from casebook.authoring.init import InTheWay, init_archive
from casebook.diagnostics import Severity
from tests.stories.archives import TODAY, tree


def test_a_new_archive_has_its_settings_folders_and_ignore_file(tmp_path):
    paths = init_archive(tmp_path / "mine")
    names = {path.relative_to(tmp_path / "mine").as_posix() for path in paths}
    assert names == {
        ".gitignore",
        "cases",
        "lab.yml",
        "mkdocs.yml",
        "pages/about.md",
        "vocabulary/materials.yml",
    }
    assert all(path.exists() for path in paths)


def test_git_passes_by_what_is_built_and_what_is_noted(tmp_path):
    init_archive(tmp_path)
    ignored = (tmp_path / ".gitignore").read_text().split()
    assert ignored == [".casebook/", "site/", "site-*/"]


def test_a_new_archive_has_no_fault(tmp_path):
    init_archive(tmp_path)
    found = flow.check(flow.load(tmp_path), TODAY)
    assert [one for one in found if one.severity > Severity.SUGGESTION] == []


def test_what_else_is_in_the_folder_stays(tmp_path):
    (tmp_path / "notes.txt").write_text("mine")
    init_archive(tmp_path)
    assert (tmp_path / "notes.txt").read_text() == "mine"


@pytest.mark.parametrize("name", ["lab.yml", "mkdocs.yml", ".gitignore", "cases"])
def test_where_one_of_its_files_is_there_nothing_is_written(tmp_path, name):
    (tmp_path / name).write_text("mine")
    with pytest.raises(InTheWay) as refused:
        init_archive(tmp_path)
    assert refused.value.paths == [tmp_path / name]
    assert tree(tmp_path) == {name: b"mine"}
