"""Archives for tests: a rich case as a conservator writes it, and one with every field filled."""

from __future__ import annotations

import types
import typing
from collections.abc import Callable, Mapping
from dataclasses import fields
from enum import StrEnum
from pathlib import Path
from typing import Any

from casebook import flow
from casebook.files import Cache
from casebook.loading import Loaded
from casebook.model.archive import Archive, Case
from casebook.model.base import Audience, FieldInfo, Gap, Record, schema
from casebook.model.photos import Image
from casebook.model.settings import Settings
from casebook.model.treatment import Step
from casebook.model.vocabulary import Terms
from casebook.output.pictures import Pictures
from casebook.output.site import Site
from casebook.output.wording import Wording
from casebook.reading import read
from casebook.source.parsing import parse
from casebook.vocabulary import Lexicon, builtin

Choose = Callable[[type[Record], FieldInfo], Any]
"""Which of a field's values: 0 or 1, or the value itself where it is no number."""

WORDING = Wording(Lexicon(builtin()), "")
PICTURES = Pictures({}, Cache(Path("no-cache"), "test"))

RICH = """
id: 2025-031
title: Tide-gauge keeper's day book
status: complete
record: at-the-bench
audience: public
client: kestrel-trust
was: [2025-030]
written: {by: AM, date: 2025-04-03, for: treatment record}
people: {AM: {role: conservator, name: A. Marsh}}
dates: {received: 2025-01-20, examined: 2025-01-28, returned: 2025-04-02}
object:
  kind: ledger
  made: {is: 187X, says: owner}
  size: {height: 16 1/4 in, width: 268 mm}
  owner: {name: Invented Owner}
bindings:
  - {state: on-arrival, structure: tight-back, sewing: {pattern: all-along}, covering: [calf]}
parts:
  spine: {width: 68 mm, rise: 14 mm, height: 398 mm}
as-found:
  - {id: old-glue, onto: spine, material: {perhaps: [animal-glue]}, origin: later}
history: [{date: 19XX, hands: unknown, what: rebacked in calf, state: failed}]
examination: {because: owner wants to read in it, method: [raking light], by: AM}
findings:
  - {part: joint front, damage: broken, seen: cords broken, means: held by the pastedown only}
hazards: [{what: red rot, part: spine, caution: mask and extraction}]
tests: [{id: red-bleeds, part: endband head, agent: water, method: damp swab, result: bleeds}]
proposal:
  use: reading room
  options: [{name: reback, materials: [linen], time: 14 h, cost: "400", outcome: chosen}]
  decided: {date: 2025-02-10, by: [owner], how: letter}
  changes: [{what: a strip kept, because: it was found, agreed: by telephone}]
episodes:
  - date: 2025-03-14
    hands: [AM]
    steps:
      - photographed the tooling
      - {removes: old-glue, agent: water, fate: discarded, time: 1 h, note: for us}
      - {do: line, adds: cloth-lining, onto: spine, material: linen, adhesive: wheat-starch-paste}
left-alone: [{part: spine, what: shape, because: it works}]
reversibility: {says: it comes off, claims: [{takes-off: cloth-lining, with: water}]}
time: {estimated: 14 h, spent: 15 h}
care: open it on a cushion
follow-up: [{date: 2026-02-01, layer: cloth-lining, state: sound}]
photos:
  - {id: p1, file: before.jpg, stage: before, view: spine, date: 2025-01-28}
gaps: {not recorded: [housing]}
"""
"""A finished case, invented."""


def record(cls: type[Any], text: str) -> Any:
    """The record that a YAML text says; a fault in it fails the test."""
    parsed = parse(text, "case.md")
    assert parsed.node is not None
    assert not parsed.diagnostics
    found, faults = read(cls, parsed.node, "test")
    assert not faults
    return found


def archive(*cases: Case, terms: Terms | None = None, settings: Settings | None = None) -> Archive:
    """An archive of these cases, each photo with an image behind it."""
    images = {
        case.id: {one.file: Image(f"digest of {one.file}", 40, 30) for one in case.photos}
        for case in cases
        if isinstance(case.photos, tuple)
    }
    own = settings or Settings(name="Invented bindery")
    return Archive(own, terms or builtin(), cases, images=images)


def site(shown: Archive, audience: Audience, client: str = "") -> Site:
    """The site of an archive for an audience, without pictures."""
    loaded = Loaded(Path("nowhere"), shown, (), {}, {})
    return flow.publish(flow.show(loaded, audience, client), PICTURES)


def written(made: Site) -> dict[str, str]:
    """All that a site holds, by address: titles, frames, bodies, bytes of assets."""
    pages = {}
    for page in made.pages:
        frame = page.frame()
        text = (page.title, page.body(), *(getattr(frame, one.name) for one in fields(frame)))
        pages[page.address] = "\n".join(text)
    contents = {one.address: one.made() for one in made.assets}
    assets = {
        address: one.decode() if isinstance(one, bytes) else str(one)
        for address, one in contents.items()
    }
    return {**pages, **assets}


