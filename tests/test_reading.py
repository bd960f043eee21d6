"""Reading keeps everything: a fault is told with its place, and hides no other and no fact."""

from __future__ import annotations

import datetime
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook.compute.geometry import arc
from casebook.diagnostics import Diagnostic, Severity
from casebook.model.archive import Case, Kind, Standing, Status
from casebook.model.base import Audience, Gap, Record, Unknowing, items
from casebook.model.condition import Holding, Stage
from casebook.model.details import Fate, Grain, Hand, WentTo
from casebook.model.materials import Material
from casebook.model.object import Part
from casebook.model.proposal import Choice
from casebook.model.treatment import Episode, Step
from casebook.reading import did_you_mean, gap_from, outline, read
from casebook.source import Node, parse, read_document
from casebook.values.durations import Duration
from casebook.values.quantities import Count, Grammage, Length, Percent
from tests.model.sketches import CASE, EPISODE


def root(text: str) -> Node:
    node = parse(text, "case.md").node
    assert node is not None
    return node


def case_of(text: str) -> tuple[Case, tuple[Diagnostic, ...]]:
    return read(Case, root(text), "test")


def told(faults: tuple[Diagnostic, ...]) -> list[tuple[str, int, str]]:
    return [(one.rule, one.span.line if one.span else 0, one.hint) for one in faults]


def from_sketch(cls: type[Record], text: str) -> Record:
    document = read_document(text.encode(), "case.md")
    assert document.diagnostics == ()
    assert document.front is not None
    value, faults = read(cls, document.front, "test")
    assert faults == ()
    return value


@pytest.fixture(scope="module")
def case() -> Case:
    found = from_sketch(Case, CASE)
    assert isinstance(found, Case)
    return found


@pytest.fixture(scope="module")
def episode() -> Episode:
    found = from_sketch(Episode, EPISODE)
    assert isinstance(found, Episode)
    return found


def test_the_sketched_case_says_how_far_it_has_come_and_for_whom(case: Case):
    assert (case.id, case.title) == ("2031-007", "Lock-keeper's toll book")
    assert case.status == Status(is_=Standing.COMPLETE)
    assert (case.record, case.audience) == (Kind.AT_THE_BENCH, Audience.PUBLIC)
    assert list(case.people) == ["NO", "RT"]


def test_the_sketched_object_has_its_date_and_size(case: Case):
    assert case.object is not None
    assert not isinstance(case.object, Gap)
    (made,) = items(case.object.made)
    assert made.says == "owner"
    assert made.is_ is not None
    assert not isinstance(made.is_, Gap)
    assert made.is_.earliest_day() == datetime.date(1870, 1, 1)
    size = case.object.size
    assert size is not None
    assert not isinstance(size, Gap)
    assert (size.height, size.width) == (Length.parse("412.75 mm"), Length.parse("268 mm"))
    assert isinstance(size.thickness, Length)
    assert size.thickness.about


def test_the_sketched_spine_has_what_its_arc_is_computed_from(case: Case):
    spine = case.parts["spine"]
    assert isinstance(spine.width, Length)
    assert isinstance(spine.rise, Length)
    assert spine.width.exact == 68
    assert spine.rise.exact == 14
    # The same arc by another formula than the one in use: 2 r asin(c / 2r), for less than a half.
    radius = (34**2 + 14**2) / (2 * 14)
    by_sine = 2 * radius * math.asin(34 / radius)
    assert float(arc(spine.width.exact, spine.rise.exact)) == pytest.approx(by_sine)


def test_the_sketched_parts_nest(case: Case):
    assert case.parts["section"] == Part(count=Count.parse("52"))
    assert case.parts["strap"].parts["clasp"].material == Material(is_="brass")


def test_the_sketched_layers_keep_doubt_and_hold(case: Case):
    glue, stitches = items(case.as_found)
    assert isinstance(glue.material, Material)
    assert (glue.material.perhaps, glue.material.not_) == (("animal-glue",), ("bitumen",))
    assert (stitches.joins, stitches.held) == (("board 1", "text-block"), ("sewn",))


