"""Searching the demo archive as a conservator does: known cases by their description, results, keys."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Literal
from urllib.parse import urlencode

import pytest
from axe_playwright_python.sync_playwright import Axe

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

Open = Callable[..., "Page"]

PAGE = "search/index.html"
OPTIONS = {"runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]}

KNOWN = [
    ("tight back broken joint", 2, "2025-031"),
    ("broken joint on a tight back", 2, "1991-006"),
    ("upper joint split, publisher's cloth, children's book", 1, "2025-009"),
    ("wooden boards with broken clasps", 1, "2025-024"),
    ("alum tawed skin, split board", 1, "2025-024"),
    ("tape stains on a playbill", 1, "2025-019"),
    ("folded map split along the folds", 1, "2025-044"),
    ("tideline on an engraved chart", 1, "2025-044"),
    ("photograph album with torn windows", 1, "2025-049"),
    ("painted scroll with flaking paint", 1, "2025-052"),
    ("limp vellum shrunk and cockled", 1, "2025-058"),
    ("mould on a parchment account book", 1, "2025-058"),
    ("hollow back half calf, two volumes, cracked joints", 1, "2025-063"),
    ("pressed seaweeds", 1, "2025-070"),
    ("green cloth with arsenic", 2, "2025-070"),
    ("green book cloth, spine hanging, notes", 1, "1984-017"),
    ("spine stiff with pva glue, will not open", 1, "2025-077"),
    ("rebacked in 1991", 1, "1991-006"),
    ("brittle tracing paper", 1, "2026-003"),
    ("poster lined on linen, flaking ink", 1, "2026-011"),
    ("scrapbook with loose cuttings", 1, "2025-036"),
    ("red rotted calf", 1, "2025-031"),
    ("head band", 2, "2025-031"),
    ("account book 18th century", 1, "2025-058"),
    ("1831", 1, "2025-019"),
    ("TG 4", 1, "2025-031"),
    ("2025-031", 1, "2025-031"),
    ("EN 27", 1, "2026-003"),
]
"""What somebody types, among how many first results the case must be, and which case it is."""


@pytest.fixture(scope="module")
def lab_site(site: Path, build: Callable[..., None]) -> Path:
    """The folder of the lab's own site of the demo archive: it shows all of its cases."""
    build(site.parent, "--audience", "lab")
    return site.parent / "site-lab"


@pytest.fixture(scope="module")
def lab_search(lab_site: Path, browser: Browser) -> Page:
    """The search page of the lab's site, open for many questions."""
    page = browser.new_context().new_page()
    page.goto((lab_site / PAGE).as_uri())
    return page


def ask(page: Page, question: str) -> None:
    page.evaluate("(query) => { location.hash = query; }", urlencode({"q": question}))
    page.wait_for_function(
        "(text) => document.getElementById('q').value === text", arg=question, polling=10
    )


def cases(page: Page) -> list[str]:
    links = page.locator(".result-title a").evaluate_all("all => all.map(one => one.href)")
    return [link.split("/")[-2] for link in links]


def of(site: Path, question: str) -> str:
    return f"{(site / PAGE).as_uri()}#{urlencode({'q': question})}"


@pytest.mark.parametrize(("question", "among", "case"), KNOWN)
def test_a_case_is_found_by_its_description(
    lab_search: Page, question: str, among: int, case: str
) -> None:
    ask(lab_search, question)
    assert case in cases(lab_search)[:among]


def test_every_case_of_the_archive_is_one_of_the_known(lab_site: Path) -> None:
    there = {one.name for one in (lab_site / "cases").iterdir() if one.is_dir()}
    assert {case for _, _, case in KNOWN} == there


@pytest.mark.parametrize("case", sorted({case for _, _, case in KNOWN}))
def test_a_case_is_first_by_its_own_number_and_alone(lab_search: Page, case: str) -> None:
    ask(lab_search, case)
    assert cases(lab_search) == [case]


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("colour", "color"),
        ("moulds", "mold"),
        ("joints", "joint"),
        ("leaves", "leaf"),
        ("lined", "lining"),
        ("tightback", "tight back"),
        ("tight-back", "tight back"),
        ("Tight Back", "tight back"),
        ("the tight back of the book", "tight back book"),
    ],
)
def test_spellings_of_one_thing_find_the_same(lab_search: Page, one: str, other: str) -> None:
    ask(lab_search, one)
    found = cases(lab_search)
    ask(lab_search, other)
    assert found
    assert set(found) == set(cases(lab_search))


