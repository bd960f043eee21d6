"""Arc, board and flat: where layers run."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook.drawings.lanes import Arc, Band, Board, Flat

LEDGER = Arc(200, 100, 68, 14)


def test_the_ends_of_an_arc_are_a_chord_apart_and_its_middle_is_as_high_as_the_rise():
    left, right, top = LEDGER.point(-1, 0), LEDGER.point(1, 0), LEDGER.point(0, 0)
    assert right[0] - left[0] == pytest.approx(68)
    assert left[1] == pytest.approx(100)
    assert top == (200, pytest.approx(86))


def test_the_length_of_an_arc_agrees_with_the_handbook():
    # r = (68² + 4·14²) / (8·14) = 48.286; angle 4·atan(28/68) = 1.5624; Machinery's Handbook
    assert LEDGER.length == pytest.approx(48.2857 * 4 * math.atan(28 / 68), abs=0.001)


def test_without_a_rise_it_is_a_straight_line():
    flat = Arc(200, 100, 60, 0)
    assert (flat.length, flat.radius, flat.half) == (60, 0, 0)
    assert flat.line(-1, 1, 3) == "M170 97h60"


@given(st.floats(20, 300), st.floats(0, 1), st.floats(-1, 1), st.floats(0, 90))
def test_a_height_is_measured_square_to_the_curve(chord, share, t, height):
    arc = Arc(200, 100, chord, share * chord / 2)
    (x, y), (a, b) = arc.point(t, 0), arc.point(t, height)
    assert math.hypot(a - x, b - y) == pytest.approx(height, abs=0.001)


def test_a_layer_bends_from_the_end_of_the_spine_to_the_face_of_the_board():
    board = Board(LEDGER, 1, 9, 60)
    data = board.bent(Band(-1, 1, 10, 20), Band(0, 1, 3, 8))
    start = LEDGER.point(1, 10)
    assert data.startswith(f"M{round(start[0], 1):g} {round(start[1], 1):g}c")
    assert board.point(0, 3) == (200 + 34 + 3, 109)
    assert data.endswith("z")


def test_the_left_board_is_the_mirror_of_the_right():
    left, right = Board(LEDGER, -1, 9, 60), Board(LEDGER, 1, 9, 60)
    (x, y), (a, b) = left.point(0.5, 4), right.point(0.5, 4)
    assert (x - 200, y) == (200 - a, b)


def test_a_tube_is_closed_by_a_fold_at_each_end():
    arc = Arc(200, 100, 60, 0)
    assert arc.cap(1, Band(-1, 1, 3, 12), Band(-1, 1, 21, 30)).startswith(
        "M230 97a13.5 13.5 0 0 0 0-27"
    )
    assert arc.cap(-1, Band(-1, 1, 3, 12), Band(-1, 1, 21, 30)).startswith(
        "M170 97a13.5 13.5 0 0 1 0-27"
    )


def test_below_a_sheet_heights_run_downwards():
    assert Flat(200, 50, 100, -1).band(Band(-1, 1, 2, 6)) == "M150 52h100v4h-100z"
    assert Flat(200, 50, 100).point(0, 6) == (200, 44)
