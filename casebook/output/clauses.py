"""What follows the main clause of a step: how much, how cut and held, what is left and where."""

from __future__ import annotations

from collections.abc import Iterable

from casebook.model.base import Gap, Unknowing, items, known
from casebook.model.details import Against, Fate, Grain, Piece, Scope, Strength, WentTo
from casebook.model.object import Bond, Walls
from casebook.model.treatment import Step
from casebook.output.contexts import Line, Run
from casebook.output.wording import (
    Wording,
    how_known,
    listed,
    listed_text,
    measured,
    say,
    text_of,
)

_FATES = {
    Fate.DISCARDED: "discarded",
    Fate.KEPT: "kept with the object",
    Fate.STORED: "stored apart",
    Fate.OWN_CASE: "it has a case of its own",
    Fate.RETURNED: "returned to the owner",
}
_AGAINST = {
    Strength.WEAKER: "weaker than the original that it lies across",
    Strength.LIKE: "as strong as the original that it lies across",
    Strength.STRONGER: "stronger than the original that it lies across",
}
_NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
_MEASURES = {
    "height": "{} high",
    "width": "{} wide",
    "length": "{} long",
    "thickness": "{} thick",
    "diameter": "{} across",
}


def clauses(step: Step, wording: Wording) -> list[Line]:
    """What follows the main clause, each part of it after a semicolon."""
    return [
        _said(scope_text(step.scope, wording)),
        _grain(step, wording),
        _said(walls_text(known(step.walls))),
        _cut(step, wording),
        _spans(step, wording),
        *(bond_line(one, wording) for one in items(step.bonds)),
        *beyond(step, wording),
        _against(known(step.against_original)),
        _fate(step.fate, wording),
        _leaves(step, wording),
        _said("temporary" if known(step.temporary) else ""),
        _said(f"except {step.except_}" if known(step.except_) else ""),
        _allowed(step),
    ]


def _said(text: str) -> Line:
    return (Run(text),) if text else ()


def beyond(step: Step, wording: Wording) -> Iterable[Line]:
    """What it reaches without being laid on it: covered, soaked into, gone through, hidden."""
    if items(step.onto) or step.spans:
        yield _about("it covers ", step.over, wording)
    if items(step.onto) or not known(step.do):
        yield _about("it soaks in and stays in ", step.soaks_in, wording)
    elif items(step.soaks_in):
        yield (Run("it soaks in and stays"),)
    yield cuts_line(step.cuts, step.held, wording)
    yield _about("it hides ", step.hides, wording)


def _about(words: str, places: object, wording: Wording) -> Line:
    if not isinstance(places, tuple) or not places:
        return ()
    return (Run(words), *wording.places(places))


def cuts_line(cuts: object, held: object, wording: Wording) -> Line:
    """What a thread or a nail goes through, or what was cut for it where nothing holds so."""
    if not isinstance(cuts, tuple) or not cuts:
        return ()
    if isinstance(held, tuple) and held:
        return (Run("it goes through "), *wording.places(cuts))
    return (*wording.places(cuts), Run(" was cut for it" if len(cuts) == 1 else " were cut for it"))


def walls_text(walls: Walls | None) -> str:
    """The walls of a tube: "a hollow tube, one ply on and two off"."""
    if walls is None:
        return ""
    inner, outer = (_number(say(one)) for one in (walls.inner, walls.outer))
    sides = [f"{inner} on" if inner else "", f"{outer} off" if outer else ""]
    return f"a hollow tube, {listed_text(sides)}" if inner or outer else "a hollow tube"


def _number(text: str) -> str:
    """A small number in words."""
    return _NUMBERS[int(text)] if text.isdecimal() and int(text) < len(_NUMBERS) else text


