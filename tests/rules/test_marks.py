"""What is noted on a photo lies in the picture and says enough to be used."""

from __future__ import annotations

import datetime
from dataclasses import replace

import pytest

from casebook.model.base import items
from casebook.model.photos import Image
from casebook.rules.declare import Rule
from casebook.rules.look import Look
from casebook.rules.marks import (
    fit_has_two_points,
    fit_is_likely,
    mark_on_picture,
    outline_crosses_itself,
    scale_can_be_read,
)
from tests.rules.written import LEXICON, archive, case, messages


def in_pictures(rule: Rule, changes: str) -> list[str]:
    """What a rule says where every photo is a picture of 1000 by 800 pixels."""
    one = case(changes)
    images = {photo.file: Image("d", 1000, 800) for photo in items(one.photos)}
    whole = replace(archive(one), images={one.id: images})
    return [each.message for each in rule.check(Look(one, whole, datetime.date.max, LEXICON))]


def mark(text: str) -> str:
    return f"findings: [{{part: spine, seen: worn, marks: {text}}}]"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("{photo: before.jpg, box: 900 700 100 100}", []),
        ("{photo: before.jpg, box: 901 700 100 100}", ["`901 700 100 100` is outside the picture"]),
        ('{photo: before.jpg, line: "1 1, 1 801"}', ["`1 1, 1 801` is outside the picture"]),
        ("{photo: before.jpg, box: 90% 90% 10% 10%}", []),
        ("{box: 1 1 2 2}", ["a mark names no photo"]),
        ('{photo: before.jpg, box: 1 1 2 2, line: "1 1, 2 2"}', ["a mark has 2 shapes, not one"]),
        ("{photo: before.jpg}", ["a mark has no shape, not one"]),
    ],
)
def test_a_mark_lies_in_its_picture(text: str, said: list[str]) -> None:
    assert in_pictures(mark_on_picture, mark(text)) == said


def test_a_mark_on_a_photo_that_is_no_picture_here_is_not_measured_against_it() -> None:
    assert messages(mark_on_picture, mark("{photo: before.jpg, box: 901 700 999 999}")) == []


def test_an_outline_in_per_cent_is_looked_at_too() -> None:
    text = mark('{photo: before.jpg, outline: "1% 1%, 9% 9%, 9% 1%, 1% 9%"}')
    assert messages(outline_crosses_itself, text) == ["this outline crosses itself"]


@pytest.mark.parametrize(
    ("scale", "said"),
    [
        ("yes", []),
        ("{from: 1 1, to: 900 1, length: 100 mm}", []),
        ("{from: 1 1, to: 900 1}", ["the scale says no `length`"]),
        ("{length: 100 mm}", ["the scale says no `from` and no `to`"]),
        ("{from: 1 1, to: 1001 1, length: 10 mm}", ["`1001 1` is outside the picture"]),
        (
            "{in-frame: no, from: 1 1, to: 9 1, length: 10 mm}",
            ["the scale has points and is said not to be in frame"],
        ),
    ],
)
def test_a_scale_can_be_read(scale: str, said: list[str]) -> None:
    assert in_pictures(scale_can_be_read, f"photos: [{{file: a.jpg, scale: {scale}}}]") == said


@pytest.mark.parametrize(
    ("fit", "said"),
    [
        ("{over: a.jpg, here: [1 1, 9 9], there: [1 1, 9 9]}", []),
        ("{here: [1 1, 9 9], there: [1 1, 9 9]}", ["`fit` names no other photo"]),
        ("{over: b.jpg, here: [1 1, 9 9], there: [1 1, 9 9]}", ["`fit` names no other photo"]),
        (
            "{over: a.jpg, here: [1 1, 1 1], there: [1 1, 9 9]}",
            ["`here` has one point twice, not two"],
        ),
        ("{over: a.jpg, here: [1 1, 9 9], there: []}", ["`there` has no point, not two"]),
        (
            "{over: a.jpg, here: [1 1, 9 9], there: [1 1, 9 900]}",
            ["`9 900` is outside the picture"],
        ),
    ],
)
def test_a_fit_has_two_points_on_either_photo(fit: str, said: list[str]) -> None:
    photos = f"photos: [{{file: a.jpg}}, {{file: b.jpg, fit: {fit}}}]"
    assert in_pictures(fit_has_two_points, photos) == said


@pytest.mark.parametrize(
    ("here", "there", "said"),
    [
        ("[100 100, 900 700]", "[110 90, 905 712]", []),
        ("[100 100, 900 700]", "[900 700, 100 100]", ["turn the photo by 180 degrees"]),
        ("[100 100, 900 700]", "[100 100, 300 250]", ["make it 0.25 times as large"]),
        ("[100 100, 900 100]", "[500 100, 500 799]", ["turn the photo by 90 degrees"]),
    ],
)
def test_a_fit_turns_and_scales_a_little(here: str, there: str, said: list[str]) -> None:
    photos = f"photos: [{{file: a.jpg}}, {{file: b.jpg, fit: {{over: a.jpg, here: {here}, there: {there}}}}}]"
    found = in_pictures(fit_is_likely, photos)
    assert len(found) == len(said)
    for message, part in zip(found, said, strict=True):
        assert part in message
