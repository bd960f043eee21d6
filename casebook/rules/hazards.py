"""Rules about what can hurt: a danger is named, and its caution stands beside it."""

from __future__ import annotations

import re
from collections.abc import Iterator

from casebook.diagnostics import Severity
from casebook.model.base import Record, items, known, schema, walk
from casebook.model.condition import Finding
from casebook.model.object import Binding, Boards, Part
from casebook.model.treatment import Step
from casebook.rules.dangers import Danger, Met, any_danger, danger, unnamed
from casebook.rules.declare import NO_SOURCE, SHOULD, Raised, rule
from casebook.rules.look import Due, Look
from casebook.rules.matter import adhesives, agents, classes, solvents, sorts, words
from casebook.vocabulary import words_in

_SOURCES = (
    "sources stand in the vocabulary under `caution-source`; that a record says it: "
    f"{NO_SOURCE}. Safety data sheets, local codes and licensed practice come first"
)
_ULTRAVIOLET = re.compile(r"\bUV\b|ultra-?violet", re.I)
_HEAT = re.compile(r"\bheat|\bhot\b|\bwarm", re.I)
_SETS_ALIGHT = "sets solvent vapour alight"
"""What the caution of a heated tool says."""

_MELTED = "hot-melt"
"""What gives off fumes when it is taken off, for it is melted."""

_DRY_ON_OBJECT = frozenset({"adhesive", "tissue"})
"""Classes that hurt when they are used or taken off, not where they lie dry on an object."""


@rule(
    why="A danger without its caution frightens readers and protects nobody.",
    source=_SOURCES,
    fields=("Case.hazards", "Hazard.what", "Hazard.caution"),
    weight=SHOULD,
    raises="hazards: [{what: mould, part: board 1}]",
    passes="hazards: [{what: mould, part: board 1, caution: isolate and dry it first}]",
    gap="The record names a danger and not what is to be minded.",
)
def caution_of_hazard(look: Look) -> Iterator[Raised]:
    """A danger that a record names has its caution."""
    for one in items(look.case.hazards):
        if not look.tells(one, "caution"):
            found = any_danger(look, known(one.what) or "")
            hint = found.usual if found else "follow safety data sheets and local codes"
            message = f"`{known(one.what) or 'this danger'}` has no `caution`"
            yield Raised(message, one.span(), hint)


@rule(
    why="Who takes the object in hand next reads the dangers first, not the findings.",
    source=_SOURCES,
    fields=(
        "Case.hazards",
        "Finding.damage",
        "Found.material",
        "Part.material",
        "Binding.covering",
        "Binding.structure",
    ),
    weight=SHOULD,
    raises="findings: [{part: board 1, damage: mould}]\n# no hazards",
    passes="findings: [{part: board 1, damage: mould}]\nhazards: none (dead and cleaned off)",
)
def hazard_named(look: Look) -> Iterator[Raised]:
    """What is on the object and can hurt stands under `hazards` too."""
    for one in unnamed(look, _on_the_object(look)) if _owed(look) else ():
        message = f"`{one.danger.word}` can hurt, and the record does not name it as a hazard"
        yield Raised(message, one.record.span(one.key), _hint(one))


def _owed(look: Look) -> bool:
    """Whether dangers are asked for: the record does not say that there are none."""
    given = isinstance(look.case.hazards, tuple) and not look.waived("hazards")
    return given or not look.tells(look.case, "hazards")


def _hint(one: Met) -> str:
    return f'write `hazards: [{{what: {one.danger.word}, caution: "…"}}]`; {one.danger.usual}'


def _on_the_object(look: Look) -> Iterator[Met]:
    """Damages that can hurt, and what the object is made of, not what was used on it."""
    for record in look.records:
        if isinstance(record, (Finding, Binding, Boards)):
            for info in schema(type(record)).values():
                if info.words in ("damages", "materials", "structures"):
                    said = words_in(getattr(record, info.name))
                    yield from _met(look, info.words, said, record, info.key)
    parts = (one for one in look.records if isinstance(one, Part))
    made = [(one.material, one) for one in items(look.case.as_found)]
    for material, record in (*made, *((one.material, one) for one in parts)):
        if not classes(look, material) & _DRY_ON_OBJECT:
            yield from _met(look, "materials", words(material), record, "material")


def _met(
    look: Look, kind: str, said: Iterator[str] | tuple[str, ...], record: Record, key: str
) -> Iterator[Met]:
    found = (danger(look, kind, word) for word in said)
    return (Met(one, record, key, _light(look, kind, one)) for one in found if one)


def _light(look: Look, kind: str, one: Danger) -> bool:
    """Whether a danger is one of tools, of operations or of dust that only cleans."""
    term = look.lexicon.term(kind, one.word)
    dust = term is not None and known(term.class_) == "dry"
    return dust or kind in ("tools", "operations")


