"""How long the way back takes, and how it grows with the number of layers.

Run `python tests/bench/bench_way_back.py [LAYERS ...]` (60, 120, 250 and 500 unless said). It times
every question of four structures: a set of volumes as a bench sees them, one stack of layers on a
spine, a stack with zones on two boards, and as many mends side by side on a sheet. Loading networkx
is timed apart.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from itertools import pairwise
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT)]

from casebook.compute.structure import Bond, Structure, Thing  # noqa: E402
from casebook.compute.way_back import WayBack  # noqa: E402
from tests.compute.way_back.built import (  # noqa: E402
    PASTE,
    PVA,
    back,
    joint,
    layer,
    part,
    structure,
    stuck,
)

ADHESIVES = (PASTE, PASTE, PVA)


def stack(count: int) -> Structure:
    """Layers one on another, every third stuck with a dispersion."""
    names = ["spine", *(f"lining-{number}" for number in range(count))]
    bonds = [
        stuck(low, high, ADHESIVES[number % 3])
        for number, (low, high) in enumerate(pairwise(names))
    ]
    return structure(part("spine"), *(layer(name, "linen") for name in names[1:]), *bonds)


def zoned(count: int) -> Structure:
    """Layers one on another over a spine and two boards, a third of `count` layers."""
    parts = ("spine", "board 1", "board 2")
    members: list[Thing | Bond] = [part(name) for name in parts]
    under = dict.fromkeys(parts, "")
    for number in range(count // 3):
        for place in parts:
            name = f"lining-{number}/{place}"
            members += [layer(name, "linen"), stuck(under[place] or place, name, PASTE)]
            under[place] = name
        spine = f"lining-{number}/spine"
        members += [joint(spine, f"lining-{number}/{place}") for place in parts[1:]]
    return structure(*members)


def mended(count: int) -> Structure:
    """Mends side by side on one sheet."""
    names = [f"mend-{number}" for number in range(count)]
    bonds = [stuck("sheet", name, PASTE) for name in names]
    return structure(part("sheet"), *(layer(name, "kozo-paper") for name in names), *bonds)


def volumes(count: int) -> Structure:
    """A set: on each volume a tissue, a cloth lining and a paper over spine and boards, a label."""
    members: list[Thing | Bond] = []
    for number in range(count // 5):
        at = f"volume {number + 1}"
        spine, boards = f"{at}/spine", (f"{at}/board 1", f"{at}/board 2")
        tissue, label, patch = f"{at}-tissue", f"{at}/label", f"{at}-patch"
        members += [part(spine), part(label), *map(part, boards)]
        members += [layer(tissue, "japanese-tissue", splits=True), stuck(spine, tissue, PASTE)]
        for name, under, adhesive in ((f"{at}-cloth", "", PVA), (f"{at}-paper", "cloth", PASTE)):
            for place in (spine, *boards):
                zone = f"{name}/{place}"
                below = f"{at}-{under}/{place}" if under else tissue if place == spine else place
                members += [layer(zone, "linen"), stuck(below, zone, adhesive)]
            members += [joint(f"{name}/{spine}", f"{name}/{place}") for place in boards]
        members += [layer(patch, "kozo-paper"), stuck(boards[0], patch, PASTE)]
        members += [stuck(f"{at}-paper/{spine}", label, PASTE, reused=True)]
    return structure(*members)


SHAPES: tuple[Callable[[int], Structure], ...] = (volumes, stack, zoned, mended)


def milliseconds(work: Callable[[], object]) -> float:
    """The best of three, in CPU time: others may be at work on the machine."""
    took = []
    for _ in range(3):
        start = time.process_time()
        work()
        took.append(time.process_time() - start)
    return 1000 * min(took)


def openings(found: WayBack) -> int:
    """How many openings all answers hold."""
    answers = (*found.bare.values(), *found.free.values(), *found.take_off.values())
    return sum(len(answer.openings) for answer in answers)


def main(counts: list[int]) -> None:
    """Print one line for each shape and size."""
    start = time.process_time()
    import networkx  # noqa: F401

    print(f"loading networkx: {1000 * (time.process_time() - start):.0f} ms")
    for shape in SHAPES:
        for count in counts:
            built = shape(count)
            took = milliseconds(lambda built=built: back(built))  # type: ignore[misc]
            made = openings(back(built))
            print(f"{shape.__name__:8}{count:5} layers: {took:9.1f} ms, {made:7} openings")


if __name__ == "__main__":
    main([int(one) for one in sys.argv[1:]] or [60, 120, 250, 500])
