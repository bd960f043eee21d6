"""The words beside a drawing: the list from the original outwards."""

from __future__ import annotations

from dataclasses import replace

from casebook.compute.structure import Bond, How, Since
from casebook.drawings.facts import Facts
from casebook.drawings.stack import Seat, Sight, story
from casebook.drawings.words import held, label, listed, material, plain, row, sentence, the
from tests.drawings.structures import LEDGER, LEDGER_FACTS, LEXICON, added, found, original, stuck

FACTS = Facts(lexicon=LEXICON)
SPINE = ("spine", "board 1", "board 2")


def _row(name: str, state: int) -> str:
    told = story(LEDGER, SPINE)
    sights = [one for one in told.sights if one.layer == name and one.seen_in(state)]
    return row(sights, told, LEDGER_FACTS)


def test_a_lining_is_told_with_weight_adhesive_and_what_it_lies_on():
    assert _row("release-lining", 10) == (
        "release lining (added in step 4): tengujo, 5 g/m²; stuck with wheat starch paste, "
        "on spine; made to split in its own thickness"
    )


def test_zones_are_told_together():
    assert _row("cloth-lining", 10).endswith(
        "stuck with polyvinyl acetate, on second lining, board 1 and board 2; "
        "width 75 mm on spine, 40 mm on board 1 and 40 mm on board 2"
    )


def test_what_hangs_free_is_said_to():
    assert "not fixed yet, free over board 1 and board 2" in _row("cloth-lining", 6)


def test_what_is_partly_gone_says_where_it_is_still():
    assert "only in part; in the folds of sections 20 to 26" in _row("old-glue", 10)


def test_a_part_that_was_put_back_is_called_so():
    assert _row("title-label", 10).startswith("title label (original, put back)")
    assert _row("title-label", 0).startswith("title label (original)")


def test_a_glue_that_holds_by_itself_is_not_stuck_with_itself():
    glue = found("glue", "animal-glue")
    seat = Seat(glue, (stuck("spine", "glue", "animal-glue"),))
    sight = Sight(seat, ((0, 0),))
    assert row([sight], story(LEDGER, SPINE), FACTS).endswith("holding by itself, on spine")


def test_a_consolidant_soaks_in_and_is_not_named_twice():
    paste = added("wheat-starch-paste in corner", 3, "wheat-starch-paste")
    sight = Sight(Seat(paste, (Bond("corner", paste.name, How.SOAKED),)), ((0, 0),))
    assert row([sight], story(LEDGER, SPINE), FACTS) == (
        "wheat starch paste in corner (added in step 3): soaked into corner"
    )


def test_guesses_are_said_to_be_guesses_and_mixtures_to_be_mixtures():
    mixed = stuck("a", "b", "animal-glue", "wheat-starch-paste")
    assert held(mixed, FACTS) == "stuck with animal glue and wheat starch paste"
    guessed = replace(mixed, guessed=True)
    assert held(guessed, FACTS) == "stuck with perhaps animal glue or wheat starch paste"
    assert held(stuck("a", "b"), FACTS) == "stuck with an adhesive that was not named"


def test_every_way_of_holding_has_words():
    for how in How:
        assert held(Bond("a", "b", how, held=("sewn",), cuts=("c/d",)), FACTS)
    assert held(Bond("a", "b", How.HELD, held=("sewn",), cuts=("c",)), FACTS) == "sewn through c"


def test_what_was_ruled_out_is_said():
    glue = found("glue", "animal-glue", ruled_out=("bitumen",))
    assert material(glue, "glue", FACTS) == "animal glue, not bitumen"
    assert material(found("x", "calf", "goat"), "x", FACTS) == "perhaps calf or goat"


def test_a_label_is_short():
    sight = Sight(Seat(added("a" * 60, 1, "linen")), ((0, 0),))
    assert len(label(sight, FACTS)) == 44
    assert label(Sight(Seat(original("spine")), ((0, 0),)), FACTS) == "spine"


def test_measures_are_said_where_there_are_any():
    assert _row("board 1", 0) == "board 1 (original): pasteboard; thickness 3.5 mm"
    assert _row("spine", 0) == "spine (original): width 68 mm; rise 14 mm"
    assert _row("second-lining", 5).endswith("on release lining; width 74 mm")


def test_small_words():
    assert (the("spine"), the("board 1")) == ("the spine", "board 1")
    assert (the("board 1/corner"), plain("b-c/d")) == ("the corner of board 1", "d of b c")
    assert plain("tube/inner") == "inner wall of tube"
    assert plain("starch-paste in board 1/corner") == "starch paste in corner of board 1"
    assert (listed(("a",)), listed(("a", "b", "c")), listed(())) == ("a", "a, b and c", "")
    assert (sentence("on it"), sentence("")) == ("On it.", "")


def test_a_thing_without_a_step_is_added_all_the_same():
    thing = replace(added("x", 0), since=Since.ADDED)
    assert row([Sight(Seat(thing), ((0, 0),))], story(LEDGER, SPINE), FACTS) == "x (added)"
