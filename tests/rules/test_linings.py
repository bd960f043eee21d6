"""Linings: grain from head to tail, short of the ends, held on the whole curve."""

from __future__ import annotations

import pytest

from casebook.rules import NAMED
from tests.rules.written import messages

ALONG = NAMED["grain-head-to-tail"]
SAID = NAMED["grain-said"]
MIXED = NAMED["grain-not-mixed"]
ENDS = NAMED["lining-short-of-ends"]
CURVE = NAMED["contact-on-a-curve"]


def lining(material: str, more: str = "", onto: str = "spine") -> str:
    return f"steps: [{{adds: p, onto: {onto}, material: {material}, adhesive: paste{more}}}]\n"


@pytest.mark.parametrize("onto", ["spine", "board 1/inner"])
def test_the_grain_of_a_spine_or_board_lining_runs_from_head_to_tail(onto: str):
    assert messages(ALONG, lining("linen", ", grain: across", onto))
    assert messages(ALONG, lining("linen", ", grain: along", onto)) == []


@pytest.mark.parametrize(
    ("material", "more", "onto"),
    [
        ("linen", ", grain: across, because: crossed over the first", "spine"),
        ("kozo-paper", ", grain: across", "spine"),
        ("linen", ", grain: across", "sheet"),
        ("linen", "", "spine"),
    ],
)
def test_crossed_on_purpose_made_by_hand_or_elsewhere_is_let_pass(material, more, onto):
    assert messages(ALONG, lining(material, more, onto)) == []


def test_a_lining_over_a_lining_lies_on_the_spine_too():
    text = (
        "steps: [{adds: a, onto: spine, material: tengujo, adhesive: paste}, "
        "{adds: b, onto: a, material: linen, adhesive: paste, grain: across}]"
    )
    assert messages(ALONG, text) == [
        "the grain of `b` runs across the spine, not from head to tail"
    ]


@pytest.mark.parametrize("material", ["linen", "machine-made-paper", "manila-card"])
def test_what_has_a_grain_is_asked_for_it(material: str):
    assert messages(SAID, lining(material)) == ["which way does the grain of `p` run?"]
    assert messages(SAID, lining(material, ", grain: along")) == []


@pytest.mark.parametrize("material", ["kozo-paper", "tengujo", "handmade-paper", "calf"])
def test_hand_made_paper_and_leather_are_not(material: str):
    assert messages(SAID, lining(material)) == []


def test_neither_is_an_old_record_nor_a_mend_on_a_leaf():
    assert messages(SAID, f"{lining('linen')}record: from-notes") == []
    assert messages(SAID, lining("machine-made-paper", "", "leaf")) == []
    assert messages(SAID, lining("linen", ", grain: not recorded (label lost)")) == []


def two(first: str, second: str, onto: str = "sheet/verso", material: str = "linen") -> list[str]:
    layer = "{adds: %s, onto: %s, material: %s, adhesive: paste%s}"
    one = layer % ("one", onto, material, first)
    return messages(MIXED, f"steps: [{one}, {layer % ('two', 'one', material, second)}]")


def test_layers_on_one_another_keep_one_grain():
    assert two(", grain: along", ", grain: across") == [
        "the grain of `two` crosses that of `one` under it"
    ]
    assert two(", grain: along", ", grain: along") == []
    assert two(", grain: along", "") == []
    assert two(", grain: along", ", grain: across, because: to stay flat") == []
    assert two(", grain: along", ", grain: across", material="kozo-paper") == []
    assert two(", grain: along", ", grain: across", "spine") == []


def cut(height: str, more: str = "", material: str = "linen") -> list[str]:
    return messages(ENDS, lining(material, f", cut: {{height: {height}}}{more}"))


@pytest.mark.parametrize("height", ["391.65 mm", "380 mm", "15 in"])
def test_a_lining_stops_an_eighth_of_an_inch_short_of_each_end(height: str):
    assert cut(height) == []


def test_one_that_reaches_says_why():
    assert cut("392 mm") == ["`p` is cut to 392 mm for a spine of 398 mm"]
    assert cut("410 mm")
    assert cut("398 mm", ", because: it carries the endbands") == []
    assert cut("398 mm", ", do: reback") == []
    assert cut("398 mm", material="tengujo") == []


def test_where_a_height_is_not_on_record_nothing_is_compared():
    assert messages(ENDS, f"{lining('linen', ', cut: {height: 398 mm}')}parts: {{}}") == []
    assert messages(ENDS, lining("linen", ", cut: {width: 70 mm}")) == []


def dried(under: str, spine: str = "{width: 68 mm, rise: 14 mm}") -> list[str]:
    step = lining("linen", f", dries: overnight under {under}")
    return messages(CURVE, f"{step}parts: {{spine: {spine}}}")


def test_weights_do_not_hold_a_rounded_spine():
    assert dried("weights") == [
        "`weights` hold a rounded spine at its middle, and not at its shoulders"
    ]
    assert dried("release-sheet + elastic-bandage") == []
    assert dried("weights + elastic-bandage") == []
    assert dried("bag weights") == []
    assert dried("weights", "{width: 68 mm, rise: 0 mm}") == []
    assert dried("weights", "{width: 68 mm}") == []


def test_a_binding_may_say_in_words_that_its_spine_is_round():
    step = lining("linen", ", dries: overnight under weights")
    round_back = "bindings: [{state: on-arrival, spine: rounded}]\nparts: {}"
    assert messages(CURVE, step + round_back)


def test_a_run_over_volumes_is_asked_once_and_not_for_each():
    lining = "{adds: lining, onto: spine, material: linen, adhesive: paste, grain: across}"
    run = f"steps: [{{each: [volume 1, volume 2], steps: [{lining}]}}]\nepisodes: []"
    assert len(messages(ALONG, run)) == 1


VOLUMES = """
parts:
  volume 1: {parts: {spine: {width: 40 mm, rise: 8 mm, height: 200 mm}}}
  volume 2: {parts: {spine: {width: 40 mm, rise: 8 mm, height: 220 mm}}}
"""


def test_in_a_run_each_volume_has_its_own_spine():
    lining = "{adds: lining, onto: spine, material: linen, adhesive: paste, cut: {height: 199 mm}"
    run = f"steps: [{{each: [volume 1, volume 2], steps: [{lining}, dries: 2 h under weights}}]}}]"
    assert messages(ENDS, VOLUMES + run) == [
        "`volume 1/lining` is cut to 199 mm for a spine of 200 mm"
    ]
    assert len(messages(CURVE, VOLUMES + run)) == 1
