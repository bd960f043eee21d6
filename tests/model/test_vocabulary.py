"""A term: its label, its other spellings, and what a reader should mind about it."""

from __future__ import annotations

from casebook.model import vocabulary
from casebook.model.base import Audience, schema
from casebook.model.vocabulary import KINDS, Identifier, Term
from casebook.values.quantities import Grammage
from tests.model.reads import holds, reads


def test_every_field_is_documented_and_no_key_is_a_trap():
    holds(vocabulary)


def test_a_term_says_its_spellings_and_its_sort():
    found = reads(Term, "{label: tengujo, also: tengucho, class: paper, weight: 5 g/m²}")
    assert (found.also, found.class_) == (("tengucho",), "paper")
    assert found.weight == Grammage.parse("5 g/m²")


def test_yes_and_no_are_read_as_such():
    assert reads(Term, "{label: paste, water-borne: yes}").water_borne is True
    assert reads(Term, "{label: wax, water-borne: no}").water_borne is False


def test_an_open_identifier_names_where_it_was_seen():
    found = reads(Term, '{label: x, ids: [{scheme: AAT, id: "010", source: a list}]}')
    assert found.ids == (Identifier(scheme="AAT", id="010", source="a list"),)


def test_a_labs_note_on_a_term_is_for_the_lab():
    assert schema(Term)["note"].seen is Audience.LAB


def test_each_vocabulary_is_named_once():
    assert len(set(KINDS)) == len(KINDS)
