"""From bytes to clean text with places: encoding, size, line ends, characters nobody can see."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Mapping
from types import MappingProxyType

from casebook.diagnostics import Diagnostic, Severity, Span

MAX_BYTES = 2_000_000
"""The largest file that is read, in bytes."""

RULES: Mapping[str, str] = MappingProxyType(
    {
        "alias": "anchors (`&name`) and aliases (`*name`) of YAML are not read",
        "comma-in-text": "inside { } a comma ends a text that is not in quotes",
        "control-character": "a character that cannot be seen stands in the file",
        "empty-file": "the file, or its front matter, holds nothing",
        "encoding": "the file is not text in UTF-8",
        "front-matter": "the front matter is not between two lines `---`, or is no group of keys",
        "hash-in-text": "` #` before a word turns the rest of the line into a comment",
        "key-not-text": "a key is a list, a group of keys, or missing",
        "lone-word": "inside { } a word stands without a value",
        "merge-key": "the merge key `<<` of YAML is not read",
        "question-mark": "a `?` directly before `}`, which other readers of YAML refuse",
        "repeated-key": "the same key stands twice in one group",
        "several-documents": "a second document begins in the file",
        "tab": "a line is indented by a tab",
        "tag": "tags of YAML (`!name`) are not read",
        "too-big": "the file is over 2 MB",
        "too-deep": "lists and groups stand over 64 deep in one another",
        "yaml": "the text breaks the grammar of YAML",
    }
)
"""Every rule that the reading of files can name, with what it means."""

_HIDDEN = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x84\x86-\x9f\ud800-\udfff\ufffe\uffff]+|[\x85\u2028\u2029\ufeff]+"
)
_LINE_MARKS = "\x85\u2028\u2029\ufeff"


class Source:
    """A stretch of a file: its text with `\\n` line ends, and where that text begins."""

    def __init__(self, text: str, file: str, first_line: int = 1) -> None:
        self.text = text
        self.file = file
        self.first_line = first_line
        self._starts = [0, *(match.end() for match in re.finditer("\n", text))]

    def line_at(self, index: int) -> int:
        """The line, counted in the file, of a character given by its offset."""
        return self.first_line + bisect_right(self._starts, index) - 1

    def line_start(self, index: int) -> int:
        """The offset at which the line of a character begins."""
        return self._starts[bisect_right(self._starts, index) - 1]

    def line_text(self, index: int) -> str:
        """The whole line of a character, without its end."""
        start = self.line_start(index)
        end = self.text.find("\n", start)
        return self.text[start:] if end < 0 else self.text[start:end]

    def span(self, start: int, end: int) -> Span:
        """The place of `text[start:end]`."""
        starts, before = self._starts, self.first_line - 1
        line = bisect_right(starts, start)
        last = line if line == len(starts) or end < starts[line] else bisect_right(starts, end)
        column, end_column = start - starts[line - 1] + 1, end - starts[last - 1] + 1
        return Span(self.file, before + line, column, before + last, end_column)

    def part(self, start: int, end: int) -> Source:
        """A stretch of this one; `start` is the beginning of a line."""
        return Source(self.text[start:end], self.file, self.line_at(start))


def error(rule: str, span: Span, message: str, hint: str = "") -> Diagnostic:
    """A fault that stops a build."""
    return Diagnostic(rule, Severity.ERROR, message, span, hint)


def warning(rule: str, span: Span, message: str, hint: str = "") -> Diagnostic:
    """A fault that is told and does not stop a build."""
    return Diagnostic(rule, Severity.WARNING, message, span, hint)


def decode(data: bytes, file: str) -> tuple[str | None, tuple[Diagnostic, ...]]:
    """The text of a file, or None with the one fault that keeps it from being read."""
    fault = _too_big(len(data), file) or _not_text(data, file)
    if fault:
        return None, (fault,)
    try:
        return data.decode("utf-8").removeprefix("\ufeff"), ()
    except UnicodeDecodeError as trouble:
        return None, (_not_utf8(data, trouble.start, file),)


def lines_of(data: bytes) -> list[str]:
    """The lines of a file as this reader counts them, for showing; never fails."""
    text = data.decode("utf-8", "replace").removeprefix("\ufeff")
    return normal(text).split("\n")


def normal(text: str) -> str:
    """The text with every line end as `\\n`."""
    return text.replace("\r\n", "\n").replace("\r", "\n")


def clean(text: str, file: str, first_line: int = 1) -> tuple[Source, tuple[Diagnostic, ...]]:
    """The text with what cannot be seen told and turned into spaces, so that places stay right.

    A text over the limit of size is told and becomes empty.
    """
    size = len(text) if len(text) * 4 <= MAX_BYTES else len(text.encode("utf-8", "surrogatepass"))
    if fault := _too_big(size, file):
        return Source("", file, first_line), (fault,)
    source = Source(normal(text.removeprefix("\ufeff")), file, first_line)
    found = tuple(_hidden(source, match) for match in _HIDDEN.finditer(source.text))
    if not found:
        return source, ()
    shown = _HIDDEN.sub(lambda match: " " * len(match[0]), source.text)
    return Source(shown, file, first_line), found


def _hidden(source: Source, match: re.Match[str]) -> Diagnostic:
    span = source.span(*match.span())
    code = f"U+{ord(match[0][0]):04X}"
    if match[0][0] in _LINE_MARKS:
        message = f"a hidden character ({code}) stands here; it was read as a space"
        return warning("control-character", span, message, "delete it: it came in by pasting")
    message = f"a control character ({code}) stands here"
    return error("control-character", span, message, "delete it and type the text anew")


def _too_big(size: int, file: str) -> Diagnostic | None:
    if size <= MAX_BYTES:
        return None
    message = f"the file is {size / 1_000_000:.1f} MB; files over 2 MB are not read"
    hint = "records are plain text: put photos and data beside them as files of their own"
    return error("too-big", Span(file, 1, 1, 1, 1), message, hint)


def _not_text(data: bytes, file: str) -> Diagnostic | None:
    hint = "save it in your editor as UTF-8"
    if data[:2] in (b"\xff\xfe", b"\xfe\xff"):
        return error("encoding", Span(file, 1, 1, 1, 1), "the file is saved as UTF-16", hint)
    at = data.find(b"\0")
    if at < 0:
        return None
    message = "the file holds NUL bytes: it is no text, or was cut off while being saved"
    return error("encoding", _place(data, at, file), message, f"if it is text, {hint}")


def _not_utf8(data: bytes, at: int, file: str) -> Diagnostic:
    message = f"the file is not UTF-8: the byte 0x{data[at]:02X} here belongs to no character"
    hint = "save it in your editor as UTF-8; an older encoding was used for this letter"
    return error("encoding", _place(data, at, file), message, hint)


def _place(data: bytes, at: int, file: str) -> Span:
    """The place of one byte, in characters of the text before it."""
    before = lines_of(data[:at])
    line, column = len(before), len(before[-1]) + 1
    return Span(file, line, column, line, column + 1)
