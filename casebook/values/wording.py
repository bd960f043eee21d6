"""The words around a quantity: "about", "at least", a range, a remark in brackets."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, NamedTuple

from casebook.values.fault import NotUnderstood
from casebook.values.numbers import fits, read_number
from casebook.values.units import Unit, Units

MOST_CHARACTERS = 200
MOST_IN_BRACKETS = 80

Bound = Literal["", "at least", "up to"]

_SPACE = re.compile(r"\s*")
_WORD = re.compile(r"\S+")
_ABOUT = re.compile(
    r"(?:~|≈|about\b|around\b|roughly\b|c(?:irca\b|a?\.|a?(?=[\s~0-9]))|approx(?:\.|imately\b|\b))",
    re.IGNORECASE,
)
_AT_LEAST = re.compile(
    r"(?:at\s+least\b|no\s+less\s+than\b|more\s+than\b|over\b(?!\s*night)|min(?:\.|imum\b|\b)|≥|>=?)",
    re.IGNORECASE,
)
_UP_TO = re.compile(
    r"(?:up\s+to\b|at\s+most\b|no\s+more\s+than\b|less\s+than\b|under\b|max(?:\.|imum\b|\b)|≤|<=?)",
    re.IGNORECASE,
)
_TO = re.compile(r"\s*(?:[-–—]|to\b)\s*", re.IGNORECASE)
_TIMES = re.compile(r"\s*(?:[x×*]|by\b)\s*[0-9]", re.IGNORECASE)
_AND = re.compile(r"\s*(?:,|and\b|\+)?\s*", re.IGNORECASE)
_MINUS = re.compile(r"[-−]\s*")
_REMARK = re.compile(r"(?:doubtful\b|\?)\s*[,;:]?\s*(?P<rest>.*)", re.IGNORECASE | re.DOTALL)


class Opening(NamedTuple):
    """The words before a quantity, and where they end."""

    about: bool
    bound: Bound
    end: int


class Closing(NamedTuple):
    """The remark behind a quantity, and where it begins."""

    doubtful: bool
    reason: str
    start: int


class Amount(NamedTuple):
    """A number and its unit (None: not written), or a sum of such parts in base units."""

    number: Fraction
    unit: Unit | None
    parts: int
    start: int
    end: int


class Heard(NamedTuple):
    """What the text of a quantity says, in base units; see `Quantity`."""

    low: Fraction | None
    high: Fraction | None
    about: bool
    doubtful: bool
    reason: str


@dataclass(frozen=True, slots=True)
class Grammar:
    """How one kind of quantity is written.

    `noun` is the kind in words and `hint` an example; `bare` is the unit of a number without one;
    `tail` says that a bare number after the first unit counts in the second (1h20); `before` may
    stand before the number; `special` reads other notations, giving base units and their end.
    """

    noun: str
    units: Units
    hint: str
    bare: Unit | None = None
    signed: bool = False
    tail: tuple[Unit, Unit] | None = None
    before: re.Pattern[str] = _SPACE
    special: Callable[[str, int, int], tuple[Fraction, int] | None] | None = None


def heard(text: str, grammar: Grammar) -> Heard:
    """All that a text says: words before, one measure or a range, a remark behind."""
    start, end = opening(text, grammar), closing(text)
    low, high = limits(text, start.end, end.start, start.bound, grammar)
    return Heard(low, high, start.about, end.doubtful, end.reason)


def opening(text: str, grammar: Grammar) -> Opening:
    """The words before a quantity. Raises NotUnderstood if the text is empty or too long.

    "More than" is read as "at least", and "less than" as "up to": both remain true.
    """
    if len(text) > MOST_CHARACTERS:
        message = f"more than {MOST_CHARACTERS} characters are no {grammar.noun}"
        raise NotUnderstood(message, hint=grammar.hint, end=len(text))
    if not text.strip():
        message = f"{_an(grammar.noun)} is missing here"
        raise NotUnderstood(message, hint=grammar.hint, end=max(len(text), 1))
    about, bound, at = False, "", skip(grammar.before, text, 0)
    while found := _ABOUT.match(text, at) or (
        None if bound else _AT_LEAST.match(text, at) or _UP_TO.match(text, at)
    ):
        if found.re is _ABOUT:
            about = True
        else:
            bound = "at least" if found.re is _AT_LEAST else "up to"
        at = skip(_SPACE, text, found.end())
    return Opening(about, _BOUNDS[bound], at)


_BOUNDS: dict[str, Bound] = {"": "", "at least": "at least", "up to": "up to"}


def closing(text: str) -> Closing:
    """The remark in brackets at the end, "(doubtful)" and "?" apart from the rest."""
    end = len(text.rstrip())
    first = text.find("(")
    if first < 0 or text[end - 1] != ")":
        doubtful = text[:end].endswith("?")
        return Closing(doubtful, "", end - 1 if doubtful else end)
    inside = text[first + 1 : end - 1].strip()
    found = _REMARK.fullmatch(inside)
    reason = found["rest"] if found else inside
    if len(reason) > MOST_IN_BRACKETS:  # so that the canonical form is never too long itself
        raise NotUnderstood(
            f"more than {MOST_IN_BRACKETS} characters in brackets",
            hint="put the remark in a key of its own",
            start=first,
            end=end,
        )
    return Closing(found is not None, reason, first)


def remark(doubtful: bool, reason: str) -> str:
    """What `closing` reads, written out: "", " (doubtful)", " (at the head)"."""
    words = ", ".join(word for word in ("doubtful" if doubtful else "", reason) if word)
    return f" ({words})" if words else ""


def skip(pattern: re.Pattern[str], text: str, at: int) -> int:
    """Where a pattern that may match at a place ends, the place itself if it does not."""
    found = pattern.match(text, at)
    return found.end() if found else at


def limits(
    text: str, at: int, end: int, bound: Bound, grammar: Grammar
) -> tuple[Fraction | None, Fraction | None]:
    """Least and most that the text between two places says, in base units."""
    low = amount(text, at, end, grammar)
    to = _TO.match(text, low.end, end)
    if to is None:
        _ended(text, low.end, end, grammar)
        value = _in_base(text, low, grammar.bare, grammar)
        return (None if bound == "up to" else value), (None if bound == "at least" else value)
    high = amount(text, to.end(), end, grammar)
    _ended(text, high.end, end, grammar)
    whole = (low.start, high.end)
    if bound:
        raise NotUnderstood(
            f'"{bound}" and a range do not go together',
            hint="keep one of them",
            start=whole[0],
            end=whole[1],
        )
    unit = high.unit if high.parts == 1 else None
    first = _in_base(text, low, unit or grammar.bare, grammar)
    last = _in_base(text, high, grammar.bare, grammar)
    if first > last:
        raise NotUnderstood(
            "the range runs backwards",
            hint="the smaller comes first",
            start=whole[0],
            end=whole[1],
        )
    return first, last


def amount(text: str, at: int, end: int, grammar: Grammar) -> Amount:
    """One amount: a number with or without its unit, or a sum such as "1 ft 2 1/2 in"."""
    start = skip(grammar.before, text, at)
    if grammar.special and (special := grammar.special(text, start, end)):
        return Amount(special[0], None, 0, start, special[1])
    first = _part(text, start, end, grammar)
    if first.unit is None or grammar.signed:
        return first
    parts = [first]
    while following := _following(text, parts[-1], end, grammar):
        parts.append(following)
    if len(parts) == 1:
        return first
    total = sum((part.unit.to_base(part.number) for part in parts if part.unit), Fraction(0))
    return Amount(total, None, len(parts), start, parts[-1].end)


def _part(text: str, start: int, end: int, grammar: Grammar) -> Amount:
    """A number and the unit behind it, if one is written."""
    minus = _MINUS.match(text, start, end)
    if minus and not grammar.signed:
        raise fault(text, start, end, f"{_an(grammar.noun)} cannot be negative", grammar.hint)
    found = read_number(text, minus.end() if minus else start, end)
    if found is None:
        word = _word(text, start, end)
        message = f'"{word}" is not {_an(grammar.noun)}' if word else "a number is missing"
        raise fault(text, start, end, message, grammar.hint)
    number = -found[0] if minus else found[0]
    unit = grammar.units.match(text, min(skip(_SPACE, text, found[1]), end), end)
    return Amount(number, unit[0] if unit else None, 1, start, unit[1] if unit else found[1])


def _following(text: str, last: Amount, end: int, grammar: Grammar) -> Amount | None:
    """The next, smaller part of a sum, None where the sum ends."""
    at = min(skip(_AND, text, last.end), end)
    if read_number(text, at, end) is None or last.unit is None:
        return None
    part = _part(text, at, end, grammar)
    if part.unit is None and grammar.tail and last.unit == grammar.tail[0]:
        part = part._replace(unit=grammar.tail[1])
    if part.unit is None:
        raise NotUnderstood("no unit behind this", hint=grammar.hint, start=at, end=part.end)
    smaller = part.unit.to_base(part.number) < last.unit.scale
    if not smaller or part.unit.scale >= last.unit.scale or last.number.denominator != 1:
        raise NotUnderstood(
            "these parts do not add up to one measure",
            hint="whole numbers of the larger unit first, less than one of it after them",
            start=last.start,
            end=part.end,
        )
    return part


def _in_base(text: str, one: Amount, unit: Unit | None, grammar: Grammar) -> Fraction:
    """The value of an amount in base units; `unit` is for a number without one."""
    if one.parts != 1:
        value = one.number
    elif chosen := one.unit or unit:
        value = chosen.to_base(one.number)
    else:
        raise fault(text, one.start, one.end, f"{_an(grammar.noun)} needs a unit", grammar.hint)
    if not fits(value):
        raise NotUnderstood(
            "too large or too fine a number", hint="round it", start=one.start, end=one.end
        )
    return value


def _ended(text: str, at: int, end: int, grammar: Grammar) -> None:
    """Nothing may stand between the last amount and the end."""
    if _TIMES.match(text, at, end):
        hint = "give height and width apart, each with its unit"
        raise fault(text, at, end, "this is a size, not one measure", hint)
    if rest := text[at:end].strip():
        raise fault(text, at, end, f'"{rest}" is not understood here', grammar.hint)


def fault(text: str, at: int, end: int, message: str, hint: str) -> NotUnderstood:
    """A fault at the words between two places; where there are none, at the end of the text."""
    words = text[min(at, end) : end]
    stop = min(at, end) + len(words.rstrip())
    start = stop - len(words.strip())
    return NotUnderstood(message, hint=hint, start=start, end=max(stop, start + 1))


def _word(text: str, at: int, end: int) -> str:
    found = _WORD.search(text, at, end)
    return found[0] if found else ""


def _an(noun: str) -> str:
    return f"an {noun}" if noun[0] in "aeiou" else f"a {noun}"
