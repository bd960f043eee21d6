"""Steps as a page shows them: ways, runs over members, exceptions, trials."""

from __future__ import annotations

import pytest

from casebook.model.base import items
from casebook.model.details import Way
from casebook.model.treatment import Step
from casebook.output.steps_view import differs_line, pictures_of, step_views, way_line
from casebook.output.wording import text_of
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


def view(text: str):
    (found,) = step_views([record(Step, text)], WORDING, {})
    return found


def test_a_run_tells_its_members_and_then_its_steps() -> None:
    run = view(RUN)
    assert text_of(run.sentence) == "On each of volume 3 and volume 4:"
    assert [text_of(one.sentence) for one in run.steps] == [
        "Cleaned the spine.",
        "Lined the spine with linen in wheat starch paste; called “lining”.",
    ]
    assert run.steps[0].time == "10 min at the bench for each"
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
        "Worked with brush.",
        "Done by AM (20 min) and RT.",
        "Done: May 2025.",
        "Done after the lab's recipe house way.",
    )


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
    assert pictures_of(("p1",), {}) == ()
