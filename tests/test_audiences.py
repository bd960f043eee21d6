"""What an audience may not see leaves no trace: twins that differ only there publish the same."""

from __future__ import annotations

import typing
from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from casebook.audiences import case_seen, item_seen, redact
from casebook.diagnostics import Span
from casebook.model.archive import Archive, Case
from casebook.model.base import Audience, FieldInfo, Record, items, schema, walk
from casebook.model.condition import Finding
from casebook.model.marks import Fit
from casebook.model.photos import Photo
from casebook.model.proposal import Decision
from casebook.model.settings import Client, Settings
from casebook.model.vocabulary import Term
from casebook.vocabulary import builtin
from tests.builders import (
    RICH,
    Choose,
    archive,
    changed,
    fields_of,
    filled,
    record,
    records_in,
    site,
    written,
)

MARK = "zzlabword"
KEY = "kestrel-trust"
CONTROLS = {"audience", "structure", "client"}
TEXTS: tuple[Any, ...] = (str, typing.get_type_hints(Case)["note"])
NARROW = (Audience.PUBLIC, Audience.CLIENT)


def seen_by(audience: Audience, changes: Callable[[type[Record], FieldInfo], Any]) -> Choose:
    """A choice for every field: what steers an audience is set so that the case is shown."""

    def choose(cls: type[Record], info: FieldInfo) -> Any:
        if info.name == "audience":
            return audience if cls is Case else None
        if cls is Case and info.name in CONTROLS:
            return {"client": KEY, "structure": None}[info.name]
        if cls is Case and info.name == "id":
            return "2025-031"
        if cls is Photo and info.name == "id":
            return "p1"
        return changes(cls, info)

    return choose


def hidden(audience: Audience, info: FieldInfo) -> bool:
    return not audience.may_see(info.seen)


def publish(case: Case, audience: Audience, **more: Any) -> dict[str, str]:
    return written(site(archive(case, **more), audience, KEY))


HIDDEN = [
    pytest.param(audience, cls, info, id=f"{audience.value}-{cls.__name__}-{info.name}")
    for audience in NARROW
    for cls, info in fields_of(Case)
    if hidden(audience, info) and info.name not in CONTROLS
]


@pytest.fixture(scope="module")
def whole() -> dict[Audience, dict[str, str]]:
    return {one: publish(filled(Case, seen_by(one, lambda _cls, _info: 0)), one) for one in NARROW}


@pytest.mark.parametrize(("audience", "cls", "info"), HIDDEN)
def test_a_field_that_may_not_be_seen_changes_nothing(
    audience: Audience, cls: type[Record], info: FieldInfo, whole: dict
) -> None:
    def other(one: type[Record], field: FieldInfo) -> int | None:
        if one is not cls or field != info:
            return 0
        return None if records_in(info.type) else 1

    twin = filled(Case, seen_by(audience, other))
    assert twin != filled(Case, seen_by(audience, lambda _cls, _info: 0))
    assert changed(publish(twin, audience), whole[audience]) == []


@pytest.mark.parametrize("audience", NARROW)
def test_twins_that_differ_in_all_hidden_fields_at_once_are_the_same(
    audience: Audience, whole: dict
) -> None:
    twin = filled(Case, seen_by(audience, lambda _cls, info: int(hidden(audience, info))))
    assert changed(publish(twin, audience), whole[audience]) == []


def test_a_field_that_may_be_seen_does_change_the_site(whole: dict) -> None:
    twin = filled(Case, seen_by(Audience.PUBLIC, lambda _cls, info: int(info.name == "care")))
    assert changed(publish(twin, Audience.PUBLIC), whole[Audience.PUBLIC])


@pytest.mark.parametrize("audience", NARROW)
def test_a_structure_for_the_lab_alone_leaves_no_trace(audience: Audience) -> None:
    def variant(number: int) -> Case:
        def changes(_cls: type[Record], info: FieldInfo) -> int:
            return number if info.structural or hidden(audience, info) else 0

        return replace(filled(Case, seen_by(audience, changes)), structure=Audience.LAB)

    left, right = variant(0), variant(1)
    assert left != right
    assert changed(publish(left, audience), publish(right, audience)) == []


