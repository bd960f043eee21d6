"""The frame of every page finds its way back to the top."""

from __future__ import annotations

import pytest

from casebook.model.archive import Case
from casebook.model.base import Audience
from casebook.output.frame import root_of
from tests.builders import RICH, archive, record, site


@pytest.mark.parametrize(
    ("address", "root"),
    [("index.html", ""), ("cases/index.html", "../"), ("cases/a/index.html", "../../")],
)
def test_the_way_back_to_the_top(address: str, root: str) -> None:
    assert root_of(address) == root


def test_the_lab_s_own_copy_says_so_on_every_page_and_the_public_one_does_not() -> None:
    shown = archive(record(Case, RICH))
    sentence = "not for publication"
    assert all(sentence in page.frame().header for page in site(shown, Audience.LAB).pages)
    assert not any(sentence in page.frame().header for page in site(shown, Audience.PUBLIC).pages)
