"""An archive's folder is read whole: no text in it raises, and every fault of every case is told."""

from __future__ import annotations

import tempfile
from collections.abc import Callable, Mapping
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook.diagnostics import Diagnostic, Severity
from casebook.files import Cache
from casebook.flow import broken_cases
from casebook.loading import Loaded, load_archive
from casebook.model.archive import Case
from casebook.model.base import items
from casebook.model.materials import Material
from casebook.model.treatment import Step
from casebook.values.durations import Duration
from tests.model.sketches import CASE, EPISODE, RECIPES

LAB = "format: 1\nname: Invented Bindery\n"

BROKEN: Mapping[str, str] = {
    "nothing-in-it": "",
    "no-front-matter": "The story of a book, and nothing else.\n",
    "no-end-of-front-matter": "---\nid: a\ntitle: A book\n",
    "no-id": "---\ntitle: A book\n---\n",
    "an-id-with-capitals": "---\nid: My Book\n---\n",
    "an-id-that-is-reserved": "---\nid: con\n---\n",
    "a-list-instead-of-keys": "---\n- id\n- title\n---\n",
    "a-key-twice": "---\nid: a2\ntitle: one\ntitle: two\n---\n",
    "a-tab": "---\nid: a3\nobject:\n\tkind: ledger\n---\n",
    "an-alias": "---\nid: a4\nnote: &n text\ncare: *n\n---\n",
    "a-tag": "---\nid: a5\nnote: !secret text\n---\n",
    "an-open-quote": '---\nid: a6\ntitle: "The book\ncare: dry\n---\n',
    "an-open-bracket": "---\nid: a7\npeople: {AM: {role: conservator}\ncare: dry\n---\n",
    "a-colon-in-prose": "---\nid: a8\ntitle: The book: a history\n---\n",
    "a-comma-in-braces": "---\nid: a9\nfindings: [{seen: split, at the head}]\n---\n",
    "a-hash-in-prose": "---\nid: b1\ntitle: Ledger #4\n---\n",
    "a-date-that-is-none": "---\nid: b2\ndates: {received: 2031-02-30}\n---\n",
    "a-length-without-unit": "---\nid: b3\nobject: {size: {height: 390}}\n---\n",
    "a-time-that-says-nothing": "---\nid: b4\nsteps: [{adds: a, time: a while}]\n---\n",
    "a-status-of-ones-own": "---\nid: b5\nstatus: finished\n---\n",
    "an-audience-of-ones-own": "---\nid: b6\naudience: everybody\n---\n",
    "a-group-instead-of-a-text": "---\nid: b7\ntitle: {a: b}\n---\n",
    "a-photo-that-is-not-there": "---\nid: b8\nphotos: [before.jpg]\n---\n",
    "a-photo-outside-the-case": "---\nid: b9\nphotos: [../secret.jpg]\n---\n",
    "a-key-nobody-knows": "---\nid: c1\ntitel: A book\n---\n",
    "a-key-with-nothing-behind": "---\nid: c2\ncare:\n---\n",
}
"""Cases that are each broken in one way, by the name of their folder."""


def archive(root: Path, files: Mapping[str, str | bytes], lab: str | None = LAB) -> Path:
    """A folder with these files; texts as UTF-8."""
    for name, text in {**files, **({"lab.yml": lab} if lab is not None else {})}.items():
        path = root / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return root


def load(root: Path, files: Mapping[str, str | bytes], lab: str | None = LAB) -> Loaded:
    return load_archive(archive(root, files, lab), Cache(root / ".casebook" / "cache", "test"))


def shown(one: Diagnostic) -> str:
    at = f"{one.span.file}:{one.span.line}:{one.span.column}" if one.span else one.case
    hint = f"\n    {one.hint}" if one.hint else ""
    return f"{at}: {one.severity.word}[{one.rule}]: {one.message}{hint}\n"


def of_case(loaded: Loaded, name: str) -> list[Diagnostic]:
    return [one for one in loaded.diagnostics if one.case == name]


def rules(loaded: Loaded) -> list[str]:
    return [one.rule for one in loaded.diagnostics]


