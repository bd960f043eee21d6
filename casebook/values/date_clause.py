"""One date in words, such as "c. 1780", "mid-19th century" or "14 March 2025", read to EDTF.

English months and seasons, full or abbreviated; what was read is told in any language. Dates that
lend each other words ("14-15 March 2025", "early to mid 19th century", "1780-90") are completed
from one another by `lend`.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from difflib import get_close_matches

from casebook.values import edtf
from casebook.values.date_english import MONTHS, SEASONS
from casebook.values.date_speech import Speech
from casebook.values.fault import NotUnderstood

HINT = (
    'write for example "1850", "c. 1850", "1780s", "mid-19th century", "before 1850", '
    '"14 March 2025" or EDTF'
)
_FLAGS = re.IGNORECASE | re.ASCII
_ABOUT = (
    r"(?:the\s+)?(?P<about>(?:circa|ca|c|about|around|approximately|approx)"
    r"(?:\b\.?|(?=[0-9]))\s*)?"
)
_PART = (
    r"(?:(?P<part>early|mid|late|(?:first|second)\s+half|(?:first|second|third|last)\s+quarter)\b"
    r"(?:\s+of)?[\s-]*)?(?:the\b\s*)?"
)
_DOUBT = r"\s*(?P<doubt>\?)?"
_MONTH = (
    r"(?P<month>jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|"
    r"sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)\b\.?"
)
_DAY = r"(?P<day>[0-9]{1,2})(?:st|nd|rd|th)?"
_YEAR = r"(?P<year>ad\s+[0-9]{1,4}|[0-9]{3,4})"
_SEASON = (
    r"(?P<season>spring|summer|autumn|fall|winter)"
    rf"(?:,?\s+(?:of\s+)?{_YEAR}(?:[-–/](?P<next>[0-9]{{2}}|[0-9]{{4}}))?)?"
)
_CORES = (
    r"(?P<iso>[0-9]{4}-[0-9]{2}(?:-[0-9]{2})?)",
    r"(?P<century>[0-9]{1,2})(?:st|nd|rd|th)(?:[\s-]*(?P<noun>century|centuries|cent\b\.?|c\b\.?))?",
    r"(?P<decade>[0-9]{4}|[0-9]{2})['’]?s",
    rf"{_DAY}\s*(?:of\s+)?{_MONTH}(?:,?\s*{_YEAR})?",
    rf"{_MONTH}\s*{_DAY}(?:,?\s+{_YEAR})?",
    rf"{_DAY},\s*{_YEAR}",
    rf"{_MONTH}(?:,?\s*(?:of\s+)?{_YEAR})?",
    _SEASON,
    _YEAR,
    r"(?P<number>[0-9]{1,2})",
    r"(?P<nothing>)",
)
_PATTERNS = tuple(re.compile(_ABOUT + _PART + core + _DOUBT, _FLAGS) for core in _CORES)
_WORDS = (
    *MONTHS,
    *SEASONS,
    "circa",
    "about",
    "early",
    "late",
    "century",
    "before",
    "after",
    "between",
    "probably",
    "perhaps",
    "half",
    "quarter",
)
_CENTURY_YEARS = {
    "early": (0, 33),
    "mid": (34, 66),
    "late": (67, 99),
    "first half": (0, 49),
    "second half": (50, 99),
    "first quarter": (0, 24),
    "second quarter": (25, 49),
    "third quarter": (50, 74),
    "last quarter": (75, 99),
}
"""First and last year of a part of a century. Thirds for early, mid, late: common practice,
no source."""
_DECADE_YEARS = {
    "early": (0, 3),
    "mid": (4, 6),
    "late": (7, 9),
    "first half": (0, 4),
    "second half": (5, 9),
}
"""First and last year of a part of a decade: common practice, no source."""
_YEAR_CODES = {
    "early": 37,
    "mid": 38,
    "late": 39,
    "first half": 40,
    "second half": 41,
    "first quarter": 33,
    "second quarter": 34,
    "third quarter": 35,
    "last quarter": 36,
}
"""The EDTF code for a part of a year; early, mid, late are its thirds (common practice, no
source)."""


@dataclass(frozen=True, slots=True)
class Clause:
    """The words of one date by kind (`year`, `month`, `part`…), and where it stands."""

    said: dict[str, str]
    start: int
    end: int

    def having(self, **more: str) -> Clause:
        """The same clause with more words, as lent by another."""
        return Clause({**self.said, **more}, self.start, self.end)

    def fault(self, message: str, hint: str = HINT) -> NotUnderstood:
        """A fault that points at this clause."""
        return NotUnderstood(message, hint=hint, start=self.start, end=self.end)


@dataclass(frozen=True, slots=True)
class Unit:
    """One date: first and last EDTF date that it may mean, without marks, and its words, raw.

    `kept` says that the words hold more than EDTF can.
    """

    first: str
    last: str
    words: str
    about: bool
    doubt: bool
    kept: bool

    def spoken(self, speech: Speech) -> str:
        """The words with "c." and "?", raw."""
        return speech.marked(self.words, self.about, self.doubt)


def clause(text: str, start: int, end: int) -> Clause:
    """The clause between two offsets of a text. Raises NotUnderstood."""
    for pattern in _PATTERNS:
        found = pattern.fullmatch(text, start, end)
        if found:
            said = {key: " ".join(word.lower().split()) for key, word in _given(found)}
            if said.keys() - {"about", "doubt", "nothing"}:
                return Clause(said, start, end)
    raise _unknown_word(text, start, end)


def _given(found: re.Match[str]) -> list[tuple[str, str]]:
    """The named groups that took part in a match."""
    return [(key, word) for key, word in found.groupdict().items() if word is not None]


def _unknown_word(text: str, start: int, end: int) -> NotUnderstood:
    """The fault for a clause that fits no pattern, at its first word that no date has."""
    known = {word.lower(): word for word in _WORDS}
    for word in re.finditer(r"[^\W\d_]{3,}", text[start:end]):
        if word[0].lower() not in known:
            close = get_close_matches(word[0].lower(), sorted(known), n=1)
            hint = f'did you mean "{known[close[0]]}"?' if close else HINT
            at = start + word.start()
            return NotUnderstood(
                f'"{word[0]}" is not understood in a date',
                hint=hint,
                start=at,
                end=at + len(word[0]),
            )
    piece = text[start:end]
    message = f'"{piece}" is not understood as a date' if piece else "a date is missing here"
    return NotUnderstood(message, hint=HINT, start=start, end=max(end, start + 1))


def lend(left: Clause, right: Clause) -> tuple[Clause, Clause]:
    """Two neighbouring clauses, each completed from the other."""
    right = _from_left(left.said, right)
    return _from_right(left, right.said), right


def _from_left(left: dict[str, str], right: Clause) -> Clause:
    """The second clause: "90" after "1780", "90s" after "1780s", "15, 2025" after "March 14"."""
    said = right.said
    year, number = left.get("year", ""), said.get("number")
    if number and len(year) == 4:
        return right.having(year=year[: -len(number)] + number)
    if len(said.get("decade", "")) == 2 and len(left.get("decade", "")) == 4:
        return right.having(decade=left["decade"][:2] + said["decade"])
    if "day" in said and "month" not in said and "month" in left:
        return right.having(month=left["month"])
    return right


def _from_right(left: Clause, right: dict[str, str]) -> Clause:
    """The first clause: "14" before "15 March 2025", "early" before "mid 19th century"."""
    said = left.said
    if "number" in said and "day" in right and "month" in right:
        left = left.having(day=said["number"], month=right["month"])
    if "nothing" in said and "part" in right:
        wanted = ("century", "noun", "decade", "year")
        left = left.having(**{key: right[key] for key in wanted if key in right})
    if "century" in said and "noun" in right:
        left = left.having(noun=right["noun"])
    if said.keys() & {"month", "season"} or "month" in left.said:
        left = left.having(**{"year": right["year"], **left.said}) if "year" in right else left
    return left


def unit(of: Clause, speech: Speech) -> Unit:
    """The date that a complete clause means. Raises NotUnderstood."""
    said = of.said
    if "century" in said:
        first, last, words = _century(of, speech)
    elif "decade" in said:
        first, last, words = _decade(of, speech)
    else:
        first, last, words = _in_year(of, speech)
    part = said.get("part", "")
    kept = "next" in said or part in ("early", "mid", "late") or (bool(part) and first != last)
    return Unit(first, last, words, "about" in said, "doubt" in said, kept)


def _century(of: Clause, speech: Speech) -> tuple[str, str, str]:
    """First and last date and the words of a century or a part of one."""
    number, part = int(of.said["century"]), of.said.get("part")
    if "noun" not in of.said or not number:
        raise of.fault('a century is written "19th century"')
    base = (number - 1) * 100
    if part is None:
        return f"{number - 1:02d}XX", f"{number - 1:02d}XX", speech.century(base)
    low, high = _CENTURY_YEARS[part]
    return f"{base + low:04d}", f"{base + high:04d}", speech.part_of_century(part, base)


def _decade(of: Clause, speech: Speech) -> tuple[str, str, str]:
    """First and last date and the words of a decade or a part of one."""
    text, part = of.said["decade"], of.said.get("part")
    if len(text) != 4 or not text.endswith("0"):
        raise of.fault('a decade is written "1780s"')
    if text.endswith("00"):
        raise of.fault(
            f'"{text}s" may be a decade or a century',
            f"write {text}/{text[:3]}9 for ten years, {text[:2]}XX for a hundred",
        )
    if part is None:
        return f"{text[:3]}X", f"{text[:3]}X", speech.decade(int(text))
    if part not in _DECADE_YEARS:
        raise of.fault("a decade has no quarters")
    low, high = _DECADE_YEARS[part]
    return f"{text[:3]}{low}", f"{text[:3]}{high}", speech.part_of_decade(part, int(text))


def _in_year(of: Clause, speech: Speech) -> tuple[str, str, str]:
    """First and last date and the words of a year, season, month or day."""
    text = of.said.get("iso") or _edtf(of)
    try:
        words = speech.raw(edtf.parse(text))
    except NotUnderstood as fault:
        raise of.fault(fault.message) from None
    part = of.said.get("part")
    if part in ("early", "mid", "late"):
        words = speech.part_of_year(part, speech.raw(edtf.parse(text[:4])))
    if "next" in of.said:
        words = f"{words}–{_following(of)}"
    return text, text, words


def _edtf(of: Clause) -> str:
    """The EDTF text of a clause of year, month or season, and day."""
    said = of.said
    if "year" not in said:
        raise of.fault("the year is missing, or has fewer than four digits", "add the year: 1850")
    year = said["year"].removeprefix("ad ").zfill(4)
    if year == "0000":
        raise of.fault("there is no year 0 in words", "write it as EDTF: 0000 is 1 BC")
    if "part" in said:
        if said.keys() & {"month", "season"}:
            raise of.fault(f'"{said["part"]}" goes with a year, a decade or a century')
        return f"{year}-{_YEAR_CODES[said['part']]}"
    if "season" in said:
        return f"{year}-{21 + SEASONS.index(said['season'].replace('fall', 'autumn'))}"
    if "month" not in said:
        return year
    names = [name[:3].lower() for name in MONTHS]
    month = f"{year}-{names.index(said['month'][:3]) + 1:02d}"
    return f"{month}-{int(said['day']):02d}" if "day" in said else month


def _following(of: Clause) -> str:
    """The two digits of the second year of a winter."""
    year, after = of.said["year"], of.said["next"]
    if of.said["season"] != "winter" or int(after[-2:]) != (int(year[-2:]) + 1) % 100:
        raise of.fault("only a winter has two years, and they follow each other", "winter 1890-91")
    return after[-2:]
