"""A case's page names the cases like it, and in what."""

from __future__ import annotations

from casebook.compute.likeness import Like
from casebook.model.archive import Case
from casebook.model.base import Audience
from casebook.output.like_view import like_lines
from casebook.output.wording import Wording, text_of
from casebook.vocabulary import Lexicon, builtin
from tests.builders import RICH, archive, record, site, written


def test_a_like_case_is_told_with_its_reasons() -> None:
    wording = Wording(Lexicon(builtin()), "../../", {"b": ("b", "A ledger")})
    shared = (("structures", "tight-back"), ("damages", "red-rot"), ("decades", "1870"))
    (line,) = like_lines([Like("b", 0.5, shared)], wording)
    assert text_of(line) == "A ledger: tight back, red rot, 1870s."
    assert line[0].href == "../../cases/b/index.html"


def test_no_hidden_case_is_named_or_counted() -> None:
    other = RICH.replace("id: 2025-031", "id: other").replace("was: [2025-030]", "")
    hidden = other.replace("audience: public", "audience: lab")
    page = "cases/2025-031/index.html"
    alone = written(site(archive(record(Case, RICH)), Audience.PUBLIC))[page]
    cases = [record(Case, text) for text in (RICH, hidden)]
    assert written(site(archive(*cases), Audience.PUBLIC))[page] == alone
