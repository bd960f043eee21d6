"""Condition and evidence in sentences."""

from __future__ import annotations

import pytest

from casebook.model.archive import Case
from casebook.model.condition import Finding, FollowUp, Found, History
from casebook.model.condition import Test as Trying
from casebook.output.condition_view import (
    examination_lines,
    finding_view,
    follow_line,
    follow_lines,
    found_line,
    found_lines,
    hazard_facts,
    history_line,
    history_lines,
    left_alone_lines,
)
from casebook.output.condition_view import test_line as line_of_test
from casebook.output.condition_view import test_lines as lines_of_tests
from casebook.output.marks_view import NO_VIEWS
from casebook.output.wording import text_of
from tests.builders import WORDING, record


def test_what_is_seen_is_kept_apart_from_what_it_means() -> None:
    finding = record(Finding, "{part: joint front, seen: cords broken, means: held loosely}")
    view = finding_view(finding, WORDING, NO_VIEWS)
    assert (view.seen, view.means) == ("cords broken", "held loosely")
    assert text_of(view.where) == "The front joint"


def test_what_was_sought_and_not_found() -> None:
    finding = record(Finding, "{sought: a watermark, found: not seen, because: a lining hides it}")
    seen = finding_view(finding, WORDING, NO_VIEWS).seen
    assert seen == "Looked for: a watermark; not seen (a lining hides it)"


@pytest.mark.parametrize(
    ("found", "line"),
    [
        (
            "{id: old-glue, onto: spine, material: animal-glue, origin: later}",
            "Old glue: animal glue, on the spine; a later addition.",
        ),
        (
            "{id: thread, joins: [board 1, text-block], held: sewn, cuts: text-block}",
            "Thread, joining board 1 and the text block, sewn, it goes through the text block.",
        ),
        (
            "{id: tube, onto: spine, adhesive: unnamed, walls: '1 on, 2 off', height: 300 mm}",
            (
                "Tube, on the spine, stuck with an adhesive not named, a hollow tube, one on and two "
                "off, 300 mm high."
            ),
        ),
        (
            "{id: strap, bonds: [{onto: board 1, held: nailed}, {onto: board 2, adhesive: pva}]}",
            "Strap, nailed to board 1, stuck to board 2 with polyvinyl acetate.",
        ),
        ("{id: old-size, soaks-in: leaf}", "Old size, soaked into the leaf."),
        (
            "{id: twine, onto: spine, origin: later, note: four holes}",
            "Twine, on the spine; a later addition. Four holes.",
        ),
    ],
)
def test_a_layer_found_is_told_with_what_holds_it(found: str, line: str) -> None:
    assert text_of(found_line(record(Found, found), WORDING)) == line


@pytest.mark.parametrize(
    ("test", "line"),
    [
        (
            "{part: endband head, agent: water, method: swab, result: bleeds}",
            "Water on the head endband (swab): bleeds.",
        ),
        (
            "{agent: [water, ethanol], part: spine, times: 2, stand-in: an offcut, result: none}",
            (
                "Water, and separately ethanol on an offcut, standing in for the spine (twice): "
                "the result is none."
            ),
        ),
        (
            "{method: XRF, part: board 1, laboratory: the university, sample: none taken, by: LK}",
            (
                "XRF on board 1: the result is not recorded; sample: none taken; made at the "
                "university; by LK."
            ),
        ),
        ("{method: surface pH, ph: 5.2}", "Surface pH: pH 5.2."),
    ],
)
def test_a_test_is_told_with_its_circumstances(test: str, line: str) -> None:
    assert text_of(line_of_test(record(Trying, test), WORDING)) == line


def test_an_earlier_treatment_is_told_with_its_hands_and_its_state() -> None:
    known = record(History, "{hands: a binder, what: rebacked, state: failed}")
    assert text_of(history_line(known, WORDING)) == "Rebacked by a binder; now failed."
    unknown = record(History, "{date: c. 1900, hands: unknown, what: rebacked}")
    assert text_of(history_line(unknown, WORDING)) == "c. 1900: rebacked by an unknown hand."
    undated = record(History, "{date: unknown, what: rebacked}")
    assert text_of(history_line(undated, WORDING)) == "Date unknown: rebacked."
    told = record(History, "{what: rebacked, case: c-1}")
    assert text_of(history_line(told, WORDING)) == "Rebacked; it is told in c-1."


def test_a_list_that_was_not_there_is_told_where_it_would_stand() -> None:
    none = record(
        Case,
        "{id: c, history: none, tests: none, as-found: none, follow-up: none, left-alone: none}",
    )
    told = (history_lines, lines_of_tests, found_lines, follow_lines, left_alone_lines)
    assert [text_of(line) for lines in told for line in lines(none, WORDING)] == [
        "No sign of an earlier treatment was found.",
        "No tests were made.",
        "No added layers were found.",
        "It has not been looked at again.",
        "Nothing was left alone on purpose.",
    ]
    nothing = record(Case, "{id: c, findings: none, hazards: none}")
    assert [text_of(line) for line in examination_lines(nothing, WORDING)] == [
        "No damage was seen.",
        "No danger was found.",
    ]


def test_a_later_look_says_how_it_stands() -> None:
    follow = record(FollowUp, "{layer: cloth-lining, state: sound, next: 2030}")
    line = "The cloth lining: sound; to be looked at again 2030."
    assert text_of(follow_line(follow, WORDING)) == line
    seen = record(FollowUp, "{state: sound, by: [AM, RT]}")
    assert text_of(follow_line(seen, WORDING)) == "The whole: sound; seen by AM and RT."


def test_each_later_look_has_an_anchor_by_its_number() -> None:
    case = record(Case, "{id: c, follow-up: [{state: sound}, {state: lifting}]}")
    assert [line[0].anchor for line in follow_lines(case, WORDING)] == [
        "follow-up-1",
        "follow-up-2",
    ]


def test_hazards_examination_and_what_was_left_alone() -> None:
    case = record(
        Case,
        "{id: c, hazards: [{what: mould, part: spine}], examination: {because: a loan, method:"
        " [loupe, raking light], by: AM, date: 2025-01-28}, left-alone: [{part: spine, because:"
        " it works}]}",
    )
    (hazard,) = hazard_facts(case, WORDING)
    assert text_of(hazard.lines[0]).endswith("no caution is recorded; see the safety data sheet.")
    assert [text_of(one) for one in examination_lines(case, WORDING)] == [
        "Examined because: a loan.",
        "Looked at by loupe and raking light.",
        "Examined by AM, 28 January 2025.",
    ]
    assert text_of(left_alone_lines(case, WORDING)[0]) == "The spine: it works."
