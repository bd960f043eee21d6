"""Colours that are compared are both there, and a difference that is seen is explained."""

from __future__ import annotations

import datetime
from dataclasses import replace

import pytest

from casebook.model.base import items
from casebook.model.photos import Image
from casebook.rules.colour import (
    colours_to_compare,
    difference_explained,
    patch_of_target,
    photographed_colour_corrected,
)
from casebook.rules.declare import Rule
from casebook.rules.look import Look
from tests.rules.written import LEXICON, archive, case, messages


def in_pictures(rule: Rule, changes: str, areas=None) -> list[str]:
    """What a rule says where every photo is a picture of 1000 by 800 pixels."""
    one = case(changes)
    images = {photo.file: Image("d", 1000, 800, areas or {}) for photo in items(one.photos)}
    whole = replace(archive(one), images={one.id: images})
    return [each.message for each in rule.check(Look(one, whole, datetime.date.max, LEXICON))]


def match(text: str, tried: str = "") -> str:
    return f"steps: [{{do: infill, match: {text}{f', tried: {tried}' if tried else ''}}}]"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("{original: L 52 a 3 b 10, fill: {photo: before.jpg, box: 1 1 9 9}}", []),
        ("{fill: L 52 a 3 b 10}", ["nothing says what the original's colour is"]),
        ("{original: L 52 a 3 b 10, fill: {box: 1 1 9 9}}", ["this colour has no `photo`"]),
        ("{original: L 52 a 3 b 10, fill: {photo: before.jpg}}", ["this colour has no `box`"]),
        (
            "{original: L 52 a 3 b 10, fill: {photo: before.jpg, box: 995 1 9 9}}",
            ["`995 1 9 9` is outside the picture"],
        ),
        ("{original: unknown, fill: L 52 a 3 b 10}", []),
    ],
)
def test_two_colours_are_there_to_compare(text: str, said: list[str]) -> None:
    assert in_pictures(colours_to_compare, match(text)) == said


def test_a_trial_with_a_colour_is_enough_to_hold_against_the_original() -> None:
    tried = "[{what: one coat, colour: L 52 a 3 b 10}]"
    assert messages(colours_to_compare, match("{original: L 52 a 3 b 10}", tried)) == []
    assert messages(colours_to_compare, match("{original: L 52 a 3 b 10}", "[one coat]")) == [
        "no colour is held against the original"
    ]


@pytest.mark.parametrize(
    ("target", "said"),
    [
        ("yes", []),
        ("{patches: [{colour: L 50 a 0 b 0}]}", ["a patch of the target has no `box`"]),
        (
            "{patches: [{box: 999 1 9 9, colour: L 50 a 0 b 0}]}",
            ["`999 1 9 9` is outside the picture"],
        ),
        (
            "{in-frame: no, patches: [{box: 1 1 9 9, colour: L 50 a 0 b 0}]}",
            ["the target has patches and is said not to be in frame"],
        ),
    ],
)
def test_a_patch_is_found_and_known(target: str, said: list[str]) -> None:
    assert in_pictures(patch_of_target, f"photos: [{{file: a.jpg, target: {target}}}]") == said


def test_a_difference_within_the_tolerance_needs_no_word() -> None:
    near = match("{original: L 52 a 3 b 10, fill: L 53 a 3 b 10}")
    assert messages(difference_explained, near) == []


def test_a_trial_that_differed_needs_no_word_either() -> None:
    far = "[{what: two coats, colour: L 20 a 3 b 10}]"
    assert messages(difference_explained, match("{original: L 52 a 3 b 10}", far)) == []


def test_a_difference_read_from_photos_counts_too() -> None:
    text = match(
        "{original: {photo: before.jpg, box: 1 1 9 9}, fill: {photo: before.jpg, box: 20 1 9 9}}"
    )
    areas = {"1 1 9 9": (0.2, 0.2, 0.2), "20 1 9 9": (0.6, 0.6, 0.6)}
    (said,) = in_pictures(difference_explained, text, areas)
    assert said.startswith("the repair differs from the original by ")


def test_a_photo_is_told_of_once_and_a_measured_colour_never() -> None:
    swatches = "{original: {photo: p.jpg, box: 1 1 9 9}, fill: {photo: p.jpg, box: 1 1 9 9}}"
    assert len(messages(photographed_colour_corrected, _with("yes", swatches))) == 1
    patches = "{patches: [{box: 1 1 9 9, colour: L 50 a 0 b 0}]}"
    assert messages(photographed_colour_corrected, _with(patches, swatches)) == []
    measured = "{original: {photo: p.jpg, box: 1 1 9 9, colour: L 5 a 0 b 0}, fill: L 5 a 0 b 0}"
    assert messages(photographed_colour_corrected, _with("yes", measured)) == []


def _with(target: str, text: str) -> str:
    return f"photos: [{{file: p.jpg, target: {target}}}]\n{match(text)}"
