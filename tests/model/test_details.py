"""What a step says in detail: short forms for the common thing, long forms for the rare one."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook.model import details
from casebook.model.base import Gap, Unknowing
from casebook.model.details import (
    Against,
    Bath,
    Drying,
    Fate,
    Hand,
    Leaves,
    Outcome,
    Piece,
    Scope,
    Strength,
    Trial,
    Way,
    WentTo,
)
from casebook.model.marks import Swatch
from casebook.model.materials import Material
from casebook.model.proposal import Choice
from casebook.model.treatment import Step
from casebook.values.colours import Colour
from casebook.values.durations import Duration
from casebook.values.quantities import Acidity, Count, Length
from tests.model.reads import holds, reads


def test_every_field_is_documented_and_no_key_is_a_trap():
    holds(details)


@pytest.mark.parametrize("fate", list(Fate))
def test_a_fate_in_a_word_is_where_it_went(fate: Fate):
    assert reads(WentTo, fate.value) == WentTo(is_=fate)


def test_a_fate_may_say_the_place_and_the_case():
    found = reads(WentTo, "{is: own-case, where: a box of its own, case: 2025-032}")
    assert found == WentTo(is_=Fate.OWN_CASE, where="a box of its own", case="2025-032")


@pytest.mark.parametrize("strength", list(Strength))
def test_the_strength_against_the_original_in_a_word(strength: Strength):
    assert reads(Against, strength.value) == Against(is_=strength)


def test_initials_alone_are_a_hand_and_a_hand_may_have_minutes_of_its_own():
    assert reads(Hand, "AM") == Hand(who="AM")
    assert reads(Hand, "{who: AM, time: 20 min}") == Hand(who="AM", time=Duration.parse("20 min"))


def test_several_hands_may_be_named_in_a_step_and_one_of_them_be_unknown():
    found = reads(Step, "{do: wash, hands: [AM, unknown]}")
    assert found.hands == (Hand(who="AM"), Hand(who=Gap(Unknowing.UNKNOWN)))


@pytest.mark.parametrize(
    ("text", "keys"),
    [
        ("overnight", {"for": "overnight"}),
        ("2 h under blotter", {"for": "2 h", "under": ["blotter"]}),
        ("1 day between felt + board", {"for": "1 day", "under": ["felt", "board"]}),
        ("3 days in the press", {"for": "3 days", "under": ["the press"]}),
        ("under weight", {"under": ["weight"]}),
    ],
)
def test_a_drying_says_how_long_and_under_what(text: str, keys: dict):
    assert Drying.from_text(text) == keys


TIMES = st.sampled_from(["overnight", "2 h", "1 day", "not recorded", "about 3 h"])
THINGS = st.lists(st.sampled_from(["blotter", "weight", "release-sheet"]), min_size=1, max_size=3)


@given(TIMES, st.sampled_from(["under", "between", "in"]), THINGS)
def test_no_time_and_no_thing_of_a_drying_is_lost(time: str, word: str, things: list[str]):
    keys = Drying.from_text(f"{time} {word} {' + '.join(things)}")
    assert keys == {"for": time, "under": things}


def test_dryings_follow_one_another_in_a_list():
    step = reads(Step, "{do: press, dries: [2 h under blotter, overnight]}")
    assert step.dries == (
        Drying(for_=Duration.parse("2 h"), under=("blotter",)),
        Drying(for_=Duration.parse("overnight")),
    )


def test_a_scope_in_words_is_a_place_and_two_counts_are_n_of_m():
    assert reads(Scope, "where needed") == Scope(where="where needed")
    assert reads(Scope, "40 of 52") == Scope(done=Count.parse("40"), of=Count.parse("52"))
    assert Scope.from_text("edges of 3 leaves") == {"where": "edges of 3 leaves"}


def test_pieces_have_number_and_size():
    found = reads(Scope, "{pieces: [{count: 3, height: 20 mm, width: 10 mm}]}")
    piece = Piece(count=Count.parse("3"), height=Length.parse("20 mm"), width=Length.parse("10 mm"))
    assert found.pieces == (piece,)


def test_a_liquid_alone_is_a_bath():
    assert reads(Bath, "water") == Bath(liquid=Material(is_="water"))
    assert reads(Bath, "{liquid: water, ph: 8}").ph == Acidity.parse("8")


def test_a_layer_alone_is_what_is_left():
    assert reads(Leaves, "old-glue") == Leaves(layer="old-glue")


def test_a_trial_may_keep_the_colour_that_it_came_out_in():
    found = reads(Trial, "{what: toned paper, colour: L 52 a 3 b 10, outcome: rejected}")
    assert found.colour == Swatch(colour=Colour.parse("L 52 a 3 b 10"))
    assert found.outcome is Choice.REJECTED


def test_a_way_in_a_word_is_its_share():
    assert reads(Way, "12 of 40").scope == Scope(done=Count.parse("12"), of=Count.parse("40"))


def test_a_step_may_be_done_in_part_or_given_up():
    assert reads(Step, "{do: wash, outcome: given-up}").outcome is Outcome.GIVEN_UP