def test_the_sketched_case_with_its_sitting_is_read_without_a_fault(tmp_path: Path):
    files = {
        "cases/toll/case.md": CASE,
        "cases/toll/episodes/02-linings.md": EPISODE,
        "vocabulary/recipes.yml": RECIPES,
    }
    loaded = load(tmp_path, files)
    assert loaded.diagnostics == ()
    (case,) = loaded.archive.cases
    assert loaded.folders == {"2031-007": "toll"}
    assert case.story.strip() == "The story of this book in prose."
    assert [one.story.strip() for one in items(case.episodes)] == ["The linings, in prose."]


def test_a_step_takes_from_its_recipe_what_it_leaves_out_and_nothing_else(tmp_path: Path):
    files = {
        "cases/toll/case.md": CASE,
        "cases/toll/episodes/02-linings.md": EPISODE,
        "vocabulary/recipes.yml": RECIPES,
    }
    (case,) = load(tmp_path, files).archive.cases
    cloth = items(items(case.episodes)[0].steps)[3]
    assert cloth.do == "line"
    assert cloth.tools == ("paste-brush",)
    assert cloth.grain is not None
    assert cloth.dries is not None
    assert cloth.assumed == ("grain", "tools", "dries")


def test_what_a_step_says_it_does_not_know_is_not_taken_from_a_recipe(tmp_path: Path):
    case = "---\nid: a\nsteps: [{adds: b, like: overhang-lining, tools: not recorded}]\n---\n"
    files = {"cases/a/case.md": case, "vocabulary/recipes.yml": RECIPES}
    (found,) = load(tmp_path, files).archive.cases
    (step,) = items(found.steps)
    assert items(step.tools) == ()
    assert step.assumed == ("do", "grain", "dries")


def test_a_recipe_that_nobody_wrote_leaves_the_step_as_it_is(tmp_path: Path):
    case = "---\nid: a\nsteps: [{adds: b, like: nothing-such}]\n---\n"
    (found,) = load(tmp_path, {"cases/a/case.md": case}).archive.cases
    assert items(found.steps) == (Step(adds="b", like="nothing-such"),)


def test_sittings_stand_in_the_order_of_their_files_behind_those_of_the_case(tmp_path: Path):
    files = {
        "cases/a/case.md": "---\nid: a\nepisodes: [{title: first}]\n---\n",
        "cases/a/episodes/03.md": "---\ntitle: third\n---\n",
        "cases/a/episodes/02.md": "---\ntitle: second\ntime: 2 h\n---\n",
    }
    (case,) = load(tmp_path, files).archive.cases
    assert [one.title for one in items(case.episodes)] == ["first", "second", "third"]
    assert items(case.episodes)[1].time == Duration.parse("2 h")


@pytest.mark.parametrize("name", BROKEN)
def test_a_broken_case_is_told_clearly_with_file_and_line(tmp_path: Path, name: str):
    loaded = load(tmp_path, {f"cases/{name}/case.md": BROKEN[name]})
    told = of_case(loaded, name)
    placed = [one.span for one in told if one.span]
    assert placed, told
    assert {span.file for span in placed} == {f"cases/{name}/case.md"}
    lines = max(1, len(BROKEN[name].splitlines()))
    assert all(1 <= span.line <= lines for span in placed)
    assert not any("Traceback" in shown(one) or "Error(" in shown(one) for one in told)


def test_the_messages_of_broken_cases_read_well(tmp_path: Path, golden: Callable[[str, str], None]):
    assert len(BROKEN) >= 20
    loaded = load(tmp_path, {f"cases/{one}/case.md": text for one, text in BROKEN.items()})
    golden(
        "broken/messages.txt",
        "\n".join(
            f"== {name}\n" + "".join(shown(one) for one in of_case(loaded, name)) for name in BROKEN
        ),
    )


def test_every_fault_of_two_broken_cases_is_told_in_one_run(tmp_path: Path):
    files = {
        "cases/one/case.md": "---\nid: one\nstatus: finished\ndates: {received: soon}\n---\n",
        "cases/two/case.md": "---\nid: two\ntitle: [a]\nsteps: [{adds: a, fate: eaten}]\n---\n",
        "cases/whole/case.md": "---\nid: whole\ntitle: A whole one\n---\n",
    }
    loaded = load(tmp_path, files)
    at = [(one.case, one.rule, one.span.line if one.span else 0) for one in loaded.diagnostics]
    assert at == [
        ("one", "unknown-choice", 3),
        ("one", "not-understood", 4),
        ("two", "wrong-shape", 3),
        ("two", "unknown-choice", 4),
    ]
    assert broken_cases(loaded, loaded.diagnostics) == {"one", "two"}
    assert [case.id for case in loaded.archive.cases] == ["one", "two", "whole"]


