"""A short form is found by trying, and only where its type reads it back whole."""

from __future__ import annotations

import pytest

from casebook.authoring.short_forms import joined
from casebook.model.archive import Person
from casebook.model.base import Record
from casebook.model.details import Drying, Scope
from casebook.model.materials import Material, Toning
from casebook.model.object import Came, Walls

SHORT: list[tuple[type[Record], str]] = [
    (Material, "tengujo 5 g/m²"),
    (Material, "tengujo about 5 gsm"),
    (Material, "methyl-cellulose 4 %"),
    (Material, "acrylic-resin 5 % in acetone"),
    (Toning, "acrylic-colour before"),
    (Toning, "acrylic-colour + walnut-ink after, two thin coats"),
    (Drying, "2 h under blotter"),
    (Drying, "overnight under blotter + weights"),
    (Drying, "under blotter + weights"),
    (Scope, "40 of 52"),
    (Came, "3 of 5"),
    (Walls, "1 on, 2 off"),
]


@pytest.mark.parametrize(("cls", "text"), SHORT)
def test_what_a_text_stands_for_becomes_that_text_again(cls, text):
    assert joined(cls, cls.from_text(text)) == text


def test_the_order_in_which_the_keys_were_written_does_not_matter():
    assert joined(Drying, {"under": "blotter", "for": "2 h"}) == "2 h under blotter"


@pytest.mark.parametrize(
    ("cls", "said"),
    [
        (Material, {"is": "tengujo", "colour": "brown"}),
        (Material, {"is": "tengujo", "weight": "thin"}),
        (Material, {"is": "tengujo", "weight": "5 g/m²", "lot": "7", "maker": "x"}),
        (Drying, {"for": "2 h", "until": "dry"}),
        (Drying, {"for": "2 h", "under": ["a board + b"]}),
        (Person, {"role": "conservator", "name": "A. Marsh"}),
        (Material, {}),
    ],
)
def test_what_no_text_stands_for_has_no_short_form(cls, said):
    assert joined(cls, said) is None
