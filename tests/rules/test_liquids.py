"""What is wet in a step, where it reaches, and which tests tried the same."""

from __future__ import annotations

import pytest

from casebook.model.base import items
from casebook.rules.liquids import (
    fits,
    on,
    relied_on,
    text,
    tried_on,
    wet_work,
    wets,
    wetted,
    wetting,
)
from casebook.rules.look import Look
from tests.rules.written import look


def one_step(written: str, more: str = "") -> Look:
    return look(f"steps: [{written}]\nepisodes: []\n{more}")


@pytest.mark.parametrize(
    ("written", "count"),
    [
        ("{treats: leaf, agent: water}", 1),
        ("{treats: leaf, agent: ethanol}", 1),
        ("{treats: leaf, agent: rubber-sponge}", 0),
        ("{treats: leaf, bath: {liquid: water, conditioned: calcium-hydroxide}}", 2),
    ],
)
def test_water_and_solvents_wet_and_dry_cleaning_agents_do_not(written: str, count: int):
    seen = one_step(written)
    found = wetting(seen, seen.steps[0])
    assert len(found) == count
    assert all(wets(seen, one) for one in found)


@pytest.mark.parametrize(
    ("written", "wet"),
    [
        ("{do: wash, treats: leaf}", True),
        ("{do: float-wash, treats: leaf}", True),
        ("{do: dry-clean, treats: leaf}", False),
        ("{do: wash, treats: leaf, agent: none}", False),
        ("{do: bleach, treats: leaf, agent: hydrogen-peroxide}", False),
    ],
)
def test_an_operation_is_wet_by_its_name_where_no_agent_is_named(written: str, wet: bool):
    seen = one_step(written)
    assert wet_work(seen, seen.steps[0]) is wet


@pytest.mark.parametrize(
    ("agent", "test", "fit"),
    [
        ("water", "agent: water", True),
        ("water-vapour", "agent: water", True),
        ("acetone", "agent: acetone", True),
        ("acetone", "agent: solvent", True),
        ("acetone", "agent: ethanol", False),
        ("acetone", "agent: water", False),
        ("water", "agent: ethanol", False),
        ("water", "method: damp swab", True),
        ("water", "method: UV light", False),
    ],
)
def test_a_test_fits_what_it_tried(agent: str, test: str, fit: bool):
    step = f"{{treats: leaf, agent: {agent}}}"
    seen = one_step(step, f"tests: [{{id: one, part: leaf, {test}}}]")
    (made,) = items(seen.case.tests)
    assert fits(seen, made, wetting(seen, seen.steps[0])) is fit


def test_an_adhesive_wets_what_it_holds_together_and_an_agent_what_lies_below_too():
    seen = one_step("{puts-back: title-label, onto: spine, adhesive: paste}")
    assert wetted(seen, seen.steps[0])[1] == ("title-label", "spine")
    seen = one_step("{removes: old-glue, agent: water}")
    assert wetted(seen, seen.steps[0])[1] == ("old-glue", "spine")
    seen = one_step("{puts-back: title-label, onto: spine, adhesive: none}")
    assert wetted(seen, seen.steps[0]) == ((), ())


def test_a_step_goes_by_the_tests_it_names_and_those_of_what_it_touches():
    seen = one_step("{treats: leaf 2, agent: water}")
    assert [test.id for _, test in relied_on(seen)] == ["ink-holds"]
    seen = one_step("{treats: strap, agent: water, allowed-by: ink-holds}")
    assert [test.id for _, test in relied_on(seen)] == ["ink-holds"]
    assert list(relied_on(one_step("{treats: strap, agent: water}"))) == []
    seen = one_step("{treats: endband head, agent: water, allowed-by: ink-holds}")
    assert [test.id for _, test in relied_on(seen)] == ["ink-holds"]


def test_a_test_says_on_what_it_was_made():
    seen = look("tests: [{part: endband head, of: red silk, method: damp swab, result: bleeds}]")
    (made,) = items(seen.case.tests)
    assert tried_on(made) == "the red silk of `endband head`"
    assert text(made) == "red silk; damp swab; bleeds"
    assert on(seen, made, ["endband"])
