"""Which agents a release names, and which of them are left where some have failed or would harm."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Set

from casebook.compute.evidence import Failed, word_kinds
from casebook.compute.releases import Means
from casebook.model.vocabulary import Opener
from casebook.vocabulary import Lexicon


def agents_left(
    means: Means, failed: Iterable[Failed], harmful: Set[Opener], lexicon: Lexicon
) -> str:
    """The agents of a release in words, without those that failed or would harm; "" if none.

    Where its words name no agent that the vocabulary knows, any failure of its kind closes it.
    """
    failures = tuple(failed)
    named = _agents_in(means.agent, lexicon)
    if not named:
        same = any(set(means.kinds) & one.kinds for one in failures)
        return "" if same else means.agent
    gone = {one.agent for one in failures}
    left = [word for word, ids in named if not ids & gone and not _kinds(ids, lexicon) & harmful]
    return means.agent if len(left) == len(named) else " or ".join(left)


def _kinds(ids: Iterable[str], lexicon: Lexicon) -> frozenset[Opener]:
    return frozenset(kind for one in ids for kind in word_kinds(one, lexicon))


def _agents_in(text: str, lexicon: Lexicon) -> list[tuple[str, frozenset[str]]]:
    """The agents named in a text: each in its words, with its id and those of its wider terms."""
    pieces = [one.strip() for one in re.split(r"[(),;]|\bor\b|\band\b", text)]
    found = ((piece, _agent_ids(piece, lexicon)) for piece in pieces if piece)
    return [(piece, ids) for piece, ids in found if ids]


def _agent_ids(piece: str, lexicon: Lexicon) -> frozenset[str]:
    """The ids that the longest known beginning or end of a phrase stands for, with wider ones."""
    words = piece.split()
    for size in range(len(words), 0, -1):
        for part in (words[:size], words[-size:]):
            word = " ".join(part)
            found = lexicon.resolve("agents", word)
            if found and word_kinds(word, lexicon):
                return frozenset(_up(found, lexicon))
    return frozenset()


def _up(found: tuple[str, str], lexicon: Lexicon) -> Iterator[str]:
    """An agent's id and those of its wider terms, but for the widest words of all."""
    terms, name = lexicon.terms[found[0]], found[1]
    seen: set[str] = set()
    while name in terms and name not in seen:
        seen.add(name)
        yield name
        name = str(terms[name].broader)
