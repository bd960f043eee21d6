"""The object and its condition for a case page: facts, bindings, findings, tests, history."""

from __future__ import annotations

from collections.abc import Mapping

from casebook.model.archive import Case
from casebook.model.base import Gap, items, known
from casebook.model.condition import Finding, FollowUp, Found, History, Test
from casebook.model.object import Binding, Made, Object, Part, Size
from casebook.model.settings import Units
from casebook.output.contexts import Fact, FindingView, Line, Run
from casebook.output.wording import Wording, capital, listed, say, sentence
from casebook.values.dates import Date
from casebook.values.quantities import Length
from casebook.values.showing import imperial, metric

_SIZES = ("height", "width", "thickness", "length", "diameter")


def fact(label: str, *texts: str) -> Fact | None:
    """A fact of plain texts; None where all are empty."""
    lines = tuple((Run(text),) for text in texts if text)
    return Fact(label, lines) if lines else None


def _kept(facts: list[Fact | None]) -> tuple[Fact, ...]:
    return tuple(one for one in facts if one)


def length_text(length: Length | Gap | None, units: Units | None) -> str:
    """A length as written, and in the lab's measure where that is another."""
    if length is None or isinstance(length, Gap):
        return say(length)
    written = str(length)
    inches = any(mark in written for mark in ("in", "ft", '"', "″", "′", "yd"))
    if units is Units.METRIC and inches:
        return f"{written} ({metric(length)})"
    if units is Units.IMPERIAL and not inches:
        return f"{written} ({imperial(length)})"
    if units is Units.BOTH:
        return f"{written} ({metric(length) if inches else imperial(length)})"
    return written


def size_text(size: Size | Gap | None, units: Units | None) -> str:
    """Measures in one line: "height 16 1/4 in, width 268 mm"."""
    if size is None or isinstance(size, Gap):
        return say(size)
    named = ((name, getattr(size, name)) for name in _SIZES)
    return ", ".join(f"{name} {length_text(one, units)}" for name, one in named if one)


def date_text(date: Date | Gap | None) -> str:
    """A date for readers, or how it is not known."""
    return date.show() if isinstance(date, Date) else say(date)


def made_text(made: Made) -> str:
    """A date of making, and who says so."""
    says = f" (according to {made.says})" if known(made.says) else ""
    because = f": {made.because}" if known(made.because) else ""
    return f"{date_text(made.is_)}{says}{because}"


def object_facts(case: Case, wording: Wording, units: Units | None) -> tuple[Fact, ...]:
    """What the object is, fact by fact."""
    thing = known(case.object) or Object()
    kind = known(thing.kind)
    holder = known(thing.held_by)
    owner = known(thing.owner)
    facts = [
        Fact("Kind", ((wording.term("kinds", kind),),)) if kind else None,
        fact("By", say(thing.author)),
        fact("Made", *(made_text(one) for one in items(thing.made))),
        fact("Place", say(thing.place)),
        fact("Size", size_text(thing.size, units)),
        fact("Extent", say(thing.leaves)),
        fact("Marks", *items(thing.marks)),
        fact("Housing", say(thing.housing)),
        fact("About", say(thing.about)),
        fact("Owner", say(owner.name) if owner else ""),
        fact("Held by", ", ".join(t for t in (say(holder.name), say(holder.shelfmark)) if t))
        if holder
        else None,
        *_landmarks(case),
        _people(case),
        *(_part(name, part, wording, units) for name, part in case.parts.items()),
    ]
    return _kept(facts)


def _landmarks(case: Case) -> list[Fact | None]:
    dates = known(case.dates)
    if dates is None:
        return []
    named = (
        ("Received", dates.received),
        ("Examined", dates.examined),
        ("Returned", dates.returned),
    )
    return [fact(label, date_text(date)) for label, date in named]


def _people(case: Case) -> Fact | None:
    texts = []
    for initials, person in case.people.items():
        details = [say(one) for one in (person.name, person.role, person.of) if say(one)]
        texts.append(f"{initials}: {', '.join(details)}" if details else initials)
    return fact("People", *texts)


def _part(name: str, part: Part, wording: Wording, units: Units | None) -> Fact | None:
    measures = ("count", "width", "rise", "height", "thickness", "length")
    texts = [
        f"{one} {length_text(value, units) if isinstance(value, Length) else say(value)}"
        for one in measures
        if (value := getattr(part, one)) is not None
    ]
    material = wording.material(part.material)
    details = [*((Run(text),) for text in texts), *([material] if material else [])]
    note = [(Run(say(part.note)),)] if part.note else []
    inner = [(Run(f"with {wording.place(one)}"),) for one in part.parts]
    line = listed([*details, *note, *inner], ", ")
    anchored = (Run("", anchor=f"part-{name.replace(' ', '-')}"), *line)
    title = wording.place(name).removeprefix("the ")
    return Fact(title[:1].upper() + title[1:], (anchored,)) if line else None


