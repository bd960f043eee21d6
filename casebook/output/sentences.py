"""A step as a good plain sentence, generated from the record, with its links and glosses."""

from __future__ import annotations

from casebook.model.base import Gap, items, known
from casebook.model.treatment import VERBS, Drying, Fate, Grain, Scope, Step
from casebook.output.contexts import Line, Run
from casebook.output.wording import Wording, listed, say, sentence, text_of

_PLAIN = {
    "adds": "laid",
    "removes": "removed",
    "takes_off": "took off",
    "puts_back": "put back",
    "opens": "opened",
    "joins": "joined",
    "treats": "treated",
}
_FATES = {
    Fate.DISCARDED: "discarded",
    Fate.KEPT: "kept with the object",
    Fate.STORED: "stored apart",
    Fate.OWN_CASE: "has a case of its own",
    Fate.RETURNED: "returned to the owner",
}


def verb_of(step: Step) -> str:
    """Which structural field says what happened, "" if none does."""
    return next((verb for verb in VERBS if step.tells(verb)), "")


def step_sentence(step: Step, wording: Wording) -> Line:
    """The step in a sentence; where it is in words only, those words."""
    verb = verb_of(step)
    if not verb and not known(step.do):
        return sentence((Run(say(step.words)),))
    head = _HEADS.get(verb, _plain_head)(step, wording)
    tail = [clause for clause in _clauses(step, wording) if clause]
    line: list[Run] = list(head)
    for clause in tail:
        line.extend((Run("; "), *clause))
    words = known(step.words)
    said = (Run(" "), *sentence((Run(words),))) if words else ()
    return (*sentence(line), *said)


def _verb(step: Step, wording: Wording) -> Run:
    """The operation in the past tense, or the plain verb of what happened."""
    name = known(step.do)
    if not name:
        return Run(_PLAIN.get(verb_of(step), "worked on"))
    term = wording.lexicon.term("operations", name)
    run = wording.term("operations", name)
    return Run(known(term.past) or f"{run.text}:" if term else f"{name}:", run.href, run.gloss)


def _adds(step: Step, wording: Wording) -> Line:
    """Something laid on: "lined the spine with tengujo in wheat starch paste"."""
    what = wording.material(step.material) or (Run(f"the {(step.adds or '').replace('-', ' ')}"),)
    where = _where(step, wording)
    bond = _bond(step, wording, " in ")
    if known(step.do) and where:
        return (_verb(step, wording), Run(" "), *where, Run(" with "), *what, *bond)
    onto = (Run(" on "), *where) if where else ()
    return (_verb(step, wording), Run(" "), *what, *onto, *bond)


def _where(step: Step, wording: Wording) -> Line:
    if places := items(step.onto):
        return wording.places(places)
    if step.spans:
        return listed([(Run(wording.place(one)),) for one in step.spans])
    if (inside := known(step.in_thickness_of)) is not None:
        return (Run("a loss in "), wording.place_run(inside))
    return wording.places(items(step.over))


def _bond(step: Step, wording: Wording, joint: str) -> Line:
    """What it is stuck or held with."""
    held = ", ".join(items(step.held))
    if step.adhesive is None:
        return (Run(f", {held}"),) if held else ()
    glue = wording.material(step.adhesive)
    if isinstance(step.adhesive, Gap) and str(step.adhesive) == "none":
        return (Run(f", {held}, without adhesive" if held else ", without adhesive"),)
    return (Run(joint), *glue, Run(f", {held}" if held else ""))


def _targets(step: Step, wording: Wording) -> Line:
    return wording.places(getattr(step, verb_of(step)))


def _removes(step: Step, wording: Wording) -> Line:
    return (_verb(step, wording), Run(" "), *_targets(step, wording), *_with_agent(step, wording))


def _puts_back(step: Step, wording: Wording) -> Line:
    onto = items(step.onto)
    where = (Run(" onto "), *wording.places(onto)) if onto else ()
    bond = _bond(step, wording, " with ")
    if known(step.do):
        return (_verb(step, wording), Run(" "), *_targets(step, wording), *where, *bond)
    return (Run("put "), *_targets(step, wording), Run(" back"), *where, *bond)


def _joins(step: Step, wording: Wording) -> Line:
    to = items(step.to)
    where = (Run(" to "), *wording.places(to)) if to else ()
    face = known(step.face)
    side = (Run(f", {face} face"),) if face else ()
    bond = _bond(step, wording, " with ")
    return (_verb(step, wording), Run(" "), *_targets(step, wording), *where, *side, *bond)


