"""How repairs held: for each material and operation, the later looks at the work done with it."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from statistics import NormalDist

from casebook.compute.elapsed import Elapsed, elapsed
from casebook.compute.layers.holds import STAYING, is_of
from casebook.compute.places import Ground, ground
from casebook.compute.presence import Presence
from casebook.compute.steps import none, operation, placed
from casebook.compute.summary import Summary
from casebook.compute.uses import touched
from casebook.model.archive import Case, Kind, Kinship, Standing
from casebook.model.base import Maybe, items, known
from casebook.model.condition import FollowUp, Holding
from casebook.model.details import Outcome as Came
from casebook.model.materials import Material
from casebook.model.treatment import Step
from casebook.values.dates import Date
from casebook.vocabulary import Lexicon

Name = tuple[str, str]
"""A term: its vocabulary, `materials` or `operations`, and its id."""

WORST = (Holding.FAILED, Holding.LIFTING, Holding.CHANGED, None, Holding.SOUND)
"""What was seen, the worst first; None is a look of which nobody says what it showed."""

ENOUGH = 10
"""With fewer looks than this no interval is told: a judgement of the project, no source."""


@dataclass(frozen=True, slots=True)
class Look:
    """One later look at work done with a term: at which layers or parts, () for the whole.

    `since` is the time since the treatment ended, None where that cannot be told.
    """

    places: tuple[str, ...]
    state: Holding | None
    date: Date | None = None
    since: Elapsed | None = None
    because: str = ""


@dataclass(frozen=True, slots=True)
class Again:
    """A case in which the same object was treated again: its id, and what it says of the first."""

    case: str
    state: str = ""
    because: str = ""


@dataclass(frozen=True, slots=True)
class Outcome:
    """One treatment in which a term was used, with what is on record of it since.

    `own` is false for a treatment by others that was read in a publication.
    """

    case: str
    own: bool = True
    looks: tuple[Look, ...] = ()
    again: tuple[Again, ...] = ()

    @property
    def state(self) -> Holding | None:
        """The worst that was seen: what once lifted did not hold, even where it was stuck again."""
        return min((one.state for one in self.looks), key=WORST.index, default=None)


Work = dict[Name, set[str]]
"""What one treatment left: by term, the layers laid with it and the parts worked on."""


def outcomes(
    cases: Iterable[Case], summaries: Mapping[str, Summary], lexicon: Lexicon
) -> Mapping[Name, tuple[Outcome, ...]]:
    """By term, the ended treatments that left something of it on an object, in the cases' order.

    What was taken off again in the same treatment is left out, as are agents: they act and go.
    """
    every = tuple(cases)
    again = _treated_again(every)
    found: dict[Name, list[Outcome]] = {}
    for case in every:
        if _ended(case):
            gone = _gone(summaries[case.id])
            for name, outcome in _of_case(case, gone, lexicon).items():
                told = replace(outcome, again=again.get(case.id, ()))
                found.setdefault(name, []).append(told)
    return {name: tuple(one) for name, one in found.items()}


def score_interval(held: int, looked: int) -> tuple[float, float]:
    """Between which shares the true one lies, at 95 %, where `held` of `looked` were so.

    Wilson's score interval. Sources: Wilson, J. Am. Stat. Assoc. 22 (1927) 209–212; advised for
    small numbers by Brown, Cai and DasGupta, Statistical Science 16 (2001) 101–133 (both cited
    from memory; the formula read in the manual of the R package cicalc).
    """
    z = NormalDist().inv_cdf(0.975)
    share, more = held / looked, z * z / looked
    middle = (share + more / 2) / (1 + more)
    reach = z * math.sqrt(share * (1 - share) / looked + more / (4 * looked)) / (1 + more)
    return max(middle - reach, 0.0), min(middle + reach, 1.0)


def _ended(case: Case) -> bool:
    """Whether a treatment is over; one of which nobody says so counts as over."""
    status = known(case.status)
    return status is None or status.is_ is not Standing.IN_TREATMENT


def _gone(summary: Summary) -> frozenset[str]:
    layers = summary.areas.layers
    return frozenset(one.layer for one in layers if one.presence is Presence.GONE)


def _of_case(case: Case, gone: frozenset[str], lexicon: Lexicon) -> Mapping[Name, Outcome]:
    below = ground(case)
    work: Work = {}
    for step in (one.step for one in placed(case)):
        if step.adds not in gone and _leaves_something(step, lexicon):
            places = tuple(_places(step, below))
            for name in _terms(step, lexicon):
                work.setdefault(name, set()).update(places)
    looks = [(one, _look(one, _end(case))) for one in items(case.follow_up)]
    own = case.record is not Kind.FROM_PUBLICATION
    return {
        name: Outcome(case.id, own, tuple(_telling(looks, places, below)))
        for name, places in work.items()
    }


def _leaves_something(step: Step, lexicon: Lexicon) -> bool:
    """Whether a step left something that can hold or give way: a layer, a joint, what soaked in."""
    if step.outcome is Came.GIVEN_UP or known(step.temporary):
        return False
    if step.adds:
        return bool(_onto(step)) or bool(step.spans)
    if items(step.joins) or items(step.puts_back):
        return True
    soaked = step.adhesive is not None and not none(step.adhesive)
    return bool(items(step.treats)) and (soaked or is_of(step.material, STAYING, lexicon))


def _onto(step: Step) -> tuple[str, ...]:
    bonded = tuple(place for bond in items(step.bonds) for place in items(bond.onto))
    inside = known(step.in_thickness_of)
    lies = (*items(step.onto), *items(step.to), *items(step.joins), *items(step.soaks_in))
    return (*lies, *bonded, *((inside,) if inside else ()))


def _places(step: Step, below: Ground) -> Iterator[str]:
    """By which names a later look may speak of a step's work: its layer, what it handled, parts."""
    yield from (step.adds,) if step.adds else ()
    for place in (*items(step.treats), *items(step.joins), *items(step.puts_back)):
        yield below.layer(place)
    yield from touched(below, step)


