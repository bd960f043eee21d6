"""The way back: how the next conservator takes the work apart without harming the original."""

from __future__ import annotations

from casebook.compute.evidence import Evidence
from casebook.compute.structure import Since, Structure
from casebook.compute.way_back.graph import Graph
from casebook.compute.way_back.instructions import WayBack
from casebook.compute.way_back.options import Options
from casebook.compute.way_back.questions import bare, free, take_off
from casebook.vocabulary import Lexicon

__all__ = ["WayBack", "way_back"]


def way_back(structure: Structure, evidence: Evidence, lexicon: Lexicon) -> WayBack:
    """Every question about a structure answered: originals bared and freed, layers taken off.

    It never raises. The same structure gives the same answers in whichever order it is written.
    """
    graph = Graph(structure)
    options = Options(graph, evidence, lexicon)
    here = {name: one for name, one in sorted(structure.things.items()) if not one.apart}
    parts = [name for name, one in here.items() if one.since is Since.ORIGINAL]
    layers = sorted({one.of for one in here.values() if one.since is not Since.ORIGINAL})
    return WayBack(
        bare={name: bare(options, name) for name in parts},
        free={name: free(options, name) for name in parts},
        take_off={name: take_off(options, name) for name in layers},
    )
