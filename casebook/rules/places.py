"""What in a reference to a part or layer, such as `sheet/verso`, nobody knows."""

from __future__ import annotations

import re
from collections.abc import Iterator

from casebook.compute.places import FACES
from casebook.rules.look import Look

_NUMBER = re.compile(r"\s*\d+$")
_SIDES = frozenset(
    {"front", "back", "head", "tail", "upper", "lower", "left", "right", "middle", "fore-edge"}
)
"""Words that say where on a part, besides the names of faces."""


def strangers(look: Look, place: str) -> tuple[str, ...]:
    """The words of a place that neither the case nor the vocabulary knows, in order."""
    if _known(look, place):
        return ()
    segments = [one.strip() for one in place.split("/") if one.strip()]
    return tuple(word for one in segments for word in _strange_in(look, one))


def whole_stranger(look: Look, place: str) -> bool:
    """Whether nothing in a place is known, so that it points nowhere."""
    words = [word for one in place.split("/") for word in one.split() if not word.isdecimal()]
    return bool(words) and len(strangers(look, place)) == len(words)


def _strange_in(look: Look, segment: str) -> Iterator[str]:
    """The unknown words of one segment, unless it is known as a whole."""
    if not _known(look, segment):
        yield from (one for one in segment.split() if not one.isdecimal() and not _known(look, one))


def _known(look: Look, word: str) -> bool:
    bare = _NUMBER.sub("", word)
    if word in look.names or bare in look.names:
        return True
    if bare.casefold() in FACES | _SIDES:
        return True
    return look.lexicon.resolve("parts", bare) is not None
