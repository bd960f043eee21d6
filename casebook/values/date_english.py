"""An EDTF date in plain English: "c. 1780", "14–15 March 2025", "1870s", "19th century"."""

from __future__ import annotations

import re

from casebook.values.edtf import Component, Group, Interval, Kind, Point, Tree

MONTHS = (
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
)
SEASONS = ("spring", "summer", "autumn", "winter")
_NUMBERED = ("first", "second", "third", "last")
_PARTS = {
    **{21 + n: f"{name} {{}}" for n, name in enumerate(SEASONS)},
    **{25 + n: f"{name} {{}} (northern hemisphere)" for n, name in enumerate(SEASONS)},
    **{29 + n: f"{name} {{}} (southern hemisphere)" for n, name in enumerate(SEASONS)},
    **{33 + n: f"{name} quarter of {{}}" for n, name in enumerate(_NUMBERED)},
    **{37 + n: f"{name} four months of {{}}" for n, name in enumerate(("first", "middle", "last"))},
    **{40 + n: f"{name} half of {{}}" for n, name in enumerate(("first", "second"))},
}


def say(tree: Tree) -> str:
    """The words for a date. The same date always gives the same words."""
    if isinstance(tree, Point):
        return _point(tree)
    if isinstance(tree, Interval):
        return _interval(tree)
    return _group(tree)


def ordinal(number: int) -> str:
    """`1st`, `2nd`, `19th`: English ordinals in digits."""
    if number % 100 in (11, 12, 13):
        return f"{number}th"
    return f"{number}{ {1: 'st', 2: 'nd', 3: 'rd'}.get(number % 10, 'th') }"


def year_word(year: int) -> str:
    """An astronomical year as readers write it: `1985`, `AD 79`, `44 BC` (the year -43)."""
    if year <= 0:
        return f"{1 - year} BC"
    return str(year) if year >= 1000 else f"AD {year}"


def century(first_year: int) -> str:
    """The century that begins with the year `first_year`: 1800 is the 19th century."""
    return f"{ordinal(first_year // 100 + 1)} century"


def stretch(first: str, last: str) -> str:
    """Two dates joined by a dash, spaced when either is of several words."""
    return f"{first} – {last}" if " " in first + last else f"{first}–{last}"


def _point(point: Point) -> str:
    """One date with its marks of doubt."""
    parts = point.components
    whole = parts[-1]
    same = all((p.approximate, p.uncertain) == (whole.approximate, whole.uncertain) for p in parts)
    if same:
        return _marked(_bare(point), whole.approximate, whole.uncertain)
    return f"{_bare(point)} ({', '.join(_doubts(parts))})"


def _marked(words: str, approximate: bool, uncertain: bool) -> str:
    """The words with "c." before and "?" after them, as needed."""
    return f"{'c. ' if approximate else ''}{words}{'?' if uncertain else ''}"


def _doubts(parts: tuple[Component, ...]) -> list[str]:
    """What is doubtful of each component: "year uncertain", "day approximate"."""
    said = []
    for name, part in zip(("year", "month", "day"), parts, strict=False):
        doubts = [
            word
            for word, holds in (("approximate", part.approximate), ("uncertain", part.uncertain))
            if holds
        ]
        if doubts:
            said.append(f"{name} {' and '.join(doubts)}")
    return said


def _bare(point: Point) -> str:
    """One date without its marks."""
    year, month, day = point.year.text, point.month, point.day
    if month is None:
        return _year(point)
    if month.text.isdecimal() and int(month.text) > 12:
        return _PARTS[int(month.text)].format(_year(point))
    if "X" in month.text or (day and "X" in day.text) or "X" in year:
        return _partly(point)
    name = MONTHS[int(month.text) - 1]
    words = f"{int(day.text)} {name} {_year(point)}" if day else f"{name} {_year(point)}"
    return f"{words}, {point.time.replace('Z', ' UTC')}" if point.time else words


