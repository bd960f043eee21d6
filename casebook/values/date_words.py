"""Dates in words, with what joins and bounds them ("before", "to", "or"), read to EDTF."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from casebook.values import edtf
from casebook.values.date_clause import HINT, Clause, Unit, clause, lend, unit
from casebook.values.date_speech import Speech, bare
from casebook.values.fault import NotUnderstood
from casebook.values.language import ENGLISH, Language

_FLAGS = re.IGNORECASE | re.ASCII
_LEAD = re.compile(
    r"(?:(?P<perhaps>probably|possibly|perhaps|presumably|likely)\s+)?"
    r"(?:(?P<way>not\s+before|not\s+after|before|after|by|between|from|since|until)\s+)?",
    _FLAGS,
)
_TRAIL = re.compile(r"\s+or\s+(?P<way>later|earlier|after|before)$", _FLAGS)
_JOIN = re.compile(
    r"(?P<whole>[0-9]{4}-[0-9]{2}-[0-9]{2}|winter\s+[0-9]{4}[-–/][0-9]{2,4}\b)"
    r"|\s*(?P<dash>(?<!\bmid)(?<!early)(?<!late)[-–—](?!c(?:ent|\b)))\s*"
    r"|\s+(?P<word>to|or|and)\s+",
    _FLAGS,
)
_MONTH_OR_RANGE = re.compile(r"(?<![0-9])(?P<year>[0-9]{4})-(?P<next>[0-9]{2})(?![0-9-])")
_CUT = {4: 6, 7: 3, 10: 0}  # characters to drop from a day for a date of so many characters
_WAYS = {"not before": "or later", "not after": "or earlier", "since": "from"}


@dataclass(frozen=True, slots=True)
class Reading:
    """What words mean: an EDTF text, and the words themselves where they hold more than it."""

    edtf: str
    nuance: str


def read(text: str, language: Language = ENGLISH) -> Reading:
    """The date that a text in English words means, and its words in a language.

    Raises NotUnderstood, with offsets into the text.
    """
    speech = Speech(language)
    lead = _LEAD.match(text)
    assert lead is not None  # both groups are optional
    trail = _TRAIL.search(text)
    end = trail.start() if trail else len(text)
    way = _way(lead["way"], trail)
    join, clauses = _clauses(text, lead.end(), end)
    units = _shared(join, [unit(each, speech) for each in clauses])
    try:
        return _reading(way, join, units, (lead["perhaps"] or "").lower(), speech)
    except NotUnderstood as fault:
        raise NotUnderstood(fault.message, hint=fault.hint or HINT, end=len(text)) from None


def _way(lead: str | None, trail: re.Match[str] | None) -> str:
    """How the date is bounded: by the word before it, or by "or later" after it."""
    if trail:
        if lead:
            raise NotUnderstood(
                f'"{lead}" and "{trail[0].strip()}" do not go together',
                hint="say one of them",
                start=trail.start() + 1,
                end=trail.end(),
            )
        later = trail["way"].lower() in ("later", "after")
        return "or later" if later else "or earlier"
    word = " ".join((lead or "").lower().split())
    return _WAYS.get(word, word)


def _clauses(text: str, start: int, end: int) -> tuple[str, list[Clause]]:
    """What joins the dates of a text (`to`, `or`, `and`, or nothing), and the dates."""
    joins, edges = set(), [start]
    for found in _JOIN.finditer(text, start, end):
        if found["whole"] or _is_month(text, found):
            continue
        joins.add("to" if found["dash"] else found["word"].lower())
        edges += [found.start(), found.end()]
    edges.append(end)
    pieces = [clause(text, low, high) for low, high in zip(edges[::2], edges[1::2], strict=True)]
    if len(joins) > 1 or ("to" in joins and len(pieces) > 2):
        raise NotUnderstood("too many dates in one", hint=HINT, start=start, end=end)
    for index in reversed(range(len(pieces) - 1)):
        pieces[index], pieces[index + 1] = lend(pieces[index], pieces[index + 1])
    return "".join(joins), pieces


def _is_month(text: str, dash: re.Match[str]) -> bool:
    """Whether this dash stands inside `1890-05`. Refused where that may as well be 1805-1810."""
    found = _MONTH_OR_RANGE.match(text, max(dash.start() - 4, 0)) if dash["dash"] == "-" else None
    if found is None or found.start("next") != dash.end() or not 1 <= int(found["next"]) <= 12:
        return False
    year, after = found["year"], found["next"]
    if int(after) > int(year[2:]):
        raise NotUnderstood(
            f'"{found[0]}" may be a month or several years',
            hint=f"write {year}–{year[:2]}{after}, or the name of the month and {year}",
            start=found.start(),
            end=found.end(),
        )
    return True


def _shared(join: str, units: list[Unit]) -> list[Unit]:
    """In a range, "c." on the first date and "?" on the last one hold for both."""
    if join != "to":
        return units
    about, doubt = units[0].about, units[-1].doubt
    return [replace(u, about=u.about or about, doubt=u.doubt or doubt) for u in units]


def _reading(way: str, join: str, units: list[Unit], perhaps: str, speech: Speech) -> Reading:
    """The EDTF text and the words of dates joined and bounded in this way."""
    plain = _edtf(way, join, units)
    said = speech.raw(edtf.parse(plain))
    kept = way in ("before", "after", "by") or any(each.kept for each in units)
    words = bare(_words(way, join, units, speech) if kept else said)
    if perhaps:
        marked = _edtf(way, join, [replace(each, doubt=True) for each in units])
        return Reading(marked, speech.phrases.probably[perhaps].format(words))
    return Reading(plain, words if kept else "")


def _edtf(way: str, join: str, units: list[Unit]) -> str:
    """The EDTF text of dates joined and bounded in this way."""
    first, last = units[0], units[-1]
    low, high = _mark(first, first.first), _mark(last, last.last)
    if way == "between" and len(units) == 2 and join in ("and", "to"):
        return f"[{low}..{high}]"
    if join == "to" and way in ("", "from"):
        return f"{low}/{high}"
    if join in ("or", "and") and not way:
        items = ",".join(_item(each) for each in units)
        return f"{{{items}}}" if join == "and" else f"[{items}]"
    if join or way == "between":
        raise NotUnderstood(f'"{way}" goes with {"two dates" if way == "between" else "one date"}')
    if not way:
        return low if first.first == first.last else f"[{_item(first)}]"
    return _bounded(way, first, low, high)


def _bounded(way: str, one: Unit, low: str, high: str) -> str:
    """The EDTF text of a date bounded on one side."""
    if way in ("before", "after"):
        return f"[..{_next_to(one, way)}]" if way == "before" else f"[{_next_to(one, way)}..]"
    return {
        "by": f"[..{high}]",
        "or earlier": f"[..{high}]",
        "or later": f"[{low}..]",
        "from": f"{low}/..",
        "until": f"../{high}",
    }[way]


def _next_to(one: Unit, way: str) -> str:
    """The date just before or after one, as precise as it: a year beside a year."""
    if way == "before":
        day, _ = edtf.starts(edtf.parse(one.first))
        beside = day.previous() if day else None
    else:
        day, _ = edtf.ends(edtf.parse(one.last))
        beside = day.next() if day else None
    text = str(beside)
    return _mark(one, text[: len(text) - _CUT[len(one.first)]])


def _item(one: Unit) -> str:
    """One date as an item of a set."""
    if one.first == one.last:
        return _mark(one, one.first)
    return f"{_mark(one, one.first)}..{_mark(one, one.last)}"


def _mark(one: Unit, date: str) -> str:
    """An EDTF date with the mark of a unit's doubts."""
    return date + {(True, True): "%", (True, False): "~", (False, True): "?"}.get(
        (one.about, one.doubt), ""
    )


def _words(way: str, join: str, units: list[Unit], speech: Speech) -> str:
    """The words of dates joined and bounded in this way, raw."""
    spoken = [each.spoken(speech) for each in units]
    if way == "between":
        return speech.put(speech.phrases.bounds[way], *spoken)
    dates = f" {speech.phrases.links[join]} ".join(spoken) if join else spoken[0]
    return speech.put(speech.phrases.bounds[way], dates) if way else dates
