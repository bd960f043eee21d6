"""How repairs held: only looks that tell of the work count, and nobody's silence is a success."""

from __future__ import annotations

import math
from collections.abc import Mapping

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook.compute.outcomes import Name, Outcome, outcomes, score_interval
from casebook.compute.summary import summarise
from casebook.model.archive import Case
from casebook.model.condition import Holding
from casebook.vocabulary import Lexicon, builtin
from tests.compute.written import case

LEXICON = Lexicon(builtin())
PASTE, LINEN, LINE = (
    ("materials", "wheat-starch-paste"),
    ("materials", "linen"),
    ("operations", "line"),
)
WORK = """
status: complete
parts: {spine: {width: 60 mm, height: 300 mm}}
as-found: [{id: old-lining, onto: spine, material: mull}]
episodes:
  - {date: 2020-01-01, steps: [{do: line, adds: first, onto: spine, material: tengujo,
      adhesive: wheat-starch-paste}]}
  - {date: 2020-03-01/2020-03-04, steps: [{do: line, adds: second, onto: first, material: linen,
      adhesive: pva}]}
"""


def of(*texts: str) -> Mapping[Name, tuple[Outcome, ...]]:
    cases: list[Case] = [case(f"id: c-{n}\n{text}") for n, text in enumerate(texts, 1)]
    return outcomes(cases, {one.id: summarise(one, str) for one in cases}, LEXICON)


def states(name: Name, *looks: str, more: str = "") -> tuple[Holding | None, int]:
    (found,) = of(f"{WORK}{more}\nfollow-up: [{', '.join(looks)}]")[name]
    return found.state, len(found.looks)


def test_a_look_at_a_layer_tells_of_that_layer_alone() -> None:
    assert states(LINEN, "{date: 2021-03-04, layer: second, state: sound}") == (Holding.SOUND, 1)
    assert states(PASTE, "{date: 2021-03-04, layer: second, state: sound}") == (None, 0)
    assert states(LINE, "{date: 2021-03-04, layer: second, state: sound}") == (Holding.SOUND, 1)


@pytest.mark.parametrize("where", ["", "layer: spine,"])
def test_a_look_at_the_part_or_the_whole_tells_of_all_that_lies_there(where: str) -> None:
    look = f"{{date: 2021, {where} state: lifting}}"
    assert states(PASTE, look) == states(LINEN, look) == (Holding.LIFTING, 1)


def test_a_look_at_what_was_found_there_tells_of_none_of_our_work() -> None:
    assert states(PASTE, "{date: 2021, layer: old-lining, state: failed}") == (None, 0)


def test_a_look_of_which_nobody_says_where_tells_of_nothing() -> None:
    assert states(PASTE, "{date: 2021, layer: not recorded, state: sound}") == (None, 0)


def test_what_once_lifted_did_not_hold() -> None:
    looks = ["{date: 2021, state: lifting}", "{date: 2022, state: sound}"]
    assert states(PASTE, *looks) == (Holding.LIFTING, 2)


def test_a_look_without_a_state_is_no_success() -> None:
    assert states(PASTE, "{date: 2021}", "{date: 2022, state: sound}") == (None, 2)
    assert states(PASTE, "{date: 2021, state: unknown}") == (None, 1)


def test_time_runs_from_the_last_day_of_work() -> None:
    (found,) = of(f"{WORK}\nfollow-up: [{{date: 2021-03-04, state: sound}}]")[PASTE]
    (look,) = found.looks
    assert look.since and (look.since.least, look.since.days) == (12, 365)


def test_without_dated_work_it_runs_from_the_return() -> None:
    text = WORK.replace("date: 2020-01-01, ", "").replace("date: 2020-03-01/2020-03-04, ", "")
    dates = "dates: {returned: 2020-06}\nfollow-up: [{date: 2022-06, state: sound}]"
    (found,) = of(f"{text}\n{dates}")[PASTE]
    (look,) = found.looks
    assert look.since and (look.since.least, look.since.most) == (23, 24)


