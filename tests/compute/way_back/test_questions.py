"""The seven demands on the way back, each with tests of its own, and what holds for any structure."""

from __future__ import annotations

import random
from dataclasses import replace

from hypothesis import HealthCheck, given, settings

from casebook.compute.evidence import Failed, Result, evidence
from casebook.compute.structure import Bond, How, Since, Structure
from casebook.compute.way_back import way_back
from casebook.compute.way_back.classes import Class, openable
from casebook.compute.way_back.instructions import Answer, Opening, Place, Question, WayBack
from casebook.model.vocabulary import Opener
from tests.compute.way_back.built import (
    GLUE,
    LEXICON,
    PASTE,
    PVA,
    VAE,
    WATER,
    back,
    bears,
    fold,
    grown,
    held,
    layer,
    part,
    soaked,
    structure,
    stuck,
    tried,
)
from tests.compute.way_back.examples import (
    BOARDS,
    BOOK,
    EXAMPLES,
    GUARDED,
    HOLLOW,
    LEATHER_DARKENS,
    LINED,
    LINED_MAP,
    PULLED,
    REBACK,
)
from tests.compute.way_back.random_structures import EVIDENCE, sound, structures
from tests.compute.written import case


def places(opening: Opening) -> list[tuple[str, str, Class]]:
    return [(one.lower, one.upper, one.how) for one in opening.opened]


def whys(answer: Answer) -> str:
    return "; ".join(one.why for one in answer.stops)


# 1. Bare it and free it are two questions.


def test_demand_1_baring_takes_off_all_that_was_put_on_until_the_part_is_bare():
    answer = back(PULLED).bare["spine"]
    assert answer.whole
    assert [one.together for one in answer.openings] == [
        ("linen-lining", "release-tissue"),
        ("release-tissue",),
    ]


def test_demand_1_a_put_back_part_carries_nothing_and_is_freed_from_what_it_lies_on():
    found = back(REBACK)
    assert found.bare["old-spine"].openings == ()
    (one,) = found.free["old-spine"].openings
    assert places(one) == [("reback/spine", "old-spine", Class.MOISTURE)]


def test_demand_1_a_board_is_bared_of_the_lining_and_freed_against_it():
    found = back(LINED)
    (bare,) = found.bare["board 1"].openings
    assert bare.together == ("linen-lining/board 1",)
    (free,) = found.free["board 1"].openings
    assert free.together == ("board 1", "linen-lining/board 1")


def test_demand_1_it_is_the_same_whether_the_lining_was_laid_on_the_board_or_the_board_on_it():
    turned = Structure(
        LINED.things,
        tuple(
            Bond(one.upper, one.lower, one.how, one.adhesives, since=one.since)
            if one.lower.startswith("board")
            else one
            for one in LINED.bonds
        ),
    )
    assert back(turned) == back(LINED)


# 2. A pasted tissue, and the reach of moisture.


def test_demand_2_pulling_the_cloth_splits_the_tissue_and_all_above_comes_off_in_one_piece():
    first, _ = back(PULLED).bare["spine"].openings
    assert [one.place for one in first.opened] == [Place.SPLIT]
    assert first.together == ("linen-lining", "release-tissue")
    (rest,) = first.stays
    assert rest.what == "half of the release tissue"
    assert "poultice" in rest.with_


def test_demand_2_only_then_is_moisture_proposed_for_the_paste():
    _, second = back(PULLED).bare["spine"].openings
    assert places(second) == [("spine", "release-tissue", Class.MOISTURE)]
    assert second.half


def test_demand_2_moisture_does_not_pass_a_film_of_dispersion():
    built = structure(
        *BOOK,
        layer("paper-lining", "kozo-paper"),
        layer("cloth", "linen"),
        stuck("spine", "paper-lining", PASTE),
        stuck("paper-lining", "cloth", VAE),
    )
    first, second = back(built).take_off["paper-lining"].openings
    assert places(first) == [("paper-lining", "cloth", Class.MOISTURE)]
    assert places(second) == [("spine", "paper-lining", Class.MOISTURE)]


def test_demand_2_where_the_film_is_paste_moisture_goes_through_it_all():
    built = structure(
        *BOOK,
        layer("paper-lining", "kozo-paper"),
        layer("cloth", "linen"),
        stuck("spine", "paper-lining", PASTE),
        stuck("paper-lining", "cloth", PASTE),
    )
    (one,) = back(built).take_off["paper-lining"].openings
    assert one.opened[0].through == ("cloth", "paper-lining")
    assert one.together == ("cloth", "paper-lining")


def test_demand_2_a_tissue_on_which_nothing_lies_is_not_pulled_apart():
    built = structure(
        *BOOK,
        layer("tissue", "japanese-tissue", splits=True),
        stuck("spine", "tissue", PASTE),
    )
    (one,) = back(built).bare["spine"].openings
    assert one.how is Class.MOISTURE
    assert not one.half


