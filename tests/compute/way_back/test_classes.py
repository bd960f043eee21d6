"""The table of classes: gentler is always cheaper, within a class by ease."""

from __future__ import annotations

from itertools import pairwise

from casebook.compute.way_back.classes import OF_KIND, RANK, Class, harshest, openable, price
from casebook.model.vocabulary import Opener


def test_the_classes_are_in_the_order_of_the_trade():
    assert [one.name for one in sorted(Class, key=RANK.__getitem__)] == [
        "CUT",
        "RIDE",
        "HAND",
        "SPLIT",
        "MOISTURE",
        "ENZYME",
        "HEAT",
        "SOLVENT",
        "BLADE",
        "UNKNOWN",
        "DAMAGE",
    ]


def test_a_thousand_bonds_of_a_gentler_class_are_cheaper_than_one_of_the_next():
    worst = {"test_first": True, "beside_harm": True, "at_original": True}
    for gentle, harsh in pairwise(Class):
        assert 1000 * price(gentle, 1, **worst) < price(harsh)


def test_within_a_class_what_opens_easily_is_cheaper():
    prices = [price(Class.MOISTURE, ease) for ease in (5, 4, 3, 2, 1)]
    assert prices == sorted(prices)
    assert len(set(prices)) == 5


def test_no_test_and_a_part_beside_that_suffers_cost_more():
    plain = price(Class.MOISTURE)
    assert plain < price(Class.MOISTURE, at_original=True) < price(Class.MOISTURE, test_first=True)
    assert price(Class.MOISTURE, test_first=True) < price(Class.MOISTURE, beside_harm=True)
    assert all(isinstance(price(one), int) for one in Class)


def test_what_is_unknown_or_damages_an_original_is_never_proposed():
    assert [one for one in Class if not openable(one)] == [Class.UNKNOWN, Class.DAMAGE]


def test_every_kind_of_agent_has_a_class():
    assert set(OF_KIND) == set(Opener)


def test_the_harshest_of_several_counts():
    assert harshest([Class.CUT, Class.SOLVENT, Class.MOISTURE]) is Class.SOLVENT
    assert harshest([]) is Class.HAND
