"""A step as a good plain sentence, generated from the record, with its links and glosses."""

from __future__ import annotations

from casebook.model.base import Gap, items, known
from casebook.model.details import Drying
from casebook.model.treatment import VERBS, Step
from casebook.output.clauses import bath, clauses
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


_LAID_ON = frozenset(
    [
        "adhere",
        "apply",
        "attach",
        "attach-board",
        "hinge",
        "insert",
        "lace-in",
        "link-stitch",
        "mount",
        "nail",
        "paste",
        "put-down-pastedowns",
        "reattach",
        "reattach-board",
        "sew",
        "slot",
        "tacket",
        "tip-on",
    ]
)
"""Operations that are done to what is added, not to what it is added to."""

_PREPOSITIONS = frozenset({"for", "from", "of", "on", "to"})
_BY = frozenset({"brush", "hand", "immersion", "pipette", "roller", "sponge", "swab"})


def verb_of(step: Step) -> str:
    """Which structural field says what happened, "" if none does."""
    return next((verb for verb in VERBS if step.tells(verb)), "")


def step_sentence(step: Step, wording: Wording) -> Line:
    """The step in a sentence; where it is in words only, those words."""
    verb = verb_of(step)
    if not verb and not known(step.do):
        return sentence((Run(say(step.words)),))
    head = _HEADS.get(verb, _plain_head)(step, wording)
    tail = [clause for clause in (_using(step, wording), *clauses(step, wording)) if clause]
    line: list[Run] = [*head, *bath(step, wording)]
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


def _plain_verb(step: Step, wording: Wording) -> Run:
    """The verb without a last "from" or "of", where what follows is not what it speaks of."""
    run = _verb(step, wording)
    words = run.text.split()
    if len(words) > 1 and words[-1] in _PREPOSITIONS:
        words = words[:1] if verb_of(step) else words[:-1]
    return Run(" ".join(words), run.href, run.gloss)


def _adds(step: Step, wording: Wording) -> Line:
    """Something laid on: "lined the spine with tengujo in wheat starch paste"."""
    what = wording.material(step.material) or (Run(f"the {(step.adds or '').replace('-', ' ')}"),)
    where = _where(step, wording)
    found = wording.lexicon.resolve("operations", known(step.do) or "")
    if found and found[1] in _LAID_ON:
        to = (Run(_after(what, " to ")), *where) if where else ()
        return (_verb(step, wording), Run(" "), *what, *to, *_bond(step, wording, " with "))
    bond = _bond(step, wording, _after(what, " in "))
    if known(step.do) and where:
        return (_verb(step, wording), Run(" "), *where, Run(" with "), *what, *bond)
    onto = (Run(_after(what, " on ")), *where) if where else ()
    bond = _bond(step, wording, " in ") if onto else bond
    return (_plain_verb(step, wording), Run(" "), *what, *onto, *bond)


def _after(line: Line, joint: str) -> str:
    """A joint that closes what was said between commas: "tengujo, 5 g/m², in paste"."""
    return f",{joint}" if ", " in text_of(line) else joint


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
    held = ", ".join(one for one in items(step.held) if not _told(one, step, wording))
    if step.adhesive is None:
        return (Run(f", {held}"),) if held else ()
    glue = wording.adhesive(step.adhesive)
    if isinstance(step.adhesive, Gap) and str(step.adhesive) == "none":
        return (Run(f", {held}, without adhesive" if held else ", without adhesive"),)
    return (Run(joint), *glue, Run(f", {held}" if held else ""))


def _told(held: str, step: Step, wording: Wording) -> bool:
    """Whether the verb says how it is held: sewed and sewn, laced in and laced."""
    return bool(known(step.do)) and _verb(step, wording).text[:3] == held[:3]


def _targets(step: Step, wording: Wording) -> Line:
    return wording.places(getattr(step, verb_of(step)))


def _removes(step: Step, wording: Wording) -> Line:
    verb = _plain_verb(step, wording)
    agent = _with_agent(step, wording)
    return (verb, Run(" "), *_targets(step, wording), *agent, *_fastening(step, wording))


def _puts_back(step: Step, wording: Wording) -> Line:
    onto = items(step.onto)
    joint = " to " if known(step.do) else " onto "
    where = (Run(joint), *wording.places(onto)) if onto else ()
    bond = _fastening(step, wording)
    if known(step.do):
        return (_verb(step, wording), Run(" "), *_targets(step, wording), *where, *bond)
    return (Run("put "), *_targets(step, wording), Run(" back"), *where, *bond)


def _joins(step: Step, wording: Wording) -> Line:
    to = items(step.to)
    face = known(step.face)
    of_face = f"the {face} face of " if face and to else ""
    where = (Run(f" to {of_face}"), *wording.places(to)) if to else ()
    side = (Run(f", {face} face"),) if face and not to else ()
    bond = _fastening(step, wording)
    return (_verb(step, wording), Run(" "), *_targets(step, wording), *where, *side, *bond)


def _treats(step: Step, wording: Wording) -> Line:
    agent = _with_agent(step, wording)
    targets = _targets(step, wording)
    return (_verb(step, wording), Run(" "), *targets, *agent, *_fastening(step, wording))


def _plain_head(step: Step, wording: Wording) -> Line:
    agent = _with_agent(step, wording)
    return (_plain_verb(step, wording), *agent, *_fastening(step, wording))


def _fastening(step: Step, wording: Wording) -> Line:
    """What was put in and what it is stuck with: "with linen thread", "with paste"."""
    material = wording.material(step.material)
    if not material:
        return _bond(step, wording, " with ")
    return (Run(" with "), *material, *_bond(step, wording, _after(material, " in ")))


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
        _applied(say(agent.applied)),
        f"for {lasts}" if lasts else "",
        f"{times} times" if times else "",
        f"until {until}" if until else "",
    ]
    return (*line, *(Run(f", {one}") for one in how if one))


def _applied(how: str) -> str:
    """How an agent was given: "as a poultice", "by brush"; more than a word as it is written."""
    if how in _BY:
        return f"by {how}"
    return f"as a {how}" if how.isalpha() else how


_HEADS = {
    "adds": _adds,
    "removes": _removes,
    "takes_off": _removes,
    "opens": _removes,
    "puts_back": _puts_back,
    "joins": _joins,
    "treats": _treats,
}


def _using(step: Step, wording: Wording) -> Line:
    """The agent of a step whose main clause says what was laid on or joined."""
    if verb_of(step) not in ("adds", "joins", "puts_back"):
        return ()
    return _with_agent(step, wording)[1:] and (Run("using "), *_with_agent(step, wording)[1:])


def time_line(step: Step, wording: Wording) -> str:
    """Bench time, waiting and drying in one line; "" where nothing is said."""
    parts = [
        f"{step.time} at the bench" if known(step.time) else "",
        f"{step.waits} waiting" if known(step.waits) else "",
        *(drying_line(one, wording) for one in items(step.dries)),
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
