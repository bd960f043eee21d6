"""`explain` and `schema` print what the code itself declares."""

from __future__ import annotations

import json

import pytest

from casebook.cli import main
from casebook.photos.told import TELLINGS
from casebook.rules import ALL


def run(capsys: pytest.CaptureFixture[str], *arguments: str) -> tuple[int, str, str]:
    with pytest.raises(SystemExit) as ended:
        main(list(arguments))
    out, err = capsys.readouterr()
    return int(ended.value.code or 0), out, err


def test_explain_without_a_rule_lists_every_rule(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(capsys, "explain")
    assert code == 0
    names = [one.name for one in ALL] + [one.name for one in TELLINGS]
    assert [line.split()[0] for line in out.splitlines()] == names


def test_explain_says_why_and_by_whose_word(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(capsys, "explain", "before-and-after")
    assert code == 0
    assert "Source: AIC Commentary" in out


def test_explain_knows_what_is_told_of_photo_files(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(capsys, "explain", "photo-mislabelled")
    assert code == 0
    assert "Source: common practice, no source" in out
    assert "    spine.png is a JPEG file by its content" in out


def test_an_unknown_rule_is_answered_with_the_closest(capsys: pytest.CaptureFixture[str]) -> None:
    code, _, err = run(capsys, "explain", "befor-and-after")
    assert code == 2
    assert "did you mean `before-and-after`?" in err


def test_schema_is_json(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(capsys, "schema")
    assert code == 0
    assert json.loads(out)["$schema"] == "https://json-schema.org/draft/2020-12/schema"
