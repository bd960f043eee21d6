"""Names of things as sentences say them."""

from __future__ import annotations

from collections.abc import Iterable


def listed(names: Iterable[str]) -> str:
    """Names as a list in words."""
    every = list(names)
    return " and ".join((", ".join(every[:-1]), every[-1])) if len(every) > 1 else "".join(every)


def name(thing: str) -> str:
    """A thing in words: `cloth-lining/board 1` is the cloth lining at board 1.

    What stands behind a number belongs to it: `board 1/sides` is the sides of board 1. What has
    soaked in is called by where it is: `paste in board 1`.
    """
    soaked, within, place = thing.partition(" in ")
    if within:
        return f"{soaked.replace('-', ' ')} in {the(place)}"
    whole, _, rest = thing.rpartition("/")
    if whole and rest in ("inner", "outer"):
        return f"{rest} wall of {the(whole)}"
    first, _, rest = thing.partition("/")
    plain = first.replace("-", " ")
    if not rest:
        return plain
    return f"{name(rest)} of {plain}" if _numbered(first) else f"{plain} at {the(rest)}"


def the(thing: str) -> str:
    """A thing with its article, where it takes one: the spine, board 1."""
    first, _, rest = thing.partition("/")
    bare = _numbered(first) and (not rest or _numbered(rest.partition("/")[0]))
    walls = rest.rpartition("/")[2] in ("inner", "outer")
    return name(thing) if bare and not walls else f"the {name(thing)}"


def _numbered(word: str) -> bool:
    return word.rpartition(" ")[2].isdigit()
