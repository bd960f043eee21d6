"""Rules about wet treatment: it is tested first, and not done against what a test showed."""

from __future__ import annotations

import re
from collections.abc import Iterator

from casebook.diagnostics import Severity
from casebook.model.base import items, known
from casebook.model.condition import Test
from casebook.model.materials import Material
from casebook.model.treatment import Step
from casebook.rules.declare import NO_SOURCE, SHOULD, Raised, Weight, rule
from casebook.rules.liquids import fits, on, tried_on, wet_work, wetted, wetting
from casebook.rules.look import Due, Look
from casebook.rules.matter import adhesives, water_borne
from casebook.rules.results import held, trouble
from casebook.rules.touch import any_meets, named, near, own, stuck, touched

SPOT_TESTS = "AIC wiki, BPG Spot Tests (conservation-wiki.com/wiki/BPG_Spot_Tests)"
JAIC_5 = "Smith, Jones, Page and Dirda, JAIC 23(2) 1984, 101-113, section 5"
CAMPBELL = "Campbell, Board edge consolidation (poster, paperzz.com/doc/8900031)"

_GLUE = re.compile(r"\b(?:glue|adhesive|paste|gum|tape|linings?|residue)\b", re.I)
_DRY = re.compile(r"\bdry\b|\bmasked\b|\bkept (?:clear|away)\b|\bcovered\b", re.I)
_WORD = re.compile(r"[a-z]{3,}", re.I)

AGAINST = Weight(Severity.WARNING, Severity.WARNING, Severity.SUGGESTION)
"""Something that was probably not meant; in an old record nobody can mend it."""


def _tests_owed(look: Look) -> bool:
    """Whether tests are asked for: the record does not say, with a reason, why there are none."""
    given = isinstance(look.case.tests, tuple) and not look.waived("tests")
    return given or not look.tells(look.case, "tests", in_reach=True)


def _tested(look: Look, places: tuple[str, ...], liquids: tuple[Material, ...]) -> bool:
    fitting = [one for one in items(look.case.tests) if fits(look, one, liquids)]
    parts = [part for one in fitting for part in items(one.part)]
    if not places or any(not items(one.part) for one in fitting):
        return bool(fitting)
    return any(near(look, part, place) for part in parts for place in places)


def _bands(look: Look, step: Step) -> tuple[str, ...]:
    """The endbands that a step wets with a water-borne adhesive."""
    wet = any(water_borne(look, one) for one in adhesives(step))
    return tuple(one for one in stuck(step) if wet and "endband" in named(look, one))


@rule(
    why="What a droplet would have shown in a minute, a bath shows for ever.",
    source=f"{SPOT_TESTS}; {JAIC_5}; of endbands, reds above all: {NO_SOURCE}",
    fields=(
        "Case.tests",
        "Test.part",
        "Test.agent",
        "Step.agent",
        "Step.bath",
        "Step.do",
        "Step.allowed_by",
        "Step.puts_back",
        "Step.adhesive",
    ),
    weight=SHOULD,
    raises="tests: [{id: red-bleeds, part: endband, agent: water, result: bleeds}]\n"
    "steps: [{do: wash, treats: section, bath: deionised-water}]",
    passes="steps: [{do: wash, treats: section, bath: deionised-water, allowed-by: ink-holds}]",
    due=Due.TREATED,
)
def test_before_wet(look: Look) -> Iterator[Raised]:
    """What water or a solvent touches was tried with it first.

    A test on the same part will do, or one named in `allowed-by`; tests on leaves speak for the
    folds of the spine. So does a reason why there are no tests. An endband that is stuck down with
    a water-borne adhesive is asked for too: its silk may bleed. Each part is asked for once.
    """
    asked: set[tuple[str, ...]] = set()
    for step in look.steps if _tests_owed(look) else ():
        liquids = wetting(look, step)
        wet = bool(liquids) or wet_work(look, step)
        places = touched(look, step) if wet else _bands(look, step)
        if not (wet or places) or look.tells(step, "allowed_by", in_reach=True):
            continue
        told = places[:1] in asked or _ours(look, places)
        if not told and not _tested(look, places, liquids):
            asked.add(places[:1])
            what = f"`{places[0]}`" if places else "what it touches"
            message = f"this step wets {what}, and no test says that it can stand it"
            hint = "add the test to `tests` and name it here: `allowed-by: ink-holds`"
            yield Raised(message, step.span("bath" if step.bath else "agent"), hint)


