"""Every demand of the published codes is answered by a rule, or it is said here why it is not.

The table `tests/reference/required_fields.csv` gives the source of each demand.
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from casebook.diagnostics import Severity
from casebook.rules import ALL

TABLE = Path(__file__).parents[1] / "reference" / "required_fields.csv"
with TABLE.open(encoding="utf-8", newline="") as _file:
    ROWS = list(csv.DictReader(_file))

_JUDGEMENT = "a judgement on the work: no rule can read it from a record"
_KEEPING = "about keeping the record, not about what it says"
_ELSEWHERE = "an act outside the record, which it cannot show"
_NOT_READ = "nobody here has read the demand itself, so nothing is made of it"
_DEFINITION = "a definition: it asks nothing of a record"

REASONS = {
    "every component (text and image) labelled as part of this record": (
        "the tool does it: every page and every published picture carries the case's id"
    ),
    "identifying data in the metadata of digital image files": (
        "only recommended, and published pictures carry no metadata so that nothing leaks"
    ),
    "the duty to document cannot be waived by anyone": _ELSEWHERE,
    "a record whenever the object is examined, analysed, sampled, treated, altered or damaged, "
    "or is in the conservator's care for a time": (
        "whether a record exists at all cannot be seen from within one"
    ),
    "treatment plan: expectations / benefits / costs / risks discussed": (
        "the rationale of an article, not a demand; `merits` and `faults` have their place"
    ),
    "new information found": (
        "an aim; whether anything new was found only the conservator knows; `finds` is its place"
    ),
    "notes held only on tape or computer moved to hard copy in a timely manner": _KEEPING,
    "permanent, stable, legible media": _KEEPING,
    "record kept in hard copy and/or electronic form, each with its own care": _KEEPING,
    "two copies: one with owner and one with conservator": _KEEPING,
    "records organised so that they can be found again in a timely manner": (
        "the tool does it: the built archive is searched and has its ways in"
    ),
    "copy of the report handed over": _ELSEWHERE,
    "treatment and materials do not stand in the way of later examination, treatment or analysis, "
    "if at all possible": _JUDGEMENT,
    "preventive care considered first; treatment limited to what is necessary": (
        f"{_JUDGEMENT}; `left-alone` has its place"
    ),
    "CAC/CAPC Code of Ethics and Guidance for Practice, 3rd ed. 2000 (reprinted 2009): "
    "documentation articles": _NOT_READ,
    "Icon Code of Conduct v1 (2014): documentation clauses": _NOT_READ,
    "AICCM Code of Practice: documentation clauses": _NOT_READ,
    "condition report: framework and essential contents": (
        f"{_NOT_READ}: only the scope of EN 16095 was seen, not its list of fields"
    ),
    "terms: conservation / preventive / remedial / restoration / object / condition": _DEFINITION,
    "terms: reversibility / retreatability": _DEFINITION,
}
"""Why a demand makes no rule."""

ANSWERED = {row for rule in ALL for row in rule.rows}


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["field"][:40])
def test_a_demand_is_answered_by_a_rule_or_has_its_reason_and_never_both(row: dict[str, str]):
    assert (row["field"] in ANSWERED) != (row["field"] in REASONS)


def test_rules_and_reasons_name_only_demands_of_the_table():
    assert ANSWERED | set(REASONS) == {row["field"] for row in ROWS}


def plainly_a_must(row: dict[str, str]) -> bool:
    """Whether somebody read the word must: not "from memory", nor a must under a condition."""
    return row["requirement"].startswith("must") and (
        row["seen"] != "from memory" and "must if" not in row["requirement"]
    )


@pytest.mark.parametrize("row", [row for row in ROWS if row["field"] in ANSWERED])
def test_what_a_code_says_must_be_there_is_an_error_where_a_finished_record_lacks_it(row):
    weights = [rule.weight.finished for rule in ALL if row["field"] in rule.rows]
    if plainly_a_must(row):
        assert max(weights) is Severity.ERROR
    elif row["requirement"].startswith("should"):
        assert max(weights) >= Severity.WARNING


def test_examples_of_one_list_make_one_rule_together():
    examples = {row["field"] for row in ROWS if "example" in row["requirement"]}
    assert [rule.name for rule in ALL if examples & set(rule.rows)] == ["identified"]
