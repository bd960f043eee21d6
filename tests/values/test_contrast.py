"""Contrast against the published definition, and shades that can be read."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook.values.colours import Colour
from casebook.values.contrast import TEXT, Rgb, contrast, luminance, readable

FILE = Path(__file__).parents[1] / "reference" / "contrast_cases.csv"
ROWS = list(csv.DictReader(FILE.read_text(encoding="utf-8").splitlines()))
LIGHT: tuple[Rgb, ...] = ((252, 252, 250), (241, 240, 236))
DARK: tuple[Rgb, ...] = ((22, 22, 20), (33, 32, 29))
COLOURS = st.tuples(*[st.integers(0, 255)] * 3)


def rgb(text: str) -> Rgb:
    found = Colour.parse(text).rgb
    assert found is not None
    return found


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row['foreground']}-{row['background']}")
def test_the_ratio_is_that_of_the_published_formula(row: dict) -> None:
    found = contrast(rgb(row["foreground"]), rgb(row["background"]))
    assert found == pytest.approx(float(row["ratio"]), abs=5e-4)
    assert (found >= TEXT) == (row["aa_text_4_5"] == "yes")


def test_black_and_white_are_the_ends() -> None:
    assert (luminance((0, 0, 0)), luminance((255, 255, 255))) == (0, pytest.approx(1))


@given(COLOURS, st.sampled_from((LIGHT, DARK)))
def test_every_colour_has_a_shade_that_can_be_read(colour: Rgb, grounds: tuple[Rgb, ...]) -> None:
    shade = readable(colour, grounds)
    assert all(contrast(shade, ground) >= TEXT for ground in grounds)
    if all(contrast(colour, ground) >= TEXT for ground in grounds):
        assert shade == colour


def test_a_colour_grows_darker_on_paper_and_lighter_by_night() -> None:
    ochre = (200, 150, 40)
    assert luminance(readable(ochre, LIGHT)) < luminance(ochre)
    assert luminance(readable((60, 30, 20), DARK)) > luminance((60, 30, 20))
