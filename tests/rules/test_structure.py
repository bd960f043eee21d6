"""Contradictions are told at their step; what is hidden was photographed; kinds are compared."""

from __future__ import annotations

import pytest

from casebook.diagnostics import Severity
from casebook.rules import NAMED
from tests.rules.written import look, messages, raised

PASTE = "material: linen, adhesive: wheat-starch-paste"


def told(name: str, changes: str) -> list[tuple[str, Severity]]:
    return [(one.message, one.cap) for one in raised(NAMED[name], changes)]


def test_a_contradiction_has_its_caret_under_the_key_that_says_it() -> None:
    text = f"steps: [{{removes: old-glue}}, {{adds: patch, onto: old-glue, {PASTE}}}]"
    (first, second) = raised(NAMED["steps-agree"], text)
    assert first.span is not None
    assert first.message == "`old-glue` was removed further up, and is not there any more"
    assert "in sitting 1" not in first.message
    assert second.span is not None  # the complete case removes it once more in its sitting


@pytest.mark.parametrize(
    ("step", "cap"),
    [
        ("{puts-back: endband head, onto: spine, adhesive: pva}", Severity.WARNING),
        ("{takes-off: label}, {takes-off: label}", Severity.WARNING),
        ("{opens: patch}, {adds: patch, onto: sheet}", Severity.ERROR),
    ],
)
def test_what_may_only_be_unsaid_never_stops_a_build(step: str, cap: Severity) -> None:
    assert [severity for _, severity in told("steps-agree", f"steps: [{step}]")] == [cap]


def test_a_name_that_nobody_knows_is_left_to_the_rule_on_references() -> None:
    assert told("steps-agree", "steps: [{removes: wossit}]") == []
    assert len(messages(NAMED["unknown-reference"], "steps: [{removes: wossit}]")) == 1


def test_without_a_recorded_order_nothing_is_said_that_rests_on_one() -> None:
    steps = f"steps: [{{removes: patch}}, {{adds: patch, onto: sheet, {PASTE}}}, {{opens: patch}}]"
    assert len(told("steps-agree", steps)) == 1
    assert told("steps-agree", f"{steps}\norder: not recorded") == []


def test_a_tube_that_is_meant_to_be_longer_says_why() -> None:
    text = f"steps: [{{adds: patch, onto: spine, {PASTE}, cut: {{height: 350 mm}}}}, {{do: make-hollow, adds: tube, onto: patch, cut: {{height: 360 mm}}, because: it carries the headcap}}]"  # fmt: skip
    assert told("no-longer-than-beneath", text) == []


def hidden(photos: str, steps: str = "") -> list[tuple[str, Severity]]:
    return told("hidden-was-shown", f"photos: [{photos}]\n{steps}")


BEFORE = "{file: a.jpg, stage: before, view: front, date: 2025-01-28}"


@pytest.mark.parametrize(
    "photo",
    [
        "{file: b.jpg, stage: before, view: spine}",
        "{file: b.jpg, stage: during, view: spine of the text block}",
        "{file: b.jpg, stage: before, view: front, shows: [spine]}",
        "{file: b.jpg, stage: before, view: front, shows: [cracks]}",
    ],
)
def test_a_photo_shows_a_part_by_its_view_its_words_or_a_finding(photo: str) -> None:
    findings = "findings: [{id: cracks, part: spine, seen: cracked}]"
    assert hidden(photo, findings) == []


@pytest.mark.parametrize(
    "photo",
    [
        "{file: b.jpg, stage: after, view: spine}",
        "{file: b.jpg, stage: before, view: fore-edge}",
        "{file: b.jpg, stage: before, view: front, shows: [board 1]}",
    ],
)
def test_a_later_photo_or_one_of_something_else_does_not_serve(photo: str) -> None:
    (one,) = hidden(f"{BEFORE}, {photo}")
    assert one[0] == "`cloth-lining` hides `spine`, and no photo shows it as it was"


