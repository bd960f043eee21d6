"""How it held is told in counts, with the cases that tell; silence is never counted as held."""

from __future__ import annotations

import pytest

from casebook.compute.elapsed import Elapsed
from casebook.compute.outcomes import Again, Look, Outcome
from casebook.compute.term_uses import GivenUp
from casebook.model.condition import Holding
from casebook.model.treatment import Step
from casebook.output.contexts import Folded, Run
from casebook.output.outcome_view import MOST, folded, given_up_view, held_view, since_text
from casebook.output.wording import Wording, text_of
from casebook.values.dates import Date
from tests.builders import WORDING, record

TITLES = {f"c-{n}": (f"c-{n}", f"Case {n}") for n in range(1, 100)}
WORDS = Wording(WORDING.lexicon, "../", TITLES)
SOUND, LIFTING = Look((), Holding.SOUND), Look(("cloth-lining",), Holding.LIFTING, because="damp")


def counts(*found: Outcome, kind: str = "materials") -> str:
    view = held_view(kind, found, WORDS)
    assert view
    return view.counts


def lines(*found: Outcome) -> list[str]:
    view = held_view("materials", found, WORDS)
    assert view
    return [text_of(one) for one in (*view.told.lines, *view.told.rest)]


def unseen(*numbers: int) -> list[Outcome]:
    return [Outcome(f"c-{n}") for n in numbers]


def test_the_counts_add_up_and_leave_out_nobody() -> None:
    found = [
        Outcome("c-1", looks=(SOUND,)),
        Outcome("c-2", looks=(LIFTING,)),
        Outcome("c-3", again=(Again("c-9"),)),
        *unseen(4, 5),
    ]
    assert counts(*found) == (
        "Of 5 cases in which it was left on the object, 2 were looked at again: sound in 1, "
        "lifting in 1; 1 was treated again without such a look; 2 were not looked at again."
    )


@pytest.mark.parametrize(
    ("found", "sentence"),
    [
        (unseen(1), "The one case in which it was left on the object was not looked at again."),
        (unseen(1, 2), "None of the 2 cases in which it was left on the object was looked at"),
        ([Outcome("c-1", looks=(SOUND,))], "The one case in which it was left on the object was"),
        ([Outcome("c-1", looks=(SOUND,))], "looked at again: sound."),
        ([Outcome("c-1", looks=(Look((), None),))], "how it stood is not recorded."),
        ([Outcome(f"c-{n}", looks=(SOUND,)) for n in (1, 2)], "All 2 cases in which it was left"),
        ([Outcome("c-1", looks=(Look((), None),)), *unseen(2)], "1 was looked at again: how it"),
    ],
)
def test_small_numbers_read_as_sentences(found: list[Outcome], sentence: str) -> None:
    assert sentence in counts(*found)


def test_an_operation_is_said_to_be_done() -> None:
    assert "in which something of it stayed on the object" in counts(
        *unseen(1, 2), kind="operations"
    )


def test_nothing_on_record_is_no_section() -> None:
    assert held_view("materials", (), WORDS) is None
    assert held_view("materials", (Outcome("c-1", own=False),), WORDS) is None


def test_a_published_case_is_told_and_not_counted() -> None:
    printed = Outcome("c-2", own=False, looks=(SOUND,))
    assert counts(*unseen(1), printed).startswith("The one case")
    assert lines(*unseen(1), printed) == [
        "Case 2: the whole, sound; by others, written up from a publication."
    ]


def test_what_gave_way_stands_first_and_says_why() -> None:
    long = Look((), Holding.SOUND, since=Elapsed(30, 30, 915), because="kept flat")
    found = [Outcome("c-1", looks=(SOUND,)), Outcome("c-2", looks=(long,))]
    assert lines(*found, Outcome("c-3", looks=(LIFTING,))) == [
        "Case 3: the cloth lining, lifting (damp).",
        "Case 2: the whole, sound after 2 years 6 months.",
        "Case 1: the whole, sound.",
    ]


