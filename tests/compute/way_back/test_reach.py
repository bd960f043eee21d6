"""Where a wet agent gets to: past paper, cloth and paste; not past a film, plastic, or harm."""

from __future__ import annotations

from casebook.compute.evidence import Result, Tried
from casebook.compute.structure import Structure
from casebook.compute.way_back.classes import Class
from casebook.compute.way_back.graph import Edge, Graph
from casebook.compute.way_back.options import Option, Options
from casebook.compute.way_back.reach import Reach
from casebook.model.vocabulary import Opener
from tests.compute.way_back.built import (
    LEXICON,
    PASTE,
    PVA,
    evidence,
    fold,
    layer,
    part,
    structure,
    stuck,
    tried,
)


def needing(*kinds: Opener) -> Option:
    """A way of opening that needs these."""
    return Option(Class.MOISTURE, 1, needs=kinds)


WATER = needing(Opener.MOISTURE)
SOLVENT = needing(Opener.SOLVENT)
HEAT = needing(Opener.HEAT)
WARM_WATER = needing(Opener.MOISTURE, Opener.HEAT)


def stack(*adhesives: str, material: str = "linen", **more) -> Structure:
    """Layers on a spine, each with its adhesive, from the spine outwards."""
    names = ["spine", *(f"l{number}" for number in range(len(adhesives)))]
    layers = [layer(name, material) for name in names[1:]]
    return structure(part("spine"), *layers, *map(stuck, names, names[1:], adhesives))


def reached(built: Structure, *found: Tried, off: bool = False) -> Reach:
    graph = Graph(built)
    return Reach(Options(graph, evidence(*found), LEXICON), graph.nodes, off)


def at(reach: Reach, upper: str) -> Edge:
    return next(one for one in reach.options.graph.edges if one.upper.name == upper)


def test_moisture_passes_cloth_and_paste_all_the_way_down():
    reach = reached(stack(PASTE, PASTE, PASTE))
    assert reach.reaches(at(reach, "l0"), WATER)
    assert reach.through(at(reach, "l0"), WATER) == ("l2", "l1", "l0")


def test_moisture_comes_to_a_film_and_not_past_it():
    reach = reached(stack(PASTE, PVA, PASTE))
    assert reach.reaches(at(reach, "l1"), WATER)
    assert not reach.reaches(at(reach, "l0"), WATER)
    assert reach.barrier(at(reach, "l0"), WATER) == (
        "moisture does not pass the film of polyvinyl acetate under the l1"
    )


def test_a_plastic_sheet_lets_nothing_through():
    reach = reached(stack(PASTE, material="polyester-film"))
    assert not reach.reaches(at(reach, "l0"), WATER)
    assert reach.barrier(at(reach, "l0"), WATER) == "moisture may not go through the l0"


def test_it_may_not_go_through_what_it_harms():
    harm = tried("l1", Result.HARM)
    reach = reached(stack(PASTE, PASTE), harm)
    assert not reach.reaches(at(reach, "l0"), WATER)
    assert reach.reaches(at(reach, "l0"), SOLVENT)


def test_heat_passes_a_film_and_not_what_it_harms():
    reach = reached(stack(PVA, PVA, material="polyester-film"))
    assert reach.reaches(at(reach, "l0"), HEAT)
    reach = reached(stack(PVA, PVA), tried("l1", Result.HARM, Opener.HEAT))
    assert not reach.reaches(at(reach, "l0"), HEAT)
    assert reach.barrier(at(reach, "l0"), HEAT) == "heat may not go through the l1"


def test_what_acts_together_has_to_come_there_together():
    reach = reached(stack(PASTE, PVA))
    assert reach.reaches(at(reach, "l0"), HEAT)
    assert not reach.reaches(at(reach, "l0"), WARM_WATER)


def test_one_film_over_a_layer_keeps_moisture_off_though_something_else_lies_there_too():
    members = (part("spine"), layer("tissue"), layer("cloth"), layer("patch"))
    built = structure(
        *members,
        stuck("spine", "tissue", PASTE),
        stuck("tissue", "cloth", PVA),
        stuck("tissue", "patch", PASTE),
    )
    reach = reached(built)
    assert not reach.reaches(at(reach, "tissue"), WATER)
    partly = structure(
        *members,
        stuck("spine", "tissue", PASTE),
        stuck("tissue", "cloth", PVA, where="along the edges"),
        stuck("tissue", "patch", PASTE),
    )
    reach = reached(partly)
    assert reach.reaches(at(reach, "tissue"), WATER)


def test_it_passes_the_hollow_of_a_tube():
    built = structure(
        part("spine"),
        layer("tube/inner", "kraft-paper"),
        layer("tube/outer", "kraft-paper"),
        stuck("spine", "tube/inner", PASTE),
        fold("tube"),
    )
    reach = reached(built)
    assert reach.reaches(at(reach, "tube/inner"), WATER)


def test_a_piece_that_lies_free_is_wetted_from_below_too():
    built = stack(PASTE, PVA)
    reach = reached(built, off=True)
    assert reach.reaches(at(reach, "l0"), WATER)
    assert not reached(built).reaches(at(reach, "l0"), WATER)


def test_of_two_sides_it_takes_the_one_with_fewer_originals_to_go_through():
    built = structure(
        layer("paper"), part("leather"), stuck("paper", "leather", PASTE, reused=True)
    )
    reach = reached(built, off=True)
    assert reach.through(at(reach, "leather"), WATER) == ("paper",)
    assert reached(built).through(at(reach, "leather"), WATER) == ("leather",)


def test_what_lies_in_a_ring_is_not_come_to():
    ring = structure(layer("a"), layer("b"), stuck("a", "b", PASTE), stuck("b", "a", PASTE))
    reach = reached(ring)
    assert not reach.reaches(at(reach, "b"), WATER)
    assert reach.barrier(at(reach, "b"), WATER) == "nothing comes to it"
    assert reach.through(at(reach, "b"), WATER) == ()
