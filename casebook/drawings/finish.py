"""A finished drawing: its frame, and all that it shows in words."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from casebook.drawings import badges, outlines, patterns, words
from casebook.drawings.changes import states
from casebook.drawings.facts import layer_of
from casebook.drawings.section import Section
from casebook.drawings.stack import Sight
from casebook.drawings.svg import Frame, Svg
from casebook.drawings.words import Drawing, Row

NOT_TO_SCALE = "Thicknesses are not to scale: thin layers are drawn thick enough to be seen."

CROWDED = "Adhesives are not drawn, since so many layers lie close together: the list names them."


def finished(section: Section, title: str, size: tuple[float, float], *inside: Svg) -> Drawing:
    """A drawing with its words: what is there, what is gone, each state, what is not to scale."""
    there = rows(section, at_end=True)
    notes = (
        *section.notes,
        *((NOT_TO_SCALE,) if section.exaggerated else ()),
        *((CROWDED,) if section.crowded else ()),
    )
    letters = (patterns.LEAVES, *(one.letter for one in outlines.fillings(section)))
    frame = Frame(section.prefix, *size, title, _described(there))
    svg = frame.around(
        patterns.definitions(section.prefix, letters), badges.markers(section.prefix), *inside
    )
    return Drawing(
        title=title,
        svg=svg,
        alternative=there,
        note=" ".join(notes),
        gone=rows(section, at_end=False),
        states=states(section.told, section.facts),
        part=section.told.roots[0],
    )


def _described(there: Sequence[Row]) -> str:
    """What the drawing shows, in short; the list beside it says all of it."""
    names = (f"{row.number} {words.plain(row.layer)}" for row in there)
    return f"From the original outwards: {', '.join(names)}."


def rows(section: Section, *, at_end: bool) -> tuple[Row, ...]:
    """What is there at the end, or what was there before it: one row for each number."""
    return tuple(_rows(section, at_end))


def _rows(section: Section, at_end: bool) -> Iterator[Row]:
    last = section.told.last
    layers = _by_layer(section.told.sights)
    for name, number in section.number.items():
        sights = layers.get(name, [])
        there = [one for one in sights if one.seen_in(last)]
        if sights and bool(there) is at_end:
            told = words.row(there or _last(sights), section.told, section.facts)
            yield Row(number, name, told)


def _last(sights: Sequence[Sight]) -> list[Sight]:
    """How a layer that is gone sat when it was last seen."""
    end = max(one.runs[-1][1] for one in sights)
    return [one for one in sights if one.runs[-1][1] == end]


def _by_layer(sights: Iterable[Sight]) -> Mapping[str, list[Sight]]:
    found: dict[str, list[Sight]] = {}
    for one in sights:
        found.setdefault(layer_of(one.thing), []).append(one)
    return found
