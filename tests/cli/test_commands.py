"""The commands from outside: what they print where, and their exit codes."""

from __future__ import annotations

import json
from pathlib import Path

import click
import pytest

from casebook import cli
from casebook.cli import commands, job
from casebook.cli.commands import cli as group
from casebook.model.base import Audience
from tests.stories.archives import break_case, small_archive, tree


@pytest.fixture
def archive(tmp_path, monkeypatch) -> Path:
    """A small archive, in which the command is called."""
    archive = small_archive(tmp_path / "archive")
    monkeypatch.chdir(archive)
    return archive


class Told:
    """The exit code of a command and what it printed."""

    def __init__(self, code: int, out: str, err: str) -> None:
        self.code, self.out, self.err = code, out, err


@pytest.fixture
def run(capsys):
    def one(*arguments: str) -> Told:
        with pytest.raises(SystemExit) as end:
            cli.main(list(arguments))
        assert isinstance(end.value.code, int)
        return Told(end.value.code, *capsys.readouterr())

    return one


class Recorder:
    """A builder that keeps what it is asked for."""

    def __init__(self) -> None:
        self.asked: list[tuple[job.Job, Path]] = []
        self.served: tuple[list[Path], int] | None = None

    def build(self, one: job.Job, place: Path) -> None:
        self.asked.append((one, place))

    def make(self, one: job.Job, stage: Path, site_url: str | None = None) -> None:
        assert site_url == ""
        self.asked.append((one, stage))

    def serve(self, notes, watched, port, make) -> None:
        assert notes.is_dir()
        self.served = (list(watched), port)
        make(notes / "stage")


@pytest.fixture
def builder(monkeypatch) -> Recorder:
    recorder = Recorder()
    monkeypatch.setattr(commands, "installed_builder", lambda: recorder)
    return recorder


@pytest.mark.parametrize("name", sorted(group.commands))
def test_the_help_of_every_command_has_an_example(run, name):
    told = run(name, "--help")
    assert told.code == 0
    assert f"casebook {name}" in told.out.partition("Example")[2]
    assert "\b" not in told.out


def test_the_help_of_all_says_the_exit_codes(run):
    assert "Exit codes: 0" in run("--help").out


def test_without_a_command_the_help_is_shown(run):
    told = run()
    assert told.code == 2
    assert "Usage: casebook" in told.out + told.err


def test_an_unknown_command_is_told(run):
    assert run("biuld").code == 2


def test_init_says_the_next_command(run, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    told = run("init", "mine")
    assert (told.code, told.out) == (0, "")
    assert "cd mine" in told.err
    assert (tmp_path / "mine" / "lab.yml").is_file()


def test_init_refuses_what_is_there(run, archive):
    before = tree(archive)
    told = run("init", ".")
    assert told.code == 2
    assert "lab.yml" in told.err
    assert tree(archive) == before


def test_new_makes_a_case_and_says_where(run, archive):
    assert "cases/2024-007" in run("new", "2024-007").err.replace("\\", "/")
    assert run("new", "2024-007").code == 2


def test_check_prints_what_it_finds_on_standard_output(run, archive):
    told = run("check")
    assert told.code == 0
    assert "warning: " in told.out
    assert "warnings in 2 cases" in told.out


def test_check_of_one_case_tells_of_no_other(run, archive):
    told = run("check", "2025-002")
    assert "cases/2025-002/case.md" in told.out
    assert "2025-001" not in told.out


def test_check_of_a_case_that_is_not_there_could_not_run(run, archive):
    told = run("check", "2025-020")
    assert (told.code, told.out) == (2, "")
    assert "no case `2025-020`" in told.err


def test_an_error_makes_the_exit_code_one(run, archive):
    break_case(archive, "2025-001")
    assert run("check").code == 1
    assert run("check", "2025-002").code == 0


def test_check_as_json_is_nothing_but_json(run, archive):
    break_case(archive, "2025-001")
    told = run("check", "--format", "json")
    severities = {one["severity"] for one in json.loads(told.out)["diagnostics"]}
    assert severities >= {"error", "warning"}
    assert told.code == 1


def test_outside_an_archive_a_command_could_not_run(run, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    for name in ("check", "new"):
        told = run(name)
        assert told.code == 2
        assert "casebook init" in told.err


def test_build_is_for_the_public_where_nothing_is_said(run, archive, builder):
    told = run("build")
    ((one, place),) = builder.asked
    assert (one.audience, one.client, place) == (Audience.PUBLIC, "", archive / "site")
    assert told.out == f"{place / 'index.html'}\n"
    assert told.code == 0


def test_a_public_build_says_what_it_goes_without(run, archive, builder):
    assert "no `site_url` in mkdocs.yml: no sitemap, no news feed" in run("build").err
    (archive / "site").mkdir()
    (archive / "site" / "sitemap.xml").touch()
    assert "no `tag` in lab.yml: no news feed" in run("build").err
    (archive / "site" / "feed.xml").touch()
    assert "no news feed" not in run("build").err
    assert "site_url" not in run("build", "--audience", "lab").err


def test_build_for_a_client_needs_its_key(run, archive, builder):
    assert run("build", "--audience", "client").code == 2
    assert run("build", "--audience", "client", "--client", "nobody").code == 2
    assert builder.asked == []
    assert run("build", "--audience", "client", "--client", "quay").code == 0
    assert builder.asked[0][0].client == "quay"


def test_build_stops_on_an_error_and_counts_the_whole_cases(run, archive, builder):
    break_case(archive, "2025-001")
    told = run("build")
    assert (told.code, told.out, builder.asked) == (1, "", [])
    assert "cases without one: 1 (--leave-out" in told.err


def test_build_leaves_out_broken_cases_on_request_and_says_which(run, archive, builder):
    break_case(archive, "2025-001")
    told = run("build", "--leave-out")
    assert told.code == 1
    assert builder.asked[0][0].leave_out == {"2025-001"}
    assert "left out: 2025-001" in told.err


@pytest.mark.parametrize("name", ["build", "serve"])
def test_without_a_site_builder_nothing_can_be_built(run, archive, monkeypatch, name):
    monkeypatch.setattr(job, "entry_points", lambda group: [])
    told = run(name)
    assert told.code == 2
    assert "pip install" in told.err


def test_serve_shows_the_lab_all_its_cases_broken_ones_too(run, archive, builder):
    break_case(archive, "2025-001")
    assert run("serve", "--port", "8123").code == 0
    watched, port = builder.served
    assert port == 8123
    assert {"cases", "pages", "vocabulary", "lab.yml", "mkdocs.yml"} <= {
        one.name for one in watched
    }
    (one, _) = builder.asked[0]
    assert (one.audience, one.leave_out) == (Audience.LAB, frozenset())


@pytest.mark.parametrize(
    ("fault", "code", "words"),
    [
        (PermissionError(13, "Permission denied", "site"), 2, "error: Permission denied: site\n"),
        (click.ClickException("no"), 2, "error: no\n"),
        (KeyboardInterrupt(), 130, "\n"),
    ],
)
def test_what_a_user_can_mend_is_one_line(run, archive, monkeypatch, fault, code, words):
    def fail(*_: object) -> None:
        raise fault

    monkeypatch.setattr(commands, "read", fail)
    told = run("check")
    assert (told.code, told.err) == (code, words)


def test_a_bug_is_not_hidden(archive, monkeypatch):
    monkeypatch.setattr(commands, "read", lambda root: 1 / 0)
    with pytest.raises(ZeroDivisionError):
        cli.main(["check"])
