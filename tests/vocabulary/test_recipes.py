"""A step takes from the recipe it names what it does not say itself, and says what it took."""

from __future__ import annotations

from casebook.model.archive import Case
from casebook.model.treatment import Step
from casebook.vocabulary.recipes import read_recipes, with_recipes

TEXT = """
overhang-lining:
  gloss: "A cloth that laps over both boards."
  step: {do: line, material: {is: linen, damped: yes}, grain: along}
"""


def test_what_a_step_leaves_out_comes_from_its_recipe() -> None:
    recipes, faults = read_recipes(TEXT, "vocabulary/recipes.yml")
    assert faults == ()
    case = with_recipes(Case(steps=(Step(adds="cloth", like="overhang-lining"),)), recipes)
    assert isinstance(case.steps, tuple)
    step = case.steps[0]
    assert step.do == "line"
    assert step.assumed == ("do", "material", "grain")


def test_what_a_step_says_itself_stays() -> None:
    recipes, _ = read_recipes(TEXT, "vocabulary/recipes.yml")
    case = with_recipes(Case(steps=(Step(do="guard", like="overhang-lining"),)), recipes)
    assert isinstance(case.steps, tuple)
    assert case.steps[0].do == "guard"
    assert "do" not in case.steps[0].assumed


def test_a_step_that_names_an_unknown_recipe_is_left_as_it_is() -> None:
    step = Step(do="guard", like="nobody's")
    assert with_recipes(Case(steps=(step,)), {}).steps == (step,)
