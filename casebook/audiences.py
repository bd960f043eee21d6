"""What each audience may see: the only place that makes a redacted archive."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from typing import Any, TypeVar

from casebook.model.archive import LAB, Archive, Case, Link, Redacted, Shown
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
from casebook.model.condition import Finding, Found
from casebook.model.photos import Image, Photo
from casebook.model.treatment import Step
from casebook.model.vocabulary import Terms
from casebook.vocabulary import Lexicon, used_terms

R = TypeVar("R", bound=Record)


class Veil:
    """One audience's view of one case: what it sees, and how photos are named there.

    `hidden` holds the names of places that are not shown; `photos` gives the name under which a
    photo is shown by its file name and by its id, so that what is not in it is not shown. `cases`
    are the ids of the cases that are shown: a link to any other goes with all that it says.
    """

    def __init__(
        self,
        audience: Audience,
        structure: bool = True,
        hidden: Collection[str] = (),
        photos: Mapping[str, str] = NOTHING,
        cases: Collection[str] = (),
    ) -> None:
        self.audience = audience
        self.structure = structure
        self.hidden = hidden
        self.photos = photos
        self.cases = cases

    def record(self, one: R) -> R:
        """A record with only what may be seen, without places and unread keys."""
        values = self._own(one)
        for info in _seen_fields(type(one), self.audience, self.structure):
            value = getattr(one, info.name)
            if info.points == "photo" and isinstance(value, tuple):
                values[info.name] = tuple(self.photos[ref] for ref in value if ref in self.photos)
            elif info.points == "case":
                values[info.name] = self._case(value)
            elif info.points == "photo" and isinstance(value, str):
                values[info.name] = self.photos[value]
            else:
                values[info.name] = self.value(value, self.hidden if info.points else ())
        if isinstance(one, Photo):
            values["id"] = self.photos.get(one.file or one.id, one.id)
        return type(one)(**values)

    def value(self, value: Any, hidden: Collection[str]) -> Any:
        """A field's value with only what may be seen of it; None where nothing may."""
        if isinstance(value, Record):
            return self.record(value) if self._item_seen(value) else None
        if isinstance(value, tuple):
            shown = (self.value(one, hidden) for one in value)
            return tuple(one for one in shown if one is not None)
        if isinstance(value, Mapping):
            pairs = value.items()
            return {key: self.value(one, hidden) for key, one in pairs if key not in hidden}
        return None if hidden and isinstance(value, str) and value in hidden else value

    def _case(self, value: Any) -> Any:
        """A case's id where that case is shown; a way of not knowing one stays."""
        return None if isinstance(value, str) and value not in self.cases else value

    def _item_seen(self, one: Record) -> bool:
        """Whether an item is seen: by its own audience, and by the case that it is a link to.

        What stands on one photo, such as a mark, goes with it.
        """
        hidden = isinstance(one, Link) and self._case(one.case) is None
        on = [getattr(one, name) for name in _naming_photos(type(one))]
        gone = any(isinstance(name, str) and name not in self.photos for name in on)
        return not hidden and not gone and item_seen(one, self.audience)

    def _own(self, one: Record) -> dict[str, Any]:
        """What a step keeps beside its fields: what a recipe filled in, where that is shown."""
        return {"assumed": one.assumed} if isinstance(one, Step) and self.structure else {}


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


@remembered
def _naming_photos(cls: type[Record]) -> tuple[str, ...]:
    """The fields of a record type that name photos: one as a text, several as a list."""
    return tuple(info.name for info in schema(cls).values() if info.points == "photo")


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
    ids = frozenset(name for case in seen for name in (case.id, *items(case.was)))
    veiled = [_case(case, audience, ids, archive.images.get(case.id, {})) for case in seen]
    cases = tuple(case for case, _ in veiled)
    shown = Archive(
        settings=Veil(audience).record(archive.settings),
        terms=_terms(used_terms(Lexicon(archive.terms), cases), audience),
        cases=cases,
        images={case.id: images for case, images in veiled} | _of_the_lab(archive),
    )
    withheld = frozenset(case.id for case in seen if not _structure_seen(case, audience))
    return Redacted(Shown(audience, shown, withheld))


def _of_the_lab(archive: Archive) -> dict[str, Mapping[str, Image]]:
    return {LAB: archive.images[LAB]} if LAB in archive.images else {}


def _structure_seen(case: Case, audience: Audience) -> bool:
    return case.structure is None or audience.may_see(case.structure)


def _case(
    case: Case, audience: Audience, ids: Collection[str], images: Mapping[str, Image]
) -> tuple[Case, Mapping[str, Image]]:
    structure = _structure_seen(case, audience)
    kept = [one for one in items(case.photos) if item_seen(one, audience)]
    names = _photo_names(kept)
    veil = Veil(audience, structure, _hidden_places(case, audience, structure), names, ids)
    found = {names[one.file or one.id]: images[one.file] for one in kept if one.file in images}
    return veil.record(case), found


def _photo_names(photos: list[Photo]) -> dict[str, str]:
    """The name of each photo by its id and its file: its id, or its place among those shown."""
    by_id = {one.id: one.id for one in photos if one.id}
    return by_id | {one.file or one.id: one.id or str(n) for n, one in enumerate(photos, start=1)}


def _hidden_places(case: Case, audience: Audience, structure: bool) -> set[str]:
    """The ids of findings and layers that are not shown, so that no reference to them is left."""
    hidden = {""}
    for one in walk(case):
        if isinstance(one, Finding) and not item_seen(one, audience):
            hidden.add(one.id)
        if not structure and isinstance(one, (Found, Step)):
            hidden.add((one.id if isinstance(one, Found) else one.adds) or "")
    return hidden - {""}


def _terms(used: Terms, audience: Audience) -> Terms:
    """The terms in use, each with what may be seen of it."""
    veil = Veil(audience)
    return {
        kind: {name: veil.record(term) for name, term in terms.items() if item_seen(term, audience)}
        for kind, terms in used.items()
    }
