"""Rules about the structure: steps that contradict one another, what was hidden, what is strong."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from casebook.compute.layers import Fault, Kind
from casebook.compute.structure import Bond, How, Since, Structure, Thing
from casebook.diagnostics import Severity
from casebook.model.base import items, known
from casebook.model.condition import LATE, Found, Stage
from casebook.model.photos import Photo
from casebook.model.treatment import Step
from casebook.rules.declare import (
    AIC_27B,
    MISTAKE,
    NO_SOURCE,
    OWN,
    SHOULD,
    SLIP,
    Raised,
    Weight,
    rule,
)
from casebook.rules.look import Due, Look
from casebook.rules.places import whole_stranger

_VERBS = (
    "Step.adds",
    "Step.onto",
    "Step.removes",
    "Step.takes_off",
    "Step.puts_back",
    "Step.opens",
    "Step.joins",
)
LEFT_OVER = Weight(Severity.WARNING, Severity.WARNING, Severity.SUGGESTION)
"""Probably not meant; in an old record the step may only have been left out of the notes."""

_AGAINST = frozenset(
    {Kind.GONE, Kind.LATER, Kind.NOT_THERE, Kind.ITSELF, Kind.NOWHERE}
    | {Kind.NOT_OFF, Kind.ALREADY_OFF}
)
_PASTE = "material: linen, adhesive: wheat-starch-paste"


def _raised(look: Look, *kinds: Kind) -> Iterator[Raised]:
    yield from (_said(one, Severity.SUGGESTION) for one in look.replay.faults if one.kind in kinds)


def _said(fault: Fault, least: Severity) -> Raised:
    """A fault as a rule says it, and never heavier than `least` if it may be no fault at all."""
    cap = least if fault.doubtful else Severity.ERROR
    return Raised(fault.message, fault.record.span(fault.key), fault.hint, cap)


@rule(
    why="What lies on what is worked out from the steps in their order: one that cannot have been "
    "so leads the next conservator astray.",
    source=NO_SOURCE,
    fields=("Case.as_found", *_VERBS, "Step.to", "Step.over", "Step.leaves", "Step.outcome"),
    weight=MISTAKE,
    raises=f"steps: [{{removes: old-glue}}, {{adds: patch, onto: old-glue, {_PASTE}}}]",
    passes=f"steps: [{{adds: patch, onto: old-glue, {_PASTE}}}, {{removes: patch}}]",
)
def steps_agree(look: Look) -> Iterator[Raised]:
    """No step takes away, opens or lays on what is not there, or puts back what never came off.

    Nothing is said that would rest on an order which nobody recorded. A name that neither the case
    nor the vocabulary knows is told by another rule.
    """
    for fault in look.replay.faults:
        if fault.kind in _AGAINST and not _told_elsewhere(look, fault):
            yield _said(fault, Severity.WARNING)


@rule(
    why="Of two layers one lies on the other; a ring can neither be drawn nor taken apart.",
    source=OWN,
    fields=("Case.as_found", "Found.id", "Found.onto", "Found.over", "Found.bonds", "Bond.onto"),
    weight=MISTAKE,
    raises="as-found: [{id: mull, onto: paper}, {id: paper, onto: mull}]",
    passes="as-found: [{id: mull, onto: paper}, {id: paper, onto: spine}]",
)
def found_in_a_ring(look: Look) -> Iterator[Raised]:
    """No layer that was found lies on itself, be it by way of others."""
    under = {one.id: tuple(_beneath(look, one)) for one in items(look.case.as_found) if one.id}
    told: set[str] = set()
    for found in items(look.case.as_found):
        ring = _ring(found.id, under) if found.id and found.id not in told else ()
        told.update(ring)
        if ring:
            through = f", by way of {_listed(ring[1:])}" if ring[1:] else ""
            message = f"`{found.id}` lies on itself{through}"
            key = "onto" if items(found.onto) else "over" if items(found.over) else "bonds"
            yield Raised(message, found.span(key), "say of one of them what lies beneath it")


def _beneath(look: Look, found: Found) -> Iterator[str]:
    bonded = (place for bond in items(found.bonds) for place in items(bond.onto))
    yield from map(look.ground.layer, (*items(found.onto), *items(found.over), *bonded))


def _ring(start: str, under: Mapping[str, tuple[str, ...]]) -> tuple[str, ...]:
    """The layers by way of which one lies on itself, itself first; none where it does not."""
    waiting: list[tuple[str, ...]] = [(start,)]
    seen = {start}
    while waiting:
        path = waiting.pop(0)
        for below in under.get(path[-1], ()):
            if below == start:
                return path
            if below not in seen:
                seen.add(below)
                waiting.append((*path, below))
    return ()


def _told_elsewhere(look: Look, fault: Fault) -> bool:
    places = (*items(fault.record.removes), *items(fault.record.takes_off))
    strange = any(whole_stranger(look, place) for place in places)
    return fault.kind is Kind.NOT_THERE and strange


@rule(
    why="What is not cut or opened tears; and whoever undoes it must know how it was freed.",
    source=NO_SOURCE,
    fields=("Case.as_found", *_VERBS),
    weight=SHOULD,
    raises="as-found: [{id: hinge, joins: [board 1, text-block], held: sewn}]\n"
    "steps: [{takes-off: board 1}]",
    passes="as-found: [{id: hinge, joins: [board 1, text-block], held: sewn}]\n"
    "steps: [{removes: hinge}, {takes-off: board 1}]",
    due=Due.TREATED,
)
def freed_before_it_goes(look: Look) -> Iterator[Raised]:
    """What comes off is freed first of what stays behind and holds it too."""
    yield from _raised(look, Kind.STILL_HELD)


@rule(
    why="Dates and drying together tell how long an adhesive had to set.",
    source=NO_SOURCE,
    fields=("Episode.date", "Step.date", "Step.dries", "Drying.for_", "Dates.returned"),
    weight=SLIP,
    raises="episodes: [{date: 2025-03-14, hands: AM, steps: [{do: clean, treats: spine, "
    "dries: 3 nights}, {do: clean, treats: spine}]}]",
    passes="episodes: [{date: 2025-03-14/2025-03-17, hands: AM, steps: [{do: clean, "
    "treats: spine, dries: 3 nights}, {do: clean, treats: spine}]}]",
    due=Due.TREATED,
)
def nights_fit_the_dates(look: Look) -> Iterator[Raised]:
    """A step dries for no more nights than its sitting has days.

    The last step may go on drying after the sitting, until the next one or the return.
    """
    yield from _raised(look, Kind.NIGHTS)


@rule(
    why="The ends of a lining with nothing beneath them lift first, and catch.",
    source=NO_SOURCE,
    fields=(
        "Step.adds",
        "Step.onto",
        "Step.cut",
        "Size.height",
        "Found.height",
        "Step.because",
    ),
    weight=SLIP,
    raises=f"steps: [{{adds: patch, onto: spine, {_PASTE}, cut: {{height: 350 mm}}}}, "
    "{do: make-hollow, adds: tube, onto: patch, material: kozo-paper, cut: {height: 360 mm}}]",
    passes=f"steps: [{{adds: patch, onto: spine, {_PASTE}, cut: {{height: 350 mm}}}}, "
    "{do: make-hollow, adds: tube, onto: patch, material: kozo-paper, cut: {height: 340 mm}}]",
    due=Due.TREATED,
)
def no_longer_than_beneath(look: Look) -> Iterator[Raised]:
    """A spine lining or a hollow tube is no longer than the lining under it, or says why.

    Where its ends lie on a longer lining further down, this is only suggested.
    """
    for fault in look.replay.faults:
        if fault.kind is Kind.LONGER and not look.tells(fault.record, "because"):
            yield _said(fault, Severity.SUGGESTION)


@rule(
    why="Of two layers on one face one lies on the other, and comes off before it.",
    source=NO_SOURCE,
    fields=("Case.as_found", "Step.adds", "Step.onto", "Step.adhesive", "Step.removes"),
    weight=SLIP,
    raises=f"steps: [{{adds: one, onto: sheet, {_PASTE}}}, {{adds: two, onto: sheet, {_PASTE}}}]",
    passes=f"steps: [{{adds: one, onto: sheet, {_PASTE}}}, {{adds: two, onto: one, {_PASTE}}}]",
    due=Due.TREATED,
)
def one_layer_in_one_place(look: Look) -> Iterator[Raised]:
    """No two layers are laid over the whole of one face of one part; patches and zones may be."""
    yield from _raised(look, Kind.SAME_PLACE)


@rule(
    why="What was meant for the time being and then forgotten stays on the object for good.",
    source=NO_SOURCE,
    fields=("Step.adds", "Step.temporary", "Step.removes"),
    weight=LEFT_OVER,
    raises=f"steps: [{{adds: facing, onto: spine, {_PASTE}, temporary: yes}}]",
    passes=f"steps: [{{adds: facing, onto: spine, {_PASTE}, temporary: yes}}, {{removes: facing}}]",
    due=Due.FINISHED,
)
def temporary_comes_off(look: Look) -> Iterator[Raised]:
    """In a finished case, what was laid on for the time being was removed again."""
    yield from _raised(look, Kind.LEFT)


@rule(
    why="What a layer covers nobody sees again until the layer comes off.",
    source=AIC_27B,
    fields=(
        "Case.photos",
        "Photo.shows",
        "Photo.view",
        "Photo.stage",
        "Step.photo",
        "Step.adds",
        "Step.onto",
        "Step.hides",
    ),
    weight=SHOULD,
    raises="photos: [{file: a.jpg, stage: before, view: front, date: 2025-01-28}]",
    passes="photos: [{file: a.jpg, stage: before, view: front, shows: [spine], date: 2025-01-28}]",
    due=Due.TREATED,
    rows=("dated during-treatment images of what will be obscured",),
    gap="Not everything that the treatment covered is shown in a photograph.",
)
def hidden_was_shown(look: Look) -> Iterator[Raised]:
    """What a layer hides was photographed before; without photos of the work, other rules ask.

    For layers that the treatment itself had added this is only suggested, once for them all.
    """
    if not any(photo.stage in (Stage.BEFORE, Stage.DURING) for photo in items(look.case.photos)):
        return
    own: dict[str, Step] = {}
    for moment in look.replay.moments[1:]:
        step = look.replay.step(moment.step)
        unseen = [one for one in moment.hid if not _seen(look, moment.structure, one, step)]
        own.update((one, step) for one in unseen if _added(moment.structure, one))
        if older := [one for one in unseen if not _added(moment.structure, one)]:
            sides = [_side(moment.structure, one, step) for one in older]
            message = f"`{step.adds}` hides {_listed(sides)}, and no photo shows it as it was"
            hint = "name it in the `shows` of a photo, or in `photo` of this step"
            yield Raised(message, step.span("adds"), hint)
    if own:
        message = f"no photo shows {_listed(own)} before another layer covered it"
        hint = "a photo of each layer as it lies is a drawing that nobody has to make"
        yield Raised(message, next(iter(own.values())).span("adds"), hint, Severity.SUGGESTION)


def _side(structure: Structure, name: str, hider: Step) -> str:
    """A hidden thing with the face of it that was hidden, where the record names one."""
    faces = (
        bond.face
        for bond in structure.at(name)
        if bond.lower == name and structure.things[bond.upper].of == hider.adds
    )
    face = next(faces, "")
    return f"{name}/{face}" if face else name


def _listed(names: Iterable[str]) -> str:
    *first, last = (f"`{one}`" for one in names)
    return f"{', '.join(first)} and {last}" if first else last


def _added(structure: Structure, name: str) -> bool:
    return name in structure.things and structure.things[name].since is Since.ADDED


def _seen(look: Look, structure: Structure, name: str, hider: Step) -> bool:
    """Whether a photo shows what a step hid; a name that nobody knows is told by other rules."""
    return whole_stranger(look, name) or _shown(look, structure, name, hider)


def _shown(look: Look, structure: Structure, name: str, hider: Step) -> bool:
    """Whether a photo shows what a step hid: a layer at any time, anything else before it."""
    thing = structure.things.get(name)
    of = thing.of if thing else name
    if items(hider.photo):
        return True
    if thing and not thing.part:
        return any(_tells(look, photo, of) for photo in items(look.case.photos)) or any(
            items(step.photo) for step in look.steps if step.adds == of
        )
    faces = {bond.face for bond in structure.at(name) if bond.lower == name} - {""}
    early = [one for one in items(look.case.photos) if _early(one, hider)]
    return any(_tells(look, photo, of) or _views(photo, of, faces) for photo in early)


def _early(photo: Photo, hider: Step) -> bool:
    """Whether a photo can show what a later step hid."""
    taken, done = known(photo.date), known(hider.date)
    late = bool(taken and done and done.before(taken))
    return photo.stage not in LATE and not late


def _tells(look: Look, photo: Photo, of: str) -> bool:
    """Whether a photo is said to show a thing: itself, or a finding on it."""
    shown = items(photo.shows)
    findings = (one for one in items(look.case.findings) if one.id in shown)
    places = (*shown, *(place for one in findings for place in items(one.part)))
    return any(of in (place, look.ground.layer(place)) for place in places)


def _views(photo: Photo, of: str, faces: set[str]) -> bool:
    """Whether the view of a photo names the part or its face: spine, verso."""
    words = (known(photo.view) or "").casefold().split()
    return any(one in words for one in (of.rpartition("/")[2].split()[0].casefold(), *faces))


_BY_KIND = ("tissue", "paper", "cloth", "board")
"""Kinds of sheet material, the weakest and most supple first. Common practice, no source."""


@rule(
    why="The weaker of two things breaks first: let it be the repair and not the original.",
    source=f"that paper breaks beside a stronger repair: paper conservation trainee's notes "
    f"(thebookhut.co.uk, instructions); the order tissue, paper, cloth, board: {NO_SOURCE}",
    fields=(
        "Step.adds",
        "Step.onto",
        "Step.material",
        "Step.against_original",
        "Step.because",
        "Part.material",
        "Found.material",
    ),
    weight=SHOULD,
    raises="parts: {sheet: {material: laid-paper}}\n"
    f"steps: [{{do: line, adds: patch, onto: sheet/verso, {_PASTE}}}]",
    passes="parts: {sheet: {material: laid-paper}}\n"
    f"steps: [{{do: line, adds: patch, onto: sheet/verso, {_PASTE}, "
    "against-original: {is: weaker, because: 'a worn, loosely woven piece'}}]",
    due=Due.TREATED,
)
def compared_with_original(look: Look) -> Iterator[Raised]:
    """A repair of a stronger kind of material than the original under it is compared with it.

    Kinds are compared, not figures, and only where both are of sheet material; infills, housing and
    what is temporary are left out, and what says `because` or `against-original` is answered.
    """
    for moment in look.replay.moments[1:]:
        step = look.replay.step(moment.step)
        answered = look.tells(step, "against_original") or look.tells(step, "because")
        for below in (
            () if answered or not step.adds else _weaker_below(look, moment.structure, step)
        ):
            message = f"`{step.adds}` is of a stronger kind of material than `{below}` under it"
            hint = "say how they compare: `against-original: {is: weaker, because: …}`"
            yield Raised(message, step.span("material"), hint, Severity.WARNING)
            break


def _weaker_below(look: Look, structure: Structure, step: Step) -> Iterator[str]:
    for bond in structure.bonds:
        upper, lower = structure.things[bond.upper], structure.things[bond.lower]
        if upper.of == step.adds and lower.since is Since.ORIGINAL and _lies(bond, upper):
            above, below = _rank(look, upper), _rank(look, lower)
            if above is not None and below is not None and above > below:
                yield lower.of


def _lies(bond: Bond, upper: Thing) -> bool:
    return bond.how is How.STUCK and not (bond.within or upper.temporary or upper.part)


def _rank(look: Look, thing: Thing) -> int | None:
    """The place of a thing's material in the order of kinds; None for anything else."""
    term = look.lexicon.term("materials", thing.materials[0]) if thing.materials else None
    kind = known(term.class_) if term else None
    return _BY_KIND.index(kind) if kind in _BY_KIND else None


PRACTICE = (
    steps_agree,
    found_in_a_ring,
    freed_before_it_goes,
    nights_fit_the_dates,
    no_longer_than_beneath,
    one_layer_in_one_place,
    temporary_comes_off,
    hidden_was_shown,
    compared_with_original,
)
