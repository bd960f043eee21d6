"""What follows the main clause of a step: how much, which grain, how cut, what is left."""

from __future__ import annotations

from casebook.model.base import items, known
from casebook.model.details import Fate, Grain, Piece, Scope, WentTo
from casebook.model.treatment import Step
from casebook.output.contexts import Line, Run
from casebook.output.wording import Wording, listed, say

_FATES = {
    Fate.DISCARDED: "discarded",
    Fate.KEPT: "kept with the object",
    Fate.STORED: "stored apart",
    Fate.OWN_CASE: "has a case of its own",
    Fate.RETURNED: "returned to the owner",
}


def clauses(step: Step, wording: Wording) -> list[Line]:
    """What follows the main clause, each part of it after a semicolon."""
    return [
        _scope(known(step.scope)),
        _grain(step, wording),
        _cut(step),
        _spans(step, wording),
        _fate(known(step.fate)),
        _leaves(step, wording),
        _said("temporary" if known(step.temporary) else ""),
        _said(f"except {step.except_}" if known(step.except_) else ""),
        _allowed(step),
    ]


def _said(text: str) -> Line:
    return (Run(text),) if text else ()


def _fate(fate: WentTo | None) -> Line:
    """What became of what was removed, and where it is kept."""
    if fate is None:
        return ()
    went, where = known(fate.is_), known(fate.where)
    return _said(", ".join(one for one in (_FATES[went] if went else "", where) if one))


def _grain(step: Step, wording: Wording) -> Line:
    if not isinstance(step.grain, Grain):
        return _said(f"grain {step.grain}" if step.grain else "")
    places = [*items(step.onto), *step.spans]
    on_spine = any(("parts", "spine") in wording.lexicon.place(one) for one in places)
    if on_spine:
        words = {Grain.ALONG: "grain head to tail", Grain.ACROSS: "grain across the spine"}
        return _said(words[step.grain])
    where = wording.place(places[0]) if places else "it"
    return _said(f"grain {step.grain.value} {where}")


def _cut(step: Step) -> Line:
    size = known(step.cut)
    if size is None:
        return ()
    named = ("height", "width", "length", "thickness", "diameter")
    measures = [f"{getattr(size, one)} {_ADJECTIVES[one]}" for one in named if getattr(size, one)]
    return _said(f"cut {', '.join(measures)}" if measures else "")


_ADJECTIVES = {
    "height": "high",
    "width": "wide",
    "length": "long",
    "thickness": "thick",
    "diameter": "across",
}


def _spans(step: Step, wording: Wording) -> Line:
    if not step.spans or not items(step.onto):
        return ()
    zones = step.spans.items()
    return listed([(Run(f"{width} over {wording.place(place)}"),) for place, width in zones])


def _scope(scope: Scope | None) -> Line:
    if scope is None:
        return ()
    done, of = say(scope.done), say(scope.of)
    counted = f"{done} of {of}" if of else done
    pieces = ", ".join(_piece(one) for one in items(scope.pieces))
    rest = f" (the rest: {scope.rest})" if scope.rest else ""
    return _said(", ".join(one for one in (counted, say(scope.where), pieces) if one) + rest)


def _piece(piece: Piece) -> str:
    """Pieces of one size: "3 pieces of 20 mm × 10 mm"."""
    count = say(piece.count) or "1"
    sides = " × ".join(say(one) for one in (piece.height, piece.width) if one is not None)
    return f"{count} piece{'' if count == '1' else 's'}{f' of {sides}' if sides else ''}"


def bath(step: Step, wording: Wording) -> Line:
    """The bath, how often and how long; empty where there was none."""
    given = known(step.bath)
    if given is None:
        return ()
    conditioned = wording.material(given.conditioned)
    details = [
        f"pH {say(given.ph).removeprefix('pH ')}" if given.ph else "",
        say(given.temperature),
        f"{given.times} times" if given.times else "",
        " ".join(
            (
                f"{given.each} each" if given.each else "",
                f"or until {given.or_until}" if known(given.or_until) else "",
            )
        ).strip(),
        f"until {given.until}" if known(given.until) else "",
    ]
    adding = (Run(" with "), *conditioned, Run(" added")) if conditioned else ()
    rest = tuple(Run(f", {one}") for one in details if one)
    return (Run(" in "), *wording.material(given.liquid), *adding, *rest)


def _leaves(step: Step, wording: Wording) -> Line:
    left = known(step.leaves)
    if left is None:
        return ()
    what = known(left.layer)
    named = f"some of {wording.place(what)}" if what else say(left.layer) or "some of it"
    where = known(left.where)
    return _said(f"{named} is left{f' {where}' if where else ''}")


def _allowed(step: Step) -> Line:
    tests = items(step.allowed_by)
    return _said(f"after the test {' and '.join(tests)}" if tests else "")
