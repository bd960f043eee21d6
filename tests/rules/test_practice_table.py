"""Every row of what handbooks say is held by a named rule, or it is said here why none can.

The table `tests/reference/practice.csv` gives the source of each row.
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from casebook.rules import NAMED

TABLE = Path(__file__).parents[1] / "reference" / "practice.csv"
with TABLE.open(encoding="utf-8", newline="") as _file:
    ROWS = {row["rule_id"]: row for row in csv.DictReader(_file)}

HELD: dict[str, tuple[str, ...]] = {
    "grain-along-spine": ("grain-head-to-tail",),
    "grain-head-to-tail": ("grain-head-to-tail",),
    "grain-spine-lining-paper": ("grain-head-to-tail", "grain-said"),
    "grain-board-liner": ("grain-head-to-tail",),
    "grain-moves-least": ("grain-head-to-tail",),
    "grain-cloth-warp": ("grain-head-to-tail",),
    "grain-not-mixed": ("grain-not-mixed",),
    "grain-handmade-none": ("grain-said", "grain-head-to-tail"),
    "grain-by-curl": ("grain-said",),
    "release-layer": ("no-dispersion-on-original",),
    "release-layer-order": ("no-dispersion-on-original",),
    "no-dispersion-on-original": ("no-dispersion-on-original",),
    "dispersion-not-easily-undone": ("dispersion-leaves-something",),
    "dispersion-not-swabbed-off": ("dispersion-leaves-something",),
    "pva-name": ("ambiguous-word",),
    "test-before-wet": ("test-before-wet",),
    "test-repeat": ("test-repeated",),
    "test-paper-then-ink": ("test-paper-then-ink",),
    "poultice-needs-longer-test": ("poultice-tested-as-long",),
    "test-tideline-and-bleed": ("wet-against-test",),
    "coloured-thread-kept-dry": ("test-before-wet", "wet-against-test"),
    "repair-lighter": ("repair-lighter",),
    "stronger-repair": ("repair-not-stronger", "compared-with-original"),
    "fill-weaker-more-flexible": ("repair-not-stronger",),
    "adhesive-three-demands": ("adhesive-that-lasts",),
    "tape-early": ("adhesive-that-lasts",),
    "damp-cloth": ("cloth-damped",),
    "damp-before-water-borne": ("cloth-damped",),
    "lining-short-of-head-and-tail": ("lining-short-of-ends",),
    "contact-on-a-curve": ("contact-on-a-curve",),
    "photo-stages": ("before-and-after", "during-photo", "date-of-photo"),
    "photo-target": ("scale-target-light", "special-light-named"),
    "photo-hidden": ("hidden-was-shown", "during-photo"),
    "plan-approved": ("within-the-plan", "change-agreed"),
    "no-water-on-red-rot": ("water-on-red-rot",),
    "red-decay": ("water-on-red-rot", "hazard-named"),
    "mould-dormant": ("mould-dried-first",),
    "hotmelt-spine": ("hazard-of-work",),
}
"""Which rules answer for a row."""

_FACT = "a fact about materials: it asks nothing of a record"
_RECIPE = "a recipe: right for one bench and one job, so that another figure is no fault"
_FIGURE = "a figure to look up, not one that a record can miss"
_NO_FIELD = "a record does not say it, and a field for it would be filled in by nobody"
_JUDGEMENT = "a judgement on the work, which no rule can read from a record"

REASONS: dict[str, str] = {
    "barrier-purpose": _FACT,
    "repair-fibres": "advice of one leaflet: rag, wood and other papers are used with good reason",
    "repair-torn-edge": _NO_FIELD,
    "overlap": f"{_NO_FIELD}; without a source the figure would nag right work",
    "photo-metadata": "a recommendation; published pictures carry no metadata, so nothing leaks",
    "photo-resolution": "its values were not read, so nothing is made of it",
    "kozo-thinnest": _FACT,
    "tissue-weights-used": _FACT,
    "paste-loc": _RECIPE,
    "paste-25": _RECIPE,
    "paste-1-4": _RECIPE,
    "mc-5": _RECIPE,
    "remoist-ratio": _RECIPE,
    "remoist-mc": _RECIPE,
    "remoist-range": _RECIPE,
    "pva-mc-half": _RECIPE,
    "gelatine-paste": _RECIPE,
    "hpc-leather": _RECIPE,
    "poultice-time": f"{_RECIPE}; what a poultice needs is a test that lasts as long as it does",
    "paper-water-content": _FACT,
    "dry-under-weight": "one way of several: felt, suction and free drying have their uses",
    "drying-overnight": f"{_FIGURE}; a small mend is dry in an hour",
    "rh-mould": f"{_FIGURE}: the climate of a sitting is written in words",
    "rh-damp": _FIGURE,
    "heat-set-temperature": f"{_FIGURE}, and from memory",
    "ph-adhesive": f"{_FIGURE}, and from memory: no step says the pH of its adhesive",
    "dispersion-ageing-tested": _FACT,
    "least-treatment": f"{_JUDGEMENT}; `left-alone` has its place",
    "japanese-leather-strength": f"{_FACT}; only an abstract was read",
    "lining-first-onto-boards": "tells how edition work is done, not how a treatment should be",
    "lining-not-too-stiff": _JUDGEMENT,
    "lining-cloth-weight": "a specification of library binding, not of conservation",
    "paste-in-paper-conservation": _FACT,
    "endbands-between-linings": "one order of several; the steps' own order is shown layer by layer",
    "adhesive-through-cloth": _RECIPE,
    "first-lining-holds-the-shape": _FACT,
    "adhesive-past-shoulders": "something to look for at the bench; `result` has its place",
}
"""Why a row makes no rule."""


@pytest.mark.parametrize("row", ROWS)
def test_a_row_is_held_by_a_rule_or_has_its_reason_and_never_both(row: str):
    assert (row in HELD) != (row in REASONS)


def test_rules_and_reasons_name_only_rows_of_the_table():
    assert HELD.keys() | REASONS.keys() == ROWS.keys()


@pytest.mark.parametrize("row", HELD)
def test_the_rules_of_a_row_are_there(row: str):
    assert all(name in NAMED for name in HELD[row])


def _own_words(source: str) -> set[str]:
    """The longer words and the numbers of a source, by which another text of it is known again."""
    words = source.replace('"', " ").replace(",", " ").replace("(", " ").replace(")", " ").split()
    return {word.casefold() for word in words if len(word) > 3}


@pytest.mark.parametrize("row", [row for row in HELD if row != "hotmelt-spine"])
def test_a_rule_names_the_source_of_its_row(row: str):
    # a hot melt's source stands with its caution, as tests/rules/test_hazards_table.py holds
    sources = " ".join(NAMED[name].source for name in HELD[row])
    wanted = _own_words(ROWS[row]["source"])
    assert len(wanted & _own_words(sources)) >= min(2, len(wanted))
