"""Rules about names within a case: what is pointed at is there, and no name is given twice."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from casebook.compute.places import FACES
from casebook.compute.runs import SELF, inner_steps
from casebook.compute.steps import placed
from casebook.diagnostics import Severity
from casebook.model.base import FieldInfo, Record, Unknowing, items, schema
from casebook.reading import did_you_mean
from casebook.rules.declare import FAULT, MISTAKE, OWN, Raised, rule
from casebook.rules.look import Look
from casebook.rules.places import whole_stranger
from casebook.vocabulary import words_in

_WAYS = frozenset(one.value for one in Unknowing)
_HINTS = {
    "photo": "add it to `photos`, or write its `file` or `id` as it stands there",
    "person": "add them to `people`: `people: {AM: {role: conservator}}`",
    "test": "give the test that `id` under `tests`",
    "layer": "write the `id` of a layer under `as-found`, or of a step's `adds`",
    "place": "declare it under `parts`, or under `as-found` with this `id`",
    "case": "write the `id` of a case of this archive",
}
_LISTS = {
    "photo": "among the photos of this case",
    "person": "among the people of this case",
    "test": "among the tests of this case",
    "layer": "a layer of this case",
    "place": "a part or layer that this case or the vocabulary knows",
    "case": "a case of this archive",
}


@rule(
    why="A reference that leads nowhere is a lost fact: nobody can tell later what was meant.",
    source=OWN,
    fields=(
        "Case.photos",
        "Case.people",
        "Case.tests",
        "Case.parts",
        "Case.as_found",
        "Step.adds",
        "Step.hands",
        "Step.photo",
        "Step.allowed_by",
        "Claim.takes_off",
        "Case.links",
        "History.case",
        "WentTo.case",
    ),
    weight=MISTAKE,
    raises="examination: {because: owner asked, by: XY}",
    passes="examination: {because: owner asked, by: AM}",
)
def unknown_reference(look: Look) -> Iterator[Raised]:
    """What is pointed at is there: a case of the archive, a photo, person, test, layer or part.

    A part may also be one of the vocabulary; of an unknown one this is never more than a warning.
    """
    there = _there(look)
    seen: set[tuple[str, str]] = set()
    for record in look.records:
        for info, word in _references(record):
            if (info.points, word) in seen or not _lost(look, there, record, info, word):
                continue
            seen.add((info.points, word))
            hint = did_you_mean(word, sorted(there[info.points])) or _hint(look, info.points, word)
            cap = Severity.WARNING if info.points == "place" else Severity.ERROR
            message = f"`{word[:60]}` is not {_LISTS[info.points]}"
            yield Raised(message, record.span(info.key), hint, cap)


def _there(look: Look) -> Mapping[str, frozenset[str]]:
    """The names that can be pointed at, by kind."""
    photos = items(look.case.photos)
    return {
        "photo": frozenset({one.file for one in photos} | {one.id for one in photos}) - {""},
        "person": frozenset(look.case.people),
        "test": frozenset(one.id for one in items(look.case.tests)) - {""},
        "layer": look.layers,
        "place": look.names | frozenset(_findings(look)) | {SELF},
        "case": frozenset(name for one in look.archive.cases for name in (one.id, *items(one.was))),
    }


def _findings(look: Look) -> Iterator[str]:
    every = (*items(look.case.findings), *(f for step in look.steps for f in items(step.finds)))
    return (one.id for one in every if one.id)


def _references(record: Record) -> Iterator[tuple[FieldInfo, str]]:
    for info in schema(type(record)).values():
        if info.points:
            for word in words_in(getattr(record, info.name)):
                if word and word not in _WAYS:
                    yield info, word


def _lost(
    look: Look, there: Mapping[str, frozenset[str]], record: Record, info: FieldInfo, word: str
) -> bool:
    if word in there[info.points] or _from_recipe(record, info):
        return False
    if info.points == "place":
        return whole_stranger(look, word)
    return info.points != "layer" or look.ground.layer(word) not in there["layer"]


def _from_recipe(record: Record, info: FieldInfo) -> bool:
    """Whether a field was filled in from a recipe, which knows no case."""
    return info.name in getattr(record, "assumed", ())


def _hint(look: Look, kind: str, word: str) -> str:
    near = look.lexicon.suggest("parts", word) if kind == "place" else ""
    return near or _HINTS[kind]


@rule(
    why="Links and claims point at names; a name given twice points at either.",
    source=OWN,
    fields=("Case.parts", "Found.id", "Step.adds", "Photo.id", "Finding.id", "Test.id"),
    weight=FAULT,
    raises="photos: [{id: one, file: a.jpg}, {id: one, file: b.jpg}]",
    passes="photos: [{id: one, file: a.jpg}, {id: two, file: b.jpg}]",
)
def id_twice(look: Look) -> Iterator[Raised]:
    """Within a case no id is given twice: to parts, layers, photos, findings or tests."""
    first: dict[str, str] = dict.fromkeys(look.case.parts, "a part")
    for kind, name, record, key in _named(look):
        if name in first:
            both = "both times to" if kind == first[name] else f"to {first[name]} and to"
            message = f"the id `{name}` is given twice: {both} {kind}"
            hint = "one name means one thing within a case: choose another for the newer one"
            yield Raised(message, record.span(key), hint)
        first.setdefault(name, kind)


@rule(
    why="What is laid is spoken of again by its name, years later and by somebody else.",
    source=OWN,
    fields=("Found.id", "Step.adds"),
    weight=MISTAKE,
    raises="steps: [{adds: not recorded, onto: spine, material: linen}]",
    passes="steps: [{adds: lining, onto: spine, material: linen}]",
)
def name_of_layer(look: Look) -> Iterator[Raised]:
    """A layer bears a name that can be pointed at, not a word that means something else here."""
    found = [(one.id, one, "id") for one in items(look.case.as_found)]
    steps = (
        *items(look.case.steps),
        *(s for e in items(look.case.episodes) for s in items(e.steps)),
    )
    added = [(step.adds or "", step, "adds") for step in inner_steps(steps)]
    for name, record, key in (*found, *added):
        if name and (why := _no_name(name)):
            hint = "give it a name of its own: `lining`, `old-mull`"
            yield Raised(f"`{name[:60]}` is no name for a layer: {why}", record.span(key), hint)


def _no_name(name: str) -> str:
    """Why a word can be no layer's name; "" where it can."""
    word = name.casefold()
    if word in _WAYS:
        return "it says that something is not known"
    if word == SELF:
        return "within a run it means the member itself"
    if word in FACES:
        return "it means a face of what stands before it"
    return "nothing stands before or behind a slash" if not all(name.split("/")) else ""


def _named(look: Look) -> Iterator[tuple[str, str, Record, str]]:
    """Everything of the case that has a name of its own: kind, name, record, its key."""
    case = look.case
    found = [("a layer found", one.id, one, "id") for one in items(case.as_found)]
    added = [("a layer added", one.step.adds or "", one.step, "adds") for one in placed(case)]
    photos = [("a photo", one.id, one, "id") for one in items(case.photos)]
    findings = [("a finding", one.id, one, "id") for one in items(case.findings)]
    tests = [("a test", one.id, one, "id") for one in items(case.tests)]
    return (one for one in (*found, *added, *photos, *findings, *tests) if one[1])


PRACTICE = (unknown_reference, id_twice, name_of_layer)
