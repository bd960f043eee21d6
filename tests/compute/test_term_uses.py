"""What the cases tell of a term, counted in cases and summed with what is lacking."""

from __future__ import annotations

from collections.abc import Mapping

from casebook.compute.figures import total
from casebook.compute.outcomes import Name
from casebook.compute.summary import summarise
from casebook.compute.term_uses import TermUse, term_uses
from casebook.vocabulary import Lexicon, builtin
from tests.compute.written import LEDGER, case

LEXICON = Lexicon(builtin())
PASTE, WATER, LINE = (
    ("materials", "wheat-starch-paste"),
    ("agents", "water"),
    ("operations", "line"),
)


def of(*texts: str) -> Mapping[Name, TermUse]:
    cases = [case(text) for text in texts]
    summaries = {one.id: summarise(one, str) for one in cases}
    return term_uses(cases, summaries, LEXICON)


def work(use: TermUse) -> dict[tuple[str, str], int]:
    return {key: len(cases) for key, cases in use.work.items()}


def test_uses_are_counted_in_cases_by_operation_and_part() -> None:
    found = of(LEDGER, LEDGER.replace("2025-031", "2025-032"))
    assert work(found[PASTE]) == {("line", ""): 2, ("line", "spine"): 2}
    assert work(found[WATER])[("remove", "spine")] == 2
    assert work(found[LINE])[("line", "board")] == 2


def test_members_of_a_set_are_one_part() -> None:
    found = of(
        "id: c\nsteps: [{each: [volume 1, volume 2], steps: [{do: mend, treats: board 2, "
        "adhesive: wheat-starch-paste}]}]"
    )
    assert work(found[PASTE]) == {("mend", ""): 1, ("mend", "board"): 1}


def test_what_nobody_calls_by_a_word_stands_under_none() -> None:
    found = of("id: c\nsteps: [{words: a little paste, adhesive: wheat-starch-paste}]")
    assert work(found[PASTE]) == {("", ""): 1}


def test_what_it_may_have_been_is_no_use() -> None:
    assert PASTE not in of("id: c\nsteps: [{do: mend, adhesive: {perhaps: wheat-starch-paste}}]")


def test_areas_are_those_of_the_material_and_of_its_one_adhesive() -> None:
    found = of(LEDGER)
    assert total(found[PASTE].laid) == total(found[("materials", "tengujo")].laid)
    assert total(found[PASTE].laid).value > 0
    two = LEDGER.replace("adhesive: wheat-starch-paste", "adhesive: {mix: {starch: 1, pva: 1}}")
    assert (
        of(two)[("materials", "polyvinyl-acetate")].laid
        == of(LEDGER)[("materials", "polyvinyl-acetate")].laid
    )


def test_bench_time_is_that_of_cases_in_which_every_step_was_timed() -> None:
    found = of(LEDGER, LEDGER.replace("2025-031", "other").replace("        time: 2 h\n", ""))
    assert {name: one.value for name, one in found[LINE].bench.items()} == {"2025-031": 165}
    assert list(found[LINE].untimed) == ["other"]


def test_a_sitting_timed_as_a_whole_times_none_of_its_operations() -> None:
    found = of("id: c\nepisodes: [{time: 3 h, steps: [{do: mend, treats: sheet}]}]")
    use = found[("operations", "mend")]
    assert (use.bench, list(use.untimed)) == ({}, ["c"])


def test_what_was_given_up_is_told_and_not_counted_as_used() -> None:
    found = of(
        "id: c\nepisodes: [{steps: [{do: mend, treats: leaf, adhesive: wheat-starch-paste, "
        "outcome: given-up}, {do: line, adds: a, onto: leaf, adhesive: pva, tried: ["
        "{what: paste, material: wheat-starch-paste, outcome: given-up},"
        "{what: glue, material: gelatine, outcome: chosen}]}]}]"
    )
    use = found[PASTE]
    assert use.work == {}
    assert [(one.episode, bool(one.trial)) for one in use.given_up] == [("1", False), ("1", True)]
    assert [one.trial.what for one in found[LINE].given_up if one.trial] == ["paste"]
    assert ("materials", "gelatine") not in found


def test_a_published_case_tells_nothing_of_the_labs_own_work() -> None:
    assert of(LEDGER.replace("object:", "record: from-publication\nobject:")) == {}