@pytest.mark.parametrize(
    "change",
    [
        ("do: line, adds: first", "temporary: yes, do: face, adds: first"),
        ("do: line, adds: first", "outcome: given-up, do: line, adds: first"),
    ],
)
def test_what_did_not_stay_is_left_out(change: tuple[str, str]) -> None:
    text = WORK.replace(*change).replace("onto: first", "onto: spine")
    found = of(f"{text}\nfollow-up: [{{date: 2021, state: sound}}]")
    assert PASTE not in found
    assert LINEN in found


def test_what_was_taken_off_again_in_the_same_treatment_is_left_out() -> None:
    off = "\n  - {date: 2020-04-01, steps: [{removes: second}]}\n"
    found = of(WORK.rstrip() + off)
    assert LINEN not in found
    assert PASTE in found


@pytest.mark.parametrize(
    "step",
    [
        "{do: wash, treats: sheet, bath: water}",
        "{removes: old-lining, agent: methyl-cellulose}",
        "{do: make-box, adds: box, is: part, over: sheet, material: museum-board}",
    ],
)
def test_what_acts_and_goes_or_only_lies_over_holds_nothing(step: str) -> None:
    assert of(f"parts: {{sheet: {{}}}}\nsteps: [{step}]") == {}


def test_what_soaks_in_and_what_joins_can_hold() -> None:
    fixed = of("steps: [{do: fix-media, treats: sheet, adhesive: isinglass}]")
    assert ("materials", "isinglass") in fixed
    joined = of("steps: [{do: attach, joins: board 1, to: text-block, adhesive: pva}]")
    assert ("operations", "attach") in joined


def test_a_treatment_that_goes_on_is_not_counted_yet() -> None:
    assert of(WORK.replace("complete", "in-treatment")) == {}
    assert PASTE in of(WORK.replace("status: complete", ""))


def test_a_published_case_is_not_the_labs_own() -> None:
    (found,) = of(f"record: from-publication\n{WORK}")[PASTE]
    assert not found.own


@pytest.mark.parametrize(
    "said",
    [
        "links: [{case: c-1, is: retreats, because: it lifted}]",
        "history: [{case: c-1, state: failed, because: it lifted}]",
        "was: []\nlinks: [{case: c-1, is: like}]\nhistory: [{case: c-1, because: it lifted}]",
    ],
)
def test_a_later_case_that_treats_it_again_is_known_from_the_first(said: str) -> None:
    (found,) = of(WORK, said)[PASTE]
    (again,) = found.again
    assert (again.case, again.because) == ("c-2", "it lifted")
    assert not found.looks


def test_a_link_of_another_kind_is_no_retreatment() -> None:
    (found,) = of(WORK, "links: [{case: c-1, is: same-set}]")[PASTE]
    assert found.again == ()


def test_an_earlier_id_leads_to_the_case_and_a_case_does_not_follow_itself() -> None:
    (found,) = of(f"was: [old]\n{WORK}", "history: [{case: old, state: failed}]")[PASTE]
    assert [one.case for one in found.again] == ["c-2"]
    (alone,) = of(f"{WORK}\nhistory: [{{case: c-1, state: failed}}]")[PASTE]
    assert alone.again == ()


NUMBERS = st.integers(1, 400).flatmap(
    lambda looked: st.tuples(st.integers(0, looked), st.just(looked))
)


@given(NUMBERS)
def test_the_ends_of_the_interval_are_where_the_score_test_just_rejects(
    numbers: tuple[int, int],
) -> None:
    """The definition of Wilson's interval: |share - p| is z standard errors of p."""
    held, looked = numbers
    z, share = 1.959963984540054, held / looked
    for end in score_interval(held, looked):
        error = math.sqrt(end * (1 - end) / looked)
        assert math.isclose(abs(share - end), z * error, abs_tol=1e-7)


@pytest.mark.parametrize(
    ("held", "looked", "low", "high"),
    [
        (81, 263, 0.2553, 0.3662),
        (15, 148, 0.0624, 0.1605),
        (0, 20, 0.0000, 0.1611),
        (1, 29, 0.0061, 0.1718),
    ],
)
def test_the_interval_against_published_figures(
    held: int, looked: int, low: float, high: float
) -> None:
    """Newcombe, Statistics in Medicine 17 (1998) 857-872, table I, method 3 (from memory)."""
    found = score_interval(held, looked)
    assert [round(one, 4) for one in found] == [low, high]
