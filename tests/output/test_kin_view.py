"""Other cases, each in a sentence."""

from __future__ import annotations

from casebook.compute.links import Kin, Tie
from casebook.output.kin_view import kin_lines
from casebook.output.wording import Wording, text_of
from tests.builders import WORDING

TITLES = {"c-1": ("c-1", "Harbour rates"), "old": ("c-1", "Harbour rates")}


def test_every_tie_has_a_sentence_of_its_own() -> None:
    lines = {text_of(line) for line in kin_lines([Kin("c-1", tie) for tie in Tie], WORDING)}
    assert len(lines) == len(Tie)


def test_a_case_is_named_by_its_title_and_led_to_by_its_last_id() -> None:
    wording = Wording(WORDING.lexicon, "../../", TITLES)
    (line,) = kin_lines([Kin("old", Tie.LIKE, "the same binder")], wording)
    assert text_of(line) == "It is like Harbour rates (the same binder)."
    assert [run.href for run in line if run.href] == ["../../cases/c-1/index.html"]
