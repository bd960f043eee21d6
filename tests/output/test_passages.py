"""What the search reads and quotes is what the case's page tells, in sentences."""

from __future__ import annotations

import re
from dataclasses import replace
from html import unescape

import pytest

from casebook.audiences import redact
from casebook.model.archive import Case
from casebook.model.base import Audience
from casebook.output.passages import facts_of, passages_of
from tests.builders import RICH, WORDING, archive, filled, record, site, written


def passages(case: str) -> tuple[str, ...]:
    return passages_of(record(Case, case), WORDING)


def test_a_finding_is_one_passage_in_sentences() -> None:
    told = "The front joint: broken. Cords broken. Held by the pastedown only."
    assert told in passages(RICH)


def test_a_step_is_a_passage_with_its_remarks() -> None:
    case = """
id: a
steps: [{do: line, adds: cloth, onto: spine, material: linen, because: it is heavy}]
"""
    (step,) = [one for one in passages(case) if "linen" in one]
    assert step.endswith("Why: it is heavy.")


def test_prose_is_a_passage_for_each_paragraph_and_what_it_is_about_comes_first() -> None:
    case = replace(
        record(Case, "{id: a, object: {about: Tides.}}"), story="One.\n\n- Two.\n- *Three.*"
    )
    assert passages_of(case, WORDING) == ("Tides.", "One.", "Two.", "Three.")


def test_a_course_of_treatment_is_a_passage() -> None:
    (course,) = [one for one in passages(RICH) if one.startswith("Reback")]
    assert "14 h" in course
    assert "linen" in course


def test_facts_have_their_labels() -> None:
    found = facts_of(record(Case, RICH), WORDING)
    assert any(one.startswith("Size: height 16 1/4 in") for one in found)
    assert not [one for one in found if one.startswith(("Kind:", "About:"))]
    marked = record(Case, "{id: a, object: {marks: [a red label, a ticket]}}")
    assert facts_of(marked, WORDING) == ("Marks: A red label. A ticket.",)


def test_how_advice_is_not_known_is_told_in_a_sentence() -> None:
    told = passages("{id: a, care: not recorded, reversibility: {says: unknown}}")
    assert told == (
        "How it can be undone is unknown.",
        "How it is to be kept is not recorded.",
    )


def test_no_passage_is_empty() -> None:
    assert all(one.strip() for one in passages(RICH))
    assert passages("{id: a}") == ()


WHOLE = replace(filled(Case, lambda _cls, info: "a" if info.name == "id" else 0), photos=())


@pytest.mark.parametrize("case", [record(Case, RICH), WHOLE])
def test_every_word_that_can_be_quoted_stands_on_the_page(case: Case) -> None:
    page = written(site(archive(case), Audience.LAB))[f"cases/{case.id}/index.html"]
    there = words(unescape(re.sub("<[^>]*>", " ", page)))
    (shown,) = redact(archive(case), Audience.LAB).archive.cases
    quoted = (*passages_of(shown, WORDING), *facts_of(shown, WORDING))
    assert [one for one in quoted if words(one) - there] == []


def words(text: str) -> set[str]:
    return set(re.findall(r"\w+", text.lower()))
