"""Citations: a sentence for a footnote, and two forms that other programs read back unchanged."""

from __future__ import annotations

import json
import string
from dataclasses import replace

import pytest
from bibtexparser.entrypoint import parse_string
from bibtexparser.middlewares import LatexDecodingMiddleware
from citeproc import Citation as Cited
from citeproc import CitationItem, CitationStylesBibliography, CitationStylesStyle, formatter
from citeproc.source.json import CiteProcJSON
from hypothesis import given
from hypothesis import strategies as st
from pylatexenc.latex2text import LatexNodes2Text, MacroTextSpec, get_default_latex_context_db

from casebook.model.archive import Case
from casebook.model.base import Gap, Unknowing
from casebook.model.settings import Settings
from casebook.output.citing import author, bibtex, citation, cited, csl_json, escaped
from casebook.values.dates import Date
from tests.builders import RICH, archive, record

CASE = record(Case, RICH)
PAGE = "https://archive.example/cases/2025-031/index.html"
ONE = citation(CASE, archive(CASE), PAGE)

TITLES = st.text(
    st.characters(codec="utf-8", exclude_categories=["C"]) | st.sampled_from(string.punctuation),
    min_size=1,
    max_size=60,
).filter(lambda text: text.strip())


def test_a_citation_is_a_sentence_with_the_address_last() -> None:
    start = (
        "A. Marsh, “Tide-gauge keeper's day book”, treatment case 2025-031, Invented bindery, 2025"
    )
    assert cited(ONE) == f"{start}, {PAGE}"
    assert cited(replace(ONE, address="")) == f"{start}."


def test_what_nobody_said_is_left_out() -> None:
    bare = Case(id="c-1")
    one = citation(bare, archive(bare, settings=Settings(name="Lab")))
    assert cited(one) == "“c-1”, treatment case c-1, Lab."
    assert "author" not in bibtex(one) and "year" not in bibtex(one)
    assert json.loads(csl_json(one))[0].keys().isdisjoint({"author", "issued", "URL", "note"})


def test_a_language_that_nobody_named_is_english() -> None:
    settings = Settings(language=Gap(Unknowing.NOT_RECORDED))
    assert citation(CASE, archive(CASE, settings=settings)).language == "en"


def test_a_case_from_a_publication_names_what_it_was_written_up_from() -> None:
    case = record(Case, "{id: c, record: from-publication, written: {from: [A Journal 3]}}")
    one = citation(case, archive(case))
    assert cited(one).endswith(". Written up from: A Journal 3.")
    assert "note = {Written up from: A Journal 3.}" in bibtex(one)


def test_a_person_who_may_not_be_named_is_cited_by_initials() -> None:
    assert author(CASE, "AM") == "A. Marsh"
    assert author(CASE, "RT") == "RT"


@pytest.mark.parametrize(
    ("date", "parts", "year"),
    [
        ("2025-04-01", (2025, 4, 1), "2025"),
        ("2025-04-01/2025-04-03", (2025, 4), "2025"),
        ("2025-04/2025-06", (2025,), "2025"),
        ("2024/2025", (), "2024–2025"),
    ],
)
def test_a_date_is_cited_as_far_as_it_is_one(date: str, parts: tuple[int, ...], year: str) -> None:
    one = replace(ONE, date=Date.parse(date))
    assert (one.date_parts, one.year) == (parts, year)


def test_a_doubtful_date_says_so_and_one_of_several_years_stands_in_words() -> None:
    about = json.loads(csl_json(replace(ONE, date=Date.parse("2025~"))))[0]["issued"]
    assert about == {"date-parts": [[2025]], "circa": True}
    several = json.loads(csl_json(replace(ONE, date=Date.parse("2024/2025"))))[0]["issued"]
    assert several == {"literal": "2024–2025"}


def decoder() -> LatexDecodingMiddleware:
    """What reads TeX back to signs; three of LaTeX's own names are not among those it knows."""
    names = {"textbraceleft": "{", "textbraceright": "}", "textasciicircum": "^"}
    context = get_default_latex_context_db()
    macros = [MacroTextSpec(name, sign) for name, sign in names.items()]
    context.add_context_category("signs", prepend=True, macros=macros)
    return LatexDecodingMiddleware(decoder=LatexNodes2Text(context, keep_braced_groups=False))


def read_back(text: str) -> dict[str, str]:
    library = parse_string(text, append_middleware=[decoder()])
    assert not library.failed_blocks
    (entry,) = library.entries
    return {"entry": entry.entry_type, "key": entry.key} | {
        field.key: field.value for field in entry.fields
    }


def test_bibtex_is_read_by_a_parser() -> None:
    found = read_back(bibtex(ONE))
    assert (found["entry"], found["key"]) == ("techreport", "case-2025-031")
    assert found["title"] == "Tide-gauge keeper's day book"
    assert found["author"] == "A. Marsh"
    assert (found["institution"], found["year"]) == ("Invented bindery", "2025")
    assert found["url"] == PAGE


@given(TITLES)
def test_every_title_comes_back_from_bibtex_as_it_was(title: str) -> None:
    assert read_back(bibtex(replace(ONE, title=title)))["title"] == " ".join(title.split())


@pytest.mark.parametrize(
    ("text", "tex"),
    [
        ("Salt & 5 % #3 a_b", r"Salt \& 5 \% \#3 a\_b"),
        ("{x} \\ ~ ^ $", (r"\textbraceleft{}x\textbraceright{} \textbackslash{} "
         r"\textasciitilde{} \textasciicircum{} \$")),
        ("Größe – 1--2, ''so''", "Größe – 1-{}-2, '{}'so'{}'"),
    ],
)  # fmt: skip
def test_what_tex_reads_as_more_than_itself_is_written_out(text: str, tex: str) -> None:
    assert escaped(text) == tex


def test_an_address_is_left_as_it_is_but_for_what_would_end_its_field() -> None:
    one = replace(ONE, address="https://a.example/~lab/a_b%20c{}/")
    assert "url = {https://a.example/~lab/a_b%20c%7B%7D/}" in bibtex(one)


def test_csl_json_is_read_by_a_citation_processor() -> None:
    source = CiteProcJSON(json.loads(csl_json(ONE)))
    style = CitationStylesStyle("harvard-cite-them-right", validate=False)
    bibliography = CitationStylesBibliography(style, source, formatter.plain)
    bibliography.register(Cited([CitationItem(ONE.key)]))
    (line,) = map(str, bibliography.bibliography())
    for word in ("A. Marsh", "(2025)", ONE.title, "Treatment case 2025-031", ONE.lab, PAGE):
        assert word in line


CSL = frozenset(
    ["type", "id", "language", "author", "issued", "genre", "note", "number", "publisher"]
) | {"title", "URL"}
"""The keys used, all of them among those of `schemas/input/csl-data.json` (Citation Style Language);
it requires `type` and `id`, has `report` among its types, and allows no other key."""


@given(TITLES)
def test_csl_json_keeps_to_its_schema(title: str) -> None:
    (item,) = json.loads(csl_json(replace(ONE, title=title, sources=("A book",))))
    assert item.keys() <= CSL
    assert (item["type"], item["id"], item["title"]) == ("report", ONE.key, title)
