"""What opens an adhesive or a layer, how easily and what it leaves, as the vocabulary knows it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from casebook.model.base import items, known
from casebook.model.vocabulary import Opener, Release, Term
from casebook.vocabulary import Lexicon

_AGED = frozenset({"aged", "old", "hard", "sticky"})
_FRESH = frozenset({"fresh", "early"})
_ON_ORIGINAL = frozenset({"original"})
_TIGHT = frozenset({"plastic", "metal"})


@dataclass(frozen=True, slots=True)
class Means:
    """One way in which a material can be opened.

    `kinds` act together. `ease` runs from 5 (at once) to 1 (hardly or never). `of` is the id of the
    material, or the word as written; `assumed_from` the label of the wider term where the material
    has no releases of its own; `when` the circumstances under which the source says so.
    """

    agent: str
    kinds: tuple[Opener, ...]
    ease: int
    leaves: str = ""
    source: str = ""
    of: str = ""
    ease_from: str = ""
    when: str = ""
    assumed_from: str = ""


def releases_of(
    materials: Iterable[str],
    lexicon: Lexicon,
    *,
    aged: bool = False,
    on_original_paper: bool = False,
) -> tuple[Means, ...]:
    """What opens something stuck with these materials; nothing where that is not known.

    Of several materials, in a mixture or as guesses, the most stubborn decides. Of circumstances
    that may hold (`aged`: it was there on arrival) the most stubborn is taken too: common practice,
    no source.
    """
    found = [
        means for word in materials if (means := _of_one(word, lexicon, aged, on_original_paper))
    ]
    return min(found, key=_best_ease, default=())


def every_release(word: str, lexicon: Lexicon) -> tuple[Means, ...]:
    """All that is known to open a material, under whichever circumstances, the easiest first."""
    found = _all_of(word, lexicon)
    return tuple(sorted(found, key=lambda one: (one.when, -one.ease, one.agent)))


def _best_ease(means: tuple[Means, ...]) -> int:
    return max(one.ease for one in means)


def _of_one(word: str, lexicon: Lexicon, aged: bool, on_paper: bool) -> tuple[Means, ...]:
    """The means of one material under the circumstances that hold or may hold."""
    name, _, tail = word.partition(",")
    aged = aged or bool(_AGED & set(_words(tail)))
    groups: dict[str, list[Means]] = {}
    for one in _all_of(word if lexicon.term("materials", word) else name, lexicon):
        if _applies(one.when, aged, on_paper):
            groups.setdefault(one.when, []).append(one)
    special = [tuple(group) for when, group in groups.items() if when]
    return min(special, key=_best_ease, default=tuple(groups.get("", ())))


def _applies(when: str, aged: bool, on_paper: bool) -> bool:
    words = set(_words(when))
    if words & _ON_ORIGINAL:
        return on_paper
    if words & _AGED:
        return aged
    return not (words & _FRESH and aged)


def _words(text: str) -> list[str]:
    return re.findall(r"\w+", text.casefold())


def _all_of(word: str, lexicon: Lexicon) -> Iterator[Means]:
    """Every means of a term, or of the nearest wider term that has any."""
    for depth, (name, term) in enumerate(wider(word, lexicon)):
        if releases := items(term.releases):
            assumed = term.label if depth else ""
            yield from (_means(name, one, assumed) for one in releases)
            return


def _means(name: str, release: Release, assumed: str) -> Means:
    ease = known(release.ease)
    return Means(
        agent=known(release.agent) or "",
        kinds=items(release.kind),
        ease=int(ease.low) if ease and ease.low is not None else 1,
        leaves=known(release.leaves) or "",
        source=known(release.source) or "",
        of=name,
        ease_from=known(release.ease_from) or "",
        when=known(release.when) or "",
        assumed_from=assumed,
    )


def wider(word: str, lexicon: Lexicon) -> Iterator[tuple[str, Term]]:
    """The id and term that a word stands for and those above it; a circle ends where it closes."""
    found = lexicon.resolve("materials", word)
    seen: set[tuple[str, str]] = set()
    while found and found not in seen:
        seen.add(found)
        family, name = found
        term = lexicon.terms[family][name]
        yield name, term
        above = known(term.broader)
        found = (family, above) if above in lexicon.terms[family] and above else None


def class_of(word: str, lexicon: Lexicon) -> str:
    """What sort of thing a material is, such as paper or silk's cloth; "" where nobody says."""
    classes = (known(term.class_) for _, term in wider(word, lexicon))
    return next((one for one in classes if one), "")


def seals(materials: Iterable[str], lexicon: Lexicon) -> bool:
    """Whether a dry film of one of these keeps moisture from what lies beneath.

    So do plastic and metal. Common practice, no source.
    """
    return any(_seals(word, lexicon) for word in materials)


def _seals(word: str, lexicon: Lexicon) -> bool:
    said = (term.seals for _, term in wider(word, lexicon))
    first = next((one for one in said if isinstance(one, bool)), False)
    return first or class_of(word, lexicon) in _TIGHT
