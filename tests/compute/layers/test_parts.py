"""Original parts, and what is of one thing with what."""

from __future__ import annotations

from casebook.compute.layers.names import Names
from casebook.compute.layers.parts import parents, parts
from casebook.compute.structure import Since
from tests.compute.layers.told import LEXICON
from tests.compute.written import case


def kin(text: str) -> dict[str, str]:
    names = Names(case(text), LEXICON)
    return dict(parents(names, parts(names)))


def test_every_part_that_is_declared_or_named_is_there() -> None:
    text = """
parts: {spine: {}, strap: {of: board 2, parts: {clasp: {}}}}
as-found: [{id: twine, joins: [board 1, text-block]}]
tests: [{id: t, part: endband head}]
steps: [{treats: sheet/verso}, {adds: cloth, onto: spine, hides: watermark}]
"""
    found = parts(Names(case(text), LEXICON))
    assert sorted(found) == [
        *("board 1", "board 2", "endband head", "sheet", "spine"),
        *("strap", "strap/clasp", "text-block"),
    ]


def test_the_measures_of_a_layer_make_no_part_of_it() -> None:
    text = "parts: {tube: {width: 40 mm}}\nsteps: [{adds: tube, onto: spine}]"
    assert list(parts(Names(case(text), LEXICON))) == ["spine"]


def test_spine_and_sections_are_of_the_text_block() -> None:
    text = "parts: {text-block: {}, spine: {}, section: {}, leaf: {}, endband head: {}}"
    assert kin(text) == {
        "spine": "text-block",
        "section": "text-block",
        "leaf": "text-block",
        "endband head": "spine",
    }


def test_boards_and_covers_are_put_on_and_of_nothing_else() -> None:
    assert kin("parts: {text-block: {}, spine: {}, board 1: {}, cover: {}}") == {
        "spine": "text-block"
    }


def test_what_a_path_or_the_record_says_belongs_together() -> None:
    text = "parts: {board 2: {}, strap: {of: board 2, parts: {clasp: {}}}, board 1: {parts: {corner: {}}}}"
    assert kin(text) == {
        "strap": "board 2",
        "strap/clasp": "strap",
        "board 1/corner": "board 1",
    }


def test_in_a_set_a_spine_is_of_its_own_volume_and_a_board_of_none() -> None:
    text = "steps: [{treats: [volume 2/spine, volume 2/board 1, volume 3/spine]}]"
    assert kin(text) == {"volume 2/spine": "volume 2", "volume 3/spine": "volume 3"}


def test_a_part_known_by_another_name_is_what_it_is_said_to_be() -> None:
    assert kin("parts: {text-block: {}, thong: {is: sewing-support}}") == {"thong": "text-block"}


def test_parts_that_belong_to_each_other_in_a_ring_do_no_harm() -> None:
    assert kin("parts: {a: {of: b}, b: {of: a}}") == {"a": "b", "b": "a"}


def test_a_part_has_the_materials_and_measures_of_the_record() -> None:
    text = """
parts:
  board 1: {height: 413 mm, width: 262 mm, thickness: 3.5 mm, material: pasteboard}
  cover: {material: {perhaps: [parchment], not: [vellum], thickness: 0.5 mm}}
"""
    found = parts(Names(case(text), LEXICON))
    board, cover = found["board 1"], found["cover"]
    assert (board.height_um, board.width_um, board.thickness_um) == (413_000, 262_000, 3_500)
    assert board.materials == ("pasteboard",)
    assert (cover.materials, cover.thickness_um) == (("parchment",), 500)
    assert board.since is Since.ORIGINAL


def test_the_vocabularys_words_for_what_was_put_on_make_no_original_part() -> None:
    found = parts(Names(case("steps: [{removes: tape-strip}]"), LEXICON))
    assert found["tape-strip"].since is Since.FOUND
    assert not found["tape-strip"].part
