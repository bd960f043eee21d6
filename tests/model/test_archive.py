"""A case as a whole, and who may see what of it."""

from __future__ import annotations

import pytest

from casebook.model import archive
from casebook.model.archive import Archive, Case, Kind, Person, Shown, Standing, Status
from casebook.model.base import Audience, Gap, Unknowing, schema
from casebook.model.settings import Settings
from tests.model.reads import holds, reads


def test_every_field_is_documented_and_no_key_is_a_trap():
    holds(archive)


@pytest.mark.parametrize("standing", list(Standing))
def test_a_status_is_a_word(standing: Standing):
    assert reads(Case, f"status: {standing.value}").status == Status(is_=standing)


def test_a_stopped_case_says_why_and_how_it_was_left():
    status = reads(Case, "status: {is: stopped, because: sold, left: unlined}").status
    assert status == Status(is_=Standing.STOPPED, because="sold", left="unlined")


def test_initials_are_text_even_where_they_spell_no():
    assert reads(Case, "people: {NO: conservator}").people == {"NO": Person(role="conservator")}


def test_an_id_keeps_its_noughts():
    assert reads(Case, "{id: 010, record: from-notes}").id == "010"
    assert reads(Case, "record: from-notes").record is Kind.FROM_NOTES


def test_gaps_in_bulk_are_named_by_their_kind():
    found = reads(Case, "gaps: {not recorded: [time, housing], not read: result}")
    assert found.gaps == {"not recorded": ("time", "housing"), "not read": ("result",)}


def test_a_whole_list_may_be_not_read():
    assert reads(Case, "episodes: not read").episodes == Gap(Unknowing.NOT_READ)


def test_the_client_and_notes_are_for_the_lab():
    assert {schema(Case)[key].seen for key in ("client", "note")} == {Audience.LAB}


def test_an_archive_needs_no_recipes_and_withholds_nothing_by_itself():
    whole = Archive(Settings(), {}, ())
    assert (whole.recipes, whole.images) == ({}, {})
    assert Shown(Audience.PUBLIC, whole).withheld == frozenset()
