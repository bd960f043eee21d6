"""Rules about try-outs: made more than once, on bare paper first, and for as long as needed."""

from __future__ import annotations

import re
from collections.abc import Iterator

from casebook.model.base import items, known
from casebook.model.condition import Test
from casebook.model.materials import Material
from casebook.model.treatment import Step
from casebook.rules.declare import ADVICE, SHOULD, Raised, rule
from casebook.rules.liquids import fits, on, relied_on, text, tried_on
from casebook.rules.look import Due, Look
from casebook.rules.matter import agents, ids, sorts
from casebook.rules.results import held, how_long, lasted, repeated
from casebook.rules.touch import LEAVES, named, touched
from casebook.values.durations import Duration

JAIC_5 = "Smith, Jones, Page and Dirda, JAIC 23(2) 1984, 101-113, section 5"
JAIC_8 = "the same, section 8.1"

_MEDIA = re.compile(
    r"\b(?:ink|colou?r|pigment|dye|line|stamp|pencil|red|blue|green|gilt|wash)", re.I
)
_BARE = re.compile(r"\b(?:bare|blank|unprinted|paper (?:alone|first|itself)|margin)\b", re.I)


@rule(
    why="What looks fast at the first drop can move at the third.",
    source=JAIC_5,
    fields=("Case.tests", "Test.times", "Test.method", "Test.result", "Step.allowed_by"),
    weight=ADVICE,
    raises="tests: [{id: ink, part: leaf, agent: water, method: droplet, result: no change}]\n"
    "steps: [{do: wash, treats: section, bath: water, allowed-by: ink}]",
    passes="tests: [{id: ink, part: leaf, agent: water, times: 3, result: no change}]\n"
    "steps: [{do: wash, treats: section, bath: water, allowed-by: ink}]",
    due=Due.TREATED,
)
def test_repeated(look: Look) -> Iterator[Raised]:
    """A test that a wet step goes by, and that showed no change, was made three times.

    On the object, that is: a try-out on a stand-in shows other things.
    """
    seen: set[int] = set()
    for _, test in relied_on(look):
        elsewhere = known(test.stand_in) is not None
        asked = id(test) in seen or elsewhere or repeated(test)
        if not asked and held(known(test.result) or ""):
            seen.add(id(test))
            message = f"the test `{test.id or tried_on(test)}` is not said to have been repeated"
            yield Raised(
                message, test.span("method"), "test the same spot again, and add `times: 3`"
            )


@rule(
    why="Paper that makes a tideline of its own is taken for an ink that moves, and the reverse.",
    source=f"{JAIC_5}; {JAIC_8}",
    fields=("Case.tests", "Test.of", "Test.method", "Test.result", "Step.allowed_by"),
    weight=ADVICE,
    raises="tests: [{id: red, part: leaf, of: red ink, agent: water, result: no change}]\n"
    "steps: [{do: wash, treats: leaf, bath: water, allowed-by: red}]",
    passes="tests: [{id: red, part: leaf, of: red ink, agent: water, times: 3, "
    "method: 'droplet, bare paper first', result: no change}]\n"
    "steps: [{do: wash, treats: leaf, bath: water, allowed-by: red}]",
    due=Due.TREATED,
)
def test_paper_then_ink(look: Look) -> Iterator[Raised]:
    """Before inks and colours of a sheet or leaf are tested, its bare paper is."""
    if any(_BARE.search(text(test)) for test in items(look.case.tests)):
        return
    for _, test in relied_on(look):
        on_paper = any(named(look, part).keys() & LEAVES for part in items(test.part))
        if on_paper and _MEDIA.search(known(test.of) or ""):
            message = f"`{known(test.of)}` was tested, and the record names no test of bare paper"
            hint = 'add to `method`: "bare paper first: no tideline", or a test of its own'
            yield Raised(message, test.span("of"), hint)
            return


@rule(
    why="Ink that stands a droplet for a minute may not stand a damp mass for twenty.",
    source=JAIC_5,
    fields=("Step.agent", "Material.lasts", "Step.allowed_by", "Test.agent", "Test.method"),
    weight=SHOULD,
    raises="tests: [{id: ink, part: leaf, agent: water, method: 'droplet, 60 s, three times'}]\n"
    "steps: [{removes: old-glue, allowed-by: ink, "
    "agent: {is: water, carrier: methyl-cellulose, applied: poultice, lasts: 20 min}}]",
    passes="tests: [{id: ink, part: leaf, agent: water, method: 'damp blotter, 20 min'}]\n"
    "steps: [{removes: old-glue, allowed-by: ink, "
    "agent: {is: water, carrier: methyl-cellulose, applied: poultice, lasts: 20 min}}]",
    due=Due.TREATED,
)
def poultice_tested_as_long(look: Look) -> Iterator[Raised]:
    """A poultice lies no longer than a test of the same kind did, unless the step says why."""
    for step in look.steps:
        for agent in agents(step):
            lies, longest = known(agent.lasts), _longest(look, step, agent)
            if not (lies and longest) or not _poultice(look, step, agent):
                continue
            if how_long(longest) < how_long(lies) and not _reasoned(look, step, agent):
                message = f"the poultice lay {lies}, and the longest test of it {longest}"
                hint = "test with a damp blotter or a patch of the poultice, as long as it lies"
                yield Raised(message, step.span("agent"), hint)


def _reasoned(look: Look, step: Step, agent: Material) -> bool:
    """Whether a step, or the way of it that used this agent, says why."""
    ways = (way for way in items(step.ways) if way.agent == agent)
    return look.tells(step, "because") or any(look.tells(way, "because") for way in ways)


def _longest(look: Look, step: Step, agent: Material) -> Duration | None:
    """The longest time that any test lasted which a poultice goes by."""
    times = (lasted(test) for test in _for_poultice(look, step, agent))
    return max((one for one in times if one), key=how_long, default=None)


def _for_poultice(look: Look, step: Step, agent: Material) -> list[Test]:
    """The tests that a poultice goes by: those it names, else those of what it reaches."""
    every = [one for one in items(look.case.tests) if fits(look, one, (agent,))]
    chosen = [one for one in every if one.id and one.id in items(step.allowed_by)]
    places = touched(look, step)
    return chosen or [one for one in every if on(look, one, places)]


def _poultice(look: Look, step: Step, agent: Material) -> bool:
    """Whether an agent lies on the object in a mass: by its name, its carrier or the operation."""
    held_in = sorts(look, agent) | sorts(look, agent.carrier)
    said = "poultice" in (known(agent.applied) or "").casefold()
    by_name = "poultice" in ids(look, "operations", known(step.do) or "")
    return said or by_name or bool(held_in & {"poultice", "gel"})


PRACTICE = (test_repeated, test_paper_then_ink, poultice_tested_as_long)
