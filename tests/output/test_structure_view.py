"""The structure and the way back of a case, as its pages show them."""

from __future__ import annotations

from markupsafe import Markup

from casebook.model.archive import Case
from casebook.model.base import Audience
from casebook.output.kept import kept
from casebook.output.structure_view import (
    NO_STRUCTURE,
    StructureView,
    layered,
    structure_view,
    work_out,
)
from casebook.output.wording import text_of
from casebook.vocabulary import Lexicon, builtin
from tests.builders import archive, record, site, written
from tests.output.test_kept import Memory

LEXICON = Lexicon(builtin())
LINED = """
id: a
title: A lined ledger
audience: public
status: complete
parts: {spine: {width: 60 mm, rise: 12 mm, height: 300 mm}}
steps:
  - {do: line, adds: tissue, onto: spine, material: tengujo, adhesive: wheat-starch-paste}
  - {do: line, adds: cloth, onto: tissue, material: linen, adhesive: polyvinyl-acetate}
"""


def view(text: str) -> StructureView:
    case = record(Case, text)
    return structure_view(case, LEXICON, work_out(case, LEXICON))


def test_the_spine_is_drawn_once_with_all_its_states() -> None:
    (drawing,) = view(LINED).drawings
    assert drawing.title == "Cross-section of the spine"
    assert isinstance(drawing.svg, Markup)
    assert [state.title for state in drawing.states] == ["As found", "After step 1", "After step 2"]


def test_baring_the_spine_comes_with_numbered_openings_on_a_drawing() -> None:
    (bare,) = view(LINED).bare
    assert bare.title == "To bare the spine: take off all that was put on it"
    ((first, second),) = (stretch.openings for stretch in bare.stretches)
    assert "pull the cloth away slowly from the head" in " ".join(first.do).lower()
    assert "wheat starch paste" in " ".join(second.do)
    assert [run.text for run in second.sources] == ["b"]
    assert [text_of(one)[:18] for one in view(LINED).sources] == [
        "common practice, n",
        "The Minton Archive",
    ]
    assert len(bare.drawings) == 1


def test_what_to_mind_stands_apart_from_what_to_do() -> None:
    (bare,) = view(LINED).bare
    openings = [one for stretch in bare.stretches for one in stretch.openings]
    assert any(line.startswith("Test first") for line in openings[1].mind)
    assert not any("Test first" in line for one in openings for line in (*one.do, *one.off))


def test_every_layer_has_its_own_way_off() -> None:
    assert {one.title for one in view(LINED).layers} == {
        "To take off the cloth",
        "To take off the tissue",
    }


def test_an_order_that_nobody_recorded_is_said() -> None:
    assert view(LINED).note == ""
    assert "in which order" in view(f"{LINED}order: not recorded\n").note


def test_a_case_without_layers_has_nothing_to_take_apart() -> None:
    case = record(Case, "{id: a, title: A letter, audience: public, steps: [looked at it]}")
    assert not layered(case)
    pages = written(site(archive(case), Audience.PUBLIC))
    assert "cases/a/apart/index.html" not in pages
    assert "How to take this apart" not in pages["cases/a/index.html"]
    assert not NO_STRUCTURE.apart


def test_the_view_is_kept_and_comes_back_whole() -> None:
    store = Memory()
    made = view(LINED)
    kept(store, "structure", "key", StructureView, lambda: made)
    assert kept(store, "structure", "key", StructureView, lambda: NO_STRUCTURE) == made


def test_a_layer_of_which_nobody_recorded_what_it_lies_on_is_not_passed_over_in_silence() -> None:
    text = LINED + "  - {do: line, adds: backing, onto: not recorded, adhesive: not recorded}\n"
    assert view(LINED).note == ""
    assert "nobody recorded on what: the backing" in view(text).note
