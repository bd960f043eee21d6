"""The treatment: sittings, claims, and the work in a few words."""

from __future__ import annotations

import pytest

from casebook.compute.summary import summarise
from casebook.model.archive import Case
from casebook.model.base import Gap, Unknowing
from casebook.model.outcome import Claim
from casebook.output.marks_view import NO_VIEWS
from casebook.output.treatment_view import claim_line, episode_views, order_text, work_line
from casebook.output.wording import text_of
from tests.builders import RICH, WORDING, record

CASE = record(Case, RICH)


def episodes(case: Case):
    return episode_views(case, summarise(case, str).hours, WORDING, NO_VIEWS)


def test_an_episode_has_its_steps_in_order() -> None:
    (episode,) = episodes(CASE)
    assert [step.number for step in episode.steps] == [1, 2, 3]
    assert [step.words_only for step in episode.steps] == [True, False, False]
    assert episode.steps[1].remarks == ("For the lab: for us.",)
    assert episode.words_only == "Recorded in words only: step 1."


def test_what_all_steps_of_a_sitting_have_is_said_of_the_sitting() -> None:
    text = "{id: c, episodes: [{steps: [{do: wash, hands: [AM]}, {do: dry, hands: [AM]}]}]}"
    (episode,) = episodes(record(Case, text))
    assert episode.hands == "By AM"
    assert [one.details for one in episode.steps] == ["", ""]
    (mixed,) = episodes(record(Case, text.replace("{do: dry, hands: [AM]}", "{do: dry}")))
    assert (mixed.hands, mixed.steps[0].details) == ("", "AM")


def test_steps_without_an_episode_have_one_of_their_own() -> None:
    assert len(episodes(record(Case, "{id: c-1, steps: [looked at it]}"))) == 1


def test_steps_in_no_known_order_are_not_numbered_and_it_is_said() -> None:
    (episode,) = episodes(record(Case, "{id: c, order: not recorded, steps: [one, other]}"))
    assert episode.order == "In no recorded order:"
    assert [step.number for step in episode.steps] == [0, 0]


def test_where_the_structure_is_withheld_it_is_said_that_a_step_is_not_shown() -> None:
    bare = record(Case, "{id: c, steps: [{because: so}, looked at it, {steps: [{time: 1 h}]}]}")
    (episode,) = episode_views(bare, summarise(bare, str).hours, WORDING, NO_VIEWS, withheld=True)
    hidden = "What was done is not shown in this copy."
    assert [text_of(one.sentence) for one in episode.steps] == [
        hidden,
        "Looked at it.",
        "On every member:",
    ]
    assert [text_of(one.sentence) for one in episode.steps[2].steps] == [hidden]
    assert not any(one.words_only for one in episode.steps)
    assert episode.words_only == ""


def test_an_order_that_stands_is_not_spoken_of() -> None:
    assert order_text(None) == ""
    assert order_text(Gap(Unknowing.UNKNOWN)) == "In an order that nobody can tell:"


def test_a_sitting_whose_date_and_time_nobody_wrote_down_says_so() -> None:
    (episode,) = episodes(
        record(Case, "{id: c, episodes: [{date: not recorded, steps: [{do: wash}]}]}")
    )
    assert (episode.when, episode.time) == ("Date not recorded", "Bench time not recorded")


def test_a_claim_says_what_opens_a_layer() -> None:
    claim = record(Claim, "{takes-off: cloth-lining, with: water, leaves: none}")
    line = "The cloth lining comes off with water; it leaves nothing."
    assert text_of(claim_line(claim, WORDING)) == line


def test_the_work_in_a_few_words_even_in_a_run() -> None:
    assert work_line(CASE, WORDING) == "Lining"
    run = "{id: c, steps: [{each: [board 1], steps: [{do: wash, treats: each}]}]}"
    assert work_line(record(Case, run), WORDING) == "Washing"


@pytest.mark.parametrize(
    ("claim", "text"),
    [
        (
            "{takes-off: cloth-lining, with: water, leaves: paste}",
            "The cloth lining comes off with water; it leaves paste.",
        ),
        (
            "{takes-off: fold-guards, with: water, leaves: none}",
            "The fold guards come off with water; they leave nothing.",
        ),
        ("{takes-off: pockets, with: by-hand}", "The pockets come off by hand."),
        ("{takes-off: white-size, with: none}", "The white size comes off with nothing."),
        (
            "{takes-off: [tissue, cloth], with: water}",
            "The tissue and the cloth come off with water.",
        ),
    ],
)
def test_several_layers_come_off_and_one_comes_off(claim: str, text: str) -> None:
    assert text_of(claim_line(record(Claim, claim), WORDING)) == text
