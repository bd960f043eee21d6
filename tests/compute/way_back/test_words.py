"""Names of things as a hand reads them."""

from __future__ import annotations

import pytest

from casebook.compute.way_back.words import listed, name, the


@pytest.mark.parametrize(
    ("thing", "said"),
    [
        ("spine", "the spine"),
        ("release-lining", "the release lining"),
        ("board 1", "board 1"),
        ("cloth-lining/board 1", "the cloth lining at board 1"),
        ("board 1/sides", "the sides of board 1"),
        ("volume 1/board 2", "board 2 of volume 1"),
        ("volume 1/joint-lining", "the joint lining of volume 1"),
        ("volume 1/lining/board 2", "the lining at board 2 of volume 1"),
        ("strap/clasp", "the strap at the clasp"),
        ("volume 1/tube/inner", "the inner wall of the tube of volume 1"),
        ("tube/inner", "the inner wall of the tube"),
    ],
)
def test_a_thing_has_its_article_where_it_takes_one(thing: str, said: str):
    assert the(thing) == said


def test_without_an_article_it_is_the_name_alone():
    assert name("cloth-lining/spine") == "cloth lining at the spine"


def test_a_list_reads_as_one():
    assert listed([]) == ""
    assert listed(["a"]) == "a"
    assert listed(["a", "b"]) == "a and b"
    assert listed(["a", "b", "c"]) == "a, b and c"
