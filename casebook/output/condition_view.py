"""Condition and evidence for a case page: findings, layers found, tests, history, later looks."""

from __future__ import annotations

from casebook.model.archive import Case
from casebook.model.base import Gap, Unknowing, items, known
from casebook.model.condition import (
    Examination,
    Finding,
    FollowUp,
    Found,
    Hazard,
    History,
    LeftAlone,
    Test,
)
from casebook.output.absence import absent
from casebook.output.case_contexts import FindingView
from casebook.output.clauses import bond_line, cuts_line, measures_text, often, walls_text
from casebook.output.contexts import Fact, Line, Run
from casebook.output.marks_view import Views, anchor_of
from casebook.output.wording import (
    Wording,
    capital,
    how_known,
    listed,
    listed_text,
    measured,
    say,
    sentence,
    text_of,
)
from casebook.values.dates import Date


def finding_view(finding: Finding, wording: Wording, views: Views) -> FindingView:
    """A finding with what is seen kept apart from what it means."""
    marks = views.of(finding)
    because = f" ({finding.because})" if known(finding.because) else ""
    details = [
        f"seen {finding.stage.value} treatment" if finding.stage else "",
        wording.say(finding.date),
        _count(finding),
        measured(finding.extent, "{}", "extent {}"),
    ]
    return FindingView(
        where=capital(wording.places(finding.part)),
        damage=wording.terms("damages", finding.damage),
        seen=" ".join(one for one in (say(finding.seen), _sought(finding)) if one) + because,
        means=say(finding.means),
        details=", ".join(one for one in details if one),
        photos=tuple(one for one in items(finding.photo) if one in views.pictures),
        marks=marks,
        anchor=anchor_of(marks),
    )


def _count(finding: Finding) -> str:
    text = say(finding.count)
    return "one" if text == "1" else measured(finding.count, "{} in number", "number {}")


def _sought(finding: Finding) -> str:
    """What was looked for, and the outcome: "Looked for a watermark: not seen"."""
    if not known(finding.sought):
        return measured(finding.found, "Found: {}", "The outcome is {}")
    outcome = say(finding.found) or "the outcome is not recorded"
    return f"Looked for: {finding.sought}; {outcome}"


def found_lines(case: Case, wording: Wording) -> tuple[Line, ...]:
    """The layers that were there on arrival."""
    told = (found_line(one, wording) for one in items(case.as_found))
    return (*absent(case, "as_found"), *told)


def found_line(found: Found, wording: Wording) -> Line:
    """A layer that was there on arrival, in a sentence."""
    line: list[Run] = [Run(found.id.replace("-", " "), anchor=f"layer-{found.id}")]
    if material := wording.material(found.material):
        line.extend((Run(": "), *material))
    for clause in _found_clauses(found, wording):
        if text_of(clause):
            line.extend((Run(", "), *clause))
    if found.origin is not None:
        line.append(Run(f"; {_ORIGINS.get(str(found.origin), f'origin {say(found.origin)}')}"))
    note = (Run(" "), *sentence((Run(say(found.note)),))) if known(found.note) else ()
    return (*sentence(line), *note)


_ORIGINS = {"original": "original", "later": "a later addition", "unknown": "of unknown origin"}


def _found_clauses(found: Found, wording: Wording) -> list[Line]:
    """Where a found layer lies, how it is held, how big it is."""
    zones = [
        (Run(f"{wording.measured(width, '{} ', '')}over {wording.place(one)}"),)
        for one, width in found.spans.items()
    ]
    places = (
        ("on ", found.onto),
        ("over ", found.over),
        ("joining ", found.joins),
        ("soaked into ", found.soaks_in),
        ("hiding ", found.hides),
    )
    return [
        *((Run(word), *wording.places(where)) for word, where in places if where),
        listed(zones),
        _stuck(found, wording),
        *((Run(one),) for one in items(found.held)),
        cuts_line(found.cuts, found.held, wording),
        *(bond_line(one, wording) for one in items(found.bonds)),
        (Run(walls_text(known(found.walls))),),
        (Run(measured(found.weight, "{}", "weight {}")),),
        (Run(measures_text(found, wording)),),
    ]


def _stuck(found: Found, wording: Wording) -> Line:
    if isinstance(found.adhesive, Gap) and found.adhesive.kind is Unknowing.NONE:
        return (Run("without adhesive"),)
    return (Run("stuck with "), *wording.adhesive(found.adhesive)) if found.adhesive else ()


def test_lines(case: Case, wording: Wording) -> tuple[Line, ...]:
    """The tests."""
    return (*absent(case, "tests"), *(test_line(one, wording) for one in items(case.tests)))


def test_line(test: Test, wording: Wording) -> Line:
    """A test in a sentence: what on what, how, and what came of it."""
    agents = [wording.material(one) for one in items(test.agent)]
    method = known(test.method)
    line = [*listed(agents, ", and separately ")] if agents else [Run(method or "a test")]
    stand_in = f"{say(test.stand_in)}, standing in for " if known(test.stand_in) else ""
    if test.part:
        line.extend((Run(f" on {stand_in}"), *wording.places(test.part)))
    elif stand_in:
        line.append(Run(f" on {say(test.stand_in)}, a stand-in"))
    if known(test.of):
        line.append(Run(f", {test.of}"))
    how = [method or "" if agents else "", often(test.times)]
    if any(how):
        line.append(Run(f" ({', '.join(one for one in how if one)})"))
    line.append(Run(f": {_outcome(test)}"))
    line.extend(Run(f"; {one}") for one in _circumstances(test, wording) if one)
    return sentence(line)


