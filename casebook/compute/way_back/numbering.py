"""Openings numbered through many answers: what is done twice is told once, and met again."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from casebook.compute.way_back.instructions import Answer, Opening
from casebook.compute.way_back.sentences import sentences


def act(opening: Opening, piece: int = 0) -> Opening:
    """What an opening does to the object: the same, whatever was asked and wherever it stands.

    `piece` is the number of the opening with which the piece came off that it is done on.
    """
    frees = opening.frees if piece or opening.frees in opening.together else ""
    return replace(opening, number=0, in_piece=piece, takes="", hiding="", frees=frees)


def numbered(answers: Iterable[Answer]) -> tuple[Answer, ...]:
    """The answers with their openings numbered through all of them.

    Openings that do the same, and are told the same but for why they come first, share a number.
    A number is new where it is higher than all before it.
    """
    numbers: dict[tuple[Opening, tuple[str, ...]], int] = {}
    return tuple(replace(one, openings=_numbered(one.openings, numbers)) for one in answers)


def _numbered(
    openings: Iterable[Opening], numbers: dict[tuple[Opening, tuple[str, ...]], int]
) -> tuple[Opening, ...]:
    own, found = {0: 0}, []
    for one in openings:
        piece = own[one.in_piece]
        told = sentences(replace(one, in_piece=piece, hiding=""))
        number = numbers.setdefault((act(one, piece), told), len(numbers) + 1)
        own[one.number] = number
        found.append(replace(one, number=number, in_piece=piece))
    return tuple(found)
