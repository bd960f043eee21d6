"""Lists of cases: every case on one page of each list, in order; a term's page tells how it held."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import date, timedelta
from functools import cache
from itertools import takewhile
from posixpath import dirname, join, normpath

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook.model.archive import Case
from casebook.model.base import Audience
from casebook.output.lists import MOST, sheets, year_of
from casebook.output.site import Site
from tests.builders import archive, record, site
from tests.output.plain import plain_lines

TEXT = """
id: c-{n}
title: Case {n}
audience: public
dates: {{received: {received}}}
bindings: [{{state: on-arrival, structure: tight-back}}]
episodes:
  - date: 2010-01-01
    steps: [{{do: line, adds: lining, onto: spine, material: linen, adhesive: wheat-starch-paste}}]
"""
HELD = "follow-up: [{{date: 2012-01-01, layer: lining, state: {}}}]"
LISTS = {
    "cases/index.html": 120,
    "materials/linen/index.html": 120,
    "ways/structure/tight-back/index.html": 120,
    "ways/operation/line/index.html": 120,
    "materials/gelatine/index.html": 7,
}


def written(n: int) -> Case:
    """A case that came ten weeks after the one before it, every seventeenth with gelatine."""
    received = date(2000, 1, 1) + timedelta(weeks=10 * n)
    text = TEXT.format(n=n, received=received.isoformat())
    return record(Case, text.replace("paste}", "paste, agent: gelatine}") if n % 17 == 1 else text)


@cache
def many() -> Site:
    undated = replace(written(0), dates=None)
    return site(archive(*(written(n) for n in range(1, 120)), undated), Audience.PUBLIC)


def bodies(made: Site, first: str) -> list[str]:
    """The pages of one list, by following the way to the earlier cases."""
    pages = {page.address: page for page in made.pages}
    found, address = [], first
    while address:
        found.append(str(pages[address].body()))
        onward = re.search(r'rel="next" href="([^"]+)"', found[-1])
        address = normpath(join(dirname(address), onward[1])) if onward else ""
    return found


def listed(body: str) -> list[str]:
    return re.findall(r'class="card-title"><a href="[./]*cases/([\w-]+)/index\.html"', body)


@pytest.mark.parametrize(("first", "count"), LISTS.items())
def test_each_case_stands_on_one_page_of_a_list_in_order(first: str, count: int) -> None:
    found = [listed(body) for body in bodies(many(), first)]
    every = [name for page in found for name in page]
    numbers = [int(name.removeprefix("c-")) for name in every]
    assert len(every) == len(set(every)) == count
    assert numbers == sorted(numbers, reverse=True)
    assert all(len(page) <= MOST for page in found)


def test_a_page_says_which_it_is_and_leads_both_ways() -> None:
    pages = {page.address: page for page in many().pages}
    second = pages["materials/linen/page/2/index.html"]
    assert second.title == "Linen, page 2 of 3"
    assert "<title>Linen, page 2 of 3" in second.frame().head
    body = str(second.body())
    assert 'rel="prev" href="../../../../materials/linen/index.html">Newer cases</a>' in body
    assert 'rel="next" href="../../../../materials/linen/page/3/index.html">Earlier cases' in body
    assert "Page 2 of 3" in plain_lines(body)[-1]


def test_what_is_told_of_a_term_stands_on_its_first_page_alone() -> None:
    first, second, _ = bodies(many(), "materials/linen/index.html")
    assert "How it held" in first
    assert "Used for" in first
    assert "How it held" not in second
    assert "Used for" not in second


def test_a_short_list_has_no_pages() -> None:
    (body,) = bodies(many(), "materials/gelatine/index.html")
    assert "Pages of this list" not in body
    assert not [one for one in many().pages if "gelatine/page" in one.address]


def test_all_cases_stand_by_year_with_ways_to_each() -> None:
    first, second, third = bodies(many(), "cases/index.html")
    assert plain_lines(first)[1].startswith("- 2022 ")
    assert "## 2022" in plain_lines(first)
    jumps = re.findall(r'href="([^"]*)#(year-\w+)">', first)
    by_page = {"": first, "../cases/page/2/index.html": second, "../cases/page/3/index.html": third}
    assert len(jumps) == 24
    assert all(f'id="{anchor}"' in by_page[page] for page, anchor in jumps)
    assert "## Year not recorded" in plain_lines(third)
    assert "#year-" not in second


def test_an_empty_archive_says_so() -> None:
    pages = {page.address: page for page in site(archive(), Audience.PUBLIC).pages}
    assert "No case is shown" in pages["cases/index.html"].body()


@given(st.integers(0, 500))
def test_sheets_hold_every_case_once(count: int) -> None:
    cases = [Case(id=str(n)) for n in range(count)]
    found = list(sheets(cases))
    assert [case for sheet in found for case in sheet.cases] == cases
    assert {sheet.of for sheet in found} == {max(len(found), 1)}
    assert [sheet.number for sheet in found] == list(range(1, len(found) + 1))


def test_no_page_of_a_list_takes_the_place_of_a_case() -> None:
    named = [replace(written(n), id=name) for n, name in enumerate(("2", "page", "all"))]
    more = [written(n) for n in range(3, 60)]
    addresses = [page.address for page in site(archive(*named, *more), Audience.PUBLIC).pages]
    assert len(addresses) == len(set(addresses))


def test_a_year_is_that_in_which_a_case_came() -> None:
    assert year_of(record(Case, "{id: c, dates: {received: 1984-03}}")) == "1984"
    assert year_of(record(Case, "{id: c, dates: {received: not recorded}}")) == ""


def told(audience: Audience, *cases: Case) -> list[str]:
    pages = {page.address: page for page in site(archive(*cases), audience).pages}
    lines = plain_lines(str(pages["materials/linen/index.html"].body()))
    below = lines[lines.index("## How it held") + 1 :]
    return list(takewhile(lambda line: not line.startswith("#"), below))


def case(n: int, state: str, **controls: str) -> Case:
    more = "".join(f"{key}: {value}\n" for key, value in controls.items())
    return record(Case, f"{TEXT.format(n=n, received='2010')}{HELD.format(state)}\n{more}")


def test_an_audience_is_told_only_of_what_it_sees() -> None:
    shown, hidden = case(1, "sound"), replace(case(2, "failed"), audience=Audience.LAB)
    withheld = case(3, "lifting", structure="lab")
    which = "in which it was left on the object"
    assert told(Audience.PUBLIC, shown, hidden, withheld) == [
        f"The one case {which} was looked at again: sound.",
        "- Case 1: the lining, sound after 2 years.",
    ]
    assert told(Audience.LAB, shown, hidden, withheld) == [
        f"All 3 cases {which} were looked at again: sound in 1, lifting in 1, failed in 1.",
        "- Case 2: the lining, failed after 2 years.",
        "- Case 3: the lining, lifting after 2 years.",
        "- Case 1: the lining, sound after 2 years.",
    ]


def test_a_hidden_case_that_treats_it_again_leaves_no_trace() -> None:
    first = case(1, "sound")
    again = record(
        Case, "{id: c-9, audience: lab, history: [{case: c-1, state: failed, because: zzz}]}"
    )
    assert told(Audience.PUBLIC, first, again) == told(Audience.PUBLIC, first)
    assert "zzz" not in str(told(Audience.LAB, first, again))
    assert "treated again in c-9" in told(Audience.LAB, first, again)[1]
