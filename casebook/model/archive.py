"""The whole: a case with everything recorded about it, and the archive of all cases."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from typing import ClassVar, NewType

from casebook.model.base import Audience, CaseRef, Many, Maybe, Record, client, lab, public, record
from casebook.model.condition import (
    Examination,
    Finding,
    FollowUp,
    Found,
    Hazard,
    History,
    LeftAlone,
    PersonRef,
    Test,
)
from casebook.model.object import Binding, Object, Part
from casebook.model.outcome import Lump, Reversibility
from casebook.model.photos import Image, Photo
from casebook.model.proposal import Proposal
from casebook.model.settings import Settings
from casebook.model.treatment import Episode, Recipe, Step
from casebook.model.vocabulary import Terms
from casebook.values.dates import Date


class Standing(StrEnum):
    """How far a case has come."""

    UNDECIDED = "undecided"
    DECLINED = "declined"
    PROPOSED = "proposed"
    IN_TREATMENT = "in-treatment"
    COMPLETE = "complete"
    STOPPED = "stopped"


class Kind(StrEnum):
    """What the record was made from; it sets how much a rule may ask."""

    AT_THE_BENCH = "at-the-bench"
    FROM_NOTES = "from-notes"
    FROM_PUBLICATION = "from-publication"


@record
class Status(Record):
    """How far the case has come; for a stopped one, why and in what state it was left."""

    SHORT: ClassVar[str] = "is"

    is_: Standing | None = public()
    """undecided, declined, proposed, in-treatment, complete or stopped."""
    because: Maybe[str] = public()
    """Why it was stopped or declined."""
    left: Maybe[str] = public()
    """The state in which the object was left."""


@record
class Person(Record):
    """Somebody who worked on the case, known by initials."""

    SHORT: ClassVar[str] = "role"

    role: Maybe[str] = public()
    """What they did: conservator, finisher, photographer."""
    name: Maybe[str] = client()
    """Their name."""
    of: Maybe[str] = client()
    """Where they work, if not in this lab."""


@record
class Dates(Record):
    """Landmarks of the case."""

    received: Maybe[Date] = public()
    """When the object came."""
    examined: Maybe[Date] = public()
    """When it was examined. Source: AIC Commentary 25 B."""
    returned: Maybe[Date] = public()
    """When it went back."""


@record
class Written(Record):
    """Who wrote this record, when and what for. Source: AIC Commentary 24 B, all records."""

    SHORT: ClassVar[str] = "by"

    by: Many[PersonRef] = public(())
    """Who wrote it. Source: AIC Commentary 24 B, name of documentor."""
    date: Maybe[Date] = public()
    """When it was written. Source: AIC Commentary 24 B, date of document."""
    for_: Maybe[str] = public()
    """What for. Source: AIC Commentary 24 B, purpose of the documentation."""
    from_: Many[str] = public(())
    """What it was written up from: bench book, slides, a publication with its citation."""


class Kinship(StrEnum):
    """What another case is to this one."""

    RETREATS = "retreats"
    SAME_SET = "same-set"
    LIKE = "like"
    OLD_CARRIER = "old-carrier"


@record
class Link(Record):
    """A link to another case, by its id; that case's page shows it too, the other way round."""

    SHORT: ClassVar[str] = "case"

    case: CaseRef | None = public()
    """The id of the other case."""
    is_: Maybe[Kinship] = public()
    """What it is: retreats (treated there before), same-set, like, old-carrier (came off that)."""
    because: Maybe[str] = public()
    """In what, or why."""


