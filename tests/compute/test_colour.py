"""Colours are compared as published data say, measured ones before photographed ones."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

import pytest
from coloraide import Color
from hypothesis import given
from hypothesis import strategies as st

from casebook.compute.colour import (
    Basis,
    Channel,
    Three,
    channel,
    ciede2000,
    lab_of,
    lab_of_linear,
    linear_of,
    matches,
    shown,
)
from casebook.model.photos import Image
from casebook.photos.areas import linear
from casebook.values.colours import Colour
from casebook.values.points import Box
from tests.compute.written import case, reference

PAIRS = reference("ciede2000.csv")
CASES = reference("srgb_lab_cases.csv")
CONSTANTS = {row["name"]: row["value"] for row in reference("colour_constants.csv")}


def three(one: float, two: float, third: float) -> Three:
    return one, two, third


# --- published data --------------------------------------------------------------------------


@pytest.mark.parametrize("row", PAIRS, ids=lambda row: row["pair"])
def test_every_published_pair_differs_by_what_was_published(row) -> None:
    one, other = (three(*(float(row[f"{name}{n}"]) for name in "Lab")) for n in (1, 2))
    assert ciede2000(one, other) == pytest.approx(float(row["dE00"]), abs=5e-5)
    assert ciede2000(other, one) == pytest.approx(float(row["dE00"]), abs=5e-5)


@pytest.mark.parametrize("row", CASES, ids=lambda row: row["case"])
def test_srgb_becomes_cielab_as_computed_elsewhere(row) -> None:
    r, g, b = (int(row[name]) for name in "rgb")
    meant = (float(row["L"]), float(row["a"]), float(row["b_star"]))
    for found in (
        lab_of(Colour(None, (r, g, b), "")),
        lab_of_linear((linear(r), linear(g), linear(b))),
    ):
        assert found == pytest.approx(meant, abs=float(row["tolerance"]))


def numbers(name: str) -> list[float]:
    return [float(Fraction(one)) for one in CONSTANTS[name].split()]


@pytest.mark.parametrize(("row", "part"), [("X", 0), ("Y", 1), ("Z", 2)])
def test_the_matrix_of_srgb_is_the_published_one(row: str, part: int) -> None:
    ways = [Color("srgb-linear", one).convert("xyz-d65")[part] for one in _UNITS]
    assert ways == pytest.approx(numbers(f"sRGB matrix row {row}"), abs=5e-5)


@pytest.mark.parametrize(("row", "part"), [("R", 0), ("G", 1), ("B", 2)])
def test_the_inverse_matrix_is_the_published_one(row: str, part: int) -> None:
    ways = [Color("xyz-d65", one).convert("srgb-linear")[part] for one in _UNITS]
    # four digits are printed, made from rounded forward rows: they differ in the fourth
    assert ways == pytest.approx(numbers(f"sRGB inverse row {row}"), abs=4e-4)


_UNITS = ([1, 0, 0], [0, 1, 0], [0, 0, 1])


def test_the_primaries_of_srgb_are_the_published_ones() -> None:
    for unit, told in zip(_UNITS, CONSTANTS["sRGB primaries xy"].split("; "), strict=True):
        meant = [float(one) for one in told.split()[1:]]
        assert Color("srgb-linear", unit).xy() == pytest.approx(meant, abs=5e-5)


@pytest.mark.parametrize("white", ["D65", "D50"])
def test_the_whites_are_the_published_ones(white: str) -> None:
    x, y = numbers(f"{white} xy (2 degree)")
    computed = numbers(f"{white} XYZ from xy")
    tabulated = [part / 100 for part in numbers(f"{white} XYZ tabulated")]
    assert [x / y, 1, (1 - x - y) / y] == pytest.approx(computed, abs=5e-5)
    assert computed == pytest.approx(tabulated, abs=3e-4)
    if white == "D65":
        assert lab_of_linear((1, 1, 1)) == pytest.approx((100, 0, 0), abs=1e-3)
        assert Color("srgb-linear", [1, 1, 1]).xy() == pytest.approx([x, y], abs=5e-5)


@given(st.floats(0, 1))
def test_lightness_is_that_of_the_published_constants(light: float) -> None:
    epsilon, kappa = numbers("CIELAB epsilon")[0], numbers("CIELAB kappa")[0]
    meant = kappa * light if light <= epsilon else 116 * light ** (1 / 3) - 16
    assert lab_of_linear((light, light, light))[0] == pytest.approx(meant, abs=1e-3)


def test_the_difference_is_of_the_values_as_given_not_of_another_white() -> None:
    assert float(CONSTANTS["warning"].split("up to ")[1].split()[0]) == 0.60
    row = PAIRS[0]
    one, other = ([float(row[f"{name}{n}"]) for name in "Lab"] for n in (1, 2))
    other_white = Color("lab", one).delta_e(Color("lab", other), method="2000")
    assert abs(other_white - float(row["dE00"])) > 1e-3


@given(st.tuples(st.floats(0, 100), st.floats(-80, 80), st.floats(-80, 80)))
def test_there_and_back_is_the_same_colour(lab) -> None:
    assert lab_of_linear(linear_of(lab)) == pytest.approx(lab, abs=1e-6)
    assert ciede2000(lab, lab) == 0
    assert len(shown(lab)) == 7


# --- the grey target -------------------------------------------------------------------------


@given(st.floats(0.2, 3), st.floats(-0.05, 0.05), st.lists(st.floats(0, 1), min_size=2, max_size=6))
def test_a_straight_line_is_found_again(gain: float, rest: float, seen: list[float]) -> None:
    found = channel([*seen, 0.1, 0.9], [gain * one + rest for one in (*seen, 0.1, 0.9)])
    assert found is not None
    assert (found.gain, found.rest) == (pytest.approx(gain), pytest.approx(rest, abs=1e-9))


def test_one_patch_gives_a_gain_alone() -> None:
    assert channel([0.4], [0.2]) == Channel(0.5, 0.0)
    near = channel([0.4, 0.41], [0.2, 0.2])
    assert near is not None
    assert (near.gain, near.rest) == (pytest.approx(0.4938, abs=1e-4), 0)


@pytest.mark.parametrize(("seen", "true"), [([0.0], [0.5]), ([0.2, 0.8], [0.9, 0.1])])
def test_a_target_that_makes_no_sense_corrects_nothing(seen, true) -> None:
    assert channel(seen, true) is None


# --- comparing -------------------------------------------------------------------------------

PHOTO = "target: {patches: [{box: 0 0 4 4, colour: L 90 a 0 b 0}, {box: 4 0 4 4, colour: L 30 a 0 b 0}]}"


def of(
    step: str,
    photo: str = "target: yes",
    tolerance: float | None = 3.0,
    areas: Mapping[str, Three] | None = None,
):
    found = case(f"""
