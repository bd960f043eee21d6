"""The files that every site needs are named by what is in them."""

from __future__ import annotations

from casebook.output.assets import ICON, fixed_assets


def test_there_is_one_style_sheet_that_holds_them_all() -> None:
    fixed = fixed_assets()
    sheets = [one for one in fixed.assets if one.address.endswith(".css")]
    assert [one.address for one in sheets] == [fixed.style]
    assert isinstance(sheets[0].content, bytes)
    assert b"--accent" in sheets[0].content


def test_each_script_stands_by_itself_under_its_name() -> None:
    fixed = fixed_assets()
    assert {"gloss", "search"} <= set(fixed.scripts)
    addresses = {one.address for one in fixed.assets}
    assert set(fixed.scripts.values()) <= addresses
    assert ICON in addresses


def test_the_same_files_give_the_same_names() -> None:
    assert fixed_assets() == fixed_assets()