@record
class Case(Record):
    """One treated object, or a set treated together, with everything recorded about it."""

    id: str = public("")
    """The case's name for ever: a-z, 0-9, hyphen, at most 40 signs. Source: AIC Commentary 24 B."""
    title: Maybe[str] = public()
    """What a reader calls it. Source: AIC Commentary 24 B, subject/title."""
    was: Many[str] = public(())
    """Earlier ids, so that old addresses lead here."""
    status: Maybe[Status] = public()
    """How far it has come."""
    record: Kind | None = public()
    """What the record was made from; at-the-bench where left out."""
    audience: Audience | None = lab()
    """The widest audience that may see the case; the lab alone where left out."""
    structure: Audience | None = lab()
    """The widest audience for the structure as a whole; the case's own where left out."""
    client: Maybe[str] = lab()
    """The key of the client, as in `lab.yml`."""
    written: Maybe[Written] = public()
    """Who wrote the record, when and what for. Source: AIC Commentary 24 B."""
    people: Mapping[str, Person] = public({})
    """Who worked on it, by initials. Source: AIC Commentary 27 B."""
    dates: Maybe[Dates] = public()
    """Landmarks: received, examined, returned."""
    links: Many[Link] = public(())
    """Other cases that belong with this one."""
    object: Maybe[Object] = public()
    """What the object is. Source: AIC Commentary 24 B."""
    bindings: Many[Binding] = public(())
    """The bindings it has or had."""
    parts: Mapping[str, Part] = public({}, structural=True)
    """Parts that have a count, size, material or parts of their own."""
    as_found: Many[Found] = public((), structural=True)
    """Layers that were there on arrival, in no order."""
    history: Many[History] = public(())
    """Earlier treatments. Source: AIC Commentary 25 B."""
    examination: Maybe[Examination] = public()
    """Why and how it was examined. Source: AIC Commentary 25 B."""
    findings: Many[Finding] = public(())
    """What was seen. Source: AIC Commentary 25 B, present condition."""
    hazards: Many[Hazard] = public(())
    """Dangers of the object or of the work, with their cautions."""
    tests: Many[Test] = public((), structural=True)
    """Try-outs and analyses. Source: AIC Commentary 25 B."""
    proposal: Maybe[Proposal] = public()
    """The treatment plan and its approval. Source: AIC Commentary 26 B."""
    steps: Many[Step] = public(())
    """Steps of a treatment written up in one go, without episodes."""
    order: Maybe[str] = public(structural=True)
    """`not recorded` or `unknown` where nobody can say in which order `steps` were done."""
    episodes: Many[Episode] = public(())
    """The sittings; they may stand here or as files in `episodes/`."""
    left_alone: Many[LeftAlone] = public(())
    """What was left as it is on purpose."""
    reversibility: Maybe[Reversibility] = public(structural=True)
    """How the treatment can be undone. Source: ECCO Professional Guidelines II (2003) Art. 9."""
    time: Maybe[Lump] = public()
    """Time for the whole, where it was not kept step by step. Unit: duration."""
    care: Maybe[str] = public()
    """Advice for keeping and handling. Source: AIC Guideline 27 (from memory)."""
    follow_up: Many[FollowUp] = public((), structural=True)
    """Later looks at the object."""
    photos: Many[Photo] = public(())
    """The photographs. Source: AIC Commentary 27 B."""
    gaps: Mapping[str, Many[str]] = public({})
    """Not-knowing in bulk: `{not recorded: [time, housing]}` names keys of this record."""
    note: Maybe[str] = lab()
    """A note for the lab alone."""
    story: str = public("")
    """The story of the object in prose: the text below the front matter."""


LAB = ""
"""Where `images` keeps the lab's own pictures, which belong to no case."""
LOGO = "logo"


@dataclass(frozen=True, slots=True)
class Archive:
    """The lab, its terms and its cases; `images` gives each case's photos by file name.

    Under `LAB` stands the lab's logo, called `LOGO`.
    """

    settings: Settings
    terms: Terms
    cases: tuple[Case, ...]
    recipes: Mapping[str, Recipe] = field(default_factory=dict)
    images: Mapping[str, Mapping[str, Image]] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Shown:
    """What one audience may see: an archive without a trace of the rest.

    Photos carry no file name but the place of their image in `images`, by case and photo id.
    `withheld` names the cases whose structure is not shown.
    """

    audience: Audience
    archive: Archive
    withheld: frozenset[str] = frozenset()


Redacted = NewType("Redacted", Shown)
"""Only `audiences.redact` makes one; everything that is published takes nothing else."""
