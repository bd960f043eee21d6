"""Rules about sittings: every one has a date, and says who did the work."""

from __future__ import annotations

from collections.abc import Iterator

from casebook.model.base import items
from casebook.model.treatment import Step
from casebook.rules.declare import AIC_27B, ECCO_10, MUST, Raised, rule
from casebook.rules.look import Due, Look


@rule(
    why="How long adhesives dried and what came first decides what can be undone.",
    source=AIC_27B,
    fields=("Episode.date", "Step.date"),
    weight=MUST,
    raises="episodes: [{hands: [AM], steps: [{do: clean, treats: spine}]}]",
    passes="episodes: [{hands: [AM], date: 2025-03, steps: [{do: clean, treats: spine}]}]",
    due=Due.TREATED,
    rows=("dated record of all treatment actions, kept during the treatment",),
    gap="The record does not date every sitting.",
)
def date_of_sitting(look: Look) -> Iterator[Raised]:
    """Every sitting has a date, or each of its steps has."""
    yield from _sittings(look, "date", "has no date", "add `date: 2025-03-14`, or `date: 2025-03`")


@rule(
    why="Questions go to the hands that did it; and each hand answers for its own work.",
    source=f"{AIC_27B}; {ECCO_10}",
    fields=("Episode.hands", "Step.hands"),
    weight=MUST,
    raises="episodes: [{date: 2025-03-14, steps: [{do: clean, treats: spine}]}]",
    passes="episodes: [{date: 2025-03-14, steps: [{do: clean, treats: spine, hands: AM}]}]",
    due=Due.TREATED,
    rows=("names of those performing each action",),
    gap="The record does not say who did the work.",
)
def hands(look: Look) -> Iterator[Raised]:
    """Every sitting says who did the work, or each of its steps does."""
    hint = "add `hands: [AM]` with the initials from `people`"
    yield from _sittings(look, "hands", "does not say who did the work", hint)


def _sittings(look: Look, name: str, lack: str, hint: str) -> Iterator[Raised]:
    """Sittings without something that not each of their steps has either."""
    for number, one in enumerate(items(look.case.episodes), 1):
        steps = items(one.steps)
        if not look.tells(one, name) and not (steps and _each(look, steps, name)):
            yield Raised(f"sitting {number} {lack}", one.span(), hint)
    loose = items(look.case.steps)
    if loose and not _each(look, loose, name):
        first = next(step for step in loose if not _tells(look, step, name))
        yield Raised(f"this step, in no sitting, {lack}", first.span(), hint)


def _each(look: Look, steps: tuple[Step, ...], name: str) -> bool:
    return all(_tells(look, step, name) for step in steps)


def _tells(look: Look, step: Step, name: str) -> bool:
    """Whether a step says something; a run does where it says so itself or all its steps do."""
    inside = items(step.steps) if step.each else ()
    return look.tells(step, name) or (bool(inside) and _each(look, inside, name))


PRACTICE = (date_of_sitting, hands)
