"""Faults of grammar in our own words: what the parser stumbled over, and what to do about it."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass

import yaml

from casebook.diagnostics import Diagnostic
from casebook.source.text import Source, error
from casebook.source.traps import tab

MAX_DEPTH = 64
"""How deep lists and groups may stand in one another."""

_QUOTE_IT = "put the whole text in quotes"
_COLON_BEFORE = re.compile(r":[ \t]")
_OPENERS = {"]": "[", "}": "{"}


@dataclass(frozen=True, slots=True)
class _Problem:
    """Where the parser stopped and what it was doing, in its own words, which nobody sees.

    `at` and `since` are offsets: of the stumbling block, and of the beginning of what was being
    read. `opened` is the offset of the innermost bracket still open.
    """

    source: Source
    doing: str
    what: str
    at: int
    since: int
    opened: int | None

    @property
    def char(self) -> str:
        """The character stumbled over; "" at the end of the text."""
        return self.source.text[self.at : self.at + 1]

    @property
    def before(self) -> str:
        """What stands before it on its line."""
        return self.source.text[self.source.line_start(self.at) : self.at]

    @property
    def at_end(self) -> bool:
        """Whether only blanks follow, to the end of the text."""
        return not self.source.text[self.at :].strip()

    def fault(self, at: int, message: str, hint: str) -> Diagnostic:
        """The diagnostic at an offset, which is kept within the text."""
        end = len(self.source.text.rstrip())
        start = min(at, max(end - 1, 0))
        return error("yaml", self.source.span(start, min(start + 1, end)), message, hint)


def explain(trouble: yaml.YAMLError, source: Source, opened: int | None) -> Diagnostic:
    """The parser's complaint as one diagnostic; `opened` is the innermost bracket still open."""
    mark = getattr(trouble, "problem_mark", None)
    since = getattr(trouble, "context_mark", None) or mark
    problem = _Problem(
        source,
        str(getattr(trouble, "context", None) or ""),
        str(getattr(trouble, "problem", None) or ""),
        mark.index if mark else 0,
        since.index if since else 0,
        opened,
    )
    return next((found for word in _WORDS if (found := word(problem))), None) or _other(problem)


def too_deep(source: Source, at: int) -> Diagnostic:
    """Lists and groups stand too deep in one another at an offset."""
    message = f"lists and groups stand over {MAX_DEPTH} deep in one another here"
    hint = "check the brackets and the indentation"
    return error("too-deep", source.span(at, at + 1), message, hint)


def _far_too_deep(problem: _Problem) -> Diagnostic | None:
    """The parser looks ahead of what it hands out, and has a limit of its own, far above ours."""
    found = "nesting depth" in problem.what
    return too_deep(problem.source, problem.at) if found else None


def _tab(problem: _Problem) -> Diagnostic | None:
    if problem.char != "\t" or problem.before.strip():
        return None
    return tab(problem.source.span(problem.at, problem.at + 1))


def _escape(problem: _Problem) -> Diagnostic | None:
    if "quoted scalar" not in problem.doing or not re.search("escape|hex", problem.what):
        return None
    at = problem.source.text.rfind("\\", 0, problem.at + 1)
    hint = "write the backslash twice, or use single quotes"
    return problem.fault(at, "in double quotes a backslash has a meaning of its own", hint)


def _unclosed_quote(problem: _Problem) -> Diagnostic | None:
    if "quoted scalar" not in problem.doing:
        return None
    quote = problem.source.text[problem.since]
    if quote == "'":
        hint = "close it with ' (an apostrophe inside is written twice: ''), or use double quotes"
    else:
        hint = 'close it with " at the end of the text'
    return problem.fault(problem.since, f"the quote {quote} is opened here and never closed", hint)


