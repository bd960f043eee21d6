"""What could open a place, under the tests and failures on record."""

from __future__ import annotations

from casebook.compute.evidence import Failed, Result, Tried
from casebook.compute.structure import Bond, How, Since, Structure
from casebook.compute.way_back.classes import Class, Reason
from casebook.compute.way_back.graph import Edge, Graph
from casebook.compute.way_back.options import Option, Options
from casebook.model.vocabulary import Opener
from tests.compute.way_back.built import (
    GLUE,
    LEXICON,
    PASTE,
    PVA,
    WATER,
    bears,
    evidence,
    fold,
    grown,
    held,
    joint,
    layer,
    part,
    structure,
    stuck,
    tried,
)

REACHED = lambda how: True  # noqa: E731
OUT_OF_REACH = lambda option: Opener.HEAT in option.needs  # noqa: E731


def options(built: Structure, *found: Tried | Failed) -> tuple[Options, Edge]:
    graph = Graph(built)
    return Options(graph, evidence(*found), LEXICON), graph.edges[-1]


def lining(*adhesives: str, material: str = "linen", **more) -> Structure:
    """A lining on a spine."""
    return structure(
        part("spine"), layer("lining", material), stuck("spine", "lining", *adhesives, **more)
    )


def best(built: Structure, *found: Tried | Failed) -> Option:
    every, edge = options(built, *found)
    return every.best(edge, REACHED)


def test_paste_is_opened_with_moisture_and_without_a_test_it_says_test_first():
    one = best(lining(PASTE))
    assert (one.how, one.test_first) == (Class.MOISTURE, ("spine",))
    assert best(lining(PASTE), *bears("spine")).test_first == ()
    assert best(lining(PASTE), *bears("spine")).price < one.price


def test_what_harms_a_part_is_never_proposed_there():
    one = best(lining(PASTE), tried("spine", Result.HARM, of="red ink"))
    assert one.how is Class.UNKNOWN
    assert one.why == "water is ruled out by a test: it harms red ink on the spine"


def test_an_enzyme_brings_water_so_that_what_water_harms_it_harms_too():
    every, edge = options(lining(PASTE), tried("spine", Result.HARM))
    assert {one.reason for one in every.of(edge)} == {Reason.RULED_OUT}


def test_an_agent_that_failed_here_is_not_proposed_and_others_of_its_kind_are():
    failed = Failed("lining", "water", WATER)
    one = best(lining(PASTE), failed)
    assert (one.how, one.agent) == (Class.MOISTURE, "poultice")
    gone = Failed("lining", "poultice", WATER)
    assert best(lining(PASTE), failed, gone).how is Class.ENZYME


def test_a_failure_elsewhere_says_nothing_here():
    assert best(lining(PASTE), Failed("sheet", "water", WATER)).agent.startswith("water")


def test_what_is_not_named_or_not_on_record_gets_no_agent():
    assert best(lining()).why == "how it holds is not named"
    assert best(lining("casein")).why == "nothing on record opens casein"
    assert best(lining("casein")).agent == ""


def test_a_layer_of_adhesive_is_its_own_adhesive():
    glue = lining(material=GLUE, since=Since.FOUND)
    assert best(glue).how is Class.MOISTURE
    assert best(lining(material="pressure-sensitive-tape", since=Since.FOUND)).how is Class.UNKNOWN


def test_a_part_beside_that_the_agent_harms_costs_more_and_is_named():
    beside = structure(
        part("spine"),
        part("endband"),
        layer("lining", "linen"),
        stuck("spine", "lining", PASTE),
        stuck("lining", "endband", PASTE, reused=True),
    )
    graph = Graph(beside)
    edge = next(one for one in graph.edges if one.upper.name == "lining")
    harm = tried("endband", Result.HARM, of="red silk")
    one = Options(graph, evidence(harm), LEXICON).best(edge, REACHED)
    assert one.beside == (harm,)
    assert one.price > Options(graph, evidence(), LEXICON).best(edge, REACHED).price


def test_out_of_reach_only_what_is_not_wet_is_left():
    every, edge = options(lining(PVA, material="linen"), *bears("spine"))
    assert every.best(edge, OUT_OF_REACH).reason is Reason.HARDLY
    every, edge = options(lining(PASTE))
    assert every.best(edge, OUT_OF_REACH).reason is Reason.OUT_OF_REACH
    board = structure(part("board 1"), layer("lining"), stuck("board 1", "lining", PVA))
    every, edge = options(board)
    assert every.best(edge, REACHED).how is Class.MOISTURE
    assert every.best(edge, OUT_OF_REACH).how is Class.HEAT


def test_a_dispersion_on_original_paper_is_hardly_opened_and_on_a_board_it_may_be():
    assert best(lining(PVA)).why.startswith("hardly anything opens polyvinyl acetate")
    leather = structure(part("spine", "calf"), layer("lining"), stuck("spine", "lining", PVA))
    assert best(leather).how is Class.MOISTURE


def test_old_glue_is_taken_for_aged_and_a_blade_at_an_original_is_a_blade():
    old = lining(GLUE, since=Since.FOUND)
    every, edge = options(old)
    assert [one.how for one in every.of(edge)] == [Class.MOISTURE, Class.BLADE]
    assert {one.means.when for one in every.of(edge) if one.means} == {"aged hard"}


def test_threads_are_cut_and_what_is_only_tied_is_untied():
    sewn = structure(part("spine"), layer("ties"), held("spine", "ties", "sewn"))
    assert best(sewn).how is Class.CUT
    tied = structure(part("spine"), layer("ties"), held("spine", "ties", "tied"))
    assert best(tied).how is Class.HAND


def test_new_material_is_slit_and_an_original_is_not():
    zones = structure(layer("c/a"), layer("c/b"), joint("c/a", "c/b"))
    assert best(zones).how is Class.CUT
    tube = structure(layer("t/inner"), layer("t/outer"), fold("t"))
    assert best(tube).how is Class.CUT
    old = structure(part("c/a"), part("c/b"), joint("c/a", "c/b"))
    assert best(old).how is Class.DAMAGE


def test_what_is_grown_together_or_original_is_damage():
    assert best(structure(part("board"), part("leaf"), grown("board", "leaf"))).how is Class.DAMAGE
    original = Bond("board", "leaf", How.STUCK, (PASTE,))
    assert best(structure(part("board"), part("leaf"), original)).how is Class.DAMAGE


def test_a_put_back_original_is_opened_by_what_put_it_back():
    back = structure(part("spine"), part("label"), stuck("spine", "label", PASTE, reused=True))
    assert best(back).how is Class.MOISTURE


def test_a_film_lets_nothing_wet_through_unless_it_is_not_there_all_over():
    every, edge = options(lining(PVA))
    assert not every.passes(edge, Opener.MOISTURE)
    assert every.passes(edge, Opener.HEAT)
    every, edge = options(lining(PVA, where="along the edges"))
    assert every.passes(edge, Opener.MOISTURE)
    every, edge = options(lining(PASTE))
    assert every.passes(edge, Opener.MOISTURE)


def test_a_wet_agent_may_not_go_through_plastic_or_through_what_it_harms():
    built = structure(part("old"), layer("film", "polyester-film"), stuck("old", "film", PASTE))
    every, edge = options(built, tried("old", Result.HARM))
    assert every.tight(edge.upper, Opener.MOISTURE)
    assert every.tight(edge.lower, Opener.MOISTURE)
    assert not every.tight(edge.lower, Opener.SOLVENT)
