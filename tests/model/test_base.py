"""What every record shares: places, gaps, audiences, and the schema read from its types."""

from __future__ import annotations

from dataclasses import fields

import pytest

from casebook.model import condition
from casebook.model.archive import Case
from casebook.model.base import (
    Audience,
    Gap,
    Unknowing,
    children,
    items,
    key_of,
    known,
    schema,
    walk,
)
from casebook.model.condition import Finding
from casebook.model.materials import Material
from casebook.model.object import Owner
from casebook.model.treatment import Step
from tests.builders import reachable
from tests.model.reads import reads

NOT_KNOWN = Gap(Unknowing.NOT_RECORDED, "page lost")


def test_an_audience_sees_what_is_marked_for_itself_and_for_wider_ones():
    lab, client, public = Audience.LAB, Audience.CLIENT, Audience.PUBLIC
    seen = {(a, b) for a in Audience for b in Audience if a.may_see(b)}
    assert seen == {
        (lab, lab),
        (lab, client),
        (lab, public),
        (client, client),
        (client, public),
        (public, public),
    }


def test_a_gap_is_written_with_its_reason():
    assert str(NOT_KNOWN) == "not recorded (page lost)"
    assert str(Gap(Unknowing.UNKNOWN)) == "unknown"


def test_known_and_items_pass_over_gaps():
    assert known("linen") == "linen"
    assert known(NOT_KNOWN) is None
    assert items(("a", "b")) == ("a", "b")
    assert items(NOT_KNOWN) == ()


@pytest.mark.parametrize(
    ("name", "key"), [("as_found", "as-found"), ("is_", "is"), ("or_until", "or-until")]
)
def test_a_fields_key_has_hyphens_and_no_mark_at_its_end(name: str, key: str):
    assert key_of(name) == key


def test_the_schema_tells_of_each_field_who_may_see_it_and_what_stands_there():
    damage, photo = schema(Finding)["damage"], schema(Finding)["photo"]
    assert (damage.words, damage.points, photo.words, photo.points) == ("damages", "", "", "photo")
    assert schema(Owner)["name"].seen is Audience.LAB
    assert schema(Step)["adds"].structural
    assert not schema(Step)["time"].structural


def test_what_a_record_keeps_for_itself_is_no_key():
    assert not {"places", "unknown", "assumed"} & set(schema(Step))


def test_no_record_holds_a_set_so_that_it_always_reads_the_same():
    held = {str(one.type) for cls in reachable(Case) for one in fields(cls)}
    assert "tuple[str, ...]" in held
    assert not [one for one in held if "set[" in one]


def test_the_fields_of_a_record_inside_do_not_mark_the_one_around_it():
    assert schema(condition.Test)["agent"].words == ""
    assert schema(Material)["is"].words == "materials"


def test_a_record_knows_where_each_key_stands():
    finding = reads(Finding, "part: spine\nseen: split")
    seen, whole = finding.span("seen"), finding.span("nothing")
    assert seen is not None
    assert whole is not None
    assert (seen.line, seen.column, whole.line) == (2, 7, 1)


def test_a_record_tells_what_was_written_as_a_gap_too():
    finding = reads(Finding, "{part: spine, seen: not recorded}")
    assert finding.tells("seen")
    assert not finding.tells("means")


def test_places_do_not_make_records_differ():
    assert reads(Material, "is: linen") == reads(Material, "{is:   linen}") == Material(is_="linen")


def test_walking_meets_every_record_outermost_first():
    case = reads(Case, "{findings: [{part: spine}], steps: [{material: linen}, washed]}")
    met = [type(one).__name__ for one in walk(case)]
    assert met == ["Case", "Finding", "Step", "Material", "Step"]
    assert list(children("linen")) == []
