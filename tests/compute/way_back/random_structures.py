"""Small random structures, sound and unsound, with tests and failures on them."""

from __future__ import annotations

from hypothesis import strategies as st

from casebook.compute.evidence import Evidence, Failed, Result, Tried
from casebook.compute.structure import Bond, How, Since, Structure, Thing
from casebook.model.vocabulary import Opener
from tests.compute.way_back.built import GLUE, PASTE, PVA, WATER

PARTS = ("spine", "board 1", "board 2")
LAYERS = ("a", "b", "c/spine", "c/board 1", "t/inner", "t/outer")
NAMES = PARTS + LAYERS
ADHESIVES = st.sampled_from([(PASTE,), (PVA,), (GLUE,), (), ("casein",), (PASTE, PVA)])


def _thing(name: str, since: Since, splits: bool, material: str, apart: bool) -> Thing:
    of, _, rest = name.partition("/")
    wall = rest if rest in ("inner", "outer") else ""
    zone = "" if wall else rest
    materials = (material,) if material else ()
    return Thing(name, of, zone, wall, name in PARTS, since, materials, splits=splits, apart=apart)


@st.composite
def things(draw) -> dict[str, Thing]:
    """Some of the names, most parts original and most layers ours."""
    found = {}
    for name in draw(st.permutations(NAMES)):
        usual = Since.ORIGINAL if name in PARTS else Since.ADDED
        since = draw(st.sampled_from([usual, usual, usual, Since.ORIGINAL, Since.FOUND]))
        material = draw(st.sampled_from(["", "linen", "calf", "polyester-film", "laid-paper"]))
        splits = draw(st.integers(0, 3)) == 0
        found[name] = _thing(name, since, splits, material, draw(st.integers(0, 9)) == 9)
    return found


BONDS = st.builds(
    Bond,
    lower=st.sampled_from(NAMES),
    upper=st.sampled_from(NAMES),
    how=st.sampled_from([How.STUCK] * 4 + list(How)),
    adhesives=ADHESIVES,
    held=st.sampled_from([(), ("sewn",), ("slotted",)]),
    cuts=st.sampled_from([(), ("spine",)]),
    partly=st.booleans(),
    since=st.sampled_from(list(Since)),
    guessed=st.booleans(),
)
PAIRS = st.lists(st.tuples(st.sampled_from(NAMES), st.sampled_from([*NAMES, "c"])), max_size=2)


@st.composite
def structures(draw) -> Structure:
    """Any structure over a few names, rings and all."""
    bonds = draw(st.lists(BONDS, max_size=10))
    return Structure(draw(things()), tuple(bonds), tuple(draw(PAIRS)), tuple(draw(PAIRS)))


@st.composite
def sound(draw) -> Structure:
    """Layers laid one after another on parts and on what lies there already."""
    laid = list(PARTS)
    bonds = []
    for name in draw(st.permutations(LAYERS)):
        for under in draw(st.lists(st.sampled_from(laid), min_size=1, max_size=2, unique=True)):
            adhesives = draw(ADHESIVES)
            how = draw(st.sampled_from([How.STUCK, How.STUCK, How.STUCK, How.HELD]))
            bonds.append(Bond(under, name, how, adhesives, held=("sewn",), since=Since.ADDED))
        laid.append(name)
    found = {name: _thing(name, Since.ORIGINAL, False, "", False) for name in PARTS}
    for name in LAYERS:
        found[name] = _thing(name, Since.ADDED, draw(st.booleans()), "linen", False)
    if draw(st.booleans()):
        bonds.append(Bond("c/spine", "c/board 1", How.JOINT, since=Since.ADDED))
    if draw(st.booleans()):
        bonds.append(Bond("board 1", "spine", How.GROWN))
    return Structure(found, tuple(bonds))


TESTS = st.builds(
    Tried,
    place=st.sampled_from(NAMES),
    kinds=st.sampled_from([WATER, frozenset({Opener.SOLVENT}), frozenset({Opener.HEAT})]),
    result=st.sampled_from(list(Result)),
    agent=st.just("water"),
)
FAILURES = st.builds(
    Failed,
    place=st.sampled_from(NAMES),
    agent=st.sampled_from(["water", "heat"]),
    kinds=st.just(WATER),
)
EVIDENCE = st.builds(
    Evidence,
    tried=st.lists(TESTS, max_size=4).map(tuple),
    failed=st.lists(FAILURES, max_size=2).map(tuple),
)
