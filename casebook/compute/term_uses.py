"""What the cases tell of a term: for what it was used, how much, how long, what was given up."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field

from casebook.compute.figures import Figure, total
from casebook.compute.outcomes import Name
from casebook.compute.places import Ground, ground
from casebook.compute.steps import Placed, operation, placed
from casebook.compute.summary import Summary
from casebook.compute.uses import Role, touched, used_in
from casebook.model.archive import Case, Kind
from casebook.model.base import items, known
from casebook.model.details import Outcome, Trial
from casebook.model.materials import Material
from casebook.model.proposal import Choice
from casebook.model.treatment import Step
from casebook.vocabulary import Lexicon


@dataclass(frozen=True, slots=True)
class GivenUp:
    """Something tried with a term that was given up: a whole step, or a trial in its course.

    `episode` is the number of the sitting, "" outside any.
    """

    case: str
    episode: str
    step: Step
    trial: Trial | None = None


@dataclass(slots=True)
class TermUse:
    """What is on record of one term. Counts are of cases; areas are in µm², times in minutes.

    `work` gives the cases by operation and part as written ("" for what nobody says). `laid` are
    the areas bonded, layer by layer; `bench` the time of each case in which every step of the
    operation was timed, and `untimed` the cases where one was not.
    """

    work: dict[tuple[str, str], dict[str, None]] = field(default_factory=dict)
    laid: list[Figure] = field(default_factory=list)
    given_up: list[GivenUp] = field(default_factory=list)
    bench: dict[str, Figure] = field(default_factory=dict)
    untimed: dict[str, None] = field(default_factory=dict)

    def worked(self, operation: str, parts: Iterable[str], case: str) -> None:
        """Note a use for an operation on parts; each case counts once."""
        for part in (*parts, ""):
            self.work.setdefault((operation, part), {})[case] = None


NO_USE = TermUse()
"""Nothing on record."""


def term_uses(
    cases: Iterable[Case], summaries: Mapping[str, Summary], lexicon: Lexicon
) -> Mapping[Name, TermUse]:
    """What this lab's own cases tell of each material, agent and operation."""
    found: dict[Name, TermUse] = {}
    for case in cases:
        if case.record is not Kind.FROM_PUBLICATION:
            _steps(case, lexicon, found)
            _areas(summaries[case.id], lexicon, found)
            _times(case, summaries[case.id], lexicon, found)
    return found


def _steps(case: Case, lexicon: Lexicon, found: dict[Name, TermUse]) -> None:
    below = ground(case)
    for one in placed(case):
        word = operation(one.step, lambda said: said)
        done = lexicon.resolve("operations", word) if word else None
        name = done[1] if done else word
        for given_up in _given_up(case, one):
            for term in _tried(given_up, done, lexicon, below):
                found.setdefault(term, TermUse()).given_up.append(given_up)
        if one.step.outcome is not Outcome.GIVEN_UP:
            parts = [_bare(part) for part in touched(below, one.step)]
            for term in _used(one.step, done, lexicon, below):
                found.setdefault(term, TermUse()).worked(name, parts, case.id)


def _used(step: Step, done: Name | None, lexicon: Lexicon, below: Ground) -> dict[Name, None]:
    """The operation of a step and the materials and agents it used."""
    words = (use.material for use in used_in(step, below) if use.named and not use.perhaps)
    materials = (lexicon.resolve("materials", word) for word in words)
    return dict.fromkeys(one for one in (done, *materials) if one)


def _bare(part: str) -> str:
    """The last word for a part, without its number: `board` of `volume 2/board 1`."""
    return part.rpartition("/")[2].strip().rstrip("0123456789 ") or part


def _given_up(case: Case, one: Placed) -> Iterator[GivenUp]:
    if one.step.outcome is Outcome.GIVEN_UP:
        yield GivenUp(case.id, one.episode, one.step)
    for trial in items(one.step.tried):
        if known(trial.outcome) is Choice.GIVEN_UP:
            yield GivenUp(case.id, one.episode, one.step, trial)


def _tried(one: GivenUp, done: Name | None, lexicon: Lexicon, below: Ground) -> Iterable[Name]:
    """The terms that something given up tells of: a trial's materials, or all of a step's."""
    if one.trial is None:
        return _used(one.step, done, lexicon, below)
    words = [word for material in items(one.trial.material) for word in _words(material)]
    found = (lexicon.resolve("materials", word) for word in words)
    return dict.fromkeys(term for term in (done, *found) if term)


def _words(material: Material) -> Iterator[str]:
    yield from (word,) if (word := known(material.is_)) else ()
    yield from material.mix
    yield from (word for one in (known(material.carrier),) if one for word in _words(one))


def _areas(summary: Summary, lexicon: Lexicon, found: dict[Name, TermUse]) -> None:
    """The area of each layer, for its material and for what it was stuck with, where that is one.

    Of several adhesives at one layer nobody says how much each holds.
    """
    stuck: dict[str, dict[str, None]] = {}
    for use in summary.uses:
        if use.role is Role.ADHESIVE and use.named:
            stuck.setdefault(use.layer, {})[use.material] = None
    for layer in summary.areas.layers:
        glues = tuple(stuck.get(layer.layer, ()))
        bonded = total(zone.bonded for zone in layer.zones)
        for word in sorted({layer.material, *(glues if len(glues) == 1 else ())} - {""}):
            if term := lexicon.resolve("materials", word):
                found.setdefault(term, TermUse()).laid.append(bonded)


def _times(case: Case, summary: Summary, lexicon: Lexicon, found: dict[Name, TermUse]) -> None:
    for row in summary.hours.by_operation:
        done = lexicon.resolve("operations", row.keys[0]) if row.keys else None
        use = found.get(done) if done else None
        bench = row.hours.bench.minutes
        if use and bench.value and not bench.at_least:
            use.bench[case.id] = bench
        elif use and case.id in use.work.get((done[1] if done else "", ""), ()):
            use.untimed[case.id] = None
