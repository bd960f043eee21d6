"""What opens a material: every row of the published table, the cautious choice, wider terms."""

from __future__ import annotations

import pytest

from casebook.compute.releases import Means, class_of, every_release, releases_of, seals, wider
from casebook.model.base import items
from casebook.model.vocabulary import Opener, Term
from casebook.vocabulary import Lexicon, builtin, extend
from tests.compute.written import reference

LEXICON = Lexicon(builtin())
ROWS = reference("releases.csv")
TERM_OF = {
    "starch paste with alum or glue added": "starch-paste-with-alum-or-glue",
    "animal-glue, aged hard": "animal-glue",
    "pva-dispersion on original paper": "polyvinyl-acetate",
    "acrylic-dispersion film (tissue)": "acrylic-dispersion",
    "dried dispersions in general (vinyl acetate, acrylic)": "dispersion",
    "poly(ethyl oxazoline) tissue": "poly-ethyl-oxazoline",
    "eva-hot-melt-film": "heat-seal-film",
    "hot-melt spine adhesive (publisher's)": "hot-melt",
    "rubber-cement, fresh": "rubber-cement",
    "rubber-cement, aged": "rubber-cement",
    "thin long-fibred tissue put on with paste": "japanese-tissue",
    "cloth lining (mull, cotton, linen)": "cloth",
    "old paper lining": "lining-paper",
    "sewn, laced or tacketed attachment": "thread",
    "leather dressing or wax": "leather-dressing",
    "starch paste and methyl cellulose mixture": "paste-and-methyl-cellulose",
    "gelatine and paste mixture": "gelatine-and-paste",
    "pva and methyl cellulose mixture": "pva-and-methyl-cellulose",
}
"""The term of a row whose material is written in more words than a term has."""


AGENTS_OF = {
    "heat or solvent (ethanol, acetone)": {"heat", "ethanol or acetone"},
    "water or alcohol, minimal": {"water, minimal", "alcohol, minimal"},
    "ethanol, acetone or water": {"ethanol or acetone", "water"},
}
"""Agents that a row names together though each acts by itself: one release for each, so that no
sentence proposes water for a solvent, or heat beside one."""


def term_of(row: dict[str, str]) -> Term:
    word = row["material"]
    name = TERM_OF.get(word) or word.partition(",")[0]
    term = LEXICON.term("materials", name)
    assert term is not None, word
    return term


def kinds_of(row: dict[str, str]) -> set[str]:
    if row["agent"] == "ethanol, acetone or water":
        return {"moisture", "solvent"}
    if row["kind"] == "any":
        return {one.value for one in Opener}
    return set(row["kind"].replace(" or ", " and ").split(" and "))


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row['material']}: {row['agent']}")
def test_every_row_of_the_published_table_is_in_the_vocabulary_word_for_word(row: dict[str, str]):
    told = (row["ease_basis"], row["leaves"], row["source"])
    agents = AGENTS_OF.get(row["agent"], {row["agent"]})
    found = [
        one
        for one in items(term_of(row).releases)
        if one.agent in agents and (one.ease_from, one.leaves, one.source) == told
    ]
    assert {one.agent for one in found} == agents
    assert {kind.value for one in found for kind in items(one.kind)} == kinds_of(row)
    assert {str(one.ease) for one in found} == {row["ease"]}


@pytest.mark.parametrize("word", sorted(builtin()["materials"]))
def test_what_opens_by_a_solvent_alone_is_not_told_with_water_or_heat_in_it(word: str) -> None:
    for one in every_release(word, LEXICON):
        if Opener.MOISTURE not in one.kinds:
            assert "water" not in one.agent
        if Opener.HEAT not in one.kinds:
            assert "heat" not in one.agent
        if Opener.SOLVENT not in one.kinds and one.of != "isinglass":
            assert "acetone" not in one.agent and "alcohol" not in one.agent


def test_no_release_of_ours_lacks_a_source():
    every = [one for term in builtin()["materials"].values() for one in items(term.releases)]
    assert len(every) >= len(ROWS)
    assert [one for one in every if not (one.source and one.ease_from and one.agent)] == []


def agents(found: tuple[Means, ...]) -> list[str]:
    return [one.agent for one in found]


