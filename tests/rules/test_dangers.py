"""Dangers by the vocabulary's cautions, and which of them a record names."""

from __future__ import annotations

import pytest

from casebook.model.vocabulary import Term
from casebook.rules.dangers import Danger, Met, any_danger, covered, danger, named_dangers, unnamed
from casebook.rules.look import Look
from casebook.vocabulary import Lexicon
from tests.rules.written import TODAY, archive, case, look


def of(word: str) -> Danger:
    found = any_danger(look(), word)
    assert found is not None
    return found


def test_a_danger_has_its_caution_and_its_source():
    ethanol = danger(look(), "materials", "ethyl alcohol")
    assert ethanol is not None
    assert "Flammable" in ethanol.caution
    assert "NIOSH Pocket Guide npgd0262" in ethanol.usual
    assert danger(look(), "materials", "linen") is None
    assert danger(look(), "materials", "a word of my own") is None


@pytest.mark.parametrize("word", ["mould", "lead", "scalpel", "bleach", "publisher's binding"])
def test_any_vocabulary_may_know_a_danger(word: str):
    assert of(word).caution


def test_a_term_has_the_caution_of_its_wider_term_where_it_has_none():
    one = case()
    own = {"spirit": Term(label="spirit", caution="Burns."), "ours": Term(broader="spirit")}
    seen = Look(one, archive(one), TODAY, Lexicon({"materials": own}))
    found = danger(seen, "materials", "ours")
    assert found is not None
    assert (found.caution, found.source) == ("Burns.", "common practice, no source")


@pytest.mark.parametrize(
    ("hazards", "word", "said"),
    [
        ("[scalpel blades]", "paring-knife", True),
        ("[blades]", "lifting-knife", True),
        ("[red-rotted leather]", "red-rot", True),
        ("[solvents]", "acetone", True),
        ("[acetone and ethyl acetate]", "acetone", True),
        ("[acetone and ethyl acetate]", "ethanol", False),
        ("[ethanol]", "water-and-ethanol", True),
        ("[old mould on both boards]", "mould-stained", True),
        ("[lead weights]", "lead-weight", True),
        ("[hot tools]", "finishing-tool", True),
        ("[mould]", "scalpel", False),
        ("[a green cloth]", "green-book-cloth", True),
        ("[cloth]", "green-book-cloth", False),
    ],
)
def test_a_danger_is_named_by_itself_its_like_or_a_wider_word(hazards: str, word: str, said: bool):
    named = named_dangers(look(f"hazards: {hazards}"))
    assert covered(of(word), named) is said


def test_each_sort_of_danger_is_told_once_and_not_where_it_was_told_before():
    seen = look()
    met = [Met(of(word), seen.case, "steps") for word in ("scalpel", "knife", "ethanol")]
    assert [one.danger.word for one in unnamed(seen, met)] == ["scalpel", "ethanol"]
    assert [one.danger.word for one in unnamed(seen, met, met[:1])] == ["ethanol"]
