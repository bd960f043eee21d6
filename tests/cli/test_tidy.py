"""`tidy` from outside: what it writes, what it prints where, and its exit codes."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from casebook.authoring import tidy as room
from casebook.authoring.edits import Change
from casebook.cli import main
from casebook.diagnostics import Span
from casebook.locks import lock
from tests.stories.archives import break_case, edit, small_archive, tree

Told = tuple[int, str, str]


@pytest.fixture
def archive(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An archive whose first case has two places to tidy, in which the command is called."""
    archive = small_archive(tmp_path / "archive")
    long = "was: [2024-001]\nstatus: {is: undecided} "
    edit(archive / "cases" / "2025-001", "status: undecided ", long)
    monkeypatch.chdir(archive)
    return archive


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str]) -> Callable[..., Told]:
    def one(*arguments: str) -> Told:
        with pytest.raises(SystemExit) as ended:
            main(["tidy", *arguments])
        return int(ended.value.code or 0), *capsys.readouterr()

    return one


def records(archive: Path) -> dict[str, bytes]:
    return {path: data for path, data in tree(archive).items() if not path.startswith(".casebook")}


def place(archive: Path, text: str) -> str:
    """Line and column of a text in the first case."""
    lines = (archive / "cases" / "2025-001" / "case.md").read_text("utf-8").split("\n")
    return next(f"{n}:{line.index(text) + 1}" for n, line in enumerate(lines, 1) if text in line)


def test_check_lists_the_places_and_changes_nothing(archive, run):
    before = tree(archive)
    code, out, err = run("--check", "2025-001")
    file = "cases/2025-001/case.md"
    assert out.splitlines()[:2] == [
        f"{file}:{place(archive, '[2024-001]')}: [2024-001] → 2024-001",
        f"{file}:{place(archive, '{is: undecided}')}: {{is: undecided}} → undecided",
    ]
    assert "to tidy" in err
    assert code == 1
    assert records(archive) == {k: v for k, v in before.items() if not k.startswith(".casebook")}
    assert not (archive / ".casebook" / "tidy.lock").exists()


def test_tidy_says_how_many_places_of_which_file_and_is_done_then(archive, run):
    code, out, err = run()
    assert "cases/2025-001/case.md: " in out
    assert "was: 2024-001\nstatus: undecided " in record(archive)
    assert " tidied" in err
    assert code == 0
    before = records(archive)
    assert run("--check") == (0, "", "nothing to tidy in 6 files\n")
    assert run() == (0, "", "nothing to tidy in 6 files\n")
    assert records(archive) == before


def record(archive: Path) -> str:
    return (archive / "cases" / "2025-001" / "case.md").read_text("utf-8")


def test_only_the_cases_named_are_tidied_by_id_or_by_folder(archive, run):
    (archive / "cases" / "2025-001").rename(archive / "cases" / "chart")
    assert run("2025-002")[1] == ""
    assert run("2025-001", "--check")[0] == run("chart", "--check")[0] == 1


def test_a_case_that_is_not_there_could_not_be_tidied(archive, run):
    code, _, err = run("2025-020")
    assert (code, "no case `2025-020`" in err) == (2, True)


def test_a_file_that_cannot_be_read_is_left_alone_and_told_as_check_tells_it(archive, run):
    edit(archive / "cases" / "2025-001", "status: {is: undecided}", "status: undecided")
    break_case(archive, "2025-001")
    before = records(archive)
    code, out, err = run()
    assert code == 1
    assert "cases/2025-001" not in out
    assert "error: " in err
    assert "[yaml]" in err
    assert "left alone for its errors: 1 file" in err
    assert records(archive)["cases/2025-001/case.md"] == before["cases/2025-001/case.md"]


def test_the_white_space_at_the_end_of_a_line_is_named(archive, run):
    edit(archive / "cases" / "2025-001", "was: [2024-001]", "was: 2024-001  ")
    assert ": white space at the end of the line\n" in run("--check")[1]


def test_a_long_place_is_cut_and_shown_on_one_line(archive, run):
    edit(archive / "cases" / "2025-001", "was: [2024-001]", f'care: [\n  "{"a" * 99}"]')
    edit(archive / "cases" / "2025-001", "care: [", "was: [")
    shown = run("--check")[1].splitlines()[0]
    assert shown.endswith("… → " + shown.rpartition("→ ")[2])
    assert len(shown.partition(": ")[2]) <= 130


def test_two_at_a_time_are_told_of_each_other(archive, run):
    with lock(archive / ".casebook" / "tidy.lock", "tidying the records"):
        code, _, err = run()
    assert (code, "tidying the records" in err) == (2, True)


def test_a_place_that_would_say_otherwise_is_told_and_left(archive, run, monkeypatch):
    wrong = Change(0, 3, "-- ", Span("cases/2025-002/case.md", 1, 1, 1, 4))
    monkeypatch.setattr(room, "trailing", lambda written: [wrong])
    before = records(archive)
    code, out, _ = run("2025-002")
    assert code == 1
    assert ":1:1: left as it is: " in out
    assert records(archive) == before
