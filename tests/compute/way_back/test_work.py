"""Taking apart, under way: one opening at a time, what hides first, and why it stops."""

from __future__ import annotations

from casebook.compute.structure import Structure
from casebook.compute.way_back.classes import Class, Reason
from casebook.compute.way_back.graph import Graph, Node
from casebook.compute.way_back.options import Options
from casebook.compute.way_back.work import Work
from tests.compute.way_back.built import (
    LEXICON,
    PASTE,
    VAE,
    evidence,
    grown,
    layer,
    part,
    structure,
    stuck,
)
from tests.compute.way_back.examples import PULLED

SPINE = frozenset({Node("spine")})


def work(built: Structure, **more) -> Work:
    graph = Graph(built)
    return Work(Options(graph, evidence(), LEXICON), graph.nodes, **more)


def test_what_comes_off_is_no_longer_there():
    at = work(PULLED)
    assert at.open(SPINE, Node("linen-lining"))
    assert at.there == {
        Node("spine"),
        Node("text-block"),
        Node("release-tissue", "lower"),
    }
    assert at.pieces == [frozenset({Node("linen-lining"), Node("release-tissue", "upper")})]


def test_what_cannot_be_opened_stays_and_says_why():
    at = work(structure(part("spine"), layer("lining"), stuck("spine", "lining")))
    assert not at.open(SPINE, Node("lining"))
    assert at.openings == []
    stop = at.stops["lining"]
    assert stop.reasons == (Reason.UNNAMED,)
    assert stop.why == "between the spine and the lining: how it holds is not named"


def test_what_only_wants_to_be_come_to_is_told_from_what_has_no_hope():
    sealed = structure(
        part("spine"),
        layer("tissue", "kozo-paper"),
        layer("cloth", "linen"),
        stuck("spine", "tissue", PASTE),
        stuck("tissue", "cloth", VAE),
    )
    at = work(sealed)
    assert not at.open(SPINE, Node("tissue"))
    assert at.stops["tissue"].reasons == (Reason.OUT_OF_REACH,)
    assert at.hopes(SPINE, Node("tissue"))
    unnamed = structure(part("spine"), layer("tissue"), stuck("spine", "tissue"))
    assert not work(unnamed).hopes(SPINE, Node("tissue"))


def test_what_hides_a_place_is_lifted_first():
    built = structure(
        part("spine"),
        layer("lining", "linen"),
        layer("flap", "linen"),
        part("board"),
        stuck("spine", "lining", PASTE),
        stuck("board", "flap", PASTE),
        hides=[("lining", "flap")],
    )
    at = work(built)
    assert at.open(SPINE, Node("lining"))
    (one,) = at.openings
    assert (one.takes, one.hiding, one.together) == ("flap", "lining", ("flap",))


def test_what_lies_on_the_cover_of_its_own_carrier_is_not_under_that():
    built = structure(
        part("sheet"),
        layer("mount", "museum-board"),
        layer("hinges", "kozo-paper"),
        stuck("sheet", "hinges", PASTE),
        covers=[("sheet", "mount"), ("mount", "hinges")],
    )
    at = work(built)
    assert at.open(frozenset({Node("sheet")}), Node("hinges"))
    assert at.openings[0].takes == "hinges"


def test_nothing_is_lifted_for_what_cannot_come_off_anyway():
    built = structure(
        part("sheet"),
        layer("mount", "museum-board"),
        layer("lining", "linen"),
        stuck("sheet", "lining"),
        covers=[("lining", "mount")],
    )
    at = work(built)
    assert not at.open(frozenset({Node("sheet")}), Node("lining"))
    assert at.openings == []


def test_two_that_hide_one_another_do_not_go_on_for_ever():
    built = structure(
        part("spine"),
        layer("a", "linen"),
        layer("b", "linen"),
        stuck("spine", "a", PASTE),
        stuck("spine", "b", PASTE),
        hides=[("a", "b"), ("b", "a")],
    )
    at = work(built)
    assert at.open(SPINE, Node("a"))


def test_originals_that_are_one_are_never_parted():
    built = structure(
        part("spine"),
        part("text-block"),
        grown("text-block", "spine"),
        layer("lining", "linen"),
        stuck("spine", "lining", PASTE),
        stuck("text-block", "lining", PASTE),
    )
    at = work(built)
    assert at.open(SPINE, Node("lining"))
    (one,) = at.openings
    assert one.how is Class.MOISTURE
    assert {place.lower for place in one.opened} == {"spine", "text-block"}


def test_a_part_that_is_freed_leaves_what_was_made_with_it_and_says_so():
    built = structure(
        part("board"),
        part("board/sides"),
        grown("board", "board/sides"),
        layer("paper"),
        stuck("paper", "board/sides", PASTE, reused=True),
    )
    at = work(built, parting=True)
    assert at.open(frozenset({Node("paper")}), Node("board/sides"))
    assert "It is still held to the board as it was made: leave that." in at.openings[0].mind
