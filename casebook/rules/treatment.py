"""Rules about what was done: steps with one verb, a material and a bond; what went, what came."""

from __future__ import annotations

from collections.abc import Iterator

from casebook.diagnostics import Severity
from casebook.model.base import Gap, Maybe, Record, Unknowing, items, key_of, known
from casebook.model.condition import LATE
from casebook.model.materials import Material
from casebook.model.treatment import VERBS, Step
from casebook.reading import did_you_mean
from casebook.rules.declare import (
    ADVICE,
    AIC_27A,
    AIC_27B,
    ECCO_10,
    MISTAKE,
    MUST,
    NO_SOURCE,
    OWN,
    SHOULD,
    Raised,
    rule,
)
from casebook.rules.look import Due, Look

_BONDS = ("adhesive", "held", "bonds", "soaks_in", "ways")
_CAREFUL = ("is_", "perhaps", "mix", "product", "built_of")


@rule(
    why="A treatment that nobody wrote down has to be guessed at by whoever comes next.",
    source=f"{AIC_27B}; {ECCO_10}",
    fields=("Case.steps", "Case.episodes", "Episode.steps", "Episode.story", "Case.story"),
    weight=MUST,
    raises="# no episodes",
    passes="episodes: [{date: 2025-03-14, hands: [AM], steps: [sewed the loose section back in]}]",
    due=Due.FINISHED,
    rows=(
        "treatment report prepared from the running record",
        "procedures used, and variations from the plan",
        "written and pictorial record of examination and intervention",
    ),
    gap="The record does not say what was done.",
)
def treatment_record(look: Look) -> Iterator[Raised]:
    """A finished case says what was done: in steps, or at least in prose."""
    ways = (("steps",), ("episodes", "steps"), ("episodes", "story"), ("story",))
    if not any(look.tells(look.case, *way) for way in ways):
        message = "the case is complete, and the record does not say what was done"
        hint = "write the sittings in `episodes/01-….md`, each with `date`, `hands` and `steps`"
        yield Raised(message, look.place("status"), hint)


@rule(
    why="The next conservator opens what you closed, and must know what holds it.",
    source=f"{AIC_27A}; asked of every such step: {NO_SOURCE}",
    fields=("Step.adds", "Step.material"),
    weight=MUST,
    raises="steps: [{do: line, adds: patch, onto: spine, hands: AM, date: 2025-03}]",
    passes="steps: [{do: line, adds: patch, onto: spine, material: linen, date: 2025-03}]",
    due=Due.TREATED,
    rows=("materials added",),
    gap="The record does not name every material that was added.",
)
def material_of_addition(look: Look) -> Iterator[Raised]:
    """Every step that adds something names its material."""
    for step in look.steps:
        if step.adds and not _named(look, step):
            message = f"`{step.adds}` was added, and the record does not say what it is made of"
            hint = "add `material: {is: linen, weight: 120 g/m², lot: …}`"
            yield Raised(message, step.span("adds"), hint)


def _named(look: Look, step: Step) -> bool:
    """Whether a step says what it laid on; that nobody knows it needs a reason."""
    material = step.material
    if isinstance(material, Material):
        return any(look.tells(material, name) for name in _CAREFUL)
    return look.tells(step, "material", in_reach=True)


@rule(
    why="What is stuck, sewn or only laid on opens in as many different ways.",
    source=f"{AIC_27A}; asked of every such step: {NO_SOURCE}",
    fields=("Step.adds", "Step.onto", "Step.adhesive", "Step.held", "Step.bonds", "Step.soaks_in"),
    weight=MUST,
    raises="steps: [{adds: patch, onto: spine, material: linen, hands: AM, date: 2025-03}]",
    passes="steps: [{adds: patch, onto: spine, material: linen, adhesive: none, date: 2025-03}]",
    due=Due.TREATED,
    rows=("materials added",),
    gap="The record does not say what holds every layer that was added.",
)
def bond_of_addition(look: Look) -> Iterator[Raised]:
    """Every step that lays something on says what it is stuck with, or how it is held."""
    for step in look.steps:
        lies = step.adds and (items(step.onto) or step.spans or known(step.in_thickness_of))
        if lies and not any(_holds(look, step, name) for name in _BONDS):
            message = f"the record does not say what holds `{step.adds}`"
            hint = "add `adhesive: wheat-starch-paste` (or `none`, `unnamed`), or `held: sewn`"
            yield Raised(message, step.span("adhesive"), hint)