def _ours(look: Look, places: tuple[str, ...]) -> bool:
    """Whether a step acts on something that the treatment itself added."""
    return bool(places) and look.ground.layer(places[0]) in own(look)


def _excused(look: Look, step: Step, test: Test, wet: tuple[Material, ...]) -> bool:
    """Whether a step says how it minded a test: kept it dry, named it, or another that allows."""
    spared = known(step.except_)
    names = set(_WORD.findall(f"{known(test.of) or ''} {' '.join(items(test.part))}".casefold()))
    if spared and (_DRY.search(spared) or names & set(_WORD.findall(spared.casefold()))):
        return True
    parts = items(test.part)
    named_in_step = set(items(step.allowed_by))
    for one in items(look.case.tests):
        on_it = any_meets(look, items(one.part), parts)
        if one.id in named_in_step and on_it:
            return True
        if on_it and _same_agent(look, one, test, wet) and held(known(one.result) or ""):
            return True
    return False


def _same_agent(look: Look, good: Test, bad: Test, wet: tuple[Material, ...]) -> bool:
    """Whether a test was made with the very agent of a step, and the one that failed was not."""
    used = {name for one in wet for name in _own_ids(look, one)}
    tried = {name for one in items(good.agent) for name in _own_ids(look, one)}
    failed = {name for one in items(bad.agent) for name in _own_ids(look, one)}
    return bool(used) and used <= tried and not used <= failed


def _own_ids(look: Look, material: Material) -> frozenset[str]:
    names = (known(material.is_), *material.mix)
    found = (look.lexicon.resolve("materials", name) for name in names if name)
    return frozenset(one[1] for one in found if one)


@rule(
    why="A test that nobody minds hurts as much as none, and the record shows it for ever.",
    source=f"{SPOT_TESTS}; {CAMPBELL} (bleeding and tidelines before paper is pasted down); "
    f"of coloured threads kept dry: {NO_SOURCE}",
    fields=(
        "Case.tests",
        "Test.part",
        "Test.agent",
        "Test.result",
        "Step.agent",
        "Step.bath",
        "Step.adhesive",
        "Step.except_",
        "Step.allowed_by",
    ),
    weight=AGAINST,
    raises="steps: [{puts-back: endband head, onto: spine, adhesive: wheat-starch-paste}]",
    passes="steps: [{puts-back: endband head, onto: spine, adhesive: wheat-starch-paste, "
    "allowed-by: red-bleeds, except: 'the silk, kept dry'}]",
    due=Due.TREATED,
)
def wet_against_test(look: Look) -> Iterator[Raised]:
    """Nothing is wetted that bled, moved or darkened in a test, unless the step says how.

    It says how with an `except` that keeps the thing dry, with `allowed-by` and a test of that
    part, or by a test with its own agent that showed no change.
    """
    bad = [one for one in items(look.case.tests) if _failed(one)]
    for step in look.steps if bad else ():
        wet, reached = wetted(look, step)
        places = [one for one in reached if one not in items(step.removes)]
        for test in bad if wet or places else ():
            hit = fits(look, test, wet) and on(look, test, places)
            if hit and not _excused(look, step, test, wet):
                word = trouble(known(test.result) or "")
                message = f"this step wets {tried_on(test)}, and a test says of it: {word}"
                hint = 'add `except: "…, kept dry"`, or `allowed-by` with the test that allowed it'
                yield Raised(message, step.span("except" if step.except_ else ""), hint)
                break


def _failed(test: Test) -> bool:
    """Whether something other than the adhesive under test gave way."""
    about_glue = _GLUE.search(known(test.of) or "")
    return not about_glue and bool(trouble(known(test.result) or ""))


PRACTICE = (test_before_wet, wet_against_test)
