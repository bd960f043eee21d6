"""The rule that whoever adds a layer says how it can come off again."""

from __future__ import annotations

from collections.abc import Iterator

from casebook.compute.presence import Presence, presence
from casebook.diagnostics import Severity
from casebook.model.base import Gap, items, known
from casebook.model.outcome import Reversibility
from casebook.model.treatment import Step
from casebook.rules.declare import ECCO_9, MUST, Raised, rule
from casebook.rules.look import Due, Look


@rule(
    why="One day somebody must take it off again, and will not know what you knew.",
    source=f"{ECCO_9}; CAC, What is conservation (cac-accr.ca/conservation); "
    "a note for each layer: common practice, no source",
    fields=(
        "Case.reversibility",
        "Reversibility.says",
        "Reversibility.claims",
        "Claim.takes_off",
        "Step.adds",
        "Step.removes",
        "Step.takes_off",
        "Step.temporary",
    ),
    weight=MUST,
    raises="# no reversibility",
    passes="reversibility: {claims: [{takes-off: cloth-lining, with: water, leaves: nothing}]}",
    due=Due.TREATED,
    rows=(
        "materials compatible and as easily and completely reversible as possible",
        "repairs can be told from the original; materials removable as far as possible",
        "time/method of layer removal (reversal plan)",
    ),
    gap="The record does not say of every added layer how it can be taken off again.",
)
def reversibility_of_layers(look: Look) -> Iterator[Raised]:
    """Every added layer that is still there has a note on how it can be taken off again."""
    said = look.case.reversibility
    if isinstance(said, Gap) and look.tells(look.case, "reversibility", in_reach=True):
        return
    if said is None and look.tells(look.case, "reversibility"):
        return
    prose = isinstance(said, Reversibility) and look.tells(said, "says", in_reach=True)
    for step in _unclaimed(look):
        layer = step.adds
        hint = f"write `reversibility: {{claims: [{{takes-off: {layer}, with: …, leaves: …}}]}}`"
        if prose:
            message = f"no claim under `reversibility` says how `{layer}` comes off again"
            yield Raised(message, step.span("adds"), hint, Severity.SUGGESTION)
        else:
            message = f"the record does not say how `{layer}` can be taken off again"
            yield Raised(message, step.span("adds"), hint)


def _unclaimed(look: Look) -> Iterator[Step]:
    """The steps whose layer is still there and is named in no claim."""
    said = known(look.case.reversibility)
    claims = items(said.claims) if said else ()
    claimed = {look.ground.layer(place) for one in claims for place in items(one.takes_off)}
    lying = presence(look.case, look.replay)
    for step in look.steps:
        there = step.adds and lying.get(step.adds, Presence.GONE) is not Presence.GONE
        if there and known(step.is_) != "part" and step.adds not in claimed:
            yield step


PRACTICE = (reversibility_of_layers,)
