"""What a term's own page says: its uses and times, what opens it, its open identifiers."""

from __future__ import annotations

from casebook.compute.figures import Doubt, Effect, Figure
from casebook.compute.term_uses import NO_USE, TermUse
from casebook.output.term_facts import opening_lines, term_facts
from casebook.output.wording import text_of
from casebook.vocabulary import builtin
from tests.builders import WORDING


def facts(kind: str, name: str, use: TermUse = NO_USE) -> dict[str, list[str]]:
    found = term_facts(kind, name, builtin()[kind][name], WORDING, use)
    return {one.label: [text_of(line) for line in one.lines] for one in found}


def used(*work: tuple[str, str, int]) -> TermUse:
    cases = {(done, part): dict.fromkeys(map(str, range(count))) for done, part, count in work}
    return TermUse(work=cases)


def test_uses_stand_by_operation_the_most_frequent_first() -> None:
    use = used(("mend", "", 1), ("line", "", 3), ("line", "spine", 2), ("line", "text-block", 1))
    assert facts("materials", "linen", use)["Used for"] == [
        "lining in 3 cases (spine 2, text block 1)",
        "mending in 1",
    ]


def test_many_uses_and_parts_are_counted_and_not_told() -> None:
    use = used(*((f"word {n}", "", 1) for n in range(8)))
    assert facts("materials", "linen", use)["Used for"][-1] == "and for 2 others"
    parts = used(("line", "", 9), *(("line", f"part-{n}", 1) for n in range(8)))
    (line,) = facts("materials", "linen", parts)["Used for"]
    assert line.endswith("part 5 1, 2 more)")


def test_an_operation_says_on_what_and_how_long() -> None:
    use = used(("line", "", 3), ("line", "spine", 2), ("line", "board", 1))
    use.bench.update(a=Figure(40), b=Figure(180), c=Figure(90))
    use.untimed["d"] = None
    found = facts("operations", "line", use)
    assert found["Done on"] == ["spine in 2 cases, board in 1"]
    assert "Used for" not in found
    assert found["Bench time"] == [
        "40 min to 3 h in 3 cases; in 1 case not recorded for every step"
    ]


def test_one_time_is_no_range_and_none_is_said_to_be_none() -> None:
    once, never = TermUse(bench={"a": Figure(60)}), TermUse(untimed={"a": None, "b": None})
    assert facts("operations", "line", once)["Bench time"] == ["1 h in 1 case"]
    assert facts("operations", "line", never)["Bench time"] == ["not recorded in 2 cases"]


def test_an_area_says_what_it_lacks() -> None:
    doubts = (
        Doubt(Effect.ABOUT, "guess", "guesses"),
        Doubt(Effect.AT_LEAST, "area has no width", "areas have no width"),
    )
    use = TermUse(laid=[Figure(4 * 10**10), Figure(10**10, doubts)])
    assert facts("materials", "linen", use)["Laid in all"] == [
        "at least 500 cm² (1 area has no width)"
    ]
    assert "Laid in all" not in facts("materials", "linen", TermUse(laid=[Figure(0, doubts)]))


def test_an_adhesive_says_what_opens_it_and_on_whose_word() -> None:
    line = text_of(opening_lines("materials", "wheat-starch-paste", WORDING.lexicon)[0])
    assert line.startswith("Moisture: water, given slowly (damp blotter, poultice), at once")
    assert "Source: The Minton Archive" in line


def test_a_dispersion_seals_and_a_thin_tissue_splits() -> None:
    assert "keeps moisture" in facts("materials", "polyvinyl-acetate")["In a layer"][0]
    assert "gives way" in facts("materials", "tengujo")["In a layer"][0]


def test_a_damage_has_no_releases() -> None:
    assert opening_lines("damages", "broken", WORDING.lexicon) == ()


def test_identifiers_stand_with_where_the_pairing_was_read() -> None:
    assert facts("materials", "paper")["Identifiers"][0].startswith("AAT 300014109 (")
