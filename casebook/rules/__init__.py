"""What a record must or should satisfy: every rule, listed once, and the running of them all."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Mapping

from casebook.diagnostics import Diagnostic
from casebook.model.archive import Archive, Case
from casebook.model.base import Audience
from casebook.rules import (
    adhesives,
    beyond_plan,
    colour,
    dates,
    decay,
    documentation,
    examination,
    follow_up,
    hazards,
    identity,
    linings,
    marks,
    photo_facts,
    photographs,
    plan,
    references,
    repairs,
    reversibility,
    runs,
    sittings,
    structure,
    treatment,
    try_outs,
    way_back,
    wet,
    words,
)
from casebook.rules.declare import Rule
from casebook.rules.fields import field
from casebook.rules.look import Look
from casebook.vocabulary import Lexicon

ALL: tuple[Rule, ...] = (
    *identity.PRACTICE,
    *documentation.PRACTICE,
    *examination.PRACTICE,
    *plan.PRACTICE,
    *beyond_plan.PRACTICE,
    *sittings.PRACTICE,
    *treatment.PRACTICE,
    *runs.PRACTICE,
    *wet.PRACTICE,
    *try_outs.PRACTICE,
    *decay.PRACTICE,
    *linings.PRACTICE,
    *adhesives.PRACTICE,
    *repairs.PRACTICE,
    *photographs.PRACTICE,
    *photo_facts.PRACTICE,
    *marks.PRACTICE,
    *colour.PRACTICE,
    *structure.PRACTICE,
    *reversibility.PRACTICE,
    *way_back.PRACTICE,
    *follow_up.PRACTICE,
    *references.PRACTICE,
    *words.PRACTICE,
    *dates.PRACTICE,
    *hazards.PRACTICE,
)
"""Every rule, in the order in which a record is read."""

NAMED: Mapping[str, Rule] = {one.name: one for one in ALL}
"""Every rule by its name."""


def run(
    archive: Archive, today: datetime.date, folders: Mapping[str, str]
) -> tuple[Diagnostic, ...]:
    """Check every case. `folders` gives each case's folder by its id, for `Diagnostic.case`."""
    lexicon = Lexicon(archive.terms)
    looks = [Look(case, archive, today, lexicon) for case in archive.cases]
    return tuple(one for look in looks for one in _check(look, folders.get(look.case.id, "")))


def _check(look: Look, folder: str) -> Iterator[Diagnostic]:
    for rule in ALL:
        severity = rule.severity(look)
        for one in rule.check(look) if severity is not None else ():
            weight = min(severity or one.cap, one.cap)
            yield Diagnostic(rule.name, weight, one.message, one.span, one.hint, folder)


def gaps(
    case: Case, archive: Archive, audience: Audience, *, withheld: bool = False
) -> tuple[str, ...]:
    """What a redacted case leaves open, in fixed sentences that quote nothing.

    Only rules speak whose fields the audience may all see; with `withheld` (the structure of this
    case is not shown) none that reads structure.
    """
    look = Look(case, archive, datetime.date.max, page=True)
    speaking = (one for one in ALL if one.gap and _seen(one, audience, withheld))
    return tuple(one.gap for one in speaking if _raised(one, look))


def _seen(rule: Rule, audience: Audience, withheld: bool) -> bool:
    read = [field(name) for name in rule.fields]
    return all(audience.may_see(one.seen) and not (withheld and one.structural) for one in read)


def _raised(rule: Rule, look: Look) -> bool:
    return rule.severity(look) is not None and any(True for _ in rule.check(look))