@rule(
    why="Whoever repeats the work repeats its dangers, and may not know them.",
    source=_SOURCES,
    fields=(
        "Case.hazards",
        "Step.agent",
        "Step.bath",
        "Step.adhesive",
        "Step.material",
        "Step.tools",
        "Step.do",
        "Step.removes",
        "Test.agent",
        "Test.method",
        "Examination.method",
        "Photo.light",
    ),
    weight=SHOULD,
    raises="steps: [{removes: old-glue, agent: acetone}]",
    passes="steps: [{removes: old-glue, agent: acetone}]\n"
    "hazards: [{what: acetone, caution: 'no flame, lids on; follow the safety data sheet'}]",
    due=Due.TREATED,
)
def hazard_of_work(look: Look) -> Iterator[Raised]:
    """What was worked with and can hurt stands under `hazards` too, each sort of danger once.

    Of tools, operations and dusts, such as blades, presses, hot tools and ultraviolet lamps, it is
    never more than a suggestion, and not asked of an old record.
    """
    met = sorted(_at_work(look), key=lambda one: (one.light, one.key == "do"))
    met = [one for one in met if not (one.light and look.old)]
    for one in unnamed(look, met, _on_the_object(look)) if _owed(look) else ():
        cap = Severity.SUGGESTION if one.light else Severity.ERROR
        message = f"`{one.danger.word}` can hurt, and the record does not name it as a hazard"
        yield Raised(message, one.record.span(one.key), _hint(one), cap)


def _at_work(look: Look) -> Iterator[Met]:
    """What was used in steps and tests, what was taken off, and ultraviolet light."""
    for top in (*look.steps, *items(look.case.tests)):
        for record in walk(top):
            for info in schema(type(record)).values():
                if info.words in ("materials", "tools", "operations") and info.name != "not_":
                    said = words_in(getattr(record, info.name))
                    yield from _met(look, info.words, said, record, info.key)
    yield from _taken_off(look)
    yield from _in_ultraviolet(look)


def _taken_off(look: Look) -> Iterator[Met]:
    """The hot melts found that a step took off: melting them gives off fumes."""
    found = {one.id: one for one in items(look.case.as_found)}
    for step in look.steps:
        for place in (*items(step.removes), *items(step.takes_off), *items(step.opens)):
            layer = found.get(look.ground.layer(place))
            for used in (layer.material, layer.adhesive) if layer else ():
                if _MELTED in sorts(look, used):
                    yield from _met(look, "materials", words(used), step, "removes")


def _in_ultraviolet(look: Look) -> Iterator[Met]:
    """Where a test, the examination or a photo says in words that it was made in ultraviolet."""
    examined = known(look.case.examination)
    said: list[tuple[Record, str, str]] = [
        (one, "method", known(one.method) or "") for one in items(look.case.tests)
    ]
    said += [(one, "light", known(one.light) or "") for one in items(look.case.photos)]
    if examined:
        said.append((examined, "method", "; ".join(items(examined.method))))
    for record, key, text in said:
        if _ULTRAVIOLET.search(text):
            yield from _met(look, "tools", ("ultraviolet-lamp",), record, key)


@rule(
    why="A tool hot enough to set a film is hot enough to set a vapour alight.",
    source=f"{NO_SOURCE}; of acetone: OSHA Chemical Sampling Information, Fire Engineering "
    "1987-06. Safety data sheets and local codes come first",
    fields=("Step.tools", "Step.agent", "Step.adhesive", "Hazard.caution", "Step.because"),
    weight=SHOULD,
    raises="episodes: [{date: 2025-03-14, hands: [AM], steps: "
    "[{removes: old-glue, agent: acetone, tools: [heated-spatula]}]}]",
    passes="episodes: [{date: 2025-03-14, hands: [AM], steps: "
    "[{removes: old-glue, agent: acetone, tools: [heated-spatula]}]}]\n"
    "hazards: [{what: acetone, caution: 'gone before anything hot came near it'}]",
    due=Due.TREATED,
)
def heat_near_solvent(look: Look) -> Iterator[Raised]:
    """Where a sitting uses both a solvent and a hot tool, a caution speaks of the two."""
    if any(_HEAT.search(known(one.caution) or "") for one in items(look.case.hazards)):
        return
    for steps in _sittings(look):
        hot = next((one for one in steps if _hot_tool(look, one)), None)
        solvent = any(_with_solvent(look, one) for one in steps)
        if hot and solvent and not look.tells(hot, "because"):
            message = "a solvent and a hot tool were used in one sitting, and no caution says how"
            hint = "usual: let the solvent leave before heating, extract, fire blanket near; "
            hint += "follow the safety data sheet and local codes"
            yield Raised(message, hot.span("tools"), hint)


def _sittings(look: Look) -> Iterator[list[Step]]:
    """The steps of each sitting; of steps in no sitting, each by itself."""
    yield from ([step] for step, sitting in look.worked if sitting is None)
    for one in items(look.case.episodes):
        yield [step for step, sitting in look.worked if sitting is one]


def _hot_tool(look: Look, step: Step) -> bool:
    tools = (*items(step.tools), *(word for way in items(step.ways) for word in items(way.tools)))
    found = (danger(look, "tools", word) for word in tools)
    return any(_SETS_ALIGHT in one.caution for one in found if one)


def _with_solvent(look: Look, step: Step) -> bool:
    return any(solvents(look, one) for one in (*agents(step), *adhesives(step)))


PRACTICE = (caution_of_hazard, hazard_named, hazard_of_work, heat_near_solvent)
