"""What a photograph says of itself: scale, target, light; and what it stands for."""

from __future__ import annotations

import pytest

from casebook.diagnostics import Severity
from casebook.rules import NAMED
from tests.rules.written import messages, raised

FACTS = NAMED["scale-target-light"]
LIGHT = NAMED["special-light-named"]
SPOKEN = NAMED["photo-spoken-of"]


def photo(said: str, more: str = "") -> str:
    return f"photos: [{{file: a.jpg, stage: before, view: spine{said}}}]\n{more}"


def test_each_photo_is_told_what_it_does_not_say_in_one_message():
    (told,) = messages(FACTS, photo(", scale: yes"))
    assert told == (
        "the photo `a.jpg` does not say whether a colour or grey target is, nor in what light"
    )
    assert messages(FACTS, photo(", scale: yes, target: yes, light: normal")) == []
    assert messages(FACTS, photo(", scale: unknown, target: unknown, light: unknown")) == []


@pytest.mark.parametrize(
    ("said", "lacks"),
    [
        ("", ["at what stage it was taken, nor what view it shows"]),
        (", view: spine", ["at what stage it was taken"]),
        (", stage: before", ["what view it shows"]),
        (", stage: after, view: unknown", []),
    ],
)
def test_each_photo_says_its_stage_and_its_view(said: str, lacks: list[str]):
    found = messages(NAMED["stage-and-view"], f"photos: [{{file: a.jpg{said}}}]")
    assert found == [f"the photo `a.jpg` does not say {one}" for one in lacks]


def test_photos_that_lack_the_same_are_told_together():
    files = [f"{{file: {name}.jpg, scale: yes, target: yes}}" for name in "abcde"]
    (told,) = messages(FACTS, f"photos: [{', '.join(files)}]")
    assert told == ("the photos `a.jpg`, `b.jpg`, `c.jpg` and 2 more do not say in what light")
    (told,) = messages(FACTS, f"photos: [{', '.join(files[:2])}]")
    assert told.startswith("the photos `a.jpg` and `b.jpg` do not say")


def test_of_a_photo_that_lies_elsewhere_nothing_is_asked():
    slide = "photos: [{id: slide, stage: before, medium: slide, held: the owner}]"
    assert messages(FACTS, slide) == messages(SPOKEN, slide) == []


def test_that_there_is_no_scale_is_told_while_it_can_be_taken_again():
    text = photo(", scale: no, target: yes, light: normal", "status: in-treatment")
    (one,) = raised(FACTS, text)
    assert one.cap is Severity.SUGGESTION
    assert messages(FACTS, photo(", scale: no, target: no, light: normal")) == []


@pytest.mark.parametrize(
    ("said", "named"),
    [
        (", caption: seen in raking light, light: normal", "raking"),
        (", id: front-uv", "ultraviolet"),
        (", caption: in transmitted light", "transmitted"),
        (", caption: in infra-red", "infrared"),
    ],
)
def test_a_photo_in_another_light_says_so(said: str, named: str):
    (told,) = messages(LIGHT, photo(said))
    assert told == f"the photo `a.jpg` speaks of {named} light, and `light` does not"


@pytest.mark.parametrize(
    "said",
    [
        ", caption: raking light, light: raking from the left",
        ", id: front-uv, light: UV",
        ", caption: the transmitted text, light: transmitted",
        ", light: normal",
        ", caption: the brake on the wheel",
    ],
)
def test_a_light_that_is_named_is_let_pass(said: str):
    assert messages(LIGHT, photo(said)) == []


def test_raking_light_comes_from_somewhere():
    (one,) = raised(LIGHT, photo(", light: raking"))
    assert one.cap is Severity.SUGGESTION


@pytest.mark.parametrize(
    "more",
    [
        "findings: [{part: spine, photo: a.jpg}]",
        "steps: [{treats: spine, photo: a.jpg}]",
        "episodes: [{date: 2025-03, photo: a.jpg}]",
        "tests: [{part: spine, photo: a.jpg}]",
        "follow-up: [{date: 2025-06, photo: a.jpg}]",
        "story: 'The joint, as a.jpg shows it.'",
    ],
)
def test_a_photo_is_spoken_of_by_whatever_points_at_it(more: str):
    assert messages(SPOKEN, photo("")) == ["no text names the photo `a.jpg`, and it has no caption"]
    assert messages(SPOKEN, photo("", more)) == []


def test_or_it_says_itself_what_it_shows():
    assert messages(SPOKEN, photo(", caption: the joint")) == []
    assert messages(SPOKEN, photo(", shows: [spine]")) == []