def bond_line(bond: Bond, wording: Wording) -> Line:
    """One of several bonds: "stuck to the spine with wheat starch paste, along the edges"."""
    cuts = {*items(bond.cuts)}
    pierced = bool(items(bond.held) and cuts) and cuts <= {*items(bond.onto)}
    face = f" with its {bond.face} face" if known(bond.face) else ""
    joint = f"{_how(bond)}{face}{' to and through ' if pierced else ' to '}"
    to = (Run(joint), *wording.places(bond.onto)) if bond.onto else (Run(_how(bond) + face),)
    loose = isinstance(bond.adhesive, Gap) and bond.adhesive.kind is Unknowing.NONE
    glue = () if loose else wording.adhesive(bond.adhesive)
    by = (Run(" with "), *glue) if text_of(glue) else ()
    where = (Run(f", {bond.where}"),) if known(bond.where) else ()
    through = () if pierced else cuts_line(bond.cuts, bond.held, wording)
    return (*to, *by, *where, *((Run(", "), *through) if through else ()))


def _how(bond: Bond) -> str:
    """How a bond holds, in a word: sewn, stuck, not stuck."""
    if held := listed_text(items(bond.held)):
        return held
    if isinstance(bond.adhesive, Gap) and bond.adhesive.kind is Unknowing.NONE:
        return "not stuck"
    return "stuck" if bond.adhesive else "held"


def _against(against: Against | None) -> Line:
    """How it compares with the original under it, and why it was chosen so."""
    if against is None:
        return ()
    how = known(against.is_)
    text = _AGAINST[how] if how else f"its strength against the original {say(against.is_)}"
    return _said(text + (f": {against.because}" if known(against.because) else ""))


def _fate(fate: WentTo | Gap | None, wording: Wording) -> Line:
    """What became of what was removed, where it is kept, and the case that tells of it."""
    if fate is None:
        return ()
    if isinstance(fate, Gap):
        return _said(f"where it went {how_known(fate)}")
    went, case = known(fate.is_), known(fate.case)
    where = f" ({fate.where})" if known(fate.where) else ""
    text = (_FATES[went] if went else "kept" if where else "") + where
    return (*_said(text), *((Run(": "), wording.case(case)) if case else ()))


def _grain(step: Step, wording: Wording) -> Line:
    if not isinstance(step.grain, Grain):
        return _said(f"grain {say(step.grain)}" if step.grain else "")
    places = [*items(step.onto), *step.spans]
    on_spine = any(("parts", "spine") in wording.lexicon.place(one) for one in places)
    if on_spine:
        words = {Grain.ALONG: "grain head to tail", Grain.ACROSS: "grain across the spine"}
        return _said(words[step.grain])
    where = wording.place(places[0]) if places else "it"
    return _said(f"grain {step.grain.value} {where}")


def measures_text(record: object, wording: Wording) -> str:
    """Measures in words: "390 mm high, 68 mm wide"."""
    texts = (
        wording.measured(getattr(record, name, None), form, name + " {}")
        for name, form in _MEASURES.items()
    )
    return ", ".join(text for text in texts if text)


def _cut(step: Step, wording: Wording) -> Line:
    if isinstance(step.cut, Gap):
        return _said(f"size of the cut {say(step.cut)}")
    text = measures_text(step.cut, wording)
    return _said(f"cut {text}" if text else "")


def _spans(step: Step, wording: Wording) -> Line:
    """The zones of a layer, each with its width; without any width they are told where it lies."""
    if not step.spans or not (items(step.onto) or any(step.spans.values())):
        return ()
    zones = [
        (place, wording.measured(width, "{}", "a width {}")) for place, width in step.spans.items()
    ]
    return listed([(Run(f"{width} over {wording.place(place)}"),) for place, width in zones])


_RESTS = {
    Unknowing.NOT_RECORDED: "of the rest nothing is recorded",
    Unknowing.NOT_READ: "what the source says of the rest was not read",
    Unknowing.UNKNOWN: "of the rest nothing is known",
    Unknowing.NONE: "there is no rest",
    Unknowing.UNNAMED: "of the rest nothing is said",
}