# 3. Zones, joints, tubes and folds.


def test_demand_3_freeing_a_board_slits_the_joint_and_never_splits_the_spines_tissue():
    for board in ("board 1", "board 2"):
        (one,) = back(LINED).free[board].openings
        assert [(place.place, place.how) for place in one.opened] == [(Place.JOINT, Class.CUT)]
        assert "release-tissue" not in one.together


def test_demand_3_a_tube_opens_at_its_folds():
    first = back(HOLLOW, *bears("spine")).bare["spine"].openings[0]
    assert [one.place for one in first.opened] == [Place.FOLD]
    assert first.together == ("second-tissue", "tube/outer")


def test_demand_3_the_two_bonds_of_a_tube_are_separate():
    built = structure(
        *BOOK,
        part("cover", "calf"),
        layer("tube/inner", "kraft-paper"),
        layer("tube/outer", "kraft-paper"),
        stuck("spine", "tube/inner", PASTE),
        fold("tube"),
        stuck("tube/outer", "cover", GLUE, reused=True),
    )
    found = back(built)
    (free,) = found.free["cover"].openings
    assert places(free) == [("tube/outer", "cover", Class.MOISTURE)]
    first, second, *_ = found.bare["spine"].openings
    assert first.riders == ("cover",)
    assert places(second)[0][:2] == ("spine", "tube/inner")


# 4. No original splits, and riders are named.


def test_demand_4_an_original_tissue_never_splits():
    old = layer("leaf", "japanese-tissue", splits=True, since=Since.ORIGINAL)
    built = structure(
        part("board"),
        old,
        stuck("board", "leaf", PASTE, since=Since.ORIGINAL),
        layer("cloth", "linen"),
        stuck("leaf", "cloth", PASTE),
    )
    (one,) = back(built).bare["leaf"].openings
    assert one.how is Class.MOISTURE


def test_demand_4_no_part_leaves_its_own_leather():
    answer = back(REBACK).free["title-label"]
    (one,) = answer.openings
    assert places(one) == [("reback/spine", "old-spine", Class.MOISTURE)]
    assert one.together == ("old-spine", "title-label")


def test_demand_4_originals_that_ride_are_named_and_freed_in_their_turn():
    openings = back(REBACK, *bears("spine")).bare["spine"].openings
    assert openings[0].riders == ("old-spine", "title-label")
    last = openings[-1]
    assert (last.frees, last.in_piece) == ("old-spine", 1)
    assert last.together == ("old-spine", "title-label")


def test_demand_4_where_only_damage_would_do_the_way_stops():
    built = structure(
        part("board 1"),
        part("text-block"),
        grown("text-block", "board 1"),
        layer("cloth", "linen"),
        stuck("board 1", "cloth", PASTE),
        Bond("text-block", "cloth", How.GROWN, since=Since.ADDED),
    )
    answer = back(built).bare["board 1"]
    assert answer.openings == ()
    assert "the two are one piece" in whys(answer)


def test_demand_4_leather_pasted_down_over_a_lining_is_folded_back_and_not_cut():
    built = structure(
        part("board 1", "pasteboard"),
        part("board 1/sides", "marbled-paper"),
        grown("board 1", "board 1/sides"),
        layer("cloth", "linen"),
        stuck("board 1", "cloth", PASTE),
        stuck("cloth", "board 1/sides", PASTE, reused=True),
    )
    (one,) = back(built, *bears("board 1")).bare["board 1"].openings
    assert one.together == ("cloth",)
    assert "Only loosen the sides of board 1 there, and fold it back: it stays." in one.mind


# 5. Tests, failures and bonds that nobody named.


def moist(answer: Answer) -> list[Opening]:
    return [one for one in answer.openings if any(Opener.MOISTURE in o.kinds for o in one.opened)]


def test_demand_5_what_bleeds_is_never_proposed_there():
    answer = back(LINED_MAP, tried("sheet", Result.HARM, of="red line")).bare["sheet"]
    assert moist(answer) == []
    assert "it harms red line on the sheet" in whys(answer)


def test_demand_5_nor_does_it_go_through_what_it_harms():
    found = back(REBACK, *bears("spine"), LEATHER_DARKENS)
    assert moist(found.free["old-spine"]) == []
    for answer in (*found.bare.values(), *found.free.values(), *found.take_off.values()):
        assert not any("old-spine" in o.through for one in answer.openings for o in one.opened)