def test_a_case_leads_to_its_looks_and_to_the_case_that_treated_it_again() -> None:
    again = (Again("c-9", "failed", "it stuck"),)
    view = held_view("materials", [Outcome("c-1", looks=(LIFTING,), again=again)], WORDS)
    assert view
    assert [run.href for run in view.told.lines[0] if run.href] == [
        "../cases/c-1/index.html#follow-up",
        "../cases/c-9/index.html",
    ]
    assert "it stuck" not in text_of(view.told.lines[0])
    assert lines(Outcome("c-1", again=again)) == [
        "Case 1: treated again in Case 9 (failed: it stuck)."
    ]


def test_a_look_whose_time_cannot_be_told_gives_its_date() -> None:
    look = Look((), Holding.SOUND, Date.parse("2025-05-12"))
    assert lines(Outcome("c-1", looks=(look,))) == ["Case 1: the whole, sound (12 May 2025)."]


def test_only_ten_looks_or_more_allow_an_interval() -> None:
    found = [Outcome(f"c-{n}", looks=(SOUND,)) for n in range(1, 10)]
    few = held_view("materials", found, WORDS)
    assert few and few.interval == ""
    more = held_view("materials", [*found, Outcome("c-10", looks=(LIFTING,))], WORDS)
    assert more and "between 59 and 99 in a hundred" in more.interval


def test_very_many_cases_are_counted_and_not_told() -> None:
    found = [Outcome(f"c-{n}", looks=(SOUND,)) for n in range(1, MOST + 3)]
    view = held_view("materials", found, WORDS)
    assert view and len((*view.told.lines, *view.told.rest)) == MOST
    assert view.told.summary == f"{MOST - 3} more that tell of it"
    assert view.told.note == "2 more cases tell of it."


def test_a_few_sentences_are_not_folded() -> None:
    every = tuple((Run(str(n)),) for n in range(6))
    assert folded(every[:5], "more") == Folded(every[:5])
    assert folded(every, "more") == Folded(every[:3], "3 more", every[3:])


@pytest.mark.parametrize(
    ("since", "text"),
    [
        (Elapsed(14, 14, 430), "1 year 2 months"),
        (Elapsed(12, 12, 366), "1 year"),
        (Elapsed(0, 0, 1), "1 day"),
        (Elapsed(0, 0, 0), "less than a day"),
        (Elapsed(504, 504, 15340), "42 years"),
        (Elapsed(504, 505), "about 42 years"),
        (Elapsed(14, 15), "about 1 year 2 months"),
        (Elapsed(20, 31), "about 2 years"),
        (Elapsed(0, 11), "less than 1 year"),
        (Elapsed(0, 1), "less than 2 months"),
    ],
)
def test_a_time_is_told_as_surely_as_it_is_known(since: Elapsed, text: str) -> None:
    assert since_text(since) == text


def test_what_was_given_up_leads_to_its_sitting() -> None:
    step = record(
        Step,
        "{do: mend, treats: leaf, result: it curled, tried: ["
        "{what: small weights, result: no contact, because: too light, outcome: given-up},"
        "{material: [gelatine], outcome: given-up}]}",
    )
    first, second = step.tried
    found = given_up_view(
        [
            GivenUp("c-1", "2", step, first),
            GivenUp("c-2", "", step),
            GivenUp("c-3", "1", step, second),
        ],
        WORDS,
    ).lines
    assert [text_of(one) for one in found] == [
        "Case 1: small weights – no contact; too light.",
        "Case 2: mending, the leaf – it curled.",
        "Case 3: gelatine.",
    ]
    assert [one[0].href for one in found] == [
        "../cases/c-1/index.html#episode-2",
        "../cases/c-2/index.html#treatment",
        "../cases/c-3/index.html#episode-1",
    ]


def test_what_was_given_up_beyond_many_is_counted() -> None:
    found = [GivenUp("c-1", "", record(Step, "{do: mend, treats: leaf}"))] * (MOST + 2)
    view = given_up_view(found, WORDS)
    assert len((*view.lines, *view.rest)) == MOST
    assert view.note == "2 more were given up."
