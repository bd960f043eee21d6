"""An opening in plain words: what to do, what comes off, what stays, what to mind."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import takewhile

from casebook.compute.way_back.classes import Class
from casebook.compute.way_back.instructions import Answer, Opened, Opening, Place, Question, Rest
from casebook.compute.way_back.words import listed, name, the

_HEADS = {
    Question.BARE: "To bare {thing}",
    Question.FREE: "To free {thing}",
    Question.TAKE_OFF: "To take off {thing}",
}
_NOTHING = {
    Question.BARE: "Nothing that was put on it can come off, or needs to.",
    Question.FREE: "Nothing that was added holds it.",
    Question.TAKE_OFF: "It does not lie on the object.",
}
_VERBS = {
    Class.HAND: "open by hand",
    Class.MOISTURE: "soften with moisture",
    Class.ENZYME: "take apart with an enzyme",
    Class.HEAT: "soften with heat",
    Class.SOLVENT: "soften with solvent",
    Class.BLADE: "part with a blade",
}
_ORDER = tuple(Place)


@dataclass(frozen=True, slots=True)
class Instruction:
    """The sentences of one opening, sorted by what a hand needs them for.

    `why` says what it lays open where it is lifted for that alone, `off` what comes off, `stays`
    what does not, `cannot` what cannot be undone.
    """

    why: tuple[str, ...]
    do: tuple[str, ...]
    off: tuple[str, ...]
    stays: tuple[str, ...]
    mind: tuple[str, ...]
    cannot: tuple[str, ...]
    source: tuple[str, ...]

    @property
    def every(self) -> tuple[str, ...]:
        """All of them, in the order in which a hand needs them."""
        before = (*self.why, *self.do, *self.off, *self.stays)
        return (*before, *self.mind, *self.cannot, *self.source)


def instruction(opening: Opening) -> Instruction:
    """One opening in sentences."""
    sources = "; ".join(opening.sources)
    return Instruction(
        why=_written(_why(opening)),
        do=_written((*_on_piece(opening), *_actions(opening))),
        off=_written(_result(opening)),
        stays=_written(_left(opening.stays)),
        mind=_written(opening.mind),
        cannot=_written(f"cannot be undone: {one}." for one in opening.cannot),
        source=_written([f"source: {sources}."] if sources else []),
    )


def sentences(opening: Opening) -> tuple[str, ...]:
    """The sentences of one opening, in the order in which a hand needs them."""
    return instruction(opening).every


def said(answer: Answer) -> str:
    """A whole answer as text: its question, each opening under its number, where it stops."""
    lines = [f"{one.number}. {' '.join(sentences(one))}" for one in answer.openings]
    lines += [
        f"Stop: {the(one.thing)} cannot be parted. {one.why[:1].upper()}{one.why[1:]}."
        for one in answer.stops
    ]
    lines += [f"Stays: {name(one.what)}, soaked into {the(one.on)}." for one in answer.stays]
    head = _HEADS[answer.question].format(thing=the(answer.of))
    return "\n".join([head, *(lines or [_NOTHING[answer.question]])])


def _written(texts: Iterable[str]) -> tuple[str, ...]:
    return tuple(one[:1].upper() + one[1:] for one in texts)


def _why(opening: Opening) -> Iterator[str]:
    if opening.hiding:
        yield f"to come to {the(opening.hiding)}, first lift {the(opening.takes)}."


def _on_piece(opening: Opening) -> Iterator[str]:
    if opening.in_piece:
        yield f"now free {the(opening.frees)} from the piece that came off in {opening.in_piece}."


def _actions(opening: Opening) -> Iterator[str]:
    """One sentence for each kind of place: what is cut clear of the original first, a pull last."""
    groups: dict[tuple[str, ...], list[Opened]] = {}
    for one in opening.opened:
        rank = f"{_ORDER.index(one.place)} {len(one.through):04}"
        key = (rank, one.how, one.agent, *one.adhesives, "|", one.when, *one.through)
        groups.setdefault(key, []).append(one)
    for key in sorted(groups):
        yield _action(opening, groups[key])
    if not opening.opened:
        yield f"lift {the(opening.takes)} off: nothing holds it."


def _action(opening: Opening, ones: Sequence[Opened]) -> str:
    first = ones[0]
    if first.place is Place.JOINT:
        return _slit(ones)
    if first.place is Place.FOLD:
        return f"slit {the(first.lower.rpartition('/')[0] or first.lower)} along its folds."
    if first.place is Place.HELD:
        return _thread(ones)
    if first.place is Place.SPLIT:
        start = "slowly from the head" if _on_spine(opening) else "slowly at a low angle"
        return f"pull {the(first.upper)} away {start}; {the(first.lower)} under it splits."
    return _soften(opening, ones)


def _on_spine(opening: Opening) -> bool:
    places = (*opening.left_on, opening.takes, *(one.on for one in opening.stays))
    return any("spine" in place.split("/") for place in places)


def _slit(ones: Sequence[Opened]) -> str:
    """`slit the linen lining between the spine and board 1`, clear of the original."""
    found: dict[str, dict[str, None]] = {}
    for one in ones:
        layer, ends = _zones(one)
        found.setdefault(f"between {ends[0]} and {ends[1]}", {})[layer] = None
    layers = listed(dict.fromkeys(layer for names in found.values() for layer in names))
    return f"slit {layers} {listed(found)}."


def _zones(one: Opened) -> tuple[str, tuple[str, str]]:
    """The layer of which two zones are slit apart, and the two zones."""
    lower, upper = one.lower.split("/"), one.upper.split("/")
    same = [
        a for a, _ in takewhile(lambda pair: pair[0] == pair[1], zip(lower, upper, strict=False))
    ]
    first, second = ("/".join(end[len(same) :]) or end[-1] for end in (lower, upper))
    return the("/".join(same) or one.lower), (_end(first), _end(second))


def _end(zone: str) -> str:
    """One side of a slit: a part, or a wall of a tube."""
    return the(f"{zone} wall") if zone in ("inner", "outer") else the(zone)


def _thread(ones: Sequence[Opened]) -> str:
    held = listed(dict.fromkeys(word for one in ones for word in one.held))
    how = f" ({held})" if held else ""
    verb = "slip out or untie" if ones[0].how is Class.HAND else "cut and draw"
    return f"{verb} what holds {_pairs(ones)}{how}."


def _soften(opening: Opening, ones: Sequence[Opened]) -> str:
    first = ones[0]
    stuck = " and ".join(word.replace("-", " ") for word in first.adhesives) or "adhesive"
    half = "what is left of " if opening.half else ""
    when = f", taken as {first.when}" if first.when else ""
    assumed = f", as {first.assumed_from} in general" if first.assumed_from else ""
    over = f", through {listed(the(one) for one in first.through)}" if first.through else ""
    return (
        f"{_VERBS[first.how]} the {stuck} that holds {_pairs(ones, half)}: {first.agent}"
        f"{over}{when}{assumed} (ease {first.ease} of 5)."
    )


def _pairs(ones: Sequence[Opened], half: str = "") -> str:
    """`the lining to the mends and the sheet`: each thing with all that it is held to."""
    lowers: dict[str, dict[str, None]] = {}
    for one in ones:
        lowers.setdefault(one.upper, {})[one.lower] = None
    return listed(
        f"{half}{the(upper)} to {listed(the(one) for one in below)}"
        for upper, below in lowers.items()
    )


def _result(opening: Opening) -> Iterator[str]:
    things = [the(one) for one in (*_but(opening.together, opening.riders), *opening.riders)]
    rest = [the(one) for one in _but(opening.together, (opening.frees,))]
    if opening.frees and opening.frees in opening.together:
        along = f"; with it: {listed(rest)}" if rest else ""
        yield f"this frees {the(opening.frees)}{along}."
    elif opening.half and len(things) == 1:
        yield f"lift off what is left of {things[0]}."
    elif len(things) == 1:
        yield f"this comes off: {things[0]}."
    else:
        yield f"these come off in one piece: {listed(things)}."
    riders = [the(one) for one in opening.riders if one not in (opening.takes, opening.frees)]
    if riders:
        yield f"original, and riding on it: {listed(riders)}."


def _but(names: Iterable[str], without: Iterable[str]) -> list[str]:
    left_out = set(without)
    return [one for one in names if one not in left_out]


def _left(rests: Iterable[Rest]) -> Iterator[str]:
    for one in rests:
        where = f" on {the(one.on)}" if one.on else ""
        clear = f"; clear it with {one.with_}" if one.with_ else ""
        yield f"stays{where}: {one.what}{clear}."
