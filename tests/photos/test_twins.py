"""Pictures that look alike are found, however many there are, at a cost that stays with each."""

from __future__ import annotations

import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook.photos import twins
from casebook.photos.twins import MOST, NEAR, Looks, Shelf

FINE = (1 << 128) - 1


def looks(coarse: int, fine: int = FINE) -> Looks:
    return Looks(f"{coarse:016x}{fine:064x}")


@given(st.integers(0, 2**64 - 1), st.sets(st.integers(0, 63), max_size=NEAR))
def test_whatever_few_bits_change_a_picture_is_found_again(coarse: int, changed: set[int]) -> None:
    shelf: Shelf[str] = Shelf()
    assert shelf.meet(looks(coarse), "first") == []
    other = coarse
    for bit in changed:
        other ^= 1 << bit
    assert shelf.meet(looks(other), "second") == [(0, "first")]


@given(st.integers(0, 2**64 - 1), st.sets(st.integers(0, 63), min_size=NEAR + 1))
def test_a_picture_with_more_changed_bits_is_another(coarse: int, changed: set[int]) -> None:
    shelf: Shelf[str] = Shelf()
    shelf.meet(looks(coarse), "first")
    for bit in changed:
        coarse ^= 1 << bit
    assert shelf.meet(looks(coarse), "second") == []


def test_the_nearest_comes_first_and_a_plain_picture_is_like_none() -> None:
    shelf: Shelf[str] = Shelf()
    for name, fine in (("far", FINE ^ 0xFFF), ("near", FINE ^ 1)):
        shelf.meet(looks(5, fine), name)
    assert shelf.meet(looks(5), "new") == [(1, "near"), (12, "far")]
    assert shelf.meet(looks(5, 0), "plain") == []


@pytest.mark.parametrize("alike", [True, False])
def test_work_grows_with_the_number_of_pictures_and_not_its_square(
    monkeypatch: pytest.MonkeyPatch, alike: bool
) -> None:
    held: list[int] = []
    plain = Looks.apart

    def counted(one: Looks, other: Looks) -> int | None:
        held.append(1)
        return plain(one, other)

    monkeypatch.setattr(twins.Looks, "apart", counted)
    dice = random.Random(1)
    shelf: Shelf[int] = Shelf()
    for n in range(1000):
        shelf.meet(looks(7 if alike else dice.getrandbits(64)), n)
    assert len(held) <= 1000 * 21 * MOST if alike else len(held) < 1000