def test_demand_5_with_no_test_on_the_part_it_says_test_first():
    (one,) = back(GUARDED).bare["section"].openings[1:]
    assert one.opened[0].test_first == ("section",)
    assert any(text.startswith("Test first") for text in one.mind)
    (one,) = back(GUARDED, *bears("section")).bare["section"].openings[1:]
    assert one.opened[0].test_first == ()


def test_demand_5_an_original_that_moisture_goes_through_is_to_be_tested_too():
    (one,) = back(REBACK).free["old-spine"].openings
    assert set(one.opened[0].test_first) == {"old-spine", "title-label"}


def test_demand_5_an_agent_that_failed_here_is_never_proposed_here():
    failed = Failed("guard", "water", WATER)
    answer = back(GUARDED, failed, *bears("section")).bare["section"]
    assert [one.agents for one in answer.openings][1:] == [("poultice",)]


def test_demand_5_an_unnamed_bond_gets_no_agent_and_the_way_goes_round_it():
    built = structure(
        *BOOK,
        layer("lining", "kozo-paper"),
        layer("cover", "linen"),
        stuck("spine", "lining", PASTE),
        stuck("lining", "cover"),
    )
    answer = back(built, *bears("spine")).bare["spine"]
    (one,) = answer.openings
    assert places(one) == [("spine", "lining", Class.MOISTURE)]
    assert one.together == ("cover", "lining")
    assert any("is not named" in text for text in one.mind)


def test_demand_5_where_it_cannot_go_round_it_stops_and_says_why():
    built = structure(*BOOK, layer("lining", "linen"), stuck("spine", "lining"))
    answer = back(built).bare["spine"]
    assert answer.openings == ()
    assert "how it holds is not named" in whys(answer)


def test_demand_5_a_part_beside_that_bleeds_is_named():
    built = structure(
        *BOOK,
        part("endband", "silk"),
        layer("lining", "kozo-paper"),
        stuck("spine", "lining", PASTE),
        stuck("lining", "endband", PASTE, reused=True),
    )
    harm = tried("endband", Result.HARM, of="red silk")
    answer = back(built, harm, *bears("spine")).take_off["lining"]
    assert (
        "Keep it from red silk on the endband: water harms it."
        in " ".join(text for one in answer.openings for text in one.mind)
        or answer.stops
    )


# 6. What hides, what stays, and what a thread does not free.

HIDDEN = structure(
    part("board 1", "pasteboard"),
    part("pastedown", "laid-paper"),
    layer("hinge", "linen"),
    stuck("board 1", "hinge", PASTE),
    stuck("board 1", "pastedown", PASTE, reused=True),
    hides=[("hinge", "pastedown")],
)


def test_demand_6_what_hides_comes_first_though_nothing_bonds_the_two():
    first, second = back(HIDDEN).bare["board 1"].openings[:2]
    assert (first.together, first.hiding) == (("pastedown",), "hinge")
    assert (second.together, second.hiding) == (("hinge",), "")


def test_demand_6_what_covers_loosely_is_lifted_off_first():
    built = structure(
        *BOOK,
        layer("lining", "linen"),
        layer("wrapper", "polyester-film"),
        stuck("spine", "lining", PASTE),
        covers=[("lining", "wrapper")],
    )
    first, second = back(built).take_off["lining"].openings
    assert (first.takes, first.opened) == ("wrapper", ())
    assert second.takes == "lining"


def test_demand_6_what_is_soaked_in_stays():
    built = structure(part("spine"), layer("size", "gelatine"), soaked("spine", "size"))
    found = back(built)
    for answer in (found.bare["spine"], found.take_off["size"]):
        (rest,) = answer.stays
        assert (rest.what, rest.on, rest.for_good) == ("size", "spine", True)


def test_demand_6_cut_originals_stay_cut():
    first = back(GUARDED).bare["section"].openings[0]
    assert first.cannot == ("what was cut or pierced in the section and the guard stays so",)


def test_demand_6_dispersion_left_in_silk_or_on_board_stays():
    built = structure(
        part("endband", "silk"),
        layer("lining", "linen"),
        part("spine"),
        stuck("spine", "lining", PASTE),
        stuck("lining", "endband", PVA, reused=True),
    )
    (one,) = back(built).free["endband"].openings
    assert one.cannot == ("polyvinyl acetate that has gone into the endband stays in it",)
    (one,) = back(LINED).bare["board 1"].openings
    assert "polyvinyl acetate that has gone into board 1 stays in it" in one.cannot
    assert [(rest.on, rest.for_good) for rest in one.stays] == [("board 1", True)]


def test_demand_6_cutting_a_thread_alone_does_not_free_what_is_also_stuck():
    built = structure(
        part("spine"),
        layer("guard", "kozo-paper"),
        held("spine", "guard", "sewn"),
        stuck("spine", "guard", PASTE),
    )
    (one,) = back(built).bare["spine"].openings
    assert [place.how for place in one.opened] == [Class.CUT, Class.MOISTURE]
    unnamed = structure(
        part("spine"),
        layer("guard", "kozo-paper"),
        held("spine", "guard", "sewn"),
        stuck("spine", "guard"),
    )
    answer = back(unnamed).bare["spine"]
    assert answer.openings == ()
    assert not answer.whole


