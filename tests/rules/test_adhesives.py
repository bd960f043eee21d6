"""Adhesives: damp cloth, paste on the folds, and no promises for a dispersion."""

from __future__ import annotations

import pytest

from casebook.diagnostics import Severity
from casebook.rules import NAMED
from tests.rules.written import messages, raised

DAMPED = NAMED["cloth-damped"]
ON_FOLDS = NAMED["no-dispersion-on-original"]
LEAVES = NAMED["dispersion-leaves-something"]
LASTS = NAMED["adhesive-that-lasts"]


def lining(material: str, adhesive: str = "wheat-starch-paste", more: str = "") -> str:
    return f"steps: [{{adds: p, onto: spine, material: {material}, adhesive: {adhesive}{more}}}]\n"


def test_cloth_that_went_dry_into_water_is_a_fault_and_not_to_say_so_a_question():
    (fault,) = raised(DAMPED, lining("{is: linen, damped: no}"))
    assert fault.cap is Severity.ERROR
    (question,) = raised(DAMPED, lining("linen"))
    assert question.cap is Severity.SUGGESTION
    assert question.message.endswith("?")


@pytest.mark.parametrize(
    ("material", "adhesive", "more"),
    [
        ("{is: linen, damped: yes}", "wheat-starch-paste", ""),
        ("{is: linen, damped: no}", "wheat-starch-paste", ", because: lay it flat at once"),
        ("{is: linen, damped: unknown}", "wheat-starch-paste", ""),
        ("{is: linen, prepared: 'coated and dried'}", "wheat-starch-paste", ""),
        ("linen", "none", ""),
        ("linen", "heat-seal-film", ""),
        ("kozo-paper", "wheat-starch-paste", ""),
        ("book-cloth", "polyvinyl-acetate", ""),
        ("buckram", "polyvinyl-acetate", ""),
    ],
)
def test_damp_cloth_dry_adhesive_paper_and_filled_cloth_are_let_pass(material, adhesive, more):
    assert messages(DAMPED, lining(material, adhesive, more)) == []


def test_an_old_record_is_not_asked_what_nobody_can_know():
    assert messages(DAMPED, f"{lining('linen')}record: from-notes") == []
    assert messages(DAMPED, f"{lining('{is: linen, damped: no}')}record: from-notes")


@pytest.mark.parametrize("adhesive", ["polyvinyl-acetate", "pva-and-paste", "acrylic-dispersion"])
def test_no_dispersion_goes_on_the_bare_folds(adhesive: str):
    assert messages(ON_FOLDS, lining("linen", adhesive))


def test_over_a_tissue_or_with_a_reason_or_on_a_board_it_may():
    assert messages(ON_FOLDS, lining("linen", "polyvinyl-acetate", ", because: asked for")) == []
    assert messages(ON_FOLDS, lining("tengujo", "wheat-starch-paste")) == []
    board = lining("linen", "polyvinyl-acetate").replace("spine", "board 1")
    assert messages(ON_FOLDS, board) == []
    spans = "steps: [{adds: p, spans: {spine: 70 mm, board 1: 40 mm}, adhesive: polyvinyl-acetate}]"
    assert messages(ON_FOLDS, spans)


def claim(said: str, onto: str = "spine") -> list[str]:
    step = lining("linen", "polyvinyl-acetate").replace("spine", onto)
    return messages(LEAVES, f"{step}reversibility: {{claims: [{{takes-off: p, {said}}}]}}")


@pytest.mark.parametrize("leaves", ["nothing", "none"])
def test_a_dispersion_leaves_something_when_it_is_taken_off_with_water(leaves: str):
    assert claim(f"with: water, leaves: {leaves}")


@pytest.mark.parametrize(
    "said",
    [
        "with: water, leaves: a film in the board",
        "with: water, leaves: nothing, because: tried on an offcut",
        "with: by hand, leaves: nothing",
    ],
)
def test_who_says_what_stays_or_why_not_is_believed(said: str):
    assert claim(said) == []


def test_on_a_layer_of_our_own_it_comes_off_with_that_layer():
    steps = (
        "steps: [{adds: tissue, onto: spine, material: tengujo, adhesive: paste}, "
        "{adds: p, onto: tissue, material: linen, adhesive: polyvinyl-acetate}]\n"
        "reversibility: {claims: [{takes-off: p, with: water, leaves: nothing}]}"
    )
    assert messages(LEAVES, steps) == []


@pytest.mark.parametrize(
    "step",
    [
        "{adds: p, onto: leaf, material: pressure-sensitive-tape}",
        "{adds: p, onto: leaf, material: kozo-paper, adhesive: rubber-cement}",
    ],
)
def test_tape_and_rubber_cement_do_not_last(step: str):
    assert messages(LASTS, f"steps: [{step}]")
    assert messages(LASTS, f"steps: [{step[:-1]}, temporary: yes}}]") == []
    assert messages(LASTS, f"steps: [{step[:-1]}, because: asked for by the owner}}]") == []
