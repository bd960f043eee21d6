"""Numbers beside a drawing: none over another, lines that do not cross."""

from __future__ import annotations

import re

from hypothesis import given
from hypothesis import strategies as st

from casebook.drawings.badges import (
    PITCH,
    Badge,
    Column,
    marked,
    markers,
    numbers,
    rows,
    seen,
    written,
)
from casebook.drawings.stack import meet

RUNS = st.lists(st.tuples(st.integers(0, 9), st.integers(0, 3)), min_size=1, max_size=3)


def _badge(number: int, *runs: tuple[int, int]) -> Badge:
    return Badge(number, runs, lambda down: (100, 50 + down), f"label {number}")


def test_numbers_never_seen_together_may_share_a_row():
    assert rows([_badge(1, (0, 2)), _badge(2, (3, 5)), _badge(3, (0, 5))]) == (0, 0, 1)


@given(st.lists(RUNS, max_size=9))
def test_numbers_seen_together_never_share_one_and_keep_their_order(every):
    badges = [_badge(n, *((a, a + b) for a, b in runs)) for n, runs in enumerate(every)]
    found = rows(badges)
    for n, one in enumerate(badges):
        for m in range(n):
            if meet(one.runs, badges[m].runs):
                assert found[m] < found[n]


def test_a_column_draws_each_with_its_label_and_says_where_it_ends():
    drawn, end = Column(384, 16).draw([_badge(1, (0, 5)), _badge(2, (0, 5))], 5)
    assert end == 16 + 2 * PITCH
    assert re.findall(r">(label \d)<", drawn) == ["label 1", "label 2"]
    assert "label" not in Column(14, 16, labelled=False).draw([_badge(1, (0, 5))], 5)[0]


def test_a_group_says_in_which_states_it_is_seen_and_is_hidden_if_not_in_the_last():
    assert seen(((0, 5),), 5) == "<g/>"
    assert (
        seen(((0, 2), (4, 4)), 5, layer="a") == '<g data-layer="a" data-in="0-2 4" display="none"/>'
    )
    assert seen(((3, 5),), 5) == '<g data-in="3-5"/>'
    assert written(((0, 0), (2, 9))) == "0 2-9"


def test_the_light_copy_behind_the_numbers_is_a_reference():
    drawn = marked("x", seen(((0, 1),), 1))
    assert 'href="#x-m"' in drawn
    assert 'id="x-m"' in drawn
    assert 'id="x-n"' in markers("x")


def test_layers_are_numbered_in_their_order_each_once():
    assert numbers(["a", "b", "a", "c"]) == {"a": 1, "b": 2, "c": 3}
