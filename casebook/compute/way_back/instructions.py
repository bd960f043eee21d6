"""The way back as data: numbered openings, what each takes off, what stays, what to mind."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from casebook.compute.way_back.classes import Class, Reason
from casebook.model.vocabulary import Opener


class Question(StrEnum):
    """What is asked of a part or a layer."""

    BARE = "bare"
    """Take off all that was put on this part."""
    FREE = "free"
    """Part it from what it lies on, or from what ties it to other parts."""
    TAKE_OFF = "take off"
    """Take off this layer, and what must come with it."""


class Place(StrEnum):
    """What kind of place is opened, in the order in which one opening does them."""

    JOINT = "joint"
    FOLD = "fold"
    HELD = "held"
    BOND = "bond"
    SPLIT = "split"


@dataclass(frozen=True, slots=True)
class Opened:
    """One place that is opened: between which things, with what, and on whose word.

    Of a layer that splits, `lower` is the layer and `upper` what is pulled away from above it.
    `agent` is in words; `kinds`, `ease` (5 easy to 1 hardly), `leaves`, `when`, `source` and
    `assumed_from` are those of the release. `through` is what the agent goes through, from the
    outside in; `test_first` names parts on which it was never tried.
    """

    lower: str
    upper: str
    place: Place
    how: Class
    adhesives: tuple[str, ...] = ()
    held: tuple[str, ...] = ()
    agent: str = ""
    kinds: tuple[Opener, ...] = ()
    ease: int = 5
    leaves: str = ""
    when: str = ""
    source: str = "common practice, no source"
    assumed_from: str = ""
    through: tuple[str, ...] = ()
    test_first: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Rest:
    """What stays behind, on what, and what clears it; `with_` is "" where nothing known does."""

    what: str
    on: str
    with_: str = ""
    source: str = ""
    for_good: bool = False


@dataclass(frozen=True, slots=True)
class Opening:
    """One instruction: open these places, and what is in `together` comes off in one piece.

    `takes` is the thing aimed at, and `half` says that only what is left of it is there: the lower
    half of a layer that split. `left_on` are the things it comes off. `hiding` names what it hides,
    where it is lifted for that alone. `frees` is the original that this frees, and `in_piece` the
    number of the opening with which that came off, 0 if it did not.
    """

    number: int
    takes: str
    opened: tuple[Opened, ...]
    how: Class
    together: tuple[str, ...]
    left_on: tuple[str, ...] = ()
    half: bool = False
    hiding: str = ""
    frees: str = ""
    in_piece: int = 0
    riders: tuple[str, ...] = ()
    stays: tuple[Rest, ...] = ()
    mind: tuple[str, ...] = ()
    cannot: tuple[str, ...] = ()

    @property
    def agents(self) -> tuple[str, ...]:
        """With what it is opened, each agent once."""
        return tuple(dict.fromkeys(one.agent for one in self.opened if one.agent))

    @property
    def clear(self) -> tuple[Rest, ...]:
        """What of that which stays can be cleared, and with what."""
        return tuple(one for one in self.stays if one.with_)

    @property
    def sources(self) -> tuple[str, ...]:
        """Where the releases were read, each once."""
        return tuple(dict.fromkeys(one.source for one in self.opened if one.source))


@dataclass(frozen=True, slots=True)
class Stop:
    """Where the way ends: which thing cannot be parted from the rest, and why."""

    thing: str
    why: str
    reasons: tuple[Reason, ...] = ()


@dataclass(frozen=True, slots=True)
class Answer:
    """What to do, in order, for one question about one part or layer.

    Without openings and stops there is nothing to do. `stays` are things that never come off.
    """

    question: Question
    of: str
    openings: tuple[Opening, ...] = ()
    stops: tuple[Stop, ...] = ()
    stays: tuple[Rest, ...] = ()

    @property
    def whole(self) -> bool:
        """Whether it can be done to the end as things stand."""
        return not self.stops


@dataclass(frozen=True, slots=True)
class WayBack:
    """The way back of a structure: two answers for each original part, one for each layer."""

    bare: Mapping[str, Answer] = field(default_factory=dict)
    free: Mapping[str, Answer] = field(default_factory=dict)
    take_off: Mapping[str, Answer] = field(default_factory=dict)
