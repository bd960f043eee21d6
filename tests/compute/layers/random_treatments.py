"""Treatments at random: sound ones, as a conservator might do them, and steps that make no sense.

A sound step acts only on what lies there, so that no contradiction can come of it.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from hypothesis import strategies as st
from hypothesis.strategies import DrawFn, SearchStrategy

from casebook.model.archive import Case
from casebook.model.base import Gap, Unknowing
from casebook.model.details import Leaves, Outcome, Scope
from casebook.model.materials import Material
from casebook.model.object import Bond, Part, Walls
from casebook.model.treatment import Episode, Step
from casebook.values.quantities import Count, Length

BOOK = ("spine", "board 1", "board 2", "endband head", "section 1")
SHEET = ("sheet/recto", "sheet/verso", "margin")
PARTS = {"text-block": Part(), "board 1": Part(parts={"sides": Part()}), "spine": Part()}

_ADHESIVES = (
    Material(is_="wheat-starch-paste"),
    Material(is_="polyvinyl-acetate"),
    Material(perhaps=("animal-glue", "dextrin")),
    Gap(Unknowing.UNNAMED),
    Gap(Unknowing.UNKNOWN),
    None,
)
_WIDTHS = (Length.parse("40 mm"), Length.parse("60 mm"), None)


@dataclass
class Bench:
    """What a random treatment has laid so far: layers, and places that they offer."""

    parts: tuple[str, ...]
    prefix: str
    layers: list[str] = field(default_factory=list)
    offers: list[str] = field(default_factory=list)

    @property
    def places(self) -> list[str]:
        """Everything that a layer can be laid on."""
        return [*self.parts, *self.offers]

    def name(self) -> str:
        """The next layer's name."""
        self.layers.append(f"{self.prefix}{len(self.layers) + 1}")
        return self.layers[-1]


@st.composite
def layings(draw: DrawFn, parts: tuple[str, ...] = BOOK, prefix: str = "layer-") -> list[Step]:
    """Up to twelve sound steps that lay layers of every kind, each on what is there."""
    bench = Bench(parts, prefix)
    return [draw(_laying(bench)) for _ in range(draw(st.integers(1, 12)))]


@st.composite
def _laying(draw: DrawFn, bench: Bench) -> Step:
    make = draw(st.sampled_from([_plain, _zoned, _tube, _bonded, _cover, _infill, _sewn, _soaked]))
    return draw(make(bench))


def _one(bench: Bench) -> SearchStrategy[str]:
    return st.sampled_from(bench.places)


@st.composite
def _plain(draw: DrawFn, bench: Bench) -> Step:
    onto, scope = draw(_one(bench)), draw(st.sampled_from([None, Scope(where="where needed")]))
    name = bench.name()
    bench.offers.append(name)
    adhesive = draw(st.sampled_from(_ADHESIVES))
    return Step(adds=name, onto=(onto,), adhesive=adhesive, scope=scope, material=_tissue())


def _tissue() -> Material:
    return Material(is_="tengujo")


@st.composite
def _zoned(draw: DrawFn, bench: Bench) -> Step:
    onto, zones = draw(_one(bench)), draw(st.sets(st.sampled_from(bench.parts), min_size=1))
    spans = {zone: draw(st.sampled_from(_WIDTHS)) for zone in sorted(zones)}
    name = bench.name()
    bench.offers.append(name)
    return Step(adds=name, onto=(onto,), spans=spans, adhesive=_ADHESIVES[0])


@st.composite
def _tube(draw: DrawFn, bench: Bench) -> Step:
    onto = draw(_one(bench))
    name = bench.name()
    bench.offers += [name, f"{name}/outer", f"{name}/inner"]
    walls = Walls(inner=Count.parse("1"), outer=Count.parse("2"))
    return Step(adds=name, onto=(onto,), walls=walls, adhesive=_ADHESIVES[0])


