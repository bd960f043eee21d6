"""How much it asks to open a bond: the table of classes, and exact prices made from it."""

from __future__ import annotations

from enum import StrEnum

from casebook.model.vocabulary import Opener


class Class(StrEnum):
    """What opening something takes, from the gentlest. The order is common practice, no source."""

    CUT = "cutting new material clear of the original"
    RIDE = "an original that rides along"
    HAND = "by hand"
    SPLIT = "a layer made to split"
    MOISTURE = "moisture"
    ENZYME = "enzyme"
    HEAT = "heat"
    SOLVENT = "solvent"
    BLADE = "blade"
    UNKNOWN = "unknown"
    DAMAGE = "damage to an original"


class Reason(StrEnum):
    """Why a way to open something is not proposed."""

    UNNAMED = "nobody named how it holds"
    NOT_ON_RECORD = "no release of it is known"
    RULED_OUT = "a test is against it"
    FAILED = "it failed here"
    HARDLY = "it hardly ever opens it"
    OUT_OF_REACH = "it does not come to it"
    UNDER = "something lies on it"
    ORIGINAL = "it would damage an original"


RANK = {one: rank for rank, one in enumerate(Class)}
"""How each class is ordered."""

OF_KIND = {
    Opener.MOISTURE: Class.MOISTURE,
    Opener.ENZYME: Class.ENZYME,
    Opener.HEAT: Class.HEAT,
    Opener.SOLVENT: Class.SOLVENT,
    Opener.MECHANICAL: Class.BLADE,
}
"""The class of each kind of agent; what acts together counts as the harshest of its kinds."""

_STEP = 10**9
_EASE = {5: 100, 4: 200, 3: 400, 2: 800, 1: 1600}
_TEST_FIRST = 50
_BESIDE_HARM = 150
_AT_ORIGINAL = 1


def price(
    how: Class,
    ease: int = 5,
    *,
    test_first: bool = False,
    beside_harm: bool = False,
    at_original: bool = False,
) -> int:
    """The exact price of opening one bond.

    Any number of bonds of one class (up to a million) is cheaper than one of the next. Within a
    class each step of ease doubles it; a part without a test costs half an easy bond more, one
    beside a part that the agent harms one and a half.
    """
    more = _TEST_FIRST * test_first + _BESIDE_HARM * beside_harm + _AT_ORIGINAL * at_original
    return int(_STEP ** RANK[how]) * (_EASE[min(max(ease, 1), 5)] + more)


def openable(how: Class) -> bool:
    """Whether it is ever proposed: not what is unknown, nor what damages an original."""
    return RANK[how] < RANK[Class.UNKNOWN]


def harshest(classes: list[Class]) -> Class:
    """The harshest of some classes; by hand where there are none."""
    return max(classes, key=RANK.__getitem__, default=Class.HAND)
