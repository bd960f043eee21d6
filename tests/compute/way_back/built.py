"""Structures made by hand for tests; all invented."""

from __future__ import annotations

from casebook.compute.evidence import Evidence, Failed, Result, Tried
from casebook.compute.structure import Bond, How, Since, Structure, Thing
from casebook.compute.way_back import WayBack, way_back
from casebook.model.vocabulary import Opener
from casebook.vocabulary import Lexicon, builtin

LEXICON = Lexicon(builtin())
PASTE = "wheat-starch-paste"
PVA = "polyvinyl-acetate"
VAE = "vinyl-acetate-ethylene"
GLUE = "animal-glue"
WATER = frozenset({Opener.MOISTURE})


def part(name: str, *materials: str) -> Thing:
    """An original part."""
    return Thing(name, name, part=True, materials=materials)


def layer(name: str, *materials: str, splits: bool = False, since: Since = Since.ADDED) -> Thing:
    """A layer, a zone of one (`lining/board 1`) or a wall of a tube (`tube/inner`)."""
    of, _, rest = name.partition("/")
    wall = rest if rest in ("inner", "outer") else ""
    zone = "" if wall else rest
    return Thing(name, of, zone, wall, since=since, materials=materials, splits=splits)


def stuck(lower: str, upper: str, *adhesives: str, since: Since = Since.ADDED, **more) -> Bond:
    """A bond by adhesive; without any, one that nobody named."""
    return Bond(lower, upper, How.STUCK, adhesives, since=since, **more)


def held(lower: str, upper: str, *how: str, since: Since = Since.ADDED, **more) -> Bond:
    """A mechanical bond."""
    return Bond(lower, upper, How.HELD, held=how or ("sewn",), since=since, **more)


def joint(one: str, other: str) -> Bond:
    """The joint between two zones of one layer."""
    return Bond(one, other, How.JOINT, since=Since.ADDED)


def fold(tube: str) -> Bond:
    """The folds of a tube."""
    return Bond(f"{tube}/inner", f"{tube}/outer", How.FOLD, since=Since.ADDED)


def grown(larger: str, smaller: str) -> Bond:
    """Two parts of one thing."""
    return Bond(larger, smaller, How.GROWN)


def soaked(host: str, into: str) -> Bond:
    """Something soaked into its host."""
    return Bond(host, into, How.SOAKED, since=Since.ADDED)


def structure(*members: Thing | Bond, covers=(), hides=()) -> Structure:
    """A structure of these things and bonds."""
    things = {one.name: one for one in members if isinstance(one, Thing)}
    bonds = tuple(one for one in members if isinstance(one, Bond))
    return Structure(things, bonds, tuple(covers), tuple(hides))


def tried(place: str, result: Result, *kinds: Opener, agent: str = "water", of: str = "") -> Tried:
    """A test, by water unless said."""
    return Tried(place, frozenset(kinds) or WATER, result, agent, of, f"{place}-test")


def bears(*places: str, kinds: tuple[Opener, ...] = (Opener.MOISTURE,)) -> tuple[Tried, ...]:
    """Tests that did no harm."""
    return tuple(tried(place, Result.SAFE, *kinds) for place in places)


def evidence(*found: Tried | Failed) -> Evidence:
    """Tests and failures."""
    tests = tuple(one for one in found if isinstance(one, Tried))
    return Evidence(tests, tuple(one for one in found if isinstance(one, Failed)))


def back(built: Structure, *found: Tried | Failed) -> WayBack:
    """The way back of a structure."""
    return way_back(built, evidence(*found), LEXICON)