def _no_key(problem: _Problem) -> Diagnostic | None:
    if problem.char != ":" or problem.before.strip() not in ("", "-"):
        return None
    hint = "write `key: value`; if the line goes on with a text, put that in quotes"
    return problem.fault(problem.at, "a colon begins here, and its key is missing", hint)


def _second_colon(problem: _Problem) -> Diagnostic | None:
    found = problem.char == ":" and (
        "mapping values are not allowed" in problem.what or "flow" in problem.doing
    )
    if not found or (problem.opened is not None and _is_outside(problem, problem.opened)):
        return None
    if _COLON_BEFORE.search(problem.before):
        message = "a second `: ` stands in this text, which makes what is before it a key"
        return problem.fault(problem.at, message, _QUOTE_IT)
    if problem.opened is not None:
        hint = "end the line above with a comma"
        if problem.source.text[problem.opened] == "[":
            hint = "close the list with ] first; if this is text, put it in quotes"
        return problem.fault(problem.at, "a comma is missing before this key", hint)
    return _value_and_keys(problem)


def _value_and_keys(problem: _Problem) -> Diagnostic:
    if len(problem.before) > 1000:
        hint = "a key is a short name followed by a colon"
        return problem.fault(problem.at, "the text before this colon is too long for a key", hint)
    column = len(problem.before) - len(problem.before.lstrip())
    at = problem.source.line_start(problem.at) + column
    message = "this key is indented as if it belonged to the line above, which has a value already"
    hint = "line it up with the keys it belongs to; if it goes on with a text, put that in quotes"
    return problem.fault(at, message, hint)


def _unclosed_bracket(problem: _Problem) -> Diagnostic | None:
    opened = problem.opened
    if opened is None or not (problem.at_end or _is_outside(problem, opened)):
        return None
    bracket = problem.source.text[opened]
    closing = "]" if bracket == "[" else "}"
    hint = f"close it with {closing}"
    if re.search(r"\s#", problem.source.text[opened : problem.at]):
        hint += "; a # behind a space hides the rest of its line: put a text with # in quotes"
    return problem.fault(opened, f"the bracket {bracket} is opened here and never closed", hint)


def _is_outside(problem: _Problem, opened: int) -> bool:
    """Whether the stumbling block stands on a later line, no deeper than the bracket's line."""
    if problem.source.line_at(problem.at) == problem.source.line_at(opened):
        return False
    here, there = problem.source.line_text(problem.at), problem.source.line_text(opened)
    return _indent(here) <= _indent(there)


def _indent(line: str) -> int:
    return len(line) - len(line.lstrip())


def _wrong_closer(problem: _Problem) -> Diagnostic | None:
    if problem.char not in _OPENERS:
        return None
    opened = problem.opened
    if opened is None:
        message = f"{problem.char} closes nothing: no {_OPENERS[problem.char]} is open"
        return problem.fault(problem.at, message, "take it away, or put the text in quotes")
    bracket = problem.source.text[opened]
    if bracket == _OPENERS[problem.char]:
        return None
    line = problem.source.line_at(opened)
    message = f"{problem.char} cannot close the bracket {bracket} opened on line {line}"
    hint = f"close it with {']' if bracket == '[' else '}'}"
    return problem.fault(problem.at, message, hint)


def _after_quote(problem: _Problem) -> Diagnostic | None:
    before = problem.before.rstrip()
    if not before or before[-1] not in "\"']}" or not problem.char.strip():
        return None
    if before[-1] in "]}":
        hint = "take the text away, or put the whole, brackets too, in quotes"
        return problem.fault(problem.at, "text follows behind the closing bracket", hint)
    inside = "a double quote inside is written \\\", a single quote inside ''"
    message = "text follows behind the closing quote"
    return problem.fault(problem.at, message, f"{_QUOTE_IT}; {inside}")


def _no_colon(problem: _Problem) -> Diagnostic | None:
    if "simple key" not in problem.doing:
        return None
    message = "this line has no `: `, so it is neither a key nor part of the text above"
    hint = "write `key: value`; a text that goes on is indented deeper than its key"
    return problem.fault(problem.since, message, hint)


