"""Which words of a reference to a part nobody knows."""

from __future__ import annotations

import pytest

from casebook.rules.places import strangers, whole_stranger
from tests.rules.written import look


@pytest.mark.parametrize(
    ("place", "unknown"),
    [
        ("spine", ()),
        ("board 12", ()),
        ("sheet/verso", ()),
        ("volume 2 / spine", ()),
        ("cloth-lining/spine", ()),
        ("endband hed", ("hed",)),
        ("spine/qwrtz", ("qwrtz",)),
    ],
)
def test_a_place_is_known_word_by_word(place: str, unknown: tuple[str, ...]):
    assert strangers(look(), place) == unknown
    assert not whole_stranger(look(), place)


def test_a_place_of_which_nothing_is_known_points_nowhere():
    assert whole_stranger(look(), "qwrtz 2")
    assert not whole_stranger(look(), "")
