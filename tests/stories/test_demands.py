"""Every demand on the record: it can be said, is told well, counts rightly, and no rule misfires."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.reference.committed import holds
from tests.stories.demands import HOME, Base, base_in, demand, names, shown

DEMANDS: dict[str, tuple[str, ...]] = {
    "Five ways of not knowing, each with its own effect": (
        "not-recorded",
        "not-read",
        "unknown",
        "none",
        "unnamed",
    ),
    "Gaps in bulk": ("gaps-in-bulk",),
    "Rival dates with who says so": ("rival-dates",),
    "Approximate and printed sizes": ("sizes", "zones-without-width"),
    "Open part tree with counts, volumes and members": ("part-tree",),
    "Earlier treatments": ("earlier-treatments",),
    "Half-done work taken over": ("half-done-taken-over",),
    "Findings with stage, count, extent, sought and not found": ("findings",),
    "Findings in mid-treatment": ("finds",),
    "Tests: method, agent mixtures, stand-ins, other laboratories, samples": ("tests",),
    "Options for and against, the owner's limits, changes": ("options",),
    "Several questions, each with options": ("several-questions",),
    "Left alone on purpose": ("left-alone",),
    "Materials tentative, with alternatives and exclusions": ("material-tentative",),
    "Materials unnamed": ("unnamed",),
    "Materials by product, maker, weight, lot": ("material-labels",),
    "Mixtures by ratio, concentration, solvents, carriers": ("mixtures",),
    "Recipes of the lab": ("lab-recipes",),
    "Toned before or after": ("toning",),
    "Prepared, built up beforehand": ("prepared",),
    "Scope: edges, where needed": ("scope-where",),
    "Scope: N of M, and what is said of the rest": ("scope-counted",),
    "Scope: patches by number and size": ("scope-pieces",),
    "A run over named members, with exceptions": ("run-over-members", "run-without-each-or-all"),
    "Several ways of one operation": ("several-ways",),
    "Except, with the reason": ("except",),
    "Put-backs with a new bond": ("put-backs",),
    "Fate of what was removed": ("fates",),
    "Partly removed": ("partly-removed",),
    "Temporary layers": ("temporary",),
    "New parts": ("new-parts",),
    "Infill": ("infill",),
    "Several bonds at once": ("several-bonds",),
    "Hollow tubes with walls": ("hollow-tubes",),
    "Sewn and other mechanical bonds, and what they cut": ("mechanical-bonds",),
    "Consolidants and sizes": ("consolidants", "sizes-of-paper"),
    "Hides: what must be lifted first": ("hides",),
    "Weaker or stronger than the original": ("against-original",),
    "Baths": ("baths",),
    "End conditions": ("end-conditions",),
    "Drying in stages": ("drying-in-stages",),
    "Tools": ("tools",),
    "Several hands with minutes, outside hands": ("several-hands",),
    "Dates by month or season, per step": ("dates-by-season",),
    "Order not recorded": ("order-not-recorded",),
    "Steps side by side": ("side-by-side",),
    "Lump totals": ("lump-totals", "lump-only"),
    "Doubtful, about, at least, range": ("doubtful-times",),
    "Tried and given up; colour trials": ("tried-and-given-up",),
    "A result short of the wish": ("falls-short",),
    "A step in words only": ("in-words-only",),
    "Declined, undecided, stopped with the state left": ("declined", "undecided", "stopped"),
    "Links between cases": ("retreatment", "same-set-and-like", "old-carrier"),
    "Sets of which some came": ("set-partly-came",),
    "Photos held elsewhere, on film, with no file": ("photos-elsewhere",),
}
"""What a record must be able to say, and the golden cases that hold it."""

PAGE = Path("docs/reference/demands.md")

HEAD = """# What a record can say

Every demand on the record has a small case of its own in `tests/golden/demands/`, which says it,
and what is expected then: the diagnostics, what the page says, and the sums. This page is
generated from them.

| Demand | Golden case | What it says |
|---|---|---|
"""


@pytest.fixture(scope="module")
def base(tmp_path_factory: pytest.TempPathFactory) -> Base:
    """What the complete case says by itself."""
    return base_in(tmp_path_factory.mktemp("complete"))


@pytest.mark.parametrize("name", names())
def test_a_demand_is_said_told_and_counted(
    name: str, base: Base, tmp_path: Path, request: pytest.FixtureRequest
) -> None:
    one = demand(name)
    found = shown(one, tmp_path, base)
    if request.config.getoption("--update"):
        (HOME / f"{name}.txt").write_bytes((one.source + found).encode())
    assert found == demand(name).expected, "run pytest with --update, then read the difference"


def test_every_demand_has_its_golden_case_and_every_golden_case_its_demand() -> None:
    assert sorted({one for held in DEMANDS.values() for one in held}) == names()


def test_every_golden_case_says_in_words_what_it_is_for() -> None:
    assert [name for name in names() if not demand(name).words.endswith(".")] == []


def _rows() -> Iterator[str]:
    for words, held in DEMANDS.items():
        for name in held:
            link = f"[{name}](../../tests/golden/demands/{name}.txt)"
            yield f"| {words} | {link} | {demand(name).words} |\n"


def test_the_table_of_demands_is_the_committed_page(request: pytest.FixtureRequest) -> None:
    holds(request, PAGE, HEAD + "".join(_rows()))
