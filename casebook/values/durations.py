"""Durations: minutes, exact, and nights, which are counted and never guessed as minutes."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import ClassVar, Self

from casebook.values import units
from casebook.values.numbers import MOST_DIGITS, NUMBER_WORDS
from casebook.values.quantity import Quantity
from casebook.values.wording import Grammar, closing, fault, limits, opening

_ISO_HINT = "write it as PT1H30M, or 1 h 30 min"
_NO_ISO = "this is not an ISO 8601 duration"
_NO_LENGTH = "years and months have no fixed length"
_ISO = re.compile(r"-?P[0-9.,YMWDTHS]*(?![a-z0-9])", re.I | re.A)
_ISO_UNFIXED = re.compile(r"P[^T]*[YM]", re.I)
_N = r"([0-9]+(?:[.,][0-9]+)?)"
_ISO_PARTS = re.compile(
    rf"P(?=[0-9T])(?:{_N}W)?(?:{_N}D)?(?:T(?=[0-9])(?:{_N}H)?(?:{_N}M)?(?:{_N}S)?)?", re.I
)
_ISO_MINUTES = (
    Fraction(7 * 24 * 60),
    Fraction(24 * 60),
    Fraction(60),
    Fraction(1),
    Fraction(1, 60),
)
_NIGHTS = re.compile(
    rf"(?:over\s*night|(?P<count>[0-9]{{1,3}}|{'|'.join(NUMBER_WORDS)})\s*nights?)\b"
    r"\s*(?P<more>(?:,|and\b|\+)?\s*)",
    re.I | re.A,
)
_NIGHT_RANGE = re.compile(
    r"[0-9]+\s*(?:[-–—]|to\b)\s*[0-9]+\s*nights?\b|(?:over\s*)?nights?\s*(?:[-–—]|to\b)", re.I
)
_PER = re.compile(r"(?<=\w)\s+(each|all)(?=\s*(?:\([^()]*\)\s*)?$)", re.I)
_CLOCK = re.compile(r"[0-9]+:[0-9]+(?::[0-9]+)?")
_VAGUE = re.compile(r"\b(?:weekends?|months?|years?|fortnights?|working\s+days?)\b", re.I)
_VAGUE_HINTS = {
    "weekend": "write 2 nights, or the hours",
    "month": "months differ in length: write days or weeks",
    "year": "years differ in length: write days or weeks",
    "fortnight": "write 2 weeks",
    "working": "write the hours at the bench",
}


def _iso(text: str, start: int, end: int) -> tuple[Fraction, int] | None:
    """An ISO 8601 duration of fixed length at a place: minutes and its end; None if none is there.

    Source: RFC 3339, appendix A, and beyond it what ISO 8601 allows: parts left out, weeks with
    days, and a fraction in the last part (the standard itself was not read).
    """
    found = _ISO.match(text, start, end)
    if found is None:
        return None
    parts = _ISO_PARTS.fullmatch(found[0])
    written = [number for number in parts.groups() if number] if parts else []
    if parts is None or not all(len(number) <= MOST_DIGITS for number in written):
        unfixed = _ISO_UNFIXED.match(found[0])
        raise fault(text, *found.span(), _NO_LENGTH if unfixed else _NO_ISO, _ISO_HINT)
    if not all(number.isdecimal() for number in written[:-1]):
        raise fault(text, *found.span(), "only the last part may have a fraction", _ISO_HINT)
    numbers = (Fraction((number or "0").replace(",", ".")) for number in parts.groups())
    minutes = (number * size for number, size in zip(numbers, _ISO_MINUTES, strict=True))
    return sum(minutes, Fraction(0)), found.end()


@dataclass(frozen=True, slots=True)
class Duration(Quantity):
    """How long something took. Base unit of `low` and `high`: minutes, beside the nights.

    "Overnight" is one night; how many minutes that was, nobody wrote. With nights alone `low` and
    `high` are 0; "at least 2 nights" leaves `high` open. A day is 24 hours gone by. In a run of
    steps `per` says of what: "40 min each" of each member, "2 h all" of all of them together.
    """

    nights: int = 0
    per: str = ""

    grammar: ClassVar[Grammar] = Grammar(
        "duration",
        units.TIMES,
        "write it as 1 h 30 min, 90 min, 3 days or overnight",
        tail=(units.HOUR, units.ONE),
        special=_iso,
    )
    unit: ClassVar[str] = " min"

    @classmethod
    def parse(cls, text: str) -> Self:
        """Read a duration. Raises NotUnderstood for any other text, and where it is ambiguous."""
        written, (text, per) = text, _without_per(text)
        start, end = opening(text, cls.grammar), closing(text)
        _refuse_vague(text, start.end, end.start)
        found = _NIGHTS.match(text, start.end, end.start)
        nights = _count(found) if found else 0
        at = found.end() if found else start.end
        if found and at == end.start and not found["more"].strip():
            low, high = Fraction(0), Fraction(0)
            least = None if start.bound == "up to" else low
            most = None if start.bound == "at least" else high
        else:
            least, most = limits(text, at, end.start, start.bound, cls.grammar)
        about, doubtful, reason = start.about, end.doubtful, end.reason
        return cls(least, most, about, doubtful, reason, written.strip(), nights, per)

    def _limits(self) -> str:
        known = super(Duration, self)._limits()
        if not self.nights:
            return known
        nights = f"{self.nights} night{'s' if self.nights > 1 else ''}"
        if not any(self._known()):
            return known.replace("0 min", nights)
        bound = next((word for word in ("at least ", "up to ") if known.startswith(word)), "")
        return f"{bound}{nights} and {known.removeprefix(bound)}"


def _without_per(text: str) -> tuple[str, str]:
    """A text with a last "each" or "all" blanked out, so that every place in it stays the same."""
    found = _PER.search(text)
    if found is None:
        return text, ""
    start, end = found.span()
    return f"{text[:start]}{' ' * (end - start)}{text[end:]}", found[1].lower()


def _count(found: re.Match[str]) -> int:
    """How many nights: one if it says overnight."""
    count = found["count"]
    if count is None:
        return 1
    return int(count) if count.isdecimal() else NUMBER_WORDS.index(count.lower()) + 1


def _refuse_vague(text: str, at: int, end: int) -> None:
    """Refuse what may mean several lengths, each with its own hint."""
    if found := _CLOCK.search(text, at, end):
        raise fault(
            text,
            *found.span(),
            f'"{found[0]}" may be hours or minutes',
            "write 1 h 20 min, or 1 min 20 s",
        )
    if found := _VAGUE.search(text, at, end):
        word = found[0].lower().split()[0]
        hint = next(hint for key, hint in _VAGUE_HINTS.items() if word.startswith(key))
        raise fault(text, *found.span(), f'"{found[0]}" has no fixed length', hint)
    if found := _NIGHT_RANGE.search(text, at, end):
        raise fault(
            text,
            *found.span(),
            "nights are counted, not given as a range",
            'write "at least 2 nights"',
        )