def test_the_sketched_findings_plan_and_care_are_there(case: Case):
    broken, sought = items(case.findings)
    assert (broken.damage, broken.means) == (("broken",), "board held by the pastedown only")
    assert (sought.sought, sought.found) == ("watermark", "not seen")
    assert case.proposal is not None
    assert not isinstance(case.proposal, Gap)
    (option,) = items(case.proposal.options)
    assert option.merits == "thin, weaker than the leather"
    assert (option.time, option.outcome) == (Duration.parse("14 h"), Choice.CHOSEN)
    assert items(case.follow_up)[0].state is Holding.SOUND
    assert items(case.photos)[0].stage is Stage.BEFORE


def test_the_sketched_case_says_in_bulk_what_is_not_known(case: Case):
    assert case.gaps == {"not recorded": ("time", "housing"), "not read": ("result",)}
    assert items(case.history)[0].hands == Gap(Unknowing.UNKNOWN)


def test_the_sketched_sitting_ran_over_a_night_under_initials_that_spell_no(episode: Episode):
    assert episode.hands == (Hand(who="NO"),)
    assert episode.episode == Count.parse("2")
    assert episode.date is not None
    assert not isinstance(episode.date, Gap)
    assert episode.date.nights() == 1


def test_the_sketched_steps_say_what_was_taken_off(episode: Episode):
    words, removal, *_ = items(episode.steps)
    assert words == Step(words="photographed the tooling, so that it can be made again")
    assert (removal.removes, removal.fate) == (("old-glue",), WentTo(is_=Fate.DISCARDED))
    assert isinstance(removal.agent, Material)
    carrier = Material(is_="methyl-cellulose", concentration=Percent.parse("4 %"))
    assert removal.agent.carrier == carrier
    assert (removal.agent.lasts, removal.agent.until) == (Duration.parse("20 min"), "softened")
    assert removal.time == Duration.parse("90 min")


def test_the_sketched_lining_dries_a_night(episode: Episode):
    lining = items(episode.steps)[2]
    weight = Grammage.parse("5 g/m²")
    assert lining.material == Material(is_="tengujo", weight=weight, lot="24-7")
    assert lining.grain is Grain.ALONG
    (drying,) = items(lining.dries)
    assert drying.under == ("release-sheet", "elastic-bandage")
    assert isinstance(drying.for_, Duration)
    assert (drying.for_.nights, drying.for_.exact) == (1, 0)
    assert items(lining.tried)[0].outcome is Choice.GIVEN_UP


def test_the_sketched_cloth_follows_a_recipe_over_three_parts(episode: Episode):
    cloth = items(episode.steps)[3]
    assert cloth.like == "overhang-lining"
    assert list(cloth.spans) == ["spine", "board 1", "board 2"]
    assert cloth.material == Material(is_="linen", damped=True)


def test_the_sketched_wash_counts_what_it_covers(episode: Episode):
    back, attached, wash = items(episode.steps)[4:]
    assert (back.allowed_by, back.except_) == (("red-bleeds",), "the silk, kept dry")
    assert attached.to == ("board 1", "board 2")
    assert wash.scope is not None
    assert not isinstance(wash.scope, Gap)
    assert (wash.scope.done, wash.scope.of) == (Count.parse("40"), Count.parse("52"))
    assert wash.scope.rest == Gap(Unknowing.NOT_RECORDED)


def test_an_unknown_key_is_kept_and_reported_with_what_may_be_meant():
    case, faults = case_of("id: a\ntitel: The Book\nobject: {hight: {is: tall, by: [a, b]}}")
    assert case.unknown == {"titel": "The Book"}
    assert case.object is not None
    assert not isinstance(case.object, Gap)
    assert case.object.unknown == {"hight": "{is: tall, by: [a, b]}"}
    assert told(faults) == [("unknown-key", 2, "did you mean `title`?"), ("unknown-key", 3, "")]
    assert {one.severity for one in faults} == {Severity.WARNING}


