"""The treatment: plan, options, episodes, and how it is undone."""

from __future__ import annotations

from casebook.compute.summary import summarise
from casebook.model.archive import Case
from casebook.model.outcome import Claim
from casebook.output.treatment_view import (
    claim_line,
    episode_views,
    option_views,
    plan_lines,
    work_line,
)
from casebook.output.wording import text_of
from tests.builders import RICH, WORDING, record

CASE = record(Case, RICH)


def test_a_plan_is_told_in_labelled_sentences() -> None:
    lines = [text_of(one) for one in plan_lines(CASE)]
    assert lines[0] == "Use: reading room."
    assert "Change of plan: a strip kept, because it was found; agreed: by telephone." in lines


def test_the_chosen_option_is_marked() -> None:
    (option,) = option_views(CASE, WORDING)
    assert option.chosen
    assert option.name == "reback"


def test_an_episode_has_its_steps_in_order() -> None:
    sheet = summarise(CASE, lambda word: word).hours
    (episode,) = episode_views(CASE, sheet, WORDING, {})
    assert [step.number for step in episode.steps] == [1, 2, 3]
    assert [step.words_only for step in episode.steps] == [True, False, False]
    assert episode.steps[1].remarks == ("For the lab: for us.",)


def test_steps_without_an_episode_have_one_of_their_own() -> None:
    case = record(Case, "{id: c-1, steps: [looked at it]}")
    assert len(episode_views(case, summarise(case, str).hours, WORDING, {})) == 1


def test_a_claim_says_what_opens_a_layer() -> None:
    claim = record(Claim, "{takes-off: cloth-lining, with: water, leaves: nothing}")
    line = "The cloth lining comes off with water; it leaves nothing."
    assert text_of(claim_line(claim, WORDING)) == line


def test_the_work_in_a_few_words() -> None:
    assert work_line(CASE, WORDING) == "Lining"