def _treats(step: Step, wording: Wording) -> Line:
    return (
        _verb(step, wording),
        Run(" "),
        *_targets(step, wording),
        *_with_agent(step, wording),
        *_with_material(step, wording),
    )


def _plain_head(step: Step, wording: Wording) -> Line:
    agent = _with_agent(step, wording)
    return (_verb(step, wording), *agent, *_with_material(step, wording))


def _with_material(step: Step, wording: Wording) -> Line:
    material = wording.material(step.material)
    return (Run(" with "), *material, *_bond(step, wording, " in ")) if material else ()


def _with_agent(step: Step, wording: Wording) -> Line:
    """The agent and how it was given."""
    if step.agent is None:
        return ()
    line = (Run(" with "), *wording.material(step.agent))
    agent = known(step.agent)
    if agent is None:
        return line
    lasts, times, until = (say(one) for one in (agent.lasts, agent.times, agent.until))
    how = [
        f"as a {agent.applied}" if known(agent.applied) == "poultice" else say(agent.applied),
        f"for {lasts}" if lasts else "",
        f"{times} times" if times else "",
        f"until {until}" if until else "",
    ]
    return (*line, *(Run(f", {one}") for one in how if one))


_HEADS = {
    "adds": _adds,
    "removes": _removes,
    "takes_off": _removes,
    "opens": _removes,
    "puts_back": _puts_back,
    "joins": _joins,
    "treats": _treats,
}


def _clauses(step: Step, wording: Wording) -> list[Line]:
    """What follows the main clause, each part of it after a semicolon."""
    return [
        _scope(known(step.scope)),
        _bath(step, wording),
        _grain(step, wording),
        _cut(step),
        _spans(step, wording),
        _leaves(step, wording),
        _said(_FATES[step.fate] if isinstance(step.fate, Fate) else ""),
        _said("temporary" if known(step.temporary) else ""),
        _said(f"except {step.except_}" if known(step.except_) else ""),
        _allowed(step),
    ]


def _said(text: str) -> Line:
    return (Run(text),) if text else ()


def _grain(step: Step, wording: Wording) -> Line:
    if not isinstance(step.grain, Grain):
        return _said(f"grain {step.grain}" if step.grain else "")
    places = [*items(step.onto), *step.spans]
    on_spine = any(("parts", "spine") in wording.lexicon.place(one) for one in places)
    if on_spine:
        words = {Grain.ALONG: "grain head to tail", Grain.ACROSS: "grain across the spine"}
        return _said(words[step.grain])
    return _said(f"grain {step.grain.value} it")


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
    zones = [f"{width} over {wording.place(place)}" for place, width in step.spans.items()]
    return _said(", ".join(zones))


def _scope(scope: Scope | None) -> Line:
    if scope is None:
        return ()
    done, of = say(scope.done), say(scope.of)
    counted = f"{done} of {of}" if of else done
    pieces = ", ".join(
        f"{say(one.count) or '1'} of {say(one.height)} × {say(one.width)}"
        for one in items(scope.pieces)
    )
    rest = f"of the rest: {scope.rest}" if scope.rest else ""
    return _said(", ".join(one for one in (counted, say(scope.where), pieces, rest) if one))


def _bath(step: Step, wording: Wording) -> Line:
    bath = known(step.bath)
    if bath is None:
        return ()
    conditioned = wording.material(bath.conditioned)
    details = [
        f"pH {say(bath.ph).removeprefix('pH ')}" if bath.ph else "",
        say(bath.temperature),
        f"{bath.times} times" if bath.times else "",
        f"{bath.each} each" if bath.each else "",
        f"or until {bath.or_until}" if known(bath.or_until) else "",
        f"until {bath.until}" if known(bath.until) else "",
    ]
    adding = (Run(" with "), *conditioned) if conditioned else ()
    rest = tuple(Run(f", {one}") for one in details if one)
    return (Run("in "), *wording.material(bath.liquid), *adding, *rest)


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


def time_line(step: Step, wording: Wording) -> str:
    """Bench time, waiting and drying in one line; "" where nothing is said."""
    parts = [
        f"{step.time} at the bench" if known(step.time) else "",
        f"{step.waits} waiting" if known(step.waits) else "",
        drying_line(known(step.dries), wording),
    ]
    return "; ".join(part for part in parts if part)


def drying_line(dries: Drying | None, wording: Wording) -> str:
    """How it dried: "dried overnight under release sheet and elastic bandage"."""
    if dries is None:
        return ""
    things = text_of(wording.terms("tools", dries.under)) if dries.under else ""
    under = f" under {things}" if things else ""
    until = f" until {dries.until}" if known(dries.until) else ""
    return f"dried {say(dries.for_)}{under}{until}".replace("  ", " ")
