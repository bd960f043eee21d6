"""Cases like one: where each is, what it looks like, and in what it is like."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from casebook.compute.likeness import Feature, Like
from casebook.model.base import known
from casebook.output.case_contexts import LikeView
from casebook.output.contexts import Card
from casebook.output.wording import Wording, listed_text, sentence_text

MOST = 6
"""Shared things that are told, the rarest first."""


def like_views(found: Iterable[tuple[Like, Card]], wording: Wording) -> tuple[LikeView, ...]:
    """Each like case by its card, with what both have in a sentence."""
    return tuple(_view(one, card, wording) for one, card in found)


def _view(like: Like, card: Card, wording: Wording) -> LikeView:
    shared = "; ".join(_shared(like.shared[:MOST], wording))
    picture = card.after or card.before
    return LikeView(card.title, card.href, picture, sentence_text(shared))


def _shared(features: tuple[Feature, ...], wording: Wording) -> Iterator[str]:
    """What both have: "both tight back, sewn all-along", "both broken", "both rebacked"."""
    named: dict[str, list[str]] = {}
    for kind, name in features:
        named.setdefault(kind, []).append(_word(kind, name, wording))
    made = [
        listed_text((*named.get("kinds", ()), *named.get("structures", ()))),
        _after("sewn ", named.get("sewing", ())),
        _after("covered in ", named.get("materials", ())),
        _after("of the ", named.get("decades", ())),
    ]
    for words in (made, [_damaged(features, wording)], [_done(features, wording)]):
        if told := ", ".join(one for one in words if one):
            yield f"both {told}"


_THINGS = frozenset(
    [
        "active-mould",
        "concave-spine",
        "copper-corrosion",
        "droppings",
        "hole",
        "ink-corrosion",
        "lead-corrosion",
        "loss",
        "mould",
        "plasticiser-migration",
        "poor-repair",
        "red-rot",
        "tideline",
        "unknown-powder",
        "vinegar-syndrome",
    ]
)
"""Damages whose labels are things that an object has, not what it is."""


def _damaged(features: tuple[Feature, ...], wording: Wording) -> str:
    """What had happened to both: "broken and torn, with loss"."""
    names = [name for kind, name in features if kind == "damages"]
    states = [wording.lexicon.label("damages", one) for one in names if one not in _THINGS]
    things = [wording.lexicon.label("damages", one) for one in names if one in _THINGS]
    return _and_with(states, things)


def _and_with(states: list[str], things: list[str]) -> str:
    told = (listed_text(states), f"with {listed_text(things)}" if things else "")
    return ", ".join(one for one in told if one)


def _after(head: str, words: Iterable[str]) -> str:
    text = listed_text(tuple(words))
    return head + text if text else ""


def _word(kind: str, name: str, wording: Wording) -> str:
    if kind == "decades":
        return wording.notation.decade(int(name))
    label = wording.lexicon.label(kind, name)
    term = wording.lexicon.term(kind, name) if kind == "sewing" else None
    return f"on {label}" if term and known(term.class_) == "support" else label


def _done(features: tuple[Feature, ...], wording: Wording) -> str:
    """Operations in the past: "lined and rebacked"; of several words by the name of the action."""
    terms = [wording.lexicon.term(kind, name) for kind, name in features if kind == "operations"]
    past = [(known(one.past) or "", known(one.noun) or one.label) for one in terms if one]
    plain = [verb for verb, _ in past if verb and " " not in verb]
    nouns = [noun for verb, noun in past if not verb or " " in verb]
    return _and_with(plain, nouns)
