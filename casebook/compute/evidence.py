"""What tests and failures on record forbid, allow or leave open, part by part."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from enum import StrEnum

from casebook.compute.places import FACES
from casebook.compute.releases import wider
from casebook.compute.steps import none, placed
from casebook.model.archive import Case
from casebook.model.base import Gap, Maybe, Unknowing, items, known
from casebook.model.condition import Test
from casebook.model.details import Outcome, Trial
from casebook.model.materials import Material
from casebook.model.proposal import Choice
from casebook.model.treatment import Step
from casebook.model.vocabulary import Opener
from casebook.vocabulary import Lexicon

_HARM = re.compile(
    r"\b(?:bleed\w*|bled|darken\w*|tide ?lines?|stain\w*|mov(?:es?|ed|ing)|runs|ran|running"
    r"|feather\w*|transfer\w*|offsets?|dissolv\w*|fad(?:es?|ed|ing)|discolou?r\w*|halo"
    r"|flak\w*|cockl\w*|on the blotter|on the swab)\b"
)
_SWELLS = re.compile(r"\b(?:swell\w*|swollen|soften\w*|tacky|sticky|lift\w*)\b")
_GELATIN = re.compile(r"\b(?:emulsion|gelatine?|albumen|collodion|image layer)\b", re.I)
"""What is harmed by what a paste or glue is wished to do: common practice, no source."""

_DIRT = re.compile(r"\b(?:dirt|dust|grime|soot)\W+(?:\w+\W+){0,2}$")
"""What may move, since it is to be cleaned away."""

_LESS = re.compile(r"\b(?:lighter|paler|fainter|reduced|less|half|gone)\b")
_TO_GO = re.compile(r"\b(?:adhesive|glue|paste|tape|carrier|dirt|stain|residue)\b", re.I)
"""What a test is made on to take it off: that it moves is what was wished for."""

_SAFE = re.compile(
    r"\b(?:no change|unchanged|nothing|none|harmless|safe|stable|holds?|held|fast|unaffected"
    r"|insoluble|does not react|no effect)\b"
)
_NOT = re.compile(r"\b(?:no|not|never|nothing|none|nowhere|without|neither|nor|free of)\b|n't\b")
_DOUBT = re.compile(r"\b(?:unclear|doubtful|perhaps|maybe|uncertain|inconclusive)\b|\?")
_LISTED = re.compile(rf"(?:\s|\b(?:or|nor|and|any|run)\b|{_HARM.pattern})+")
_ONLY = re.compile(r"\bnot (?:only|just)\b|\bno longer\b")
_SENTENCE = re.compile(r"[;.:]|\b(?:but|then|however|except)\b")
_LIQUID = frozenset({"water", "solution", "enzyme"})


class Result(StrEnum):
    """What a test says of an agent on a part."""

    HARM = "harm"
    SAFE = "safe"
    UNCLEAR = "unclear"


@dataclass(frozen=True, slots=True)
class Tried:
    """A test of an agent on a place of the object, with what came of it.

    `of` is what exactly was tested, `agent` its words, `id` the test's name in the case.
    """

    place: str
    kinds: frozenset[Opener]
    result: Result
    agent: str = ""
    of: str = ""
    id: str = ""


@dataclass(frozen=True, slots=True)
class Failed:
    """An agent, by id or as written, that was given up on a place."""

    place: str
    agent: str
    kinds: frozenset[Opener]


@dataclass(frozen=True, slots=True)
class Evidence:
    """All tests and failures of a case. A place in it speaks for all that is named within it."""

    tried: tuple[Tried, ...] = ()
    failed: tuple[Failed, ...] = ()

    def harm(self, names: Iterable[str], kinds: Iterable[Opener]) -> tuple[Tried, ...]:
        """The tests by which one of these kinds of agent harms one of these places.

        What stains one corner of a board stains the board; what only the ink of a title does
        (`of`) says nothing of the rest of the cover.
        """
        places = tuple(names)
        found = self.harm_in(places, kinds)
        return tuple(
            one for one in found if not one.of or any(_within(name, one.place) for name in places)
        )

    def harm_in(self, names: Iterable[str], kinds: Iterable[Opener]) -> tuple[Tried, ...]:
        """The tests by which it harms one of these places, or anything on a part of one."""
        wanted, places = set(kinds), tuple(names)
        return tuple(
            one
            for one in self.tried
            if one.result is Result.HARM and one.kinds & wanted and _touches(one.place, places)
        )

    def tested(self, names: Iterable[str], kinds: Iterable[Opener]) -> bool:
        """Whether each of these kinds of agent was tried on one of these places without harm.

        What is done dry needs no such test.
        """
        places = tuple(names)
        return all(self._safe(places, kind) for kind in kinds if kind is not Opener.MECHANICAL)

    def _safe(self, places: tuple[str, ...], kind: Opener) -> bool:
        return any(
            one.result is Result.SAFE
            and kind in one.kinds
            and any(_within(name, one.place) for name in places)
            for one in self.tried
        )

    def failures(self, names: Iterable[str]) -> tuple[Failed, ...]:
        """The agents that were given up on one of these places."""
        places = tuple(names)
        return tuple(one for one in self.failed if _touches(one.place, places))


def evidence(case: Case, lexicon: Lexicon) -> Evidence:
    """The tests and failures of a case.

    What harms is forbidden there to that kind of agent; what did no harm is tested. A result that
    cannot be read with certainty, and a test on a stand-in, count for nothing: "test first".
    """
    tried = {one for test in items(case.tests) for one in _of_test(test, lexicon)}
    failed = {one for at in placed(case) for one in _of_step(at.step, lexicon)}
    return Evidence(
        tuple(sorted(tried, key=lambda one: (one.place, one.id, one.agent, one.of))),
        tuple(sorted(failed, key=lambda one: (one.place, one.agent))),
    )


def result_of(said: Maybe[str], of: str = "") -> Result:
    """How a result reads. Whatever harm is not denied counts; `none` says that nothing happened.

    `of` is what was tested: that an emulsion swells is harm, that a paste does is none.
    """
    if isinstance(said, Gap):
        return Result.SAFE if said.kind is Unknowing.NONE else Result.UNCLEAR
    text = _ONLY.sub(" ", (said or "").casefold())
    readings = list(_readings(text, _harms(f"{of} {text}")))
    if Result.HARM in readings:
        return Result.HARM
    sure = Result.SAFE in readings and not _DOUBT.search(text)
    return Result.SAFE if sure else Result.UNCLEAR


def _harms(text: str) -> tuple[re.Pattern[str], ...]:
    return (_HARM, _SWELLS) if _GELATIN.search(text) else (_HARM,)


def _readings(text: str, harms: tuple[re.Pattern[str], ...]) -> Iterator[Result]:
    """What each clause says; a bare list of harms goes on with the denial before it."""
    for sentence in _SENTENCE.split(text):
        before = Result.UNCLEAR
        for clause in sentence.split(","):
            listed = before is Result.SAFE and _LISTED.fullmatch(clause)
            before = Result.SAFE if listed else _clause(clause, harms)
            yield before


def _clause(text: str, harms: tuple[re.Pattern[str], ...]) -> Result:
    harm = next((found for one in harms if (found := one.search(text))), None)
    denied = _NOT.search(text)
    if harm and (_DIRT.search(text[: harm.start()]) or _LESS.search(text)):
        return Result.UNCLEAR
    if harm:
        return Result.SAFE if denied and denied.start() < harm.start() else Result.HARM
    safe = _SAFE.search(text)
    if safe is None:
        return Result.UNCLEAR
    before = text[: safe.start()]
    return Result.UNCLEAR if _NOT.search(before) else Result.SAFE


def _of_test(test: Test, lexicon: Lexicon) -> Iterator[Tried]:
    if known(test.stand_in):
        return
    of = known(test.of) or ""
    result = result_of(test.result, of)
    if result is Result.HARM and _TO_GO.search(of):
        result = Result.UNCLEAR
    for place in items(test.part):
        for agent in items(test.agent):
            words = " + ".join(agents_of(agent)) or "this agent"
            kinds = kinds_of(agent, lexicon)
            yield Tried(_place(place), kinds, result, words, of, test.id)


def _of_step(step: Step, lexicon: Lexicon) -> Iterator[Failed]:
    places = [
        _place(place)
        for named in (step.removes, step.takes_off, step.opens, step.treats, step.joins)
        for place in items(named)
    ]
    for material in _given_up(step):
        kinds = kinds_of(material, lexicon)
        for word in agents_of(material):
            found = lexicon.resolve("materials", word)
            name = found[1] if found else word
            yield from (Failed(place, name, kinds) for place in places if kinds)


def _given_up(step: Step) -> Iterator[Material]:
    """The agents of a step that was given up, and of what was given up in the course of one."""
    agent = known(step.agent)
    if agent and step.outcome is Outcome.GIVEN_UP:
        yield agent
    for trial in items(step.tried):
        yield from _tried(trial)


def _tried(trial: Trial) -> tuple[Material, ...]:
    gone = known(trial.outcome) is Choice.GIVEN_UP
    return items(trial.material) if gone else ()


def agents_of(agent: Material) -> tuple[str, ...]:
    """The words for an agent: itself, the likeliest guess or its mixture, and what carries it."""
    guesses = items(agent.perhaps)[:1]
    name = known(agent.is_)
    own = (name,) if name else guesses or tuple(agent.mix)
    carrier = known(agent.carrier)
    return own + (agents_of(carrier) if carrier else ())


def kinds_of(agent: Maybe[Material], lexicon: Lexicon) -> frozenset[Opener]:
    """The kinds of agent that a material is, by the vocabulary; none where it does not say."""
    said = known(agent)
    if said is None or none(agent):
        return frozenset()
    return frozenset(kind for word in agents_of(said) for kind in word_kinds(word, lexicon))


def word_kinds(word: str, lexicon: Lexicon) -> frozenset[Opener]:
    """The kinds of agent that a word stands for: water-borne, solvent, enzyme, heat, by hand."""
    terms = list(wider(word, lexicon))
    names = {name for name, _ in terms}
    classes = {known(term.class_) for _, term in terms}
    wet = any(known(term.water_borne) is True for _, term in terms)
    found = {
        Opener.MOISTURE: wet or bool(classes & _LIQUID),
        Opener.ENZYME: "enzyme" in classes,
        Opener.SOLVENT: "solvent" in classes or "solvent-gel" in names,
        Opener.HEAT: bool(names & {"heat", "warm-water", "steam"}),
        Opener.MECHANICAL: "by-hand" in names,
    }
    return frozenset(kind for kind, is_one in found.items() if is_one)


def _place(place: str) -> str:
    """A place without its face, in one spelling."""
    words = [word.strip() for word in place.split("/") if word.strip()]
    named = words[:1] + [word for word in words[1:] if word.casefold() not in FACES]
    return "/".join(named).casefold()


def _within(name: str, place: str) -> bool:
    """Whether a thing is a place or within it: `board 1` in `board`, `spine/label` in `spine`."""
    folded = name.casefold()
    return folded == place or folded.startswith((f"{place}/", f"{place} "))


def _touches(place: str, names: tuple[str, ...]) -> bool:
    """Whether a place is one of these things, around one of them, or a part of one of them."""
    return any(_within(name, place) or _within(place, name.casefold()) for name in names)
