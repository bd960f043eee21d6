"""The object for a case page: what it is, its sizes, its parts in their tree, its bindings."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import TypeVar

from casebook.model.archive import Case
from casebook.model.base import Gap, Many, items, known
from casebook.model.object import Binding, Boards, Came, Made, Object, Part, Size
from casebook.output.contexts import Fact, Line, Run
from casebook.output.wording import (
    Wording,
    capital_text,
    listed,
    listed_text,
    measured,
    say,
    sentence,
)

T = TypeVar("T")

_SIZES = ("height", "width", "thickness", "length", "diameter")


def fact(label: str, *texts: str) -> Fact | None:
    """A fact of plain texts; None where all are empty."""
    lines = tuple((Run(text),) for text in texts if text)
    return Fact(label, lines) if lines else None


def _kept(facts: list[Fact | None]) -> tuple[Fact, ...]:
    return tuple(one for one in facts if one)


def size_text(size: Size | Gap | None, wording: Wording) -> str:
    """Measures in one line: "height 16 1/4 in, width 268 mm"."""
    if size is None or isinstance(size, Gap):
        return say(size)
    named = ((name, getattr(size, name)) for name in _SIZES)
    return ", ".join(f"{name} {wording.say(one)}" for name, one in named if one)


def made_text(made: Made, wording: Wording) -> str:
    """A date of making, and who says so."""
    says = f", according to {made.says}" if known(made.says) else ""
    because = f", because {made.because}" if known(made.because) else ""
    return f"{wording.say(made.is_)}{says}{because}"


def object_facts(case: Case, wording: Wording) -> tuple[Fact, ...]:
    """What the object is, fact by fact."""
    thing = known(case.object) or Object()
    kind = known(thing.kind)
    owner = known(thing.owner)
    facts = [
        Fact("Kind", ((wording.term("kinds", kind),),)) if kind else fact("Kind", say(thing.kind)),
        fact("By", say(thing.author)),
        fact("Made", *_each(thing.made, lambda made: made_text(made, wording))),
        fact("Place", say(thing.place)),
        fact("Size", size_text(thing.size, wording)),
        fact("Extent", say(thing.leaves)),
        fact("Of the set", came_text(thing.came)),
        fact("Marks", *_each(thing.marks, say)),
        fact("Housing", say(thing.housing)),
        fact("About", say(thing.about)),
        fact("Owner", _named(owner.name, known(owner.contact)) if owner else say(thing.owner)),
        fact("Held by", _holder(thing)),
        *_landmarks(case, wording),
        _people(case),
    ]
    return _kept(facts)


def part_facts(case: Case, wording: Wording) -> tuple[Fact, ...]:
    """What is known of each part: its sizes, materials and number."""
    return _kept(list(parts(case.parts, wording)))


def _each(many: Many[T], text: Callable[[T], str]) -> tuple[str, ...]:
    """The texts of a list, or how it is not known."""
    return (say(many),) if isinstance(many, Gap) else tuple(text(one) for one in many)


def _named(*values: object) -> str:
    return ", ".join(text for text in map(say, values) if text)


def _holder(thing: Object) -> str:
    holder = known(thing.held_by)
    return _named(holder.name, holder.shelfmark) if holder else say(thing.held_by)


def came_text(came: Came | Gap | None) -> str:
    """Of a set, how much came: "3 of 5 came; the others stayed on the shelf"."""
    if came is None or isinstance(came, Gap):
        return say(came)
    done, of = say(came.done), say(came.of)
    counted = f"{done} of {of}" if of else done
    rest = measured(came.rest, "; the others: {}", "; where the others are is {}")
    return f"{counted} came{rest}" if counted else rest.removeprefix("; ")


def _landmarks(case: Case, wording: Wording) -> list[Fact | None]:
    dates = known(case.dates)
    if dates is None:
        return []
    named = (
        ("Received", dates.received),
        ("Examined", dates.examined),
        ("Returned", dates.returned),
    )
    return [fact(label, wording.say(date)) for label, date in named]


def _people(case: Case) -> Fact | None:
    texts = []
    for initials, person in case.people.items():
        details = [say(one) for one in (person.name, person.role, person.of) if say(one)]
        texts.append(f"{initials}: {', '.join(details)}" if details else initials)
    return fact("People", *texts)


_MEASURES = {
    "width": "{} wide",
    "rise": "rising {}",
    "height": "{} high",
    "thickness": "{} thick",
    "length": "{} long",
}


def parts(tree: Mapping[str, Part], wording: Wording, above: str = "") -> Iterator[Fact]:
    """Each part with what is known of it, then its own parts, named as parts of it."""
    for name, part in tree.items():
        yield _part(name, part, wording, above)
        yield from parts(part.parts, wording, f"{above}{name}/")


def _part(name: str, part: Part, wording: Wording, above: str) -> Fact:
    measures = [
        wording.measured(value, form, key + " {}")
        for key, form in _MEASURES.items()
        if (value := getattr(part, key)) is not None
    ]
    kind = known(part.is_)
    lines: list[Line] = [
        (wording.term("parts", kind),) if kind and kind != name else (),
        (Run(_count(part)),),
        wording.material(part.material),
        *((Run(one),) for one in measures),
        *((Run("belonging to "), wording.place_run(one)) for one in (known(part.of),) if one),
        (Run(say(part.note)),),
    ]
    line = listed([one for one in lines if any(run.text for run in one)], ", ")
    inside = f"its parts: {listed_text(list(part.parts))}" if part.parts else "no more is recorded"
    line = line or (Run(inside),)
    anchor = f"{above}{name}".replace(" ", "-").replace("/", "-")
    title = wording.place(f"{above}{name}" if above else name).removeprefix("the ")
    anchored = (Run("", anchor=f"part-{anchor}"), *line)
    return Fact(capital_text(title), (anchored,))


def _count(part: Part) -> str:
    """How many there are: "one", "52 of them"."""
    text = say(part.count)
    return "one" if text == "1" else measured(part.count, "{} of them", "number {}")


def binding_facts(case: Case, wording: Wording) -> tuple[Fact, ...]:
    """Each binding in lines of its own."""
    return tuple(_binding(one, wording) for one in items(case.bindings))


def _binding(binding: Binding, wording: Wording) -> Fact:
    lines: list[Line] = []
    if structure := known(binding.structure):
        lines.append((wording.term("structures", structure),))
    lines.extend(_sewing(binding, wording))
    if boards := known(binding.boards):
        lines.append(_boards(boards, wording))
    if covering := items(binding.covering):
        lines.append((Run("covered in "), *wording.terms("materials", covering)))
    for text in (binding.spine, binding.decoration, binding.note):
        if known(text):
            lines.append((Run(say(text)),))
    state = (say(binding.state) or "binding").replace("-", " ")
    title = f"Binding {state}" if state != "binding" else "Binding"
    dated = f" ({wording.say(binding.date)})" if binding.date else ""
    return Fact(title + dated, tuple(sentence(line) for line in lines))


def _boards(boards: Boards, wording: Wording) -> Line:
    name = known(boards.material)
    what = (Run(" of "), wording.term("materials", name)) if name else ()
    thick = wording.measured(boards.thickness, ", {} thick", ", thickness {}")
    attached = measured(boards.attached, ", {}", ", how they are attached is {}")
    return (Run("boards"), *what, Run(thick + attached))


def _sewing(binding: Binding, wording: Wording) -> list[Line]:
    sewing = known(binding.sewing)
    if sewing is None:
        return []
    pattern = known(sewing.pattern)
    lines: list[Line] = []
    named = (wording.term("sewing", pattern),) if pattern else (Run("sewn"),)
    on = wording.terms("sewing", items(sewing.supports))
    thread = known(sewing.thread)
    using = (Run(" with "), wording.term("materials", thread)) if thread else ()
    stations = (Run(f", {sewing.stations} stations"),) if known(sewing.stations) else ()
    joined = (Run(" on "), *on) if on else ()
    lines.append((*named, *joined, *using, *stations))
    if sewing.endbands:
        lines.append((Run("endbands: "), *wording.terms("sewing", sewing.endbands)))
    return lines
