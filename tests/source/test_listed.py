"""A slip in one item of a list does not hide the others."""

from __future__ import annotations

import pytest

from casebook.model.archive import Case
from casebook.reading import read
from casebook.source import Mapping, Sequence, parse
from casebook.source.listed import by_item
from casebook.source.text import Source

STEPS = """\
steps:
  - {do: wash, treats: spine}
  - {do: line, adds: [lining}
  - do: press
    treats: spine
  - "photographed
care: lay it flat
"""


def test_the_steps_beside_a_broken_one_are_read_and_each_fault_is_told():
    parsed = parse(STEPS, "case.md")
    assert parsed.node is not None
    case, faults = read(Case, parsed.node, "test")
    assert not faults
    assert isinstance(case.steps, tuple)
    assert [step.do for step in case.steps] == ["wash", "press"]
    assert case.care == "lay it flat"
    assert [fault.span.line for fault in parsed.diagnostics if fault.span] == [3, 6]


def test_a_step_keeps_its_place_in_the_file():
    parsed = parse(STEPS, "case.md", first_line=2)
    assert isinstance(parsed.node, Mapping)
    steps = parsed.node.entries[0].value
    assert isinstance(steps, Sequence)
    assert [(one.span.line, one.span.column) for one in steps.items] == [(3, 5), (5, 5)]


@pytest.mark.parametrize(
    "text",
    [
        "steps: [1, {2\n",
        "care: |\n  - {a\n",
        "steps:\n  - {a\n",
        "steps:\n  a: {b\n  c: d\n",
        "steps:\n",
    ],
)
def test_what_is_no_list_or_holds_nothing_readable_is_left_to_others(text: str):
    assert by_item(Source(text, "case.md")) is None


def test_a_list_that_is_whole_is_left_to_others():
    assert by_item(Source("steps:\n  - a\n  - b\n", "case.md")) is None
