"""What readers see of an EDTF date."""

from __future__ import annotations

import pytest
from hypothesis import given

from casebook.values.date_speech import Speech, ordinal, roman, say
from casebook.values.dates import Date
from casebook.values.edtf import parse
from casebook.values.language import ENGLISH, known_languages, language
from tests.values.edtf_texts import EDTF_TEXTS
from tests.values.word_texts import WORD_TEXTS


@pytest.mark.parametrize(
    ("edtf", "words"),
    [
        ("1780~", "c. 1780"),
        ("1850?", "1850?"),
        ("1890%", "c. 1890?"),
        ("187X", "1870s"),
        ("180X", "1800–1809"),
        ("18XX", "19th century"),
        ("XXXX-12-XX", "December, unknown year (day not known)"),
        ("1985-XX-XX", "1985 (month and day not known)"),
        ("156X-12-25", "25 December, 1560s"),
        ("1984-1X", "October, November or December 1984"),
        ("2025-03-14/2025-03-15", "14–15 March 2025"),
        ("2025-03-14/2025-04-02", "14 March – 2 April 2025"),
        ("2025-03/2025-04", "March–April 2025"),
        ("1964/2008", "1964–2008"),
        ("1984~/2004-06", "c. 1984 – June 2004"),
        ("1985/..", "from 1985"),
        ("../1985", "until 1985"),
        ("1985/", "from 1985, end unknown"),
        ("/1985", "until 1985, start unknown"),
        ("1890-21", "spring 1890"),
        ("1890-32", "winter 1890 (southern hemisphere)"),
        ("1890-36", "last quarter of 1890"),
        ("1890-38", "middle four months of 1890"),
        ("-0043-03-15", "15 March 44 BC"),
        ("0079", "AD 79"),
        ("Y-17E7", "170000001 BC"),
        ("1950S2", "about 1950 (1900–1999)"),
        ("[1667,1668,1670..1672]", "1667, 1668 or 1670–1672"),
        ("[1780..1790]", "between 1780 and 1790"),
        ("{1780..1790}", "all of 1780–1790"),
        ("[..1984]", "1984 or earlier"),
        ("{1960,1961-12}", "1960 and December 1961"),
        ("?2004-06-~11", "11 June 2004 (year uncertain, day approximate)"),
        ("1985-04-12T23:20:30Z", "12 April 1985, 23:20:30 UTC"),
    ],
)
def test_a_date_is_said_in_plain_english(edtf: str, words: str) -> None:
    assert say(parse(edtf)) == words


@given(EDTF_TEXTS)
def test_every_edtf_date_has_words_without_edtf_left_in_them(text: str) -> None:
    words = say(parse(text))
    assert words
    assert not set("[]{}~%") & set(words)


def test_ordinals_and_years_are_written_as_english_writes_them() -> None:
    assert [ordinal(n) for n in (1, 2, 3, 4, 11, 12, 13, 21, 111)] == [
        "1st",
        "2nd",
        "3rd",
        "4th",
        "11th",
        "12th",
        "13th",
        "21st",
        "111th",
    ]
    year_word = Speech(ENGLISH).year_word
    assert [year_word(year) for year in (1, 0, -1)] == ["AD 1", "1 BC", "2 BC"]


SAID = {
    "2025-01-28": {
        "en-US": "January 28, 2025",
        "de": "28. Januar 2025",
        "de-AT": "28. Jänner 2025",
        "fr": "28 janvier 2025",
        "es": "28 de enero de 2025",
    },
    "2025-03-04/2025-03-05": {
        "en-US": "March 4–5, 2025",
        "de": "4.–5. März 2025",
        "es": "4–5 de marzo de 2025",
    },
    "2025-03-01": {"fr": "1er mars 2025", "nl": "1 maart 2025"},
    "before the mid-19th century": {
        "de": "vor der Mitte des 19. Jahrhunderts",
        "fr": "avant le milieu du XIXe siècle",
        "nl": "vóór het midden van de 19e eeuw",
        "es": "antes de mediados del siglo XIX",
        "it": "prima della metà del XIX secolo",
    },
    "after the 1870s": {
        "de": "nach den 1870er Jahren",
        "fr": "après les années 1870",
        "it": "dopo gli anni 1870",
    },
    "before c. 1850": {"de": "vor ca. 1850", "es": "antes de ca. 1850"},
    "before 8 April 2025": {"es": "antes del 8 de abril de 2025", "it": "prima dell’8 aprile 2025"},
    "until the 1st century": {"fr": "jusqu’au Ier siècle", "en": "until 1st century"},
    "probably spring 1820": {
        "de": "wahrscheinlich Frühjahr 1820",
        "it": "probabilmente primavera 1820",
    },
    "between 1780 and 1790?": {"it": "tra il 1780 e il 1790 (?)", "fr": "entre 1780 et 1790 (?)"},
}


def test_a_date_is_said_in_the_language_of_the_site() -> None:
    for text, wanted in SAID.items():
        said = {tag: Date.parse(text).show(language(tag) or ENGLISH) for tag in wanted}
        assert said == wanted


@given(EDTF_TEXTS)
def test_every_edtf_date_has_words_in_every_language(text: str) -> None:
    for tag in known_languages():
        words = say(parse(text), language(tag) or ENGLISH)
        assert words
        assert not set("[]{}<>~%") & set(words)


@given(WORD_TEXTS)
def test_every_date_in_words_has_words_in_every_language(text: str) -> None:
    date = Date.parse(text)
    for tag in known_languages():
        words = date.show(language(tag) or ENGLISH)
        assert words
        assert not set("[]{}<>~%") & set(words)


def test_roman_numerals() -> None:
    assert [roman(n) for n in (1, 4, 9, 14, 19, 21)] == ["I", "IV", "IX", "XIV", "XIX", "XXI"]