def _holds(look: Look, step: Step, name: str) -> bool:
    """Whether a step says how it holds; that an adhesive is there, and not named, says it too."""
    value = getattr(step, name)
    unnamed = isinstance(value, Gap) and value.kind is Unknowing.UNNAMED
    return unnamed or look.tells(step, name)


@rule(
    why="A house name tells nobody what is in the pot; products change under the same label.",
    source="AIC Guideline 27 / Commentary 27 B (from memory, so this asks less than it may say)",
    fields=("Step.material", "Step.adhesive", "Material.is_", "Material.product", "Material.mix"),
    weight=SHOULD,
    raises="steps: [{adds: patch, onto: spine, material: linen, adhesive: the usual mix}]",
    passes="steps: [{adds: patch, onto: spine, material: linen, adhesive: wheat starch paste}]",
    due=Due.TREATED,
    rows=("complete composition / product of materials",),
)
def composition_of_material(look: Look) -> Iterator[Raised]:
    """What stays on the object is named by what it consists of, or by its product."""
    for step in look.steps:
        for key in ("material", "adhesive"):
            word = _bare_word(look, getattr(step, key))
            if word and word not in look.names:
                message = f"`{word[:60]}` does not say what the {key} consists of"
                hint = f"add `{key}: {{is: …, product: …, maker: …}}`"
                yield Raised(message, step.span(key), hint)


def _bare_word(look: Look, value: Maybe[Material]) -> str:
    """A material's own word, if the vocabulary does not know it and nothing explains it."""
    material = known(value)
    word = known(material.is_) if material else None
    if material is None or word is None or look.tells(material, "product") or material.mix:
        return ""
    return "" if look.lexicon.resolve("materials", word) else word


@rule(
    why="Areas, layers and the way back are computed from what a step says happened.",
    source=OWN,
    fields=(*(f"Step.{verb}" for verb in VERBS), "Step.material"),
    weight=MISTAKE,
    raises="steps: [{removes: old-glue, adds: patch, onto: spine, material: linen}]",
    passes="steps: [{removes: old-glue}, {adds: patch, onto: spine, material: linen}]",
)
def one_verb(look: Look) -> Iterator[Raised]:
    """A step has one of the keys that say what happened; one that names a material has one."""
    listed = ", ".join(f"`{key_of(verb)}`" for verb in VERBS)
    for step in look.steps:
        verbs = [f"`{key_of(verb)}`" for verb in VERBS if getattr(step, verb) not in (None, ())]
        if len(verbs) > 1:
            message = f"this step says {' and '.join(verbs)}: a step does one of them"
            yield Raised(message, step.span(), _instead_of(step))
        elif not verbs and step.material is not None and not _any_verb(step):
            message = "this step names a material, and not what was done with it"
            hint = f"add one of {listed}"
            yield Raised(message, step.span("material"), hint, Severity.WARNING)


def _instead_of(step: Step) -> str:
    """What to write for a step with two verbs; what is added holds to things by `onto`."""
    if step.adds and items(step.joins):
        there = ", ".join(items(step.joins))
        return f"write `adds: {step.adds}, onto: [{there}]`: what is added is laid or held onto"
    return "make it two steps, in the order you did them"


def _any_verb(step: Record) -> bool:
    return any(step.tells(verb) for verb in VERBS)


@rule(
    why="What the step does not say itself comes from the recipe; without it, it is lost.",
    source=OWN,
    fields=("Step.like",),
    weight=MISTAKE,
    raises="steps: [{adds: patch, onto: spine, like: overhanging-lining}]",
    passes="steps: [{adds: patch, onto: spine, like: overhang-lining}]",
)
def recipe_unknown(look: Look) -> Iterator[Raised]:
    """A recipe that a step names is among the lab's recipes."""
    recipes = list(look.archive.recipes)
    for step in look.steps:
        name = known(step.like)
        if name and name not in recipes:
            message = f"the lab has no recipe `{name[:60]}`"
            hint = did_you_mean(name, recipes) or "write it down in `vocabulary/recipes.yml`"
            yield Raised(message, step.span("like"), hint)