def test_a_warning_does_not_break_a_case(tmp_path: Path):
    loaded = load(tmp_path, {"cases/a/case.md": "---\nid: a\ntitel: A book\n---\n"})
    assert [one.severity for one in loaded.diagnostics] == [Severity.WARNING]
    assert broken_cases(loaded, loaded.diagnostics) == frozenset()


def test_an_unknown_key_is_kept_with_the_case(tmp_path: Path):
    loaded = load(tmp_path, {"cases/a/case.md": "---\nid: a\ntitel: A book\n---\n"})
    assert loaded.archive.cases[0].unknown == {"titel": "A book"}
    assert loaded.diagnostics[0].hint == "did you mean `title`?"


def loads_without_raising(text: bytes, lab: str | None = LAB) -> None:
    with tempfile.TemporaryDirectory() as folder:
        loaded = load(Path(folder), {"cases/a/case.md": text}, lab)
    assert len(loaded.archive.cases) == 1
    assert all(one.message and one.rule for one in loaded.diagnostics)


@given(st.text())
def test_no_text_in_a_case_raises(text: str):
    loads_without_raising(text.encode("utf-8", errors="surrogatepass"))


@given(st.text(alphabet="ab-:{}[],#&*!|>'\"%@`? \n\t0"))
def test_no_front_matter_raises(text: str):
    loads_without_raising(f"---\n{text}\n---\n".encode())


@given(st.binary(max_size=200))
def test_no_bytes_in_a_case_raise(data: bytes):
    loads_without_raising(b"---\nid: a\n" + data)


@given(st.text(alphabet=st.characters(blacklist_categories=["Cs"])))
def test_no_text_in_the_labs_file_raises(text: str):
    loads_without_raising(b"---\nid: a\n---\n", text)


def test_a_folder_without_a_labs_file_is_no_archive(tmp_path: Path):
    assert rules(load(tmp_path, {}, None)) == ["no-lab"]


def test_a_language_without_words_for_dates_is_told_at_its_line(tmp_path: Path):
    case = {"cases/a/case.md": "---\nid: a\n---\n"}
    (told,) = (
        one
        for one in load(tmp_path, case, "format: 1\nlanguage: pl\n").diagnostics
        if one.rule == "language"
    )
    assert told.span and (told.span.file, told.span.line) == ("lab.yml", 2)
    assert told.severity is Severity.WARNING
    assert told.hint == "languages with words for dates: de, en, es, fr, it, nl"
    for tag in ("de-AT", "en-US"):
        assert "language" not in rules(load(tmp_path / tag, case, f"format: 1\nlanguage: {tag}\n"))


def test_a_format_of_another_version_is_refused(tmp_path: Path):
    assert "format" in rules(
        load(tmp_path, {"cases/a/case.md": "---\nid: a\n---\n"}, "format: 2\n")
    )


def test_an_archive_without_cases_is_told_how_to_start_one(tmp_path: Path):
    (one,) = load(tmp_path, {}).diagnostics
    assert (one.rule, one.severity) == ("no-cases", Severity.SUGGESTION)


def test_a_folder_without_a_case_is_told_and_hidden_ones_are_passed_by(tmp_path: Path):
    files = {"cases/empty/x.txt": "", "cases/.git/x": "", "cases/_draft/x": ""}
    assert [(one.rule, one.case) for one in load(tmp_path, files).diagnostics] == [
        ("no-case-file", "empty")
    ]


def test_an_id_is_never_used_twice_not_even_an_earlier_one(tmp_path: Path):
    files = {
        "cases/a/case.md": "---\nid: book\nwas: [old]\n---\n",
        "cases/b/case.md": "---\nid: book\n---\n",
        "cases/c/case.md": "---\nid: old\n---\n",
    }
    loaded = load(tmp_path, files)
    assert [case.id for case in loaded.archive.cases] == ["book"]
    assert [(one.rule, one.case) for one in loaded.diagnostics] == [
        ("case-id", "b"),
        ("case-id", "c"),
    ]


