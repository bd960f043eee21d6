"""What a term's own page says: what opens it, with its sources, and its open identifiers."""

from __future__ import annotations

from casebook.output.term_facts import term_facts
from casebook.output.wording import text_of
from casebook.vocabulary import Lexicon, builtin

LEXICON = Lexicon(builtin())


def facts(kind: str, name: str) -> dict[str, list[str]]:
    found = term_facts(kind, name, builtin()[kind][name], LEXICON)
    return {one.label: [text_of(line) for line in one.lines] for one in found}


def test_an_adhesive_says_what_opens_it_and_on_whose_word() -> None:
    lines = facts("materials", "wheat-starch-paste")["What opens it"]
    assert lines[0].startswith("Water, given slowly (damp blotter, poultice) [moisture], at once")
    assert "Source: The Minton Archive" in lines[0]


def test_a_dispersion_seals_and_a_thin_tissue_splits() -> None:
    assert "keeps moisture" in facts("materials", "polyvinyl-acetate")["In a layer"][0]
    assert "gives way" in facts("materials", "tengujo")["In a layer"][0]


def test_a_damage_has_no_releases() -> None:
    assert "What opens it" not in facts("damages", "broken")


def test_identifiers_stand_with_where_the_pairing_was_read() -> None:
    assert facts("materials", "paper")["Identifiers"][0].startswith("AAT 300014109 (")
