"""Rules about photographs: before and after, while things can still be seen, and dated."""

from __future__ import annotations

from collections.abc import Iterator

from casebook.model.base import items, known
from casebook.model.condition import Stage
from casebook.model.photos import Photo
from casebook.rules.declare import AIC_25B, AIC_27B, ECCO_10, MUST, Raised, rule
from casebook.rules.look import Due, Look
from casebook.vocabulary import fold

_BEFORE = "dated before-treatment image"
_DURING = "dated during-treatment images of what will be obscured"
_AFTER = "dated after-treatment image"


def _at(look: Look, stage: Stage) -> list[Photo]:
    return [photo for photo in items(look.case.photos) if photo.stage is stage]


def _unanswered(look: Look) -> bool:
    """Whether the record owes photographs: it does not say, with a reason, why there are none."""
    given = isinstance(look.case.photos, tuple) and not look.waived("photos")
    return given or not look.tells(look.case, "photos", in_reach=True)


@rule(
    why="Two photos of one view are the shortest honest account of what a treatment changed.",
    source=f"{AIC_25B}; {AIC_27B}; that both show the same view: common practice, no source",
    fields=("Case.photos", "Photo.stage", "Photo.view"),
    weight=MUST,
    raises="photos: [{file: a.jpg, stage: before, view: spine, date: 2025-01-28}]",
    passes="photos: [{file: a.jpg, stage: before, view: spine}, "
    "{file: b.jpg, stage: after, view: spine}]",
    rows=(_BEFORE, _AFTER, "written and pictorial record of examination and intervention"),
    gap="There are no photographs of one view both before and after treatment.",
)
def before_and_after(look: Look) -> Iterator[Raised]:
    """A finished case has a before and an after photo of the same view; a draft, one before."""
    before, after = _at(look, Stage.BEFORE), _at(look, Stage.AFTER)
    if not _unanswered(look):
        return
    place = look.place("photos")
    if not before:
        message = "no photo shows the object before treatment"
        yield Raised(message, place, _hint(after, "before"))
    if look.stage is not Due.FINISHED:
        return
    if not after:
        message = "no photo shows the object after treatment"
        yield Raised(message, place, _hint(before, "after"))
    if before and after and not _views(before) & _views(after):
        message = "no view was photographed both before and after treatment"
        yield Raised(message, place, _hint(before, "after"))


def _hint(others: list[Photo], stage: str) -> str:
    """A photo to add: of a view that is there already, if there is one."""
    view = next((known(one.view) for one in others if known(one.view)), "spine")
    return f"add one to `photos`: `{{file: …, stage: {stage}, view: {view}, date: …}}`"


def _views(photos: list[Photo]) -> set[str]:
    return {fold(view) for one in photos if (view := known(one.view))}


@rule(
    why="What a lining covers, or what was taken away, nobody will see again.",
    source=f"{AIC_27B}; {ECCO_10}",
    fields=("Case.photos", "Photo.stage", "Step.adds", "Step.removes", "Step.photo"),
    weight=MUST,
    raises="photos: [{file: a.jpg, stage: before, view: spine, date: 2025-01-28}]",
    passes="photos: [{file: a.jpg, stage: during, view: spine, date: 2025-03-14}]",
    due=Due.TREATED,
    rows=(_DURING,),
    gap="There is no photograph of what the treatment covered or removed.",
)
def during_photo(look: Look) -> Iterator[Raised]:
    """A case with steps that cover or remove something has a photo taken during treatment."""
    steps = [step for step in look.steps if step.adds or items(step.removes)]
    shown = _at(look, Stage.DURING) or any(items(step.photo) for step in look.steps)
    if steps and not shown and _unanswered(look):
        message = "no photo was taken during treatment of what was then covered or removed"
        hint = "add one to `photos`: `{file: …, stage: during, view: spine, date: …}`"
        yield Raised(message, look.place("photos"), hint)


@rule(
    why="A photo without its date cannot prove what was there before and what after.",
    source=f"{AIC_25B}; {AIC_27B}",
    fields=("Case.photos", "Photo.date"),
    weight=MUST,
    raises="photos: [{file: a.jpg, stage: before, view: spine}]",
    passes="photos: [{file: a.jpg, stage: before, view: spine, date: 2025-01}]",
    rows=(_BEFORE, _DURING, _AFTER),
    gap="Not every photograph is dated.",
)
def date_of_photo(look: Look) -> Iterator[Raised]:
    """Every photo has a date."""
    for photo in items(look.case.photos):
        if not look.tells(photo, "date"):
            name = f"`{photo.file or photo.id}`" if photo.file or photo.id else "this one"
            hint = "add `date: 2025-01-28`, or `date: unknown`"
            yield Raised(f"the photo {name} has no date", photo.span(), hint)


PRACTICE = (before_and_after, during_photo, date_of_photo)
