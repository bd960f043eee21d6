"""What a check has to say: a place, a severity, a message and a hint. Values only."""

from __future__ import annotations

from dataclasses import dataclass
from enum import IntEnum


class Severity(IntEnum):
    """How much a fault matters. Only an error stops a build."""

    SUGGESTION = 1
    WARNING = 2
    ERROR = 3

    @property
    def word(self) -> str:
        """The word printed before the message: "error", "warning" or "suggestion"."""
        return self.name.lower()


@dataclass(frozen=True, slots=True, order=True)
class Span:
    """A stretch of a file: lines and columns counted from 1, the end column exclusive.

    `file` is relative to the archive's folder, with forward slashes.
    """

    file: str
    line: int
    column: int
    end_line: int
    end_column: int


@dataclass(frozen=True, slots=True)
class Diagnostic:
    """One fault: which rule speaks, how much it matters, where, what, and what to do.

    `rule` is a rule's name, or one of the reader's own (`yaml`, `unknown-key`, ...). `span` is None
    for a fault of a whole folder, whose path then stands in `case`. `case` is the case's id or
    folder, empty for a fault of the archive.
    """

    rule: str
    severity: Severity
    message: str
    span: Span | None = None
    hint: str = ""
    case: str = ""