def _year(point: Point) -> str:
    """The year of a point in words, or the years that it may be."""
    text, first, last = point.year.text, point.earliest.year, point.latest.year
    if "S" in text:
        return f"about {year_word(_estimate(text))} ({_years(first, last)})"
    if text == "XXXX":
        return "unknown year"
    if re.fullmatch("[0-9]{2}XX", text):
        return century(int(text[:2]) * 100)
    if re.fullmatch("[0-9]{2}[1-9]X", text):
        return f"{int(text[:3]) * 10}s"
    return year_word(first) if "X" not in text else _years(first, last)


def _years(first: int, last: int) -> str:
    """The first and last year of several."""
    return stretch(year_word(first), year_word(last))


def _estimate(text: str) -> int:
    """The year before the S of a year with significant digits."""
    number, _, exponent = text.partition("S")[0].lstrip("Y").partition("E")
    scale: int = 10 ** int(exponent or 0)
    return int(number) * scale


def _partly(point: Point) -> str:
    """A date with unspecified digits beside a month: what is known, then what is not."""
    assert point.month is not None
    missing = []
    month, day = point.month.text, point.day.text if point.day else ""
    words = "" if month == "XX" else _month_options(month)
    if month == "XX":
        missing.append("month")
    if day == "XX":
        missing.append("day")
    elif day:
        words = f"{int(day) if day.isdecimal() else f'day {day}'} {words}".strip()
    whole = f"{words}, {_year(point)}" if words and "X" in point.year.text else ""
    whole = whole or f"{words} {_year(point)}".strip()
    return f"{whole} ({' and '.join(missing)} not known)" if missing else whole


def _month_options(pattern: str) -> str:
    """The months that two digits or X may mean: `1X` is "October, November or December"."""
    fits = re.compile(pattern.replace("X", "[0-9]"))
    names = [name for number, name in enumerate(MONTHS, 1) if fits.fullmatch(f"{number:02d}")]
    return " or ".join(filter(None, (", ".join(names[:-1]), names[-1])))


def _interval(interval: Interval) -> str:
    """From one date to another; an end that is open or unknown is said to be so."""
    if interval.start and interval.end:
        return _closed(interval.start, interval.end)
    if interval.start:
        return f"from {say(interval.start)}{_lacks('end', interval.end_kind)}"
    assert interval.end is not None
    return f"until {say(interval.end)}{_lacks('start', interval.start_kind)}"


def _lacks(name: str, kind: Kind) -> str:
    """What to say of an end that is not given."""
    return f", {name} unknown" if kind == "unknown" else ""


def _closed(start: Point, end: Point) -> str:
    """Two dates, with what they share said once: "14–15 March 2025", "March–April 2025"."""
    if _plain(start) and _plain(end) and start.year == end.year:
        first, last = _bare(start).split(), _bare(end).split()
        if len(first) == len(last) > 1:
            shared = 2 if len(first) == 3 and start.month == end.month else 1
            both = stretch(" ".join(first[:-shared]), " ".join(last[:-shared]))
            return f"{both} {' '.join(first[-shared:])}"
    return stretch(say(start), say(end))


def _plain(point: Point) -> bool:
    """Whether a point is a full month or day of a common year, without marks."""
    month = point.month
    return (
        month is not None
        and point.earliest.year >= 1000
        and not any(p.approximate or p.uncertain or "X" in p.text for p in point.components)
        and int(month.text) <= 12
    )


def _group(group: Group) -> str:
    """One of a set ("1890 or 1891", "between 1780 and 1790"), or all of it ("1960 and 1961")."""
    link = "and" if group.every else "or"
    items = [_item(item, link) for item in group.items]
    if len(items) == 1:
        only = group.items[0]
        if isinstance(only, Interval) and only.start and only.end:
            return _all_or_one(only.start, only.end, group.every)
        return items[0]
    return f"{', '.join(items[:-1])} {link} {items[-1]}"


def _all_or_one(start: Point, end: Point, every: bool) -> str:
    """A set that is one stretch."""
    if every:
        return f"all of {_closed(start, end)}"
    return f"between {say(start)} and {say(end)}"


def _item(item: Point | Interval, link: str) -> str:
    """One item of a set; an open one is "1984 or earlier"."""
    if isinstance(item, Point):
        return _point(item)
    if item.start and item.end:
        return _closed(item.start, item.end)
    known, way = (item.start, "later") if item.start else (item.end, "earlier")
    assert known is not None
    return f"{say(known)} {link} {way}"
