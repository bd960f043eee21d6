"""Cases that belong together, told from both sides."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook.compute.links import Kin, Tie, kin, kindred
from casebook.model.archive import Case, Kinship, Link
from tests.compute.written import case

OLD = case("{id: old-case, was: [older]}")


@pytest.mark.parametrize(
    ("written", "here", "there"),
    [
        ("retreats", Tie.RETREATS, Tie.RETREATED_IN),
        ("same-set", Tie.SAME_SET, Tie.SAME_SET),
        ("like", Tie.LIKE, Tie.LIKE),
        ("old-carrier", Tie.OLD_CARRIER, Tie.CARRIED),
    ],
)
def test_a_link_is_told_on_both_pages(written: str, here: Tie, there: Tie) -> None:
    new = case(f"{{id: new-case, links: [{{case: old-case, is: {written}, because: so}}]}}")
    assert kin(new, (OLD, new)) == (Kin("old-case", here, "so"),)
    assert kin(OLD, (OLD, new)) == (Kin("new-case", there, "so"),)


def test_an_earlier_id_leads_to_the_case_that_had_it() -> None:
    new = case("{id: new-case, links: [{case: older, is: like}]}")
    assert kin(new, (OLD, new)) == (Kin("old-case", Tie.LIKE),)


def test_a_case_that_is_not_shown_is_not_told_of() -> None:
    new = case("{id: new-case, links: [{case: old-case, is: like}]}")
    assert kin(new, (new,)) == ()


def test_an_earlier_treatment_with_a_case_of_its_own_is_a_retreatment() -> None:
    new = case("{id: new-case, history: [{what: rebacked, case: old-case}]}")
    assert kin(OLD, (OLD, new)) == (Kin("new-case", Tie.RETREATED_IN),)


def test_what_left_the_object_for_a_case_of_its_own_was_carried_by_it() -> None:
    new = case(
        "{id: new-case, steps: [{each: [volume 1], steps:"
        " [{removes: map, fate: {is: own-case, case: old-case}}]}]}"
    )
    assert kin(new, (OLD, new)) == (Kin("old-case", Tie.CARRIED),)
    assert kin(OLD, (OLD, new)) == (Kin("new-case", Tie.OLD_CARRIER),)


def test_what_both_cases_say_is_told_once() -> None:
    one = case("{id: one, links: [{case: two, is: same-set}]}")
    two = case("{id: two, links: [{case: one, is: same-set}]}")
    assert kin(one, (one, two)) == (Kin("two", Tie.SAME_SET),)


def test_a_link_that_does_not_say_what_it_is_is_told_all_the_same() -> None:
    new = case("{id: new-case, links: [old-case]}")
    assert kin(OLD, (OLD, new)) == (Kin("new-case", Tie.OTHER),)


IDS = st.sampled_from(["a", "b", "c", "d"])
LINKS = st.dictionaries(
    IDS, st.lists(st.tuples(IDS, st.sampled_from(list(Kinship))), max_size=3), max_size=4
)


@given(LINKS)
def test_every_tie_has_its_other_side_and_no_case_is_its_own_kin(links) -> None:
    cases = [
        Case(id=name, links=tuple(Link(case=to, is_=tie) for to, tie in told))
        for name, told in links.items()
    ]
    found = kindred(cases)
    for name, kins in found.items():
        assert len({(one.case, one.tie) for one in kins}) == len(kins)
        for one in kins:
            assert one.case != name
            assert name in {other.case for other in found[one.case]}
