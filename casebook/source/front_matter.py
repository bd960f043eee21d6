"""Front-matter Markdown: bytes to the keys between two lines `---` and the prose below them."""

from __future__ import annotations

import re
from dataclasses import dataclass

from casebook.diagnostics import Diagnostic, Span
from casebook.source.nodes import Mapping
from casebook.source.parsing import parse
from casebook.source.text import clean, decode, error

_MARKER = re.compile(r"---[ \t]*")
_NEARLY = re.compile(r"[ \t]*[-\u2010-\u2015\u2212]{1,5}[ \t]*")
_HINT = "begin the file with a line `---`, then the keys, then a line `---`, then the prose"


@dataclass(frozen=True, slots=True)
class Document:
    """A file of front matter and prose.

    `front` is None where there are no keys to read; `body` is the prose with `\\n` line ends,
    `body_line` the line of the file at which it begins.
    """

    front: Mapping | None
    body: str
    body_line: int
    diagnostics: tuple[Diagnostic, ...]


def read_document(data: bytes, file: str) -> Document:
    """Read a file of front matter and prose. Never raises for what the file holds."""
    text, faults = decode(data, file)
    if text is None:
        return Document(None, "", 1, faults)
    source, hidden = clean(text, file)
    if not source.text.strip():
        fault = error("empty-file", _line(file, 1), "the file is empty", _HINT)
        return Document(None, "", 1, (*hidden, fault))
    read = _split(source.text.split("\n"), file)
    return Document(read.front, read.body, read.body_line, (*hidden, *read.diagnostics))


def _split(lines: list[str], file: str) -> Document:
    if not _MARKER.fullmatch(lines[0]):
        return Document(None, "\n".join(lines), 1, (_no_beginning(lines, file),))
    found = (number for number, line in enumerate(lines[1:], 1) if _MARKER.fullmatch(line))
    end = next(found, None)
    if end is None:
        return Document(None, "", len(lines), (_no_end(lines, file),))
    front, faults = _front("\n".join(lines[1:end]), file)
    return Document(front, "\n".join(lines[end + 1 :]), min(end + 2, len(lines)), faults)


def _front(text: str, file: str) -> tuple[Mapping | None, tuple[Diagnostic, ...]]:
    parsed = parse(text, file, first_line=2)
    if isinstance(parsed.node, Mapping):
        return parsed.node, parsed.diagnostics
    if parsed.node is not None:
        message = "the front matter is no group of keys"
        fault = error("front-matter", parsed.node.span, message, "write it as `key: value` lines")
        return None, (*parsed.diagnostics, fault)
    if parsed.diagnostics:
        return None, parsed.diagnostics
    return None, (error("empty-file", _line(file, 1), "the front matter is empty", _HINT),)


def _no_beginning(lines: list[str], file: str) -> Diagnostic:
    number = next(number for number, line in enumerate(lines, 1) if line.strip())
    line = lines[number - 1]
    if _MARKER.fullmatch(line):
        message, hint = "blank lines stand before the front matter", "take them away"
    elif _NEARLY.fullmatch(line):
        message, hint = _nearly(line)
    else:
        message, hint = "the file does not begin with front matter", _HINT
    return error("front-matter", _line(file, number, line), message, hint)


def _no_end(lines: list[str], file: str) -> Diagnostic:
    for number, line in enumerate(lines[1:], 2):
        if _NEARLY.fullmatch(line):
            message, hint = _nearly(line)
            return error("front-matter", _line(file, number, line), message, hint)
    message = "the front matter begins here and has no end"
    return error("front-matter", _line(file, 1, "---"), message, "add a line `---` below the keys")


def _nearly(line: str) -> tuple[str, str]:
    message = f"the line `{line.strip()}` is not the `---` that bounds the front matter"
    return message, "write three plain hyphens at the beginning of the line and nothing else"


def _line(file: str, number: int, text: str = "") -> Span:
    return Span(file, number, 1, number, len(text) + 1)
