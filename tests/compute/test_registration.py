"""Two points on each of two photos lay one over the other, exactly."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from casebook.compute.registration import Similarity, fitted, matrix, similarity
from casebook.model.marks import Fit
from casebook.model.photos import Image
from tests.model.reads import reads

_PIXELS = st.integers(0, 60_000).map(lambda n: Fraction(n, 10))
_POINTS = st.tuples(_PIXELS, _PIXELS)
_PARTS = st.integers(-3000, 3000).map(lambda n: Fraction(n, 1000))
_SIMILARITIES = st.builds(
    Similarity,
    st.tuples(_PARTS, _PARTS).filter(any),
    st.tuples(_PIXELS, _PIXELS),
)


@given(_SIMILARITIES, _POINTS, _POINTS, _POINTS)
def test_a_similarity_is_found_again_from_two_points(found, one, other, third) -> None:
    assume(one != other)
    again = similarity((one, other), (found(one), found(other)))
    assert again == found
    assert again is not None
    assert again(third) == found(third)


@given(_SIMILARITIES, _POINTS)
def test_the_way_back_leads_back(found, point) -> None:
    assert found.back()(found(point)) == point


@given(_SIMILARITIES, _POINTS, _POINTS)
def test_distances_grow_by_the_scale_and_by_nothing_else(found, one, other) -> None:
    before = math.dist(*(map(float, point) for point in (one, other)))
    after = math.dist(*(map(float, found(point)) for point in (one, other)))
    assert math.isclose(after, before * found.scale, rel_tol=1e-9, abs_tol=1e-9)


@pytest.mark.parametrize(
    ("here", "there", "scale", "degrees", "shift"),
    [
        ([(0, 0), (10, 0)], [(0, 0), (10, 0)], 1, 0, (0, 0)),
        ([(0, 0), (10, 0)], [(5, -7), (15, -7)], 1, 0, (5, -7)),
        ([(0, 0), (10, 0)], [(0, 0), (0, 20)], 2, 90, (0, 0)),
        ([(1, 1), (4, 5)], [(0, 0), (-3, -4)], 1, 180, (1, 1)),
        ([(0, 0), (4, 3)], [(0, 0), (3, 4)], 1, math.degrees(math.atan2(7, 24)), (0, 0)),
    ],
)
def test_known_turns_scales_and_shifts(here, there, scale, degrees, shift) -> None:
    (a, b), (c, d) = ([(Fraction(x), Fraction(y)) for x, y in many] for many in (here, there))
    found = similarity((a, b), (c, d))
    assert found is not None
    assert math.isclose(found.scale, scale)
    assert math.isclose(found.degrees, degrees)
    assert found.shift == shift


def test_one_point_twice_gives_nothing() -> None:
    point = (Fraction(1), Fraction(2))
    other = (Fraction(3), Fraction(4))
    assert similarity((point, point), (point, other)) is None
    assert similarity((point, other), (point, point)) is None


def test_a_record_may_say_its_points_in_pixels_or_per_cent() -> None:
    here, there = Image("h", 2000, 1000), Image("t", 1000, 800)
    pixels = reads(Fit, "{over: a, here: [200 100, 1800 900], there: [100 80, 900 480]}")
    shares = reads(Fit, "{over: a, here: [10% 10%, 90% 90%], there: [10% 10%, 90% 60%]}")
    assert fitted(pixels, here, there) == fitted(shares, here, there) is not None


@pytest.mark.parametrize("text", ["{over: a}", "{over: a, here: [1 2, 3 4], there: [1 2]}"])
def test_fewer_points_lay_nothing_over_anything(text: str) -> None:
    image = Image("d", 100, 100)
    assert fitted(reads(Fit, text), image, image) is None


@given(_SIMILARITIES, _POINTS)
def test_the_page_s_matrix_shows_a_point_where_the_similarity_takes_it(found, point) -> None:
    here, there = Image("h", 2400, 1600), Image("t", 1800, 1200)
    a, b, c, d, x, y = matrix(found, here, there)
    shown = point[0] / here.width, point[1] / here.width
    moved = a * shown[0] + c * shown[1] + x, b * shown[0] + d * shown[1] + y
    assert tuple(part * there.width for part in moved) == found(point)