def _terms(step: Step, lexicon: Lexicon) -> Iterator[Name]:
    word = operation(step, lambda one: one)
    if word and (found := lexicon.resolve("operations", word)):
        yield found
    said = [step.material, step.adhesive]
    said += [one for way in items(step.ways) for one in (way.material, way.adhesive)]
    said += [bond.adhesive for bond in items(step.bonds)]
    for name in (one for material in said for one in _words(material)):
        if (found := lexicon.resolve("materials", name)) and found[0] == "materials":
            yield found


def _words(material: Maybe[Material]) -> Iterator[str]:
    """The words for a material that is known: its own, those of a mixture, those of its plies."""
    one = known(material)
    if one is not None:
        yield from (name,) if (name := known(one.is_)) else ()
        yield from one.mix
        yield from (word for ply in items(one.built_of) for word in _words(ply))


def _look(one: FollowUp, end: Date | None) -> Look:
    date = known(one.date)
    since = elapsed(end, date) if end and date else None
    return Look(items(one.layer), known(one.state), date, since, known(one.because) or "")


def _telling(
    looks: Iterable[tuple[FollowUp, Look]], work: set[str], below: Ground
) -> Iterator[Look]:
    """The looks that tell of some work: those at its layers or parts, or at the whole.

    A look at a layer tells of that layer alone; one at a part, of what was done to all of it.
    """
    for one, look in looks:
        if not one.layer:
            yield look
        elif places := tuple(place for place in look.places if _tells(below.layer(place), work)):
            yield replace(look, places=places)


def _tells(place: str, work: set[str]) -> bool:
    return any(one == place or one.startswith(f"{place}/") for one in work)


def _end(case: Case) -> Date | None:
    """When a treatment ended: the last day on which something was done, else the day it left."""
    sittings = [known(one.date) for one in items(case.episodes)]
    done = [*sittings, *(known(one.step.date) for one in placed(case))]
    dated = [(one.latest, one) for one in done if one and one.latest]
    dates = known(case.dates)
    returned = known(dates.returned) if dates else None
    return max(dated, key=lambda pair: pair[0])[1] if dated else returned


def _treated_again(cases: Iterable[Case]) -> Mapping[str, tuple[Again, ...]]:
    """For each case, those in which its object was treated again, whichever way they say so."""
    every = tuple(cases)
    ids = {name: one.id for one in every for name in (one.id, *items(one.was))}
    found: dict[str, dict[str, Again]] = {}
    for case in every:
        for name, again in _earlier(case):
            if name in ids and ids[name] != case.id:
                found.setdefault(ids[name], {}).setdefault(case.id, again)
    return {name: tuple(one.values()) for name, one in found.items()}


def _earlier(case: Case) -> Iterator[tuple[str, Again]]:
    """The earlier cases that a case names, with what it says became of that treatment."""
    for past in items(case.history):
        if name := known(past.case):
            yield name, Again(case.id, known(past.state) or "", known(past.because) or "")
    for link in items(case.links):
        if link.case and known(link.is_) is Kinship.RETREATS:
            yield link.case, Again(case.id, "", known(link.because) or "")
