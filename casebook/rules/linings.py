"""Rules about linings: their grain, how far they reach, and how they dry on a curve."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from casebook.compute.steps import lays, operation, placed
from casebook.diagnostics import Span
from casebook.model.base import items, known
from casebook.model.details import Grain
from casebook.model.treatment import Step
from casebook.rules.declare import ADVICE, NO_SOURCE, SHOULD, Raised, rule
from casebook.rules.look import Due, Look
from casebook.rules.matter import classes, has_grain, ids
from casebook.rules.touch import named

R_AND_E = "Roberts and Etherington, Bookbinding and the Conservation of Books (1982)"
GRAIN_ARTICLES = (
    "binder's article on grain (cathydurso.net); likewise bookcraftsupply.com (2017) and "
    'binder\'s article "Grain matters" (editions.studio, 2019)'
)

SHORT_OF_EACH_END = Fraction("3.175")
"""Millimetres, 1/8 in, by which a spine lining usually stops short of head and of tail.
Source: Roberts and Etherington (1982), "spine lining"."""

_GRAINED = frozenset({"paper", "cloth", "board"})
_CURVE_HOLDERS = frozenset({"elastic-bandage", "tying-up-cord"})
_SOFT = re.compile(r"bag|shot|sand|wrap|bandage|cord", re.I)
_ROUND = re.compile(r"\bround", re.I)


def _under(look: Look, step: Step) -> tuple[str, ...]:
    """The parts that a layer of a step comes to lie on in the end."""
    return look.ground.under(items(step.onto) or tuple(step.spans))


def _spines(look: Look, step: Step) -> tuple[str, ...]:
    return tuple(one for one in _under(look, step) if look.ground.is_spine(one))


def _on_board(look: Look, step: Step) -> bool:
    return any("board" in named(look, one) for one in _under(look, step))


@rule(
    why="Paper and cloth move more across their grain: against it they ripple the gutter, stiffen "
    "the opening and warp the boards.",
    source=f"{R_AND_E}, spine lining paper, liner (sense 1), against the grain, machine direction, "
    f"grain (sense 3: in cloth, the warp); {GRAIN_ARTICLES}",
    fields=("Step.onto", "Step.spans", "Step.material", "Step.grain", "Step.because"),
    weight=SHOULD,
    raises="steps: [{adds: patch, onto: spine, material: linen, adhesive: paste, grain: across}]",
    passes="steps: [{adds: patch, onto: spine, material: linen, adhesive: paste, grain: across, "
    "because: 'cross-ply over a first lining along'}]",
    due=Due.TREATED,
)
def grain_head_to_tail(look: Look) -> Iterator[Raised]:
    """The grain of what is laid on a spine or a board runs from head to tail.

    Layers crossed on purpose pass with a `because`, and so does paper that has no grain.
    """
    for step in look.steps:
        across = lays(step) and step.grain is Grain.ACROSS and has_grain(look, step.material)
        where = "spine" if _spines(look, step) else "board" if _on_board(look, step) else ""
        if across and where and not look.tells(step, "because"):
            message = f"the grain of `{step.adds}` runs across the {where}, not from head to tail"
            hint = "look whether `along` is meant; if it is crossed on purpose, say `because: …`"
            yield Raised(message, step.span("grain"), hint)


@rule(
    why="Whoever sees the spine ripple or a board warp looks for the grain first.",
    source=f"{R_AND_E}, spine lining paper, against the grain (hand-made paper has no definite "
    f"grain); binders' articles (cathydurso.net, bookcraftsupply.com); of the curl: {NO_SOURCE}",
    fields=("Step.onto", "Step.material", "Step.grain"),
    weight=ADVICE,
    raises="steps: [{adds: patch, onto: spine, material: linen, adhesive: paste}]",
    passes="steps: [{adds: patch, onto: spine, material: kozo-paper, adhesive: paste}]",
    due=Due.TREATED,
)
def grain_said(look: Look) -> Iterator[Raised]:
    """Machine-made paper, cloth or board laid on a spine has its grain on record.

    Hand-made paper may have none, so that nothing is asked of it. An old record is not asked.
    """
    for step in look.steps if not look.old else ():
        grained = classes(look, step.material) & _GRAINED and has_grain(look, step.material)
        if lays(step) and grained and _spines(look, step) and not look.tells(step, "grain"):
            message = f"which way does the grain of `{step.adds}` run?"
            hint = "add `grain: along` (head to tail) or `across`; wetted on one side, paper curls "
            hint += "into a tube along its grain"
            yield Raised(message, step.span("material"), hint)


@rule(
    why="Two layers that pull in two directions draw what they lie on out of flat.",
    source=GRAIN_ARTICLES,
    fields=("Step.onto", "Step.material", "Step.grain", "Step.because"),
    weight=ADVICE,
    raises="steps: [{adds: one, onto: sheet, material: linen, adhesive: paste, grain: along}, "
    "{adds: two, onto: one, material: linen, adhesive: paste, grain: across}]",
    passes="steps: [{adds: one, onto: sheet, material: linen, adhesive: paste, grain: along}, "
    "{adds: two, onto: one, material: linen, adhesive: paste, grain: across, "
    "because: 'crossed, to stay flat on the drying board'}]",
    due=Due.TREATED,
)
def grain_not_mixed(look: Look) -> Iterator[Raised]:
    """Layers stuck to one another keep one direction of grain, unless crossed on purpose."""
    laid = {step.adds: step for step in look.steps if step.adds and lays(step)}
    for step in laid.values():
        below = [laid[one] for one in map(look.ground.layer, items(step.onto)) if one in laid]
        crossed = next((one for one in below if _crossed(look, step, one)), None)
        if crossed and not _spines(look, step) and not _on_board(look, step):
            message = f"the grain of `{step.adds}` crosses that of `{crossed.adds}` under it"
            hint = "look which of the two is meant; if it is on purpose, say `because: …`"
            yield Raised(message, step.span("grain"), hint)


def _crossed(look: Look, step: Step, below: Step) -> bool:
    grains = {known(step.grain), known(below.grain)}
    said = look.tells(step, "because") or look.tells(below, "because")
    both = has_grain(look, step.material) and has_grain(look, below.material)
    return None not in grains and len(grains) == 2 and both and not said


@rule(
    why="A lining that reaches the very ends shows, catches, and lifts the caps.",
    source=f"{R_AND_E}, spine lining: usually 1/8 in (3.175 mm) short of head and of tail; that a "
    f"tissue may cover the whole spine: {NO_SOURCE}",
    fields=("Step.onto", "Step.cut", "Step.material", "Part.height", "Step.because"),
    weight=ADVICE,
    raises="steps: [{do: line, adds: patch, onto: spine, material: linen, adhesive: paste, "
    "cut: {height: 396 mm}}]",
    passes="steps: [{do: line, adds: patch, onto: spine, material: linen, adhesive: paste, "
    "cut: {height: 390 mm}}]",
    due=Due.TREATED,
)
def lining_short_of_ends(look: Look) -> Iterator[Raised]:
    """A spine lining stops a little short of head and tail, where both heights are on record.

    A tissue may cover the whole spine, and so may a lining with a `because`.
    """
    for step in _unrolled(look):
        if not _is_lining(look, step) or look.tells(step, "because"):
            continue
        cut, high = _cut_height(step), _spine_height(look, step)
        if cut is not None and high is not None and cut > high - 2 * SHORT_OF_EACH_END:
            message = f"`{step.adds}` is cut to {float(cut):g} mm for a spine of {float(high):g} mm"
            hint = "it usually stops 3 mm short of each end; if it is meant to reach, say `because`"
            yield Raised(message, step.span("cut"), hint)


def _is_lining(look: Look, step: Step) -> bool:
    """Whether a step lines a spine with more than a tissue; a reback covers, and does not line."""
    name = operation(step, lambda word: next(iter(_operation_ids(look, word)), word))
    tissue = "tissue" in classes(look, step.material)
    return lays(step) and name in ("line", "line-spine") and not tissue


def _operation_ids(look: Look, word: str) -> list[str]:
    found = look.lexicon.resolve("operations", word)
    return [found[1]] if found else []


def _cut_height(step: Step) -> Fraction | None:
    size = known(step.cut)
    height = known(size.height) if size else None
    return height.low if height else None


def _spine_height(look: Look, step: Step) -> Fraction | None:
    heights = (known(look.ground.part(one).height) for one in _spines(look, step))
    return next((one.low for one in heights if one), None)


@rule(
    why="Small weights sit on the middle of a curve and leave its shoulders in the air.",
    source=NO_SOURCE,
    fields=("Step.onto", "Step.dries", "Drying.under", "Part.rise", "Binding.spine"),
    weight=ADVICE,
    raises="parts: {spine: {width: 68 mm, rise: 14 mm}}\nsteps: [{adds: patch, onto: spine, "
    "material: linen, adhesive: paste, dries: overnight under weights}]",
    passes="parts: {spine: {width: 68 mm, rise: 14 mm}}\nsteps: [{adds: patch, onto: spine, "
    "material: linen, adhesive: paste, dries: overnight under release-sheet + elastic-bandage}]",
    due=Due.TREATED,
)
def contact_on_a_curve(look: Look) -> Iterator[Raised]:
    """A lining on a rounded spine dries under something that holds the whole curve."""
    told: set[Span | None] = set()
    for step in _unrolled(look):
        under = [word for one in items(step.dries) for word in items(one.under)]
        held = any(ids(look, "tools", one) & _CURVE_HOLDERS or _SOFT.search(one) for one in under)
        weighed = next((one for one in under if "weight" in ids(look, "tools", one)), None)
        span = next((one.span() for one in items(step.dries)), None)
        if lays(step) and weighed and span not in told and not held and _on_round(look, step):
            told.add(span)
            message = f"`{weighed}` hold a rounded spine at its middle, and not at its shoulders"
            hint = "an elastic wrap over a release sheet holds the whole curve"
            yield Raised(message, span, hint)


def _unrolled(look: Look) -> Iterator[Step]:
    """Every step, those of a run told for each member, so that they meet its own parts."""
    return (one.step for one in placed(look.case))


def _on_round(look: Look, step: Step) -> bool:
    """Whether a layer lies on a spine alone, and that spine is rounded by its rise or in words."""
    under = _under(look, step)
    if not under or not all(look.ground.is_spine(one) for one in under):
        return False
    rises = [rise for one in under if (rise := known(look.ground.part(one).rise))]
    said = any(_ROUND.search(known(one.spine) or "") for one in items(look.case.bindings))
    return any(rise.least > 0 for rise in rises) if rises else said


PRACTICE = (
    grain_head_to_tail,
    grain_said,
    grain_not_mixed,
    lining_short_of_ends,
    contact_on_a_curve,
)
