"""Places in words."""

from __future__ import annotations

import pytest

from casebook.output.place_words import place_words
from tests.builders import WORDING


@pytest.mark.parametrize(
    ("reference", "words"),
    [
        ("spine", "the spine"),
        ("endband head", "the head endband"),
        ("text-block", "the text block"),
        ("board 1", "board 1"),
        ("sheet/verso", "the verso of the sheet"),
        ("board 1/inner", "the inner face of board 1"),
        ("volume 3/spine", "the spine of volume 3"),
        ("volume 3/board 1", "board 1 of volume 3"),
        ("volume 3/joint front", "the front joint of volume 3"),
        ("leather-1", "leather 1"),
        ("cloth-lining", "the cloth lining"),
        ("cloth-lining/spine", "the cloth lining on the spine"),
        ("cloth-lining/board 1", "the cloth lining on board 1"),
        ("hollow/outer", "the outer face of the hollow"),
        ("each", "it"),
        ("each/spine", "the spine of it"),
    ],
)
def test_a_place_has_its_article_and_says_what_it_belongs_to(reference: str, words: str) -> None:
    assert place_words(reference, WORDING.lexicon) == words
