"""An EDTF date in the words of a language: "c. 1780", "14–15 March 2025", "19e eeuw"."""

from __future__ import annotations

import re

from casebook.values.date_english import SEASONS
from casebook.values.day_forms import fill
from casebook.values.edtf import Component, Group, Interval, Kind, Point, Tree
from casebook.values.language import ENGLISH, Language

_QUARTERS = ("first quarter", "second quarter", "third quarter", "last quarter")
_THIRDS = ("first third", "middle third", "last third")
_PARTS = {
    **{33 + n: name for n, name in enumerate(_QUARTERS)},
    **{37 + n: name for n, name in enumerate(_THIRDS)},
    **{40 + n: name for n, name in enumerate(("first half", "second half"))},
}
_ARTICLE = re.compile(r"<[^<>]*>")
_ROMAN = ((100, "C"), (90, "XC"), (50, "L"), (40, "XL"), (10, "X"), (9, "IX"), (5, "V"), (4, "IV"))


def say(tree: Tree, language: Language = ENGLISH) -> str:
    """The words for a date. The same date always gives the same words."""
    return bare(Speech(language).raw(tree))


def stretch(first: str, last: str) -> str:
    """Two dates joined by a dash, spaced when either is of several words."""
    return f"{first} – {last}" if " " in first + last else f"{first}–{last}"


def ordinal(number: int) -> str:
    """`1st`, `2nd`, `19th`: English ordinals in digits."""
    if number % 100 in (11, 12, 13):
        return f"{number}th"
    return f"{number}{ {1: 'st', 2: 'nd', 3: 'rd'}.get(number % 10, 'th') }"


