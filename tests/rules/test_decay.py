"""Decayed leather stays dry, and mould is dry before it is brushed."""

from __future__ import annotations

import pytest

from casebook.rules import NAMED
from tests.rules.written import messages

RED_ROT = "findings: [{part: covering, damage: red-rot}]\n"
ROTTEN = "findings: []\nas-found: [{id: hide, onto: board 1, material: red-rotted-leather}]\n"
LIVE = "findings: [{part: board 1, damage: active-mould}]\n"


def water(step: str, found: str = RED_ROT) -> list[str]:
    return messages(NAMED["water-on-red-rot"], f"{found}steps: [{step}]\nepisodes: []")


def test_water_and_paste_are_kept_from_red_rot():
    assert water("{treats: covering, agent: water}") == [
        "this step brings water to `covering`, which has red rot"
    ]
    assert water("{puts-back: title-label, onto: covering, adhesive: paste}")
    assert water("{treats: hide, agent: water}", ROTTEN)


@pytest.mark.parametrize(
    "step",
    [
        "{treats: covering, agent: ethanol}",
        "{treats: covering, adhesive: hydroxypropyl-cellulose 4 % in ethanol}",
        "{treats: covering, agent: water, allowed-by: red-bleeds}",
        "{treats: covering, agent: water, except: the powdered parts}",
        "{removes: covering, agent: water}",
        "{treats: leaf, agent: water}",
    ],
)
def test_what_is_dry_allowed_removed_or_elsewhere_is_let_pass(step: str):
    assert water(step) == []


def mould(steps: str, found: str = LIVE) -> list[str]:
    return messages(NAMED["mould-dried-first"], f"{found}steps: [{steps}]\nepisodes: []")


def test_live_mould_is_dried_before_it_is_taken_off():
    assert mould("{do: remove-mould, treats: board 1}")
    assert mould("{do: vacuum, treats: board 1}")
    assert mould("{do: dry, treats: board 1}, {do: remove-mould, treats: board 1}") == []
    assert mould("{do: remove-mould, treats: board 1, because: dry and powdery by now}") == []
    assert mould("{do: vacuum, treats: leaf}") == []


def test_old_mould_is_dry_already():
    old = "findings: [{part: board 1, damage: mould-stained}]\n"
    assert mould("{do: remove-mould, treats: board 1}", old) == []
