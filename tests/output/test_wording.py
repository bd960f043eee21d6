"""Words for pages."""

from __future__ import annotations

import pytest

from casebook.model.base import Gap, Unknowing
from casebook.model.materials import Material
from casebook.output.contexts import Run
from casebook.output.wording import listed, say, sentence, text_of, way_address
from tests.builders import WORDING, record


@pytest.mark.parametrize(
    ("reference", "words"),
    [
        ("endband head", "the head endband"),
        ("sheet/verso", "the verso of the sheet"),
        ("cloth-lining", "the cloth lining"),
        ("board 1", "board 1"),
    ],
)
def test_a_place_has_its_article(reference: str, words: str) -> None:
    assert WORDING.place(reference) == words


def test_a_material_says_what_is_known_of_it() -> None:
    text = text_of(WORDING.material(record(Material, "tengujo 5 g/m²")))
    assert text == "tengujo, 5 g/m²"


def test_a_list_is_written_as_in_english() -> None:
    assert text_of(listed([(Run("a"),), (Run("b"),), (Run("c"),)])) == "a, b and c"


def test_a_sentence_has_a_capital_and_a_stop() -> None:
    assert text_of(sentence((Run(""), Run("washed")))) == "Washed."
    assert sentence((Run(""),)) == ()


def test_a_gap_is_said_as_written() -> None:
    assert say(Gap(Unknowing.NOT_RECORDED, "page lost")) == "not recorded (page lost)"
    assert say(None) == ""


def test_only_ways_in_have_addresses() -> None:
    assert way_address("structures", "tight-back") == "ways/structure/tight-back/index.html"
    assert way_address("tools", "brush") == ""


def test_what_is_not_named_is_called_a_material_and_only_glue_an_adhesive():
    unnamed = Gap(Unknowing.UNNAMED)
    assert text_of(WORDING.material(unnamed)) == "a material not named"
    assert text_of(WORDING.adhesive(unnamed)) == "an adhesive not named"
