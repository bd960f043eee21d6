"""Six treatments from open publications, written as cases: read, checked, summed and built.

The cases stand in `archive/cases`; each names what it was written from and how far that was read.
The facts are the publications', the words our own; lab and reader are invented.
"""

from __future__ import annotations

import html
import re
from datetime import date
from pathlib import Path

import pytest

from casebook import flow
from casebook.compute.summary import Summary, summarise, total
from casebook.compute.uses import Role
from casebook.diagnostics import Diagnostic, Severity
from casebook.loading import Loaded
from casebook.model.archive import Case, Kind
from casebook.model.base import Audience
from casebook.output.site import Site
from tests.builders import PICTURES
from tests.output.plain import typed

HERE = Path(__file__).parent
TODAY = date(2026, 11, 26)
MM2 = 1_000_000
"""A square millimetre in µm², the unit that areas are kept in."""


@pytest.fixture(scope="module")
def loaded() -> Loaded:
    return flow.load(HERE / "archive")


@pytest.fixture(scope="module")
def cases(loaded: Loaded) -> dict[str, Case]:
    return {case.id: case for case in loaded.archive.cases}


@pytest.fixture(scope="module")
def sums(cases: dict[str, Case]) -> dict[str, Summary]:
    return {name: summarise(case, lambda word: word) for name, case in cases.items()}


@pytest.fixture(scope="module")
def site(loaded: Loaded) -> Site:
    return flow.publish(flow.show(loaded, Audience.PUBLIC), PICTURES)


def line(one: Diagnostic) -> str:
    place = f"{one.span.file}:{one.span.line}" if one.span else one.case
    return f"{place}: {one.severity.word}: {one.message} [{one.rule}]"


def text_of(site: Site, case: str) -> str:
    """The words of a case's page, without marks."""
    body = next(page.body() for page in site.pages if page.address == f"cases/{case}/index.html")
    return typed(" ".join(html.unescape(re.sub(r"<[^>]+>", " ", body)).split()))


def used(summary: Summary, role: Role) -> set[str]:
    return {use.material for use in summary.uses if use.role is role}


def test_each_is_told_exactly_what_it_lacks(loaded, request):
    path = HERE / "expected.txt"
    text = "".join(f"{line(one)}\n" for one in flow.check(loaded, TODAY))
    if request.config.getoption("--update"):
        path.write_bytes(text.encode())
    assert text == path.read_bytes().decode(), "run pytest with --update, then read expected.txt"


def test_what_somebody_else_did_or_left_unsaid_stops_no_build(loaded):
    found = flow.check(loaded, TODAY)
    assert [line(one) for one in found if one.severity is Severity.ERROR] == []


def test_all_are_from_publications_and_name_them_and_how_far_they_were_read(cases):
    assert len(cases) == 6
    for case in cases.values():
        assert case.record is Kind.FROM_PUBLICATION
        sources = case.written.from_
        assert any("read:" in one for one in sources)
        assert any(re.search(r"\w+\.\w+/\w|the project's site", one) for one in sources)


def test_the_prints_hours_are_those_of_the_one_step_that_has_any(sums):
    # "about 3 h" for the back; the other eight steps have no time
    bench = sums["ferrogallic-print"].hours.whole.bench.minutes
    assert bench.value == 180
    assert bench.at_least
    assert bench.about
    assert "8 steps have no time" in bench.reasons


def test_a_suture_of_3_by_13_mm_is_39_square_millimetres_and_nobody_says_how_many(sums):
    layers = {one.layer: one for one in sums["ferrogallic-print"].areas.layers}
    (zone,) = layers["sutures"].zones
    assert zone.cut.value == 39 * MM2
    assert zone.cut.at_least


def test_the_prints_solvent_is_named_though_it_stands_in_one_of_several_ways(sums):
    assert {"tetrachloroethylene", "heat"} <= used(sums["ferrogallic-print"], Role.AGENT)


def test_the_plan_was_lined_twice_over_its_whole_area(sums):
    # 1890 mm x 1270 mm = 2.4003 m2, twice: 4.8006 m2; sizes of the sheet stand in for the cut
    lining = sums["botanic-plan"].areas.lining
    assert lining.bonded.value == 2 * 1890 * 1270 * MM2
    assert lining.bonded.about


