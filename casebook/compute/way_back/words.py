"""Names of things as sentences say them."""

from __future__ import annotations

from collections.abc import Iterable


def listed(names: Iterable[str]) -> str:
    """Names as a list in words."""
    every = list(names)
    return " and ".join((", ".join(every[:-1]), every[-1])) if len(every) > 1 else "".join(every)


def name(thing: str) -> str:
    """A thing in words: `cloth-lining/board 1` is the cloth lining at board 1."""
    whole, _, zone = thing.partition("/")
    plain = whole.replace("-", " ")
    if zone in ("inner", "outer"):
        return f"{zone} wall of {the(whole)}"
    return f"{plain} at {the(zone)}" if zone else plain


def the(thing: str) -> str:
    """A thing with its article, where it takes one: the spine, board 1."""
    said = name(thing)
    numbered = thing.partition("/")[0].rpartition(" ")[2].isdigit()
    return said if numbered else f"the {said}"
