"""What stays in a part that was treated with it: an adhesive, a size, a dressing, a colour."""

from __future__ import annotations

from collections.abc import Iterator

from casebook.compute.layers.bench import Bench
from casebook.compute.layers.holds import STAYING, Named, is_of, named
from casebook.compute.layers.names import Names
from casebook.compute.steps import none
from casebook.compute.structure import Bond, How, Since, Thing
from casebook.model.base import Maybe, items, known
from casebook.model.materials import Material
from casebook.model.treatment import Step


def soak(bench: Bench, step: Step, number: int) -> None:
    """Leave in what a step treats whatever of its materials stays there."""
    for material in _staying(step, bench.names):
        for place in items(step.treats):
            spot = bench.names.spot(place)
            for lower in bench.named(spot) if spot else ():
                said = named(material, bench.names.lexicon)
                _leave(bench, said, lower, number, patches=known(step.scope) is not None)


def _staying(step: Step, names: Names) -> Iterator[Maybe[Material]]:
    """An adhesive always; a material where it is of a kind that soaks in or is painted on."""
    if step.adhesive is not None and not none(step.adhesive):
        yield step.adhesive
    if is_of(step.material, STAYING, names.lexicon):
        yield step.material


def _leave(bench: Bench, said: Named, lower: str, number: int, *, patches: bool) -> None:
    """What soaked in is a thing of its own, named for what it is and where."""
    name = f"{' or '.join(said.words) or 'adhesive'} in {lower}"
    if name in bench.things:
        return
    thing = Thing(
        name=name,
        of=name,
        since=Since.ADDED,
        materials=said.words,
        ruled_out=said.ruled_out,
        step=number,
        apart=bench.things[lower].apart,
        patches=patches,
    )
    bench.put(thing, bench.beds[lower])
    bench.hold(Bond(lower, name, How.SOAKED, partly=patches, since=Since.ADDED, step=number))
    bench.told.laid[name] = None