def test_a_case_without_an_id_is_read_under_its_folders_name(tmp_path: Path):
    loaded = load(tmp_path, {"cases/My Book/case.md": "---\ntitle: A book\n---\n"})
    assert loaded.archive.cases == (Case(id="my-book", title="A book"),)
    assert "`id: my-book`" in loaded.diagnostics[0].hint


def test_a_file_that_is_not_utf_8_is_told_by_its_line(tmp_path: Path):
    loaded = load(tmp_path, {"vocabulary/materials.yml": b"a: {label: one}\nb: {label: \xe9}\n"})
    one = next(one for one in loaded.diagnostics if one.rule == "encoding")
    assert one.span is not None
    assert (one.span.file, one.span.line) == ("vocabulary/materials.yml", 2)
    assert "b" in loaded.archive.terms["materials"]


def test_a_vocabulary_of_no_known_name_is_told(tmp_path: Path):
    one = load(tmp_path, {"vocabulary/material.yml": "a: {}\n"}).diagnostics[0]
    assert (one.rule, one.hint) == ("no-vocabulary", "did you mean `materials`?")


def test_the_labs_own_terms_stand_beside_ours(tmp_path: Path):
    loaded = load(tmp_path, {"vocabulary/materials.yml": "harbour-cloth: {class: cloth}\n"})
    assert {"harbour-cloth", "linen"} <= set(loaded.archive.terms["materials"])


def test_a_photo_that_is_nearly_named_gets_a_hint(tmp_path: Path):
    case = "---\nid: a\nphotos: [{file: befor.png}]\n---\n"
    loaded = load(tmp_path, {"cases/a/case.md": case, "cases/a/photos/before.png": b"x"})
    (one,) = loaded.diagnostics
    assert (one.rule, one.hint) == ("photo-missing", "did you mean `before.png`?")


def test_a_photo_is_found_beside_the_case_and_known_by_its_bytes(tmp_path: Path):
    from PIL import Image as Picture

    (tmp_path / "cases" / "a" / "photos").mkdir(parents=True)
    Picture.new("RGB", (30, 20), "white").save(tmp_path / "cases" / "a" / "photos" / "b.png")
    loaded = load(tmp_path, {"cases/a/case.md": "---\nid: a\nphotos: [b.png]\n---\n"})
    image = loaded.archive.images["a"]["b.png"]
    assert (image.width, image.height) == (30, 20)
    assert loaded.originals[image.digest].name == "b.png"


def test_a_second_case_of_the_same_id_does_not_take_the_photos_of_the_first(tmp_path: Path):
    from PIL import Image as Picture

    (tmp_path / "cases" / "a").mkdir(parents=True)
    Picture.new("RGB", (30, 20), "white").save(tmp_path / "cases" / "a" / "b.png")
    files = {
        "cases/a/case.md": "---\nid: book\nphotos: [b.png]\n---\n",
        "cases/b/case.md": "---\nid: book\n---\n",
    }
    assert list(load(tmp_path, files).archive.images["book"]) == ["b.png"]


@pytest.mark.parametrize("name", ["x" * 300, "a\\0b", "/etc/hostname", "..", "."])
def test_a_photo_of_an_impossible_name_is_only_missing(tmp_path: Path, name: str):
    case = f'---\nid: a\nphotos: [{{file: "{name}"}}]\n---\n'
    assert rules(load(tmp_path, {"cases/a/case.md": case})) == ["photo-missing"]


def test_no_folders_name_makes_an_id_that_windows_reserves(tmp_path: Path):
    loaded = load(tmp_path, {"cases/aux/case.md": "---\ntitle: A book\n---\n"})
    assert loaded.archive.cases[0].id == "aux-1"


def test_the_same_folder_is_read_the_same_twice(tmp_path: Path):
    files = {f"cases/{one}/case.md": text for one, text in BROKEN.items()}
    assert load(tmp_path, files).diagnostics == load(tmp_path, files).diagnostics


def test_a_short_form_is_read_from_a_file_as_from_a_line(tmp_path: Path):
    case = "---\nid: a\nsteps: [{adds: b, adhesive: wheat-starch-paste}]\n---\n"
    (found,) = load(tmp_path, {"cases/a/case.md": case}).archive.cases
    assert items(found.steps)[0].adhesive == Material(is_="wheat-starch-paste")
