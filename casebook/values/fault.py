"""The one error that the values raise: a text that could not be understood, and where."""

from __future__ import annotations


class NotUnderstood(ValueError):
    """A text is not a value of the kind asked for.

    `message` says what is wrong, `hint` what to write instead (may be empty); `start` and `end`
    are offsets into the text, in characters, so that a caret can point at the very word.
    """

    def __init__(self, message: str, *, hint: str = "", start: int = 0, end: int | None = None):
        super().__init__(message)
        self.message = message
        self.hint = hint
        self.start = start
        self.end = start + 1 if end is None else end
