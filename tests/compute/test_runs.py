"""Runs of steps: written once for several members, told member by member."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook.compute.runs import (
    COUNTED_ELSEWHERE,
    Done,
    as_for,
    inner_steps,
    own_names,
    shared,
    unrolled,
    unsaid,
)
from casebook.model.base import Gap, Unknowing, items
from casebook.model.treatment import Step
from casebook.values.durations import Duration
from tests.model.reads import reads


def run(text: str) -> Step:
    return reads(Step, text)


def told(text: str, *outside: str) -> list[Step]:
    return [one.step for one in unrolled(run(text), outside)]


def test_a_step_is_done_on_every_member_before_the_next_one():
    steps = told(
        "{each: [volume 3, volume 4], steps: [{do: clean, treats: spine}, {do: press, treats: each}]}"
    )
    assert [(step.do, step.treats) for step in steps] == [
        ("clean", ("volume 3/spine",)),
        ("clean", ("volume 4/spine",)),
        ("press", ("volume 3",)),
        ("press", ("volume 4",)),
    ]


@pytest.mark.parametrize(
    ("place", "becomes"),
    [
        ("spine", "volume 3/spine"),
        ("each", "volume 3"),
        ("each/inner", "volume 3/inner"),
        ("lining", "volume 3/lining"),
        ("lining/verso", "volume 3/lining/verso"),
        ("volume 3/board 1", "volume 3/board 1"),
        ("the-box", "the-box"),
    ],
)
def test_a_place_becomes_the_member_s_own(place: str, becomes: str):
    text = f"{{each: [volume 3], steps: [{{adds: lining, onto: spine}}, {{treats: {place}}}]}}"
    assert told(text, "the-box")[-1].treats == (becomes,)


def test_a_layer_added_in_a_run_has_a_name_for_each_member():
    text = "{each: [a, b], steps: [{adds: lining, spans: {spine: 30 mm}, bonds: [{onto: spine}]}]}"
    first, second = told(text)
    assert (first.adds, second.adds) == ("a/lining", "b/lining")
    assert list(first.spans) == ["a/spine"]
    assert items(second.bonds)[0].onto == ("b/spine",)


def test_a_run_within_a_run_is_told_in_its_turn():
    text = "{each: [a, b], steps: [{each: [x, y], steps: [{treats: each}, {treats: spine}]}]}"
    assert [step.treats for step in told(text)] == [
        ("a/x",), ("a/y",), ("a/x/spine",), ("a/y/spine",),
        ("b/x",), ("b/y",), ("b/x/spine",), ("b/y/spine",),
    ]  # fmt: skip


def test_in_a_run_within_a_run_a_layer_of_the_outer_one_is_the_member_s():
    text = (
        "{each: [a], steps: [{adds: lining, onto: spine}, {each: [x], steps:"
        " [{adds: patch, onto: lining}, {treats: patch}]}]}"
    )
    steps = told(text)
    assert [step.adds for step in steps] == ["a/lining", "a/x/patch", None]
    assert (steps[1].onto, steps[2].treats) == (("a/lining",), ("a/x/patch",))


def test_in_a_run_within_a_run_the_times_of_its_steps_are_all_counted():
    text = (
        "{each: [a, b], steps: [{each: [x, y], steps:"
        " [{do: clean, treats: each, time: 1 h all}, {do: press, treats: each, time: 2 h all}]}]}"
    )
    times = [str(step.time) for step in told(text) if step.time != COUNTED_ELSEWHERE]
    assert times == ["1 h all", "2 h all"] * 2


def test_a_member_may_be_left_out_of_a_step_or_have_another():
    text = (
        "{each: [a, b, c], steps: [{do: line, adds: lining, onto: spine, material: linen}],"
        " differs: [{in: b, step: lining, left-out: yes}, {in: c, step: line, instead: {material: silk}}]}"
    )
    assert [(step.adds, step.material) for step in told(text)] == [
        ("a/lining", reads(Step, "{material: linen}").material),
        ("c/lining", reads(Step, "{material: silk}").material),
    ]


def test_a_time_for_all_is_counted_with_the_first_member_and_nowhere_else():
    text = (
        "{each: [a, b], steps: [{do: wash, treats: each, time: 2 h all, waits: 5 min each,"
        " dries: [1 h all, overnight each], hands: [{who: AM, time: 2 h all}],"
        " tried: [{what: salt, time: 1 h all}]}]}"
    )
    first, second = unrolled(run(text))
    assert first.siblings == (second.step,)
    assert second.step.time == COUNTED_ELSEWHERE
    assert str(second.step.waits) == "5 min each"
    dryings = [one.for_ for one in items(second.step.dries)]
    assert (dryings[0], str(dryings[1])) == (COUNTED_ELSEWHERE, "overnight each")
    assert items(second.step.hands)[0].time == COUNTED_ELSEWHERE
    assert items(second.step.tried)[0].time == COUNTED_ELSEWHERE


def test_a_time_for_each_is_counted_with_each():
    text = "{each: [a, b], steps: [{do: wash, treats: each, time: 20 min each}]}"
    assert [one.siblings for one in unrolled(run(text))] == [(), ()]
    assert [str(step.time) for step in told(text)] == ["20 min each"] * 2


def test_an_exception_finds_its_step_by_what_it_adds_its_operation_or_its_number():
    whole = run(
        "{each: [a], steps: [{do: clean, treats: each}, {do: line, adds: lining, onto: spine}],"
        " differs: [{in: a, step: lining, instead: {onto: board}}, {in: a, step: clean}, {in: a, step: '3'}]}"
    )
    steps = items(whole.steps)
    lining, clean, none = (as_for(one, steps) for one in items(whole.differs))
    assert lining and lining[1] and (lining[0], lining[1].onto) == (2, ("board",))
    assert clean == (1, None)
    assert none is None


def test_the_steps_as_written_and_the_names_they_add():
    whole = run(
        "{each: [a], steps: [{adds: one, onto: spine}, {each: [x], steps: [{adds: two, onto: each}]}]}"
    )
    assert [step.adds for step in inner_steps([whole, Step(words="after")])] == ["one", "two", None]
    assert own_names(whole) == {"one", "two"}


def test_a_time_that_says_neither_each_nor_all_is_named():
    assert unsaid(run("{do: wash, time: 20 min, waits: 5 min each, dries: overnight}")) == (
        "time",
        "dries",
    )
    assert unsaid(run("{do: wash, time: 20 min all}")) == ()


def test_only_a_time_for_each_is_not_shared():
    assert shared(Duration.parse("20 min"))
    assert shared(Duration.parse("20 min all"))
    assert not shared(Duration.parse("20 min each"))
    assert not shared(Gap(Unknowing.NOT_RECORDED))


MEMBERS = st.lists(st.sampled_from(["a", "b", "c", "d"]), unique=True, max_size=4)
VERBS = st.lists(st.sampled_from(["clean", "press", "wash"]), unique=True, max_size=3)


@given(MEMBERS, VERBS)
def test_every_step_is_told_once_for_every_member(members: list[str], verbs: list[str]):
    steps = tuple(Step(do=verb, treats=("spine",)) for verb in verbs)
    found = list(unrolled(Step(each=tuple(members), steps=steps)))
    assert len(found) == len(members) * len(verbs)
    assert {(one.step.do, one.step.treats) for one in found} == {
        (verb, (f"{member}/spine",)) for verb in verbs for member in members
    }
    assert all(isinstance(one, Done) and one.siblings == () for one in found)
