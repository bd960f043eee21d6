"""The worked examples as text, read by hand: what a conservator would be told."""

from __future__ import annotations

import re

import pytest
from hypothesis import HealthCheck, given, settings

from casebook.compute.way_back import way_back
from casebook.compute.way_back.sentences import said, sentences
from tests.compute.way_back.built import LEXICON, back
from tests.compute.way_back.examples import EXAMPLES
from tests.compute.way_back.random_structures import EVIDENCE, structures


@pytest.mark.parametrize("name", EXAMPLES)
def test_a_worked_example_reads_as_it_was_read(name: str, golden):
    built, tests = EXAMPLES[name]
    found = back(built, *tests)
    answers = (*found.bare.values(), *found.free.values(), *found.take_off.values())
    told = [said(one) for one in answers if one.openings or one.stops or one.stays]
    golden(f"way_back/{name}.txt", "\n\n".join(told) + "\n")


def test_the_linen_is_pulled_the_tissue_splits_and_all_above_comes_off():
    built, tests = EXAMPLES["pulled-linen"]
    first = back(built, *tests).bare["spine"].openings[0]
    assert sentences(first)[:2] == (
        "Pull the linen lining away slowly from the head; the release tissue under it splits.",
        "These come off in one piece: the linen lining and the release tissue.",
    )


def test_where_there_is_nothing_to_do_it_says_so():
    built, tests = EXAMPLES["pulled-linen"]
    found = back(built, *tests)
    assert (
        said(found.free["text-block"]) == "To free the text block\nNothing that was added holds it."
    )


@given(structures(), EVIDENCE)
@settings(max_examples=40, suppress_health_check=[HealthCheck.too_slow])
def test_whatever_the_structure_every_sentence_is_one(built, found):
    result = way_back(built, found, LEXICON)
    for answer in (*result.bare.values(), *result.free.values(), *result.take_off.values()):
        assert said(answer)
        for one in (text for opening in answer.openings for text in sentences(opening)):
            assert re.fullmatch(r"\S.*\.", one)
            assert "  " not in one
