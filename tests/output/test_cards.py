"""A case's card leads to it, and shows its pictures in a shape that shows the object."""

from __future__ import annotations

from dataclasses import replace

import pytest

from casebook.model.archive import Case
from casebook.output.cards import card, shape_of
from casebook.output.contexts import Pair, PictureView
from tests.builders import PICTURES, RICH, WORDING, archive, record

CASE = record(Case, RICH)
VIEW = PictureView("p", "p.jpg", (), 0, 0, "", "", "before", "", "p.jpg")


def view(size: str) -> PictureView | None:
    width, _, height = size.partition("x")
    return replace(VIEW, width=int(width), height=int(height)) if size else None


def test_a_card_leads_to_the_case() -> None:
    made = card(CASE, archive(CASE), PICTURES, WORDING)
    assert made.href == "cases/2025-031/index.html"
    assert made.about == "Ledger, 1870s, tight back"
    assert made.work
    assert made.shape == ""


@pytest.mark.parametrize(
    ("before", "after", "shape"),
    [
        ("2400x1600", "2400x1600", ""),
        ("1600x1200", "2400x1600", ""),
        ("1600x2400", "2400x1600", "whole"),
        ("1000x1000", "1000x1000", "whole"),
        ("1000x3000", "1000x3000", "whole"),
        ("2400x1000", "2400x1000", "whole"),
        ("9000x900", "8000x1000", "wide"),
        ("9000x900", "2400x1600", "whole"),
        ("2400x1600", "", "whole"),
        ("", "1600x2400", "whole"),
        ("9000x900", "", "wide"),
        ("", "", ""),
    ],
)
def test_pictures_of_a_shape_far_from_their_place_are_not_cropped(
    before: str, after: str, shape: str
) -> None:
    assert shape_of(Pair(view(before), view(after))) == shape
