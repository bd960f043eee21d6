"""Cases replayed for tests, and structures told in words: one line for each thing that holds."""

from __future__ import annotations

from casebook.compute.layers import Fault, Replay, replay
from casebook.compute.structure import Bond, How, Structure
from casebook.vocabulary import Lexicon, builtin
from tests.compute.written import case

LEXICON = Lexicon(builtin())

Lines = list[str]


def played(text: str) -> Replay:
    """The replay of a case that a text says."""
    return replay(case(text), LEXICON)


def steps(text: str) -> Replay:
    """The replay of a case that has nothing but these steps, written line by line."""
    return played("steps:\n" + "".join(f"  - {{{line.strip()}}}\n" for line in _lines(text)))


def _lines(text: str) -> list[str]:
    return [line for line in text.splitlines() if line.strip()]


def told(structure: Structure, *, grown: bool = False) -> Lines:
    """Each bond as `UPPER on LOWER: how with what`, in the order of the structure."""
    return [_told(bond) for bond in structure.bonds if grown or bond.how is not How.GROWN]


def _told(bond: Bond) -> str:
    between = {How.JOINT: "beside", How.FOLD: "folded to", How.GROWN: "of"}.get(bond.how, "on")
    how = [] if between != "on" else [bond.how.value, *bond.adhesives, *bond.held]
    marks = [word for word in ("partly", "reused", "guessed", "within") if getattr(bond, word)]
    face = [f"at {bond.face}"] if bond.face else []
    where = [f"({bond.where})"] if bond.where else []
    opened = [f"opened in {', '.join(map(str, bond.opened))}"] if bond.opened else []
    words = " ".join([*how, *marks, *face, *where, *opened])
    return f"{bond.upper} {between} {bond.lower}" + (f": {words}" if words else "")


def names(structure: Structure) -> list[str]:
    """The things that are no original parts."""
    return [one.name for one in structure.things.values() if not one.part]


def faults(found: Replay) -> list[tuple[int, str]]:
    """The contradictions: the number of the step, and the kind."""
    return [(one.step, one.kind.value) for one in found.faults]


def only(found: Replay) -> Fault:
    """The one contradiction of a replay."""
    (one,) = found.faults
    return one
