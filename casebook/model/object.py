"""The object: what it is, how big, how it is bound, and the parts it is made of."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Annotated, ClassVar

from casebook.model.base import Many, Maybe, Points, Record, Words, lab, public, record
from casebook.model.materials import Material, MaterialWord
from casebook.values.dates import Date
from casebook.values.quantities import Count, Length

_WALLS = re.compile(r"(?P<inner>\w+)\s+on\b,?\s*(?:and\s+)?(?P<outer>\w+)\s+off", re.I)

PlaceRef = Annotated[str, Points("place")]


@record
class Made(Record):
    """When the object was made, and who says so. Rival dates are a list of these."""

    SHORT: ClassVar[str] = "is"

    is_: Maybe[Date] = public()
    """The date: EDTF or plain words such as "c. 1780", "mid-19th century", "before 1850"."""
    says: Maybe[str] = public()
    """Who says so: the owner, the title page, the binding."""
    because: Maybe[str] = public()
    """What the date rests on."""


@record
class Size(Record):
    """Outer measures, each as it was read off the rule. Source: AIC Commentary 24 B."""

    height: Maybe[Length] = public()
    """From head to tail. Unit: length."""
    width: Maybe[Length] = public()
    """From spine to fore-edge, or across a sheet. Unit: length."""
    thickness: Maybe[Length] = public()
    """Through the closed volume, or of a sheet. Unit: length."""
    length: Maybe[Length] = public()
    """Along a scroll, a strip or a strap. Unit: length."""
    diameter: Maybe[Length] = public()
    """Across a roll, a boss or a seal. Unit: length."""


@record
class Owner(Record):
    """Who owns the object. For the lab alone."""

    SHORT: ClassVar[str] = "name"

    name: Maybe[str] = lab()
    """The owner's name."""
    contact: Maybe[str] = lab()
    """How to reach the owner."""


@record
class Holder(Record):
    """The institution that holds the object, where that may be known."""

    SHORT: ClassVar[str] = "name"

    name: Maybe[str] = public()
    """The institution's name."""
    shelfmark: Maybe[str] = public()
    """Its shelfmark, call number or accession number there."""


@record
class Came(Record):
    """How much of a set came for treatment: `3 of 5`."""

    SHORT: ClassVar[str] = "done"

    done: Maybe[Count] = public()
    """How many came. Unit: count."""
    of: Maybe[Count] = public()
    """Out of how many. Unit: count."""
    rest: Maybe[str] = public()
    """Where the others are, and why they did not come."""

    @classmethod
    def from_text(cls, text: str) -> Mapping[str, str | list[str]]:
        """Read "3 of 5"."""
        return counted(text) or {"done": text}


def counted(text: str) -> Mapping[str, str] | None:
    """The two counts of "3 of 5" by the keys they stand for; None for any other text."""
    found = re.fullmatch(r"(?P<done>[^,;]*\d)\s+of\s+(?P<of>[^,;]*\d)", text.strip())
    return found.groupdict() if found else None


@record
class Object(Record):
    """What the object is. Source of the whole: AIC Commentary 24 B, identification."""

    kind: Maybe[Annotated[str, Words("kinds")]] = public()
    """What kind of thing it is, such as ledger, map or photograph album."""
    author: Maybe[str] = public()
    """Who wrote, drew or printed it. Source: AIC Commentary 24 B, maker/origin."""
    place: Maybe[str] = public()
    """Where it was made. Source: AIC Commentary 24 B, maker/origin."""
    made: Many[Made] = public(())
    """When it was made; rival dates are a list. Source: AIC Commentary 24 B, date of creation."""
    size: Maybe[Size] = public()
    """Its measures. Unit: length. Source: AIC Commentary 24 B, measurements."""
    leaves: Maybe[str] = public()
    """Extent in leaves, pages or sheets, as counted."""
    came: Maybe[Came] = public()
    """Of a set, how many members came: `3 of 5`."""
    marks: Many[str] = public(())
    """Marks, labels, inscriptions. Source: AIC Commentary 24 B, marks/labels."""
    housing: Maybe[str] = public()
    """What it came in and with: box, wrapper, loose insertions. Source: AIC Commentary 25 B."""
    about: Maybe[str] = public()
    """What it is about, in a sentence for readers."""
    owner: Maybe[Owner] = lab()
    """Who owns it. Source: AIC Commentary 24 B, owner/custodian."""
    held_by: Maybe[Holder] = public()
    """Who holds it, where that may be known. Source: AIC Commentary 24 B, owner/custodian."""


