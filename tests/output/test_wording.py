"""Words for pages."""

from __future__ import annotations

import pytest

from casebook.model.base import Gap, Unknowing
from casebook.model.materials import Material
from casebook.output.contexts import Run
from casebook.output.wording import (
    Wording,
    how_known,
    key_words,
    listed,
    listed_text,
    measured,
    say,
    sentence,
    text_of,
    unknown,
    way_address,
)
from tests.builders import WORDING, record


def test_a_place_has_its_article() -> None:
    assert WORDING.place("endband head") == "the head endband"


@pytest.mark.parametrize(
    ("material", "phrase"),
    [
        ("tengujo 5 g/m²", "tengujo of 5 g/m²"),
        ("acrylic-resin 5 % in acetone", "5 % acrylic resin in acetone"),
        (
            "{is: linen, damped: yes, lot: 24-7, maker: a mill}",
            "damped linen (by a mill; lot 24-7)",
        ),
        ("{is: linen, damped: no, thickness: 0.2 mm}", "dry linen, 0.2 mm thick"),
        ("{is: linen, weight: not recorded}", "linen, weight not recorded"),
        (
            "{mix: {ethanol: 3, water: 1}, basis: volume, amount: 40 ml}",
            "ethanol and water 3 : 1 by volume (40 ml)",
        ),
        (
            "{perhaps: [animal-glue, paste], not: bitumen, evidence: not tacky}",
            "perhaps animal glue or paste (not bitumen; not tacky)",
        ),
        ("{is: unknown}", "an unknown material"),
        ("{is: water, carrier: methyl-cellulose 4 %}", "water in 4 % methyl cellulose"),
        (
            "{is: kozo-paper, toned: 'watercolour before, two coats', prepared: pressed}",
            "kozo paper, toned before it was laid with watercolour (two coats), pressed",
        ),
        (
            "{is: kozo-paper, toned: {with: none, how: on purpose}}",
            "kozo paper, not toned (on purpose)",
        ),
        (
            "{built-of: [tengujo, linen], splits: yes}",
            "a material built up beforehand of tengujo and linen, which splits in its own thickness",
        ),
        ("{is: linen, built-of: [mull, mull]}", "linen, built up beforehand of mull and mull"),
        ("{is: methyl-cellulose, concentration: 4 %, basis: mass}", "4 % by mass methyl cellulose"),
    ],
)
def test_a_material_says_what_is_known_of_it(material: str, phrase: str) -> None:
    assert text_of(WORDING.material(record(Material, material))) == phrase


@pytest.mark.parametrize(
    ("kind", "phrase"),
    [
        (Unknowing.NONE, "no adhesive"),
        (Unknowing.UNNAMED, "an adhesive not named"),
        (Unknowing.UNKNOWN, "an unknown adhesive"),
        (Unknowing.NOT_RECORDED, "an adhesive that is not recorded"),
        (Unknowing.NOT_READ, "an adhesive that the source names where it was not read"),
    ],
)
def test_each_way_of_not_knowing_has_its_phrase(kind: Unknowing, phrase: str) -> None:
    assert text_of(WORDING.adhesive(Gap(kind))) == phrase
    assert unknown(Gap(kind, "page lost"), "adhesive") == f"{phrase} (page lost)"


def test_how_a_thing_is_not_known_ends_a_sentence() -> None:
    assert how_known(Gap(Unknowing.UNKNOWN)) == "is unknown"
    assert how_known(Gap(Unknowing.NOT_READ)) == "was not read in the source"


def test_keys_and_measures_in_words() -> None:
    assert (key_words("dries"), key_words("as-found")) == ("the drying", "as found")
    assert measured(Gap(Unknowing.UNKNOWN), "{} thick", "thickness {}") == "thickness unknown"
    assert measured(None, "{} thick", "thickness {}") == ""
    assert listed_text(["a", "", "b"]) == "a and b"


def test_a_case_is_named_by_its_title_where_it_has_a_page() -> None:
    wording = Wording(WORDING.lexicon, "../../", {"old": ("c-1", "Harbour rates")})
    assert wording.case("old") == Run("Harbour rates", "../../cases/c-1/index.html")
    assert wording.case("elsewhere") == Run("elsewhere")


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


def test_a_word_without_a_page_on_this_site_is_explained_without_a_link() -> None:
    some = frozenset({"materials/linen/index.html"})
    wording = Wording(WORDING.lexicon, "../", pages=some)
    assert wording.term("materials", "linen").href == "../materials/linen/index.html"
    calf = wording.term("materials", "calf")
    assert (calf.href, bool(calf.gloss)) == ("", True)
