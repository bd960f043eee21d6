"""What a case is found by: terms of the trade, dates and numbers, in the words of a result."""

from __future__ import annotations

from casebook.model.archive import Case
from casebook.output.traits import Trait, other_words, traits_of
from tests.builders import RICH, WORDING, record


def texts(case: str) -> list[str]:
    return [one.text for one in traits_of(record(Case, case), WORDING)]


def test_a_case_has_its_structure_its_damage_with_the_part_and_its_operations() -> None:
    found = texts(RICH)
    assert found[:3] == ["tight back", "front joint: broken", "broken"]
    assert {"line", "ledger", "calf", "wheat starch paste", "water"} <= set(found)


def test_a_damage_knows_the_terms_it_speaks_of() -> None:
    trait = Trait("front joint: broken", ("broken", "joint", "front"))
    assert trait in traits_of(record(Case, RICH), WORDING)


def test_dates_are_found_by_decade_and_century_and_a_case_by_its_numbers() -> None:
    assert {"1870s", "19th century", "case 2025-031", "case 2025-030"} <= set(texts(RICH))
    span = "{id: a, object: {made: 1795/1812, place: Quernmouth, held-by: {shelfmark: TG 4}}}"
    assert texts(span) == [
        "1795–1812", "1790s", "1800s", "1810s", "18th century", "19th century",
        "Quernmouth", "shelfmark TG 4", "case a",
    ]  # fmt: skip


def test_centuries_are_counted_as_one_says_them() -> None:
    for year, said in ((1045, "11th"), (1999, "20th"), (2020, "21st"), (110, "2nd")):
        assert f"{said} century" in texts(f"{{id: a, object: {{made: {year:04}}}}}")


def test_what_was_seen_after_the_treatment_or_is_sound_is_no_damage() -> None:
    found = texts("""
id: a
findings:
  - {part: spine, damage: torn, stage: after}
  - {part: sewing, damage: sound}
""")
    assert not [one for one in found if ":" in one]


def test_a_structure_that_came_of_the_treatment_says_so() -> None:
    case = "{id: a, bindings: [{state: after, structure: hollow-back}]}"
    assert texts(case)[0] == "hollow back after treatment"


def test_a_word_that_is_no_term_is_a_trait_as_it_is_written() -> None:
    case = "{id: a, findings: [{part: odd-thing, damage: gnawed by hens}]}"
    assert texts(case)[:2] == ["odd thing: gnawed by hens", "gnawed by hens"]


def test_a_term_is_known_by_its_synonyms_its_forms_and_the_wider_terms() -> None:
    lexicon = WORDING.lexicon
    assert "leather" in other_words(lexicon.terms["materials"]["calf"], lexicon, "materials")
    assert "fast back" in other_words(
        lexicon.terms["structures"]["tight-back"], lexicon, "structures"
    )
    words = other_words(lexicon.terms["operations"]["line"], lexicon, "operations")
    assert {"lined", "lining"} & set(words)


def test_a_case_with_nothing_but_an_id_has_its_number() -> None:
    assert texts("{id: a}") == ["case a"]