def test_a_term_outweighs_its_words_in_prose(lab_search: Page) -> None:
    ask(lab_search, "tight back")
    assert set(cases(lab_search)[:3]) == {"2025-031", "1991-006", "2025-077"}


def test_the_whole_name_of_a_term_outweighs_a_part_of_another(lab_search: Page) -> None:
    ask(lab_search, "linen")
    assert lab_search.locator(".result-why").first.inner_text() == "linen"


def test_the_beginning_of_a_word_is_enough_while_typing(site: Path, open_page: Open) -> None:
    page = open_page(site / PAGE)
    page.locator("#q").press_sequentially("headb")
    page.wait_for_selector("#results li")
    assert "found" in page.inner_text("#found")
    assert "endband (headband)" in page.inner_text(".result-why")
    page.click(".result-title a")
    assert "/cases/" in page.url


def test_a_slip_of_the_pen_is_read_as_what_is_written_and_said_to_be_so(
    site: Path, open_page: Open
) -> None:
    page = open_page(of(site, "marbeld"))
    assert "“marbeld” stands nowhere; read as “marbled”" in page.inner_text("#found")
    assert "2025-031" in cases(page)


def test_nothing_found_offers_like_words_and_the_ways_in(site: Path, open_page: Open) -> None:
    page = open_page(of(site, "paperboardish"))
    assert page.inner_text("#found").startswith("No case found. Words that look like it: ")
    assert page.get_by_role("heading", name="Ways in", exact=True).is_visible()
    word = page.locator("#found a").first
    wanted = word.inner_text()
    word.click()
    page.wait_for_selector(".result")
    assert page.input_value("#q") == wanted
    assert page.evaluate("document.activeElement.id") == "q"


def test_a_result_shows_why_it_was_found_with_the_words_marked(site: Path, open_page: Open) -> None:
    page = open_page(of(site, "tight back broken joint"))
    result = page.locator(".result", has_text="Tide-gauge keeper")
    assert result.locator(".result-about").inner_text() == "Ledger, 1870s, tight back"
    reasons = result.locator(".result-why li").all_inner_texts()
    assert sorted(reasons) == ["front joint: broken", "tight back"]
    marks = result.locator(".result-why mark").all_inner_texts()
    assert sorted(marks) == ["back", "broken", "joint", "tight"]
    assert result.locator(".result-passage mark").count() > 1


def test_a_passage_is_cut_between_words(site: Path, open_page: Open) -> None:
    page = open_page(of(site, "paper"))
    passages = page.locator(".result-passage").all_inner_texts()
    assert any(one.endswith(" …") for one in passages)
    written = page.evaluate("casebookIndex.flatMap((one) => [...one.facts, ...one.passages])")
    words = {word for text in written for word in text.split()}
    for one in passages:
        assert len(one) < 300
        assert set(one.removeprefix("… ").removesuffix(" …").split()) <= words


def test_pictures_of_a_result_say_their_size_and_wait_to_be_seen(
    site: Path, open_page: Open
) -> None:
    page = open_page(of(site, "tide gauge"))
    pictures = page.locator(".result-pictures").first.locator("img")
    assert pictures.count() == 2
    for name, value in (("alt", ""), ("loading", "lazy")):
        assert pictures.first.get_attribute(name) == value
    assert int(pictures.first.get_attribute("width") or 0) > 100
    page.wait_for_function("document.querySelector('.result-pictures img').naturalWidth > 0")


def test_a_term_that_is_asked_for_leads_to_its_page(site: Path, open_page: Open) -> None:
    page = open_page(of(site, "Wheat-starch pastes"))
    link = page.locator(".result-way a")
    assert link.inner_text() == f"All {len(cases(page))} cases with wheat starch paste"
    link.click()
    assert page.url.endswith("materials/wheat-starch-paste/index.html")


def test_the_address_carries_the_question_and_the_back_button_goes_back(
    site: Path, open_page: Open
) -> None:
    page = open_page(of(site, "calf"))
    page.fill("#q", "vellum cover")
    page.wait_for_url("**#q=vellum+cover")
    page.press("#q", "Enter")
    assert page.evaluate("document.activeElement.id") == "q"
    page.fill("#q", "scroll")
    page.wait_for_url("**#q=scroll")
    page.click(".result-title a")
    page.wait_for_url("**/cases/**")
    page.go_back()
    page.wait_for_selector(".result")
    assert (page.input_value("#q"), cases(page)[0]) == ("scroll", "2025-052")
    page.go_back()
    page.wait_for_function("document.getElementById('q').value === 'vellum cover'")
    page.go_back()
    page.wait_for_function("document.getElementById('q').value === 'calf'")


