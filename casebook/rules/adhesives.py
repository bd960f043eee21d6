"""Rules about adhesives: what goes into them dry, what they stick, and what they promise."""

from __future__ import annotations

import re
from collections.abc import Iterator

from casebook.diagnostics import Severity
from casebook.model.base import Gap, Unknowing, items, known
from casebook.model.materials import Material
from casebook.model.outcome import Claim
from casebook.model.treatment import Step
from casebook.rules.declare import ADVICE, NO_SOURCE, SHOULD, Raised, rule
from casebook.rules.look import Due, Look
from casebook.rules.matter import adhesives, classes, dispersion, sorts, water_borne

_FILLED = "book-cloth"
"""Cloth that is filled or backed: it takes no water out of an adhesive through its weave."""

_SHORT_LIVED = frozenset({"rubber-cement", "pressure-sensitive-tape"})
_WETTED = re.compile(r"\b(?:damp|wet|humid|moist|relax|coated|pasted)", re.I)
_NOTHING = re.compile(r"nothing\b|none\b|no trace", re.I)


@rule(
    why="Dry cloth draws the water out of the adhesive, which then takes about four times as long "
    "to hold and holds less well; and it stretches on the book.",
    source=f"{NO_SOURCE} (both that it is damped, wrung out and not wet, and the four times)",
    fields=("Step.material", "Material.damped", "Material.prepared", "Step.adhesive"),
    weight=SHOULD,
    raises="steps: [{adds: patch, onto: spine, material: linen, adhesive: wheat-starch-paste}]",
    passes="steps: [{adds: patch, onto: spine, material: {is: linen, damped: yes}, "
    "adhesive: wheat-starch-paste}]",
    due=Due.TREATED,
)
def cloth_damped(look: Look) -> Iterator[Raised]:
    """Cloth goes damp, not dry, into a water-borne adhesive.

    Where the record does not say whether it was, this asks and no more; of an old record it does
    not ask. Filled and backed book cloth is left out.
    """
    for step in look.steps:
        cloth = known(step.material)
        if not (step.adds and cloth and _takes_water(look, cloth) and _into_water(look, step)):
            continue
        if cloth.damped is False and not look.tells(step, "because"):
            message = f"the cloth of `{step.adds}` went dry into an adhesive that holds water"
            hint = "damp it, wrung out and not wet; if it was dry on purpose, say `because: …`"
            yield Raised(message, cloth.span("damped"), hint)
        elif cloth.damped is None and not look.old and not _made_ready(cloth):
            message = f"was the cloth of `{step.adds}` damped before it was laid?"
            hint = "add `damped: yes` to `material`, or `damped: no` and in the step `because: …`"
            yield Raised(message, step.span("material"), hint, Severity.SUGGESTION)


def _takes_water(look: Look, material: Material) -> bool:
    return "cloth" in classes(look, material) and _FILLED not in sorts(look, material)


def _into_water(look: Look, step: Step) -> bool:
    return any(water_borne(look, one) for one in adhesives(step))


def _made_ready(cloth: Material) -> bool:
    return bool(_WETTED.search(known(cloth.prepared) or ""))


@rule(
    why="A dispersion on the folds stays there; paste comes off again with a little water, and a "
    "long-fibred tissue on paste lets go of all that is put above it.",
    source="bookbinder-conservator's article (2018, greensbooks.co.uk, gluing up with gelatine); "
    "Book_Arts-L 1997 (bookarts/1997/03/msg00269); of the tissue: Indiana University "
    "Libraries, Book Repair Manual, Paper; of the order: rebacking notes by a conservation student "
    "(2009)",
    fields=("Step.adds", "Step.onto", "Step.spans", "Step.adhesive", "Step.because"),
    weight=SHOULD,
    raises="steps: [{adds: patch, onto: spine, material: linen, adhesive: polyvinyl-acetate}]",
    passes="steps: [{adds: tissue, onto: spine, material: tengujo, adhesive: wheat-starch-paste}, "
    "{adds: patch, onto: tissue, material: linen, adhesive: polyvinyl-acetate}]",
    due=Due.TREATED,
)
def no_dispersion_on_original(look: Look) -> Iterator[Raised]:
    """No synthetic dispersion goes straight onto the spine's folds, unless the step says why."""
    for step in look.steps:
        stuck = any(dispersion(look, one) for one in adhesives(step))
        spine = any(_bare_spine(look, place) for place in items(step.onto) or tuple(step.spans))
        if step.adds and stuck and spine and not look.tells(step, "because", in_reach=True):
            message = f"`{step.adds}` is stuck to the spine's own folds with a dispersion"
            hint = "lay a long-fibred tissue with paste first, as a release layer, or say `because`"
            yield Raised(message, step.span("adhesive"), hint)


