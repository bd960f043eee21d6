"""Diagnostics read well on a terminal, safely, and as JSON; golden files show whole messages."""

from __future__ import annotations

import io
import json
import unicodedata
from collections.abc import Sequence
from pathlib import Path

import jsonschema
import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook.diagnostics import Diagnostic, Severity, Span
from casebook.source import lines_of, read_document
from casebook.terminal import Painter, Progress, counted, render, to_json, underlined, use_colour

GOLDEN = sorted((Path(__file__).parent / "golden" / "messages").glob("*.txt"))
PARTING = "-- messages --\n"
BEGINNING = "-- case.md --\n"


class Terminal(io.StringIO):
    """A stream that says it is a terminal."""

    def isatty(self) -> bool:
        return True


def fault(line: int = 1, column: int = 1, **other: str) -> Diagnostic:
    span = Span(other.get("file", "a.md"), line, column, line, column + 1)
    rule, case = other.get("rule", "yaml"), other.get("case", "c1")
    severity = Severity[other.get("severity", "ERROR")]
    return Diagnostic(rule, severity, other.get("message", "wrong"), span, case=case)


def no_lines(_file: str) -> Sequence[str] | None:
    return None


@pytest.mark.parametrize("path", GOLDEN, ids=lambda path: path.stem)
def test_messages_are_as_the_golden_file_shows(path: Path, request: pytest.FixtureRequest) -> None:
    text = path.read_bytes().decode("utf-8")
    record, expected = text.removeprefix(BEGINNING).split(PARTING)
    found = read_document(record.encode(), "case.md").diagnostics
    told = render(found, lambda _: lines_of(record.encode()), colour=False)
    if request.config.getoption("--update"):
        path.write_bytes(f"{BEGINNING}{record}{PARTING}{told}".encode())
        return
    assert told == expected


def test_there_are_golden_files() -> None:
    assert len(GOLDEN) >= 5


def test_nothing_to_say_is_no_text() -> None:
    assert render([], no_lines, colour=False) == ""


def test_faults_stand_by_case_then_file_then_line_then_column() -> None:
    found = [
        fault(2, 1, case="c2"),
        fault(10, 1),
        fault(2, 5),
        fault(2, 1),
        fault(1, 1, file="b.md"),
        fault(9, 9, case=""),
    ]
    told = render(found, no_lines, colour=False)
    places = [line.split(": ")[0] for line in told.splitlines() if ": error" in line]
    assert places == ["a.md:9:9", "a.md:2:1", "a.md:2:5", "a.md:10:1", "b.md:1:1", "a.md:2:1"]
    assert [line for line in told.splitlines() if line.startswith("case ")] == [
        "case c1",
        "case c2",
    ]
    assert told.endswith("6 errors in 2 cases\n")


def test_a_fault_of_a_whole_folder_has_no_place() -> None:
    one = Diagnostic("photo", Severity.SUGGESTION, "no photo", hint="take one", case="cases/x")
    assert render([one], no_lines, colour=False) == (
        "case cases/x\n\nsuggestion: no photo [photo]\n  hint: take one\n\n1 suggestion in 1 case\n"
    )


def test_at_most_ten_of_a_kind_and_case_are_shown() -> None:
    found = [fault(line) for line in range(1, 25)] + [fault(30, rule="tab")]
    found += [fault(line, case="c2") for line in range(1, 11)]
    told = render(found, no_lines, colour=False)
    assert told.count("[yaml]") == 20
    assert told.count("[tab]") == 1
    assert told.count("of this kind") == 1
    assert "a.md:10:1: error: wrong [yaml]\nand 14 more of this kind (--all shows them)" in told
    assert told.endswith("35 errors in 2 cases\n")
    everything = render(found, no_lines, colour=False, show_all=True)
    assert everything.count("[yaml]") == 34
    assert "of this kind" not in everything


@pytest.mark.parametrize(
    ("line", "first", "last", "shown", "start", "width"),
    [
        ("size: x", 6, 7, "size: x", 6, 1),
        ("書物: x", 4, 5, "書物: x", 6, 1),
        ("書物: x", 0, 2, "書物: x", 0, 4),
        ("e\u0301: x", 4, 5, "e\u0301: x", 3, 1),
        ("\tx", 1, 2, "    x", 4, 1),
        ("ab\tx", 3, 4, "ab  x", 4, 1),
        ("\x1b[31mx", 5, 6, "\\x1b[31mx", 8, 1),
        ("a\u202eb", 2, 3, "a\\u202eb", 7, 1),
        ("a", 1, 1, "a", 1, 1),
        ("", 0, 0, "", 0, 1),
        ("a", 99, 120, "a", 1, 1),
    ],
)
def test_the_caret_stands_under_the_character(
    line: str, first: int, last: int, shown: str, start: int, width: int
) -> None:
    assert underlined(line, first, last) == (shown, start, width)