def scope_text(scope: Scope | Gap | None, wording: Wording) -> str:
    """How much of a part: "40 of 52, along the edge (the rest: clean enough to leave)"."""
    if isinstance(scope, Gap):
        return f"how much of it {how_known(scope)}"
    if scope is None:
        return ""
    done, of = say(scope.done), say(scope.of)
    counted = f"{done} of {of}" if of else done
    pieces = ", ".join(_piece(one, wording) for one in items(scope.pieces))
    rest = _rest(scope.rest)
    return ", ".join(one for one in (counted, say(scope.where), pieces) if one) + rest


def _rest(rest: str | Gap | None) -> str:
    if isinstance(rest, Gap):
        return f" ({_RESTS[rest.kind]}{f': {rest.reason}' if rest.reason else ''})"
    return f" (the rest: {rest})" if rest else ""


def _piece(piece: Piece, wording: Wording) -> str:
    """Pieces of one size: "3 pieces of 20 mm × 10 mm"; what is not known of them is named last."""
    count, sides = known(piece.count), (piece.height, piece.width)
    number = "pieces" if isinstance(piece.count, Gap) else _counted(say(count) or "1")
    if all(known(one) is not None for one in sides):
        size = f" of {wording.say(piece.height)} × {wording.say(piece.width)}"
    else:
        told = [
            f"{wording.say(one)} {word}"
            for one, word in zip(sides, ("high", "wide"), strict=True)
            if known(one)
        ]
        size = f" {', '.join(told)}" if told else ""
    gaps = {"number": piece.count, "height": piece.height, "width": piece.width}
    lost = [f"{name} {how_known(gap)}" for name, gap in gaps.items() if isinstance(gap, Gap)]
    return f"{number}{size}{f' ({listed_text(lost)})' if lost else ''}"


def _counted(count: str) -> str:
    return f"{count} piece{'' if count == '1' else 's'}"


def often(times: object) -> str:
    """How often: "once", "twice", "5 times"."""
    counted = measured(times, "{} times", "how often {}")
    return {"1 times": "once", "2 times": "twice"}.get(counted, counted)


def bath(step: Step, wording: Wording) -> Line:
    """The bath, how often and how long; empty where there was none."""
    given = known(step.bath)
    if given is None:
        return (Run(f", the bath {say(step.bath)}"),) if step.bath else ()
    conditioned = wording.material(given.conditioned)
    details = [
        f"pH {say(given.ph).removeprefix('pH ')}" if given.ph else "",
        measured(given.temperature, "{}", "temperature {}"),
        often(given.times),
        " ".join(
            (
                measured(given.each, "{} each", "how long each {}"),
                f"or until {given.or_until}" if known(given.or_until) else "",
            )
        ).strip(),
        f"until {given.until}" if known(given.until) else "",
    ]
    adding = (Run(" with "), *conditioned, Run(" added")) if conditioned else ()
    rest = tuple(Run(f", {one}") for one in details if one)
    return (Run(" in "), *wording.material(given.liquid), *adding, *rest)


def _leaves(step: Step, wording: Wording) -> Line:
    if isinstance(step.leaves, Gap):
        nothing = step.leaves.kind is Unknowing.NONE
        unsaid = f"what is left {how_known(step.leaves)}"
        return _said("nothing of it is left" if nothing else unsaid)
    left = step.leaves
    if left is None:
        return ()
    if isinstance(left.layer, Gap) and left.layer.kind is Unknowing.NONE:
        return _said("nothing of it is left")
    what, where = known(left.layer), known(left.where)
    named = wording.place(what) if what else "it"
    return _said(f"what is left of {named}: {where}" if where else f"some of {named} is left")


def _allowed(step: Step) -> Line:
    tests = [f"“{one.replace('-', ' ')}”" for one in items(step.allowed_by)]
    words = f"allowed by the test{'' if len(tests) == 1 else 's'} {listed_text(tests)}"
    return _said(words if tests else "")
