"""Before and after, of the same view; during, before it is covered; dated."""

from __future__ import annotations

import pytest

from casebook.rules import NAMED
from tests.rules.written import messages

BEFORE = "{file: a.jpg, stage: before, view: Spine}"
AFTER = "{file: b.jpg, stage: after, view: spine}"
OTHER = "{file: c.jpg, stage: after, view: front}"


@pytest.mark.parametrize(
    ("photos", "status", "told"),
    [
        ([], "complete", ["before", "after"]),
        ([], "in-treatment", ["before"]),
        ([BEFORE], "in-treatment", []),
        ([BEFORE], "complete", ["after"]),
        ([AFTER], "complete", ["before"]),
        ([BEFORE, OTHER], "complete", ["both"]),
        ([BEFORE, OTHER, AFTER], "complete", []),
    ],
)
def test_a_finished_case_has_one_view_before_and_after(photos, status, told):
    text = f"status: {status}\nphotos: [{', '.join(photos)}]"
    found = messages(NAMED["before-and-after"], text)
    assert len(found) == len(told)
    assert all(word in message for word, message in zip(told, found, strict=True))


def test_that_there_are_no_photos_needs_a_reason():
    rule = NAMED["before-and-after"]
    assert messages(rule, "photos: not recorded")
    assert messages(rule, "photos: not recorded (film lost in the flood)") == []


def test_gaps_in_bulk_answer_for_photos_of_an_old_record():
    rule = NAMED["before-and-after"]
    old = "record: from-publication\nstatus: complete\nphotos: []\n"
    assert messages(rule, old)
    assert messages(rule, old + "gaps: {not read: [photos]}") == []


def test_a_treatment_that_covers_nothing_needs_no_photo_on_the_way():
    rule = NAMED["during-photo"]
    text = f"episodes: [{{date: 2025-03, steps: [cleaned]}}]\nphotos: [{BEFORE}]"
    assert messages(rule, text + "\n# no reversibility") == []


def test_each_photo_without_a_date_is_named():
    found = messages(NAMED["date-of-photo"], f"photos: [{BEFORE}, {AFTER}]")
    assert found == ["the photo `a.jpg` has no date", "the photo `b.jpg` has no date"]
