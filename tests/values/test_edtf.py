"""EDTF levels 0 to 2, row by row against the published examples and a second parser."""

from __future__ import annotations

import contextlib
import csv
import io
import warnings
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook.values import edtf
from casebook.values.fault import NotUnderstood
from tests.values.edtf_texts import EDTF_TEXTS

with (
    Path(__file__)
    .parents[1]
    .joinpath("reference/edtf_examples.csv")
    .open(encoding="utf-8", newline="") as _file
):
    ROWS = list(csv.DictReader(_file))
VALID = [row for row in ROWS if row["level"] != "I"]
INVALID = [row["edtf"] for row in ROWS if row["level"] == "I"]


@pytest.mark.parametrize("row", VALID, ids=lambda row: row["edtf"])
def test_a_published_example_is_read_with_its_days_and_ends(row: dict[str, str]) -> None:
    tree = edtf.parse(row["edtf"])
    (earliest, start_kind), (latest, end_kind) = edtf.starts(tree), edtf.ends(tree)
    assert (start_kind, end_kind) == (row["start_kind"], row["end_kind"])
    if "months not given by the spec" not in row["note"]:
        assert (str(earliest or ""), str(latest or "")) == (row["earliest"], row["latest"])


@pytest.mark.parametrize("text", INVALID)
def test_what_the_specification_excludes_is_refused(text: str) -> None:
    with pytest.raises(NotUnderstood):
        edtf.parse(text)


@pytest.mark.parametrize(
    ("text", "first", "last"),
    [
        ("1890-24", "1890-12-01", "1891-02-28"),
        ("1890-28", "1890-12-01", "1891-02-28"),
        ("1890-30", "1890-12-01", "1891-02-28"),
        ("1890-31", "1890-03-01", "1890-05-31"),
        ("19XX-02-29", "1904-02-29", "1996-02-29"),
        ("-00XX", "-0099-01-01", "-0001-12-31"),
        ("1950S3", "1950-01-01", "1959-12-31"),
        ("-1950S2", "-1999-01-01", "-1900-12-31"),
        ("2004-02-3X/2004-03", "", ""),
        ("198X-3X", "", ""),
    ],
)
def test_seasons_and_unspecified_digits_keep_to_the_calendar(
    text: str, first: str, last: str
) -> None:
    if not first:
        with pytest.raises(NotUnderstood):
            edtf.parse(text)
        return
    tree = edtf.parse(text)
    assert (str(edtf.starts(tree)[0]), str(edtf.ends(tree)[0])) == (first, last)


@pytest.mark.parametrize(
    ("text", "wrong"),
    [
        ("2004/2005-13", "2005-13"),
        ("[1667,166]", "166"),
        ("1985-04-12 ", " "),
        ("{1960..,1961}", "1960.."),
        ("../..", "../.."),
        ("/", "/"),
        ("-0000", "-0000"),
        ("Y1E99999999999", "Y1E99999999999"),
        ("1950S5", "1950S5"),
        ("2001-21-05", "2001-21-05"),
        ("1985-04-12T24:00:00", "1985-04-12T24:00:00"),
        ("[1985", "5"),
    ],
)
def test_a_fault_points_at_the_piece_that_is_wrong(text: str, wrong: str) -> None:
    with pytest.raises(NotUnderstood) as caught:
        edtf.parse(text)
    assert text[caught.value.start : caught.value.end] == wrong


def test_a_mark_before_a_component_is_its_own_and_after_it_covers_all_before() -> None:
    (point,) = edtf.points(edtf.parse("?2004-06~-11"))
    assert [(part.text, part.approximate, part.uncertain) for part in point.components] == [
        ("2004", True, True),
        ("06", True, False),
        ("11", False, False),
    ]


@given(EDTF_TEXTS)
def test_every_text_of_the_grammar_is_read_and_starts_before_it_ends(text: str) -> None:
    tree = edtf.parse(text)
    earliest, latest = edtf.starts(tree)[0], edtf.ends(tree)[0]
    assert earliest is None or latest is None or earliest <= latest


@given(st.text("0123456789-XYEST/.[]{},?~%:Z+", max_size=24))
def test_any_signs_are_read_or_refused_within_their_text(text: str) -> None:
    try:
        edtf.parse(text)
    except NotUnderstood as fault:
        assert 0 <= fault.start < fault.end <= max(len(text), 1) + 1


def test_a_second_parser_gives_the_same_days_for_plain_dates() -> None:
    with warnings.catch_warnings(), contextlib.redirect_stdout(io.StringIO()):
        warnings.simplefilter("ignore")
        from edtf import parse_edtf

        for text in (
            "1985-04-12",
            "1985-04",
            "198X",
            "19XX",
            "1984-02",
            "2004-06/2006-08",
            "1XXX-12",
            "156X-12-25",
            "2001-34",
        ):
            theirs = parse_edtf(text)
            ours = edtf.parse(text)
            days = (theirs.lower_strict(), theirs.upper_strict())
            assert (edtf.starts(ours)[0], edtf.ends(ours)[0]) == tuple(
                (day.tm_year, day.tm_mon, day.tm_mday) for day in days
            ), text
