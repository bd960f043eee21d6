"""Summaries of cases and totals of an archive."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from casebook.compute.figures import total as add
from casebook.compute.summary import NO_TOTALS, Summary, summarise, total
from casebook.model.archive import Case, Kind
from casebook.model.base import schema
from tests.compute.random_cases import cases
from tests.compute.written import LEDGER, case


def pair(one: Case) -> tuple[Case, Summary]:
    return one, summarise(one, str)


@settings(max_examples=200, deadline=None)
@given(cases())
def test_no_half_written_case_raises(one: Case) -> None:
    assert total([pair(one)]).own.cases + total([pair(one)]).published.cases == 1


@settings(max_examples=30, deadline=None)
@given(st.lists(cases(), max_size=3), st.randoms())
def test_the_order_of_the_cases_never_changes_a_sum(every: list[Case], random) -> None:
    pairs = [pair(replace(one, id=f"case-{number}")) for number, one in enumerate(every)]
    shuffled = list(pairs)
    random.shuffle(shuffled)
    assert total(shuffled) == total(pairs)


@settings(max_examples=60, deadline=None)
@given(cases())
def test_linings_by_part_together_are_all_linings(one: Case) -> None:
    found = summarise(one, str).areas
    assert add(row.tally.bonded for row in found.by_part) == found.lining.bonded
    assert add(row.tally.now for row in found.by_part) == found.lining.now


def test_the_ledger_without_its_structure_has_no_linings_but_keeps_its_hours() -> None:
    whole = case(LEDGER)
    bare = {name: getattr(Case(), name) for name in structural(Case)}
    found = summarise(replace(whole, **bare), str)
    assert found.spines == ()
    assert found.hours.whole.bench.minutes.value == 255


def structural(kind: Any) -> list[str]:
    return [info.name for info in schema(kind).values() if info.structural]


def test_the_ledger_says_its_spine() -> None:
    spine = summarise(case(LEDGER), str).spines[0]
    assert spine.arc is not None
    assert spine.roundness is not None
    assert spine.arc.value == pytest.approx(75_443, abs=1)
    assert float(spine.roundness) == pytest.approx(14 / 68)


def test_an_operation_is_named_by_whoever_knows_the_vocabulary() -> None:
    found = summarise(case(LEDGER), {"line": "line-spine", "remove": "remove"}.__getitem__)
    assert [row.key for row in found.areas.by_operation] == ["line-spine"]
    assert found.areas.lining.bonded.value > 0


def test_published_cases_stay_out_of_the_labs_own_totals() -> None:
    own, other = case(LEDGER), replace(case(LEDGER), id="other", record=Kind.FROM_PUBLICATION)
    found = total([pair(own), pair(other)])
    assert found.own == total([pair(own)]).own
    assert found.published.hours.whole == found.own.hours.whole


def test_totals_add_hours_areas_and_materials_over_cases() -> None:
    one, two = case(LEDGER), replace(case(LEDGER), id="two")
    found = total([pair(one), pair(two)]).own
    assert found.cases == 2
    assert found.hours.whole.bench.minutes.value == 2 * 255
    assert found.hours.whole.bench.minutes.reasons == ("2 steps have no time",)
    assert found.areas.spine.bonded.value == 2 * summarise(one, str).areas.spine.bonded.value
    pva = next(use for use in found.materials if use.material == "pva")
    assert (pva.uses, pva.cases) == (2, 2)


def test_planned_is_set_against_actual_only_where_both_are_known() -> None:
    planned = replace(case("time: {estimated: 5 h}"), id="two")
    found = total([pair(case(LEDGER)), pair(planned)]).own.hours.plan
    assert found.planned is not None
    assert found.bench is not None
    assert (found.planned.value, found.bench.value) == (14 * 60, 255)


def test_an_archive_without_cases_has_empty_totals() -> None:
    assert total([]).own == NO_TOTALS
