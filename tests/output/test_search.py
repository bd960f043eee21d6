"""The search index: scripts of a bounded size that hold nothing but data."""

from __future__ import annotations

import json

from casebook.model.archive import Case
from casebook.output.search import MAX_PART, IndexPart, index_assets, index_part
from tests.builders import RICH, WORDING, record


def entries(script: bytes) -> list[dict[str, str]]:
    text = script.decode()
    return json.loads(text[text.index("[{") : text.rindex("]") + 1])


def test_a_script_is_json_between_its_brackets_and_closes_no_tag() -> None:
    part = IndexPart("a", "</script><b>", "k", 'words "quoted" \u2028 ]')
    (asset,) = index_assets([part])
    assert isinstance(asset.content, bytes)
    assert b"</script>" not in asset.content
    assert entries(asset.content) == [part.entry()]


def test_scripts_stay_within_their_size_and_lose_nothing() -> None:
    parts = [IndexPart(f"case-{n}", "t", "k", "word " * 6000) for n in range(12)]
    assets = list(index_assets(parts))
    scripts = [one.content for one in assets if isinstance(one.content, bytes)]
    assert len(scripts) == len(assets) > 1
    assert all(len(text) < MAX_PART * 1.1 for text in scripts)
    found = [entry["u"] for text in scripts for entry in entries(text)]
    assert found == [one.address for one in parts]


def test_a_case_is_found_by_its_words_and_by_other_words_for_them() -> None:
    part = index_part(record(Case, RICH), WORDING)
    assert part.address == "cases/2025-031/index.html"
    assert "cords broken" in part.words
    assert "wheat paste" in part.words


def test_no_cases_make_no_scripts() -> None:
    assert list(index_assets([])) == []