@pytest.mark.parametrize(
    ("key", "meant"), [("on", "onto"), ("glue", "adhesive"), ("hours", "time"), ("op", "do")]
)
def test_keys_that_others_would_write_are_answered(key: str, meant: str):
    _, faults = read(Step, root(f"{{adds: lining, {key}: spine}}"), "test")
    (one,) = faults
    assert f"`{meant}`" in one.hint


def test_a_fault_hides_neither_later_faults_nor_facts():
    text = (
        "status: finished\nobject: {size: {height: tall, width: 20 mm}}\n"
        "steps:\n  - {adds: a, time: soon, fate: eaten}\n  - [what]\n  - washed\ncare: dry\n"
    )
    case, faults = case_of(text)
    assert [(rule, line) for rule, line, _ in told(faults)] == [
        ("unknown-choice", 1),
        ("not-understood", 2),
        ("not-understood", 4),
        ("unknown-choice", 4),
        ("wrong-shape", 5),
    ]
    assert case.care == "dry"
    assert [(one.adds, one.words) for one in items(case.steps)] == [("a", None), (None, "washed")]


def test_a_key_that_could_not_be_read_keeps_its_place():
    step, _ = read(Step, root("{adds: a, time: soon}"), "test")
    assert step.time is None
    assert step.tells("time")
    assert step.span("time") != step.span()


def test_a_fault_within_a_value_points_at_the_part_that_is_wrong():
    step, faults = read(Step, root("{adds: a, adhesive: paste 140 %x}"), "test")
    (one,) = faults
    assert one.span is not None
    assert one.span.column > len("{adds: a, adhesive: ")
    assert isinstance(step.adhesive, Material)
    assert step.adhesive.is_ == "paste"


def test_a_key_without_a_value_is_told_and_a_quoted_nothing_is_not():
    _, faults = case_of('id: a\ncare:\nnote: ""\n')
    assert [(rule, line) for rule, line, _ in told(faults)] == [("empty-key", 2)]


@pytest.mark.parametrize("text", ["[a, b]", "just words"])
def test_a_case_that_is_no_group_of_keys_is_an_empty_case(text: str):
    case, faults = case_of(text)
    assert case == Case()
    assert [one.rule for one in faults] == ["wrong-shape"]
    assert case.span() is not None


@pytest.mark.parametrize(
    ("text", "gap"),
    [
        ("not recorded", Gap(Unknowing.NOT_RECORDED)),
        ("not read (the notes go on)", Gap(Unknowing.NOT_READ, "the notes go on")),
        ("unknown", Gap(Unknowing.UNKNOWN)),
        ("none (looked twice)", Gap(Unknowing.NONE, "looked twice")),
        ("unnamed", Gap(Unknowing.UNNAMED)),
        ("unknown glue", None),
        ("not recorded (page lost", None),
        ("", None),
    ],
)
def test_the_five_ways_of_not_knowing(text: str, gap: Gap | None):
    assert gap_from(text) == gap


def test_one_item_may_be_written_without_its_list():
    assert case_of("was: old-id")[0].was == case_of("was: [old-id]")[0].was == ("old-id",)


def test_a_near_word_is_named_and_a_far_one_is_not():
    assert did_you_mean("adhesiv", ["adhesive", "agent"]) == "did you mean `adhesive`?"
    assert did_you_mean("zebra", ["adhesive", "agent"]) == ""


def test_an_outline_keeps_the_text_of_all_it_holds():
    assert outline(root("{a: [b, {c: d}], e: f g}")) == "{a: [b, {c: d}], e: f g}"


@given(st.text())
def test_any_text_under_any_key_is_read_or_told(text: str):
    quoted = "'" + text.replace("'", "''") + "'"
    for key in ("status", "object", "dates", "people", "steps", "time", "gaps"):
        parsed = parse(f"id: a\n{key}: {quoted}\n", "case.md")
        if parsed.node is not None:
            _, faults = read(Case, parsed.node, "test")
            assert all(one.message and one.span for one in faults)
