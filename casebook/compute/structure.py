"""The structure at one moment: what lies on what, and how each thing holds to the other."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from enum import StrEnum


class Since(StrEnum):
    """Since when a thing has belonged to the object."""

    ORIGINAL = "original"
    FOUND = "found"
    ADDED = "added"


class How(StrEnum):
    """How two things hold together."""

    STUCK = "stuck"
    """By an adhesive; `adhesives` is empty where it is there and not named."""
    HELD = "held"
    """Mechanically: sewn, laced, tacked, slotted; `held` says how."""
    SOAKED = "soaked"
    """A consolidant, a size or a dressing in what it went into."""
    GROWN = "grown"
    """Parts of one thing: a board and its leather, a leaf and its text block."""
    JOINT = "joint"
    """Two zones of one layer, which can be slit between them."""
    FOLD = "fold"
    """The two walls of one tube."""
    UNKNOWN = "unknown"
    """Nobody recorded how, or it could not be told."""


@dataclass(frozen=True, slots=True)
class Thing:
    """A part, a layer, one zone of a layer, or one wall of a tube.

    `name` is unique: `spine`, `release-lining`, `cloth-lining/board 1`, `tube/inner`. `of` is the
    part or layer that it is, or is a zone or a wall of: for a whole one its own name. `zone` is the
    part that a zone covers, `wall` inner or outer.
    `materials` are ids of the vocabulary or words as written, the likeliest first, none if unknown.
    `step` counts the steps of the case from 1 in their order; 0 is as found.
    """

    name: str
    of: str
    zone: str = ""
    wall: str = ""
    part: bool = False
    since: Since = Since.ORIGINAL
    materials: tuple[str, ...] = ()
    ruled_out: tuple[str, ...] = ()
    splits: bool = False
    temporary: bool = False
    partly: bool = False
    where: str = ""
    thickness_um: int | None = None
    step: int = 0
    height_um: int | None = None
    """From head to tail as cut, or as the part measures; None if not recorded. Unit: µm."""
    width_um: int | None = None
    """Across: of a zone its own share, of a spine straight across its back. Unit: µm."""
    apart: bool = False
    """It lies apart: taken off and not put back so far, or made and not laid so far."""
    patches: bool = False
    """Pieces, patches or edges: it does not cover the whole of what it lies on."""


@dataclass(frozen=True, slots=True)
class Bond:
    """One way in which `upper` holds to `lower`, the thing that carries it.

    Of parts grown together `lower` is the larger, to which the other belongs. `partly` and `where`
    say that it does not hold everywhere.
    """

    lower: str
    upper: str
    how: How
    adhesives: tuple[str, ...] = ()
    ruled_out: tuple[str, ...] = ()
    held: tuple[str, ...] = ()
    cuts: tuple[str, ...] = ()
    face: str = ""
    where: str = ""
    partly: bool = False
    since: Since = Since.ORIGINAL
    step: int = 0
    reused: bool = False
    """It holds a part that was taken off and put back."""
    opened: tuple[int, ...] = ()
    """The steps that loosened it, by their numbers, without parting the two."""
    guessed: bool = False
    """`adhesives` are guesses, of which one is right; else all are in it, as in a mixture."""
    within: bool = False
    """An infill: `upper` lies in the thickness of `lower`."""


@dataclass(frozen=True, slots=True)
class Structure:
    """Things by name and the bonds between them: both ends of a bond are among the things.

    `covers` are pairs (lower, upper) that touch and are not bonded; `hides` pairs (hidden, hider)
    where the hider must be lifted first though nothing bonds the two. What is hidden may also be a
    finding, by its id.
    """

    things: Mapping[str, Thing] = field(default_factory=dict)
    bonds: tuple[Bond, ...] = ()
    covers: tuple[tuple[str, str], ...] = ()
    hides: tuple[tuple[str, str], ...] = ()

    def zones(self, of: str) -> Iterator[Thing]:
        """The things that make up one part or layer, in the order of their names."""
        return (self.things[name] for name in sorted(self.things) if self.things[name].of == of)

    def at(self, name: str) -> Iterator[Bond]:
        """The bonds in which a thing takes part."""
        return (bond for bond in self.bonds if name in (bond.lower, bond.upper))
