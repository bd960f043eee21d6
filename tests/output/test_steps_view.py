"""Steps as a page shows them: ways, runs over members, exceptions, trials."""

from __future__ import annotations

from dataclasses import replace

import pytest

from casebook.model.base import items
from casebook.model.details import Hand, Way
from casebook.model.treatment import Step
from casebook.output.marks_view import NO_VIEWS
from casebook.output.steps_view import (
    ANY_SITTING,
    Sitting,
    differs_line,
    pictures_of,
    step_views,
    way_line,
    words_only,
)
from casebook.output.wording import text_of
from casebook.values.dates import Date
from tests.builders import WORDING, record

RUN = """
each: [volume 3, volume 4]
because: they came together
steps:
  - {do: clean, treats: spine, time: 10 min each}
  - {do: line, adds: lining, onto: spine, material: linen, adhesive: wheat-starch-paste}
differs:
  - {in: volume 4, step: clean, left-out: yes, because: it was clean}
  - {in: volume 4, step: lining, instead: {material: cotton, time: 5 min each}}
  - {in: volume 3, step: "9"}
"""


def view(text: str, sitting: Sitting = ANY_SITTING):
    (found,) = step_views([record(Step, text)], WORDING, NO_VIEWS, sitting)
    return found


def test_a_run_tells_its_members_and_then_its_steps() -> None:
    run = view(RUN)
    assert text_of(run.sentence) == "On each of volume 3 and volume 4:"
    assert [text_of(one.sentence) for one in run.steps] == [
        "Cleaned the spine.",
        "Lined the spine with linen in wheat starch paste; called “lining”.",
    ]
    assert run.steps[0].details == "10 min at the bench for each"
    assert run.remarks == ("Why: they came together.",)


def test_a_member_that_was_treated_otherwise_is_told_in_a_sentence() -> None:
    run = record(Step, RUN)
    assert [text_of(differs_line(one, run, WORDING)) for one in items(run.differs)] == [
        "Volume 4 otherwise, because it was clean: step 1 was left out.",
        (
            "Volume 4 otherwise: step 2, lined the spine with cotton in wheat starch paste; called "
            "“lining”; 5 min at the bench for each."
        ),
        "Volume 3 otherwise: 9 was not done in the same way.",
    ]


def test_a_run_at_the_same_time_says_so() -> None:
    run = view("{each: [board 1], words: on the press, beside: yes, steps: [{do: clean}]}")
    assert text_of(run.sentence) == "Meanwhile, on the press: on each of board 1:"


@pytest.mark.parametrize(
    ("way", "line"),
    [
        ("12 of 40", "12 of 40: as said above."),
        (
            "{scope: along the edges, material: linen, adhesive: pva, because: it is torn}",
            "Along the edges: linen stuck with polyvinyl acetate, because it is torn.",
        ),
        (
            "{scope: 3 of 4, agent: water, tools: brush, result: clean}",
            "3 of 4: with water, using brush; the result: clean.",
        ),
    ],
)
def test_a_way_says_its_share_and_how_it_was_done(way: str, line: str) -> None:
    assert text_of(way_line(record(Way, way), WORDING)) == line


def test_remarks_are_sentences() -> None:
    step = view(
        "{do: clean, treats: spine, result: not recorded (page lost), falls-short: it is grey,"
        " outcome: partly, tools: brush, hands: [{who: AM, time: 20 min}, RT], date: 2025-05,"
        " like: house-way}"
    )
    assert step.remarks == (
        "The result: not recorded (page lost).",
        "It fell short of what was wished for: it is grey.",
        "It was only partly done.",
        "After the lab's recipe “house way”.",
    )
    assert step.details == "AM (20 min) and RT, May 2025 · with brush"


def test_a_result_needs_its_label_only_behind_a_reason() -> None:
    assert view("{do: clean, result: white again}").remarks == ("White again.",)
    assert view("{do: clean, because: it was grey, result: white again}").remarks == (
        "Why: it was grey.",
        "Result: white again.",
    )


def test_what_a_recipe_filled_in_is_told_with_it() -> None:
    step = replace(record(Step, "{like: house-way}"), assumed=frozenset(["because", "dries"]))
    (found,) = step_views([step], WORDING, NO_VIEWS)
    line = "After the lab's recipe “house way”, from which come the drying and the reason."
    assert found.remarks == (line,)


@pytest.mark.parametrize(
    ("step", "details"),
    [
        ("{do: clean, hands: [AM], date: 2025-03-28, time: 20 min}", "20 min at the bench"),
        ("{do: clean, hands: [RT], date: 2025-03-28}", "RT"),
        (
            "{do: clean, hands: [RT], date: 2025-03-29, time: 1 h}",
            "1 h at the bench · RT, 29 March 2025",
        ),
        ("{do: clean, date: not recorded, tools: none}", "date not recorded · without tools"),
        ("{do: clean, tools: unknown}", "with which tools is unknown"),
    ],
)
def test_a_step_names_hands_and_day_only_where_they_are_not_those_of_its_sitting(
    step: str, details: str
) -> None:
    sitting = Sitting((Hand(who="AM"),), Date.parse("2025-03-28"))
    assert view(step, sitting).details == details


def test_steps_in_words_only_are_named_once_for_all() -> None:
    steps = [record(Step, text) for text in ("looked at it", "{do: clean}", "{words: tidied up}")]
    run = record(Step, "{each: [board 1], steps: [looked at it, {do: clean}]}")
    told = step_views([*steps, run], WORDING, NO_VIEWS)
    line = "Recorded in words only: step 1, step 3 and step 1 within step 4."
    assert words_only(told) == line
    assert words_only(told[1:2]) == ""
    loose = step_views(steps, WORDING, NO_VIEWS, Sitting(ordered=False))
    assert words_only(loose) == "2 of these steps are in words only."


def test_a_trial_says_what_came_of_it_and_what_it_cost() -> None:
    step = view(
        "{do: press, treats: spine, tried: [{what: weights, result: no contact, outcome: given-up,"
        " time: 5 min}, {what: paper, material: linen, colour: L 52 a 3 b 10, outcome: chosen}]}"
    )
    assert [(one.text, one.given_up) for one in step.tried] == [
        ("weights – no contact; 5 min at the bench.", True),
        ("paper (linen), which came out as L 52 a 3 b 10; chosen.", False),
    ]


def test_only_pictures_that_may_be_shown_are() -> None:
    assert pictures_of(("p1",), NO_VIEWS) == ()