def _outcome(test: Test) -> str:
    ph = f"pH {say(test.ph).removeprefix('pH ')}" if test.ph else ""
    result = f"the result {how_known(test.result)}" if isinstance(test.result, Gap) else test.result
    return ", ".join(one for one in (result, ph) if one) or "the result is not recorded"


def _circumstances(test: Test, wording: Wording) -> list[str]:
    """What is taken to follow from it; the sample, the laboratory, who and when."""
    by = listed_text([say(one) for one in items(test.by)])
    when = wording.say(test.date)
    return [
        f"taken to mean: {test.means}" if known(test.means) else "",
        f"sample: {say(test.sample)}" if test.sample else "",
        f"made at {test.laboratory}" if known(test.laboratory) else "",
        ", ".join(one for one in (f"by {by}" if by else "", when) if one),
    ]


def history_lines(case: Case, wording: Wording) -> tuple[Line, ...]:
    """The earlier treatments."""
    told = (history_line(one, wording) for one in items(case.history))
    return (*absent(case, "history"), *told)


def history_line(history: History, wording: Wording) -> Line:
    """An earlier treatment in a sentence, with the case that tells of it."""
    hands = history.hands
    by = ", ".join(items(hands))
    if isinstance(hands, Gap) and hands.kind is Unknowing.UNKNOWN:
        by = "an unknown hand"
    when = wording.measured(history.date, "{}", "date {}")
    what = say(history.what) or "a treatment"
    state = f"; now {history.state}" if known(history.state) else ""
    because = f": {history.because}" if known(history.because) else ""
    case = known(history.case)
    told = (Run("; it is told in "), wording.case(case)) if case else ()
    head = f"{when}: " if when else ""
    return sentence((Run(head), Run(f"{what}{f' by {by}' if by else ''}{state}{because}"), *told))


def follow_lines(case: Case, wording: Wording) -> tuple[Line, ...]:
    """The later looks at the object."""
    told = (
        (Run("", anchor=f"follow-up-{n}"), *follow_line(one, wording))
        for n, one in enumerate(items(case.follow_up), start=1)
    )
    return (*absent(case, "follow_up"), *told)


def follow_line(follow: FollowUp, wording: Wording) -> Line:
    """A later look at the object in a sentence."""
    where = wording.places(follow.layer) if follow.layer else (Run("the whole"),)
    when = wording.say(follow.date)
    line: list[Run] = [Run(f"{when}: " if when else ""), *where, Run(f": {say(follow.state)}")]
    line.extend(Run(f"; {text}") for text in (follow.seen, follow.because) if known(text))
    if by := listed_text([say(one) for one in items(follow.by)]):
        line.append(Run(f"; seen by {by}"))
    if follow.next:
        line.append(Run(f"; to be looked at again {wording.say(follow.next)}"))
    return sentence(line)


def hazard_facts(case: Case, wording: Wording) -> tuple[Fact, ...]:
    """Each danger with where it is and the caution that goes with it."""
    return tuple(_hazard(one, wording) for one in items(case.hazards))


def _hazard(hazard: Hazard, wording: Wording) -> Fact:
    where = (*wording.places(hazard.part), Run(": ")) if hazard.part else ()
    caution = say(hazard.caution) or "no caution is recorded; see the safety data sheet"
    return Fact(say(hazard.what) or "Hazard", (sentence((*where, Run(caution))),))


def examination_lines(case: Case, wording: Wording) -> tuple[Line, ...]:
    """Why, how, by whom and when it was examined; and where nothing was seen, or no danger."""
    seen = known(case.examination) or Examination()
    by = listed_text([say(one) for one in items(seen.by)])
    texts = [
        f"Examined because: {say(seen.because)}" if seen.because else "",
        f"Looked at by {how}" if (how := listed_text([say(o) for o in items(seen.method)])) else "",
        f"Examined{f' by {by}' if by else ''}{_on(seen.date, wording)}" if by or seen.date else "",
    ]
    lines = tuple(sentence((Run(text),)) for text in texts if text)
    return (*lines, *absent(case, "findings"), *absent(case, "hazards"))


def _on(date: Date | Gap | None, wording: Wording) -> str:
    """A day behind what was done on it."""
    return wording.measured(date, ", {}", ", date {}")


def left_alone_lines(case: Case, wording: Wording) -> tuple[Line, ...]:
    """What was left as it is on purpose, and why."""
    told = (_left_alone(one, wording) for one in items(case.left_alone))
    return (*absent(case, "left_alone"), *told)


def _left_alone(one: LeftAlone, wording: Wording) -> Line:
    what = f", {one.what}" if known(one.what) else ""
    because = f": {one.because}" if known(one.because) else ""
    return sentence((*wording.places(one.part), Run(f"{what}{because}")))
