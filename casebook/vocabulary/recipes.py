"""The lab's recipes, read from `vocabulary/recipes.yml` and filled into the steps that name one."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, replace
from typing import Any

from casebook.diagnostics import Diagnostic
from casebook.model.archive import Case
from casebook.model.base import items, known, walk
from casebook.model.treatment import Recipe, Step
from casebook.reading import read
from casebook.source import Mapping as MappingNode
from casebook.source import parse


def read_recipes(text: str, file: str) -> tuple[dict[str, Recipe], tuple[Diagnostic, ...]]:
    """The lab's recipes from `vocabulary/recipes.yml`, by id."""
    parsed = parse(text, file)
    found: dict[str, Recipe] = {}
    faults = list(parsed.diagnostics)
    for entry in parsed.node.entries if isinstance(parsed.node, MappingNode) else ():
        found[entry.key.text], more = read(Recipe, entry.value, "")
        faults.extend(more)
    return found, tuple(faults)


def with_recipes(case: Case, recipes: Mapping[str, Recipe]) -> Case:
    """The case with what its steps leave unsaid taken from the recipes they name."""
    episodes = items(case.episodes)
    if not any(isinstance(one, Step) and one.like for one in walk(case)):
        return case
    filled = tuple(replace(one, steps=_filled(one.steps, recipes)) for one in episodes)
    return replace(case, episodes=filled, steps=_filled(case.steps, recipes))


def _filled(steps: Any, recipes: Mapping[str, Recipe]) -> Any:
    if not isinstance(steps, tuple):
        return steps
    return tuple(_whole(step, recipes) for step in steps)


def _whole(step: Step, recipes: Mapping[str, Recipe]) -> Step:
    """A step filled from its recipe, and so are the steps of a run."""
    if step.each:
        return replace(step, steps=_filled(step.steps, recipes))
    recipe = recipes.get(known(step.like) or "")
    return _fill(step, recipe.step) if recipe else step


def _fill(step: Step, recipe: Step) -> Step:
    """A step with the fields it leaves out taken from a recipe, and told apart as assumed."""
    own = {"places", "unknown", "assumed"}
    given = {one.name: getattr(recipe, one.name) for one in fields(recipe) if one.name not in own}
    taken = {name: value for name, value in given.items() if value and not step.tells(name)}
    return replace(step, **taken, assumed=tuple(taken))
