"""What a check found, for people and for programs: text with carets, JSON, colour, progress."""

from __future__ import annotations

import json
import sys
import unicodedata
from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from itertools import groupby
from types import TracebackType
from typing import TYPE_CHECKING, TextIO

import click

from casebook.diagnostics import Diagnostic, Severity, Span
from casebook.values.showing import count_of

if TYPE_CHECKING:
    from click._termui_impl import ProgressBar

Lines = Callable[[str], Sequence[str] | None]
"""Gives the lines of a file, without their ends; None if the file cannot be shown."""

MOST_OF_A_KIND = 10
"""How many messages of one rule are shown for one case."""

WIDTH = 100
"""How many columns of a source line are shown."""

JSON_VERSION = 1
_TAB = 4
_JOINERS = "\u200c\u200d"
_COLOURS = {Severity.ERROR: "red", Severity.WARNING: "yellow", Severity.SUGGESTION: "cyan"}


class Painter:
    """Puts words into colour, or leaves them as they are."""

    def __init__(self, colour: bool) -> None:
        self.colour = colour

    def severity(self, severity: Severity, text: str) -> str:
        """Text in the colour of a severity."""
        return self._styled(text, fg=_COLOURS[severity], bold=True)

    def strong(self, text: str) -> str:
        """Text that stands out."""
        return self._styled(text, bold=True)

    def faint(self, text: str) -> str:
        """Text that stands back."""
        return self._styled(text, dim=True)

    def _styled(
        self, text: str, *, fg: str | None = None, bold: bool | None = None, dim: bool | None = None
    ) -> str:
        return click.style(text, fg=fg, bold=bold, dim=dim) if self.colour else text


def use_colour(stream: TextIO, environ: Mapping[str, str]) -> bool:
    """Whether to write colour: to a terminal only, and not where NO_COLOR is set to anything.

    Source of the rule of NO_COLOR: no-color.org (from memory: set and not empty means no colour).
    """
    if environ.get("NO_COLOR") or environ.get("TERM") == "dumb":
        return False
    return stream.isatty()


def render(
    diagnostics: Iterable[Diagnostic], lines: Lines, colour: bool, show_all: bool = False
) -> str:
    """All diagnostics as text, one group a case, with a closing line of counts; "" for none.

    Without `show_all` at most ten messages of one rule are shown for one case. No character of a
    record that steers a terminal is written: it is shown escaped.
    """
    found = sorted(set(diagnostics), key=_in_order)
    if not found:
        return ""
    painter = Painter(colour)
    blocks: list[str] = []
    for case, group in groupby(found, key=lambda one: one.case):
        if case:
            blocks.append(painter.strong(f"case {visible(case)}"))
        blocks += _group(list(group), lines, painter, None if show_all else MOST_OF_A_KIND)
    return "\n\n".join([*blocks, painter.strong(counted(found))]) + "\n"


def _in_order(one: Diagnostic) -> tuple[str, Span, str, str, str, int]:
    place = one.span or Span("", 0, 0, 0, 0)
    return one.case, place, one.rule, one.message, one.hint, one.severity


def _group(
    found: list[Diagnostic], lines: Lines, painter: Painter, most: int | None
) -> Iterator[str]:
    """The blocks of one case; the last one shown of a rule says how many more there are."""
    total = Counter(one.rule for one in found)
    shown: Counter[str] = Counter()
    for one in found:
        if most is not None and shown[one.rule] == most:
            continue
        shown[one.rule] += 1
        block = _block(one, lines, painter)
        if shown[one.rule] == most and total[one.rule] > most:
            more = total[one.rule] - most
            block += "\n" + painter.faint(f"and {more} more of this kind (--all shows them)")
        yield block


def _block(one: Diagnostic, lines: Lines, painter: Painter) -> str:
    parts = [_headline(one, painter)]
    if one.span:
        parts += _excerpt(one.span, one.severity, lines, painter)
    if one.hint:
        parts.append(f"  {painter.faint('hint:')} {visible(one.hint)}")
    return "\n".join(parts)


def _headline(one: Diagnostic, painter: Painter) -> str:
    span = one.span
    place = f"{visible(span.file)}:{span.line}:{span.column}: " if span else ""
    word = painter.severity(one.severity, f"{one.severity.word}:")
    rule = painter.faint(f"[{visible(one.rule)}]")
    return f"{place}{word} {visible(one.message)} {rule}"


def _excerpt(span: Span, severity: Severity, lines: Lines, painter: Painter) -> list[str]:
    """The source line with carets under the place; a place over several lines shows its first."""
    text = lines(span.file)
    if text is None or not 1 <= span.line <= len(text):
        return []
    line = text[span.line - 1].rstrip("\r\n")
    last = span.end_column - 1 if span.end_line == span.line else len(line.rstrip())
    shown, start, width = underlined(line, span.column - 1, last)
    carets = painter.severity(severity, "^" * width)
    number = f"{span.line} | "
    margin = " " * (len(number) - 2) + "| "
    return [f"  {painter.faint(number)}{shown}", f"  {painter.faint(margin)}{' ' * start}{carets}"]