@rule(
    why="What left the object may be wanted again, as evidence or to be put back.",
    source=f"{AIC_27A} (an aim of the record)",
    fields=("Step.removes", "Step.fate"),
    weight=ADVICE,
    raises="steps: [{removes: old-glue, agent: water}]",
    passes="steps: [{removes: old-glue, agent: water, fate: discarded}]",
    due=Due.TREATED,
    rows=("materials removed",),
    gap="The record does not say where everything went that was removed.",
)
def fate_of_removed(look: Look) -> Iterator[Raised]:
    """A step that removes something for good says where it went."""
    for step in look.steps:
        if items(step.removes) and not look.tells(step, "fate"):
            message = f"the record does not say where `{items(step.removes)[0]}` went"
            hint = "add `fate: discarded`, `kept-with-object`, `stored-apart` or `own-case`"
            yield Raised(message, step.span("removes"), hint)


@rule(
    why="A later look can only say what has changed since if it is known how it was left.",
    source=f"{AIC_27A} (an aim of the record)",
    fields=("Case.findings", "Finding.stage", "Step.result", "Step.finds", "Case.follow_up"),
    weight=ADVICE,
    raises="findings: [{part: spine, seen: cracked}]",
    passes="findings: [{part: spine, stage: after, seen: opens flat}]",
    due=Due.FINISHED,
    rows=("condition after treatment and changes made by it",),
    gap="The record does not say in what condition the object was after treatment.",
)
def condition_after(look: Look) -> Iterator[Raised]:
    """A finished case says how the object was after treatment."""
    after = any(getattr(one, "stage", None) in LATE for one in items(look.case.findings))
    results = any(look.tells(step, "result") for step in look.steps)
    if not (after or results or look.tells(look.case, "follow_up")):
        message = "the record does not say how the object was after treatment"
        hint = "add `{part: spine, stage: after, seen: …}` to `findings`, or a `result` to a step"
        yield Raised(message, look.place("findings"), hint)


@rule(
    why="The next estimate is as good as the hours that were kept.",
    source=NO_SOURCE,
    fields=("Step.time", "Episode.time", "Case.time", "Lump.spent"),
    weight=ADVICE,
    raises="episodes: [{date: 2025-03, hands: [AM], steps: [cleaned the spine]}]\n# no time",
    passes="episodes: [{date: 2025-03, hands: [AM], time: 2 h, steps: [cleaned the spine]}]",
    due=Due.FINISHED,
    rows=("actual hours per step",),
    gap="The record does not say how long the work took.",
)
def time_of_steps(look: Look) -> Iterator[Raised]:
    """A finished case says how long the work took: step by step, by sitting, or as a whole."""
    whole = look.tells(look.case, "time", "spent") or look.tells(look.case, "episodes", "time")
    if look.worked and not whole and not any(look.tells(one, "time") for one in look.steps):
        message = "the record does not say how long the work took"
        hint = "add `time: 40 min` to a step or a sitting, or `time: {spent: 113 h}` for the whole"
        yield Raised(message, look.place("episodes"), hint)


@rule(
    why="The best repair fails early in the wrong hands or the wrong room.",
    source="AIC Guideline 27 (from memory, so this asks less than it may say)",
    fields=("Case.care",),
    weight=ADVICE,
    raises="# no care",
    passes="care: lay it flat; open it on a cushion",
    due=Due.FINISHED,
    rows=("recommendations for care",),
    gap="The record gives no advice on keeping and handling.",
)
def care(look: Look) -> Iterator[Raised]:
    """A finished case advises on keeping and handling."""
    if not look.tells(look.case, "care"):
        message = "the record gives no advice on keeping and handling"
        yield Raised(message, look.place("care"), "write `care: …`, or `care: none`")


PRACTICE = (
    treatment_record,
    material_of_addition,
    bond_of_addition,
    composition_of_material,
    one_verb,
    recipe_unknown,
    fate_of_removed,
    condition_after,
    time_of_steps,
    care,
)