id: one
steps: [{step}]
photos: [{{id: p, file: p.jpg, {photo}}}]
""")
    read = {Box.parse(name).canonical(): one for name, one in (areas or {}).items()}
    return matches(found, {"p.jpg": Image("d", 100, 100, read)}, tolerance)


MEASURED = """{do: infill, match: {original: L 52 a 3 b 10, fill: L 53 a 3 b 11},
 tried: [{what: two coats, colour: L 45 a 3 b 10, outcome: given-up},
         {what: one coat, colour: L 53 a 3 b 11, outcome: chosen}, {what: none}]}"""


def test_trials_and_the_repair_are_held_against_the_original() -> None:
    (found,) = of(MEASURED)
    assert [one.trial.what if one.trial else "" for one in found.tried] == [
        "two coats",
        "one coat",
        "",
    ]
    assert [one.within for one in found.tried] == [False, True, True]
    assert [one.chosen for one in found.tried] == [False, True, True]
    assert found.tried[1].difference == found.tried[2].difference > 0
    assert not found.mixed


def test_without_a_tolerance_there_is_no_verdict() -> None:
    (found,) = of(MEASURED, tolerance=None)
    assert [one.within for one in found.tried] == [None, None, None]


def test_a_measured_colour_is_taken_before_a_photographed_one() -> None:
    step = (
        "{match: {original: {colour: L 52 a 3 b 10, photo: p, box: 1 1 2 2}, fill: L 52 a 3 b 10}}"
    )
    (found,) = of(step, areas={"1 1 2 2": (0.9, 0.1, 0.1)})
    assert found.original.basis is Basis.MEASURED
    assert found.tried[0].difference == 0


SEEN = "{match: {original: {photo: p, box: 8 0 4 4}, fill: {photo: p.jpg, box: 12 0 4 4}}}"


def test_a_cast_and_a_wrong_exposure_are_taken_out_by_the_target() -> None:
    true = {
        "8 0 4 4": (52, 3, 10),
        "12 0 4 4": (54, 3, 12),
        "0 0 4 4": (90, 0, 0),
        "4 0 4 4": (30, 0, 0),
    }
    cast = (0.7, 0.6, 0.4)
    seen = {
        name: three(*(0.02 + part * by for part, by in zip(linear_of(lab), cast, strict=True)))
        for name, lab in true.items()
    }
    (plain,) = of(SEEN, areas=seen)
    (found,) = of(SEEN, PHOTO, areas=seen)
    assert plain.original.basis is Basis.AS_SHOT
    assert ciede2000(plain.original.lab, (52, 3, 10)) > 5
    assert found.original.basis is Basis.CORRECTED
    assert found.original.lab == pytest.approx((52, 3, 10), abs=1e-6)
    assert found.tried[0].difference == pytest.approx(ciede2000((52, 3, 10), (54, 3, 12)))


def test_how_well_the_target_was_met_is_told() -> None:
    """A photo whose light is not straight: the middle patch is left off its own colour."""
    grey = {"0 0 4 4": 0.75, "4 0 4 4": 0.2, "8 0 4 4": 0.05}
    patches = [
        f"{{box: {box}, colour: L {light} a 0 b 0}}"
        for box, light in zip(grey, (90, 60, 30), strict=True)
    ]
    photo = f"target: {{patches: [{', '.join(patches)}]}}"
    seen = {box: three(level, level, level) for box, level in grey.items()}
    step = "{match: {original: {photo: p, box: 0 0 4 4}, fill: L 90 a 0 b 0}}"
    (found,) = of(step, photo, areas=seen)
    (two,) = of(step, PHOTO, areas=seen)
    assert found.original.off is not None
    assert found.original.off > 1
    assert two.original.off is None
    assert two.original.lab == pytest.approx((90, 0, 0), abs=1e-6)


def test_an_area_that_was_not_read_is_not_compared() -> None:
    assert of(SEEN) == ()
    assert of(SEEN, areas={"8 0 4 4": (0.2, 0.2, 0.2)}) == ()


def test_measured_against_photographed_is_told_apart() -> None:
    step = "{match: {original: L 52 a 3 b 10, fill: {photo: p, box: 8 0 4 4}}}"
    (found,) = of(step, areas={"8 0 4 4": (0.2, 0.2, 0.2)})
    assert found.mixed
