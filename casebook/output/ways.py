"""Ways in: by structure, damage, operation, material and decade; which cases stand under each."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from casebook.model.archive import Case
from casebook.model.base import Record, items, known, walk
from casebook.model.condition import LATE, Finding
from casebook.model.vocabulary import Term
from casebook.output.contexts import Link, WayGroup
from casebook.output.wording import way_address
from casebook.values.dates import Date
from casebook.values.notation import PLAIN, Notation
from casebook.vocabulary import Lexicon, terms_of

TITLES = {
    "structures": "Structure",
    "damages": "Damage",
    "operations": "Treatment",
    "materials": "Material",
    "decades": "Decade",
}
PLURALS = {
    "structures": "Structures",
    "damages": "Damage",
    "operations": "Treatments",
    "materials": "Materials",
    "decades": "Decades",
}
"""What the page of all terms of one way in is called."""

INDEXES = {
    "structures": "ways/structure/index.html",
    "damages": "ways/damage/index.html",
    "operations": "ways/operation/index.html",
    "materials": "materials/index.html",
    "decades": "ways/decade/index.html",
}
MOST = 8

Natures = tuple[tuple[str, frozenset[str]], ...]

_NATURES: dict[str, Natures] = {
    "operations": (
        ("Examining and recording", frozenset({"examining"})),
        ("Taking apart", frozenset({"taking-apart"})),
        ("Cleaning", frozenset({"cleaning"})),
        ("Shaping and drying", frozenset({"forming"})),
        ("Repairing", frozenset({"repair"})),
        ("Lining", frozenset({"lining"})),
        ("Putting together", frozenset({"joining"})),
        ("Protecting and housing", frozenset({"protecting"})),
    ),
    "materials": (
        ("Paper and tissue", frozenset({"paper", "tissue"})),
        ("Cloth", frozenset({"cloth"})),
        ("Leather and skin", frozenset({"leather", "skin"})),
        ("Board and wood", frozenset({"board", "wood"})),
        ("Thread and cord", frozenset({"thread"})),
        ("Adhesives and sizes", frozenset({"adhesive", "size"})),
        ("Colours and coatings", frozenset({"colour", "coating"})),
        ("Metal and plastic", frozenset({"metal", "plastic"})),
        ("Water and solutions", frozenset({"water", "solution"})),
        ("Solvents", frozenset({"solvent"})),
        ("Gels and enzymes", frozenset({"gel", "enzyme"})),
        ("Dry, by hand, with heat", frozenset({"dry"})),
    ),
}
"""For the page of all terms of a way in: its groups, by the classes of the vocabulary."""

OTHERS = "Others"


@dataclass(frozen=True, slots=True)
class Way:
    """One term of a way in: its page, and the ids of the cases under it in the site's order."""

    kind: str
    address: str
    title: str
    cases: tuple[str, ...]
    name: str = ""
    """The term's id; "" for a decade."""
    term: Term | None = None
    source: str = ""
    """The vocabulary that the term is in, `agents` where the kind is materials; "" for a decade."""


def ways_of(cases: Iterable[Case], lexicon: Lexicon, notation: Notation = PLAIN) -> tuple[Way, ...]:
    """Every way in that leads to at least one case, by kind, then by title."""
    found: dict[tuple[str, str], list[str]] = {}
    for case in cases:
        for name in dict.fromkeys(_names(case, lexicon)):
            found.setdefault(name, []).append(case.id)
    ways = [_way(name, ids, lexicon, notation) for name, ids in found.items()]
    order = list(TITLES)
    return tuple(
        sorted(ways, key=lambda way: (order.index(way.kind), way.title.lower(), way.address))
    )


def _names(case: Case, lexicon: Lexicon) -> Iterator[tuple[str, str]]:
    for record in walk(case):
        for kind, name in terms_of(record, lexicon):
            if way_address(kind, name) and not _no_damage(record, kind, name, lexicon):
                yield kind, name
    for decade in _decades(case):
        yield "decades", str(decade)


def _no_damage(record: Record, kind: str, name: str, lexicon: Lexicon) -> bool:
    """Whether a word under `damage` says that all is well, or what was seen after the treatment."""
    late = isinstance(record, Finding) and record.stage in LATE
    return kind == "damages" and (late or lexicon.terms[kind][name].class_ == "state")


def _decades(case: Case) -> Iterator[int]:
    thing = known(case.object)
    for made in items(thing.made) if thing else ():
        date = known(made.is_)
        if isinstance(date, Date):
            yield from date.decades()


def _way(name: tuple[str, str], ids: list[str], lexicon: Lexicon, notation: Notation) -> Way:
    kind, one = name
    if kind == "decades":
        title = notation.decade(int(one))
        return Way(kind, f"ways/decade/{one}s/index.html", title, tuple(ids))
    term = lexicon.terms[kind][one]
    shown = "materials" if kind == "agents" else kind
    return Way(shown, way_address(kind, one), term.label or one, tuple(ids), one, term, kind)


def groups(ways: Iterable[Way], root: str, most: int = MOST) -> tuple[WayGroup, ...]:
    """Ways in as groups of links: of each the most used first, decades in their order."""
    every = tuple(ways)
    return tuple(
        _group(kind, [way for way in every if way.kind == kind], root, most)
        for kind in TITLES
        if any(way.kind == kind for way in every)
    )


def natures(ways: Iterable[Way], root: str) -> tuple[WayGroup, ...]:
    """All terms of one way in, by what sort of thing they are; by title within each."""
    every = tuple(ways)
    kind = every[0].kind if every else ""
    found: dict[str, list[Link]] = {title: [] for title, _ in _NATURES.get(kind, ())}
    for way in every:
        link = Link(way.title, root + way.address, str(len(way.cases)))
        found.setdefault(_nature(way), []).append(link)
    return tuple(
        WayGroup(title, "", tuple(links), len(links)) for title, links in found.items() if links
    )


def _nature(way: Way) -> str:
    """The group that a term belongs to; "" where its way in has none."""
    of = known(way.term.class_) if way.term else None
    groups = _NATURES.get(way.kind, ())
    return next((title for title, classes in groups if of in classes), OTHERS if groups else "")


def _group(kind: str, ways: list[Way], root: str, most: int) -> WayGroup:
    by_use = sorted(ways, key=lambda way: (-len(way.cases), way.title.lower()))
    chosen = by_use[:most]
    if kind == "decades":
        chosen = sorted(chosen, key=lambda way: way.title)
    links = tuple(Link(way.title, root + way.address, str(len(way.cases))) for way in chosen)
    return WayGroup(TITLES[kind], root + INDEXES[kind], links, len(ways))
