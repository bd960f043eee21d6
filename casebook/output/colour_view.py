"""The colour of repairs for a case page: each colour beside the original, and how far it is off."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from casebook.compute.colour import Basis, Matched, Tone, Tried, matches, shown
from casebook.model.archive import Archive, Case
from casebook.model.base import items, known
from casebook.model.proposal import Choice
from casebook.model.treatment import Step
from casebook.output.contexts import Line, Run
from casebook.output.wording import (
    Wording,
    capital,
    capital_text,
    listed,
    listed_text,
    say,
    sentence_text,
    text_of,
)

_BASES = {
    Basis.MEASURED: "measured",
    Basis.CORRECTED: "read from a photograph, corrected by its target",
    Basis.AS_SHOT: "read from a photograph as it is",
}
_FIXED = "\N{NO-BREAK SPACE}"
_DIFFERENCE = (
    "ΔE is the colour difference CIEDE2000 between CIELAB values for the light D65; 0 is no "
    "difference."
)
_CORRECTED = (
    "A photograph's colours are the mean of an area in linear light, brought to the known values "
    "of its grey target channel by channel. What the camera's own filters get wrong, and uneven "
    "light, stay in."
)
_AS_SHOT = (
    "Colours read from a photograph as it is hold its camera and its light: compare them within "
    "one photograph only."
)
_MIXED = "Measured and photographed colours are compared here: the difference is less sure for it."


@dataclass(frozen=True, slots=True)
class ToneView:
    """One colour: `swatch` as a screen comes nearest to it (`#rrggbb`), its words, its verdict."""

    swatch: str
    name: str
    lab: str
    basis: str
    difference: str
    """Such as "2.1"; "" for the original itself."""
    verdict: str
    """Whether that is within the lab's tolerance, in words; "" where there is none."""
    outcome: str
    """chosen, given up or ""."""
    chosen: bool


@dataclass(frozen=True, slots=True)
class MatchView:
    """`parts/case/colour.html`: one comparison, the original first."""

    title: Line
    tones: tuple[ToneView, ...]
    because: str
    notes: tuple[str, ...]


def match_views(case: Case, archive: Archive, wording: Wording) -> tuple[MatchView, ...]:
    """Every comparison of colours in a case, in the order of its steps."""
    limit = known(archive.settings.tolerance)
    most = limit.high if limit else None
    found = matches(case, archive.images.get(case.id, {}), None if most is None else float(most))
    return tuple(_view(one, "" if limit is None else str(limit), wording) for one in found)


def _view(found: Matched, tolerance: str, wording: Wording) -> MatchView:
    original = ToneView(
        **_tone(found.original, wording),
        name="The original",
        difference="",
        verdict="",
        outcome="",
        chosen=False,
    )
    return MatchView(
        title=_title(found.step, wording),
        tones=(original, *(_tried(one, tolerance, wording) for one in found.tried)),
        because=sentence_text(say(found.match.because)),
        notes=tuple(_notes(found, tolerance)),
    )


def _tone(tone: Tone, wording: Wording) -> dict[str, str]:
    return {"swatch": shown(tone.lab), "lab": _lab(tone, wording), "basis": _BASES[tone.basis]}


def _lab(tone: Tone, wording: Wording) -> str:
    """The colour in figures, to a tenth."""
    light, a, b = (wording.notation.figures(_tenth(part)) for part in tone.lab)
    between = ", " if "." in light else "; "
    return between.join((f"L{_FIXED}{light}", f"a{_FIXED}{a}", f"b{_FIXED}{b}"))


def _tenth(value: float) -> str:
    text = f"{abs(value):.1f}"
    return f"−{text}" if value < 0 and float(text) else text


def _tried(one: Tried, tolerance: str, wording: Wording) -> ToneView:
    return ToneView(
        **_tone(one.tone, wording),
        name=_name(one, wording),
        difference=wording.notation.figures(f"{one.difference:.1f}"),
        verdict=_verdict(one.within, tolerance),
        outcome=_outcome(one),
        chosen=one.chosen,
    )


def _verdict(within: bool | None, tolerance: str) -> str:
    if within is None:
        return ""
    return f"{'within' if within else 'beyond'} the lab's tolerance of {tolerance}"


def _name(one: Tried, wording: Wording) -> str:
    """What a colour is of: the repair as it lies, or a trial by its words or materials."""
    if one.trial is None:
        return "The repair"
    materials = text_of(listed([wording.material(each) for each in items(one.trial.material)]))
    return capital_text(listed_text([say(one.trial.what), materials], " with ") or "a trial")


def _outcome(one: Tried) -> str:
    if one.trial is None:
        return ""
    if one.trial.outcome is Choice.CHOSEN:
        return "chosen"
    return "given up" if one.trial.outcome in (Choice.GIVEN_UP, Choice.REJECTED) else ""


def _title(step: Step, wording: Wording) -> Line:
    """What the step did, and what it added or where: "Infill: the spine"."""
    done = known(step.do)
    what: Line = (wording.term("operations", done),) if done else ()
    inside = known(step.in_thickness_of)
    where = (step.adds,) if step.adds else items(step.treats) or items(step.onto)
    place = wording.places(where or ((inside,) if inside else ()))
    return capital((*what, Run(": "), *place) if what and place else what or place)


def _notes(found: Matched, tolerance: str) -> Iterator[str]:
    tones = (found.original, *(one.tone for one in found.tried))
    bases = {one.basis for one in tones}
    off = max((one.off for one in tones if one.off is not None), default=None)
    yield _DIFFERENCE
    if not tolerance:
        yield "The lab names no tolerance of its own, so that no verdict is given."
    if Basis.CORRECTED in bases:
        yield _CORRECTED
    if off is not None:
        yield f"After that the worst patch of a target is still ΔE {off:.1f} off its own colour."
    if Basis.AS_SHOT in bases:
        yield _AS_SHOT
    if found.mixed:
        yield _MIXED