@st.composite
def _bonded(draw: DrawFn, bench: Bench) -> Step:
    places = draw(st.lists(_one(bench), min_size=1, max_size=3, unique=True))
    bonds = tuple(
        Bond(onto=(place,), adhesive=draw(st.sampled_from(_ADHESIVES)), where="at the edge")
        for place in places
    )
    name = bench.name()
    bench.offers.append(name)
    return Step(adds=name, bonds=bonds, adhesive=_ADHESIVES[1])


@st.composite
def _cover(draw: DrawFn, bench: Bench) -> Step:
    over, part = draw(_one(bench)), draw(st.booleans())
    return Step(adds=bench.name(), over=(over,), is_="part" if part else None, hides=(over,))


@st.composite
def _infill(draw: DrawFn, bench: Bench) -> Step:
    inside = draw(_one(bench))
    return Step(adds=bench.name(), in_thickness_of=inside, adhesive=_ADHESIVES[0])


@st.composite
def _sewn(draw: DrawFn, bench: Bench) -> Step:
    places = draw(st.lists(_one(bench), min_size=1, max_size=2, unique=True))
    return Step(adds=bench.name(), onto=tuple(places), held=("sewn",), cuts=(places[0],))


@st.composite
def _soaked(draw: DrawFn, bench: Bench) -> Step:
    place = draw(_one(bench))
    return Step(adds=bench.name(), soaks_in=(place,), material=Material(is_="gelatine-size"))


def of(steps: list[Step], *, order: Gap | None = None) -> Case:
    """The case of some steps."""
    return Case(id="random", parts=PARTS, steps=tuple(steps), order=order)


def undone(steps: list[Step]) -> list[Step]:
    """The steps, and after them each layer removed again, the last one first."""
    return [*steps, *(Step(removes=(step.adds,)) for step in reversed(steps) if step.adds)]


@st.composite
def interleaved(draw: DrawFn) -> tuple[list[Step], list[Step]]:
    """The same steps in two orders: those on a book and those on a sheet, which never meet."""
    book, sheet = draw(layings(BOOK, "book-")), draw(layings(SHEET, "sheet-"))
    turns = [True] * len(book) + [False] * len(sheet)
    one, other = (_merged(book, sheet, draw(st.permutations(turns))) for _ in range(2))
    return one, other


def _merged(book: list[Step], sheet: list[Step], turns: list[bool]) -> list[Step]:
    books, sheets = iter(book), iter(sheet)
    return [next(books if turn else sheets) for turn in turns]


_NAMES = ("a", "b", "c", "a/inner", "b/board 1", "spine", "board 1", "sheet/verso", "label", "/")


def senseless() -> SearchStrategy[Case]:
    """Cases whose steps do anything to anything, in any order, and say it or do not."""
    places = st.lists(st.sampled_from(_NAMES), max_size=2).map(tuple)
    steps = st.builds(
        Step,
        adds=st.sampled_from([None, None, "a", "b", "c"]),
        onto=places,
        over=places,
        to=places,
        spans=st.dictionaries(st.sampled_from(_NAMES), st.sampled_from(_WIDTHS), max_size=2),
        removes=places,
        takes_off=places,
        puts_back=places,
        opens=places,
        joins=places,
        treats=places,
        soaks_in=places,
        hides=places,
        adhesive=st.sampled_from(_ADHESIVES),
        held=st.sampled_from([(), ("sewn",), Gap(Unknowing.UNKNOWN)]),
        walls=st.sampled_from([None, None, Walls()]),
        leaves=st.sampled_from([None, Leaves(layer="a"), Gap(Unknowing.NONE)]),
        outcome=st.sampled_from([None, None, *Outcome]),
        temporary=st.sampled_from([None, True]),
    )
    orders = st.sampled_from([None, Gap(Unknowing.NOT_RECORDED)])
    episodes = st.lists(
        st.builds(Episode, steps=st.lists(steps, max_size=5).map(tuple), order=orders), max_size=2
    )
    return st.builds(
        Case, episodes=episodes.map(tuple), steps=st.lists(steps, max_size=5).map(tuple)
    )
