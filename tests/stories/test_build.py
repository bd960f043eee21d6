"""Building: whole or not at all, the same bytes every time, and nothing of anybody else's lost."""

from __future__ import annotations

import errno
import os
import shutil
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from casebook.cli import main
from casebook.locks import lock
from tests.stories.archives import break_case, command, edit, small_archive, tree

plugin = pytest.importorskip("casebook_mkdocs.plugin")
build = pytest.importorskip("casebook_mkdocs.build")


@pytest.fixture(scope="module")
def built(tmp_path_factory) -> Path:
    archive = small_archive(tmp_path_factory.mktemp("built") / "archive")
    assert run("build", "-C", str(archive)) == 0
    return archive


@pytest.fixture
def archive(built, tmp_path) -> Path:
    """An archive with a finished site, for one test alone."""
    return Path(shutil.copytree(built, tmp_path / "archive"))


def run(*arguments: str) -> int:
    with pytest.raises(SystemExit) as end:
        main(list(arguments))
    assert isinstance(end.value.code, int)
    return end.value.code


def change(archive: Path) -> dict[str, bytes]:
    """Change a record, so that the next site differs; the site as it is now."""
    edit(archive / "cases" / "2025-002", "title: not recorded", "title: Something new")
    return tree(archive / "site")


def test_a_site_has_its_home_its_cases_and_the_pages_of_the_lab(built):
    names = set(tree(built / "site"))
    assert {"index.html", "about.html", "404.html", "cases/2025-001/index.html"} <= names
    assert b"About this studio" in (built / "site" / "about.html").read_bytes()


def test_the_same_archive_gives_the_same_bytes_in_any_folder_at_any_time(built, tmp_path):
    other = small_archive(tmp_path / "somewhere else")
    later = time.time() + 1e8
    for path in other.rglob("*"):
        os.utime(path, (later, later))
    assert run("build", "-C", str(other)) == 0
    assert tree(other / "site") == tree(built / "site")


def test_case_pages_load_nothing_of_the_theme_and_hand_written_ones_only_its_typography(built):
    site = built / "site"
    assert b"stylesheets/main." not in (site / "cases" / "2025-001" / "index.html").read_bytes()
    assert b"stylesheets/main." in (site / "about.html").read_bytes()
    theirs = [name for name in tree(site) if "/stylesheets/" in name or "javascripts" in name]
    assert len(theirs) == 1


def test_a_broken_record_leaves_the_old_site(archive, capsys):
    before = change(archive)
    break_case(archive, "2025-001")
    assert run("build", "-C", str(archive)) == 1
    assert tree(archive / "site") == before
    assert "nothing was built: 1 error" in capsys.readouterr().err


def test_the_whole_cases_can_be_built_without_the_broken_ones(archive, capsys):
    change(archive)
    break_case(archive, "2025-001")
    assert run("build", "-C", str(archive), "--leave-out") == 1
    assert "left out: 2025-001" in capsys.readouterr().err
    assert not (archive / "site" / "cases" / "2025-001").exists()
    assert b"Something new" in (archive / "site" / "cases" / "2025-002" / "index.html").read_bytes()


def test_a_fault_of_the_archive_itself_cannot_be_left_out(archive):
    before = change(archive)
    (archive / "lab.yml").write_text("format: 9\n", "utf-8")
    assert run("build", "-C", str(archive), "--leave-out") == 1
    assert tree(archive / "site") == before


HALTED = """
import time
from pathlib import Path
from casebook_mkdocs import plugin

def halt(source, target):
    Path("half-way").touch()
    time.sleep(60)

plugin.link_or_copy = halt
"""


def test_a_killed_build_leaves_the_old_site_and_the_next_one_succeeds(archive):
    before = change(archive)
    going = command("build", cwd=archive, first=HALTED)
    wait_for(lambda: (archive / "half-way").exists() or going.poll() is not None)
    assert (archive / ".casebook" / "building-site" / "index.html").exists()
    going.kill()
    going.communicate()
    assert tree(archive / "site") == before
    assert run("build", "-C", str(archive)) == 0
    assert b"Something new" in (archive / "site" / "cases" / "2025-002" / "index.html").read_bytes()
    assert not (archive / ".casebook" / "building-site").exists()


def wait_for(there: Callable[[], bool]) -> None:
    until = time.monotonic() + 30
    while not there():
        assert time.monotonic() < until
        time.sleep(0.002)


def test_a_full_disk_leaves_the_old_site_and_is_told_in_a_line(archive, monkeypatch, capsys):
    before = change(archive)

    def full(source: Path, target: Path) -> None:
        raise OSError(errno.ENOSPC, "No space left on device", str(target))

    monkeypatch.setattr(plugin, "link_or_copy", full)
    assert run("build", "-C", str(archive)) == 2
    assert tree(archive / "site") == before
    assert "error: No space left on device" in capsys.readouterr().err
    assert not (archive / ".casebook" / "building-site").exists()


def test_a_second_build_of_the_same_site_says_who_is_building(archive, capsys):
    before = change(archive)
    with lock(archive / ".casebook" / "site.lock", "building site"):
        assert run("build", "-C", str(archive)) == 2
    assert f"pid {os.getpid()}: building site" in capsys.readouterr().err
    assert tree(archive / "site") == before


def test_two_builds_at_once_do_not_mix(archive):
    change(archive)
    both = [command("build", cwd=archive), command("build", "--audience", "lab", cwd=archive)]
    told = [one.communicate() for one in both]
    assert [one.returncode for one in both] == [0, 0], told
    assert b"own copy" not in (archive / "site" / "index.html").read_bytes()
    assert b"own copy" in (archive / "site-lab" / "index.html").read_bytes()


def test_a_file_of_somebody_elses_in_the_site_is_never_deleted(archive, capsys):
    change(archive)
    (archive / "site" / "CNAME").write_text("books.example", "utf-8")
    before = tree(archive / "site")
    assert run("build", "-C", str(archive)) == 2
    assert tree(archive / "site") == before
    told = capsys.readouterr().err
    assert "CNAME" in told
    assert "pages/" in told


def test_without_its_notes_a_site_is_taken_for_somebody_elses_until_it_is_renamed(archive, capsys):
    shutil.rmtree(archive / ".casebook")
    assert run("build", "-C", str(archive)) == 2
    assert "remove or rename site/" in capsys.readouterr().err
    (archive / "site").rename(archive / "old")
    assert run("build", "-C", str(archive)) == 0
    assert tree(archive / "site") == tree(archive / "old")


def test_each_audience_has_a_folder_of_its_own(archive):
    edit(archive / "cases" / "2025-002", "# client: parish-library", "client: quay # ")
    assert run("build", "-C", str(archive), "--audience", "client", "--client", "quay") == 0
    cases = {path.name for path in (archive / "site-client-quay" / "cases").iterdir()}
    assert cases == {"2025-002", "index.html"}


def test_a_home_page_of_the_labs_own_is_left_out_and_told(archive, caplog):
    (archive / "pages" / "index.md").write_text("# Mine\n", "utf-8")
    assert run("build", "-C", str(archive)) == 0
    assert b"Mine" not in (archive / "site" / "index.html").read_bytes()
    assert "pages/index.md is left out" in caplog.text


def test_an_archive_whose_mkdocs_yml_does_not_name_the_plugin_is_told_so(archive, capsys):
    settings = archive / "mkdocs.yml"
    settings.write_text("site_name: x\ndocs_dir: pages\nplugins: []\n", "utf-8")
    assert run("build", "-C", str(archive)) == 2
    assert "plugins: [casebook]" in capsys.readouterr().err
