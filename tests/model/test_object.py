"""The object: when it was made, how big it is, how it is bound, what it is made of."""

from __future__ import annotations

from casebook.model import object as room
from casebook.model.base import Audience, Gap, Unknowing, schema
from casebook.model.object import Binding, Boards, Made, Object, Owner, Part, Sewing
from casebook.values.dates import Date
from casebook.values.quantities import Count, Length
from tests.model.reads import holds, reads


def test_every_field_is_documented_and_no_key_is_a_trap():
    holds(room)


def test_a_date_alone_says_when_it_was_made():
    assert reads(Object, "made: c. 1780").made == (Made(is_=Date.parse("c. 1780")),)


def test_rival_dates_are_a_list():
    found = reads(Object, "made: [{is: 187X, says: owner}, {is: 1868, says: title page}]")
    assert not isinstance(found.made, Gap)
    assert [one.says for one in found.made] == ["owner", "title page"]


def test_measures_are_kept_as_they_were_read_off_the_rule():
    size = reads(Object, "size: {height: 16 1/4 in, width: 268 mm, thickness: about 71 mm}").size
    assert size is not None
    assert not isinstance(size, Gap)
    assert [str(size.height), str(size.width)] == ["16 1/4 in", "268 mm"]
    assert size.height == Length.parse("412.75 mm")


def test_only_the_lab_may_see_an_owner():
    assert {info.seen for info in schema(Owner).values()} == {Audience.LAB}
    assert schema(Object)["owner"].seen is Audience.LAB
    assert reads(Object, "owner: an invented owner").owner == Owner(name="an invented owner")


def test_sewing_and_boards_may_be_a_word():
    found = reads(Binding, "{sewing: all-along, boards: pasteboard, covering: calf}")
    assert found.sewing == Sewing(pattern="all-along")
    assert found.boards == Boards(material="pasteboard")
    assert found.covering == ("calf",)


def test_a_part_has_parts_of_its_own():
    strap = reads(
        Part, "{of: board 2, count: 2, parts: {clasp: {material: brass, width: unknown}}}"
    )
    assert (strap.of, strap.count) == ("board 2", Count.parse("2"))
    assert strap.parts["clasp"].width == Gap(Unknowing.UNKNOWN)