def test_escape_clears_the_field_and_the_results(site: Path, open_page: Open) -> None:
    page = open_page(of(site, "calf"))
    page.focus("#q")
    page.keyboard.press("Escape")
    assert page.input_value("#q") == ""
    assert page.locator(".result").count() == 0
    assert page.inner_text("#found") == ""
    assert page.evaluate("document.activeElement.id") == "q"


def test_what_is_typed_is_text_and_nothing_else(site: Path, open_page: Open) -> None:
    page = open_page(of(site, '<img src=x onerror="document.title=1"> "\' \\ ((('))
    assert page.locator("#found img, #results img[src=x]").count() == 0
    assert "No case" in page.inner_text("#found") or cases(page)


@pytest.mark.parametrize("question", ["the", "?", " ", "a of"])
def test_a_question_without_a_word_to_look_for_finds_nothing(
    site: Path, open_page: Open, question: str
) -> None:
    page = open_page(of(site, question))
    assert cases(page) == []


@pytest.mark.parametrize("page_address", ["index.html", "cases/2025-031/index.html"])
def test_the_search_fields_of_other_pages_lead_to_results(
    site: Path, open_page: Open, page_address: str
) -> None:
    page = open_page(site / page_address)
    field = page.locator('input[type="search"]:visible')
    field.fill("tide gauge")
    field.press("Enter")
    page.wait_for_selector(".result")
    assert cases(page)[0] == "2025-031"


def test_without_scripts_the_page_says_so_and_offers_the_ways_in(
    site: Path, open_page: Open
) -> None:
    page = open_page(site / PAGE, scripts=False)
    assert "needs scripts" in page.inner_text("main")
    assert page.get_by_role("link", name="tight back").count() > 0


MANY = """
  const all = [];
  all.push = (...entries) => entries.forEach((one) => {
    for (let n = 0; n < 30; n += 1) all[all.length] = { ...one, id: one.id + "-" + n };
  });
  window.casebookIndex = all;
"""
"""Makes thirty cases of each."""


def test_the_rest_of_many_results_is_shown_when_asked_for(site: Path, browser: Browser) -> None:
    page = browser.new_page()
    page.add_init_script(MANY)
    page.goto(of(site, "1831"))
    page.wait_for_selector(".result")
    assert page.inner_text("#found") == "30 cases found."
    shown = page.locator(".result")
    assert shown.count() == 20
    page.get_by_role("button", name="Show the other 10").click()
    assert shown.count() == 30
    focused = page.evaluate("document.activeElement.href")
    page.close()
    assert "/cases/" in focused


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [320, 1280])
@pytest.mark.parametrize("question", ["tight back broken joint", "linen", "xqzzw"])
def test_axe_finds_nothing_among_results_and_nothing_scrolls_sideways(
    site: Path, browser: Browser, question: str, width: int, scheme: Literal["light", "dark"]
) -> None:
    context = browser.new_context(
        viewport={"width": width, "height": 800}, color_scheme=scheme, bypass_csp=True
    )
    page = context.new_page()
    page.goto(of(site, question))
    wide = page.evaluate("document.documentElement.scrollWidth")
    found = Axe().run(page, options=OPTIONS).response["violations"]
    context.close()
    assert wide <= width
    assert [(one["id"], one["nodes"][0]["html"]) for one in found] == []


def test_searching_breaks_nothing(site: Path, open_page: Open) -> None:
    page = open_page(site / PAGE)
    broken: list[str] = []
    page.on("console", lambda said: broken.append(said.text))
    page.on("pageerror", lambda fault: broken.append(str(fault)))
    page.reload()
    for question in ("tight", "marbeld", "xqzzw", "", "linen"):
        page.fill("#q", question)
        page.wait_for_timeout(250)
    assert broken == []


def test_what_is_asked_on_arrival_pushes_nothing_about(site: Path, open_page: Open) -> None:
    page = open_page(of(site, "tight back"), width=390, height=844)
    page.get_by_role("status").get_by_text("cases").wait_for()
    shifts = page.evaluate(
        """() => new Promise((done) => {
            const sum = (list) => list.getEntries().reduce((all, one) => all + one.value, 0);
            new PerformanceObserver((list) => done(sum(list))).observe({type: "layout-shift", buffered: true});
            setTimeout(() => done(0), 400);
        })"""
    )
    assert shifts < 0.1
    assert page.get_by_role("heading", name="Ways in").is_visible()
