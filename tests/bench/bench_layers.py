"""How long a replay takes, in CPU milliseconds, for stacks of layers with three zones each.

Run `python tests/bench/bench_layers.py [LAYERS ...]` (15, 60, 120, 250 and 500 unless said). The
best of five runs is told; a time per layer that stays the same is growth in a straight line.
"""

from __future__ import annotations

import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from casebook.compute.layers import replay
from casebook.model.archive import Case
from casebook.vocabulary import Lexicon, builtin
from tests.compute.written import case

LAYERS = (15, 60, 120, 250, 500)
RUNS = 5


def stack(layers: int) -> Case:
    """A spine lined so many times over, each lining reaching over both boards."""
    zones = "spans: {spine: 60 mm, board 1: 30 mm, board 2: 30 mm}"
    laid = "do: line, material: linen, adhesive: wheat-starch-paste"
    below = ["spine", *(f"lining-{number}" for number in range(1, layers))]
    steps = (
        f"  - {{adds: lining-{number}, onto: {lower}, {laid}, {zones}}}\n"
        for number, lower in enumerate(below, 1)
    )
    return case(f"steps:\n{''.join(steps)}")


def best(one: Case, lexicon: Lexicon) -> float:
    """The least CPU time of a few replays, in milliseconds."""
    times = []
    for _ in range(RUNS):
        start = time.process_time()
        replay.__wrapped__(one, lexicon)  # type: ignore[attr-defined]
        times.append(time.process_time() - start)
    return min(times) * 1000


def main(layers: tuple[int, ...]) -> None:
    """Tell the time of each stack, and of each of its layers."""
    lexicon = Lexicon(builtin())
    for number in layers:
        taken = best(stack(number), lexicon)
        print(f"{number:5} layers {taken:8.1f} ms {taken / number:7.3f} ms each")


if __name__ == "__main__":
    main(tuple(int(one) for one in sys.argv[1:]) or LAYERS)
