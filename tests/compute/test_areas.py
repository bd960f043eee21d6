"""Areas of linings by hand: the arithmetic stands beside each figure."""

from __future__ import annotations

import re
from fractions import Fraction

import pytest

from casebook.compute.areas import Areas, LayerArea, areas, mass
from casebook.compute.figures import Figure
from casebook.compute.presence import Presence
from casebook.model.materials import Material
from casebook.values.quantities import Grammage
from tests.compute.written import LEDGER, case, reference

ARC = 75_443
"""µm; width 68 mm, rise 14 mm: worked out in test_geometry (Machinery's Handbook, 31st ed.)."""


def of(text: str) -> Areas:
    return areas(case(text), str)


def layer(text: str) -> LayerArea:
    return of(text).layers[-1]


def steps(text: str) -> str:
    parts = "parts: {spine: {width: 68 mm, rise: 14 mm, height: 398 mm}}"
    return f"{parts}\nsteps:\n  - {{{text}}}\n"


def test_the_release_lining_of_the_ledger_takes_the_arc_for_its_width() -> None:
    found = of(LEDGER).layers[0]
    # 390 mm x 75.443 mm = 29 422.8 mm²
    assert found.tally.bonded.value == pytest.approx(390_000 * ARC, rel=2e-5)
    assert found.tally.cut == found.tally.bonded
    assert found.tally.overhang == Figure()
    assert found.notes == ()


def test_the_cloth_lining_of_the_ledger_overhangs_the_arc_and_that_is_no_lining() -> None:
    found = of(LEDGER).layers[1]
    spine, board, _ = found.zones
    # Height not recorded: the spine's 398 mm. On the spine 75.443 of the 300 mm are bonded.
    assert spine.bonded.value == pytest.approx(398_000 * ARC, rel=2e-5)
    assert spine.cut.value == 398_000 * 300_000
    assert spine.overhang.value == spine.cut.value - spine.bonded.value
    # On a board the height is the object's: 16 1/4 in = 412.75 mm; 412.75 x 40 = 16 510 mm².
    assert board.bonded.value == 412_750 * 40_000 == 16_510_000_000
    assert found.notes == (
        "2 heights are taken from the object",
        "1 height is taken from the part",
    )


def test_only_zones_on_the_spine_are_lining_of_the_spine() -> None:
    found = of(LEDGER)
    # 390 + 398 = 788 mm of arc, "about" since one height is assumed
    assert found.spine.bonded.value == pytest.approx(788_000 * ARC, rel=2e-5)
    assert found.spine.bonded.about
    assert not found.spine.bonded.at_least
    assert [row.key for row in found.by_part] == ["board 1", "board 2", "spine"]
    assert found.by_operation[0].tally == found.lining


def test_a_cut_wider_than_the_arc_has_its_overhang_said_apart() -> None:
    found = layer(steps("adds: a, onto: spine, adhesive: x, cut: {height: 398 mm, width: 10 cm}"))
    assert found.tally.cut.value == 398_000 * 100_000
    assert found.tally.overhang.value == pytest.approx(398_000 * (100_000 - ARC), rel=1e-4)
    assert found.operation == "line"


def test_without_a_rise_the_width_across_the_back_stands_in_about() -> None:
    text = "parts: {spine: {width: 50 mm, height: 200 mm}}\nsteps: [{adds: a, onto: spine}]"
    found = layer(text)
    assert found.tally.bonded.value == 50_000 * 200_000
    assert found.tally.bonded.about
    assert "1 spine has no rise, so that its width stands for its arc" in found.notes
    assert "1 area has no adhesive recorded" in found.notes


def test_a_lining_is_followed_through_the_layers_beneath_it() -> None:
    text = """
parts: {spine: {width: 50 mm, rise: 0 mm, height: 200 mm}}
as-found: [{id: old-lining, onto: spine/outer}]
steps:
  - {do: make-hollow, adds: tube, onto: old-lining, adhesive: paste, cut: {width: 150 mm}}
  - {do: line, adds: top, onto: tube/outer, adhesive: pva, cut: {height: 180 mm}}
"""
    tube, top = of(text).layers
    assert tube.parts == top.parts == ("spine",)
    assert tube.tally.bonded.value == 50_000 * 200_000
    assert tube.tally.overhang == Figure()
    assert top.tally.bonded.value == 50_000 * 180_000


def test_the_lining_of_a_sheet_without_a_cut_covers_its_face_about() -> None:
    text = """
object: {size: {height: 20 in, width: 30 in}}
steps: [{do: line, adds: a, onto: sheet/verso, adhesive: paste}]
"""
    found = layer(text)
    # 20 x 25.4 = 508 mm; 30 x 25.4 = 762 mm; 508 x 762 = 387 096 mm²
    assert found.tally.bonded.value == 387_096_000_000
    assert found.tally.bonded.about
    assert not found.tally.bonded.at_least


