"""Every row of the published hazards is answered by a term's caution or by a rule.

The table `tests/reference/hazards.csv` gives the source of each row. Cautions are usual ones: they
defer to safety data sheets, local codes and licensed practice.
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from casebook.model.base import known
from casebook.rules import NAMED
from casebook.rules.dangers import KINDS
from casebook.vocabulary import Lexicon, builtin
from tests.rules.written import messages

TABLE = Path(__file__).parents[1] / "reference" / "hazards.csv"
with TABLE.open(encoding="utf-8", newline="") as _file:
    ROWS = {row["agent_or_condition"]: row for row in csv.DictReader(_file)}

CAUTIONS: dict[str, tuple[tuple[str, str], str, str]] = {
    "arsenical green (emerald green) bookcloth, paper, edges, c. 1840s-1860s": (
        ("materials", "emerald-green"),
        "nitrile gloves; off the face; food; wash; apart and marked",
        "Poison Book Project",
    ),
    "arsenical green: which books": (
        ("materials", "green-book-cloth"),
        "arsenical until tested",
        "Wellcome Collection",
    ),
    "arsenic in collections": (
        ("damages", "unknown-powder"),
        "arsenic; gloves; do not shake",
        "Hazards in Collections",
    ),
    "nineteenth-century cloth bindings of any colour": (
        ("materials", "publishers-cloth"),
        "lead; off the face; wash",
        "Poison Book Project",
    ),
    "lead weights (bare)": (
        ("tools", "lead-weight"),
        "cover; gloves; food; wash",
        "WAAC Newsletter",
    ),
    "lead in objects": (("materials", "lead"), "sand; waste by local rule", "CCI Notes 1/8"),
    "lead corrosion, white or yellow powder": (
        ("damages", "lead-corrosion"),
        "disposable gloves; dust mask or respirator; wash hands",
        "DistList 2004-11-26",
    ),
    "mould, active": (
        ("damages", "active-mould"),
        "isolate and dry first; never brush; asthma; pregnant women stay away",
        "NC Preservation Consortium",
    ),
    "mould, dry": (
        ("damages", "mould"),
        "respirator; gloves; goggles; coat",
        "Duke University Libraries",
    ),
    "mould: mask grade": (("damages", "mould"), "P2; N95", "student review"),
    "mould: whom to ask": (("damages", "mould"), "specialist", "CCAHA"),
    "red-rotted leather dust": (
        ("damages", "red-rot"),
        "work over paper; extract; dust mask; no water",
        "DistList 1995",
    ),
    "ethanol": (
        ("materials", "ethanol"),
        "flame; spark; small amounts; ventilation; gloves and eye protection; lids on",
        "npgd0262",
    ),
    "propan-2-ol": (("materials", "propan-2-ol"), "flame; dries the skin", "npgd0359"),
    "acetone": (("materials", "acetone"), "flame; hot tool", "OSHA"),
    "toluene, xylene": (
        ("materials", "xylene"),
        "fume hood; proper gloves; something else first",
        "NIOSH",
    ),
    "chlorinated and strong solvents for old adhesives": (
        ("materials", "chlorinated-solvent"),
        "fume hood; licensed use",
        "JAIC 23(2)",
    ),
    "solvents together with heated tools": (
        ("tools", "heated-spatula"),
        "solvent leave before heating; extract; fire blanket",
        "common practice",
    ),
    "heat-seal resin in solvent": (
        ("materials", "heat-seal-film"),
        "fumes; ventilate; data sheet",
        "DistList 1998-11-19",
    ),
    "hot adhesive removal (melting)": (
        ("materials", "hot-melt"),
        "ventilation; fume hood",
        "Indiana University Libraries",
    ),
    "scalpel and razor blades": (
        ("tools", "razor-blade"),
        "forceps; never fingers; away from the body; lever; sharps box",
        "USC Environmental Health",
    ),
    "board shears, guillotine, presses": (
        ("tools", "board-cutter"),
        "guard; one person; hands clear",
        "common practice",
    ),
    "hydrogen peroxide, ammonia and other bleaches": (
        ("materials", "hydrogen-peroxide"),
        "goggles; gloves; data sheet; trained hands",
        "common practice",
    ),
    "unknown powders, insect poisons and bookplates of old treatments": (
        ("damages", "pesticide-treated"),
        "gloves; do not shake; tested",
        "historic pesticide treatments",
    ),
    "pyroxylin (cellulose nitrate) coated cloth": (
        ("materials", "pyroxylin-cloth"),
        "cool and apart; no heat; flame",
        "DistList 2005-03",
    ),
    "UV lamp": (("tools", "ultraviolet-lamp"), "goggles; gloves; short time", "common practice"),
}
"""For a row: the term that answers it, what its caution must say, and whom its source must name."""

EVERY = "any hazard page"
"""The row that asks something of every caution."""

LEXICON = Lexicon(builtin())


def test_every_row_is_answered_and_no_other():
    assert CAUTIONS.keys() | {EVERY} == ROWS.keys()


@pytest.mark.parametrize("row", CAUTIONS)
def test_a_row_is_answered_by_the_caution_of_a_term_with_its_source(row: str):
    (kind, word), says, source = CAUTIONS[row]
    term = LEXICON.term(kind, word)
    assert term is not None
    caution = (known(term.caution) or "").casefold()
    assert [one for one in says.casefold().split("; ") if one not in caution] == []
    assert source in (known(term.caution_source) or "")


def test_every_caution_defers_to_data_sheets_codes_or_licensed_practice():
    defers = ("data sheet", "local codes", "licensed practice")
    for kind in KINDS:
        for name, term in LEXICON.terms[kind].items():
            if caution := known(term.caution):
                assert any(word in caution for word in defers), name
                assert known(term.caution_source), name


@pytest.mark.parametrize("row", CAUTIONS)
def test_what_a_row_speaks_of_is_asked_for_where_a_record_has_it_and_names_no_hazard(row: str):
    (kind, word), _, _ = CAUTIONS[row]
    record = {
        "damages": f"findings: [{{part: board 1, damage: {word}}}]",
        "tools": f"steps: [{{treats: leaf, tools: [{word}]}}]",
        "materials": f"as-found: [{{id: it, onto: spine, material: {word}}}]\n"
        f"steps: [{{treats: leaf, agent: {word}}}]",
    }[kind]
    rules = (NAMED["hazard-named"], NAMED["hazard-of-work"])
    assert len([told for rule in rules for told in messages(rule, record)]) == 1
