"""The time of a step in words."""

from __future__ import annotations

import pytest

from casebook.model.base import Gap, Unknowing
from casebook.model.treatment import Step
from casebook.output.times import bare_text, drying_line, duration_text, hands_line, time_line
from casebook.values.durations import Duration
from tests.builders import WORDING, record


@pytest.mark.parametrize(
    ("step", "line"),
    [
        (
            "{time: 1 h, waits: 20 min, dries: overnight under blotter}",
            "1 h at the bench; 20 min waiting; dried overnight under blotter",
        ),
        ("{time: 20 min each}", "20 min at the bench for each"),
        ("{time: 2 h all (doubtful)}", "2 h (doubtful) at the bench for all together"),
        ("{time: not recorded (page lost)}", "bench time not recorded (page lost)"),
        ("{time: none, dries: none}", "no drying"),
        ("{dries: not recorded}", "drying not recorded"),
        (
            "{dries: [2 h under blotter, {for: 3 nights, under: [weight], until: flat}]}",
            "dried 2 h under blotter, then 3 nights under weight until flat",
        ),
        ("{dries: {for: unknown, under: felt}}", "dried for a time unknown under felt"),
        ("{dries: {until: dry to the touch}}", "dried until dry to the touch"),
        ("{}", ""),
    ],
)
def test_the_three_clocks_stand_in_one_line(step: str, line: str) -> None:
    assert time_line(record(Step, step) if step != "{}" else Step(), WORDING) == line


def test_without_a_drying_nothing_is_said_of_it() -> None:
    assert drying_line((), WORDING) == ""


def test_a_time_in_a_run_says_of_what() -> None:
    time = Duration.parse("20 min each")
    assert (duration_text(time), bare_text(time)) == ("20 min for each", "20 min")
    assert duration_text(Duration.parse("20 min")) == "20 min"


def test_hands_are_told_with_their_own_minutes_and_unknown_ones_too() -> None:
    step = record(Step, "{hands: [{who: AM, time: 1 h}, RT, unknown]}")
    assert hands_line(step.hands) == "AM (1 h), RT and an unknown hand"
    assert hands_line(Gap(Unknowing.NOT_RECORDED)) == "a hand that is not recorded"
