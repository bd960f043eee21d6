"""The nodes that YAML text becomes: texts, lists and groups of keys, each with its place."""

from __future__ import annotations

from dataclasses import dataclass, replace

from casebook.diagnostics import Span


@dataclass(frozen=True, slots=True)
class Scalar:
    """One text as written, never guessed at: `NO`, `on`, `010` and `1:20` stay what they are.

    `plain` is true without quotes; an empty value (`key:`) is the plain text "".
    """

    text: str
    span: Span
    plain: bool

    def at(self, start: int, end: int) -> Span:
        """The place in the file of `text[start:end]`, offsets in characters.

        Exact where the text stands in the file character by character, on one line, bare or in
        quotes; else (an escape, several lines) the place of the whole text. Offsets outside the
        text are brought back to its ends.
        """
        inset = self._inset()
        if inset is None:
            return self.span
        first = min(max(start, 0), len(self.text))
        last = min(max(end, first), len(self.text))
        column = self.span.column + inset
        return replace(self.span, column=column + first, end_column=column + last)

    def _inset(self) -> int | None:
        """How far inside the span the text begins; None where the two differ in length.

        An escape or a doubled quote is always longer in the file than in the text, so equal
        lengths prove that nothing was rewritten.
        """
        if self.span.line != self.span.end_line:
            return None
        spare = self.span.end_column - self.span.column - len(self.text)
        if spare == 0:
            return 0
        return 1 if spare == 2 and not self.plain else None


@dataclass(frozen=True, slots=True)
class Sequence:
    """A list: its items in order."""

    items: tuple[Node, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Entry:
    """One key with its value."""

    key: Scalar
    value: Node


@dataclass(frozen=True, slots=True)
class Mapping:
    """A group of keys, in the order of the file; no key stands in it twice."""

    entries: tuple[Entry, ...]
    span: Span


Node = Scalar | Sequence | Mapping
