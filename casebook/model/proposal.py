"""The proposal: the courses of treatment considered, the approval, and changes of plan."""

from __future__ import annotations

from enum import StrEnum
from typing import ClassVar

from casebook.model.base import Audience, Many, Maybe, Record, client, items, lab, public, record
from casebook.model.condition import PersonRef
from casebook.model.materials import Material
from casebook.values.dates import Date
from casebook.values.durations import Duration


class Choice(StrEnum):
    """What became of an option or a trial."""

    CHOSEN = "chosen"
    REJECTED = "rejected"
    DEFERRED = "deferred"
    GIVEN_UP = "given-up"


@record
class Option(Record):
    """One course of treatment that was considered. Source: AIC Commentary 26 B."""

    name: Maybe[str] = public()
    """What it is, in a few words."""
    merits: Maybe[str] = public()
    """What speaks for it."""
    faults: Maybe[str] = public()
    """What speaks against it."""
    materials: Many[Material] = public(())
    """Materials it would use. Source: AIC Commentary 26 B."""
    time: Maybe[Duration] = public()
    """Estimate of bench time. Unit: duration. Source: AIC Commentary 26 B."""
    cost: Maybe[str] = client()
    """Estimate of cost. Source: AIC Commentary 26 B."""
    outcome: Maybe[Choice] = public()
    """What became of it: chosen, rejected, deferred."""
    because: Maybe[str] = public()
    """Why."""
    audience: Audience | None = lab()
    """The widest audience for this item; left out, the case's own."""


@record
class Decision(Record):
    """The owner's or custodian's approval. Source: AIC Commentary 26 B."""

    date: Maybe[Date] = public()
    """When it was given."""
    by: Many[str] = public(())
    """Who gave it, and on what authority."""
    how: Maybe[str] = public()
    """How: letter, e-mail, signature."""
    limits: Maybe[str] = public()
    """What was to be left alone, or not exceeded."""
    audience: Audience | None = lab()
    """The widest audience for this item; left out, the case's own."""


@record
class Question(Record):
    """One of several questions of a plan, each with courses of its own."""

    SHORT: ClassVar[str] = "asks"

    asks: Maybe[str] = public()
    """What was to be decided."""
    options: Many[Option] = public(())
    """The courses considered."""
    decided: Maybe[Decision] = public()
    """The approval, where it was given for this question alone."""


@record
class Change(Record):
    """A change of plan, and whether it was agreed. Source: AIC Commentary 26 B."""

    what: Maybe[str] = public()
    """What changed."""
    because: Maybe[str] = public()
    """Why."""
    agreed: Maybe[str] = public()
    """Whether, how and by whom it was agreed."""
    date: Maybe[Date] = public()
    """When."""
    audience: Audience | None = lab()
    """The widest audience for this item; left out, the case's own."""


@record
class Proposal(Record):
    """The treatment plan. Source: AIC Commentary 26 B."""

    use: Maybe[str] = public()
    """What the object will be used for."""
    aims: Maybe[str] = public()
    """What the treatment is to achieve."""
    options: Many[Option] = public(())
    """The courses considered."""
    questions: Many[Question] = public(())
    """Where there were several questions: each with its own courses."""
    decided: Maybe[Decision] = public()
    """The approval; for all questions together where they have none of their own."""
    changes: Many[Change] = public(())
    """Changes of plan after the approval."""
    by: Many[PersonRef] = public(())
    """Who wrote it."""
    date: Maybe[Date] = public()
    """When it was written."""


def courses(proposal: Proposal) -> tuple[Option, ...]:
    """Every course considered: those of the plan as a whole, then question by question."""
    asked = (option for one in items(proposal.questions) for option in items(one.options))
    return (*items(proposal.options), *asked)
