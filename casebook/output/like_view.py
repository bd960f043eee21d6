"""Cases like one: where each is, and in what it is like."""

from __future__ import annotations

from collections.abc import Iterable

from casebook.compute.likeness import Feature, Like
from casebook.output.contexts import Line, Run
from casebook.output.wording import Wording, sentence

MOST = 6
"""Reasons that are told, the rarest first."""


def like_lines(found: Iterable[Like], wording: Wording) -> tuple[Line, ...]:
    """A sentence for each like case: its title with the way to it, and what both have."""
    return tuple(_line(one, wording) for one in found)


def _line(like: Like, wording: Wording) -> Line:
    reasons = ", ".join(_word(one, wording) for one in like.shared[:MOST])
    return sentence((wording.case(like.case), Run(f": {reasons}")))


def _word(feature: Feature, wording: Wording) -> str:
    kind, name = feature
    return f"{name}s" if kind == "decades" else wording.lexicon.label(kind, name)
