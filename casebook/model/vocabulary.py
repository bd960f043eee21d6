"""A term of the vocabulary: its plain-language gloss, its synonyms, its open identifiers."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum

from casebook.model.base import Audience, Many, Maybe, Record, lab, public, record
from casebook.values.quantities import Count, Grammage

KINDS = (
    "materials",
    "agents",
    "tools",
    "operations",
    "structures",
    "sewing",
    "parts",
    "damages",
    "kinds",
)
"""The vocabularies, each a file of its own name."""


@record
class Identifier(Record):
    """The term's number in an open vocabulary, and where that pairing was seen."""

    scheme: str = public("")
    """Which vocabulary, such as AAT."""
    id: str = public("")
    """The number there."""
    source: str = public("")
    """Where the pairing of term and number was read."""


class Opener(StrEnum):
    """The kind of thing that opens a bond."""

    MOISTURE = "moisture"
    ENZYME = "enzyme"
    SOLVENT = "solvent"
    HEAT = "heat"
    MECHANICAL = "mechanical"


@record
class Release(Record):
    """One way in which an adhesive, or a layer in its own thickness, can be opened."""

    agent: Maybe[str] = public()
    """With what, and how: "water, given slowly (damp blotter, poultice)"."""
    kind: Many[Opener] = public(())
    """moisture, enzyme, solvent, heat or mechanical; several where they act together."""
    ease: Maybe[Count] = public()
    """How easily: 5 at once, 1 hardly or never. Unit: count."""
    ease_from: Maybe[str] = public()
    """Where that figure comes from: stated in the source, judged from its text, from memory."""
    leaves: Maybe[str] = public()
    """What it leaves behind."""
    when: Maybe[str] = public()
    """Under which circumstances: aged hard, with alum or glue added, on original paper."""
    source: Maybe[str] = public()
    """Where it was read, or "common practice, no source"."""


@record
class Term(Record):
    """One word of the trade as this archive uses it."""

    label: str = public("")
    """How a page writes it."""
    also: Many[str] = public(())
    """Synonyms and other spellings."""
    gloss: Maybe[str] = public()
    """What it means, in plain words for a client."""
    class_: Maybe[str] = public()
    """What sort of thing it is, such as adhesive or paper."""
    broader: Maybe[str] = public()
    """The id of a wider term."""
    water_borne: Maybe[bool] = public()
    """Whether it brings water with it: yes or no."""
    weight: Maybe[Grammage] = public()
    """Mass per area, for a paper or cloth of the lab. Unit: g/m²."""
    splits: Maybe[bool] = public()
    """Whether a thin layer of it gives way in its own thickness when pulled: yes or no."""
    seals: Maybe[bool] = public()
    """Whether a dry film of it keeps moisture from what lies beneath: yes or no."""
    grain: Maybe[bool] = public()
    """Whether it has a grain: no for most hand-made papers."""
    releases: Many[Release] = public(())
    """For an adhesive or a layer: what opens it, with the source of each."""
    past: Maybe[str] = public()
    """An operation in the past tense, for sentences."""
    noun: Maybe[str] = public()
    """An operation as a noun, for headings."""
    hint: Maybe[str] = public()
    """What to mind about the word."""
    caution: Maybe[str] = public()
    """The usual caution, for what can hurt."""
    caution_source: Maybe[str] = public()
    """Where the caution was read."""
    ids: Many[Identifier] = public(())
    """Open identifiers."""
    was: Many[str] = public(())
    """Earlier ids of the term, so that old links and records still work."""
    audience: Audience | None = lab()
    """The widest audience for this term; left out, public."""
    note: Maybe[str] = lab()
    """A note for the lab alone: supplier, price, batch."""


Terms = Mapping[str, Mapping[str, Term]]
"""All terms: by vocabulary, then by id."""