@record
class Sewing(Record):
    """How the leaves are held together."""

    SHORT: ClassVar[str] = "pattern"

    pattern: Maybe[Annotated[str, Words("sewing")]] = public()
    """The way the thread runs, such as all-along."""
    supports: Many[Annotated[str, Words("sewing")]] = public(())
    """What it is sewn on, such as recessed cords or tapes."""
    thread: Maybe[MaterialWord] = public()
    """What the thread is."""
    stations: Maybe[Count] = public()
    """Sewing stations. Unit: count."""
    endbands: Many[Annotated[str, Words("sewing")]] = public(())
    """Endbands (headbands), at head and tail."""


@record
class Boards(Record):
    """The boards and how they are attached."""

    SHORT: ClassVar[str] = "material"

    material: Maybe[MaterialWord] = public()
    """What the boards are made of."""
    attached: Maybe[str] = public()
    """How they are attached: laced on, glued to the linings, hinged."""
    thickness: Maybe[Length] = public()
    """Thickness of a board. Unit: length."""


@record
class Binding(Record):
    """A binding the object has or had; the one on arrival counts for likeness."""

    state: Maybe[str] = public()
    """Which one: first, on-arrival, after, or in words."""
    structure: Maybe[Annotated[str, Words("structures")]] = public()
    """Its structure, such as tight-back."""
    sewing: Maybe[Sewing] = public()
    """How it is sewn."""
    boards: Maybe[Boards] = public()
    """Its boards."""
    covering: Many[MaterialWord] = public(())
    """What it is covered in, spine first."""
    spine: Maybe[str] = public()
    """The spine's shape: flat, rounded, rounded and backed."""
    decoration: Maybe[str] = public()
    """Tooling, labels, edges."""
    date: Maybe[Date] = public()
    """When this binding was made."""
    note: Maybe[str] = public()
    """Anything else about it."""


@record
class Part(Record):
    """A part of the object that has a count, a size, a material or parts of its own.

    Known parts need no line. For a spine, `width` is measured straight across the back and `rise`
    is the height of its curve over that line.
    """

    of: Maybe[PlaceRef] = public(structural=True)
    """The part it belongs to, where that is not plain from its place in the tree."""
    is_: Maybe[Annotated[str, Words("parts")]] = public(structural=True)
    """The trade word for it, where its name here is another."""
    count: Maybe[Count] = public(structural=True)
    """How many there are. Unit: count."""
    material: Maybe[Material] = public(structural=True)
    """What it is made of."""
    width: Maybe[Length] = public(structural=True)
    """Across; for a spine straight across the back, for a joint along its curve. Unit: length."""
    rise: Maybe[Length] = public(structural=True)
    """How far a spine rises over the line across its back; 0 if flat. Unit: length."""
    height: Maybe[Length] = public(structural=True)
    """From head to tail. Unit: length."""
    thickness: Maybe[Length] = public(structural=True)
    """Through it. Unit: length."""
    length: Maybe[Length] = public(structural=True)
    """Along it, for a strap or strip. Unit: length."""
    note: Maybe[str] = public()
    """Anything else about it."""
    parts: Mapping[str, Part] = public({}, structural=True)
    """Its own parts, by name."""


@record
class Bond(Record):
    """One of several bonds of one layer: what it holds to, and how."""

    SHORT: ClassVar[str] = "onto"

    onto: Many[PlaceRef] = public((), structural=True)
    """What it holds to here: a part, a layer, a face."""
    adhesive: Maybe[Material] = public(structural=True)
    """What it is stuck with here; `unnamed`, `unknown` or `none`."""
    held: Many[str] = public((), structural=True)
    """How it is held mechanically here: sewn, laced, tacked, slotted."""
    cuts: Many[PlaceRef] = public((), structural=True)
    """What that goes through, or what was cut for it."""
    face: Maybe[str] = public(structural=True)
    """Which face it holds with: inner, outer, recto, verso."""
    where: Maybe[str] = public(structural=True)
    """Where, in words, if not over the whole of it: along the edges, at head and tail."""


@record
class Walls(Record):
    """The walls of a hollow tube, in plies. `1 on, 2 off` gives both."""

    inner: Maybe[Count] = public(structural=True)
    """Plies on the spine. Unit: count."""
    outer: Maybe[Count] = public(structural=True)
    """Plies away from it. Unit: count."""

    @classmethod
    def from_text(cls, text: str) -> Mapping[str, str | list[str]]:
        """Read "1 on, 2 off"."""
        found = _WALLS.fullmatch(text.strip())
        return found.groupdict() if found else {}
