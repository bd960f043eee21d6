"""The lab's language and units."""

from __future__ import annotations

import pytest

from casebook.model.base import Gap, Unknowing
from casebook.model.settings import Settings
from casebook.output.lab_language import foreign_tag, notation_of, tag_of
from casebook.output.wording import Wording
from casebook.values.dates import Date
from casebook.values.notation import Units
from casebook.values.quantities import Length
from tests.builders import WORDING


def test_dates_and_lengths_are_written_in_the_labs_notation() -> None:
    german = Wording(WORDING.lexicon, "", notation=notation_of(Settings(language="de")))
    assert german.say(Date.parse("28 January 2025")) == "28. Januar 2025"
    assert german.say(Length.parse("10 mm")) == "10 mm (3/8 in)"
    assert (
        german.measured(Gap(Unknowing.UNKNOWN), "{} thick", "thickness {}") == "thickness unknown"
    )
    assert german.say(True) == "yes"


@pytest.mark.parametrize(
    ("written", "dates", "tag", "foreign"),
    [
        (None, "en", "en", ""),
        ("en-US", "en-US", "en-US", ""),
        ("de", "de", "de", "de"),
        ("pl", "en", "pl", "pl"),
        ("Deutsch bitte", "en", "en", ""),
    ],
)
def test_a_language_without_words_for_dates_has_them_in_english(
    written: str | None, dates: str, tag: str, foreign: str
) -> None:
    lab = Settings(language=written)
    assert notation_of(lab).language.tag == dates
    assert (tag_of(lab), foreign_tag(lab)) == (tag, foreign)


def test_a_lab_that_names_no_units_has_both() -> None:
    assert notation_of(Settings()).units is Units.BOTH
    assert notation_of(Settings(units=Units.METRIC)).units is Units.METRIC