@pytest.mark.parametrize("at", [0, 3, 250, 497, 499])
def test_a_long_line_is_cut_around_the_caret(at: int) -> None:
    line = "".join(chr(ord("a") + number % 26) for number in range(500))
    shown, start, width = underlined(line, at, at + 2, width=60)
    assert len(shown) <= 60
    assert shown[start : start + width] == line[at : at + 2]


@given(st.text(max_size=200), st.integers(-3, 203), st.integers(-3, 203))
def test_carets_never_leave_the_line_and_no_hidden_character_gets_out(
    line: str, first: int, last: int
) -> None:
    shown, start, width = underlined(line, first, last, width=40)
    assert 0 <= start <= 40
    assert 1 <= width <= 40
    categories = {unicodedata.category(char) for char in shown if char not in "\u200c\u200d"}
    assert not categories & {"Cc", "Cf", "Cs", "Zl", "Zp"}


def test_nothing_a_record_holds_steers_the_terminal() -> None:
    one = Diagnostic(
        "r\x1b", Severity.ERROR, "m\x1b[2J\nx", Span("f\x07.md", 1, 1, 1, 9), "h\x9b", "c\r\u2066"
    )
    told = render([one], lambda _: ["\x1b]0;title\x07 text"], colour=False)
    assert all(char.isprintable() or char == "\n" for char in told)
    assert "\\x1b]0;title\\x07 text" in told
    assert "m\\x1b[2J\\nx" in told


def test_colour_only_adds_colour() -> None:
    found = [fault(), fault(2, severity="WARNING")]
    plain = render(found, lambda _: ["one", "two"], colour=False)
    painted = render(found, lambda _: ["one", "two"], colour=True)
    assert "\x1b[" in painted
    assert "\x1b[" not in plain
    assert Painter(colour=False).severity(Severity.ERROR, "x") == "x"


@pytest.mark.parametrize(
    ("stream", "environ", "answer"),
    [
        (Terminal(), {}, True),
        (Terminal(), {"NO_COLOR": ""}, True),
        (Terminal(), {"NO_COLOR": "1"}, False),
        (Terminal(), {"TERM": "dumb"}, False),
        (io.StringIO(), {}, False),
    ],
)
def test_colour_is_for_terminals_that_want_it(
    stream: io.StringIO, environ: dict[str, str], *, answer: bool
) -> None:
    assert use_colour(stream, environ) is answer


def test_counts_are_worded() -> None:
    found = [fault(1), fault(2), fault(3, severity="WARNING", case="c2"), fault(4, case="")]
    assert counted(found) == "3 errors, 1 warning in 2 cases"
    assert counted([fault(case="")]) == "1 error"
    assert counted([]) == "nothing to say"


FIELDS = "rule severity case file line column end_line end_column message hint"
SCHEMA = {
    "type": "object",
    "required": ["version", "diagnostics"],
    "additionalProperties": False,
    "properties": {
        "version": {"const": 1},
        "diagnostics": {
            "type": "array",
            "items": {
                "type": "object",
                "additionalProperties": False,
                "required": FIELDS.split(),
                "properties": {
                    **{key: {"type": "string"} for key in ("rule", "case", "message", "hint")},
                    "severity": {"enum": ["error", "warning", "suggestion"]},
                    "file": {"type": ["string", "null"]},
                    **{
                        key: {"type": ["integer", "null"], "minimum": 1}
                        for key in ("line", "column", "end_line", "end_column")
                    },
                },
            },
        },
    },
}


def test_json_holds_all_in_order_as_documented() -> None:
    found = [fault(line) for line in range(30, 0, -1)]
    found.append(Diagnostic("photo", Severity.WARNING, "no photo", case="c0"))
    data = json.loads(to_json(found))
    jsonschema.validate(data, SCHEMA)
    lines = [one["line"] for one in data["diagnostics"]]
    assert lines == [None, *range(1, 31)]
    assert to_json(found) == to_json(reversed(found))
    assert to_json([fault(message="\x1b é")]).isascii()


def test_progress_is_silent_where_nobody_watches() -> None:
    stream = io.StringIO()
    with Progress("pictures", stream) as report:
        report(1, 2)
        report(2, 2)
    assert stream.getvalue() == ""


def test_progress_shows_a_bar_on_a_terminal() -> None:
    stream = Terminal()
    with Progress("pictures", stream) as report:
        for done in (1, 2, 1, 4, 9):
            report(done, 4)
        report(0, 0)
    assert "pictures" in stream.getvalue()
    assert "100%" in stream.getvalue()
