"""What programs read of a case: JSON-LD that says only what the page says."""

from __future__ import annotations

import json

import pytest

from casebook.model.archive import Case
from casebook.output.linked_data import CONTEXT, case_data, dumped, picture_addresses
from casebook.vocabulary import Lexicon, builtin
from tests.builders import RICH, archive, record

LEXICON = Lexicon(builtin())
PAGE = "https://archive.example/cases/2025-031/index.html"


def data(text: str) -> dict:
    case = record(Case, text)
    return json.loads(case_data(case, archive(case), LEXICON, PAGE, ("https://a.example/1.jpg",)))


def test_a_case_is_an_article_about_a_book() -> None:
    found = data(RICH)
    assert found["@context"] == CONTEXT
    assert (found["@type"], found["headline"]) == ("Article", "Tide-gauge keeper's day book")
    assert (found["url"], found["datePublished"]) == (PAGE, "2025-04-03")
    assert found["creator"] == [{"@type": "Person", "name": "A. Marsh"}]
    assert found["about"]["@type"] == "Book"
    assert found["about"]["size"] == "16 1/4 in × 268 mm"
    assert found["image"] == ["https://a.example/1.jpg"]


@pytest.mark.parametrize(
    ("thing", "kind"),
    [("{kind: map}", "Map"), ("{kind: letter}", "CreativeWork"), ("{}", "CreativeWork")],
)
def test_an_object_that_is_no_book_is_called_what_it_is(thing: str, kind: str) -> None:
    assert data(f"{{id: a, object: {thing}}}")["about"]["@type"] == kind


def test_a_date_is_given_only_where_other_programs_can_read_it() -> None:
    assert "dateCreated" not in data("{id: a, object: {made: 187X}}")["about"]
    assert data("{id: a, object: {made: 1874}}")["about"]["dateCreated"] == "1874"


def test_what_is_not_said_is_left_out() -> None:
    found = data("{id: a}")
    assert "creator" not in found
    assert "datePublished" not in found


def test_nothing_in_a_record_can_end_the_script_element() -> None:
    text = dumped({"name": "</script><script>alert(1)</script> & <!--"})
    assert "<" not in text
    assert json.loads(text)["name"].startswith("</script>")


def test_pictures_have_addresses_only_where_the_site_has_one() -> None:
    assert picture_addresses("", {}) == ()
