"""Rules about the examination: why and how, what was seen, and what had been done before."""

from __future__ import annotations

from collections.abc import Iterator

from casebook.model.base import items
from casebook.model.condition import Finding, Origin, Stage
from casebook.rules.declare import AIC_25B, ECCO_10, MUST, Raised, rule
from casebook.rules.look import Look


@rule(
    why="What a reader may expect of an examination depends on what it was for.",
    source=AIC_25B,
    fields=("Case.examination", "Examination.because"),
    weight=MUST,
    raises="examination: {method: [raking light]}",
    passes="examination: {because: owner asks whether it can be read, method: [raking light]}",
    rows=("examination: purpose and circumstances",),
    gap="The record does not say why the object was examined.",
)
def purpose_of_examination(look: Look) -> Iterator[Raised]:
    """The record says why, and in what circumstances, the object was examined."""
    if not look.tells(look.case, "examination", "because"):
        message = "the record does not say why the object was examined"
        hint = "write `examination: {because: …}`: who asked for it, and what for"
        yield Raised(message, look.place("examination", "because"), hint)


@rule(
    why="What was not seen means something only if one knows how it was looked for.",
    source=AIC_25B,
    fields=("Case.examination", "Examination.method", "Case.tests", "Test.method"),
    weight=MUST,
    raises="examination: {because: owner asked}\n# no tests",
    passes="examination: {because: owner asked, method: [loupe, raking light]}\n# no tests",
    rows=("examination: methods of examination and testing",),
    gap="The record does not say how the object was examined.",
)
def methods_of_examination(look: Look) -> Iterator[Raised]:
    """The record says how the object was examined or tested."""
    ways = (("examination", "method"), ("tests", "method"))
    if not any(look.tells(look.case, *way) for way in ways):
        message = "the record does not say how the object was examined or tested"
        hint = "write `examination: {method: [raking light, loupe]}`, or `tests` with a `method`"
        yield Raised(message, look.place("examination", "method"), hint)


@rule(
    why="Without it nobody can tell what the treatment changed.",
    source=f"{AIC_25B}; {ECCO_10}",
    fields=("Case.findings", "Finding.stage", "Finding.seen", "Finding.damage"),
    weight=MUST,
    raises="findings: [{part: spine, stage: after, seen: opens well}]",
    passes="findings: [{part: spine, damage: broken}]",
    rows=(
        "examination before treatment: present condition",
        "written and pictorial record of examination and intervention",
    ),
    gap="The record does not say in what condition the object was before treatment.",
)
def condition_before(look: Look) -> Iterator[Raised]:
    """The record says in what condition the object was before treatment."""
    before = [one for one in items(look.case.findings) if one.stage in (None, Stage.BEFORE)]
    if not before and (items(look.case.findings) or not look.tells(look.case, "findings")):
        message = "the record does not say in what condition the object was before treatment"
        hint = "write `findings: [{part: spine, damage: broken, seen: …}]`"
        yield Raised(message, look.place("findings"), hint)


@rule(
    why="An interpretation can be wrong; what was seen stays true, and others can read it anew.",
    source=AIC_25B,
    fields=("Finding.seen", "Finding.means", "Finding.damage", "Finding.found"),
    weight=MUST,
    raises="findings: [{part: spine, means: it was dropped}]",
    passes="findings: [{part: spine, seen: head corner crushed, means: it was dropped}]",
    rows=("examination: data with observation kept distinct from interpretation",),
)
def seen_and_meant(look: Look) -> Iterator[Raised]:
    """A finding that says what something means also says what was seen."""
    for one in (one for one in look.records if isinstance(one, Finding)):
        seen = any(look.tells(one, name) for name in ("seen", "damage", "found"))
        if one.means and not seen:
            message = "this finding says what it means, not what was seen"
            hint = "write what you saw under `seen`, beside `means`"
            yield Raised(message, one.span("means"), hint)


@rule(
    why="A box, a wrapper or a loose leaf is part of the evidence, and easily lost.",
    source=AIC_25B,
    fields=("Case.object", "Object.housing"),
    weight=MUST,
    raises="object: {kind: ledger, size: {height: 398 mm}}",
    passes="object: {kind: ledger, size: {height: 398 mm}, housing: none}",
    rows=("examination: accessory materials / associated elements / housing",),
    gap="The record does not say what the object came in, or what came with it.",
)
def housing_on_arrival(look: Look) -> Iterator[Raised]:
    """The record says what the object came in and with, or that there was nothing."""
    if not look.tells(look.case, "object", "housing"):
        message = "the record does not say what the object came in, or what came with it"
        hint = 'under `object` write `housing: "slipcase; three loose letters"`, or `housing: none`'
        yield Raised(message, look.place("object", "housing"), hint)


@rule(
    why="Earlier repairs explain the damage, and decide what water or solvent will do.",
    source=AIC_25B,
    fields=("Case.history", "Case.as_found", "Found.origin"),
    weight=MUST,
    raises="# no history\n# no as-found",
    passes="history: none\n# no as-found",
    rows=("examination before treatment: evidence of past treatment and references to it",),
    gap="The record does not say whether the object had been treated before.",
)
def past_treatment(look: Look) -> Iterator[Raised]:
    """The record says what had been done to the object before, or that no sign of it was seen."""
    later = any(one.origin is Origin.LATER for one in items(look.case.as_found))
    if not later and not look.tells(look.case, "history"):
        message = "the record does not say whether the object had been treated before"
        hint = "write `history: [{what: rebacked in calf, date: 19XX}]`, or `history: none`"
        yield Raised(message, look.place("history"), hint)


PRACTICE = (
    purpose_of_examination,
    methods_of_examination,
    condition_before,
    seen_and_meant,
    housing_on_arrival,
    past_treatment,
)
