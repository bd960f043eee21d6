"""A case's page names the cases like it, and in what."""

from __future__ import annotations

import pytest

from casebook.compute.likeness import Feature, Like
from casebook.model.archive import Case
from casebook.model.base import Audience
from casebook.output.contexts import Card
from casebook.output.like_view import like_views
from tests.builders import RICH, WORDING, archive, record, site, written

CARD = Card("../b/index.html", "A ledger", "", "", "", None, None)


@pytest.mark.parametrize(
    ("shared", "told"),
    [
        (
            (
                ("structures", "tight-back"),
                ("damages", "broken"),
                ("operations", "reback"),
                ("operations", "line"),
                ("sewing", "all-along"),
            ),
            "Both tight back, sewn all-along; both broken; both rebacked and lined.",
        ),
        (
            (("sewing", "recessed-cords"), ("materials", "calf"), ("decades", "1870")),
            "Both sewn on recessed cords, covered in calf, of the 1870s.",
        ),
        (
            (("operations", "line"), ("operations", "fix-media"), ("operations", "make-box")),
            "Both lined, with fixing of media and box making.",
        ),
        (
            (("damages", "loss"), ("damages", "broken"), ("damages", "red-rot")),
            "Both broken, with loss and red rot.",
        ),
        ((("operations", "remove-tape"), ("kinds", "map")), "Both map; both with tape removal."),
    ],
)
def test_what_both_have_is_told_in_words(shared: tuple[Feature, ...], told: str) -> None:
    (view,) = like_views([(Like("b", 0.5, shared), CARD)], WORDING)
    assert (view.title, view.href, view.picture) == ("A ledger", "../b/index.html", None)
    assert view.shared == told


def test_no_hidden_case_is_named_or_counted() -> None:
    other = RICH.replace("id: 2025-031", "id: other").replace("was: [2025-030]", "")
    hidden = other.replace("audience: public", "audience: lab")
    page = "cases/2025-031/index.html"
    alone = written(site(archive(record(Case, RICH)), Audience.PUBLIC))[page]
    cases = [record(Case, text) for text in (RICH, hidden)]
    assert written(site(archive(*cases), Audience.PUBLIC))[page] == alone
