"""Which cases are like one another, and why."""

from __future__ import annotations

from casebook.compute.likeness import Likeness, features, on_arrival
from casebook.model.archive import Case
from casebook.vocabulary import Lexicon, builtin
from tests.builders import record

LEXICON = Lexicon(builtin())


def case(name: str, structure: str, *damages: str, more: str = "") -> Case:
    findings = ", ".join(f"{{part: spine, damage: {one}}}" for one in damages)
    return record(
        Case,
        f"{{id: {name}, bindings: [{{structure: {structure}}}], findings: [{findings}]{more}}}",
    )


ARCHIVE = (
    case("a", "tight-back", "broken", "red-rot"),
    case("b", "tight-back", "broken", "red-rot", "torn"),
    case("c", "tight-back", "torn"),
    case("d", "case-binding", "torn"),
    case("e", "case-binding", "stained"),
)


def test_the_likest_case_shares_the_most_of_what_is_rare() -> None:
    first = Likeness(ARCHIVE, LEXICON).to("a")[0]
    assert first.case == "b"
    assert set(first.shared) == {
        ("structures", "tight-back"),
        ("damages", "broken"),
        ("damages", "red-rot"),
    }
    assert first.score == 1.0


def test_likeness_is_the_same_from_both_sides_and_in_any_order() -> None:
    there = Likeness(ARCHIVE, LEXICON)
    back = Likeness(tuple(reversed(ARCHIVE)), LEXICON)
    scores = {one.case: one.score for one in there.to("a")}
    assert scores["b"] == next(one.score for one in there.to("b") if one.case == "a")
    assert there.to("a") == back.to("a")


def test_one_thing_in_common_is_not_enough() -> None:
    found = {one.case for one in Likeness(ARCHIVE, LEXICON).to("c")}
    assert "d" not in found


def test_a_case_is_not_like_itself_nor_like_those_named_elsewhere() -> None:
    assert [one.case for one in Likeness(ARCHIVE, LEXICON).to("a", without=["b"])] != ["b"]
    assert "a" not in {one.case for one in Likeness(ARCHIVE, LEXICON).to("a")}


def test_what_is_absent_is_no_mismatch() -> None:
    bare = case("f", "tight-back", "red-rot")
    full = case("g", "tight-back", "red-rot", "torn", "stained", "cockled")
    (like,) = Likeness((bare, full, *ARCHIVE[3:]), LEXICON).to("f")
    assert (like.case, like.score) == ("g", 1.0)


def test_synonyms_are_the_same_thing() -> None:
    one = set(features(case("a", "tight-back", "red rot"), LEXICON))
    assert ("damages", "red-rot") in one


def test_that_all_is_well_and_what_was_seen_afterwards_do_not_count() -> None:
    after = ", findings: [{part: spine, damage: torn, stage: after}, {part: spine, damage: sound}]"
    found = set(features(record(Case, f"{{id: a{after}}}"), LEXICON))
    assert found == set()


def test_the_binding_on_arrival_counts_else_the_first() -> None:
    text = "{id: a, bindings: [{structure: limp}, {state: on-arrival, structure: tight-back}]}"
    binding = on_arrival(record(Case, text))
    assert binding is not None
    assert binding.structure == "tight-back"
    first = on_arrival(record(Case, "{id: a, bindings: [{structure: limp}, {structure: cased}]}"))
    assert first is not None
    assert first.structure == "limp"
    assert on_arrival(record(Case, "{id: a}")) is None
