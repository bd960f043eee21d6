"""Files in their settled writing: nothing lost, nothing else changed, and the same a second time."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from casebook.authoring.tidy import FORMS, Tidied, files_of, forms_page, save, tidied, tidy
from casebook.model.archive import Case
from casebook.model.base import Record
from casebook.model.settings import Settings
from casebook.model.treatment import Episode, Recipe, Step
from casebook.model.vocabulary import Term
from casebook.reading import read
from casebook.vocabulary import Lexicon, builtin, extend
from tests.authoring.long_forms import long_record, written
from tests.reference.committed import holds
from tests.stories.archives import small_archive, tree

GOLDEN = Path(__file__).parents[1] / "golden" / "tidy"
LEXICON = Lexicon(builtin())
TYPES: dict[str, type[Record]] = {
    "case": Case,
    "broken": Case,
    "episode": Episode,
    "lab": Settings,
    "recipes": Recipe,
    "terms": Term,
}


def of(text: str, cls: type[Record] = Step, file: str = "lab.yml") -> Tidied:
    return tidied(text.encode(), file, cls, LEXICON)


@pytest.mark.parametrize("path", sorted(GOLDEN.glob("*.txt")), ids=lambda path: path.stem)
def test_a_file_becomes_its_settled_writing(path, golden):
    head, _, rest = path.read_bytes().decode().partition("\n")
    before, _, _ = rest.partition("-- after --\n")
    file = head.removeprefix("-- before: ").removesuffix(" --")
    one = of(before, TYPES[path.stem], file)
    assert one.left == ()
    assert bool(one.faults) is (path.stem == "broken")
    golden(f"tidy/{path.name}", f"{head}\n{before}-- after --\n{one.after.text}")
    assert of(one.after.text, TYPES[path.stem], file).changes == ()


@pytest.mark.parametrize(("says", "before", "after"), FORMS)
def test_each_settled_form_is_written_as_the_manual_shows(says, before, after):
    assert of(before).after.text == after
    assert of(after).changes == ()


def test_the_page_of_settled_forms_is_the_one_the_code_makes(request):
    holds(request, Path("docs/reference/tidy.md"), forms_page())


@settings(suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
@given(
    st.sampled_from([Case, Step]).flatmap(
        lambda cls: st.tuples(st.just(cls), long_record(cls).flatmap(written))
    ),
    st.sampled_from(["\n", "\r\n"]),
)
def test_a_record_reads_the_same_with_every_comment_and_is_tidy_then(drawn, end):
    cls, text = drawn
    one = of(text.replace("\n", end), cls)
    assert (one.faults, one.left) == ((), ())
    assert one.after.comments() == one.before.comments()
    assert one.after.text.count("\n") == one.after.text.count(end)
    assert said(one.after, cls) == said(one.before, cls)
    assert of(one.after.text, cls).changes == ()


def said(one, cls: type[Record]) -> tuple[Record, list[str]]:
    """What a file says, and what the reader has against it."""
    value, faults = read(cls, one.root, "")
    return value, [fault.rule for fault in faults]


@pytest.mark.parametrize("text", ["hands: [AM", "a: *b", "a: !b c", "a: 1\na: [x]", "\ta: b", ""])
def test_a_file_that_cannot_be_read_whole_is_left_alone(text):
    one = of(f"{text}\ntemporary: True\n" if text else "")
    assert (one.changes, one.after) == ((), one.before)
    assert bool(one.faults) is bool(text)


def test_a_place_with_a_fault_of_reading_does_not_keep_the_others_from_being_tidied():
    one = of("grain: sideways\ntime: {is: x}\nhands: [AM]\n")
    assert one.after.text == "grain: sideways\ntime: {is: x}\nhands: AM\n"


def test_the_places_are_those_of_the_file_as_it_was():
    one = of("material:\n  is: linen\nhands: [AM]\ndo: line  \n")
    assert [(c.span.line, c.span.column, one.old(c)) for c in one.changes] == [
        (2, 3, "\n  is: linen"),
        (3, 8, "[AM]"),
        (4, 9, "  "),
    ]


@pytest.fixture
def archive(tmp_path) -> Path:
    archive = small_archive(tmp_path / "archive")
    (archive / "vocabulary").mkdir(exist_ok=True)
    (archive / "vocabulary" / "materials.yml").write_text("our-paper: {also: [x]}\n", "utf-8")
    (archive / "vocabulary" / "strange.yml").write_text("a: {also: [x]}\n", "utf-8")
    (archive / "cases" / "_aside").mkdir()
    (archive / "cases" / "_aside" / "case.md").write_text("---\nwas: [x]\n---\n", "utf-8")
    (archive / "cases" / "empty").mkdir()
    return archive


def test_the_files_of_an_archive_are_those_that_are_read(archive):
    found = [(path.relative_to(archive).as_posix(), cls) for path, cls in files_of(archive)]
    assert found == [
        ("lab.yml", Settings),
        ("vocabulary/materials.yml", Term),
        ("cases/2025-001/case.md", Case),
        ("cases/2025-001/episodes/01-arrival.md", Episode),
        ("cases/2025-002/case.md", Case),
        ("cases/2025-002/episodes/01-arrival.md", Episode),
    ]
    some = [path.parent.name for path, _ in files_of(archive, {"2025-002"})]
    assert some == ["2025-002", "episodes"]


def test_only_a_file_that_changes_is_written(archive):
    before = tree(archive)
    modified = {path: (archive / path).stat().st_mtime_ns for path in before}
    for one in tidy(archive, LEXICON):
        save(archive, one)
    changed = [path for path, data in tree(archive).items() if data != before[path]]
    written_to = [path for path in before if (archive / path).stat().st_mtime_ns != modified[path]]
    assert changed == written_to
    assert "vocabulary/materials.yml" in changed
    assert "cases/_aside/case.md" not in changed
    assert not any(one.changes for one in tidy(archive, LEXICON))


def test_the_demo_archive_is_tidy():
    root = Path(__file__).parents[2]
    own = (root / "vocabulary" / "materials.yml").read_text(encoding="utf-8")
    terms, _ = extend(builtin(), "materials", own, "materials.yml")
    found = [one for one in tidy(root, Lexicon(terms)) if one.changes or one.left or one.faults]
    assert [one.file for one in found] == []
