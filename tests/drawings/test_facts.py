"""What the record says beside the structure."""

from __future__ import annotations

from casebook.drawings.facts import NO_FACTS, facts_of, layer_of
from tests.compute.written import LEDGER, case
from tests.drawings.structures import LEXICON, added


def test_rises_and_weights_come_from_the_record():
    facts = facts_of(case(LEDGER), LEXICON)
    assert facts.rises == {"spine": 14_000}
    assert facts.weights == {"release-lining": "5 g/m²"}


def test_a_step_is_called_by_its_sitting_and_its_place_there():
    text = "episodes: [{episode: 2, steps: [looked, looked]}, {episode: 3, steps: [looked]}]"
    facts = facts_of(case(text), LEXICON)
    assert [facts.step(n) for n in (1, 2, 3)] == [
        "sitting 2, step 1",
        "sitting 2, step 2",
        "sitting 3, step 1",
    ]
    assert NO_FACTS.step(7) == "step 7"
    loose = facts_of(case("steps: [looked, looked]"), LEXICON)
    assert loose.step(2) == "step 2"


def test_in_a_sitting_with_a_run_of_steps_the_sitting_alone_is_named():
    text = (
        "episodes: [{episode: 1, steps: [looked, {each: [volume 1, volume 2], steps: [looked]}]}]"
    )
    assert set(facts_of(case(text), LEXICON).steps.values()) == {"sitting 1"}


def test_a_sheet_is_as_wide_as_the_object_where_nobody_measured_it():
    facts = facts_of(case("{object: {size: {width: 80 cm}}, parts: {sheet: {}}}"), LEXICON)
    assert facts.widths["sheet"] == 800_000


def test_a_part_is_a_spine_by_name_or_by_what_it_is_said_to_be():
    facts = facts_of(case("parts: {back: {is: spine}}"), LEXICON)
    assert facts.is_spine("back")
    assert facts.is_spine("volume 2/Spine")
    assert not facts.is_spine("spine piece")


def test_a_zone_stands_for_its_layer_and_a_whole_layer_for_itself():
    assert layer_of(added("lining/spine", 1, of="lining", zone="spine")) == "lining"
    assert layer_of(added("lining", 1)) == "lining"


def test_a_material_is_written_by_its_label_or_as_it_was_written():
    assert facts_of(case("id: x"), LEXICON).material("polyvinyl-acetate") == "polyvinyl acetate"
    assert NO_FACTS.material("my-own paste") == "my own paste"
