"""Rules about decayed leather and mould: what makes either of them worse."""

from __future__ import annotations

import re
from collections.abc import Iterator

from casebook.model.base import items, known
from casebook.model.materials import Material
from casebook.model.treatment import Step
from casebook.rules.declare import SHOULD, Raised, rule
from casebook.rules.look import Due, Look
from casebook.rules.matter import adhesives, agents, ids, sorts, water_borne
from casebook.rules.touch import any_meets, stuck, touched

_DRYING = frozenset({"dry", "freeze", "quarantine"})
_BRUSHING = frozenset({"remove-mould", "vacuum", "dry-clean"})
_DRY = re.compile(r"\bdry\b|\bdried\b|\bpowder", re.I)


@rule(
    why="Water, and paste with it, turns decayed leather dark and hard at once and for good.",
    source="Book_Arts-L 1999 (bookarts/1999/06/msg00163); Balliol College Library, Adhesives "
    "(2017); Roberts and Etherington (1982), red decay",
    fields=(
        "Finding.damage",
        "Finding.part",
        "Found.material",
        "Part.material",
        "Step.agent",
        "Step.adhesive",
        "Step.except_",
        "Step.allowed_by",
    ),
    weight=SHOULD,
    raises="findings: [{part: covering, damage: red-rot}]\n"
    "steps: [{do: clean, treats: covering, agent: water}]",
    passes="findings: [{part: covering, damage: red-rot}]\nsteps: [{do: consolidate, "
    "treats: covering, adhesive: hydroxypropyl-cellulose 4 % in ethanol}]",
    due=Due.TREATED,
)
def water_on_red_rot(look: Look) -> Iterator[Raised]:
    """No water or paste comes to leather with red rot, unless a test allowed it or it is spared."""
    decayed = tuple(_decayed(look))
    for step in look.steps if decayed else ():
        wet = [one for one in (*agents(step), *adhesives(step)) if water_borne(look, one)]
        places = (*touched(look, step), *(stuck(step) or ()))
        left = [one for one in places if one not in items(step.removes)]
        if wet and any_meets(look, decayed, left) and not _minded(step):
            message = f"this step brings water to `{decayed[0]}`, which has red rot"
            hint = "say in `except` how it was kept dry, or in `allowed-by` which test allowed it"
            yield Raised(message, step.span("agent"), hint)


def _minded(step: Step) -> bool:
    return bool(known(step.except_) or items(step.allowed_by))


def _decayed(look: Look) -> Iterator[str]:
    """The parts and layers found to have red rot, or to be of leather that has it."""
    for finding in items(look.case.findings):
        if any("red-rot" in ids(look, "damages", word) for word in items(finding.damage)):
            yield from items(finding.part)
    for found in items(look.case.as_found):
        if _rotten(look, known(found.material)):
            yield found.id
    for name, part in look.ground.parts.items():
        if _rotten(look, known(part.material)):
            yield name


def _rotten(look: Look, material: Material | None) -> bool:
    return "red-rotted-leather" in sorts(look, material)


@rule(
    why="Damp mould smears into what it grows on; dry, it lets itself be taken off as powder.",
    source="Duke University Libraries, 1091 Project (2014); NC Preservation Consortium, "
    "Removing mold",
    fields=("Finding.damage", "Finding.stage", "Step.do", "Step.treats", "Step.because"),
    weight=SHOULD,
    raises="findings: [{part: board 1, damage: active-mould}]\n"
    "steps: [{do: remove-mould, treats: board 1, tools: [vacuum-cleaner]}]",
    passes="findings: [{part: board 1, damage: active-mould}]\n"
    "steps: [{do: dry, treats: board 1}, {do: remove-mould, treats: board 1}]",
    due=Due.TREATED,
)
def mould_dried_first(look: Look) -> Iterator[Raised]:
    """Mould that was found alive is dried before it is brushed or vacuumed off."""
    if not any(_alive(look)):
        return
    for step in look.steps:
        done = ids(look, "operations", known(step.do) or "")
        said = f"{known(step.because) or ''} {known(step.result) or ''} {known(step.words) or ''}"
        if done & _DRYING or _DRY.search(said):
            return
        if "remove-mould" in done or (done & _BRUSHING and _where_it_grows(look, step)):
            message = "mould found alive was brushed or vacuumed off, and nothing says it was dry"
            hint = "add the step that dried it, or `because: …` to this one"
            yield Raised(message, step.span("do"), hint)
            return


def _alive(look: Look) -> Iterator[str]:
    for finding in items(look.case.findings):
        if any("active-mould" in ids(look, "damages", word) for word in items(finding.damage)):
            yield from items(finding.part) or ("",)


def _where_it_grows(look: Look, step: Step) -> bool:
    return any_meets(look, _alive(look), touched(look, step))


PRACTICE = (water_on_red_rot, mould_dried_first)
