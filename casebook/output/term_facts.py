"""What a term's own page says besides its cases: what opens it, its open identifiers."""

from __future__ import annotations

from collections.abc import Iterator

from casebook.compute.releases import Means, every_release
from casebook.model.base import items, known
from casebook.model.vocabulary import Term
from casebook.output.contexts import Fact, Line, Run
from casebook.output.wording import sentence
from casebook.vocabulary import Lexicon

_EASES = {5: "at once", 4: "easily", 3: "with patience", 2: "hardly", 1: "hardly or never"}


def term_facts(kind: str, name: str, term: Term, lexicon: Lexicon) -> tuple[Fact, ...]:
    """The facts of a term, those that are known."""
    opens = every_release(name, lexicon) if kind == "materials" else ()
    rows = (
        ("What opens it", tuple(_means(one) for one in opens)),
        ("In a layer", tuple(_in_a_layer(term))),
        ("Identifiers", tuple(_identifiers(term))),
    )
    return tuple(Fact(label, lines) for label, lines in rows if lines)


def _means(means: Means) -> Line:
    """One way to open it in a sentence, with the source it was read in."""
    kinds = " and ".join(one.value for one in means.kinds)
    when = f"{means.when}: " if means.when else ""
    general = f" (said of {means.assumed_from} in general)" if means.assumed_from else ""
    leaves = f"; leaves {means.leaves}" if means.leaves else ""
    basis = f" ({means.ease_from})" if means.ease_from else ""
    text = (
        f"{when}{means.agent} [{kinds}], {_EASES[means.ease]}{basis}{leaves}{general}. "
        f"Source: {means.source or 'not named'}"
    )
    return sentence((Run(text),))


def _in_a_layer(term: Term) -> Iterator[Line]:
    if known(term.splits):
        yield (Run("A thin layer of it gives way in its own thickness when it is pulled."),)
    if known(term.seals):
        yield (Run("A dry film of it keeps moisture from what lies beneath."),)
    if known(term.grain) is False:
        yield (Run("It has no grain, or none that shows."),)


def _identifiers(term: Term) -> Iterator[Line]:
    """Its numbers in open vocabularies, with where each pairing was read."""
    return ((Run(f"{one.scheme} {one.id} ({one.source})"),) for one in items(term.ids))
