"""Rules about steps told together: runs over members, several hands, an order nobody knows."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casebook.compute.runs import as_for, inner_steps, unsaid
from casebook.model.archive import Case
from casebook.model.base import Gap, Maybe, Unknowing, items, known, schema
from casebook.model.treatment import Differs, Episode, Step
from casebook.rules.declare import MISTAKE, OWN, SLIP, Raised, rule
from casebook.rules.look import Look
from casebook.values.durations import Duration

_OF_A_RUN = frozenset({"each", "steps", "differs", "beside"})
_CLOCKS = frozenset({"time", "waits", "dries"})
_ORDERS = frozenset({Unknowing.NOT_RECORDED, Unknowing.NOT_READ, Unknowing.UNKNOWN})


def _runs(look: Look) -> Iterator[Step]:
    """The runs of a case as written, those within a run behind it."""
    sittings = items(look.case.episodes)
    outside = [*items(look.case.steps), *(s for one in sittings for s in items(one.steps))]
    waiting = [step for step in outside if step.each or step.steps]
    while waiting:
        run = waiting.pop(0)
        yield run
        waiting[:0] = [step for step in items(run.steps) if step.each or step.steps]


@rule(
    why="Twenty minutes for each of five volumes are a hundred; for all of them they are twenty.",
    source=OWN,
    fields=("Step.each", "Step.steps", "Step.time", "Step.waits", "Step.dries"),
    weight=SLIP,
    raises="steps: [{each: [board 1, board 2], steps: [{do: clean, treats: each, time: 20 min}]}]",
    passes="steps: [{each: [board 1, board 2], steps: [{do: clean, treats: each, time: 1 h all}]}]",
)
def time_of_run(look: Look) -> Iterator[Raised]:
    """A time in a run says whether it is for each member or for all of them together."""
    for run in _runs(look):
        for step in inner_steps(items(run.steps)):
            for key in unsaid(step):
                message = f"`{key}` does not say whether it is for each member or for all together"
                hint = "write `20 min each` or `2 h all`"
                yield Raised(message, step.span(key), hint)


@rule(
    why="A run is told member by member from its steps; what stands beside them is lost.",
    source=OWN,
    fields=("Step.each", "Step.steps", "Step.treats", "Step.time"),
    weight=MISTAKE,
    raises="steps: [{each: [board 1, board 2], treats: spine, steps: [{do: clean, treats: each}]}]",
    passes="steps: [{each: [board 1, board 2], steps: [{do: clean, treats: each}]}]",
)
def keys_of_run(look: Look) -> Iterator[Raised]:
    """What a run says of the work stands in its steps, not beside them."""
    for run in _runs(look):
        for info in schema(Step).values():
            idle = (info.structural or info.name in _CLOCKS) and info.name not in _OF_A_RUN
            if run.each and idle and getattr(run, info.name) not in (None, (), {}):
                message = f"`{info.key}` stands beside the steps of a run, where nothing reads it"
                yield Raised(message, run.span(info.key), f"move `{info.key}` into one of `steps`")


@rule(
    why="Without its members or its steps a run is nothing that was done.",
    source=OWN,
    fields=("Step.each", "Step.steps"),
    weight=MISTAKE,
    raises="steps: [{steps: [{do: clean, treats: each}]}]",
    passes="steps: [{each: [board 1, board 2], steps: [{do: clean, treats: each}]}]",
)
def members_of_run(look: Look) -> Iterator[Raised]:
    """A run names its members under `each`, and what was done on them under `steps`."""
    for run in _runs(look):
        if not items(run.each):
            message = "this run does not say on which members it was done"
            yield Raised(message, run.span("steps"), "add `each: [volume 3, volume 4]`")
        elif not items(run.steps):
            message = "this run has no steps"
            yield Raised(message, run.span("each"), "add `steps`, or make one step of it")


@rule(
    why="An exception that fits no member or no step changes nothing, and nobody notices.",
    source=OWN,
    fields=("Step.differs", "Differs.in_", "Differs.step", "Step.each", "Step.steps"),
    weight=MISTAKE,
    raises="steps: [{each: [board 1, board 2], steps: [{do: clean, treats: each}],\n"
    "  differs: {in: board 3, step: clean, left-out: yes}}]",
    passes="steps: [{each: [board 1, board 2], steps: [{do: clean, treats: each}],\n"
    "  differs: {in: board 2, step: clean, left-out: yes}}]",
)
def exception_of_run(look: Look) -> Iterator[Raised]:
    """An exception in a run speaks of one of its members and of one of its steps."""
    for run in _runs(look):
        for one in items(run.differs):
            yield from _unfit(run, one)


def _unfit(run: Step, differs: Differs) -> Iterator[Raised]:
    members = items(run.each)
    for member in items(differs.in_):
        if member not in members:
            message = f"`{member}` is not among the members of this run"
            hint = f"they are {', '.join(f'`{one}`' for one in members)}"
            yield Raised(message, differs.span("in"), hint)
    if as_for(differs, items(run.steps)) is None:
        word = known(differs.step)
        message = f"no step of this run is `{word}`" if word else "this does not say which step"
        hint = "name what the step adds, its operation, or its number in the run"
        yield Raised(message, differs.span("step"), hint)


@rule(
    why="Both figures were written down, and only you can say which is right.",
    source=OWN,
    fields=("Step.hands", "Hand.time", "Step.time"),
    weight=SLIP,
    raises="steps: [{do: clean, treats: spine, time: 1 h, date: 2025-03,\n"
    "  hands: [{who: AM, time: 20 min}]}]",
    passes="steps: [{do: clean, treats: spine, time: 20 min, date: 2025-03,\n"
    "  hands: [{who: AM, time: 20 min}]}]",
)
def minutes_of_hands(look: Look) -> Iterator[Raised]:
    """The minutes of the hands at a step add up to its time."""
    for step in look.steps:
        time = known(step.time)
        shares = [_limits(one.time) for one in items(step.hands)]
        told = [share for share in shares if share is not None]
        limits = _limits(step.time)
        if time is None or limits is None or not told or len(told) < len(shares):
            continue
        low, high = sum(one[0] for one in told), sum(one[1] for one in told)
        if not time.about and (high < limits[0] or low > limits[1]):
            message = f"the hands worked {_minutes(low, high)} together, and the step says {time}"
            yield Raised(message, step.span("time"), "leave `time` out, or mend one of the figures")


def _limits(time: Maybe[Duration]) -> tuple[Fraction, Fraction] | None:
    """The least and the most minutes of a time; None where it is open, unknown or has nights."""
    said = known(time)
    if said is None or said.low is None or said.high is None or said.nights:
        return None
    return said.low, said.high


def _minutes(low: Fraction | int, high: Fraction | int) -> str:
    return f"{low} min" if low == high else f"{low} to {high} min"


@rule(
    why="Layers are worked out from the order; a word that nothing reads would hide that it is "
    "not known.",
    source=OWN,
    fields=("Case.order", "Episode.order"),
    weight=MISTAKE,
    raises="order: as it came\nsteps: [{do: clean, treats: spine, hands: AM, date: 2025-03}]",
    passes="order: not recorded\nsteps: [{do: clean, treats: spine, hands: AM, date: 2025-03}]",
)
def order_of_steps(look: Look) -> Iterator[Raised]:
    """The order of steps is the order in which they stand, or it is said not to be known."""
    sittings: tuple[Case | Episode, ...] = (look.case, *items(look.case.episodes))
    for one in sittings:
        order = one.order
        if order is None or (isinstance(order, Gap) and order.kind in _ORDERS):
            continue
        message = f"`order` is not understood: `{str(order)[:60]}`"
        hint = "write `order: not recorded` or `order: unknown`, or leave it out"
        yield Raised(message, one.span("order"), hint)


PRACTICE = (
    time_of_run,
    keys_of_run,
    members_of_run,
    exception_of_run,
    minutes_of_hands,
    order_of_steps,
)
