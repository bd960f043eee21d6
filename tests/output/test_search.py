"""The search index: a few script files that hold nothing but data, and change little."""

from __future__ import annotations

import json
from dataclasses import replace

from hypothesis import HealthCheck, given, settings

from casebook.model.archive import Archive, Case
from casebook.model.base import Audience
from casebook.output.search import (
    CASES_IN_A_FILE,
    IndexPart,
    index_assets,
    index_part,
    words_asset,
)
from casebook.output.site import Asset
from casebook.output.traits import Trait
from casebook.output.ways import ways_of
from tests.builders import PICTURES, RICH, WORDING, archive, record, site, written
from tests.compute.random_cases import cases

PART = IndexPart("a", "A title", "Ledger, 1870s", (), (Trait("calf", ("calf",)),), (), ("Prose.",))


def text(asset: Asset) -> str:
    assert isinstance(asset.content, bytes)
    return asset.content.decode()


def entries(script: str) -> list[dict[str, object]]:
    inside = script[script.index("(\n") + 2 : script.rindex("\n)")]
    return list(json.loads(f"[{inside}]"))


def part_of(case: Case, shown: Archive) -> IndexPart:
    return index_part(case, shown, PICTURES, WORDING)


def test_a_script_is_json_between_its_brackets_and_closes_no_tag() -> None:
    nasty = replace(PART, title="</script><b>", passages=('words "quoted" \u2028 ]',))
    (asset,) = index_assets([nasty])
    assert "</script>" not in text(asset)
    assert "\u2028" not in text(asset)
    (entry,) = entries(text(asset))
    assert entry["title"] == nasty.title
    assert entry["passages"] == list(nasty.passages)


def test_a_trait_is_written_short_where_it_is_its_only_term() -> None:
    both = (
        Trait("calf", ("calf",)),
        Trait("1870s"),
        Trait("front joint: broken", ("broken", "joint")),
    )
    assert replace(PART, traits=both).entry()["traits"] == [
        "calf",
        "1870s",
        ["front joint: broken", "broken", "joint"],
    ]


def test_files_hold_every_case_once_and_no_more_than_a_few_hundred() -> None:
    parts = [replace(PART, id=f"2025-{n:03}") for n in range(200)]
    found = [[entry["id"] for entry in entries(text(one))] for one in index_assets(parts)]
    assert sorted(str(name) for names in found for name in names) == [one.id for one in parts]
    assert len(found) == 8
    assert max(map(len, found)) < 2 * CASES_IN_A_FILE


def test_a_case_that_changes_or_comes_changes_one_file() -> None:
    parts = [replace(PART, id=f"2025-{n:03}") for n in range(100)]
    before = {one.address for one in index_assets(parts)}
    changed = [replace(parts[0], title="Another"), *parts[1:]]
    more = [*parts, replace(PART, id="2026-001")]
    for others in (changed, more, parts[::-1]):
        after = {one.address for one in index_assets(others)}
        assert len(before - after) == len(after - before) <= 1


def test_the_size_is_that_of_the_cases() -> None:
    few, many = (
        sum(
            len(text(one))
            for one in index_assets(replace(PART, id=f"{n:04}") for n in range(count))
        )
        for count in (100, 1000)
    )
    assert many < 10.1 * few


def test_a_case_is_found_by_its_traits_its_facts_and_its_prose() -> None:
    case = record(Case, RICH)
    part = part_of(case, archive(case))
    assert (part.id, part.title) == ("2025-031", "Tide-gauge keeper’s day book")
    assert part.about.startswith("Ledger, 1870s")
    assert "tight back" in [one.text for one in part.traits]
    assert any("cords broken" in one.lower() for one in part.passages)
    assert any(one.startswith("Size:") for one in part.facts)


def test_other_words_stand_once_for_each_term_and_terms_lead_to_their_pages() -> None:
    case = record(Case, RICH)
    ways = ways_of([case], WORDING.lexicon)
    script = text(words_asset(ways, WORDING))
    data = json.loads(script[script.index("{") : script.rindex(";")])
    assert "fast back" in data["also"]["tight back"]
    (linen,) = [one for one in data["ways"] if one[3] == "linen"]
    assert linen[:3] == ["with linen", "materials/linen/index.html", 1]
    (tight,) = [one for one in data["ways"] if one[3] == "tight back"]
    assert tight[0] == "with the structure “tight back”"


def test_words_of_terms_that_no_visible_case_uses_are_not_there() -> None:
    pages = written(site(archive(record(Case, RICH)), Audience.PUBLIC))
    scripts = "".join(one for name, one in pages.items() if name.startswith("search/"))
    assert "calf" in scripts
    assert "wooden" not in scripts


@settings(max_examples=40, suppress_health_check=list(HealthCheck))
@given(cases())
def test_any_half_written_case_has_a_part_without_an_empty_text(case: Case) -> None:
    part = part_of(case, archive(case))
    (asset,) = index_assets([part])
    (entry,) = entries(text(asset))
    assert entry == json.loads(json.dumps(part.entry()))
    assert all((*part.facts, *part.passages, *(one.text for one in part.traits)))


def test_no_cases_make_no_scripts() -> None:
    assert list(index_assets([])) == []
