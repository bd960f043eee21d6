"""Materials used: each word as written, with what it was used for, on which parts, where from."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from enum import StrEnum

from casebook.compute.places import Ground, ground
from casebook.compute.steps import placed
from casebook.model.archive import Case
from casebook.model.base import Gap, Maybe, Unknowing, items, known
from casebook.model.materials import Material
from casebook.model.treatment import VERBS, Step


class Role(StrEnum):
    """What a material was used for."""

    LAYER = "layer"
    ADHESIVE = "adhesive"
    AGENT = "agent"
    BATH = "bath"
    CONDITIONER = "conditioner"
    CARRIER = "carrier"
    SOLVENT = "solvent"
    COLOUR = "colour"
    TEST = "test"


_FIELDS = (("material", Role.LAYER), ("adhesive", Role.ADHESIVE), ("agent", Role.AGENT))
_BATH_FIELDS = (("liquid", Role.BATH), ("conditioned", Role.CONDITIONER))


@dataclass(frozen=True, slots=True)
class Use:
    """One use of one material in one step or test.

    `material` is as written, or `unnamed` or `unknown` where it was there and nobody says what
    (then `named` is false). `perhaps` marks a guess, `mixed` a share of a mixture. `layer` is the
    id of the layer laid in that step, "" if none; `step` counts from 1 within its sitting.
    """

    material: str
    role: Role
    named: bool = True
    perhaps: bool = False
    mixed: bool = False
    episode: str = ""
    step: int = 0
    layer: str = ""
    parts: tuple[str, ...] = ()
    product: str = ""
    maker: str = ""
    lot: str = ""
    amount: str = ""


def uses(case: Case) -> tuple[Use, ...]:
    """What was used in a case: step by step in their order, then the tests."""
    return (*_in_steps(case, ground(case)), *_in_tests(case, ground(case)))


def material_name(material: Maybe[Material]) -> str:
    """A material as written, the likeliest guess, or its mixture; "" where it is not said."""
    said = known(material)
    if said is None:
        return ""
    guesses = items(said.perhaps)
    return known(said.is_) or (guesses[0] if guesses else " + ".join(said.mix))


def touched(below: Ground, step: Step) -> tuple[str, ...]:
    """The parts a step worked on: what it names as its object and what that lies on."""
    places = [place for verb in VERBS[1:] for place in items(getattr(step, verb))]
    inside = known(step.in_thickness_of)
    onto = (*items(step.onto), *items(step.over), *items(step.to), *step.spans)
    bonded = (place for bond in items(step.bonds) for place in items(bond.onto))
    made = (step.adds,) if step.adds and known(step.is_) == "part" else ()
    within = (*items(step.soaks_in), *((inside,) if inside else ()), *made)
    return tuple(sorted(below.under((*places, *onto, *bonded, *within))))


def _in_steps(case: Case, below: Ground) -> Iterator[Use]:
    sitting, number = None, 0
    for one in placed(case):
        number = number + 1 if one.episode == sitting else 1
        sitting = one.episode
        for use in used_in(one.step, below):
            layer = one.step.adds or ""
            yield replace(use, episode=one.episode, step=number, layer=layer)


def used_in(step: Step, below: Ground) -> Iterator[Use]:
    """What one step used; the adhesive of one of several bonds only where that bond is."""
    parts = touched(below, step)
    for said in (step, *items(step.ways)):
        for name, role in _FIELDS:
            yield from _on(parts, _of(getattr(said, name), role))
    for bond in items(step.bonds):
        own = tuple(sorted(below.under(items(bond.onto)))) or parts
        yield from _on(own, _of(bond.adhesive, Role.ADHESIVE))
    bath = known(step.bath)
    for name, role in _BATH_FIELDS if bath else ():
        yield from _on(parts, _of(getattr(bath, name), role))


def _on(parts: tuple[str, ...], used: Iterable[Use]) -> Iterator[Use]:
    return (replace(use, parts=parts) for use in used)


def _in_tests(case: Case, below: Ground) -> Iterator[Use]:
    for test in items(case.tests):
        parts = tuple(sorted(below.under(items(test.part))))
        for agent in items(test.agent):
            yield from _on(parts, _of(agent, Role.TEST))


def _of(material: Maybe[Material], role: Role) -> Iterator[Use]:
    """Every material in one field: itself, the shares of a mixture, and its carrier."""
    if isinstance(material, Gap):
        yield from _nameless(material, role)
    elif material is not None:
        for use in _names(material, role):
            yield _labelled(use, material)
        yield from _of(material.carrier, Role.CARRIER)
        yield from _of(material.solvent, Role.SOLVENT)
        for part in items(material.built_of):
            yield from _of(part, role)
        if toned := known(material.toned):
            yield from (Use(word, Role.COLOUR) for word in items(toned.with_))


def _nameless(gap: Gap, role: Role) -> Iterable[Use]:
    """A material that was there, but of which nobody says what it was."""
    if gap.kind in (Unknowing.UNNAMED, Unknowing.UNKNOWN):
        yield Use(gap.kind.value, role, named=False)


def _names(material: Material, role: Role) -> Iterator[Use]:
    word = material.is_
    if isinstance(word, Gap):
        yield from _nameless(word, role)
    elif word:
        yield Use(word, role)
    for guess in items(material.perhaps):
        yield Use(guess, role, perhaps=True)
    for share in material.mix:
        yield Use(share, role, mixed=True)


def _labelled(use: Use, material: Material) -> Use:
    """A use with what is known of where its material came from."""
    return replace(
        use,
        product=known(material.product) or "",
        maker=known(material.maker) or "",
        lot=known(material.lot) or "",
        amount=known(material.amount) or "",
    )
