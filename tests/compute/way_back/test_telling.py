"""What an opening tells: what stays, how it is cleared, what to mind, what cannot be undone."""

from __future__ import annotations

from dataclasses import replace

from casebook.compute.evidence import Result
from casebook.compute.structure import Since
from casebook.compute.way_back import telling
from casebook.compute.way_back.instructions import Opening
from tests.compute.way_back.built import (
    GLUE,
    PASTE,
    PVA,
    back,
    bears,
    held,
    layer,
    part,
    structure,
    stuck,
    tried,
)
from tests.compute.way_back.examples import PULLED


def only(*members, at: str = "spine") -> Opening:
    """The one opening that bares a part."""
    (one,) = back(structure(*members)).bare[at].openings
    return one


def test_what_softens_easily_is_cleared_with_what_softened_it():
    one = only(part("spine"), layer("lining"), stuck("spine", "lining", PASTE))
    (rest,) = one.stays
    assert (rest.what, rest.on) == ("soft paste, wiped or lifted off", "spine")
    assert rest.with_ == "water, given slowly (damp blotter, poultice)"
    assert "The Minton Archive" in rest.source


def test_what_opens_hardly_is_not_said_to_clear():
    members = (part("board 1"), layer("lining"), stuck("board 1", "lining", PVA))
    (rest,) = only(*members, at="board 1").stays
    assert (rest.what, rest.with_, rest.for_good) == ("rubbery skin", "", True)


def test_half_a_split_tissue_is_cleared_with_what_then_comes_to_it():
    first = back(PULLED, *bears("spine")).bare["spine"].openings[0]
    assert first.clear == first.stays
    assert first.mind == (telling.SPLIT,)


def test_a_blade_comes_with_its_caution():
    found = layer("old-glue", GLUE, since=Since.FOUND)
    built = structure(part("spine"), found, stuck("spine", "old-glue", GLUE, since=Since.FOUND))
    (one,) = back(built, tried("spine", Result.HARM)).bare["spine"].openings
    assert one.agents == ("dry, by blade or spatula",)
    assert telling.BLADE in one.mind


def test_what_was_there_on_arrival_is_not_taken_off_without_a_decision():
    old = layer("old-patch", "laid-paper", since=Since.FOUND)
    one = only(part("spine"), old, stuck("spine", "old-patch", PASTE, since=Since.FOUND))
    assert "On the object when it came: the old patch. Decide first whether it may go." in one.mind


def test_heat_and_solvents_come_with_the_caution_of_the_vocabulary():
    heated = (part("spine"), layer("lining"), stuck("spine", "lining", "heat-seal-film"))
    (heat,) = [text for text in only(*heated).mind if text.startswith("Heat:")]
    assert "fume" in heat
    rubber = (part("spine"), layer("lining"), stuck("spine", "lining", "rubber-cement"))
    (solvent,) = [text for text in only(*rubber).mind if text.startswith("Solvent:")]
    assert "safety data sheet" in solvent


def test_a_material_that_can_hurt_is_named_with_its_caution():
    green = layer("cover", "green-book-cloth")
    one = only(part("spine"), green, stuck("spine", "cover", PASTE))
    assert any("arsenic" in text for text in one.mind)


def test_a_guess_is_said_to_be_one():
    bond = replace(stuck("spine", "strip", GLUE, "dextrin"), guessed=True)
    one = only(part("spine"), layer("strip"), bond)
    assert "What it is stuck with is a guess; it may also be dextrin." in one.mind


def test_holes_and_films_in_originals_cannot_be_undone():
    sewn = held("spine", "ties", "sewn", cuts=("spine",))
    assert only(part("spine"), layer("ties"), sewn).cannot == (
        "what was cut or pierced in the spine stays so",
    )
    members = (part("board 1"), layer("lining"), stuck("board 1", "lining", PVA))
    assert only(*members, at="board 1").cannot == (
        "polyvinyl acetate that has gone into board 1 stays in it",
    )
