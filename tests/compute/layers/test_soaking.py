"""What a part is treated with stays in it, or acts and goes."""

from __future__ import annotations

import pytest

from tests.compute.layers.told import names, steps, told

PASTE = "adhesive: wheat-starch-paste"


def test_a_consolidated_corner_keeps_its_paste() -> None:
    found = steps(f"do: consolidate, treats: board 1/corner, {PASTE}, scope: 1 of 2").final
    assert told(found) == ["wheat-starch-paste in board 1/corner on board 1/corner: soaked partly"]
    assert found.things["wheat-starch-paste in board 1/corner"].materials == ("wheat-starch-paste",)


@pytest.mark.parametrize(
    "step",
    [
        "do: wash, treats: sheet, bath: deionised-water",
        "do: dry-clean, treats: sheet, agent: rubber-sponge",
        f"do: consolidate, treats: sheet, {PASTE}, temporary: yes",
        "do: consolidate, treats: sheet, adhesive: none",
        "do: press, treats: sheet, material: blotter",
    ],
)
def test_what_acts_and_goes_stays_in_nothing(step: str) -> None:
    assert names(steps(step).final) == []


def test_retouching_and_sizing_stay() -> None:
    found = steps(
        "do: retouch, treats: leaf, material: watercolour\ndo: size, treats: leaf, adhesive: gelatine"
    )
    assert set(names(found.final)) == {"watercolour in leaf", "gelatine in leaf"}


def test_the_same_consolidant_twice_is_there_once() -> None:
    found = steps(f"treats: leaf, {PASTE}\ntreats: leaf, {PASTE}")
    assert len(told(found.final)) == 1


def test_what_soaks_into_what_lies_apart_lies_apart() -> None:
    found = steps(f"takes-off: cover\ntreats: cover, {PASTE}").final
    assert found.things["wheat-starch-paste in cover"].apart
