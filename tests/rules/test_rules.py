"""Every rule's own examples, and what holds for all rules together."""

from __future__ import annotations

import re

import pytest
from hypothesis import HealthCheck, given, settings

from casebook.audiences import redact
from casebook.diagnostics import Severity
from casebook.model.archive import Case
from casebook.model.base import Audience
from casebook.reading import read
from casebook.rules import ALL, NAMED, gaps, run
from casebook.rules.declare import Rule
from casebook.rules.fields import field
from casebook.source import parse
from tests.compute.random_cases import cases
from tests.rules.written import TODAY, archive, case, messages

each_rule = pytest.mark.parametrize("rule", ALL, ids=lambda rule: rule.name)


@each_rule
def test_a_rule_is_raised_by_its_first_example_and_not_by_its_second(rule: Rule):
    assert messages(rule, rule.raises)
    assert messages(rule, rule.passes) == []


@each_rule
def test_a_rule_reads_fields_that_the_schema_has(rule: Rule):
    assert rule.fields
    assert all(field(name) for name in rule.fields)


@each_rule
def test_a_rule_says_in_one_sentence_what_it_asks_and_why_and_by_whose_word(rule: Rule):
    assert re.fullmatch(r"[A-Z].*\.", rule.what)
    assert re.fullmatch(r"[A-Z].*\.", rule.why)
    assert rule.source
    assert rule.gap == "" or re.fullmatch(r"[A-Z][^`]*\.", rule.gap)


def test_no_two_rules_share_a_name():
    assert len(NAMED) == len(ALL)


def checked(one: Case):
    return run(archive(one), TODAY, {one.id: "the-folder"})


def test_a_complete_case_passes_every_rule():
    assert checked(case()) == ()


def test_a_diagnostic_names_the_rule_the_place_and_the_folder():
    (found,) = checked(case("written: {by: AM, date: 2025-04-03}"))
    assert (found.rule, found.severity) == ("purpose-of-record", Severity.ERROR)
    assert found.span is not None
    assert found.span.file == "case.md"
    assert found.case == "the-folder"


BARE = "id: bare\ntitle: Bare\nobject: {kind: ledger}\n"


def bare(more: str) -> Case:
    node = parse(BARE + more, "case.md").node
    assert node is not None
    return read(Case, node, "bare")[0]


def worst(one: Case) -> Severity:
    return max(found.severity for found in checked(one))


@pytest.mark.parametrize("status", ["undecided", "proposed", "in-treatment"])
def test_a_draft_is_nagged_and_never_stops_a_build(status: str):
    assert worst(bare(f"status: {status}")) is Severity.WARNING


def test_a_finished_bench_record_that_says_nothing_is_in_error():
    assert worst(bare("status: complete")) is Severity.ERROR


@pytest.mark.parametrize("kind", ["from-notes", "from-publication"])
def test_an_old_record_passes_with_suggestions_and_its_gaps_are_listed(kind: str):
    old = bare(f"status: complete\nrecord: {kind}\naudience: public")
    assert worst(old) is Severity.SUGGESTION
    assert "The record does not say who wrote it." in shown(old, Audience.PUBLIC)


def test_in_bulk_an_old_record_says_what_nobody_wrote_down():
    old = "status: complete\nrecord: from-notes\nobject: {kind: ledger}\n"
    bulk = old + "gaps: {not recorded: [housing, history]}"
    before = {one.rule for one in checked(bare(old))}
    after = {one.rule for one in checked(bare(bulk))}
    assert before - after == {"housing-on-arrival", "past-treatment"}


def shown(one: Case, audience: Audience) -> tuple[str, ...]:
    redacted = redact(archive(one), audience, "harbour")
    (seen,) = redacted.archive.cases
    return gaps(seen, redacted.archive, audience)


def test_a_complete_case_has_no_gaps_for_anybody():
    for audience in Audience:
        assert shown(case("client: harbour"), audience) == ()


def test_what_is_said_to_be_unknown_is_a_gap_for_readers_and_no_fault():
    one = case("object: {kind: ledger, housing: unknown}")
    assert checked(one) == ()
    assert shown(one, Audience.PUBLIC) == (
        "The record does not say what the object came in, or what came with it.",
    )


def test_no_gap_is_listed_that_rests_on_what_an_audience_may_not_see():
    for audience in Audience:
        one = bare("client: harbour\naudience: public\nstatus: complete")
        hidden = {
            rule.gap
            for rule in ALL
            if not all(audience.may_see(field(name).seen) for name in rule.fields)
        }
        assert not set(shown(one, audience)) & (hidden - {""})


def test_where_the_structure_is_withheld_no_gap_speaks_of_it():
    one = case("# no reversibility")
    (seen,) = redact(archive(one), Audience.PUBLIC).archive.cases
    assert any("taken off" in gap for gap in gaps(seen, archive(one), Audience.PUBLIC))
    assert gaps(seen, archive(one), Audience.PUBLIC, withheld=True) == ()


FLOODED = """
id: flooded
title: Pilot book after the flood
status: complete
audience: public
client: harbor
people: {AM: conservator}
dates: {received: 2025-05-02, examined: 2025-04-01}
object: {kind: leger, made: 1805-12}
as-found: [{id: old-glue, onto: spine, origin: later}]
findings:
  - {part: spine, means: it stood in the river}
  - {part: board 1, damage: mould}
hazards: [mould]
proposal:
  options: [{name: dry and reback}]
  decided: {by: [keeper]}
  changes: [{what: new boards}]
episodes:
  - date: 2999-05-09
    hands: [XY]
    steps:
      - {removes: old-glue, adds: patch, onto: spin, material: the usual cloth, adhesive: pva}
      - {adds: patch, onto: spine, like: house-lining}
      - {material: linen}
  - steps: [washed the leaves]
photos:
  - {file: a.jpg, stage: before, view: spine}
  - {file: b.jpg, stage: after, view: front}
"""


def test_one_flooded_case_is_told_everything_plainly(golden):
    node = parse(FLOODED, "case.md").node
    assert node is not None
    one, faults = read(Case, node, "flooded")
    assert not faults
    found = sorted(checked(one), key=lambda told: (told.span.line, told.span.column, told.rule))
    lines = [
        f"{one.span.line}:{one.span.column} {one.severity.word} {one.rule}\n"
        f"  {one.message}\n  {one.hint}"
        for one in found
    ]
    golden("rules/flooded.txt", "\n".join(lines) + "\n")


@given(cases())
@settings(max_examples=60, suppress_health_check=[HealthCheck.too_slow])
def test_no_case_however_half_written_makes_a_rule_raise(one: Case):
    assert all(told.message for told in checked(one))
    for audience in Audience:
        gaps(one, archive(one), audience)
