"""Repairs lighter and weaker than what they mend."""

from __future__ import annotations

import pytest

from casebook.rules import NAMED
from tests.rules.written import messages

LIGHTER = NAMED["repair-lighter"]
STRONGER = NAMED["repair-not-stronger"]


def mend(material: str, more: str = "", sheet: str = "laid-paper 80 g/m²") -> list[str]:
    step = f"{{adds: patch, onto: sheet/verso, material: {material}{more}}}"
    return messages(LIGHTER, f"parts: {{sheet: {{material: {sheet}}}}}\nsteps: [{step}]")


def test_a_repair_is_no_heavier_than_the_sheet():
    (told,) = mend("kozo-paper 120 g/m²")
    assert told == "`patch` (120 g/m²) is heavier than `sheet/verso` under it"


@pytest.mark.parametrize(
    ("material", "more", "sheet"),
    [
        ("kozo-paper 11 g/m²", "", "laid-paper 80 g/m²"),
        ("kozo-paper 80 g/m²", "", "laid-paper 80 g/m²"),
        ("kozo-paper", "", "laid-paper 80 g/m²"),
        ("kozo-paper 120 g/m²", "", "laid-paper"),
        ("kozo-paper 70-90 g/m²", "", "laid-paper 80 g/m²"),
        ("kozo-paper 120 g/m²", ", because: it hangs from it", "laid-paper 80 g/m²"),
        (
            "kozo-paper 120 g/m²",
            ", against-original: {is: like, because: compared by hand}",
            "laid-paper 80 g/m²",
        ),
    ],
)
def test_lighter_alike_unknown_or_explained_is_let_pass(material: str, more: str, sheet: str):
    assert mend(material, more, sheet) == []


def test_a_layer_that_was_found_has_a_weight_too():
    found = "as-found: [{id: backing, onto: sheet, weight: 40 g/m²}]\n"
    step = "steps: [{adds: patch, onto: backing, material: kozo-paper 45 g/m²}]"
    assert messages(LIGHTER, found + step)


def test_an_infill_takes_the_place_of_the_paper_and_does_not_lie_on_it():
    text = "parts: {sheet: {material: laid-paper 80 g/m²}}\nsteps: [{adds: fill, onto: sheet, "
    assert messages(LIGHTER, text + "in-thickness-of: sheet, material: rag-paper 90 g/m²}]") == []


def test_a_repair_that_is_said_to_be_stronger_says_why():
    step = "steps: [{adds: patch, onto: joint front, against-original: %s}]"
    assert messages(STRONGER, step % "stronger")
    assert messages(STRONGER, step % "weaker") == []
    assert messages(STRONGER, step % "{is: stronger, because: the board is heavy}") == []
