"""What a term's own page says besides its cases: its uses, its times, what opens it, its ids."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from casebook.compute.figures import Effect, Figure, qualified, total
from casebook.compute.releases import Means, every_release
from casebook.compute.term_uses import NO_USE, TermUse
from casebook.model.base import items, known
from casebook.model.vocabulary import Term
from casebook.output.contexts import Fact, Line, Run
from casebook.output.tables import area_text
from casebook.output.wording import Wording, sentence
from casebook.values.showing import count_of, hours
from casebook.vocabulary import Lexicon

_EASES = {5: "at once", 4: "easily", 3: "with patience", 2: "hardly", 1: "hardly or never"}
_UNNAMED = {"": "work told in words", "reattach": "putting back", "treat": "treating"}
"""Work that the record calls by no operation of the vocabulary."""

MOST = 6
"""Uses, and parts of each, that are named; the others are counted."""


REASONS = 2
"""Reasons that are told why an area is not the whole truth."""


def term_facts(
    kind: str, name: str, term: Term, wording: Wording, use: TermUse = NO_USE
) -> tuple[Fact, ...]:
    """The facts of a term, those that are known; `use` is what the cases tell of it."""
    done = kind == "operations"
    rows = (
        ("Done on", tuple(_done_on(name, use, wording.lexicon)) if done else ()),
        ("Used for", () if done else tuple(_used_for(use, wording))),
        ("Laid in all", tuple(_in_all(use.laid, wording))),
        ("Bench time", tuple(_bench(use))),
        ("In a layer", tuple(_in_a_layer(term))),
        ("Identifiers", tuple(_identifiers(term))),
    )
    return tuple(Fact(label, lines) for label, lines in rows if lines)


def opening_lines(kind: str, name: str, lexicon: Lexicon) -> tuple[Line, ...]:
    """What opens a material, the easiest first, each with its source."""
    opens = every_release(name, lexicon) if kind == "materials" else ()
    return tuple(_means(one) for one in opens)


def _used_for(use: TermUse, wording: Wording) -> Iterator[Line]:
    """For which operations, in how many cases, on which parts: "lining in 3 cases (spine 2)"."""
    counts = {done: len(cases) for (done, part), cases in use.work.items() if not part}
    found = sorted(counts, key=lambda one: (-counts[one], one))
    for number, done in enumerate(found[:MOST]):
        parts = _parts(done, use, wording.lexicon)
        where = f" ({_among(parts)})" if parts else ""
        times = str(counts[done]) if number else count_of(counts[done], "case")
        yield (_noun(done, wording), Run(f" in {times}{where}"))
    if len(found) > MOST:
        yield (Run(f"and for {count_of(len(found) - MOST, 'other')}"),)


def _noun(done: str, wording: Wording) -> Run:
    if done in _UNNAMED:
        return Run(_UNNAMED[done])
    run, term = wording.term("operations", done), wording.lexicon.term("operations", done)
    noun = known(term.noun) if term else None
    return Run(noun or run.text, run.href)


def _parts(done: str, use: TermUse, lexicon: Lexicon) -> list[tuple[str, int]]:
    """The parts an operation was done on, each with its number of cases, the most first."""
    counts = {part: len(cases) for (one, part), cases in use.work.items() if part and one == done}
    found = sorted(counts, key=lambda one: (-counts[one], one))
    return [(_part(one, lexicon), counts[one]) for one in found]


def _among(parts: Sequence[tuple[str, int]]) -> str:
    """Parts with their numbers of cases: "spine 3, sheet 1"."""
    told = [f"{part} {count}" for part, count in parts[:MOST]]
    more = [f"{len(parts) - MOST} more"] if len(parts) > MOST else []
    return ", ".join((*told, *more))


def _part(word: str, lexicon: Lexicon) -> str:
    term = lexicon.term("parts", word)
    return term.label if term and term.label else word.replace("-", " ")


def _done_on(name: str, use: TermUse, lexicon: Lexicon) -> Iterator[Line]:
    """The parts on which it was done: "spine in 3 cases, board in 2"."""
    parts = _parts(name, use, lexicon)
    told = [
        f"{one} in {count if n else count_of(count, 'case')}"
        for n, (one, count) in enumerate(parts)
    ]
    more = [f"{len(told) - MOST} more"] if len(told) > MOST else []
    yield from ((Run(", ".join((*told[:MOST], *more))),),) if told else ()


def _in_all(laid: Sequence[Figure], wording: Wording) -> Iterator[Line]:
    """The area bonded in all, and what it lacks."""
    area = total(laid)
    if area.value:
        effect = Effect.AT_LEAST if area.at_least else Effect.ABOUT
        reasons = [str(one) for one in area.doubts if one.effect is effect]
        lacking = f" ({'; '.join(reasons[:REASONS])})" if reasons else ""
        yield (Run(f"{area_text(area, wording.notation)}{lacking}"),)


def _bench(use: TermUse) -> Iterator[Line]:
    """From the shortest to the longest time of a case, and how many cases were not timed."""
    times = sorted(use.bench.values(), key=lambda one: one.value)
    untimed = count_of(len(use.untimed), "case")
    if not times:
        yield from ((Run(f"not recorded in {untimed}"),),) if use.untimed else ()
        return
    ends = dict.fromkeys(qualified(one, hours(one.value)) for one in (times[0], times[-1]))
    rest = f"; in {untimed} not recorded for every step" if use.untimed else ""
    yield (Run(f"{' to '.join(ends)} in {count_of(len(times), 'case')}{rest}"),)


def _means(means: Means) -> Line:
    """One way to open it in a sentence, with the source it was read in."""
    kinds = " and ".join(one.value for one in means.kinds)
    when = f" ({means.when})" if means.when else ""
    general = f" (said of {means.assumed_from} in general)" if means.assumed_from else ""
    leaves = f"; leaves {means.leaves}" if means.leaves else ""
    basis = f" ({means.ease_from})" if means.ease_from else ""
    text = (
        f"{kinds}{when}: {means.agent}, {_EASES[means.ease]}{basis}{leaves}{general}. "
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
