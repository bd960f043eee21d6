"""Places on a photo are read exactly, in pixels or per cent, and everything else is refused."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook.values.fault import NotUnderstood
from casebook.values.points import Box, Outline, Path, Point, Spot

KINDS: tuple[type[Spot], ...] = (Point, Box, Path, Outline)
_PIECES = st.lists(
    st.sampled_from(["12", "0.5", "100", "%", " ", ",", "-3", "x", "٣", "9999999"]), max_size=14
).map("".join)
_AMOUNTS = st.integers(0, 10**6).map(lambda n: Fraction(n, 10**4))


def test_a_point_is_in_pixels_or_in_per_cent() -> None:
    for text, x, y in (("1204 860", 1204, 860), ("25% 12.5 %", 600, 200)):
        assert Point.parse(text).on(2400, 1600) == (Fraction(x), Fraction(y))


def test_a_box_is_a_corner_and_a_size() -> None:
    corners = Box.parse("10 20 30 40").corners(100, 100)
    assert [(int(x), int(y)) for x, y in corners] == [(10, 20), (40, 20), (40, 60), (10, 60)]
    assert Box.parse("10% 20% 30% 40%").corners(200, 100)[2] == (80, 60)


def test_lines_and_outlines_are_points_with_commas_between() -> None:
    assert Path.parse("1 2, 3 4").corners(9, 9) == ((1, 2), (3, 4))
    assert len(Outline.parse("1 2,3 4 , 5 6").corners(9, 9)) == 3


@pytest.mark.parametrize(
    ("kind", "text", "wrong"),
    [
        (Point, "12", "12"),
        (Point, "12 -4", "-4"),
        (Point, "12 4 5", "12 4 5"),
        (Point, "12, 4", ","),
        (Point, "12 4%", "12 4%"),
        (Point, "12% 101%", "12% 101%"),
        (Box, "1 2 3", "1 2 3"),
        (Box, "1 2 0 4", "1 2 0 4"),
        (Box, "60% 2% 50% 4%", "60% 2% 50% 4%"),
        (Path, "1 2", "1 2"),
        (Outline, "1 2, 3 4", "1 2, 3 4"),
        (Outline, "1 2, 3 four, 5 6", "four,"),
    ],
)
def test_a_fault_points_at_what_is_wrong(kind: type[Spot], text: str, wrong: str) -> None:
    with pytest.raises(NotUnderstood) as caught:
        kind.parse(f"  {text}")
    fault = caught.value
    assert fault.hint.startswith("write ")
    assert f"  {text}"[fault.start : fault.end].strip() == wrong.strip()


def test_a_comma_stands_between_points_only() -> None:
    with pytest.raises(NotUnderstood):
        Path.parse("1, 2, 3, 4")


@given(st.sampled_from(KINDS), st.text() | _PIECES)
def test_any_text_is_read_or_not_understood_and_nothing_else(kind: type[Spot], text: str) -> None:
    try:
        value = kind.parse(text)
    except NotUnderstood as fault:
        assert fault.hint
        assert 0 <= fault.start < fault.end <= max(len(text), 1)
    else:
        assert kind.parse(value.canonical()) == value
        assert str(value) == text.strip()


@given(st.lists(st.tuples(_AMOUNTS, _AMOUNTS), min_size=3, max_size=8), st.booleans())
def test_an_outline_comes_back_from_its_canonical_text(
    points: list[tuple[Fraction, Fraction]], per_cent: bool
) -> None:
    value = Outline(tuple(number for point in points for number in point), per_cent)
    assert Outline.parse(value.canonical()) == value


@given(_AMOUNTS, _AMOUNTS, st.integers(1, 10**5), st.integers(1, 10**5))
def test_per_cent_of_a_picture_always_lie_in_it(
    x: Fraction, y: Fraction, width: int, height: int
) -> None:
    assert Point((x, y), per_cent=True).inside(width, height)


def test_what_runs_over_the_edge_is_not_inside() -> None:
    assert Box.parse("60 0 40 30").inside(100, 30)
    assert not Box.parse("61 0 40 30").inside(100, 30)
