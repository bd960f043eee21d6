"""What a test's result says in words: negations are understood, and what comes after a "but"."""

from __future__ import annotations

import pytest

from casebook.model import condition
from casebook.rules.results import held, lasted, repeated, trouble
from tests.model.reads import reads


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("bleeds", "bleeds"),
        ("slight bleeding", "bleeding"),
        ("no change at first, bleeds after a minute", "bleeds"),
        ("no change, but the red moved", "moved"),
        ("darkened at once", "darkened"),
        ("a tideline formed", "tideline"),
        ("ink runs; paper unchanged", "runs"),
        ("bleeding: strong", "bleeding"),
        ("all move; red at once", "move"),
        ("cockles at once, does not come back", "cockles"),
    ],
)
def test_trouble_is_told_by_its_word(text: str, word: str):
    assert trouble(text) == word
    assert not held(text)


@pytest.mark.parametrize(
    "text",
    [
        "no change",
        "no bleeding",
        "does not bleed",
        "did not bleed, move or darken",
        "didn't bleed",
        "neither bleeds nor moves",
        "no bleeding, movement or tideline",
        "nothing on the blotter",
        "without tide lines",
        "bleeding: none",
        "bleeding was not seen",
        "fast to water",
        "relaxes, no shrinkage measured",
    ],
)
def test_what_is_denied_is_no_trouble(text: str):
    assert trouble(text) == ""
    assert held(text)


def test_what_says_neither_is_neither():
    assert trouble("near neutral") == ""
    assert not held("near neutral")


def made(text: str) -> condition.Test:
    return reads(condition.Test, text)


@pytest.mark.parametrize(
    ("text", "often"),
    [
        ("times: 3", True),
        ("times: at least 3", True),
        ("times: 2", False),
        ("method: 'droplet, three times on one spot'", True),
        ("method: 'droplet, 4 x'", True),
        ("method: droplet, twice", False),
        ("method: droplet", False),
    ],
)
def test_three_times_or_more_is_repeated(text: str, often: bool):
    assert repeated(made(text)) is often


@pytest.mark.parametrize(
    ("text", "minutes"),
    [
        ("method: 'droplet, 60 s, then blotter'", 1),
        ("method: 'swab 10 s, then damp blotter 15 min'", 15),
        ("agent: {is: water, lasts: 20 min}", 20),
    ],
)
def test_the_longest_time_of_a_test_is_read_from_its_words_and_its_agent(text: str, minutes: int):
    found = lasted(made(text))
    assert found is not None
    assert found.exact == minutes


def test_a_test_that_says_no_time_has_none():
    assert lasted(made("method: swab of 3 mm")) is None


def test_a_night_is_longer_than_any_minutes():
    found = lasted(made("method: 'droplet, 60 min'\nagent: {is: water, lasts: overnight}"))
    assert found is not None
    assert found.nights == 1
