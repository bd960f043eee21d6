"""What a case's page is given: the case and its treatment, as finished words in reading order."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from casebook.drawings.words import Drawing
from casebook.output.colour_view import MatchView
from casebook.output.contexts import Fact, Line, Link, Pair, PictureView, Table
from casebook.output.marks_view import MarkedView, MarkNote
from casebook.output.structure_view import StructureView


@dataclass(frozen=True, slots=True)
class FindingView:
    """What was seen, where, and what it is taken to mean; `means` "" if nothing is said."""

    where: Line
    damage: Line
    seen: str
    means: str
    details: str
    """Stage, date, count and extent in one line."""
    photos: tuple[str, ...]
    """Ids of photos that show it."""
    marks: tuple[MarkNote, ...] = ()
    """Where it is marked on the photos."""
    anchor: str = ""
    """What leads to it from its marks; "" without any."""


@dataclass(frozen=True, slots=True)
class OptionView:
    """One course of treatment considered."""

    name: str
    outcome: str
    merits: str
    faults: str
    details: str
    """Time, cost, materials in one line."""
    chosen: bool


@dataclass(frozen=True, slots=True)
class QuestionView:
    """One of several questions of a plan, with its own courses and what was agreed."""

    asks: str
    options: tuple[OptionView, ...]
    decided: tuple[Line, ...]


@dataclass(frozen=True, slots=True)
class TrialView:
    """What was tried and what came of it."""

    text: str
    given_up: bool


@dataclass(frozen=True, slots=True)
class StepView:
    """One step as a sentence, with what belongs to it."""

    number: int
    sentence: Line
    """What was done; for a run, on what its steps were done one after the other."""
    details: str
    """Time, drying, and who did it, when and with which tools where that is its own; or ""."""
    remarks: tuple[str, ...]
    """Reasons and results, each a short sentence."""
    tried: tuple[TrialView, ...]
    finds: tuple[FindingView, ...]
    photos: tuple[PictureView, ...]
    words_only: bool
    layer: str
    """The id of the layer it adds, for the anchor `layer-ID`; "" if none."""
    ways: tuple[Line, ...] = ()
    """Where it was done in several ways: each in a sentence."""
    steps: tuple[StepView, ...] = ()
    """For a run: its steps, written once."""
    differs: tuple[Line, ...] = ()
    """For a run: where a member was treated otherwise."""


@dataclass(frozen=True, slots=True)
class EpisodeView:
    """One sitting: anchor `episode-N`, when, who, what was done, in prose and steps."""

    number: int
    title: str
    when: str
    hands: str
    time: str
    story: Markup
    steps: tuple[StepView, ...]
    photos: tuple[PictureView, ...]
    order: str = ""
    """Said above the steps where nobody knows in which order they were done; else ""."""
    words_only: str = ""
    """Which of the steps are recorded in words only, in a sentence; "" if none."""


@dataclass(frozen=True, slots=True)
class LikeView:
    """A like case: its title with the way to it, a picture if there is one, what both have."""

    title: str
    href: str
    picture: PictureView | None
    shared: str


@dataclass(frozen=True, slots=True)
class FileView:
    """A file beside the page: its name there, its name once saved, what it is, and its kind."""

    name: str
    saved: str
    title: str
    kind: str


@dataclass(frozen=True, slots=True)
class CasePage:
    """`pages/case.html`: everything an audience may see of one case, in reading order."""

    title: str
    kicker: str
    """Kind and date of the object in one line."""
    number: str
    """The case's id."""
    standing: str
    """How far it has come, in a few words; "" for a finished case."""
    status: str
    """Why it stands so, and how it was left, in sentences; or ""."""
    byline: str
    """Who treated it and when, in a sentence; "" where nobody said."""
    dangers: str
    """What on the object itself can hurt, in a line; "" if nothing is known of."""
    cover: tuple[Fact, ...]
    """What only the printed page says under its title: lab, client, dates, standing."""
    record_note: str
    """For an old or published case: what the record was made from; else ""."""
    pair: Pair
    story: Markup
    facts: tuple[Fact, ...]
    parts: tuple[Fact, ...]
    """Parts with their sizes, materials and numbers."""
    binding: tuple[Fact, ...]
    links: tuple[Line, ...]
    """Other cases that belong with it, each in a sentence."""
    hazards: tuple[Fact, ...]
    history: tuple[Line, ...]
    examination: tuple[Line, ...]
    findings: tuple[FindingView, ...]
    marks: tuple[MarkedView, ...]
    """Photographs with what was found drawn over them."""
    found_layers: tuple[Line, ...]
    tests: tuple[Line, ...]
    plan: tuple[Line, ...]
    """Use, aims, approval, limits and changes, each a sentence."""
    options: tuple[OptionView, ...]
    questions: tuple[QuestionView, ...]
    left_alone: tuple[Line, ...]
    episodes: tuple[EpisodeView, ...]
    matches: tuple[MatchView, ...]
    """Colours of the repair beside the original."""
    structure_withheld: bool
    """Whether the structure is not shown to this audience; the page says so."""
    structure: StructureView
    """The drawings, state by state, and how it all comes apart again."""
    drawings: tuple[Drawing, ...]
    """The drawings that lead."""
    other_drawings: tuple[Drawing, ...]
    """Those on which next to nothing happens."""
    apart: Link | None
    """The page for the box, where there is anything to take apart."""
    linings: Table | None
    hours: tuple[Table, ...]
    materials: Table | None
    by_time: tuple[Drawing, ...]
    """Sittings on a calendar, planned against actual."""
    by_area: tuple[Drawing, ...]
    """Materials by area."""
    reversibility: Markup
    claims: tuple[Line, ...]
    like: tuple[LikeView, ...]
    care: Markup
    follow_up: tuple[Line, ...]
    photos: tuple[PictureView, ...]
    elsewhere: tuple[Line, ...]
    """Photographs that are not here: slides, negatives, prints, and where they are kept."""
    gaps: tuple[str, ...]
    """What the record does not say, in fixed sentences."""
    diagnostics: tuple[str, ...]
    """On the lab's own site: faults of the record, as the check words them."""
    cite: str
    files: tuple[FileView, ...]
    licence: str
    terms: tuple[Link, ...]
    """Ways in that lead to this case."""
