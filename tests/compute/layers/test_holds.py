"""What a record says of adhesive and hold becomes bonds; what it does not say is unknown."""

from __future__ import annotations

import pytest

from casebook.compute.layers.holds import holds, is_of, named, splits
from casebook.compute.structure import How
from casebook.model.base import known
from casebook.model.treatment import Step
from casebook.reading import read
from casebook.source import parse
from tests.compute.layers.told import LEXICON


def step(text: str) -> Step:
    node = parse("{" + text + "}", "case.md").node
    assert node is not None
    found, faults = read(Step, node, "test")
    assert not faults
    return found


def ways(text: str) -> list[str]:
    one = step(text)
    found = holds(one.adhesive, one.held, LEXICON, one.material)
    return [" ".join([bond.how.value, *bond.adhesives, *bond.held]) for bond in found]


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("adhesive: PVA", ["stuck polyvinyl-acetate"]),
        ("adhesive: unnamed", ["stuck"]),
        ("adhesive: {is: unnamed, evidence: swells with water}", ["stuck"]),
        ("adhesive: unknown", ["unknown"]),
        ("adhesive: not recorded", ["unknown"]),
        ("do: line", ["unknown"]),
        ("adhesive: none", []),
        ("held: sewn", ["held sewn"]),
        ("held: [sewn, tacked], adhesive: none", ["held sewn tacked"]),
        ("held: sewn, adhesive: wheat-starch-paste", ["stuck wheat-starch-paste", "held sewn"]),
        ("held: none", []),
        ("material: animal-glue", ["stuck animal-glue"]),
        ("material: linen", ["unknown"]),
        ("material: animal-glue, adhesive: none", ["stuck animal-glue"]),
        ("material: watercolour, adhesive: none", ["soaked"]),
        ("material: linen, adhesive: none", []),
        ("held: glued", ["stuck"]),
        ("held: [stuck, sewn], adhesive: pva", ["stuck polyvinyl-acetate", "held sewn"]),
        ("adhesive: {mix: {wheat-starch-paste: 3, methyl-cellulose: 1}}",
         ["stuck wheat-starch-paste methyl-cellulose"]),
        ("adhesive: {product: Quayside 7}", ["stuck Quayside 7"]),
    ],
)  # fmt: skip
def test_what_is_said_of_adhesive_and_hold(text: str, found: list[str]) -> None:
    assert ways(text) == found


def test_a_guess_keeps_the_likeliest_first_and_what_it_is_not() -> None:
    guess = "adhesive: {perhaps: [animal-glue, dextrin], not: [bitumen]}"
    (bond,) = holds(step(guess).adhesive, (), LEXICON)
    assert (bond.how, bond.adhesives) == (How.STUCK, ("animal-glue", "dextrin"))
    assert (bond.guessed, bond.ruled_out) == (True, ("bitumen",))


def test_what_it_is_not_is_kept_where_nobody_knows_what_it_is() -> None:
    (bond,) = holds(step("adhesive: {not: [bitumen]}").adhesive, (), LEXICON)
    assert (bond.how, bond.ruled_out) == (How.UNKNOWN, ("bitumen",))


def test_a_material_built_up_beforehand_is_named_by_its_plies() -> None:
    built = step("material: {built-of: [tengujo, linen]}").material
    assert named(built, LEXICON).words == ("tengujo", "linen")


def test_a_material_splits_as_the_record_says_or_else_as_the_vocabulary() -> None:
    def does(text: str) -> bool:
        material = step(f"material: {text}").material
        return splits(material, named(material, LEXICON).words, LEXICON)

    assert does("{is: linen, splits: yes}")
    assert not does("{is: linen}")
    term = LEXICON.term("materials", "tengujo")
    assert does("tengujo") is bool(term and known(term.splits))


def test_the_class_of_a_material_is_that_of_its_likeliest_word() -> None:
    glue = step("material: {perhaps: [animal-glue, linen]}").material
    assert is_of(glue, frozenset({"adhesive"}), LEXICON)
    assert not is_of(None, frozenset({"adhesive"}), LEXICON)
