"""`align` from outside: it prints the lines to paste, says what does not fit, and writes nothing."""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from PIL import Image

from casebook.cli import main
from casebook.model.base import items
from casebook.model.marks import Fit
from tests.model.reads import reads
from tests.photos.test_align import moved, scene
from tests.stories.archives import edit, small_archive, tree

Told = tuple[int, str, str]
PHOTOS = """
photos:
  - {id: before, file: before.png, stage: before, view: front}
  - {file: after.png, stage: after, view: Front}
  - {id: verso, file: verso.png, stage: after, view: verso}
  - {id: fitted, file: after.png, stage: after, view: front, fit: {over: before, here: [1 1, 9 9], there: [1 1, 9 9]}}
"""


@pytest.fixture
def archive(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    archive = small_archive(tmp_path / "archive")
    case = archive / "cases" / "2025-001"
    record = case / "case.md"
    text = record.read_text("utf-8")
    head, _, rest = text.partition("\nphotos:")
    tail = rest[rest.index("\n---") :] if rest else text[text.rindex("\n---") :]
    start = head if rest else text[: text.rindex("\n---")]
    record.write_text(start + PHOTOS.rstrip() + tail, "utf-8")
    scene().save(case / "before.png")
    moved(scene(), 4, 1.02, (10, 5)).save(case / "after.png")
    Image.new("RGB", (300, 200), "white").save(case / "verso.png")
    monkeypatch.chdir(archive)
    return archive


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str]) -> Callable[..., Told]:
    def one(*arguments: str) -> Told:
        with pytest.raises(SystemExit) as ended:
            main(["align", *arguments])
        return int(ended.value.code or 0), *capsys.readouterr()

    return one


def test_a_line_to_paste_is_printed_for_each_pair_without_one(archive, run):
    before = {path: data for path, data in tree(archive).items() if path.endswith(".md")}
    code, out, err = run("2025-001")
    assert code == 0
    (line,) = out.splitlines()
    fit = reads(Fit, line.strip().removeprefix("fit: "))
    assert fit.over == "before"
    assert (len(items(fit.here)), len(items(fit.there))) == (2, 2)
    assert "after.png over before: " in err
    assert before == {path: data for path, data in tree(archive).items() if path.endswith(".md")}


def test_a_case_may_be_named_by_its_folder(archive, run):
    (archive / "cases" / "2025-001").rename(archive / "cases" / "2025-001-a-ledger")
    assert run("2025-001-a-ledger")[:2] == run("2025-001")[:2]


def test_two_photos_that_do_not_fit_are_named(archive, run):
    code, out, err = run("2025-001", "verso", "before")
    assert (code, out) == (1, "")
    assert err.startswith("verso over before: only ")


def test_a_photo_that_is_no_picture_is_said_to_be_none(archive, run):
    (archive / "cases" / "2025-001" / "verso.png").write_bytes(b"no picture")
    code, _, err = run("2025-001", "verso", "before")
    assert code == 1
    assert "is no picture that can be used" in err


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["none-such"], "there is no case `none-such`"),
        (["2025-001", "verso"], "name the photo that it goes over"),
        (["2025-001", "verso", "gone"], "the case has no photo `gone`"),
    ],
)
def test_what_is_not_there_cannot_be_aligned(archive, run, arguments, said):
    code, _, err = run(*arguments)
    assert code == 2
    assert said in err


def test_without_its_extra_it_says_the_one_command_that_adds_it(archive, run, monkeypatch):
    monkeypatch.setitem(sys.modules, "cv2", None)
    code, _, err = run("2025-001")
    assert code == 2
    assert 'python -m pip install "casebook[align]"' in err


def test_a_case_without_pairs_is_told_so(archive, run):
    edit(archive / "cases" / "2025-001", "view: Front", "view: back")
    code, out, err = run("2025-001")
    assert (code, out) == (0, "")
    assert err.startswith("no photo after treatment shows the same view")
