"""Claims on how a layer comes off, and time noted for the whole."""

from __future__ import annotations

from casebook.model.outcome import Lump, Reversibility
from casebook.reading import read
from casebook.source import parse


def test_prose_alone_stands_for_what_reversibility_says() -> None:
    node = parse('x: "Comes off with a damp poultice."', "case.md").node
    value, faults = read(Reversibility, node.entries[0].value, "a")  # type: ignore[union-attr]
    assert (value.says, value.claims, faults) == ("Comes off with a damp poultice.", (), ())


def test_a_claim_names_its_layers_and_what_opens_them() -> None:
    text = "claims: [{takes-off: cloth-lining, with: water, leaves: nothing}]"
    value, faults = read(Reversibility, parse(text, "case.md").node, "a")  # type: ignore[arg-type]
    assert faults == ()
    assert isinstance(value.claims, tuple)
    assert value.claims[0].takes_off == ("cloth-lining",)


def test_a_bare_time_is_what_the_whole_took() -> None:
    node = parse("time: 113 h", "case.md").node
    value, _ = read(Lump, node.entries[0].value, "a")  # type: ignore[union-attr]
    assert str(value.spent) == "113 h"