def narrowed(cls: type[Any]) -> Any:
    """An item for the lab alone, full of words that must not be seen."""

    def choose(_cls: type[Record], info: FieldInfo) -> Any:
        if info.name == "audience":
            return Audience.LAB
        free = not info.words and not info.points
        return f"{MARK}-{info.name}" if free and info.type in TEXTS else 1

    return filled(cls, choose)


def with_hidden_items(one: Any) -> Any:
    """The record with an item for the lab alone in front of every list that may hold one."""
    changes: dict[str, Any] = {}
    for info in schema(type(one)).values():
        value = getattr(one, info.name)
        if isinstance(value, Record):
            changes[info.name] = with_hidden_items(value)
        elif isinstance(value, tuple) and value and isinstance(value[0], Record):
            inner = tuple(with_hidden_items(each) for each in value)
            more = (narrowed(type(value[0])),) if "audience" in schema(type(value[0])) else ()
            changes[info.name] = (*more, *inner)
        elif info.points == "photo" and isinstance(value, tuple):
            changes[info.name] = (f"{MARK}-file", f"{MARK}-id", *value)
    return replace(one, **changes) if changes else one


@pytest.mark.parametrize("audience", NARROW)
def test_hidden_items_leave_no_trace(audience: Audience, whole: dict) -> None:
    plain = filled(Case, seen_by(audience, lambda _cls, _info: 0))
    full = with_hidden_items(plain)
    held = {type(one).__name__ for one in walk(full) if not item_seen(one, audience)}
    assert held >= {"Photo", "Finding", "History", "Option", "Change"}
    assert changed(publish(full, audience), whole[audience]) == []


def test_a_decision_for_the_lab_alone_leaves_no_trace() -> None:
    plain = record(Case, RICH)
    proposal = plain.proposal
    with_one = replace(plain, proposal=replace(proposal, decided=narrowed(Decision)))
    without = replace(plain, proposal=replace(proposal, decided=None))
    assert publish(with_one, Audience.PUBLIC) == publish(without, Audience.PUBLIC)


@pytest.mark.parametrize("audience", NARROW)
def test_a_hidden_case_more_changes_nothing(audience: Audience) -> None:
    shown = record(Case, RICH)
    more = replace(filled(Case, seen_by(Audience.LAB, lambda _cls, _info: 1)), id="2026-001")
    both = written(site(archive(more, shown), audience, KEY))
    assert changed(both, publish(shown, audience)) == []


def test_a_client_sees_its_own_cases_and_no_others() -> None:
    case = record(Case, RICH)
    assert case_seen(case, Audience.CLIENT, KEY)
    assert not case_seen(case, Audience.CLIENT, "somebody-else")
    assert case_seen(case, Audience.LAB)
    assert not case_seen(replace(case, audience=None), Audience.PUBLIC)


@pytest.mark.parametrize("audience", NARROW)
def test_a_term_for_the_lab_alone_leaves_no_trace(audience: Audience) -> None:
    case = record(Case, RICH.replace("material: linen", "material: special-cloth"))
    term = Term(label=MARK, also=(f"{MARK}s",), gloss=MARK, broader="linen", audience=Audience.LAB)
    base = builtin()
    terms = {**base, "materials": {**base["materials"], "special-cloth": term}}
    assert changed(publish(case, audience, terms=terms), publish(case, audience)) == []


@pytest.mark.parametrize("audience", NARROW)
def test_the_lab_s_clients_leave_no_trace(audience: Audience) -> None:
    case = record(Case, RICH)
    clients = {KEY: Client(name=MARK, contact=MARK)}
    with_clients = Settings(name="Invented bindery", clients=clients)
    assert changed(publish(case, audience, settings=with_clients), publish(case, audience)) == []


