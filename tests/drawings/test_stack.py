"""States, seats and sights: what is seen when, and on which part."""

from __future__ import annotations

from hypothesis import given, settings

from casebook.compute.structure import Bond, How, Structure
from casebook.drawings.stack import Seat, columns, meet, seats_on, story, without
from tests.drawings.structures import HOLLOW, LEDGER, added, moments, original, over, stories, stuck

SPINE = ("spine", "board 1", "board 2")


def test_moments_that_change_nothing_on_these_parts_are_left_out():
    told = story(LEDGER, ("board 1",))
    assert [one.step for one in told.moments] == [0, 1, 2, 7, 9]


def test_a_thing_is_seen_once_for_each_way_it_sits_with_its_states():
    told = story(LEDGER, SPINE)
    label = [one.runs for one in told.sights if one.name == "title-label"]
    assert label == [((0, 0),), ((10, 10),)]
    glue = [(one.thing.partly, one.runs) for one in told.sights if one.name == "old-glue"]
    assert glue == [(False, ((0, 2),)), (True, ((3, 10),))]


def test_what_goes_and_comes_back_to_the_same_seat_is_one_sight_with_two_runs():
    bare = over(Structure(), original("sheet"))
    taped = over(bare, added("tape", 1), stuck("sheet", "tape"))
    told = story(moments(bare, taped, bare, taped), ("sheet",))
    assert [one.runs for one in told.carriers()] == [((1, 1), (3, 3))]
    assert not any(one.seen_in(2) for one in told.carriers())


def test_lying_apart_for_a_while_changes_nothing_on_a_part():
    there = over(Structure(), original("cover"), added("mend", 1), stuck("cover", "mend"))
    apart = over(there, original("cover", apart=True))
    assert len(story(moments(there, apart), ("cover",)).moments) == 1


def test_a_zone_is_on_its_own_part_and_an_undivided_layer_on_all_that_it_holds_to():
    told = story(LEDGER, SPINE)
    found = {(one.name, one.runs[0][0]): ends for one, ends in columns(told).items()}
    assert found["cloth-lining/board 1", 7] == {"board 1"}
    assert found["reback-leather", 0] == set(SPINE)


def test_a_part_that_was_put_back_is_on_one_part_only():
    told = story(LEDGER, SPINE)
    found = {one: ends for one, ends in columns(told).items() if one.name == "title-label"}
    assert set(found.values()) == {frozenset({"spine"})}


def test_the_outer_wall_of_a_tube_is_carried_by_its_folds_whichever_way_they_are_written():
    tube = HOLLOW[2].structure
    turned = Structure(
        tube.things,
        tuple(
            Bond(one.upper, one.lower, How.FOLD) if one.how is How.FOLD else one
            for one in tube.bonds
        ),
    )
    for structure in (tube, turned):
        seats = seats_on(structure, ("spine",))
        assert seats["tube/outer"].below == ("tube/inner",)
        assert seats["tube/inner"].below == ("tissue",)


def test_what_lies_on_an_inner_face_is_turned_away():
    there = over(
        Structure(), original("board 1"), added("a", 1), stuck("board 1", "a", face="inner")
    )
    assert seats_on(there, ("board 1",))["a"].turned


def test_states_that_others_have_can_be_taken_out():
    assert without(((0, 5), (8, 9)), [((2, 3),), ((9, 12),)]) == ((0, 1), (4, 5), (8, 8))
    assert meet(((0, 2),), ((2, 4),))
    assert not meet(((0, 1), (5, 6)), ((2, 4),))


def test_what_nothing_holds_any_more_is_loose():
    seat = Seat(added("a", 1), (stuck("x", "a", opened=(2,)),))
    assert seat.loose
    assert not Seat(added("a", 1), (stuck("x", "a"),)).loose
    assert Seat(added("a", 1), over=("x",)).loose


@settings(max_examples=15)
@given(stories)
def test_every_state_shows_what_is_there_then(told):
    found = story(told, SPINE)
    for number, moment in enumerate(found.moments):
        there = {one.name for one in found.sights if one.seen_in(number)}
        assert there == set(seats_on(moment.structure, SPINE))


@settings(max_examples=15)
@given(stories)
def test_things_that_lie_on_one_another_in_a_ring_come_to_an_end(told):
    found = story(told, SPINE)
    assert set(columns(found)) == set(found.sights)