def _bad_start(problem: _Problem) -> Diagnostic | None:
    words = "cannot start|alias|anchor|a tag|undefined tag|directive|keys are not allowed"
    if not re.search(words, f"{problem.doing} {problem.what}"):
        return None
    at = problem.since if problem.doing and "next token" not in problem.doing else problem.at
    char = problem.source.text[at : at + 1]
    message = f"a text without quotes cannot begin with {char}"
    return problem.fault(at, message, "put the text in quotes")


def _dash(problem: _Problem) -> Diagnostic | None:
    if "sequence entries are not allowed" not in problem.what:
        return None
    message = "a list cannot begin on the line of its key"
    hint = "begin each item on a line of its own below the key; if it is text, put it in quotes"
    return problem.fault(problem.at, message, hint)


def _block_text(problem: _Problem) -> Diagnostic | None:
    if "block scalar" not in problem.doing:
        return None
    sign = problem.source.text[problem.since : problem.since + 1]
    message = f"behind {sign} the text begins on the next line, indented"
    hint = f"put the text there; if {sign} is part of the text, put the text in quotes"
    return problem.fault(problem.at, message, hint)


def _nothing_between(problem: _Problem) -> Diagnostic | None:
    if "node content" not in problem.what:
        return None
    if problem.char == "," and problem.opened is not None:
        message = "nothing stands before this comma"
        hint = "take the comma away; if it is part of a text, put the text in quotes"
        return problem.fault(problem.at, message, hint)
    message = f"a text without quotes cannot begin with {problem.char or 'this'}"
    return problem.fault(problem.at, message, "put the text in quotes")


def _colon_space(problem: _Problem) -> Diagnostic | None:
    if "plain scalar" not in problem.doing or problem.char != ":":
        return None
    hint = "write a space behind it; if it is part of a text, put the text in quotes"
    return problem.fault(problem.at, "a colon stands here with no space behind it", hint)


def _missing_comma(problem: _Problem) -> Diagnostic | None:
    if "flow" not in problem.doing or problem.opened is None:
        return None
    bracket = problem.source.text[problem.opened]
    if problem.char == "?":
        message = "a `?` before `}` cannot be read here" if bracket == "{" else "a `?` stands here"
        return problem.fault(problem.at, message, "put the text in quotes")
    line = problem.source.line_at(problem.opened)
    message = f"a comma is missing before this, inside the bracket {bracket} of line {line}"
    return problem.fault(problem.at, message, f"write the comma; if this is text, {_QUOTE_IT}")


def _misaligned(problem: _Problem) -> Diagnostic | None:
    if "block" not in problem.doing or problem.before.strip():
        return None
    if problem.char == "-":
        message = "a list item stands here where a key is expected"
        hint = "indent it deeper than the key it belongs to, and let that key end in a colon"
    elif "mapping" in problem.doing:
        message = "this line does not line up with the keys above it"
        hint = "begin keys that belong together in the same column"
    else:
        message = "this line is neither an item of the list above nor a part of one"
        hint = "begin each item with `- ` in the same column; end the list before the next key"
    return problem.fault(problem.at, message, hint)


def _other(problem: _Problem) -> Diagnostic:
    message = "this cannot be read as it is written"
    hint = "look at the quotes, brackets and indentation here and on the line above"
    return problem.fault(problem.at, message, hint)


_WORDS: tuple[Callable[[_Problem], Diagnostic | None], ...] = (
    _far_too_deep,
    _tab,
    _escape,
    _unclosed_quote,
    _block_text,
    _no_colon,
    _no_key,
    _second_colon,
    _wrong_closer,
    _unclosed_bracket,
    _bad_start,
    _dash,
    _nothing_between,
    _colon_space,
    _after_quote,
    _missing_comma,
    _misaligned,
)
