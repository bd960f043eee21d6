"""What each audience may see: the only place that makes a redacted archive."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import replace
from typing import Any, TypeVar

from casebook.model.archive import Archive, Case, Redacted, Shown
from casebook.model.base import (
    NOTHING,
    Audience,
    FieldInfo,
    Record,
    items,
    known,
    remembered,
    schema,
    walk,
)
from casebook.model.condition import Found
from casebook.model.photos import Image, Photo
from casebook.model.treatment import Step
from casebook.model.vocabulary import Terms
from casebook.vocabulary import Lexicon, used_terms

R = TypeVar("R", bound=Record)


class Veil:
    """One audience's view of one case: what it sees, and the names of what it does not.

    `hidden` gives those names by what a reference points at, `photo` or `place`.
    """

    def __init__(
        self, audience: Audience, structure: bool = True, hidden: Mapping[str, set[str]] = NOTHING
    ) -> None:
        self.audience = audience
        self.structure = structure
        self.hidden = hidden

    def record(self, one: R) -> R:
        """A record with only what may be seen, without places and unread keys."""
        values = _own(one)
        for info in _seen_fields(type(one), self.audience, self.structure):
            value = getattr(one, info.name)
            values[info.name] = self.value(value, self.hidden.get(info.points, ()))
        return type(one)(**values)

    def value(self, value: Any, hidden: Collection[str]) -> Any:
        """A field's value with only what may be seen of it; None where nothing may."""
        if isinstance(value, Record):
            return self.record(value) if item_seen(value, self.audience) else None
        if isinstance(value, tuple):
            shown = (self.value(one, hidden) for one in value)
            return tuple(one for one in shown if one is not None)
        if isinstance(value, Mapping):
            pairs = value.items()
            return {key: self.value(one, hidden) for key, one in pairs if key not in hidden}
        return None if hidden and isinstance(value, str) and value in hidden else value


def _own(one: Record) -> dict[str, Any]:
    """What a record keeps beside its fields and an audience may see: what a recipe filled in."""
    return {"assumed": one.assumed} if hasattr(one, "assumed") else {}


@remembered
def _seen_fields(cls: type[Record], audience: Audience, structure: bool) -> tuple[FieldInfo, ...]:
    return tuple(
        info
        for info in schema(cls).values()
        if audience.may_see(info.seen)
        and (structure or not info.structural)
        and info.name != "audience"
        and not (issubclass(cls, Photo) and info.name == "file")
    )


def item_seen(one: Record, audience: Audience) -> bool:
    """Whether an audience may see an item that may narrow its own audience."""
    widest = getattr(one, "audience", None)
    return widest is None or audience.may_see(widest)


def case_seen(case: Case, audience: Audience, client: str = "") -> bool:
    """Whether an audience may see a case at all; a case without `audience` is the lab's own."""
    if audience is Audience.LAB:
        return True
    if audience is Audience.CLIENT and known(case.client) != client:
        return False
    return audience.may_see(case.audience or Audience.LAB)


def redact(archive: Archive, audience: Audience, client: str = "") -> Redacted:
    """The archive as one audience may see it; for a client, the cases that name its key."""
    seen = [case for case in archive.cases if case_seen(case, audience, client)]
    veiled = [_case(case, audience, archive.images.get(case.id, {})) for case in seen]
    cases = tuple(case for case, _ in veiled)
    shown = Archive(
        settings=Veil(audience).record(archive.settings),
        terms=_terms(used_terms(Lexicon(archive.terms), cases), audience),
        cases=cases,
        images={case.id: images for case, images in veiled},
    )
    withheld = frozenset(case.id for case in seen if not _structure_seen(case, audience))
    return Redacted(Shown(audience, shown, withheld))


def _structure_seen(case: Case, audience: Audience) -> bool:
    return case.structure is None or audience.may_see(case.structure)


def _case(
    case: Case, audience: Audience, images: Mapping[str, Image]
) -> tuple[Case, Mapping[str, Image]]:
    structure = _structure_seen(case, audience)
    veil = Veil(audience, structure, _hidden_names(case, audience, structure))
    shown = veil.record(case)
    kept = [one for one in items(case.photos) if item_seen(one, audience)]
    names = _photo_names(kept)
    photos = tuple(
        replace(photo, id=names[one.file or one.id])
        for photo, one in zip(items(shown.photos), kept, strict=True)
    )
    keep = photos if isinstance(shown.photos, tuple) else shown.photos
    renamed = _rename_photos(replace(shown, photos=keep), {**_by_id(kept), **names})
    found = {names[one.file or one.id]: images[one.file] for one in kept if one.file in images}
    return renamed, found


def _by_id(photos: list[Photo]) -> dict[str, str]:
    return {photo.id: photo.id for photo in photos if photo.id}


def _photo_names(photos: list[Photo]) -> dict[str, str]:
    """A name for each photo by its file: its own id, or its place among those shown."""
    return {one.file or one.id: one.id or str(n) for n, one in enumerate(photos, start=1)}


def _rename_photos(one: R, names: Mapping[str, str]) -> R:
    """A record in which photos are pointed at by the names they are shown under."""
    changes: dict[str, Any] = {}
    for info in schema(type(one)).values():
        value = getattr(one, info.name)
        if info.points == "photo" and isinstance(value, tuple):
            changes[info.name] = tuple(names[ref] for ref in value if ref in names)
        elif _holds_records(value):
            changes[info.name] = _renamed(value, names)
    return replace(one, **changes) if changes else one


def _holds_records(value: Any) -> bool:
    if isinstance(value, Mapping):
        return any(isinstance(one, Record) for one in value.values())
    if isinstance(value, tuple):
        return bool(value) and isinstance(value[0], Record)
    return isinstance(value, Record)


def _renamed(value: Any, names: Mapping[str, str]) -> Any:
    if isinstance(value, Mapping):
        return {key: _rename_photos(one, names) for key, one in value.items()}
    if isinstance(value, tuple):
        return tuple(_rename_photos(one, names) for one in value)
    return _rename_photos(value, names)


def _hidden_names(case: Case, audience: Audience, structure: bool) -> Mapping[str, set[str]]:
    """Ids and file names of what is not shown, so that no reference to them is left."""
    hidden: dict[str, set[str]] = {"photo": set(), "place": set()}
    for one in walk(case):
        if one is not case and not item_seen(one, audience):
            kind = "photo" if isinstance(one, Photo) else "place"
            hidden[kind].update({getattr(one, "id", ""), getattr(one, "file", "")} - {""})
        if not structure and isinstance(one, (Found, Step)):
            name = one.id if isinstance(one, Found) else one.adds
            hidden["place"].update({name or ""} - {""})
    return hidden


def _terms(used: Terms, audience: Audience) -> Terms:
    """The terms in use, each with what may be seen of it."""
    veil = Veil(audience)
    return {
        kind: {name: veil.record(term) for name, term in terms.items() if item_seen(term, audience)}
        for kind, terms in used.items()
    }
