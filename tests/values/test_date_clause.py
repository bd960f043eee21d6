"""One date in words."""

from __future__ import annotations

import pytest
from hypothesis import given

from casebook.values import edtf
from casebook.values.date_clause import clause, lend, unit
from casebook.values.date_speech import Speech, bare
from casebook.values.fault import NotUnderstood
from casebook.values.language import ENGLISH
from tests.values.word_texts import UNITS

SPEECH = Speech(ENGLISH)


@pytest.mark.parametrize(
    ("text", "first", "last", "spoken"),
    [
        ("c. 1780", "1780", "1780", "c. 1780"),
        ("mid 19th cent.", "1834", "1866", "mid-19th century"),
        (
            "the first quarter of the 18th century",
            "1700",
            "1724",
            "first quarter of the 18th century",
        ),
        ("late 1780's?", "1787", "1789", "late 1780s?"),
        ("early 1850", "1850-37", "1850-37", "early 1850"),
        ("first half of 1850", "1850-40", "1850-40", "first half of 1850"),
        ("14th of March, 2025", "2025-03-14", "2025-03-14", "14 March 2025"),
        ("Sept. 1850", "1850-09", "1850-09", "September 1850"),
        ("fall 1890", "1890-23", "1890-23", "autumn 1890"),
        ("winter 1899/1900", "1899-24", "1899-24", "winter 1899–00"),
    ],
)
def test_a_clause_is_read_with_its_words(text: str, first: str, last: str, spoken: str) -> None:
    one = unit(clause(text, 0, len(text)), SPEECH)
    assert (one.first, one.last, bare(one.spoken(SPEECH))) == (first, last, spoken)


@given(UNITS)
def test_the_words_of_a_clause_are_read_as_the_same_clause(text: str) -> None:
    one = unit(clause(text, 0, len(text)), SPEECH)
    words = bare(one.spoken(SPEECH))
    assert unit(clause(words, 0, len(words)), SPEECH) == one
    assert edtf.parse(one.first)


@pytest.mark.parametrize(
    ("left", "right", "dates"),
    [
        ("14", "15 March 2025", ("2025-03-14", "2025-03-15")),
        ("March 14", "15, 2025", ("2025-03-14", "2025-03-15")),
        ("1780", "90", ("1780", "1790")),
        ("1780", "5", ("1780", "1785")),
        ("1780s", "90s", ("178X", "179X")),
        ("18th", "19th century", ("17XX", "18XX")),
        ("spring", "summer 1890", ("1890-21", "1890-22")),
        ("early", "mid 19th century", ("1800", "1834")),
    ],
)
def test_neighbours_lend_each_other_what_is_said_once(
    left: str, right: str, dates: tuple[str, str]
) -> None:
    pair = lend(clause(left, 0, len(left)), clause(right, 0, len(right)))
    assert tuple(unit(each, SPEECH).first for each in pair) == dates


@pytest.mark.parametrize(
    ("text", "hint"),
    [
        ("Mrch 2025", 'did you mean "March"?'),
        ("14 March", "add the year: 1850"),
        ("1800s", "write 1800/1809 for ten years, 18XX for a hundred"),
        ("winter 1890-95", "winter 1890-91"),
    ],
)
def test_what_is_not_understood_gets_a_hint(text: str, hint: str) -> None:
    with pytest.raises(NotUnderstood) as caught:
        unit(clause(text, 0, len(text)), SPEECH)
    assert caught.value.hint == hint
