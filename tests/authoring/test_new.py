"""A new case gets an id for ever, a folder, and a record that reads without an error."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook import flow
from casebook.authoring.init import InTheWay, init_archive
from casebook.authoring.new import new_case
from casebook.diagnostics import Severity
from casebook.model.base import items
from tests.stories.archives import TODAY, tree


@pytest.fixture
def archive(tmp_path):
    init_archive(tmp_path)
    return tmp_path


def errors(archive) -> list[str]:
    found = flow.check(flow.load(archive), TODAY)
    return [one.message for one in found if one.severity is Severity.ERROR]


def test_an_id_names_the_case_and_its_folder(archive):
    folder = new_case(archive, "1984-017", TODAY)
    assert folder == archive / "cases" / "1984-017"
    assert set(tree(folder)) == {"case.md", "episodes/01-arrival.md"}
    assert (folder / "photos").is_dir()
    assert [case.id for case in flow.load(archive).archive.cases] == ["1984-017"]


def test_a_title_is_kept_and_the_case_gets_the_next_number_of_the_year(archive):
    new_case(archive, "2025-030", TODAY)
    folder = new_case(archive, "Tide-gauge keeper's day book", TODAY)
    assert folder.name == "2025-031-tide-gauge-keepers-day-book"
    case = flow.load(archive).archive.cases[1]
    assert (case.id, case.title) == ("2025-031", "Tide-gauge keeper's day book")


def test_without_a_name_the_case_gets_a_number_alone(archive):
    assert [new_case(archive, "", TODAY).name for _ in range(2)] == ["2025-001", "2025-002"]


def test_a_new_case_has_no_error(archive):
    new_case(archive, "", TODAY)
    new_case(archive, "2025-007", TODAY)
    assert errors(archive) == []


def test_every_line_of_the_pattern_reads_without_an_error_once_it_is_used(archive):
    folder = new_case(archive, "2025-007", TODAY)
    for path in folder.rglob("*.md"):
        lines = path.read_text("utf-8").split("\n")
        path.write_text("\n".join(_used(line) for line in lines), "utf-8")
    (folder / "photos").rmdir()
    loaded = flow.load(archive)
    faults = {one.rule for one in loaded.diagnostics if one.severity is Severity.ERROR}
    assert faults == {"photo-missing"}, loaded.diagnostics
    assert {one.rule for one in loaded.diagnostics} == {"photo-missing"}
    case = loaded.archive.cases[0]
    assert case.bindings
    (episode,) = items(case.episodes)
    assert [step.adds for step in items(episode.steps)] == [None, None, "first-lining"]


def _used(line: str) -> str:
    """A line of the pattern with its sign of a comment taken away, unless it is prose."""
    is_prose = (line.startswith("# ") and line[2].isupper()) or line.startswith("# does not")
    return line if is_prose else line.removeprefix("# ")


def test_an_id_is_never_given_twice_even_where_the_folder_has_another_name(archive):
    folder = new_case(archive, "2025-007", TODAY)
    renamed = folder.rename(folder.with_name("the-day-book"))
    before = tree(archive)
    with pytest.raises(InTheWay) as refused:
        new_case(archive, "2025-007", TODAY)
    assert refused.value.paths == [renamed]
    assert tree(archive) == before


def test_a_folder_that_is_there_is_never_written_into(archive):
    (archive / "cases" / "2025-007").mkdir()
    with pytest.raises(InTheWay):
        new_case(archive, "2025-007", TODAY)
    assert list((archive / "cases" / "2025-007").iterdir()) == []


@given(title=st.text(st.characters(codec="utf-8", exclude_categories=["Cc", "Cs"]), max_size=60))
def test_any_title_makes_a_record_that_reads(tmp_path_factory, title):
    archive = tmp_path_factory.mktemp("any")
    init_archive(archive)
    new_case(archive, title, TODAY)
    assert errors(archive) == []
