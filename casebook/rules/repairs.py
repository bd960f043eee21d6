"""Rules about repairs: none is heavier or stronger than the original that it lies across."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casebook.model.base import Gap, items, known
from casebook.model.details import Strength
from casebook.model.materials import Material
from casebook.model.treatment import Step
from casebook.rules.declare import NO_SOURCE, SHOULD, Raised, rule
from casebook.rules.look import Due, Look
from casebook.values.quantities import Grammage


@rule(
    why="A sheet breaks beside a repair that is stronger than itself.",
    source="paper conservation trainee's notes (thebookhut.co.uk, instructions)",
    fields=(
        "Step.adds",
        "Step.onto",
        "Step.material",
        "Material.weight",
        "Part.material",
        "Found.weight",
        "Step.against_original",
        "Step.because",
    ),
    weight=SHOULD,
    raises="parts: {sheet: {material: laid-paper 80 g/m²}}\n"
    "steps: [{adds: patch, onto: sheet, material: kozo-paper 120 g/m²}]",
    passes="parts: {sheet: {material: laid-paper 80 g/m²}}\n"
    "steps: [{adds: patch, onto: sheet, material: kozo-paper 11 g/m²}]",
    due=Due.TREATED,
)
def repair_lighter(look: Look) -> Iterator[Raised]:
    """A repair is no heavier than the paper under it, where both weights are on record.

    An infill is left out, since it takes the place of the paper and does not lie on it.
    """
    for step in look.steps:
        heavy, infill = _weight(look, known(step.material)), known(step.in_thickness_of)
        if not (step.adds and heavy) or infill or _explained(look, step):
            continue
        for place in items(step.onto):
            light = _weight_of_place(look, place)
            if light is not None and heavy[0] > light:
                message = f"`{step.adds}` ({heavy[1]}) is heavier than `{place}` under it"
                hint = "if it must be, say `because: …`, or compare them in `against-original`"
                yield Raised(message, step.span("material"), hint)


def _explained(look: Look, step: Step) -> bool:
    said = known(step.against_original)
    return look.tells(step, "because") or bool(said and look.tells(said, "because"))


def _weight(look: Look, material: Material | None) -> tuple[Fraction, Grammage] | None:
    """The least weight of a material, in g/m², as written or from the vocabulary."""
    if material is None:
        return None
    written = known(material.weight)
    if written is None:
        term = look.lexicon.term("materials", known(material.is_) or "")
        written = known(term.weight) if term else None
    return (written.low, written) if written is not None and written.low is not None else None


def _weight_of_place(look: Look, place: str) -> Fraction | None:
    """The most that a part, or a layer found on arrival, weighs, in g/m²."""
    name = look.ground.bare(place)
    found = next((one for one in items(look.case.as_found) if one.id == name), None)
    own = known(found.weight) if found else None
    if own is not None:
        return own.high
    part = found.material if found else look.ground.part(name).material
    material = known(part)
    written = None if material is None or isinstance(material, Gap) else known(material.weight)
    return written.high if written else None


@rule(
    why="The weaker of two things breaks first: let it be the repair and not the original.",
    source=f"follows from a repair being lighter than the paper repaired; of boards, joints and "
    f"leather: {NO_SOURCE}",
    fields=("Step.against_original", "Against.is_", "Against.because", "Step.because"),
    weight=SHOULD,
    raises="steps: [{adds: patch, onto: joint front, material: calf, against-original: stronger}]",
    passes="steps: [{adds: patch, onto: joint front, material: calf, against-original: "
    "{is: stronger, because: 'the board weighs 2 kg'}}]",
    due=Due.TREATED,
)
def repair_not_stronger(look: Look) -> Iterator[Raised]:
    """A repair that is stronger or stiffer than the original it lies across says why."""
    for step in look.steps:
        said = known(step.against_original)
        if said and said.is_ is Strength.STRONGER and not _explained(look, step):
            message = f"`{step.adds or 'the repair'}` is stronger than the original it lies across"
            hint = "say why: `against-original: {is: stronger, because: …}`"
            yield Raised(message, step.span("against-original"), hint)


PRACTICE = (repair_lighter, repair_not_stronger)