def _bare_spine(look: Look, place: str) -> bool:
    """Whether a place is a spine itself, not a layer that lies on one."""
    layered = look.ground.layer(place) in look.ground.layers
    return not layered and look.ground.is_spine(look.ground.bare(place))


@rule(
    why="Dried dispersions soften in water, but hardly ever come away with a damp swab.",
    source="Conservation DistList 2001-08-09 (cdl/2001/1007); Indiana University Libraries, Book "
    "Repair Manual, Supplies and Materials (not easily reversible)",
    fields=("Case.reversibility", "Reversibility.claims", "Claim.takes_off", "Claim.leaves"),
    weight=ADVICE,
    raises="steps: [{adds: patch, onto: spine, material: linen, adhesive: polyvinyl-acetate}]\n"
    "reversibility: {claims: [{takes-off: patch, with: water, leaves: nothing}]}",
    passes="steps: [{adds: patch, onto: spine, material: linen, adhesive: polyvinyl-acetate}]\n"
    "reversibility: {claims: [{takes-off: patch, with: water, leaves: a film in the surface}]}",
    due=Due.TREATED,
)
def dispersion_leaves_something(look: Look) -> Iterator[Raised]:
    """A claim that water takes a dispersion off without a trace says what it rests on."""
    said = known(look.case.reversibility)
    bonds = {step.adds: step for step in look.steps if step.adds}
    for claim in items(said.claims) if said else ():
        step = next((bonds[one] for one in items(claim.takes_off) if one in bonds), None)
        if step is None or look.tells(claim, "because") or not _with_water(look, claim):
            continue
        stuck = any(dispersion(look, one) for one in adhesives(step))
        if stuck and _nothing(claim) and not _on_a_layer(look, step):
            message = f"`{step.adds}` is stuck with a dispersion: does water leave nothing of it?"
            hint = "write what stays in `leaves`, or what the claim rests on in `because`"
            yield Raised(message, claim.span("leaves"), hint)


def _on_a_layer(look: Look, step: Step) -> bool:
    """Whether what a layer is stuck to is another layer of ours, which can come off with it."""
    places = items(step.onto)
    ours = {one.adds for one in look.steps if one.adds}
    return bool(places) and all(look.ground.layer(one) in ours for one in places) and not step.spans


def _with_water(look: Look, claim: Claim) -> bool:
    return water_borne(look, claim.with_)


def _nothing(claim: Claim) -> bool:
    leaves = claim.leaves
    if isinstance(leaves, Gap):
        return leaves.kind is Unknowing.NONE
    return bool(_NOTHING.match(leaves or ""))


@rule(
    why="What yellows, creeps or sets for good has to be fought by whoever comes next.",
    source="Ogden, Repairing Paper Artifacts (leaflet): a repair adhesive must hold for good, not "
    "discolour, and let go later without harm; tape: Smith, Jones, Page and Dirda (1983)",
    fields=("Step.adds", "Step.material", "Step.adhesive", "Step.temporary"),
    weight=SHOULD,
    raises="steps: [{adds: patch, onto: leaf, material: kozo-paper, adhesive: rubber-cement}]",
    passes="steps: [{adds: patch, onto: leaf, material: kozo-paper, adhesive: starch-paste}]",
    due=Due.TREATED,
)
def adhesive_that_lasts(look: Look) -> Iterator[Raised]:
    """Nothing that stays is put on with rubber cement or self-adhesive tape, unless it says why."""
    for step in look.steps:
        if not step.adds or step.temporary is True or look.tells(step, "because", in_reach=True):
            continue
        for key, used in (("material", known(step.material)), *(_keyed(step))):
            if sorts(look, used) & _SHORT_LIVED:
                message = f"`{step.adds}` is put on with something that will not age well"
                hint = "paste or a cellulose ether will let go again; else say `because: …`"
                yield Raised(message, step.span(key), hint)


def _keyed(step: Step) -> Iterator[tuple[str, Material]]:
    return (("adhesive", one) for one in adhesives(step))


PRACTICE = (
    cloth_damped,
    no_dispersion_on_original,
    dispersion_leaves_something,
    adhesive_that_lasts,
)