# 7. Another admissible order gives the same answer.


def shuffled(built: Structure, seed: int) -> Structure:
    """The same record with its steps in another order: other numbers, other places."""
    rng = random.Random(seed)
    bonds, things = list(built.bonds), list(built.things.values())
    rng.shuffle(bonds)
    rng.shuffle(things)
    numbered = [replace(one, step=rng.randrange(90)) for one in bonds]
    return Structure(
        {one.name: one for one in things}, tuple(numbered), built.covers[::-1], built.hides[::-1]
    )


def test_demand_7_names_decide_and_not_the_order_of_steps():
    for built, tests in EXAMPLES.values():
        first = back(built, *tests)
        for seed in range(10):
            other = back(shuffled(built, seed), *tests[::-1])
            assert other == first


@given(structures(), EVIDENCE)
@settings(max_examples=60, suppress_health_check=[HealthCheck.too_slow])
def test_demand_7_whatever_the_structure(built, found):
    first = way_back(built, found, LEXICON)
    assert way_back(shuffled(built, 3), found, LEXICON) == first


# What holds whatever the structure.


def every(found: WayBack) -> list[Answer]:
    return [*found.bare.values(), *found.free.values(), *found.take_off.values()]


@given(structures(), EVIDENCE)
@settings(max_examples=60, suppress_health_check=[HealthCheck.too_slow])
def test_no_structure_however_unsound_makes_it_raise(built, found):
    for answer in every(way_back(built, found, LEXICON)):
        assert all(openable(one.how) for one in answer.openings)
        assert [one.number for one in answer.openings] == list(range(1, len(answer.openings) + 1))
        assert all(one.together for one in answer.openings)
        assert all(stop.why for stop in answer.stops)


@given(sound(), EVIDENCE)
@settings(max_examples=60, suppress_health_check=[HealthCheck.too_slow])
def test_what_is_said_to_come_off_together_does_and_nothing_else(built, found):
    for part_name, answer in way_back(built, found, LEXICON).bare.items():
        off: set[str] = set()
        for one in answer.openings:
            if one.in_piece:
                continue
            opened = {frozenset((o.lower, o.upper)) for o in one.opened}
            splits = {o.lower for o in one.opened if o.place is Place.SPLIT}
            assert part_name not in one.together
            for bond in built.bonds:
                ends = {bond.lower, bond.upper}
                inside = ends & set(one.together)
                outside = ends - set(one.together) - off
                if inside and outside and not inside <= splits:
                    assert frozenset(ends) in opened
            off |= set(one.together) - splits


@given(sound(), EVIDENCE)
@settings(max_examples=60, suppress_health_check=[HealthCheck.too_slow])
def test_a_part_is_bare_or_the_way_says_where_it_stops(built, found):
    for name, answer in way_back(built, found, LEXICON).bare.items():
        on_it = {one.upper for one in built.bonds if one.lower == name}
        ours = {one for one in on_it if built.things[one].since is not Since.ORIGINAL}
        off = {thing for one in answer.openings for thing in one.together}
        assert answer.question is Question.BARE
        assert ours <= off or answer.stops


@given(sound(), EVIDENCE)
@settings(max_examples=60, suppress_health_check=[HealthCheck.too_slow])
def test_nothing_against_a_test_and_nothing_that_failed_is_ever_proposed(built, found):
    for answer in every(way_back(built, found, LEXICON)):
        for one in (place for opening in answer.openings for place in opening.opened):
            names = [one.lower, one.upper, *one.through]
            if one.place is Place.BOND:
                assert found.harm(names, one.kinds) == ()


def test_what_is_apart_from_the_object_is_not_asked_after():
    lost = replace(layer("old-lining", "linen"), apart=True)
    assert back(structure(part("spine"), lost)) == back(structure(part("spine")))


def test_nothing_at_all_has_no_way_back():
    assert back(structure()) == WayBack({}, {}, {})
    assert way_back(structure(), evidence(case("title: none"), LEXICON), LEXICON) == WayBack()


def test_a_map_is_bared_lining_first():
    first, second = back(LINED_MAP, *bears("sheet")).bare["sheet"].openings
    assert (first.together, second.together) == (("sheet-lining",), ("mends",))


def test_boards_and_text_block_without_anything_new_are_left_alone():
    for answer in every(back(structure(*BOOK, *BOARDS))):
        assert (answer.openings, answer.stops, answer.stays) == ((), (), ())