def test_a_photo_taken_after_the_dated_step_does_not_serve() -> None:
    photo = "{file: b.jpg, stage: during, view: spine, date: 2025-03-15}"
    step = f"steps: [{{adds: patch, onto: sheet/verso, {PASTE}, date: 2025-03-14}}]"
    late = hidden(photo.replace("spine", "sheet"), step)
    assert "`patch` hides `sheet/verso`, and no photo shows it as it was" in [
        one for one, _ in late
    ]
    assert len(hidden(photo.replace("spine", "sheet").replace("15", "13"), step)) == 1


def test_the_photo_of_the_step_itself_serves() -> None:
    step = f"steps: [{{adds: patch, onto: sheet, {PASTE}, photo: a.jpg}}]"
    assert [one for one, _ in hidden(BEFORE, step) if "patch" in one] == []


def test_layers_that_the_treatment_added_are_suggested_once() -> None:
    steps = f"steps: [{{adds: a, onto: sheet/verso, {PASTE}}}, {{adds: b, onto: a, {PASTE}}}, {{adds: c, onto: b, {PASTE}}}]"  # fmt: skip
    photos = "{file: b.jpg, stage: before, view: verso}, {file: c.jpg, stage: before, view: spine}"
    assert hidden(photos, steps) == [
        ("no photo shows `a` and `b` before another layer covered it", Severity.SUGGESTION)
    ]
    assert hidden(f"{photos}, {{file: d.jpg, stage: after, shows: [a, b]}}", steps) == []


def test_without_any_photo_of_the_work_other_rules_ask() -> None:
    assert hidden("{file: b.jpg, stage: after, view: spine}") == []


def kinds(original: str, repair: str, more: str = "") -> list[str]:
    parts = f"parts: {{leaf: {{material: {original}}}}}"
    step = f"{{adds: patch, onto: leaf, material: {repair}, adhesive: wheat-starch-paste{more}}}"
    return messages(NAMED["compared-with-original"], f"{parts}\nsteps: [{step}]")


@pytest.mark.parametrize(
    ("original", "repair"),
    [
        ("laid-paper", "tengujo"),
        ("laid-paper", "kozo-paper"),
        ("calf", "linen"),
        ("unknown", "linen"),
    ],
)
def test_a_repair_of_the_same_or_a_weaker_kind_is_not_asked(original: str, repair: str) -> None:
    assert kinds(original, repair) == []


def test_cloth_across_paper_and_board_across_cloth_are_asked() -> None:
    message = "`patch` is of a stronger kind of material than `leaf` under it"
    assert kinds("laid-paper", "linen") == kinds("linen", "millboard") == [message]


@pytest.mark.parametrize(
    "more",
    [
        ", against-original: weaker",
        ", because: nothing else was at hand",
        ", temporary: yes",
        ", is: part",
    ],
)
def test_what_is_compared_explained_temporary_or_housing_is_not_asked(more: str) -> None:
    assert kinds("laid-paper", "linen", more) == []


def test_a_repair_on_what_the_treatment_added_is_not_asked() -> None:
    assert kinds("laid-paper", "tengujo}, {adds: cloth, onto: patch, material: linen") == []


def test_the_replay_of_a_case_is_made_once() -> None:
    seen = look()
    assert seen.replay is seen.replay


@pytest.mark.parametrize(
    ("found", "message"),
    [
        ("{id: a, onto: a}", "`a` lies on itself"),
        ("{id: a, onto: b}, {id: b, over: a}", "`a` lies on itself, by way of `b`"),
        (
            "{id: a, onto: b}, {id: b, bonds: [{onto: c}]}, {id: c, onto: a/verso}",
            "`a` lies on itself, by way of `b` and `c`",
        ),
    ],
)
def test_a_ring_of_found_layers_is_told_once(found: str, message: str) -> None:
    assert messages(NAMED["found-in-a-ring"], f"as-found: [{found}]") == [message]


def test_in_an_old_record_a_facing_that_no_step_removed_is_only_suggested() -> None:
    rule = NAMED["temporary-comes-off"]
    text = f"steps: [{{adds: facing, onto: spine, {PASTE}, temporary: yes}}]"
    assert rule.severity(look(text)) is Severity.WARNING
    assert rule.severity(look(f"record: from-publication\n{text}")) is Severity.SUGGESTION