def roman(number: int) -> str:
    """A number from 1 to 399 in Roman numerals."""
    found = ""
    for value, sign in _ROMAN:
        found += sign * (number // value)
        number %= value
    return found + "I" * number


def bare(raw: str) -> str:
    """A raw text as it stands alone, without what is said behind a preposition only."""
    return _ARTICLE.sub("", raw)


class Speech:
    """Says dates in one language.

    A text is raw where what is said behind a preposition only stands in it in angle brackets, as in
    "<the >19th century".
    """

    def __init__(self, language: Language) -> None:
        self.phrases = language.phrases
        self.forms = language.forms

    def put(self, phrase: str, *raws: str, of: str = "") -> str:
        """A phrase with raw dates in it; itself raw."""
        plain = [bare(one) for one in raws]
        behind = [one.replace("<", "").replace(">", "") for one in raws]
        text = phrase.format(*plain, the=behind[0], end=behind[-1], of=of)
        for old, new in self.phrases.joined:
            text = re.sub(rf"\b{old}", new, text)
        return text

    def marked(self, raw: str, approximate: bool, uncertain: bool) -> str:
        """A date with "c." before and "?" after it, as needed."""
        about = self.put(self.phrases.about, raw) if approximate else raw
        return self.phrases.doubt.format(about) if uncertain else about

    def year_word(self, year: int) -> str:
        """An astronomical year as readers write it: `1985`, `AD 79`, `44 BC` (the year -43)."""
        if year <= 0:
            return self.phrases.eras["before"].format(1 - year)
        return str(year) if year >= 1000 else self.phrases.eras["early"].format(year)

    def century(self, first_year: int, form: str = "alone") -> str:
        """The century that begins with a year: 1800 is the 19th century."""
        number = first_year // 100 + 1
        numbers = {"number": number, "th": ordinal(number), "roman": roman(number)}
        return self.put(self.phrases.century[form].format(**numbers), "")

    def decade(self, first_year: int, form: str = "alone") -> str:
        """The decade that begins with a year: the 1870s."""
        return self.phrases.decade[form].format(first_year)

    def part_of_century(self, part: str, first_year: int) -> str:
        """Part of a century: "mid-19th century", "first half of the 19th century"."""
        whole = self.century(first_year)
        return self.put(self.phrases.parts[part], whole, of=self.century(first_year, "of"))

    def part_of_decade(self, part: str, first_year: int) -> str:
        """Part of a decade: "early 1870s"."""
        whole = self.decade(first_year)
        return self.put(self.phrases.parts[part], whole, of=self.decade(first_year, "of"))

    def part_of_year(self, part: str, year: str) -> str:
        """Part of a year: "early 1850", "first quarter of 1850"."""
        return self.put(self.phrases.year_parts[part], year)

    def linked(self, link: str, raws: list[str]) -> str:
        """Dates with "and", "or" or "to" before the last, commas between the others."""
        word = self.phrases.links[link]
        return f" {word} ".join(filter(None, (", ".join(raws[:-1]), raws[-1])))

    def raw(self, tree: Tree) -> str:
        """The words for a date, raw."""
        if isinstance(tree, Point):
            return self._point(tree)
        return self._interval(tree) if isinstance(tree, Interval) else self._group(tree)

    def _point(self, point: Point) -> str:
        """One date with its marks of doubt."""
        parts = point.components
        marks = {(one.approximate, one.uncertain) for one in parts}
        if len(marks) == 1:
            return self.marked(self._unmarked(point), *marks.pop())
        return f"{self._unmarked(point)} ({', '.join(self._doubts(parts))})"

    def _doubts(self, parts: tuple[Component, ...]) -> list[str]:
        """What is doubtful of each component: "year uncertain", "day approximate"."""
        names = {(True, False): "approximate", (False, True): "uncertain", (True, True): "both"}
        found = zip(("year", "month", "day"), parts, strict=False)
        said = ((name, names.get((part.approximate, part.uncertain))) for name, part in found)
        return [self.phrases.doubts[f"{name} {doubt}"] for name, doubt in said if doubt]

    def _unmarked(self, point: Point) -> str:
        """One date without its marks."""
        month, day = point.month, point.day
        if month is None:
            return self._year(point)
        if month.text.isdecimal() and int(month.text) > 12:
            return self._piece(int(month.text), bare(self._year(point)))
        if "X" in month.text or (day and "X" in day.text) or "X" in point.year.text:
            return self._partly(point)
        words = self._filled(point, self.forms.day if day else self.forms.month)
        return f"{words}, {point.time.replace('Z', ' UTC')}" if point.time else words

    def _filled(self, point: Point, pattern: str) -> str:
        """A day or a month in its pattern, with its article."""
        assert point.month is not None
        days = [self._day(point.day.text)] if point.day else []
        year = bare(self._year(point))
        words = fill(pattern, days, [self._month(point)], year)
        return self.phrases.articles["day" if point.day else "month"].format(words)

    def _day(self, text: str) -> str:
        return self.phrases.first_day if int(text) == 1 else str(int(text))

    def _month(self, point: Point) -> str:
        assert point.month is not None
        return self.forms.months[int(point.month.text) - 1]

    def _piece(self, code: int, year: str) -> str:
        """A season, quarter or other part of a year, by its code of EDTF."""
        if code in _PARTS:
            return self.part_of_year(_PARTS[code], year)
        season = self.put(self.phrases.seasons[SEASONS[(code - 21) % 4]], year)
        half = "" if code < 25 else "north" if code < 29 else "south"
        return self.phrases.hemispheres[half].format(season) if half else season

    def _year(self, point: Point) -> str:
        """The year of a point in words, or the years that it may be."""
        text, first, last = point.year.text, point.earliest.year, point.latest.year
        if "S" in text:
            about = self.year_word(_estimate(text))
            return self.phrases.estimate.format(about, self._years(first, last))
        if text == "XXXX":
            return self.phrases.missing["year"]
        if re.fullmatch("[0-9]{2}XX", text):
            return self.century(int(text[:2]) * 100)
        if re.fullmatch("[0-9]{2}[1-9]X", text):
            return self.decade(int(text[:3]) * 10)
        years = self.year_word(first) if "X" not in text else self._years(first, last)
        return self.phrases.articles["year"].format(years)

    def _years(self, first: int, last: int) -> str:
        """The first and last year of several."""
        return stretch(self.year_word(first), self.year_word(last))

    def _partly(self, point: Point) -> str:
        """A date with unspecified digits beside a month: what is known, then what is not."""
        assert point.month is not None
        month, day = point.month.text, point.day.text if point.day else ""
        missing = [name for name, text in (("month", month), ("day", day)) if text == "XX"]
        year = bare(self._year(point))
        said = "" if day in ("", "XX") else self._some_day(day)
        options = "" if month == "XX" else self._month_options(month)
        whole = self._around(said, options, year, "X" in point.year.text)
        return self.phrases.missing[" and ".join(missing)].format(whole) if missing else whole

    def _some_day(self, day: str) -> str:
        known = day.isdecimal()
        return self._day(day) if known else self.phrases.missing["day of"].format(day)

    def _around(self, day: str, months: str, year: str, apart: bool) -> str:
        """Day and months before their year; behind a comma where it is not one year."""
        if not months:
            return (", " if apart else " ").join(one for one in (day, year) if one)
        if not apart:
            return fill(self.forms.day if day else self.forms.month, [day], [months], year)
        return f"{fill(self.forms.day_of_month, [day], [months]) if day else months}, {year}"

    def _month_options(self, pattern: str) -> str:
        """The months that digits or X may mean: `1X` is "October, November or December"."""
        fits = re.compile(pattern.replace("X", "[0-9]"))
        every = enumerate(self.forms.months, 1)
        return self.linked("or", [name for n, name in every if fits.fullmatch(f"{n:02d}")])

    def _interval(self, interval: Interval) -> str:
        """From one date to another; an end that is open or unknown is said to be so."""
        if interval.start and interval.end:
            return self._closed(interval.start, interval.end)
        if interval.start:
            said = self.put(self.phrases.bounds["from"], self._point(interval.start))
            return self._lacks("end", interval.end_kind).format(said)
        assert interval.end is not None
        said = self.put(self.phrases.bounds["until"], self._point(interval.end))
        return self._lacks("start", interval.start_kind).format(said)

    def _lacks(self, name: str, kind: Kind) -> str:
        """How an end that is not given is told of."""
        return self.phrases.missing[name] if kind == "unknown" else "{}"

    def _closed(self, start: Point, end: Point) -> str:
        """Two dates, with what they share said once: "14–15 March 2025", "March–April 2025"."""
        shared = _full(start) and _full(end) and start.year == end.year
        if shared and bool(start.day) == bool(end.day):
            return self._within(start, end)
        return stretch(bare(self._point(start)), bare(self._point(end)))

    def _within(self, start: Point, end: Point) -> str:
        """Two days or two months of one year."""
        days = [self._day(one.day.text) for one in (start, end) if one.day]
        months = [self._month(start), self._month(end)]
        year = bare(self._year(start))
        if not days:
            return fill(self.forms.months_across(), (), months, year)
        if start.month == end.month:
            return fill(self.forms.days(), days, months, year)
        return fill(self.forms.days_across(), days, months, year)

    def _group(self, group: Group) -> str:
        """One of a set ("1890 or 1891", "between 1780 and 1790"), or all ("1960 and 1961")."""
        link = "and" if group.every else "or"
        only = group.items[0] if len(group.items) == 1 else None
        if isinstance(only, Interval) and only.start and only.end:
            return self._all_or_one(only.start, only.end, group.every)
        return self.linked(link, [bare(self._item(item, link)) for item in group.items])

    def _all_or_one(self, start: Point, end: Point, every: bool) -> str:
        """A set that is one stretch."""
        if every:
            return self.put(self.phrases.bounds["all"], self._closed(start, end))
        return self.put(self.phrases.bounds["between"], self._point(start), self._point(end))

    def _item(self, item: Point | Interval, link: str) -> str:
        """One item of a set; an open one is "1984 or earlier"."""
        if isinstance(item, Point):
            return self._point(item)
        if item.start and item.end:
            return self._closed(item.start, item.end)
        known, way = (item.start, "later") if item.start else (item.end, "earlier")
        assert known is not None
        return self.put(self.phrases.bounds[f"{link} {way}"], self._point(known))


def _estimate(text: str) -> int:
    """The year before the S of a year with significant digits."""
    number, _, exponent = text.partition("S")[0].lstrip("Y").partition("E")
    scale: int = 10 ** int(exponent or 0)
    return int(number) * scale


def _full(point: Point) -> bool:
    """Whether a point is a full month or day of a common year, without marks."""
    return (
        point.month is not None
        and point.earliest.year >= 1000
        and not any(p.approximate or p.uncertain or "X" in p.text for p in point.components)
        and int(point.month.text) <= 12
    )
