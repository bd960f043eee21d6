"""Heights: nothing lies in anything else."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from hypothesis import given, settings

from casebook.compute.structure import Bond, How, Structure
from casebook.drawings.pile import COVERED, FREE, LEAST, Scale, outwards, piles
from casebook.drawings.stack import story
from tests.drawings.structures import LEDGER, added, found, moments, original, over, stories, stuck


def _piled(*structures, part="spine", per_um=0.003, factor=1.0):
    told = story(moments(*structures), (part,))
    order = outwards(list(told.carriers()))
    held = {one: one.seat.bonds[0].how if one.seat.bonds else None for one in order}
    return {
        (one.name, one.runs[0][0]): slot
        for one, slot in piles(order, held, Scale(per_um, factor)).items()
    }


def _lined(*layers):
    names = ("spine", *(one.name for one in layers))
    bonds = (stuck(low, up) for low, up in pairwise(names))
    return over(Structure(), original("spine"), *layers, *bonds)


def test_each_layer_lies_over_what_carries_it_with_room_for_the_adhesive():
    slots = _piled(_lined(added("a", 1), added("b", 2)))
    assert slots["a", 0].low == 3.5
    assert slots["b", 0].low == slots["a", 0].high + 3.5


def test_a_measured_layer_is_drawn_to_scale_if_it_can_be_seen_and_else_as_thick_as_the_least():
    slots = _piled(
        _lined(added("board", 1, thickness_um=4000), added("tissue", 2, thickness_um=20))
    )
    board, tissue = slots["board", 0], slots["tissue", 0]
    assert (board.high - board.low, board.to_scale) == (12, True)
    assert (tissue.high - tissue.low, tissue.to_scale) == (LEAST, False)


def test_things_that_were_never_there_together_may_have_the_same_place():
    slots = _piled(*(one.structure for one in LEDGER))
    assert slots["release-lining", 4].low > slots["old-glue", 3].high
    leather = next(slot for (name, _), slot in slots.items() if name == "reback-leather")
    assert leather.low < slots["second-lining", 5].high


def test_what_came_later_lies_over_what_lies_on_the_same_part_though_nothing_joins_them():
    slots = _piled(over(_lined(added("a", 1)), added("b", 2), stuck("spine", "b")))
    assert slots["b", 0].low > slots["a", 0].high


def test_what_is_laid_while_a_thing_is_lifted_goes_under_it():
    cover = over(Structure(), original("spine"), found("cover"), stuck("spine", "cover"))
    lifted = over(cover, without=("cover",))
    lifted = over(lifted, found("cover"), stuck("spine", "cover", opened=(1,)))
    under = over(lifted, added("strip", 2), stuck("spine", "strip"))
    slots = _piled(cover, lifted, under)
    assert slots["cover", 1].low > slots["strip", 2].high
    assert slots["cover", 0].low == 3.5


def test_a_cover_that_only_covers_lies_over_what_is_stuck_to_the_same_part():
    lined = over(Structure(covers=(("spine", "cover"),)), original("spine"), found("cover"))
    slots = _piled(over(lined, found("mull"), stuck("spine", "mull")))
    assert slots["cover", 0].low == slots["mull", 0].high + COVERED


def test_parts_put_back_and_pieces_share_a_height_side_by_side():
    bands = [original("head"), original("tail")]
    slots = _piled(
        over(_lined(added("cloth", 1)), *bands, *(stuck("cloth", b.name) for b in bands))
    )
    head, tail = slots["head", 0], slots["tail", 0]
    assert head.low == tail.low
    assert {(head.place, head.of), (tail.place, tail.of)} == {(0, 2), (1, 2)}


def test_the_walls_of_a_tube_have_air_between_them():
    inner = added("tube/inner", 1, of="tube", wall="inner")
    outer = added("tube/outer", 1, of="tube", wall="outer")
    fold = Bond("tube/inner", "tube/outer", How.FOLD)
    slots = _piled(over(_lined(inner), outer, fold))
    assert slots["tube/outer", 0].gap == 9


def test_a_zone_that_is_not_fixed_stands_off_its_part():
    told = story(LEDGER[6:7], ("spine", "board 1"))
    flap = next(one for one in told.sights if one.name == "cloth-lining/board 1")
    assert piles([flap], {flap: None}, Scale(0.003))[flap].low == FREE


def test_a_pile_that_is_too_high_is_drawn_thinner_and_says_that_nothing_is_to_scale():
    thick = added("a", 1, thickness_um=4000)
    whole, half = _piled(_lined(thick))["a", 0], _piled(_lined(thick), factor=0.5)["a", 0]
    assert half.high == whole.high / 2
    assert not half.to_scale


@settings(max_examples=15)
@given(stories)
def test_nothing_lies_in_anything_else_and_nothing_is_left_out(told):
    found = story(told, ("spine", "board 1"))
    order = outwards(list(found.carriers()))
    assert sorted(order, key=id) == sorted(found.carriers(), key=id)
    slots = piles(order, dict.fromkeys(order), Scale(0.003))
    for one in order:
        for other in order:
            beside = slots[one].of > 1 and slots[other].of > 1
            if one is not other and one.meets(other) and not beside:
                small = [replace(slots[two]) for two in (one, other)]
                apart = small[0].high <= small[1].low or small[1].high <= small[0].low
                assert apart or _both_small(one, other)


def _both_small(one, other):
    return all(two.thing.part or two.thing.partly or two.thing.patches for two in (one, other))
