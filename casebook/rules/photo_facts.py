"""Rules about what a photograph shows and says: scale, target, light, and what it stands for."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from casebook.diagnostics import Severity
from casebook.model.base import Maybe, items, known, schema
from casebook.model.marks import Scale, Target, in_frame
from casebook.model.photos import Photo
from casebook.rules.declare import ADVICE, MUST, NO_SOURCE, PMG, SHOULD, Raised, rule
from casebook.rules.look import Due, Look
from casebook.vocabulary import words_in

_LIGHTS = {
    "raking": re.compile(r"\brak(?:ing|ed)\b", re.I),
    "ultraviolet": re.compile(r"\bUV\b|\bultra-?violet\b", re.I),
    "transmitted": re.compile(r"\btransmitted\b|\bthrough light\b", re.I),
    "infrared": re.compile(r"\binfra-?red\b", re.I),
}
"""Lights other than plain, by the words that tell of them."""

_FROM = re.compile(
    r"\bfrom\b|\bleft\b|\bright\b|\btop\b|\bhead\b|\btail\b|\babove\b|\bbelow\b|\bfore-edge\b|\bside\b"
    r"|\bspine\b|°|degrees|o'clock",
    re.I,
)
_ON_IMAGES = (
    "images show object identification, measurement scale, colour and grey scales, "
    "light angle and direction"
)
SHOWN = 3
"""Photos at most that one message names."""

_ASKED = {
    "scale": "whether a scale is in frame",
    "target": "whether a colour or grey target is",
    "light": "in what light",
}
_AS_IT_IS = "add `scale: yes, target: yes, light: raking from the left`, as it is"


def _name(photo: Photo) -> str:
    return f"`{photo.file or photo.id}`" if photo.file or photo.id else "this one"


def _here(look: Look) -> list[Photo]:
    """The photos of the case but those that lie elsewhere, on film or in print, with no file."""
    every = items(look.case.photos)
    return [one for one in every if one.file or not (known(one.held) or known(one.medium))]


def _listed(photos: list[Photo], one: str, several: str) -> str:
    """Photos as the subject of a sentence: by name up to three, the rest by number."""
    names = [_name(photo) for photo in photos]
    if len(names) == 1:
        return f"the photo {names[0]} {one}"
    rest = [f"{len(names) - SHOWN} more"] if len(names) > SHOWN else []
    *most, last = names[:SHOWN] + rest
    return f"the photos {', '.join(most)} and {last} {several}"


def _lacks(noted: Maybe[Scale | Target]) -> bool:
    """Whether a photo says that a scale or a target is not in frame."""
    return isinstance(noted, (Scale, Target)) and in_frame(noted) is False


def _unsaid(look: Look, asked: Mapping[str, str], hint: str) -> Iterator[Raised]:
    """What photos do not say of what is `asked`, by field; those that lack the same together."""
    unsaid: dict[str, list[Photo]] = {}
    for photo in _here(look):
        texts = [text for name, text in asked.items() if not look.tells(photo, name)]
        unsaid.setdefault(", nor ".join(texts), []).append(photo)
    for texts_said, photos in unsaid.items():
        if texts_said:
            message = f"{_listed(photos, 'does not say', 'do not say')} {texts_said}"
            yield Raised(message, photos[0].span(), hint)


@rule(
    why="Without stage and view a photo is in no pair of before and after, and is soon a riddle.",
    source=NO_SOURCE,
    fields=("Case.photos", "Photo.stage", "Photo.view"),
    weight=ADVICE,
    raises="photos: [{file: a.jpg, stage: before, date: 2025-01}]",
    passes="photos: [{file: a.jpg, stage: before, view: spine, date: 2025-01}]",
)
def stage_and_view(look: Look) -> Iterator[Raised]:
    """Every photo says at what stage it was taken, and what is in front of the lens.

    Photos that lack the same are told together. Of photos that lie elsewhere nothing is asked.
    """
    asked = {"stage": "at what stage it was taken", "view": "what view it shows"}
    yield from _unsaid(look, asked, "add `stage: before, view: spine`, as it is")


@rule(
    why="Without scale and target a photo shows neither how big a thing was nor what colour.",
    source=PMG,
    fields=("Case.photos", "Photo.scale", "Photo.target", "Photo.light"),
    weight=MUST,
    raises="photos: [{file: a.jpg, stage: before, view: spine, date: 2025-01}]",
    passes="photos: [{file: a.jpg, stage: before, view: spine, date: 2025-01, scale: yes, "
    "target: yes, light: 'normal, two lamps at 45 degrees'}]",
    rows=(_ON_IMAGES,),
)
def scale_target_light(look: Look) -> Iterator[Raised]:
    """Every photo says whether scale and target are in frame, and in what light it was taken.

    Photos that lack the same are told together. That a scale or target is not there is told as a
    suggestion, and of a finished case no more. Of photos that lie elsewhere nothing is asked.
    """
    yield from _unsaid(look, _ASKED, _AS_IT_IS)
    lacking: dict[str, list[Photo]] = {}
    for photo in _here(look):
        names = [name for name in ("scale", "target") if _lacks(getattr(photo, name))]
        lacking.setdefault(" and no ".join(names), []).append(photo)
    for what, photos in lacking.items():
        if what and look.stage is not Due.FINISHED:
            message = f"{_listed(photos, 'has', 'have')} no {what} in frame"
            hint = "take it again with both, as long as the object is there to be photographed"
            yield Raised(message, photos[0].span(), hint, Severity.SUGGESTION)


@rule(
    why="Raking light makes a flat sheet look like hills; a reader must know which light it was.",
    source=f"{PMG} (light angle and direction)",
    fields=("Photo.light", "Photo.view", "Photo.caption", "Photo.file", "Photo.id"),
    weight=SHOULD,
    raises="photos: [{file: verso-uv.jpg, stage: before, view: verso, light: normal}]",
    passes="photos: [{file: verso-uv.jpg, stage: before, view: verso, light: UV}]",
)
def special_light_named(look: Look) -> Iterator[Raised]:
    """A photo in raking, ultraviolet, infrared or transmitted light says so under `light`.

    For raking light, it says from which side.
    """
    for photo in items(look.case.photos):
        light = known(photo.light) or ""
        texts = (photo.file, photo.id, known(photo.view), known(photo.caption))
        told = " ".join(text.replace("_", " ") for text in texts if text)
        for name, words in _LIGHTS.items():
            if words.search(told) and not words.search(light):
                message = f"the photo {_name(photo)} speaks of {name} light, and `light` does not"
                hint = f"write `light: {name}`, with its direction" if name == "raking" else ""
                yield Raised(message, photo.span("light"), hint or f"write `light: {name}`")
        if _LIGHTS["raking"].search(light) and not _FROM.search(light):
            message = f"the raking light of {_name(photo)} is not said to come from anywhere"
            hint = "write `light: raking from the left`"
            yield Raised(message, photo.span("light"), hint, Severity.SUGGESTION)


@rule(
    why="A picture that nothing speaks of is soon a picture that nobody can explain.",
    source=NO_SOURCE,
    fields=(
        "Case.photos",
        "Photo.caption",
        "Photo.shows",
        "Finding.photo",
        "Step.photo",
        "Episode.photo",
        "Case.story",
    ),
    weight=ADVICE,
    raises="photos: [{file: a.jpg, stage: before, view: spine, date: 2025-01}]",
    passes="photos: [{file: a.jpg, stage: before, view: spine, date: 2025-01, "
    "caption: the broken joint}]",
)
def photo_spoken_of(look: Look) -> Iterator[Raised]:
    """Every photo is named by a finding, test, step or text, or says itself what it shows.

    Of photos that lie elsewhere nothing is asked.
    """
    pointed = set(_pointed_at(look))
    story = "\n".join((look.case.story, *(one.story for one in items(look.case.episodes))))
    for photo in _here(look):
        names = {photo.id, photo.file} - {""}
        own = look.tells(photo, "caption") or look.tells(photo, "shows")
        if not (own or names & pointed or any(name in story for name in names)):
            message = f"no text names the photo {_name(photo)}, and it has no caption"
            hint = (
                "add `caption: …` or `shows: […]`, or name it in the `photo` of a step or finding"
            )
            yield Raised(message, photo.span(), hint)


def _pointed_at(look: Look) -> Iterator[str]:
    for record in look.records:
        for info in schema(type(record)).values():
            if info.points == "photo":
                yield from words_in(getattr(record, info.name))


PRACTICE = (stage_and_view, scale_target_light, special_light_named, photo_spoken_of)
