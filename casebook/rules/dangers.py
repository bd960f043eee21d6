"""What can hurt, by the vocabulary's cautions, and which dangers a record already names."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from casebook.model.base import Record, items, known
from casebook.rules.look import Look
from casebook.rules.matter import terms

KINDS = ("damages", "materials", "tools", "operations", "structures")
"""The vocabularies whose terms may carry a caution."""

_WORD = re.compile(r"[^\W_][\w'’-]*")
_LONGEST = 4
"""Words at most of a danger's name that are looked up together."""


@dataclass(frozen=True, slots=True)
class Danger:
    """A thing that can hurt: its word as written, what it is, the usual caution and its source."""

    word: str
    ids: frozenset[str]
    caution: str
    source: str

    @property
    def kind(self) -> str:
        """What sort of danger it is: what the caution's first sentence says, shared by its like."""
        return self.caution.partition(". ")[0]

    @property
    def usual(self) -> str:
        """The usual caution with its source, for a hint."""
        return f"usual: {self.caution.rstrip('.')} ({self.source})"


def danger(look: Look, kind: str, word: str) -> Danger | None:
    """The danger in a word of a vocabulary; None if its term, and wider ones, have no caution."""
    found = tuple(terms(look, kind, word))
    for _, term in found:
        caution = known(term.caution)
        if caution:
            source = known(term.caution_source) or "common practice, no source"
            return Danger(word, frozenset(one for one, _ in found), caution, source)
    return None


def any_danger(look: Look, word: str) -> Danger | None:
    """The danger in a word, whichever vocabulary knows it."""
    return next((found for kind in KINDS if (found := danger(look, kind, word))), None)


def named_dangers(look: Look) -> tuple[Danger, ...]:
    """The dangers that the record names under `hazards`, also as words within a phrase."""
    said = (known(one.what) for one in items(look.case.hazards))
    phrases = (phrase for text in said if text for phrase in _phrases(text))
    found = (any_danger(look, one) for one in phrases)
    return tuple(one for one in found if one)


def _phrases(text: str) -> Iterator[str]:
    """A text whole, then every run of up to four of its words."""
    yield text
    words = _WORD.findall(text)
    for length in range(1, _LONGEST + 1):
        yield from (" ".join(words[at : at + length]) for at in range(len(words) - length + 1))


def covered(one: Danger, named: tuple[Danger, ...]) -> bool:
    """Whether a record that names some dangers has this one: itself, its like, or a wider one."""
    return any(one.kind == other.kind or _wider(other) in one.ids for other in named)


def _wider(other: Danger) -> str:
    """The id of a danger that was named by its general word, such as solvent."""
    return next(iter(other.ids)) if len(other.ids) == 1 else ""


@dataclass(frozen=True, slots=True)
class Met:
    """A danger where the record has it: the record and the key that name it."""

    danger: Danger
    record: Record
    key: str
    light: bool = False
    """Whether it is met with a tool in hand, day by day."""


def unnamed(look: Look, met: Iterable[Met], told: Iterable[Met] = ()) -> Iterator[Met]:
    """The dangers that a record has and does not name, each sort once, without those told."""
    named = named_dangers(look)
    seen = {one.danger.kind for one in told}
    for one in met:
        if one.danger.kind not in seen and not covered(one.danger, named):
            seen.add(one.danger.kind)
            yield one
