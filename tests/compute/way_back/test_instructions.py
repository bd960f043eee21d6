"""The way back as data: what an opening and an answer say of themselves."""

from __future__ import annotations

from casebook.compute.way_back.classes import Class
from casebook.compute.way_back.instructions import (
    Answer,
    Opened,
    Opening,
    Place,
    Question,
    Rest,
    Stop,
)

SLIT = Opened("cloth/a", "cloth/b", Place.JOINT, Class.CUT, agent="slit", source="one")
WET = Opened("spine", "cloth/a", Place.BOND, Class.MOISTURE, agent="water", source="two")
AGAIN = Opened("board", "cloth/a", Place.BOND, Class.MOISTURE, agent="water", source="two")


def opening(*opened: Opened, **more) -> Opening:
    return Opening(1, "cloth/a", opened, Class.MOISTURE, ("cloth/a",), **more)


def test_each_agent_and_each_source_is_named_once():
    one = opening(SLIT, WET, AGAIN)
    assert one.agents == ("slit", "water")
    assert one.sources == ("one", "two")


def test_what_can_be_cleared_is_told_from_what_stays():
    soft = Rest("soft paste", "spine", "water")
    skin = Rest("rubbery skin", "board", for_good=True)
    assert opening(WET, stays=(soft, skin)).clear == (soft,)


def test_an_answer_that_stops_is_not_whole():
    assert Answer(Question.BARE, "spine", (opening(WET),)).whole
    assert not Answer(Question.BARE, "spine", stops=(Stop("cloth", "unnamed"),)).whole


def test_places_are_in_the_order_in_which_one_opening_does_them():
    assert list(Place) == [Place.JOINT, Place.FOLD, Place.HELD, Place.BOND, Place.SPLIT]
