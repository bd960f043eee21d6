"""The plan: courses, questions, and what was agreed."""

from __future__ import annotations

from casebook.model.archive import Case
from casebook.model.base import Gap, Unknowing
from casebook.model.proposal import Decision, Proposal
from casebook.output.plan_view import agreed, labelled, option_views, plan_lines, question_views
from casebook.output.wording import text_of
from tests.builders import RICH, WORDING, record

CASE = record(Case, RICH)


def test_a_plan_is_told_in_sentences() -> None:
    assert [text_of(one) for one in plan_lines(CASE, WORDING)] == [
        "Use: reading room.",
        "Agreed by the owner, 10 February 2025 (letter).",
        "The plan was changed: a strip kept, because it was found; agreed: by telephone.",
    ]


def test_who_proposed_it_and_when() -> None:
    case = record(Case, "{id: c, proposal: {by: [AM, IP], date: 2025-02-01}}")
    (line,) = plan_lines(case, WORDING)
    assert text_of(line) == "Proposed by AM and IP, 1 February 2025."


def test_a_plan_that_is_not_known_says_how() -> None:
    case = record(Case, "{id: c, proposal: not read}")
    (line,) = plan_lines(case, WORDING)
    assert text_of(line) == "What was proposed was not read in the source."


def test_the_chosen_option_is_marked() -> None:
    (option,) = option_views(CASE, WORDING)
    assert option.chosen
    assert (option.name, option.outcome) == ("reback", "chosen")
    assert option.details == "Would take 14 h, at a cost of 400, with linen."


def test_questions_keep_their_courses_and_approvals_apart() -> None:
    case = record(
        Case,
        "{id: c, proposal: {questions: [{asks: How to cover it?, options: [{name: calf, outcome:"
        " rejected, because: too thick}], decided: {by: owner}}]}}",
    )
    (question,) = question_views(case, WORDING)
    assert question.asks == "How to cover it?"
    assert question.options[0].outcome == "not chosen"
    assert question.options[0].details == "Not chosen: too thick."
    assert [text_of(one) for one in question.decided] == ["Agreed by the owner."]
    assert option_views(case, WORDING) == ()


def test_the_owner_s_limits_stand_in_a_sentence_of_their_own() -> None:
    lines = agreed(record(Decision, "{by: [owner, a trustee], limits: the shape stays}"), WORDING)
    assert [text_of(one) for one in lines] == [
        "Agreed by the owner and a trustee.",
        "The limits set: the shape stays.",
    ]
    (unknown,) = agreed(Gap(Unknowing.UNKNOWN), WORDING)
    assert text_of(unknown) == "Who agreed to it is unknown."


def test_a_label_without_a_text_is_left_out() -> None:
    assert labelled(Proposal(), WORDING, ("Use", "use")) == ()
