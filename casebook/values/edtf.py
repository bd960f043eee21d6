"""The Extended Date/Time Format, levels 0 to 2: from its text to points, intervals and sets.

Source: Library of Congress, Extended Date/Time Format (EDTF) Specification, 2019-02-04.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal

from casebook.values.calendar import Day
from casebook.values.edtf_range import day_range, year_range
from casebook.values.fault import NotUnderstood

Kind = Literal["known", "open", "unknown"]
"""What an end of a date is: known, open (`..`, it goes on), or unknown (left empty)."""

_MARK = "[?~%]?"
_POINT = re.compile(
    rf"(?P<before_year>{_MARK})(?P<year>-?[0-9X]{{4}})(?P<after_year>{_MARK})"
    rf"(?:-(?P<before_month>{_MARK})(?P<month>[0-9X]{{2}})(?P<after_month>{_MARK})"
    rf"(?:-(?P<before_day>{_MARK})(?P<day>[0-9X]{{2}})(?P<after_day>{_MARK}))?)?"
)
_YEAR = re.compile(
    rf"(?P<before_year>{_MARK})"
    r"(?P<year>(?:Y-?[1-9][0-9]*(?:E[1-9][0-9]*)?|-?[0-9]{4})(?:S[1-9][0-9]*)?)"
    rf"(?P<after_year>{_MARK})"
)
_HOUR, _SIXTY = "(?:[01][0-9]|2[0-3])", "[0-5][0-9]"
_CLOCK = re.compile(
    r"(?P<date>[0-9]{4}-[0-9]{2}-[0-9]{2})"
    rf"T(?P<time>{_HOUR}:{_SIXTY}:{_SIXTY}(?:Z|[+-]{_HOUR}(?::{_SIXTY})?)?)"
)
_STRANGE = re.compile(r"[^-0-9XYESTZ:/.\[\]{},?~%+]")
_HINT = "write a date such as 1985-04-12, 1985-04, 1985, 198X, 1985~ or 1985/1990"


@dataclass(frozen=True, slots=True)
class Component:
    """A year, month or day of a point as written, without its marks, and what these marks say."""

    text: str
    approximate: bool = False
    uncertain: bool = False


@dataclass(frozen=True, slots=True)
class Point:
    """One EDTF date: its components, the time of day if written, and the days it may mean.

    `month` also holds the codes 21-41 of seasons, quarters and other parts of a year.
    """

    year: Component
    month: Component | None
    day: Component | None
    time: str
    earliest: Day
    latest: Day

    @property
    def components(self) -> tuple[Component, ...]:
        """The components written, year first."""
        return tuple(part for part in (self.year, self.month, self.day) if part is not None)


@dataclass(frozen=True, slots=True)
class Interval:
    """From one point to another. A missing point is open or unknown, as its kind says."""

    start: Point | None
    end: Point | None
    start_kind: Kind
    end_kind: Kind


@dataclass(frozen=True, slots=True)
class Group:
    """A set of points and intervals: one of them is meant, or (`every`) all of them."""

    items: tuple[Point | Interval, ...]
    every: bool


Tree = Point | Interval | Group


def parse(text: str) -> Tree:
    """The tree of an EDTF text. Raises NotUnderstood, with offsets into the text."""
    if strange := _STRANGE.search(text):
        raise NotUnderstood(
            f'EDTF knows no "{strange[0]}"', hint=_HINT, start=strange.start(), end=strange.end()
        )
    if text[:1] in ("[", "{"):
        return _group(text)
    if "/" in text:
        return _interval(text)
    clock = _CLOCK.fullmatch(text)
    return _point(clock["date"], 0, clock["time"]) if clock else _point(text, 0)


def points(tree: Tree) -> tuple[Point, ...]:
    """Every point of a tree, in the order written."""
    if isinstance(tree, Point):
        return (tree,)
    if isinstance(tree, Interval):
        return tuple(point for point in (tree.start, tree.end) if point is not None)
    return tuple(point for item in tree.items for point in points(item))


def starts(tree: Tree) -> tuple[Day | None, Kind]:
    """The earliest day that a tree allows, and the kind of its beginning."""
    if isinstance(tree, Point):
        return tree.earliest, "known"
    if isinstance(tree, Interval):
        return (tree.start.earliest if tree.start else None), tree.start_kind
    days = [starts(item)[0] for item in tree.items]
    known = [day for day in days if day is not None]
    return (min(known), "known") if len(known) == len(days) else (None, "open")


def ends(tree: Tree) -> tuple[Day | None, Kind]:
    """The latest day that a tree allows, and the kind of its end."""
    if isinstance(tree, Point):
        return tree.latest, "known"
    if isinstance(tree, Interval):
        return (tree.end.latest if tree.end else None), tree.end_kind
    days = [ends(item)[0] for item in tree.items]
    known = [day for day in days if day is not None]
    return (max(known), "known") if len(known) == len(days) else (None, "open")


def _point(text: str, offset: int, time: str = "") -> Point:
    """One date; `offset` is where it starts in the whole text."""
    if found := _YEAR.fullmatch(text):
        low, high = year_range(found["year"], offset + found.start("year"))
        return Point(_components(found)[0], None, None, time, Day(low, 1, 1), Day(high, 12, 31))
    found = _POINT.fullmatch(text)
    if found is None:
        raise _no_date(text, offset)
    earliest, latest = day_range(
        found["year"], found["month"], found["day"], offset, offset + len(text)
    )
    year, *rest = _components(found)
    month = rest[0] if rest else None
    day = rest[1] if len(rest) > 1 else None
    return Point(year, month, day, time, earliest, latest)


def _no_date(text: str, offset: int) -> NotUnderstood:
    """The fault for a piece of text that no production fits."""
    message = f'"{text}" is not an EDTF date' if text else "a date is missing here"
    return NotUnderstood(message, hint=_HINT, start=offset, end=offset + max(len(text), 1))


def _components(found: re.Match[str]) -> tuple[Component, ...]:
    """The components of a match. A mark before one is its own; a mark after it covers all before.

    Source: the specification, level 2, "Qualification": individual component, and group.
    """
    groups = found.groupdict()
    names = [name for name in ("year", "month", "day") if groups.get(name)]
    marks = ""
    parts = []
    for name in reversed(names):
        marks += groups[f"after_{name}"]
        own = set(marks + groups[f"before_{name}"])
        parts.append(Component(groups[name], bool(own & set("~%")), bool(own & set("?%"))))
    return tuple(reversed(parts))


def _interval(text: str) -> Interval:
    """`start/end`, where each is a date, `..` (open) or nothing (unknown)."""
    first, _, second = text.partition("/")
    start, start_kind = _end(first, 0)
    end, end_kind = _end(second, len(first) + 1)
    if start is None and end is None:
        raise NotUnderstood("neither end is given", hint="say `unknown`", start=0, end=len(text))
    return _ordered(start, end, start_kind, end_kind, (0, len(text)))


def _ordered(
    start: Point | None, end: Point | None, start_kind: Kind, end_kind: Kind, at: tuple[int, int]
) -> Interval:
    """An interval, refused if it surely ends before it starts."""
    if start and end and start.earliest > end.latest:
        raise NotUnderstood(
            "the end comes before the start", hint="swap the two dates", start=at[0], end=at[1]
        )
    return Interval(start, end, start_kind, end_kind)


def _end(text: str, offset: int) -> tuple[Point | None, Kind]:
    """One end of an interval."""
    if text == "..":
        return None, "open"
    if not text:
        return None, "unknown"
    return _point(text, offset), "known"


def _group(text: str) -> Group:
    """`[a,b..c]`, one of a set, or `{a,b..c}`, all of a set."""
    closing = {"[": "]", "{": "}"}[text[0]]
    if len(text) < 2 or text[-1] != closing:
        raise NotUnderstood(f'"{closing}" is missing at the end', start=len(text) - 1)
    items = text[1:-1].split(",")
    found = []
    offset = 1
    for index, item in enumerate(items):
        found.append(_item(item, offset, first=index == 0, last=index == len(items) - 1))
        offset += len(item) + 1
    return Group(tuple(found), text[0] == "{")


def _item(text: str, offset: int, *, first: bool, last: bool) -> Point | Interval:
    """One item of a set. Only the first may be open at its start, only the last at its end."""
    if ".." not in text:
        return _point(text, offset)
    low, _, high = text.partition("..")
    if (not low and not first) or (not high and not last) or not (low or high):
        raise NotUnderstood(
            'only the first date of a set may begin with "..", only the last may end with it',
            start=offset,
            end=offset + len(text),
        )
    start = _point(low, offset) if low else None
    end = _point(high, offset + len(low) + 2) if high else None
    kinds: tuple[Kind, Kind] = ("known" if low else "open", "known" if high else "open")
    return _ordered(start, end, *kinds, (offset, offset + len(text)))
