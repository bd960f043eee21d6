"""What lies there at the end is replayed step by step."""

from __future__ import annotations

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from casebook.compute.layers import replay
from casebook.compute.presence import Presence, presence
from casebook.model.treatment import Step
from casebook.vocabulary import Lexicon, builtin
from tests.compute.layers.random_treatments import layings, of, undone
from tests.compute.written import case


def states(steps: str) -> dict[str, str]:
    one = case(f"steps: [{{adds: a, onto: spine}}, {{adds: b, onto: a}}, {steps}]")
    return {layer: state.value for layer, state in presence(one).items()}


def test_what_lies_on_a_removed_layer_goes_with_it() -> None:
    assert states("{removes: a}") == {"a": "gone", "b": "gone"}


def test_what_also_lies_elsewhere_stays() -> None:
    found = states("{adds: c, onto: a, spans: {spine: 5 mm, board 1: 3 mm}}, {removes: a}")
    assert found["c"] == Presence.THERE


def test_what_is_put_back_brings_back_what_it_carried() -> None:
    assert states("{takes-off: a}") == {"a": "gone", "b": "gone"}
    assert states("{takes-off: a}, {puts-back: a}") == {"a": "there", "b": "there"}


def test_a_part_that_is_taken_off_keeps_its_layers() -> None:
    assert states("{takes-off: spine}") == {"a": "there", "b": "there"}


def test_a_zone_or_a_rest_is_partly_there() -> None:
    assert states("{removes: b/board 1}")["b"] == Presence.PARTLY
    assert states("{removes: b, outcome: partly}")["b"] == Presence.PARTLY
    assert states("{removes: b, leaves: b}")["b"] == Presence.PARTLY
    assert states("{removes: b, leaves: none}")["b"] == Presence.GONE


def test_a_removal_that_was_given_up_removes_nothing() -> None:
    assert states("{removes: b, outcome: given-up}")["b"] == Presence.THERE


def test_what_was_never_laid_is_not_among_them_and_what_is_made_lies_there() -> None:
    assert "c" not in states("{adds: c, onto: a, outcome: given-up}")
    assert states("{adds: c, over: spine, is: part}")["c"] == Presence.THERE


def test_a_temporary_layer_is_gone_be_it_removed_or_not() -> None:
    assert states("{adds: c, onto: spine, temporary: yes}")["c"] == Presence.GONE


def test_one_zone_taken_off_leaves_the_layer_partly_there() -> None:
    zones = "{adds: c, onto: [spine, board 1], adhesive: x}, {takes-off: c/board 1}"
    assert states(zones)["c"] == Presence.PARTLY
    assert states(f"{zones}, {{puts-back: c/board 1}}")["c"] == Presence.THERE


@given(layings(), st.integers(0, 24))
@settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))
def test_a_replay_with_the_words_of_the_vocabulary_comes_to_the_same(
    steps: list[Step], done: int
) -> None:
    one = of(undone(steps)[:done])
    assert presence(one, replay(one, Lexicon(builtin()))) == presence(one)


def test_in_a_run_each_member_has_its_own() -> None:
    text = "{each: [volume 1, volume 2], steps: [{adds: c, onto: spine}]}, {removes: volume 2/c}"
    found = states(text)
    assert (found["volume 1/c"], found["volume 2/c"]) == (Presence.THERE, Presence.GONE)
