"""The arc of a spine agrees with published examples; every row names its own source."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook.compute.figures import Doubt, Effect, Figure
from casebook.compute.geometry import angle, arc, radius, roundness, spine_arc
from tests.compute.written import reference

SEGMENTS = reference("segment_cases.csv")
millimetres = st.fractions(0, 2000, max_denominator=64)


def test_the_published_rows_are_all_there() -> None:
    assert len(SEGMENTS) == 16


@pytest.mark.parametrize("row", SEGMENTS, ids=[row["case"][:40] for row in SEGMENTS])
def test_radius_angle_and_arc_agree_with_the_reference(row: dict[str, str]) -> None:
    chord, rise = Fraction(row["chord"]), Fraction(row["rise"])
    assert float(radius(chord, rise)) == pytest.approx(float(row["radius"]), abs=1e-8)
    assert math.degrees(angle(chord, rise)) == pytest.approx(float(row["theta_deg"]), abs=1e-6)
    # The table prints a rise with at most 8 decimals, which moves the arc by up to 1e-8.
    assert float(arc(chord, rise)) == pytest.approx(float(row["arc_exact"]), abs=1e-8)
    whole = spine_arc(Figure(int(chord * 1000)), Figure(int(rise * 1000)))
    assert whole.value == pytest.approx(float(row["arc_exact"]) * 1000, abs=1.5)


def test_the_spine_of_the_ledger_by_hand() -> None:
    # Machinery's Handbook, 31st ed., segments of circles, with c = 68 and h = 14:
    # r = (68² + 4·14²) / (8·14) = (4624 + 784) / 112 = 5408 / 112 = 48.285714…
    assert radius(Fraction(68), Fraction(14)) == Fraction(5408, 112)
    # angle = 4·atan(28/68) = 4·0.390607 = 1.562428; arc = 48.285714 · 1.562428 = 75.443 mm
    assert spine_arc(Figure(68_000), Figure(14_000)).value == pytest.approx(75_443, abs=1)


def test_a_flat_spine_is_as_wide_as_its_chord() -> None:
    assert arc(Fraction(68), Fraction(0)) == 68
    assert arc(Fraction(0), Fraction(0)) == 0


def test_a_rise_over_half_the_chord_is_more_than_half_a_circle() -> None:
    # Three quarters of a circle of radius 10: chord 10·√2, rise 10 + 10/√2, arc 15·pi.
    chord, rise = Fraction(10 * math.sqrt(2)), Fraction(10 + 10 / math.sqrt(2))
    assert math.degrees(angle(chord, rise)) == pytest.approx(270)
    assert float(arc(chord, rise)) == pytest.approx(15 * math.pi)


def test_without_a_chord_the_arc_is_a_whole_circle() -> None:
    assert float(arc(Fraction(0), Fraction(10))) == pytest.approx(10 * math.pi)


@given(millimetres, millimetres, millimetres)
def test_an_arc_is_no_shorter_than_its_chord_and_grows_with_the_rise(chord, low, more) -> None:
    slack = Fraction(1, 10**9)
    assert chord <= arc(chord, low) + slack
    assert arc(chord, low) <= arc(chord, low + more) + slack


@given(st.integers(0, 10**400), st.integers(0, 10**400))
def test_no_size_is_too_large(chord: int, rise: int) -> None:
    assert spine_arc(Figure(chord), Figure(rise)).value >= 0


def test_an_arc_keeps_the_doubts_of_width_and_rise() -> None:
    rough = Doubt(Effect.ABOUT, "measure is approximate", "measures are approximate")
    found = spine_arc(Figure(68_000, (rough,)), Figure(14_000, (rough,)))
    assert found.reasons == ("2 measures are approximate",)


def test_a_third_of_a_circle_has_a_roundness_of_about_0_289() -> None:
    # Roberts & Etherington, "rounding": about a third of a circle.
    third = next(row for row in SEGMENTS if row["case"].startswith("one third"))
    found = roundness(Fraction(third["chord"]), Fraction(third["rise"]))
    assert found is not None
    assert float(found) == pytest.approx(0.289, abs=0.0005)
    assert roundness(Fraction(0), Fraction(1)) is None