_VALUES = {
    "Acidity": ("8.0", "7.5"),
    "Box": ("4 4 8 8", "5 5 9 9"),
    "Colour": ("L 52 a 3 b 10", "L 60 a 3 b 10"),
    "Count": ("3", "4"),
    "Date": ("1873", "1874"),
    "Difference": ("3.0", "2.0"),
    "Duration": ("2 h", "3 h"),
    "Grammage": ("5 g/m²", "9 g/m²"),
    "Length": ("40 mm", "50 mm"),
    "Outline": ("4 4, 12 4, 12 12", "5 5, 9 5, 9 9"),
    "Path": ("4 4, 12 12", "5 5, 9 9"),
    "Percent": ("4 %", "5 %"),
    "Point": ("6 6", "7 7"),
    "Ratio": ("1:3", "1:4"),
    "Temperature": ("20 °C", "25 °C"),
}
_POINTS = {
    "case": ("2025-031", "2025-031"),
    "layer": ("lining-1", "lining-2"),
    "person": ("AM", "RT"),
    "photo": ("p1", "p1"),
    "place": ("spine", "joint front"),
    "test": ("test-1", "test-2"),
}


Inside = tuple[type[Any], ...]


def filled(cls: type[Any], choose: Choose, inside: Inside = ()) -> Any:
    """A record of any type with every field filled; what may hold itself does so once.

    A step that holds steps is a run; those inside it are plain steps.
    """
    within = (*inside, cls)
    values = {}
    for info in schema(cls).values():
        chosen = choose(cls, info)
        if isinstance(chosen, int):
            chosen = _filled(info.type, cls, info, choose, within)
        values[info.name] = chosen
    if cls is Step and not values["steps"]:
        values["each"] = ()
    return cls(**{name: one for name, one in values.items() if one is not ...})


def _filled(hint: Any, cls: type[Any], info: FieldInfo, choose: Choose, within: Inside) -> Any:
    origin, args = typing.get_origin(hint), typing.get_args(hint)
    if origin is typing.Annotated:
        return _filled(args[0], cls, info, choose, within)
    if origin in (typing.Union, types.UnionType):
        first = next(one for one in args if one not in (types.NoneType, Gap))
        return _filled(first, cls, info, choose, within)
    if origin is tuple:
        inner = _filled(args[0], cls, info, choose, within)
        return () if inner is ... else (inner,)
    if origin is not None:
        inner = _filled(args[1], cls, info, choose, within)
        return {} if inner is ... else {_key(cls, info): inner}
    return _one(hint, cls, info, choose, within)


def _key(cls: type[Any], info: FieldInfo) -> str:
    named = {"people": "AM", "gaps": "not recorded", "mix": "ethanol", "clients": "kestrel-trust"}
    return named.get(info.name, "spine")


def _one(hint: Any, cls: type[Any], info: FieldInfo, choose: Choose, within: Inside) -> Any:
    variant = choose(cls, info)
    if issubclass(hint, Record):
        return filled(hint, choose, within) if within.count(hint) < 2 else ...
    if issubclass(hint, StrEnum):
        return list(hint)[variant]
    if hint is bool:
        return not variant
    if hint is str:
        return _text(cls, info, variant)
    return hint.parse(_VALUES[hint.__name__][variant])


def _text(cls: type[Any], info: FieldInfo, variant: int) -> str:
    if info.words:
        return sorted(builtin()[info.words])[variant]
    if info.points:
        return _POINTS[info.points][variant]
    return f"{cls.__name__}-{info.name}-{variant}".lower()


def reachable(cls: type[Any], seen: dict[type[Any], None] | None = None) -> dict[type[Any], None]:
    """Every record type that a record of this type may hold, itself first."""
    found = {} if seen is None else seen
    if cls not in found:
        found[cls] = None
        for info in schema(cls).values():
            for inner in records_in(info.type):
                reachable(inner, found)
    return found


def records_in(hint: Any) -> list[type[Any]]:
    """The record types named in an annotation."""
    if isinstance(hint, type) and issubclass(hint, Record):
        return [hint]
    return [one for arg in typing.get_args(hint) for one in records_in(arg)]


def fields_of(top: type[Any]) -> list[tuple[type[Any], FieldInfo]]:
    """Every field of every record type under one."""
    return [(cls, info) for cls in reachable(top) for info in schema(cls).values()]


def changed(found: Mapping[str, str], other: Mapping[str, str]) -> list[str]:
    """Addresses at which two sites differ."""
    return sorted(one for one in {*found, *other} if found.get(one) != other.get(one))