def test_paste_is_opened_by_water_given_slowly_and_that_easily():
    first = releases_of(["wheat-starch-paste"], LEXICON)[0]
    assert (first.kinds, first.ease) == ((Opener.MOISTURE,), 5)
    assert first.leaves == "soft paste, wiped or lifted off"
    assert "The Minton Archive" in first.source


def test_what_is_unknown_or_not_on_record_has_no_release():
    assert releases_of(["the usual mix"], LEXICON) == ()
    assert releases_of(["casein"], LEXICON) == ()
    assert releases_of([], LEXICON) == ()


def test_a_term_without_releases_takes_those_of_its_wider_term_and_says_so():
    (first, *_) = releases_of(["hide-glue"], LEXICON)
    assert first.assumed_from == "animal glue"
    assert releases_of(["animal-glue"], LEXICON)[0].assumed_from == ""


def test_animal_glue_that_was_found_is_taken_for_aged_hard_and_said_to_be():
    assert max(one.ease for one in releases_of(["animal-glue"], LEXICON)) == 4
    found = releases_of(["animal-glue"], LEXICON, aged=True)
    assert {one.when for one in found} == {"aged hard"}
    assert max(one.ease for one in found) == 3


def test_the_records_own_words_count_too():
    assert {one.when for one in releases_of(["animal glue, old and brittle"], LEXICON)} == {
        "aged hard"
    }


def test_a_dispersion_on_original_paper_is_hardly_ever_opened():
    (one,) = releases_of(["pva"], LEXICON, on_original_paper=True)
    assert (one.agent, one.ease) == ("any", 1)
    assert "any" not in agents(releases_of(["pva"], LEXICON))


def test_of_circumstances_that_may_hold_the_most_stubborn_is_taken():
    assert agents(releases_of(["rubber-cement"], LEXICON)) == ["heptane or light petroleum"]
    assert releases_of(["rubber-cement"], LEXICON, aged=True)[0].ease == 1
    tape = releases_of(["pressure-sensitive-tape"], LEXICON, aged=True)
    assert {one.when for one in tape} == {"rubber adhesive, old"}


def test_of_several_materials_the_most_stubborn_decides():
    mixed = releases_of(["wheat-starch-paste", "pva"], LEXICON)
    assert {one.of for one in mixed} == {"polyvinyl-acetate"}


def test_the_labs_own_releases_take_the_place_of_ours():
    text = "pva: {releases: [{agent: steam, kind: [moisture, heat], ease: 4, source: our trials}]}"
    terms, faults = extend(builtin(), "materials", text.replace("pva", "polyvinyl-acetate"), "m")
    assert faults == ()
    (one,) = releases_of(["pva"], Lexicon(terms))
    assert (one.agent, one.kinds) == ("steam", (Opener.MOISTURE, Opener.HEAT))


def test_all_that_is_known_of_a_material_is_told_under_whichever_circumstances():
    glue = every_release("animal-glue", LEXICON)
    assert {one.when for one in glue} == {"", "aged hard"}
    assert len(glue) == 5
    assert every_release("moonlight", LEXICON) == ()


def test_dispersions_hot_melt_rubber_and_plastic_keep_moisture_out_and_paste_does_not():
    tight = ["pva", "vae", "acrylic dispersion", "hot melt", "rubber cement", "polyester film"]
    assert [word for word in tight if not seals([word], LEXICON)] == []
    open_to_it = ["wheat-starch-paste", "animal-glue", "linen", "kozo-paper", "methyl-cellulose"]
    assert [word for word in open_to_it if seals([word], LEXICON)] == []
    assert seals(["pva and paste"], LEXICON)
    assert not seals(["something else"], LEXICON)


def test_what_a_material_is_comes_from_its_term_or_the_wider_one():
    assert class_of("tengujo", LEXICON) == "tissue"
    assert class_of("no such word", LEXICON) == ""


def test_a_circle_of_wider_terms_ends_where_it_closes():
    text = "one: {broader: two}\ntwo: {broader: one}\n"
    terms, _ = extend(builtin(), "materials", text, "m")
    assert [name for name, _ in wider("one", Lexicon(terms))] == ["one", "two"]