def test_the_plans_first_lining_weighs_13_grams_a_square_metre(sums):
    # 2.4003 m2 x 13 g/m2 = 31.2039 g, kept in micrograms
    layers = {one.layer: one for one in sums["botanic-plan"].areas.layers}
    mass = layers["first-lining"].mass
    assert mass is not None
    assert mass.value == 31_203_900
    assert layers["second-lining"].mass is None


def test_the_plans_125_hours_are_the_whole_and_not_added_to_steps(sums):
    plan = sums["botanic-plan"].hours.plan
    assert plan.spent is not None
    assert plan.spent.value == 125 * 60
    assert sums["botanic-plan"].hours.whole.bench.minutes.value == 0


def test_a_facing_that_came_off_again_is_known_as_temporary(sums):
    layers = {one.layer: one for one in sums["botanic-plan"].areas.layers}
    assert {name: one.temporary for name, one in layers.items()} == {
        "facing": True,
        "first-lining": False,
        "second-lining": False,
    }


def test_the_letter_lay_two_hours_in_damp_air_and_no_bench_time_is_known(sums):
    hours = sums["dunhuang-letter"].hours
    assert hours.whole.waiting.minutes.value == 120
    assert hours.whole.bench.minutes.value == 0
    assert hours.whole.bench.minutes.at_least
    assert hours.in_words == 1


def test_the_books_cloth_has_an_adhesive_for_each_of_its_bonds(sums):
    book = sums["surgery-book"]
    assert {"wheat-starch-paste", "polyvinyl-acetate", "unnamed"} <= used(book, Role.ADHESIVE)
    assert used(book, Role.LAYER) >= {"japanese-tissue", "linen"}


def test_the_album_is_counted_in_photographs_not_in_areas(cases, sums):
    lined = next(
        step
        for episode in cases["jacobs-album"].episodes
        for step in episode.steps
        if step.adds == "photograph-linings"
    )
    assert (int(lined.scope.done.low), int(lined.scope.of.low)) == (913, 913)
    assert used(sums["jacobs-album"], Role.AGENT) == {"eraser-crumbs", "eraser"}


def test_what_went_into_the_wall_maps_bath_is_told_from_what_stays_in_the_sheet(sums):
    wall_map = sums["wall-map"]
    assert used(wall_map, Role.BATH) == {"water"}
    assert used(wall_map, Role.CONDITIONER) == {"ammonium-hydroxide"}
    assert used(wall_map, Role.LAYER) >= {"japanese-tissue", "gelatine-size", "polyester-film"}


def test_some_minutes_under_cover_are_a_wait_of_unknown_length(sums):
    wait = sums["wall-map"].hours.whole.waiting.minutes
    assert wait.value == 0
    assert wait.at_least


@pytest.mark.parametrize(
    ("case", "facts"),
    [
        (
            "ferrogallic-print",
            ["2362 mm", "masking tape", "eraser crumbs", "BEVA 371", "about 3 h"],
        ),
        ("botanic-plan", ["1890 mm", "c. 1860", "Tosa kozo senka-shi", "125 h", "13 g/m²"]),
        ("surgery-book", ["1844", "recessed cords", "Jade 403", "four-flap"]),
        ("dunhuang-letter", ["Or.8210/S.766", "85 to 90 % RH", "2 h", "soft brush"]),
        ("wall-map", ["ammonium hydroxide", "gelatine size", "japanese tissue", "ethanol"]),
        ("jacobs-album", ["913", "Scum-X", "National Archives of Canada"]),
    ],
)
def test_its_page_tells_the_facts(site, case, facts):
    text = text_of(site, case)
    assert [fact for fact in facts if fact not in text] == []


def test_every_page_names_its_publication(site, cases):
    for name, case in cases.items():
        assert case.written.from_[0] in text_of(site, name)


def test_no_page_shows_how_a_value_is_kept_in_the_code(site, cases):
    for name in cases:
        assert not re.search(r"\w+\(\w+=|<\w+\.\w+: |Gap\(|None\b", text_of(site, name)), name


def test_a_published_case_is_summed_apart_from_the_labs_own(cases, sums):
    totals = total([(cases[name], sums[name]) for name in cases])
    assert totals.published.cases == 6
    assert totals.own.cases == 0
