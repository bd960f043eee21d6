"""A step as a good plain sentence, generated from the record, with its links and glosses."""

from __future__ import annotations

from casebook.model.base import Gap, Unknowing, items, known
from casebook.model.treatment import VERBS, Step
from casebook.output.clauses import bath, clauses, often
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
        return sentence((Run("meanwhile, " if known(step.beside) else ""), Run(say(step.words))))
    head = _HEADS.get(verb, _plain_head)(step, wording)
    told = (_using(step, wording), *clauses(step, wording), _called(step, head))
    tail = [clause for clause in told if clause]
    meanwhile = "meanwhile, " if known(step.beside) else ""
    line: list[Run] = [Run(meanwhile), *head, *bath(step, wording)]
    for clause in tail:
        line.extend((Run("; "), *clause))
    words = known(step.words)
    said = (Run(" "), *sentence((Run(words),))) if words else ()
    return (*sentence(line), *said)


def _called(step: Step, head: Line) -> Line:
    """The name by which later steps speak of a layer, where the sentence does not say it."""
    name = (step.adds or "").replace("-", " ")
    return (Run(f"called “{name}”"),) if name and name not in text_of(head) else ()


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
    what = _what(step, wording)
    where = _where(step, wording)
    found = wording.lexicon.resolve("operations", known(step.do) or "")
    if found and found[1] in _LAID_ON:
        to = (Run(_after(what, " to ")), *where) if where else ()
        return (_verb(step, wording), Run(" "), *what, *to, *_bond(step, wording, " with "))
    bond = _bond(step, wording, _after(what, " in "))
    if found and found[1] == "make" and where:
        return (_verb(step, wording), Run(" "), *what, Run(" for "), *where, *bond)
    if known(step.do) and where:
        joint = ": " if known(step.is_) == "part" else " with "
        return (_verb(step, wording), Run(" "), *where, Run(joint), *what, *bond)
    covers = not (step.onto or step.spans or step.soaks_in or step.in_thickness_of)
    joint = " over " if covers else " on "
    onto = (Run(_after(what, joint)), *where) if where else ()
    bond = _bond(step, wording, " in ") if onto else bond
    return (_plain_verb(step, wording), Run(" "), *what, *onto, *bond)


def _what(step: Step, wording: Wording) -> Line:
    """What was laid: its material; a new part, or what has no material, by its own name."""
    material = wording.material(step.material)
    own = Run(f"the {(step.adds or '').replace('-', ' ')}")
    if known(step.is_) == "part":
        return (own, Run(", a new part"), *((Run(" of "), *material) if material else ()))
    return material or (own,)


def _after(line: Line, joint: str) -> str:
    """A joint that closes what was said between commas: "tengujo, 5 g/m², in paste"."""
    return f",{joint}" if ", " in text_of(line) else joint


def _where(step: Step, wording: Wording) -> Line:
    inside = known(step.in_thickness_of)
    if inside is not None and items(step.onto):
        on = (Run(", on "), *wording.places(step.onto), Run(","))
        return (Run("a loss in "), wording.place_run(inside), *on)
    if places := items(step.onto):
        return wording.places(places)
    if step.spans:
        return listed([(wording.place_run(one),) for one in step.spans])
    if inside is not None:
        return (Run("a loss in "), wording.place_run(inside))
    if known(step.do) and (soaked := items(step.soaks_in)):
        return wording.places(soaked)
    return () if step.bonds else wording.places(items(step.over))


def _bond(step: Step, wording: Wording, joint: str) -> Line:
    """What it is stuck or held with."""
    held = ", ".join(one for one in items(step.held) if not _told(one, step, wording))
    if step.adhesive is None:
        return (Run(f", {held}"),) if held else ()
    glue = wording.adhesive(step.adhesive)
    if isinstance(step.adhesive, Gap) and step.adhesive.kind is Unknowing.NONE:
        return (Run(f", {held}, without adhesive" if held else ", without adhesive"),)
    return (Run(joint), *glue, Run(f", {held}" if held else ""))


def _told(held: str, step: Step, wording: Wording) -> bool:
    """Whether the verb says how it is held: sewed and sewn, laced in and laced."""
    return bool(known(step.do)) and held[:3].lower() in _verb(step, wording).text.lower()


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
    if isinstance(step.agent, Gap) and step.agent.kind is Unknowing.NONE:
        return () if step.material or step.adhesive else (Run(" without an agent"),)
    named = wording.material(step.agent, "agent")
    by_itself = text_of(named).startswith("by ")
    line = (Run(" " if by_itself else " with "), *named)
    agent = known(step.agent)
    if agent is None:
        return line
    lasts, until = say(agent.lasts), say(agent.until)
    how = [
        _applied(say(agent.applied)),
        f"for {lasts}" if lasts else "",
        often(agent.times),
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
