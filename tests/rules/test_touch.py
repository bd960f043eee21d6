"""Places that may be one: a part and what lies in it, leaves among themselves."""

from __future__ import annotations

import pytest

from casebook.rules.touch import any_meets, meets, named, near, own, stuck, touched
from tests.rules.written import look


@pytest.mark.parametrize(
    ("one", "other", "meet"),
    [
        ("endband head", "endband head", True),
        ("endband head", "endband", True),
        ("endband head", "endband tail", False),
        ("board 1", "board 1/corner", True),
        ("board 1", "board 2", False),
        ("leaf", "section 6", True),
        ("leaf 3", "leaf 400", False),
        ("sheet/verso", "sheet", True),
        ("volume 1/spine", "spine", True),
        ("volume 1/spine", "volume 2/spine", False),
        ("leaf", "spine", False),
        ("old-glue", "spine", False),
        ("cover/inner", "cover", True),
    ],
)
def test_two_places_meet_where_one_may_lie_in_the_other(one: str, other: str, meet: bool):
    assert meets(look(), one, other) is meet
    assert meets(look(), other, one) is meet
    assert any_meets(look(), [one], ["strap", other]) is meet


def test_a_test_on_leaves_speaks_for_the_folds_of_the_spine():
    assert near(look(), "leaf", "spine")
    assert near(look(), "spine", "leaf")
    assert not near(look(), "leaf", "board 1")


def test_a_place_is_named_by_its_parts_with_numbers_and_sides_beside_them():
    assert dict(named(look(), "endband head")) == {"endband": {"head"}}
    assert dict(named(look(), "volume 2/spine")) == {"volume": {"2"}, "spine": frozenset()}
    assert dict(named(look(), "old-glue")) == {"old-glue": frozenset()}
    assert dict(named(look(), "the thing")) == {"the thing": frozenset()}


def test_a_step_touches_what_it_acts_on_and_what_that_lies_on():
    seen = look("steps: [{removes: old-glue, agent: water}]\nepisodes: []")
    (step,) = seen.steps
    assert touched(seen, step) == ("old-glue", "spine")


def test_an_adhesive_brings_together_what_is_put_back_and_what_it_is_put_on():
    seen = look(
        "steps: [{puts-back: title-label, onto: spine, adhesive: paste}, "
        "{adds: fill, in-thickness-of: leaf, adhesive: paste}]\nepisodes: []"
    )
    assert [stuck(step) for step in seen.steps] == [("title-label", "spine"), ("leaf",)]
    assert own(seen) == {"fill"}
