"""Rules about work that the approved plan does not mention: other materials, and bleaching."""

from __future__ import annotations

from collections.abc import Iterator

from casebook.model.base import items, known
from casebook.model.materials import Material
from casebook.model.proposal import Choice, Option, Proposal, courses
from casebook.model.treatment import Step
from casebook.rules.declare import AIC_26B, NO_SOURCE, SHOULD, Raised, rule
from casebook.rules.look import Due, Look
from casebook.rules.matter import adhesives, agents, ids, words
from casebook.vocabulary import fold

_BLEACHES = frozenset({"hydrogen-peroxide", "reducing-agent"})
_SMALL = frozenset({"thread", "colour", "size", "other", "coating", "metal"})
"""Classes of material that plans leave unsaid: thread, colour for toning, size, pins."""

_ALIKE = {"tissue": "paper", "skin": "leather"}
"""Classes that one plan takes for one another."""

_TOO_WIDE = frozenset({"adhesive", "paper", "cloth", "board", "leather", "skin"})
"""Terms that two different materials share without being alike."""


def _agreed(look: Look) -> tuple[Option, ...]:
    """The options that were chosen, of the plan as a whole and of each of its questions."""
    proposal = known(look.case.proposal)
    if proposal is None:
        return ()
    return tuple(one for one in courses(proposal) if one.outcome is Choice.CHOSEN)


def _words_of_plan(proposal: Proposal, options: tuple[Option, ...]) -> str:
    """All that the chosen options and the changes of plan say, folded as words are matched."""
    said = [text for one in options for text in (one.name, one.merits, one.faults, one.because)]
    said += [text for one in items(proposal.changes) for text in (one.what, one.because)]
    return fold(" ".join(text for text in map(known, (*said, proposal.aims)) if text))


@rule(
    why="Who owns the object agreed to what the plan says; anything else is for the owner to know.",
    source=f"{AIC_26B}: significant departures are approved in writing; that another sort of "
    f"material on the object is one: {NO_SOURCE}",
    fields=(
        "Case.proposal",
        "Proposal.options",
        "Proposal.questions",
        "Option.outcome",
        "Option.materials",
        "Proposal.changes",
        "Change.what",
        "Step.adds",
        "Step.material",
        "Step.adhesive",
        "Step.agent",
        "Step.do",
    ),
    weight=SHOULD,
    raises="proposal: {options: [{name: line it, materials: [linen, paste], outcome: chosen}]}\n"
    "steps: [{adds: patch, onto: spine, material: calf, adhesive: paste}]",
    passes="proposal: {options: [{name: line it, materials: [linen, paste], outcome: chosen}], "
    "changes: [{what: calf at the joint, agreed: 'owner, letter'}]}\n"
    "steps: [{adds: patch, onto: spine, material: calf, adhesive: paste}]",
    due=Due.TREATED,
)
def within_the_plan(look: Look) -> Iterator[Raised]:
    """What stays on the object is of the sorts that the chosen plan, or a change of it, names.

    Compared only where the plan names its materials, and adhesives only where it names one. Wider
    and narrower terms count as named, one paper for another too; threads, colours, boxes and
    temporary layers are left out. Of agents only bleaches are compared.
    """
    options = _agreed(look)
    named = [one for option in options for one in items(option.materials)]
    proposal = known(look.case.proposal)
    if proposal is None or not named:
        return
    said = _words_of_plan(proposal, options)
    seen: set[str] = set()
    for step in look.steps:
        for key, word in _used(look, step):
            known_to_plan = word in seen or _in_words(look, word, said)
            if not known_to_plan and not _like_one(look, word, named):
                seen.add(word)
                message = f"`{word}` is on the object, and neither plan nor changes name it"
                hint = "add it to `changes`: `{what: …, because: …, agreed: …}`, or to the option"
                yield Raised(message, step.span(key), hint)


def _used(look: Look, step: Step) -> Iterator[tuple[str, str]]:
    """What a step leaves on the object, and any bleach, by key."""
    bleaches = (word for one in agents(step) for word in words(one))
    yield from (("agent", one) for one in bleaches if ids(look, "materials", one) & _BLEACHES)
    if not step.adds or known(step.is_) == "part" or step.temporary is True:
        return
    yield from (("material", one) for one in words(step.material))
    yield from (("adhesive", word) for one in adhesives(step) for word in words(one))


def _in_words(look: Look, word: str, said: str) -> bool:
    """Whether the words of the plan speak of a material, by any of its names."""
    term = look.lexicon.term("materials", word)
    also = (term.label, *items(term.also)) if term else ()
    return any(len(fold(one)) > 2 and fold(one) in said for one in (word, *also))


def _like_one(look: Look, word: str, named: list[Material]) -> bool:
    """Whether a plan names this material, one like it, or nothing that it could be held against."""
    own, sort = ids(look, "materials", word), _class(look, word)
    if not own or sort in _SMALL:
        return True
    plan = [(ids(look, "materials", one), _class(look, one)) for mat in named for one in words(mat)]
    if any((own & theirs) - _TOO_WIDE for theirs, _ in plan):
        return True
    sorts_named = {one for _, one in plan}
    if sort == "adhesive":
        return "adhesive" not in sorts_named
    return sort in sorts_named


def _class(look: Look, word: str) -> str:
    term = look.lexicon.term("materials", word)
    sort = known(term.class_) if term else None
    return _ALIKE.get(sort or "", sort or "")


PRACTICE = (within_the_plan,)
