"""Which archive a command works in, for whom, and where the site goes."""

from __future__ import annotations

import gc

import click
import pytest

from casebook.cli.shared import find_archive, for_whom, place_of, read, tell, uncollected
from casebook.diagnostics import Diagnostic, Severity, Span
from casebook.model.base import Audience
from tests.stories.archives import small_archive


@pytest.fixture(scope="module")
def archive(tmp_path_factory):
    return small_archive(tmp_path_factory.mktemp("shared") / "archive")


def test_the_nearest_archive_upward_is_taken(archive, monkeypatch):
    monkeypatch.chdir(archive / "cases" / "2025-001" / "photos")
    assert find_archive(None) == archive


def test_the_archive_named_is_taken(archive, monkeypatch, tmp_path):
    monkeypatch.chdir(tmp_path)
    assert find_archive(str(archive)) == archive


@pytest.mark.parametrize("named", [None, "."])
def test_where_there_is_no_archive_the_message_says_so(tmp_path, monkeypatch, named):
    monkeypatch.chdir(tmp_path)
    with pytest.raises(click.ClickException, match=r"no lab\.yml"):
        find_archive(named)


@pytest.mark.parametrize(("audience", "client"), [("client", None), ("lab", "quay")])
def test_a_client_and_its_key_go_together(archive, audience, client):
    with pytest.raises(click.UsageError, match="needs both"):
        for_whom(read(archive)[0], audience, client)


def test_a_client_that_the_lab_does_not_know_is_refused(archive):
    with pytest.raises(click.UsageError, match="no client `harbour`"):
        for_whom(read(archive)[0], "client", "harbour")


def test_a_key_that_would_leave_the_archive_is_refused(tmp_path):
    archive = small_archive(tmp_path / "archive")
    settings = archive / "lab.yml"
    settings.write_text(settings.read_text("utf-8").replace("quay:", "../quay:"), "utf-8")
    with pytest.raises(click.UsageError, match="cannot name a folder"):
        for_whom(read(archive)[0], "client", "../quay")


def test_only_the_public_site_stands_in_site(archive):
    assert for_whom(read(archive)[0], "client", "quay") == (Audience.CLIENT, "quay")
    names = [place_of(archive, one, "quay").name for one in Audience]
    assert names == ["site-lab", "site-client-quay", "site"]


def test_a_diagnostic_is_told_with_its_line(archive, capsys):
    span = Span("cases/2025-001/case.md", 4, 1, 4, 3)
    tell(archive, [Diagnostic("x", Severity.ERROR, "wrong", span)], err=True)
    told = capsys.readouterr()
    assert told.out == ""
    assert "4 | id: 2025-001" in told.err
    assert "\x1b" not in told.err


def test_the_search_for_circles_rests_during_a_command_and_goes_on_after_it():
    assert gc.isenabled()
    with uncollected():
        assert not gc.isenabled()
    assert gc.isenabled()
