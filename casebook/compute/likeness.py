"""Likeness: which cases are like this one, by what they share, the rarer the closer."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import islice

from casebook.compute.steps import placed
from casebook.model.archive import Case
from casebook.model.base import items, known
from casebook.model.condition import Stage
from casebook.model.object import Binding, Object
from casebook.vocabulary import Lexicon

Feature = tuple[str, str]
"""What a case has: which kind of thing, and the term's id or the decade."""

WEIGHTS: Mapping[str, float] = {
    "structures": 3.0,
    "damages": 1.5,
    "materials": 1.0,
    "operations": 1.0,
    "sewing": 1.0,
    "kinds": 1.0,
    "decades": 0.5,
}
"""How much one shared thing of a kind tells: a judgement of the project, no source."""

COMMON = 100
"""A thing that more cases have than this tells them apart no more, and is passed by: the work for
one case then does not grow with the archive."""

LEAST = 2
"""With fewer things shared two cases are not called alike."""

NEAR = 0.2
"""The least score of a case that is worth showing: a judgement of the project, no source."""


@dataclass(frozen=True, slots=True)
class Like:
    """A case that is like another: how much, from 0 to 1, and what they share, the rarest first."""

    case: str
    score: float
    shared: tuple[Feature, ...]


class Likeness:
    """Finds like cases; what each has is gathered once."""

    def __init__(self, cases: Sequence[Case], lexicon: Lexicon) -> None:
        self._has = {case.id: frozenset(features(case, lexicon)) for case in cases}
        self._where: dict[Feature, list[str]] = defaultdict(list)
        for name in sorted(self._has):
            for feature in self._has[name]:
                self._where[feature].append(name)
        self._size = {name: self._sum(has) for name, has in self._has.items()}

    def to(self, name: str, without: Iterable[str] = (), most: int = 4) -> tuple[Like, ...]:
        """The cases most like one, the likest first; absent is no mismatch.

        `without` are cases that are named elsewhere on its page.
        """
        left_out = {name, *without}
        sums = ((self._score(name, other, got), other) for other, got in self._met(name).items())
        near = sorted((-score, other) for score, other in sums if score >= NEAR)
        found = (self._like(name, other, -score) for score, other in near if other not in left_out)
        return tuple(islice((one for one in found if len(one.shared) >= LEAST), most))

    def _met(self, name: str) -> Mapping[str, float]:
        """How much each case shares with one, over what is not too common."""
        sums: dict[str, float] = defaultdict(float)
        for feature in sorted(self._has[name]):
            having = self._where[feature]
            for other in having if len(having) <= COMMON else ():
                sums[other] += self._tells(feature)
        return sums

    def _score(self, name: str, other: str, got: float) -> float:
        """What is shared, against all that the one with less could share."""
        smaller = min(self._size[name], self._size[other])
        return round(got / smaller, 6) if smaller else 0.0

    def _like(self, name: str, other: str, score: float) -> Like:
        shared = self._has[name] & self._has[other]
        return Like(other, score, tuple(sorted(shared, key=lambda one: (-self._tells(one), one))))

    def _sum(self, having: Iterable[Feature]) -> float:
        return math.fsum(self._tells(one) for one in sorted(having))

    def _tells(self, feature: Feature) -> float:
        """How much it tells that two cases share this: the rarer, the more (inverse frequency)."""
        rare = math.log((len(self._has) + 1) / len(self._where[feature]))
        return WEIGHTS[feature[0]] * rare


def features(case: Case, lexicon: Lexicon) -> Iterator[Feature]:
    """What a case has that others may share: the binding on arrival, the damage, the treatment.

    A set is one case, whatever its number of volumes: nothing in it counts twice.
    """
    thing = known(case.object) or Object()
    yield from _terms("kinds", [known(thing.kind)], lexicon)
    for made in items(thing.made):
        date = known(made.is_)
        yield from (("decades", str(one)) for one in (date.decades() if date else ()))
    if binding := on_arrival(case):
        yield from _terms("structures", [known(binding.structure)], lexicon)
        yield from _terms("materials", items(binding.covering), lexicon)
        if sewing := known(binding.sewing):
            yield from _terms("sewing", [known(sewing.pattern), known(sewing.supports)], lexicon)
    for finding in items(case.findings):
        if finding.stage in (None, Stage.BEFORE):
            yield from _damages(items(finding.damage), lexicon)
    yield from _terms("operations", [known(one.step.do) for one in placed(case)], lexicon)


def _damages(words: Iterable[str], lexicon: Lexicon) -> Iterator[Feature]:
    """Damages; that all is well somewhere is none."""
    for word in words:
        term = lexicon.term("damages", word)
        if term is None or term.class_ != "state":
            yield from _terms("damages", [word], lexicon)


def on_arrival(case: Case) -> Binding | None:
    """The binding that the object came in: the one said to be so, else the first."""
    bindings = items(case.bindings)
    named = (one for one in bindings if known(one.state) == "on-arrival")
    return next(named, bindings[0] if bindings else None)


def _terms(kind: str, words: Iterable[object], lexicon: Lexicon) -> Iterator[Feature]:
    """The terms that words stand for; a word that nobody knows is compared as it is written."""
    for word in words:
        if isinstance(word, str) and word:
            found = lexicon.resolve(kind, word)
            yield kind, found[1] if found else word
