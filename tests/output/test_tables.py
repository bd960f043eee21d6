"""The small tables of a case."""

from __future__ import annotations

from casebook.compute.summary import summarise
from casebook.model.archive import Case
from casebook.output.tables import hours_tables, linings, materials
from tests.builders import RICH, WORDING, record

SUMMARY = summarise(record(Case, RICH), lambda word: word)
EMPTY = summarise(Case(id="c-1"), lambda word: word)


def test_a_case_has_tables_of_linings_hours_and_materials() -> None:
    lined, used = linings(SUMMARY.areas, WORDING), materials(SUMMARY.uses, WORDING)
    assert lined and used
    assert len(lined.rows) == 1
    assert {run.text for row in used.rows for run in row[0]} >= {"wheat starch paste", "water"}
    assert hours_tables(SUMMARY.hours, WORDING)[0].caption == "In all"


def test_an_empty_case_has_none() -> None:
    assert linings(EMPTY.areas, WORDING) is None
    assert materials(EMPTY.uses, WORDING) is None
    assert hours_tables(EMPTY.hours, WORDING) == ()


def test_a_table_names_places_in_words_each_once() -> None:
    case = record(
        Case,
        "{id: c, episodes: [{episode: 1, hands: [AM], steps: ["
        "{do: consolidate, treats: board 1/corner, agent: wheat-starch-paste},"
        "{do: consolidate, treats: board 1/corner, agent: wheat-starch-paste}]}]}",
    )
    used = materials(summarise(case, lambda word: word).uses, WORDING)
    assert used
    assert [run.text for run in used.rows[0][2]] == ["corner of board 1"]


def test_products_have_a_column_where_any_is_named() -> None:
    step = "{do: consolidate, treats: leaf, agent: %s}"
    for agent, heads in (
        ("wheat-starch-paste", ("Material", "Used as", "On")),
        (
            "{is: wheat-starch-paste, product: P}",
            ("Material", "Used as", "On", "Product, maker, lot"),
        ),
    ):
        case = record(Case, f"{{id: c, episodes: [{{episode: 1, steps: [{step % agent}]}}]}}")
        used = materials(summarise(case, lambda word: word).uses, WORDING)
        assert used and used.heads == heads
        assert [len(row) for row in used.rows] == [len(heads)]


def test_hours_under_no_operation_come_last() -> None:
    case = record(
        Case,
        "{id: c, episodes: [{episode: 1, hands: [AM], steps: ["
        "{words: something, time: 1 h}, {do: line, adds: a, onto: spine, time: 2 h},"
        "{do: mend, treats: leaf}]}]}",
    )
    tables = hours_tables(summarise(case, lambda word: word).hours, WORDING)
    (table,) = [one for one in tables if one.caption == "By operation"]
    assert [row[0][0].text for row in table.rows] == ["line", "mend", "not recorded"]
    assert [row[1][0].text for row in table.rows] == ["2 h", "not recorded", "1 h"]
