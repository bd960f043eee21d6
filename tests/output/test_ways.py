"""Ways in lead to the cases that use a term."""

from __future__ import annotations

from casebook.model.archive import Case
from casebook.model.vocabulary import Term
from casebook.output.ways import OTHERS, Way, groups, natures, ways_of
from casebook.values.language import ENGLISH, language
from casebook.values.notation import Notation
from casebook.vocabulary import builtin
from tests.builders import RICH, WORDING, record

WAYS = ways_of([record(Case, RICH)], WORDING.lexicon)


def test_each_way_leads_to_a_case() -> None:
    assert all(way.cases == ("2025-031",) for way in WAYS)
    addresses = {way.address for way in WAYS}
    assert "ways/structure/tight-back/index.html" in addresses
    assert "ways/decade/1870s/index.html" in addresses


def test_a_group_shows_its_most_used_and_counts_all() -> None:
    (group,) = [one for one in groups(WAYS, "", 1) if one.title == "Material"]
    assert len(group.links) == 1
    assert group.total > 1


def test_no_cases_have_no_ways() -> None:
    assert ways_of([], WORDING.lexicon) == ()


def test_all_materials_stand_by_what_they_are_with_what_acts_and_goes_behind() -> None:
    found = natures([way for way in WAYS if way.kind == "materials"], "../")
    titles = [one.title for one in found]
    assert titles[0] == "Cloth"
    assert titles.index("Adhesives and sizes") < titles.index("Water and solutions")
    (water,) = [one for one in found if one.title == "Water and solutions"]
    assert [(one.text, one.href, one.figure) for one in water.links] == [
        ("water", "../materials/water/index.html", "1")
    ]


def test_every_class_of_the_vocabulary_has_its_group() -> None:
    terms = builtin()
    ways = [
        Way(shown, "", name, (), name, term, kind)
        for kind, shown in (
            ("materials", "materials"),
            ("agents", "materials"),
            ("operations", "operations"),
        )
        for name, term in terms[kind].items()
    ]
    others = {way.term.class_ for way in ways if way.term and natures([way], "")[0].title == OTHERS}
    assert others == {"other"}


def test_a_class_of_the_labs_own_stands_among_the_others() -> None:
    own = Way("materials", "", "moon cheese", (), "moon-cheese", Term(class_="cheese"))
    assert [one.title for one in natures([own], "")] == [OTHERS]


def test_structures_and_decades_stand_in_one_group() -> None:
    for kind in ("structures", "decades"):
        (group,) = natures([way for way in WAYS if way.kind == kind], "")
        assert group.title == ""
        assert group.links


def test_a_decade_is_named_in_the_labs_language() -> None:
    german = Notation(language("de") or ENGLISH)
    found = ways_of([record(Case, RICH)], WORDING.lexicon, german)
    (way,) = [one for one in found if one.kind == "decades"]
    assert (way.title, way.address) == ("1870er Jahre", "ways/decade/1870s/index.html")
