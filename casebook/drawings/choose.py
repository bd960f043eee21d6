"""Which drawings a case gets: one for each original part on which something lies."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from casebook.compute.structure import How, Since, Structure
from casebook.drawings import sheet, spine
from casebook.drawings.carried import CARRIES, INNER
from casebook.drawings.cuts import Cut
from casebook.drawings.facts import Facts, facts_of
from casebook.drawings.spine_shape import is_right
from casebook.drawings.stack import Moment, Story, columns, story
from casebook.drawings.words import Drawing
from casebook.model.archive import Case
from casebook.values.notation import PLAIN, Notation
from casebook.vocabulary import Lexicon

_UNSAFE = re.compile(r"[^A-Za-z0-9_-]")
"""What cannot stand in an id that is referred to as `url(#…)`."""

_SIDE = "front|back|upper|lower|left|right"
_BOARD = re.compile(rf"(?:(?:{_SIDE})[ -])?board(?:[ -](?:\d+|{_SIDE}))?", re.I)
"""What boards beside a spine are called; the first of two is drawn at the left."""


def drawings_for(
    moments: Sequence[Moment],
    case: Case,
    lexicon: Lexicon,
    prefix: str = "section",
    notation: Notation = PLAIN,
) -> tuple[Drawing, ...]:
    """The cross-sections of a case, spines first, each with all its states."""
    facts = facts_of(case, lexicon, notation)
    stories = (_story(moments, roots) for roots in parts_drawn(moments, facts))
    told = (one for one in stories if _worth_it(one))
    return tuple(_draw(one, facts, f"{prefix}-{n}") for n, one in enumerate(told, 1))


def _story(moments: Sequence[Moment], roots: tuple[str, ...]) -> Story:
    """A spine is drawn with the outsides of its boards; of a flat part both faces are seen."""
    return story(moments, roots, inside=len(roots) == 1)


def _worth_it(told: Story) -> bool:
    """Whether something happened on these parts, or lies there that is not original."""
    return told.last > 0 or any(one.thing.since is not Since.ORIGINAL for one in told.carriers())


def way_back_for(
    moments: Sequence[Moment],
    case: Case,
    lexicon: Lexicon,
    cuts: Sequence[Cut],
    prefix: str = "way-back",
    notation: Notation = PLAIN,
) -> tuple[Drawing, ...]:
    """The way back on the final state: each drawing on which at least one of the cuts is seen."""
    facts = facts_of(case, lexicon, notation)
    found = []
    for n, roots in enumerate(parts_drawn(moments, facts), 1):
        told = _story(moments[-1:], roots)
        names = {sight.name for sight in told.sights}
        here = [cut for cut in cuts if {cut.lower, cut.upper} <= names]
        if here:
            found.append(_draw(told, facts, f"{prefix}-{n}", here))
    return tuple(found)


def _draw(told: Story, facts: Facts, prefix: str, cuts: Sequence[Cut] = ()) -> Drawing:
    draw = spine.draw if facts.is_spine(told.roots[0]) else sheet.draw
    return draw(told, facts, _UNSAFE.sub("-", prefix), cuts)


def parts_drawn(moments: Sequence[Moment], facts: Facts) -> tuple[tuple[str, ...], ...]:
    """The parts of each drawing, its own first: spines with their boards, then flat parts by name.

    A board that a spine's drawing shows gets one of its own only for what lies on its inside.
    """
    bearing = [name for name in _originals(moments) if _bears(moments, name)]
    spines = [(name, *_boards(moments, name)) for name in bearing if facts.is_spine(name)]
    shown = {name for roots in spines for name in roots}
    inside = [name for name in bearing if name in shown and _bears_inside(moments, name)]
    flat = [name for name in bearing if name not in shown or name in inside]
    flat = [name for name in flat if not _only_sewn_to(moments, name, shown)]
    return (*spines, *((name,) for name in flat if not facts.is_spine(name)))


def _originals(moments: Sequence[Moment]) -> list[str]:
    """The original parts of a case, by name."""
    every = {
        thing.name
        for one in moments
        for thing in one.structure.things.values()
        if _own(thing.part, thing.since)
    }
    return sorted(every)


def _own(part: bool, since: Since) -> bool:
    return part and since is Since.ORIGINAL


def _bears(moments: Sequence[Moment], name: str) -> bool:
    """Whether a layer ever held to a part; boxes and wrappers are parts, not layers."""
    return any(_layer_on(one.structure, name) for one in moments)


def _layer_on(structure: Structure, name: str) -> bool:
    things = structure.things
    bonds = (bond for bond in structure.bonds if bond.lower == name and bond.how in CARRIES)
    return any(bond.upper in things and not things[bond.upper].part for bond in bonds)


def _only_sewn_to(moments: Sequence[Moment], name: str, shown: set[str]) -> bool:
    """Whether what is on a part is only sewn to it, and a drawing of one of its own parts is there.

    A text block whose spine is drawn needs no second drawing for a thread.
    """
    bonds = [bond for one in moments for bond in one.structure.bonds if bond.lower == name]
    drawn = any(bond.how is How.GROWN and bond.upper in shown for bond in bonds)
    return drawn and all(bond.how in (How.HELD, How.GROWN) for bond in bonds)


def _bears_inside(moments: Sequence[Moment], name: str) -> bool:
    """Whether something ever held to the inner face of a part."""
    return any(
        bond.lower == name and bond.how in CARRIES and bond.face.casefold() in INNER
        for one in moments
        for bond in one.structure.bonds
    )


def _boards(moments: Sequence[Moment], name: str) -> Iterator[str]:
    """The boards of the same volume as a spine, where something holds to them from outside."""
    above = name.rpartition("/")[0]
    beside = [one for one in _originals(moments) if one.rpartition("/")[0] == above]
    there = [one for one in beside if _BOARD.fullmatch(one.rpartition("/")[2])]
    told = story(moments, (name, *there), inside=False)
    where = columns(told)
    used = {end for sight in told.carriers() for end in where[sight]}
    yield from sorted((one for one in there if one in used), key=is_right)
