"""What is wet in a step, which places it reaches, and which tests tried the same."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from casebook.model.base import Gap, items, known
from casebook.model.condition import Test
from casebook.model.materials import Material
from casebook.model.treatment import Step
from casebook.rules.look import Look
from casebook.rules.matter import adhesives, agents, ids, solvents, water_borne
from casebook.rules.touch import any_meets, stuck, touched

_WET_WORK = frozenset({"wet-clean", "humidify", "poultice", "soak-off", "enzyme-treat", "bleach"})
"""Operations that are wet even where the record names no agent."""

_WATER = re.compile(r"\b(?:water|damp|droplet|drop|wet|moist|vapou?r|saliva|spit|bath)", re.I)


def wetting(look: Look, step: Step) -> tuple[Material, ...]:
    """The agents of a step that wet what they touch: water in any form, and solvents."""
    return tuple(one for one in agents(step) if wets(look, one))


def wets(look: Look, material: Material) -> bool:
    """Whether a material is, or brings with it, water or a solvent."""
    return water_borne(look, material) or bool(solvents(look, material))


def wet_work(look: Look, step: Step) -> bool:
    """Whether a step is wet by the name of its operation, where it names no agent at all."""
    word = known(step.do)
    dry = isinstance(step.agent, Gap) or any(True for _ in agents(step))
    return bool(word) and not dry and bool(ids(look, "operations", word or "") & _WET_WORK)


def fits(look: Look, test: Test, liquids: tuple[Material, ...]) -> bool:
    """Whether a test tried the same: water in any form, or the same solvent, or one unnamed."""
    tried = items(test.agent)
    wet = any(water_borne(look, one) for one in liquids) or not liquids
    if wet and any(water_borne(look, one) for one in tried):
        return True
    if wet and not tried and _WATER.search(text(test)):
        return True
    ours = {name for one in liquids for name in solvents(look, one)}
    theirs = {name for one in tried for name in solvents(look, one)}
    unnamed = bool(ours and theirs) and "solvent" in ours | theirs
    return unnamed or bool(ours & theirs)


def text(test: Test) -> str:
    """What a test says in words: of what it was made, how, and what came of it."""
    said = (known(test.of), known(test.method), known(test.result))
    return "; ".join(one for one in said if one)


def wetted(look: Look, step: Step) -> tuple[tuple[Material, ...], tuple[str, ...]]:
    """What wets in a step, and the places it reaches; an adhesive wets what it holds together."""
    liquids = wetting(look, step)
    pastes = tuple(one for one in adhesives(step) if wets(look, one))
    reached = touched(look, step) if liquids or wet_work(look, step) else ()
    return (*liquids, *pastes), (*reached, *(stuck(step) if pastes else ()))


def relied_on(look: Look) -> Iterator[tuple[Step, Test]]:
    """Each wet step with each test that it goes by: those it names, else those of what it wets."""
    for step in look.steps:
        wet, places = wetted(look, step)
        names = items(step.allowed_by)
        for test in items(look.case.tests) if wet else ():
            gone = any(part in items(step.removes) for part in items(test.part))
            chosen = test.id in names if names else on(look, test, places)
            if chosen and not gone and fits(look, test, wet):
                yield step, test


def on(look: Look, test: Test, places: Iterable[str]) -> bool:
    """Whether a test was made on what some places are, or on what lies in them."""
    return any_meets(look, items(test.part), places)


def tried_on(test: Test) -> str:
    """What a test was made on, in words: the red silk of `endband head`."""
    part = " and ".join(items(test.part))
    thing = known(test.of)
    return f"the {thing} of `{part}`" if thing and part else f"`{part or thing}`"
