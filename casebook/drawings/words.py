"""The words of a drawing: labels, the list from the original outwards, what each state changed."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from casebook.compute.structure import Bond, How, Since, Thing
from casebook.drawings.facts import Facts
from casebook.drawings.stack import Sight, Story

LONGEST_LABEL = 44
"""Signs of a label beside a drawing; the list has all of it."""


@dataclass(frozen=True, slots=True)
class State:
    """One state of a drawing: its number from 0, the step after which it is so, what changed."""

    number: int
    step: int
    episode: str
    title: str
    """Such as "As found" or "After sitting 3, step 1"."""
    lines: tuple[str, ...]
    """What was laid, taken away or fixed otherwise, each as a sentence."""


@dataclass(frozen=True, slots=True)
class Row:
    """One row of the list beside a drawing: its number there, the layer or part, what is said."""

    number: int
    layer: str
    text: str

    def __str__(self) -> str:
        return f"{self.number}. {self.text}"


@dataclass(frozen=True, slots=True)
class Drawing:
    """A drawing with all that is said beside it.

    `alternative` lists what the final state shows, in the order of its numbers; `gone` what lay
    there before. `note` says what is not true to scale. One SVG holds all `states`.
    """

    title: str
    svg: str
    alternative: tuple[Row, ...] = ()
    note: str = ""
    gone: tuple[Row, ...] = ()
    states: tuple[State, ...] = ()
    cuts: tuple[str, ...] = ()
    part: str = ""


def plain(name: str) -> str:
    """A name of the record as words: `board 1/sides` is "sides of board 1"."""
    what, within, place = name.partition(" in ")
    return f"{plain(what)} in {plain(place)}" if within else " of ".join(_pieces(name))


def the(name: str) -> str:
    """A part with its articles: "the spine", "board 1", "the corner of board 1"."""
    return " of ".join(one if one[-1:].isdigit() else f"the {one}" for one in _pieces(name))


def _pieces(name: str) -> list[str]:
    """The words of a path, the part itself first; a wall of a tube is called one."""
    path = [one.strip().replace("-", " ") for one in name.split("/")]
    walls = {"inner": "inner wall", "outer": "outer wall"}
    return [walls.get(one, one) if path[:-1] else one for one in reversed(path)]


def listed(words: Sequence[str]) -> str:
    """ "a, b and c"."""
    return " and ".join((", ".join(words[:-1]), words[-1])) if len(words) > 1 else "".join(words)


def sentence(text: str) -> str:
    """A text with a capital and a full stop."""
    return f"{text[:1].upper()}{text[1:]}." if text else ""


def material(thing: Thing, layer: str, facts: Facts) -> str:
    """What a thing is made of, with its weight: "tengujo, 5 g/m²"; a guess is said to be one."""
    named = [facts.material(one) for one in thing.materials[:1]]
    others = [facts.material(one) for one in thing.materials[1:]]
    either = [f"perhaps {' or '.join((*named, *others))}"] if others else named
    if layer.replace("-", " ").startswith(f"{''.join(named)} in "):
        either = []
    ruled = [f"not {listed([facts.material(one) for one in thing.ruled_out])}"]
    weight = [facts.weights[layer]] if layer in facts.weights else []
    return ", ".join((*either, *weight, *(ruled if thing.ruled_out else ())))


def label(sight: Sight, facts: Facts) -> str:
    """The short label beside a drawing: name and material."""
    said = material(sight.thing, sight.layer, facts)
    text = f"{plain(sight.layer)}: {said}" if said else plain(sight.layer)
    return text if len(text) <= LONGEST_LABEL else f"{text[: LONGEST_LABEL - 1].rstrip(' ,:')}…"


def held(bond: Bond, facts: Facts) -> str:
    """How a bond holds, in words."""
    return _HELD[bond.how](bond, facts)


def _stuck(bond: Bond, facts: Facts) -> str:
    if not bond.adhesives:
        return "stuck with an adhesive that was not named"
    names = [facts.material(one) for one in bond.adhesives]
    said = f"perhaps {' or '.join(names)}" if bond.guessed else listed(names)
    return f"stuck with {said}"


def _mechanical(bond: Bond, _: Facts) -> str:
    through = f" through {listed([plain(one) for one in bond.cuts])}" if bond.cuts else ""
    return f"{listed(bond.held) or 'held mechanically'}{through}"


_HELD: Mapping[How, Callable[[Bond, Facts], str]] = {
    How.STUCK: _stuck,
    How.HELD: _mechanical,
    How.SOAKED: lambda *_: "soaked in",
    How.GROWN: lambda *_: "of one piece with it",
    How.JOINT: lambda *_: "joined along a line that can be slit",
    How.FOLD: lambda *_: "hollow, joined at two folds",
    How.UNKNOWN: lambda *_: "held in a way that is not known",
}


def since(thing: Thing, sight: Sight, facts: Facts) -> str:
    """Since when a thing has been there, in words."""
    if thing.since is Since.ORIGINAL:
        reused = any(one.reused for one in sight.seat.bonds)
        return "original, put back" if reused else "original"
    if thing.since is Since.FOUND:
        return "found"
    return f"added in {facts.step(thing.step)}" if thing.step else "added"


def row(sights: Sequence[Sight], told: Story, facts: Facts) -> str:
    """All that is said of one layer, its zones together, as one line of the list."""
    first = sights[0]
    said = material(first.thing, first.layer, facts)
    layers = {sight.name: sight.layer for sight in told.sights}
    body = "; ".join(
        one for one in (said, *_bonds(sights, layers, facts), *_extra(sights, facts)) if one
    )
    head = f"{plain(first.layer)} ({since(first.thing, first, facts)})"
    return f"{head}: {body}" if body else head


def _bonds(sights: Sequence[Sight], layers: Mapping[str, str], facts: Facts) -> Iterator[str]:
    """How a layer is held to each thing under it, like bonds together."""
    groups: dict[str, dict[str, None]] = {}
    for sight in sights:
        for bond in sight.seat.bonds:
            if bond.adhesives and bond.adhesives == sight.thing.materials:
                groups.setdefault("holding by itself", {})[plain(bond.lower)] = None
            elif bond.how is not How.FOLD:
                below = f"{plain(layers.get(bond.lower, bond.lower))}{_where(bond)}"
                groups.setdefault(held(bond, facts), {})[below] = None
        for lower in sight.seat.over:
            groups.setdefault("lying loose", {})[plain(layers.get(lower, lower))] = None
        if not sight.seat.below and sight.thing.zone:
            groups.setdefault("not fixed yet", {})[plain(sight.thing.zone)] = None
    for way, lowers in groups.items():
        yield f"{_ON.get(way, f'{way}, on')} {listed(tuple(lowers))}"


_ON = {
    "not fixed yet": "not fixed yet, free over",
    "lying loose": "lying loose over",
    "soaked in": "soaked into",
}


def _where(bond: Bond) -> str:
    said = " ".join(one for one in (bond.face and f"({bond.face})", bond.where) if one)
    return f" {said}" if said else ""


def _extra(sights: Sequence[Sight], facts: Facts) -> Iterator[str]:
    things = [sight.thing for sight in sights]
    yield from _measures(things, facts)
    if any(one.wall for one in things):
        yield "a hollow tube"
    if any(one.partly for one in things):
        yield "only in part"
    yield from dict.fromkeys(one.where for one in things if one.where)
    if any(one.patches and not one.where for one in things):
        yield "in pieces or places"
    if any(one.temporary for one in things):
        yield "for a time only"
    if any(one.splits for one in things):
        yield "made to split in its own thickness"


def _measures(things: Sequence[Thing], facts: Facts) -> Iterator[str]:
    """How wide and how thick a thing is, where it was measured; of zones how far each reaches."""
    mm = facts.notation.computed_length
    zones = [
        f"{mm(one.width_um)} on {plain(one.zone)}" for one in things if one.zone and one.width_um
    ]
    whole = next((one.width_um for one in things if one.width_um and not one.zone), None)
    thick = next((one.thickness_um for one in things if one.thickness_um), None)
    if zones or whole:
        yield f"width {listed(zones) if zones else mm(whole or 0)}"
    if things[0].name in facts.rises:
        yield f"rise {mm(facts.rises[things[0].name])}"
    if thick:
        yield f"thickness {mm(thick)}"