def planted(case_audience: Audience) -> Case:
    """A case with a word of its own in every text that only the lab may see."""

    def changes(cls: type[Record], info: FieldInfo) -> Any:
        return (
            f"{MARK}-{cls.__name__}-{info.name}"
            if info.seen is Audience.LAB and (info.type in TEXTS)
            else 0
        )

    return filled(Case, seen_by(case_audience, changes))


MARKED = [
    f"{MARK}-{cls.__name__}-{info.name}"
    for cls, info in fields_of(Case)
    if info.seen is Audience.LAB and info.type in TEXTS and info.name not in CONTROLS
]


def test_there_are_texts_for_the_lab_alone() -> None:
    assert len(MARKED) >= 5


def test_words_for_the_lab_alone_occur_nowhere_in_the_public_site() -> None:
    found = publish(planted(Audience.PUBLIC), Audience.PUBLIC)
    assert [one for one, text in found.items() if MARK in one + text] == []


@pytest.mark.parametrize("mark", [one for one in MARKED if "Photo-file" not in one])
def test_the_lab_keeps_what_only_it_may_see(mark: str) -> None:
    shown = redact(archive(planted(Audience.PUBLIC)), Audience.LAB)
    assert mark in repr(shown.archive.cases)


def test_the_lab_s_own_pages_show_its_notes_and_the_owner() -> None:
    page = publish(planted(Audience.PUBLIC), Audience.LAB)["cases/2025-031/index.html"]
    assert f"{MARK}-Step-note" in page
    assert f"{MARK}-Owner-name" in page


@pytest.mark.parametrize("audience", Audience)
def test_redaction_drops_places_unread_keys_and_file_names(audience: Audience) -> None:
    case = record(Case, RICH)
    torn = replace(case, unknown={MARK: MARK}, places={MARK: Span("case.md", 1, 1, 1, 2)})
    shown = redact(archive(torn), audience, KEY).archive
    (one,) = shown.cases
    assert all(not each.places and not each.unknown for each in walk(one))
    assert all(not photo.file for photo in items(one.photos))
    assert "before.jpg" not in repr((shown.cases, list(shown.images["2025-031"])))


def test_redaction_of_what_is_redacted_changes_nothing() -> None:
    once = redact(archive(record(Case, RICH)), Audience.LAB).archive
    twice = redact(once, Audience.LAB).archive
    assert twice.cases == once.cases
    assert isinstance(twice, Archive)


def test_a_reference_to_a_hidden_photo_is_dropped() -> None:
    secret = Photo(id="p2", file="p2.jpg", audience=Audience.LAB)
    case = record(Case, RICH)
    finding = Finding(part=("spine",), seen="worn", photo=("p1", "p2"))
    photos = (secret, *items(case.photos))
    shown = redact(archive(replace(case, photos=photos, findings=(finding,))), Audience.PUBLIC)
    (one,) = shown.archive.cases
    assert items(items(one.findings)[0].photo) == ("p1",)
    assert list(shown.archive.images["2025-031"]) == ["p1"]


def test_what_stands_on_a_hidden_photo_goes_with_it() -> None:
    text = RICH.replace(
        "means: held by the pastedown only}",
        "means: held by the pastedown only,\n"
        "     marks: [{photo: p2, box: 1 1 9 9, label: secret}, {photo: before.jpg, box: 1 1 9 9}]}",
    )
    secret = Photo(id="p2", file="p2.jpg", audience=Audience.LAB)
    case = record(Case, text)
    shown_photo = replace(
        items(case.photos)[0], fit=record(Fit, "{over: p2, here: [1 1, 9 9], there: [1 1, 9 9]}")
    )
    one = replace(case, photos=(shown_photo, secret))
    (seen,) = redact(archive(one), Audience.PUBLIC).archive.cases
    (finding,) = items(seen.findings)
    assert [mark.photo for mark in items(finding.marks)] == ["p1"]
    assert items(seen.photos)[0].fit is None
    (lab,) = redact(archive(one), Audience.LAB).archive.cases
    assert [mark.photo for mark in items(items(lab.findings)[0].marks)] == ["p2", "p1"]
    assert items(lab.photos)[0].fit is not None
