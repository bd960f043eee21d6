"""What stands under a case's title: who treated it and when, what to mind in handling it."""

from __future__ import annotations

from collections.abc import Iterator

from casebook.compute.runs import inner_steps
from casebook.compute.steps import placed
from casebook.model.archive import Case, Kind, Standing, Status
from casebook.model.base import items, known
from casebook.model.condition import Hazard
from casebook.model.treatment import Episode, Step
from casebook.output.citing import author
from casebook.output.wording import Wording, listed_text, say, text_of
from casebook.values.dates import Date

MOST_NAMES = 4
"""More people than this are not all named under the title."""

_SOURCES = {
    Kind.FROM_NOTES: "An old treatment, written up from what survives of its notes.",
    Kind.FROM_PUBLICATION: "A treatment by others, written up from a publication.",
}
_NO_TREATMENT = (Standing.UNDECIDED, Standing.DECLINED, Standing.PROPOSED)


def record_note(case: Case) -> str:
    """For an old or published case: what the record was made from; else ""."""
    note = _SOURCES.get(case.record, "") if case.record else ""
    written = known(case.written)
    sources = "; ".join(items(written.from_)) if written else ""
    return f"{note} Sources: {sources}." if note and sources else note


def byline(case: Case, wording: Wording) -> str:
    """Who had it on the bench, and in which months; "" where neither is known."""
    when, who = _when(list(_dates(case)), wording), _who(list(_hands(case)))
    if not when and not who:
        return ""
    status = known(case.status) or Status()
    done = "Worked on" if status.is_ in _NO_TREATMENT else "Treated"
    return f"{' '.join(word for word in (done, when, f'by {who}' if who else '') if word)}."


def _sittings(case: Case) -> Iterator[Episode | Step]:
    episodes = items(case.episodes)
    yield from episodes
    yield from inner_steps([*items(case.steps), *(s for one in episodes for s in items(one.steps))])


def _dates(case: Case) -> Iterator[Date]:
    yield from (date for one in _sittings(case) if (date := known(one.date)))


def _hands(case: Case) -> Iterator[str]:
    for one in _sittings(case):
        for hand in items(one.hands):
            if who := known(hand.who):
                yield author(case, who)


def _who(names: list[str]) -> str:
    every = list(dict.fromkeys(names))
    if len(every) > MOST_NAMES:
        every = [*every[: MOST_NAMES - 1], "others"]
    return listed_text(every)


def _when(dates: list[Date], wording: Wording) -> str:
    """From the first day to the last, by the month; by the year where the dates say no more."""
    if len(dates) == 1:
        return _in(wording.say(dates[0]), dates[0])
    first = min((day for one in dates if (day := one.earliest_day())), default=None)
    last = max((day for one in dates if (day := one.latest_day())), default=None)
    if first is None or last is None or first > last:
        return ""
    vague = any(one.approximate or one.uncertain for one in dates)
    whole_years = (first.month, first.day, last.month, last.day) == (1, 1, 12, 31)
    start, end = (
        f"{day.year:04}{'~' if vague else '' if whole_years else f'-{day.month:02}'}"
        for day in (first, last)
    )
    found = Date.parse(start if start == end else f"{start}/{end}")
    return _in(wording.say(found), found)


def _in(text: str, date: Date) -> str:
    """A month or a year as the end of a sentence: "in March 2025"."""
    return text if "/" in date.edtf or date.is_day else f"in {text}"


def dangers(case: Case, wording: Wording) -> str:
    """The dangers that are on the object itself, in a line; those of the work alone are left out.

    What was wholly taken away in the treatment is a danger no more.
    """
    gone = {
        name
        for one in placed(case)
        if not known(one.step.leaves)
        for name in items(one.step.removes)
    }
    there = [one for one in items(case.hazards) if _on_object(one, gone, wording)]
    return "; ".join(_danger(one, wording) for one in there)


def _on_object(hazard: Hazard, gone: set[str], wording: Wording) -> bool:
    if places := items(hazard.part):
        return not gone.issuperset(places)
    what = known(hazard.what) or ""
    kinds = ("damages", "materials")
    found = (wording.lexicon.resolve(kind, one) for kind in kinds for one in (what, *what.split()))
    terms = (
        wording.lexicon.terms[kind][name] for kind, name in filter(None, found) if kind in kinds
    )
    return any(known(term.caution) for term in terms)


def _danger(hazard: Hazard, wording: Wording) -> str:
    where = text_of(wording.places(hazard.part)) if hazard.part else ""
    return f"{say(hazard.what) or 'a danger'}{f' (on {where})' if where else ''}"
