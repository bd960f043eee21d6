"""Languages for dates and numbers."""

from __future__ import annotations

from dataclasses import asdict

import pytest

from casebook.values.language import ENGLISH, Language, is_english, known_languages, language

ALL = tuple(known_languages())


def known(tag: str) -> Language:
    found = language(tag)
    assert found is not None
    return found


def test_british_english_is_the_default_and_takes_no_data_from_elsewhere() -> None:
    assert ALL == ("de", "en", "es", "fr", "it", "nl")
    assert known("en-GB").forms is known("en").forms is ENGLISH.forms
    assert known("en-US").forms != ENGLISH.forms
    assert all(is_english(tag) for tag in ("en", "en-GB", "EN-us"))
    assert not is_english("de-CH")
    assert known("en_US") == known("en-US")


@pytest.mark.parametrize("tag", ["", "pl", "xx-YY", "english", "-", "de-\x00"])
def test_a_language_without_phrases_is_none(tag: str) -> None:
    assert language(tag) is None


@pytest.mark.parametrize("tag", ALL)
def test_every_language_says_all_that_english_says(tag: str) -> None:
    phrases, english = asdict(known(tag).phrases), asdict(ENGLISH.phrases)
    assert "from memory" in phrases["source"]
    for name, value in english.items():
        if isinstance(value, dict):
            assert phrases[name].keys() == value.keys(), name
        assert phrases[name] or name == "joined"


def test_numbers_have_the_signs_of_the_language() -> None:
    assert known("de").number("12345.6") == "12.345,6"
    assert known("fr").number("-12345") == "-12\N{NARROW NO-BREAK SPACE}345"
    assert known("de").number("−1.5") == "−1,5"
    assert ENGLISH.number("1234.5") == "1234.5"
    assert ENGLISH.number("12345") == "12,345"
