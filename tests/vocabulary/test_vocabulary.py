"""The vocabulary knows the words of real records, and says where its open identifiers were seen."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook.diagnostics import Severity
from casebook.model.archive import Case
from casebook.model.base import items
from casebook.model.vocabulary import KINDS, Term
from casebook.vocabulary import Lexicon, builtin, extend, fold, terms_of, used_terms, words_in
from casebook.vocabulary.recipes import read_recipes
from tests.model.reads import reads

REFERENCE = Path(__file__).parents[1] / "reference"
LEXICON = Lexicon(builtin())
LOOKED_UP_IN = {
    "damage or state": ("damages",),
    "material": ("materials",),
    "operation": ("operations",),
    "part or thing": ("parts", "materials", "kinds", "structures", "sewing"),
    "place": ("parts",),
}
"""For each kind of observed word, the vocabularies that a record may write it in."""


def rows(name: str) -> list[dict[str, str]]:
    with (REFERENCE / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def known(row: dict[str, str]) -> bool:
    return any(LEXICON.resolve(kind, row["term"]) for kind in LOOKED_UP_IN[row["kind"]])


def test_at_least_95_in_100_of_the_words_of_real_records_are_known():
    # Each row of the file names the published records that its word was counted in.
    seen = [row for row in rows("observed_terms.csv") if row["kind"] in LOOKED_UP_IN]
    assert {row["kind"] for row in seen} == set(LOOKED_UP_IN)
    rest = [row for row in seen if not known(row)]
    every = sum(int(row["records"]) for row in seen)
    missed = sum(int(row["records"]) for row in rest)
    told = [f"{row['kind']}: {row['term']} ({row['records']})" for row in rest]
    assert 100 * (every - missed) >= 95 * every, f"{missed} of {every} not known: {told}"


def test_every_open_identifier_was_seen_in_its_source():
    seen = {
        (row["scheme"], row["id"])
        for row in rows("vocabulary_ids.csv")
        if row["seen"] != "not seen again (draft)"
    }
    ours = [
        (name, one.scheme, one.id)
        for terms in builtin().values()
        for name, term in terms.items()
        for one in items(term.ids)
    ]
    assert ours
    assert [one for one in ours if one[1:] not in seen] == []


def test_every_open_identifier_says_where_it_was_read():
    terms = [term for kind in builtin().values() for term in kind.values()]
    assert all(one.source for term in terms for one in items(term.ids))


def test_no_term_has_an_identifier_of_another():
    # A number stands for one thing; two of our terms may share it only across vocabularies.
    for kind, terms in builtin().items():
        numbers = [(one.scheme, one.id) for term in terms.values() for one in items(term.ids)]
        assert len(set(numbers)) == len(numbers), kind


def test_pva_is_polyvinyl_acetate_and_says_so():
    assert LEXICON.resolve("materials", "pva") == ("materials", "polyvinyl-acetate")
    term = LEXICON.term("materials", "PVA")
    assert term is not None
    assert term.hint == "Polyvinyl acetate dispersion, not polyvinyl alcohol."


@pytest.mark.parametrize("kind", KINDS)
def test_every_term_has_a_label_and_a_gloss(kind: str):
    assert [name for name, term in builtin()[kind].items() if not (term.label and term.gloss)] == []


@pytest.mark.parametrize("kind", KINDS)
def test_every_wider_term_exists_and_no_term_is_wider_than_itself(kind: str):
    terms = builtin()[kind]
    for name, term in terms.items():
        above = [name]
        while wider := terms[above[-1]].broader:
            assert wider in terms, name
            assert wider not in above, name
            above.append(str(wider))


@pytest.mark.parametrize("kind", KINDS)
def test_every_spelling_leads_to_a_term_of_its_vocabulary(kind: str):
    for name, term in builtin()[kind].items():
        assert LEXICON.resolve(kind, name) == (kind, name)
        for spelling in (term.label, *items(term.also)):
            found = LEXICON.resolve(kind, spelling)
            assert found is not None
            assert found[0] == kind, spelling


@pytest.mark.parametrize(
    ("kind", "written", "name"),
    [
        ("materials", "Wheat Starch Paste", "wheat-starch-paste"),
        ("materials", "wheat-starch-paste", "wheat-starch-paste"),
        ("parts", "Boards", "board"),
        ("parts", "endbands", "endband"),
    ],
)
def test_a_word_is_known_whatever_its_case_hyphens_and_number(kind: str, written: str, name: str):
    assert LEXICON.resolve(kind, written) == (kind, name)


@given(st.text())
def test_any_word_at_all_can_be_looked_up(word: str):
    for kind in KINDS:
        found = LEXICON.resolve(kind, word)
        assert found is None or found[1] in LEXICON.terms[found[0]]
    assert fold(fold(word)) == fold(word)


def test_a_reference_to_a_place_is_known_as_a_whole_or_word_by_word():
    assert ("parts", "spine") in LEXICON.place("volume 2 / spine")
    assert ("parts", "board") in LEXICON.place("board 1")
    assert LEXICON.place("zzqx 3") == []


def test_a_page_writes_a_terms_label_or_else_the_word_itself():
    assert LEXICON.label("materials", "pva") == "polyvinyl acetate"
    assert LEXICON.label("materials", "zzqx") == "zzqx"


def test_a_word_that_is_nearly_known_gets_a_hint():
    assert "`linen`" in LEXICON.suggest("materials", "linnen")
    assert LEXICON.suggest("materials", "zzqxzzqx") == ""


def test_a_labs_own_term_is_added_under_a_label():
    terms, faults = extend(builtin(), "materials", "harbour-cloth: {class: cloth}", "materials.yml")
    assert faults == ()
    assert terms["materials"]["harbour-cloth"] == Term(label="harbour cloth", class_="cloth")
    assert "harbour-cloth" not in builtin()["materials"]


def test_a_lab_says_anew_only_what_it_says():
    terms, faults = extend(builtin(), "materials", "linen: {note: roll 7}", "materials.yml")
    ours, theirs = builtin()["materials"]["linen"], terms["materials"]["linen"]
    assert faults == ()
    assert (theirs.note, theirs.label, theirs.gloss) == ("roll 7", ours.label, ours.gloss)


def test_one_spelling_for_two_terms_is_told():
    text = "harbour-glue: {also: [pva]}"
    _, faults = extend(builtin(), "materials", text, "vocabulary/materials.yml")
    (one,) = faults
    assert (one.rule, one.severity) == ("vocabulary-clash", Severity.WARNING)
    assert one.message == "`pva` is written for both `polyvinyl-acetate` and `harbour-glue`"
    assert one.span is not None
    assert (one.span.file, one.span.line) == ("vocabulary/materials.yml", 1)


def test_a_fault_in_a_labs_term_is_told_and_the_others_are_kept():
    text = "a: {label: first, weight: heavy}\nb: {label: second}\n"
    terms, faults = extend(builtin(), "materials", text, "materials.yml")
    assert [one.rule for one in faults] == ["not-understood"]
    assert terms["materials"]["b"].label == "second"


def test_recipes_are_read_by_their_ids():
    recipes, faults = read_recipes("lining: {label: Lining, step: {do: line}}", "recipes.yml")
    assert faults == ()
    assert recipes["lining"].step.do == "line"


def test_words_are_found_in_texts_lists_and_tables():
    assert list(words_in("linen")) == ["linen"]
    assert list(words_in(("linen", "paste"))) == ["linen", "paste"]
    assert list(words_in({"ethanol": 1, "water": 1})) == ["ethanol", "water"]
    assert list(words_in(None)) == []


def test_what_a_material_was_found_not_to_be_was_not_used():
    case = reads(Case, "as-found: [{id: glue, material: {perhaps: animal-glue, not: bitumen}}]")
    used = used_terms(LEXICON, (case,))["materials"]
    assert "animal-glue" in used
    assert "bitumen" not in used


def test_the_terms_a_record_uses_come_with_those_above_them():
    case = reads(Case, "steps: [{do: line, onto: spine, adhesive: pva}]")
    used = used_terms(LEXICON, (case,))
    assert {"polyvinyl-acetate", "adhesive"} <= set(used["materials"])
    (step,) = items(case.steps)
    assert set(terms_of(step, LEXICON)) == {("operations", "line"), ("parts", "spine")}
