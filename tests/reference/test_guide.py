"""The guide "Writing a case": its blocks read, its pairs are alike, its example passes the check."""

from __future__ import annotations

import datetime
import re
from pathlib import Path
from typing import TypeVar

import pytest
from PIL import Image

from casebook import flow
from casebook.compute.summary import summarise
from casebook.compute.uses import uses
from casebook.diagnostics import Severity
from casebook.model.archive import Case
from casebook.model.base import Record, schema, walk
from casebook.model.treatment import Step
from casebook.reading import gap_from, read
from casebook.rules import NAMED
from casebook.source import Mapping, parse, read_document
from casebook.terminal import render
from tests.reference.committed import ROOT

R = TypeVar("R", bound=Record)

GUIDE = (ROOT / "docs/writing-a-case.md").read_text("utf-8")
TODAY = datetime.date(2026, 6, 1)
BLOCKS = re.findall(r"^```yaml\n(.*?)^```$", GUIDE, re.MULTILINE | re.DOTALL)
WRONG = re.findall(r"^```yaml wrong\n(.*?)^```$", GUIDE, re.MULTILINE | re.DOTALL)
TOLD = re.findall(r"^```text\n(.*?)^```$", GUIDE, re.MULTILINE | re.DOTALL)
PAIRS = re.findall(r"^\| `(.+?)` \| `(.+?)` \|$", GUIDE, re.MULTILINE)
INLINE = re.findall(r"`([a-z-]+: [^`]+|\{[^`]+\})`", GUIDE)
WAYS = re.findall(r"^\| `([a-z ]+)` \| .+ \| .+ \|$", GUIDE, re.MULTILINE)
EXAMPLE = next(one for one in BLOCKS if one.startswith("---\n") and "status: complete" in one)


def front(block: str) -> Mapping:
    """The keys of a block: a whole file, or what stands between its dashes."""
    node = read_document(block.encode(), "case.md").front if block.startswith("---") else None
    found = node or parse(block, "case.md").node
    assert isinstance(found, Mapping)
    return found


def said(cls: type[R], text: str) -> R:
    parsed = parse(f"{text}\n", "case.md")
    assert parsed.node is not None
    assert not parsed.diagnostics
    found, faults = read(cls, parsed.node, "case.md")
    assert not faults
    assert not found.unknown
    return found


def type_of(text: str) -> type[Record]:
    """Where a key of the guide belongs: in the case itself, or else in a step."""
    return Case if text.partition(":")[0] in schema(Case) else Step


@pytest.mark.parametrize("block", BLOCKS)
def test_every_block_reads_without_a_fault_and_every_key_is_known(block):
    if not block.startswith("---"):
        assert not parse(block, "case.md").diagnostics
    found, faults = read(Case, front(block), "case.md")
    assert not faults
    assert not any(one.unknown for one in walk(found))


def test_there_is_something_of_each_kind_to_test():
    assert len(BLOCKS) >= 7
    assert len(PAIRS) >= 15
    assert len(WRONG) == len(TOLD) == 1
    assert len(WAYS) == 5


@pytest.mark.parametrize(("short", "long"), PAIRS)
def test_the_short_form_reads_as_the_long_one(short, long):
    cls = type_of(short)
    assert said(cls, short) == said(cls, long)
    assert short != long


@pytest.mark.parametrize("way", WAYS)
def test_each_way_of_not_knowing_is_one_of_the_reader(way):
    gap = gap_from(f"{way} (page lost)")
    assert gap is not None
    assert (gap.kind.value, gap.reason) == (way, "page lost")


@pytest.mark.parametrize(
    ("way", "least"),
    [("not recorded", True), ("not read", True), ("unknown", True), ("none", False)],
)
def test_what_follows_from_not_knowing_is_what_the_guide_says(way, least):
    case = said(Case, f"steps: [{{do: line, time: 1 h}}, {{do: press, time: {way}}}]")
    bench = summarise(case, str).hours.whole.bench.minutes
    assert (bench.value, bench.at_least) == (60, least)


def test_an_adhesive_that_nobody_names_was_used():
    (use,) = uses(said(Case, "steps: [{adds: patch, onto: leaf, adhesive: unnamed}]"))
    assert (use.material, use.named) == ("unnamed", False)


def test_the_run_of_the_guide_takes_three_hours_and_two_times_forty_minutes():
    # 3 h for all together; 40 min each for volumes 1 and 3, since volume 2 was left out
    block = next(one for one in BLOCKS if "differs:" in one)
    bench = summarise(said(Case, block), str).hours.whole.bench.minutes
    assert (bench.value, bench.at_least) == (180 + 2 * 40, False)


def test_the_message_shown_is_the_one_that_the_check_gives():
    (block,), (message,) = WRONG, TOLD
    lines = block.splitlines()
    found = [*parse(block, "case.md").diagnostics]
    text = render(found, lambda _: lines, False)
    assert message.strip() in text


@pytest.mark.parametrize(
    ("trap", "rule"),
    [
        ("findings: [{seen: cords broken, tail loose}]", "comma-in-text"),
        ("note: in ink: do not wash", "yaml"),
        ("note: see folder #3", "hash-in-text"),
        ("steps:\n\t- do: line", "tab"),
    ],
)
def test_each_trap_is_told_and_its_way_out_reads(trap, rule):
    assert rule in {one.rule for one in parse(f"{trap}\n", "case.md").diagnostics}


def test_what_other_readers_of_yaml_would_turn_stays_as_written():
    case = said(Case, "id: 010\npeople: {NO: {role: conservator}}\nnote: 1:20")
    assert (case.id, list(case.people), case.note) == ("010", ["NO"], "1:20")


def test_rules_and_keys_named_in_the_text_exist():
    assert set(re.findall(r"casebook explain ([a-z-]+)", GUIDE)) <= set(NAMED)
    for text in INLINE:
        assert not parse(f"x: {text}" if text.startswith("{") else text, "case.md").diagnostics


def test_links_lead_to_files_that_are_there():
    for target in re.findall(r"\]\(([^)#]+)\)", GUIDE):
        assert (ROOT / "docs" / target).is_file(), target


@pytest.fixture
def archive(tmp_path: Path) -> Path:
    """An archive that holds the guide's example, with its four pictures."""
    folder = tmp_path / "cases/2026-007-bell-ringers-notebook"
    (folder / "photos").mkdir(parents=True)
    (tmp_path / "lab.yml").write_text("format: 1\nname: An invented studio\n", "utf-8")
    (folder / "case.md").write_text(EXAMPLE, "utf-8")
    for n, name in enumerate(("before", "bare", "tissue", "after")):
        picture = Image.new("L", (64, 64), 240)
        picture.paste(20, (16 * n, 8 * n, 16 * n + 16, 8 * n + 32))
        picture.save(folder / "photos" / f"{name}.jpg")
    return tmp_path


def test_against_the_whole_example_the_check_has_nothing_to_say(archive):
    assert flow.check(flow.load(archive), TODAY) == ()


def test_the_smallest_case_passes_too(archive):
    small = next(one for one in BLOCKS if len(front(one).entries) == 2 and "title" in one)
    record = archive / "cases/2026-007-bell-ringers-notebook/case.md"
    record.write_text(f"---\n{small}---\n", "utf-8")
    found = flow.check(flow.load(archive), TODAY)
    assert [str(one) for one in found if one.severity is Severity.ERROR] == []