def underlined(line: str, first: int, last: int, width: int = WIDTH) -> tuple[str, int, int]:
    """A line as a terminal shows it, with the column at which carets begin and how many they are.

    `first` and `last` are offsets into the line, the last exclusive. Columns count cells: a wide
    character takes two, a combining one none. A line longer than `width` is cut around the carets.
    """
    cells = _cells(line)
    first = min(max(first, 0), len(cells))
    last = min(max(last, first), len(cells))
    begin, end = _window(cells, first, last, width)
    before, after = "…" if begin else "", "…" if end < len(cells) else ""
    shown = before + "".join(text for text, _ in cells[begin:end]) + after
    start = len(before) + sum(size for _, size in cells[begin:first])
    carets = sum(size for _, size in cells[first : min(last, end)])
    return shown.rstrip(), start, max(carets, 1)


def _cells(line: str) -> list[tuple[str, int]]:
    """Each character as it is shown, and how many columns that takes."""
    cells: list[tuple[str, int]] = []
    column = 0
    for char in line:
        shown = " " * (_TAB - column % _TAB) if char == "\t" else visible(char)
        size = _columns(shown) if shown == char else len(shown)
        cells.append((shown, size))
        column += size
    return cells


def _window(cells: list[tuple[str, int]], first: int, last: int, width: int) -> tuple[int, int]:
    """Which characters to show: the whole line if it fits, else a stretch around the place."""
    if sum(size for _, size in cells) <= width:
        return 0, len(cells)
    begin = end = first
    room = width - 2
    while begin > 0 or end < len(cells):
        forward = end < len(cells) and (begin == 0 or end < last or end - first <= first - begin)
        room -= cells[end if forward else begin - 1][1]
        if room < 0:
            break
        begin, end = (begin, end + 1) if forward else (begin - 1, end)
    return begin, end


def _columns(char: str) -> int:
    """How many columns a terminal gives a character (Unicode: East Asian Width, category)."""
    if char in _JOINERS or unicodedata.category(char) in ("Mn", "Me"):
        return 0
    return 2 if unicodedata.east_asian_width(char) in "WF" else 1


def visible(text: str) -> str:
    """The text with every character that steers a terminal or hides shown escaped."""
    if text.isascii() and text.isprintable():
        return text
    return "".join(_escaped(char) if _is_hidden(char) else char for char in text)


def _is_hidden(char: str) -> bool:
    return unicodedata.category(char) in ("Cc", "Cf", "Cs", "Zl", "Zp") and char not in _JOINERS


def _escaped(char: str) -> str:
    return char.encode("unicode_escape").decode("ascii")


def counted(diagnostics: Iterable[Diagnostic]) -> str:
    """How many there are, such as `3 errors, 2 warnings in 4 cases`; "nothing to say" for none."""
    found = list(diagnostics)
    kinds = Counter(one.severity for one in found)
    words = [count_of(kinds[kind], kind.word) for kind in sorted(kinds, reverse=True)]
    cases = len({one.case for one in found if one.case})
    where = f" in {count_of(cases, 'case')}" if cases else ""
    return (", ".join(words) or "nothing to say") + where


def to_json(diagnostics: Iterable[Diagnostic]) -> str:
    """All diagnostics as JSON, in the order of the text, none left out, ending in a line end.

    An object with `version` (1; a change that breaks readers raises it) and `diagnostics`, a list
    of objects: `rule`, `severity` ("error", "warning" or "suggestion"), `case` ("" for the
    archive), `file`, `line`, `column`, `end_line`, `end_column` (counted from 1, the end column
    exclusive; all five null where there is no place), `message`, `hint` ("" if none).
    """
    found = [_as_json(one) for one in sorted(set(diagnostics), key=_in_order)]
    return json.dumps({"version": JSON_VERSION, "diagnostics": found}, indent=2) + "\n"


def _as_json(one: Diagnostic) -> dict[str, str | int | None]:
    span = one.span
    return {
        "rule": one.rule,
        "severity": one.severity.word,
        "case": one.case,
        "file": span.file if span else None,
        "line": span.line if span else None,
        "column": span.column if span else None,
        "end_line": span.end_line if span else None,
        "end_column": span.end_column if span else None,
        "message": one.message,
        "hint": one.hint,
    }


class Progress:
    """A bar on standard error while something long runs; silent where that is no terminal.

    Use it as a context and call it with how much is done of how much.
    """

    def __init__(self, label: str, stream: TextIO | None = None) -> None:
        self._label = visible(label)
        self._stream = stream or sys.stderr
        self._shown = self._stream.isatty()
        self._bar: ProgressBar[int] | None = None
        self._done = 0

    def __enter__(self) -> Progress:
        return self

    def __call__(self, done: int, total: int) -> None:
        """Say that `done` of `total` are done; going back is not shown."""
        if not self._shown or total <= 0:
            return
        if self._bar is None:
            self._bar = click.progressbar(length=total, label=self._label, file=self._stream)
            self._bar.__enter__()
        self._bar.update(max(min(done, total) - self._done, 0))
        self._done = max(done, self._done)

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        if self._bar is not None:
            self._bar.__exit__(kind, error, trace)