def binding_facts(case: Case, wording: Wording) -> tuple[Fact, ...]:
    """Each binding in lines of its own."""
    return tuple(_binding(one, wording) for one in items(case.bindings))


def _binding(binding: Binding, wording: Wording) -> Fact:
    lines: list[Line] = []
    if structure := known(binding.structure):
        lines.append((wording.term("structures", structure),))
    lines.extend(_sewing(binding, wording))
    if boards := known(binding.boards):
        name = known(boards.material)
        what = (wording.term("materials", name),) if name else ()
        attached = (Run(f", {boards.attached}"),) if known(boards.attached) else ()
        lines.append((Run("boards of "), *what, *attached) if what else (Run("boards"), *attached))
    if covering := items(binding.covering):
        lines.append((Run("covered in "), *wording.terms("materials", covering)))
    for text in (binding.spine, binding.decoration, binding.note):
        if known(text):
            lines.append((Run(say(text)),))
    state = (say(binding.state) or "binding").replace("-", " ")
    title = f"Binding {state}" if state != "binding" else "Binding"
    dated = f" ({date_text(binding.date)})" if binding.date else ""
    return Fact(title + dated, tuple(sentence(line) for line in lines))


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


def finding_view(finding: Finding, wording: Wording, photos: Mapping[str, object]) -> FindingView:
    """A finding with what is seen kept apart from what it means."""
    sought = f"Sought: {finding.sought}; {say(finding.found)}" if known(finding.sought) else ""
    because = f" ({finding.because})" if known(finding.because) else ""
    details = [
        finding.stage.value if finding.stage else "",
        date_text(finding.date),
        f"{finding.count} in number" if known(finding.count) else "",
        say(finding.extent),
    ]
    return FindingView(
        where=capital(wording.places(finding.part)),
        damage=wording.terms("damages", finding.damage),
        seen=(say(finding.seen) or sought) + because,
        means=say(finding.means),
        details=", ".join(one for one in details if one),
        photos=tuple(one for one in items(finding.photo) if one in photos),
    )


def found_line(found: Found, wording: Wording) -> Line:
    """A layer that was there on arrival, in a sentence."""
    line: list[Run] = [Run(found.id.replace("-", " "), anchor=f"layer-{found.id}")]
    if material := wording.material(found.material):
        line.extend((Run(": "), *material))
    for word, places in (("on", found.onto), ("over", found.over), ("joining", found.joins)):
        if places:
            line.extend((Run(f", {word} "), *wording.places(places)))
    if found.adhesive is not None:
        line.extend((Run(", stuck with "), *wording.adhesive(found.adhesive)))
    details = [*items(found.held), say(found.origin)]
    details.append(say(found.note))
    line.extend(Run(f", {one}") for one in details if one)
    return sentence(line)


def test_line(test: Test, wording: Wording) -> Line:
    """A test in a sentence: what on what, how, and what came of it."""
    agents = [wording.material(one) for one in items(test.agent)]
    line = [*listed(agents)] if agents else [Run(say(test.method) or "test")]
    if test.part:
        line.extend((Run(" on "), *wording.places(test.part)))
    if known(test.of):
        line.append(Run(f", {test.of}"))
    method = known(test.method)
    if agents and method:
        line.append(Run(f" ({method})"))
    outcome = say(test.result) or (f"pH {test.ph}" if test.ph else "")
    line.append(Run(f": {outcome or 'result not recorded'}"))
    more = (say(test.stand_in), say(test.means), date_text(test.date))
    line.extend(Run(f"; {one}") for one in more if one)
    return sentence(line)


def history_line(history: History) -> Line:
    """An earlier treatment in a sentence."""
    hands = ", ".join(items(history.hands))
    state = f"; now {history.state}" if known(history.state) else ""
    because = f": {history.because}" if known(history.because) else ""
    by = f" by {hands}" if hands else ""
    when = date_text(history.date)
    return sentence(
        (Run(f"{when}: " if when else ""), Run(f"{say(history.what)}{by}{state}{because}"))
    )


def follow_line(follow: FollowUp, wording: Wording) -> Line:
    """A later look at the object in a sentence."""
    where = wording.places(follow.layer) if follow.layer else (Run("the whole"),)
    when = date_text(follow.date)
    line: list[Run] = [Run(f"{when}: " if when else ""), *where, Run(f": {say(follow.state)}")]
    line.extend(Run(f"; {text}") for text in (follow.seen, follow.because) if known(text))
    if follow.next:
        line.append(Run(f"; to be looked at again {date_text(follow.next)}"))
    return sentence(line)