def test_pieces_are_counted_under_their_own_operation_and_are_no_lining() -> None:
    text = """
steps:
  - do: guard
    adds: guards
    onto: section
    adhesive: paste
    scope: {pieces: [{count: 4, height: 300 mm, width: 20 mm}, {height: 100 mm, width: 10 mm}]}
"""
    found = of(text)
    # 4 x 300 x 20 + 100 x 10 = 25 000 mm²
    assert found.by_operation[0].key == "guard"
    assert found.by_operation[0].tally.bonded == Figure(25_000_000_000)
    assert found.lining.bonded == Figure()


@pytest.mark.parametrize(
    ("scope", "reason"),
    [
        ("where needed", "1 layer lies in places that were not measured"),
        ("{pieces: [{count: 3}]}", "1 set of pieces has no size"),
    ],
)
def test_patches_without_a_size_are_at_least_nothing(scope: str, reason: str) -> None:
    found = layer(f"steps: [{{do: mend, adds: a, onto: leaf, adhesive: x, scope: {scope}}}]")
    assert found.tally.bonded.value == 0
    assert found.tally.bonded.at_least
    assert found.notes == (reason,)


def test_a_cut_done_many_times_counts_as_often() -> None:
    text = "adds: a, onto: section, adhesive: x, cut: {height: 30 cm, width: 20 mm}"
    found = layer(f"steps: [{{do: guard, {text}, scope: {{done: 40, of: 52}}}}]")
    assert found.tally.bonded.value == 40 * 300_000 * 20_000
    assert found.tally.bonded.about


def test_an_unknown_width_is_at_least_nothing_and_its_overhang_is_not_known() -> None:
    found = layer("steps: [{adds: a, onto: spine, adhesive: x, cut: {height: 200 mm}}]")
    assert found.notes == ("1 area has no width",)
    assert found.tally.overhang.reasons == ("1 overhang is not known",)


def test_what_was_removed_later_was_laid_but_does_not_lie_there_now() -> None:
    text = """
parts: {spine: {width: 50 mm, rise: 0 mm, height: 200 mm}}
steps:
  - {adds: facing, onto: spine, adhesive: x, temporary: yes}
  - {adds: first, onto: spine, adhesive: x}
  - {adds: second, onto: first, adhesive: x}
  - {removes: first}
  - {adds: third, onto: spine, adhesive: x}
  - {takes-off: third}
  - {puts-back: third}
  - {adds: fourth, onto: third, adhesive: x}
  - {removes: fourth, leaves: fourth}
"""
    found = of(text)
    assert [one.presence for one in found.layers] == [
        Presence.GONE,
        Presence.GONE,
        Presence.GONE,
        Presence.THERE,
        Presence.PARTLY,
    ]
    one = 50_000 * 200_000
    assert found.lining.bonded.value == 5 * one
    assert found.lining.now.value == one
    assert found.lining.now.at_least


@pytest.mark.parametrize(
    "step",
    [
        "adds: a, onto: spine, adhesive: none",
        "adds: a, over: spine",
        "adds: a, onto: spine, held: sewn",
        "adds: a, onto: spine, is: part, adhesive: x",
        "adds: a, onto: spine, adhesive: x, outcome: given-up",
        "removes: spine",
    ],
)
def test_what_no_adhesive_holds_is_no_lining(step: str) -> None:
    assert of(steps(step)).layers == ()


def test_layers_said_to_lie_on_one_another_in_a_ring_do_no_harm() -> None:
    found = of("steps: [{adds: a, onto: b, adhesive: x}, {adds: b, onto: a, adhesive: x}]")
    assert all(one.tally.bonded.at_least for one in found.layers)


def test_the_spine_of_one_volume_of_a_set_is_found_by_its_path() -> None:
    text = """
parts:
  volume 1: {parts: {spine: {width: 30 mm, rise: 0 mm, height: 100 mm}}}
  volume 2: {parts: {spine: {width: 40 mm, rise: 0 mm, height: 100 mm}}}
steps: [{adds: a, onto: volume 2 / spine, adhesive: x}]
"""
    found = of(text)
    assert found.spine.bonded.value == 40_000 * 100_000
    assert found.layers[0].parts == ("volume 2/spine",)


@pytest.mark.parametrize("name", ["lining used", "mass of a sheet"])
def test_the_mass_of_what_was_cut_is_area_times_grammage(name: str) -> None:
    row = next(row for row in reference("figures.csv") if row["case"] == name)
    written = re.fullmatch(r"(\S+) g/m2, (\S+) x (\S+) mm", row["input"])
    assert written is not None
    weight, height, width = written.groups()
    area = Figure(int(Fraction(height) * 1000) * int(Fraction(width) * 1000))
    found = mass(area, Material(weight=Grammage.parse(f"{weight} g/m²")))
    assert found is not None
    assert found.value / 10**6 == pytest.approx(float(row["expected"]), abs=float(row["tolerance"]))


def test_without_a_weight_nothing_is_said_of_a_mass() -> None:
    assert mass(Figure(1), Material()) is mass(Figure(1), None) is None
