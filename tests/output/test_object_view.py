"""The object and its condition in facts and sentences."""

from __future__ import annotations

from casebook.model.archive import Case
from casebook.model.condition import Finding, FollowUp, Found, History
from casebook.model.condition import Test as Trying
from casebook.model.object import Size
from casebook.model.settings import Units
from casebook.output.object_view import (
    binding_facts,
    finding_view,
    follow_line,
    found_line,
    history_line,
    object_facts,
    size_text,
)
from casebook.output.object_view import test_line as line_of_test
from casebook.output.wording import text_of
from tests.builders import RICH, WORDING, record


def test_a_size_is_as_written_and_in_the_lab_s_measure() -> None:
    size = record(Size, "{height: 16 1/4 in}")
    assert size_text(size, None) == "height 16 1/4 in"
    assert "mm" in size_text(size, Units.METRIC)


def test_facts_are_labelled() -> None:
    labels = [one.label for one in object_facts(record(Case, RICH), WORDING, None)]
    assert labels[0] == "Kind"
    assert {"Made", "Size", "Owner", "Received", "People", "Spine"} <= set(labels)


def test_a_binding_is_told_in_sentences() -> None:
    (binding,) = binding_facts(record(Case, RICH), WORDING)
    assert binding.label == "Binding on arrival"
    assert text_of(binding.lines[-1]) == "Covered in calf."


def test_what_is_seen_is_kept_apart_from_what_it_means() -> None:
    finding = record(Finding, "{part: joint front, seen: cords broken, means: held loosely}")
    view = finding_view(finding, WORDING, {})
    assert (view.seen, view.means) == ("cords broken", "held loosely")
    assert text_of(view.where) == "The front joint"


def test_layers_tests_history_and_follow_ups_are_sentences() -> None:
    found = record(Found, "{id: old-glue, onto: spine, material: animal-glue, origin: later}")
    assert text_of(found_line(found, WORDING)) == "Old glue: animal glue, on the spine, later."
    test = record(Trying, "{part: endband head, agent: water, method: swab, result: bleeds}")
    assert text_of(line_of_test(test, WORDING)) == "Water on the head endband (swab): bleeds."
    history = record(History, "{hands: a binder, what: rebacked, state: failed}")
    assert text_of(history_line(history)) == "Rebacked by a binder; now failed."
    follow = record(FollowUp, "{layer: cloth-lining, state: sound}")
    assert text_of(follow_line(follow, WORDING)) == "The cloth lining: sound."
