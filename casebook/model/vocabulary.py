"""A term of the vocabulary: its plain-language gloss, its synonyms, its open identifiers."""

from __future__ import annotations

from collections.abc import Mapping

from casebook.model.base import Audience, Many, Maybe, Record, lab, public, record
from casebook.values.quantities import Grammage

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
