"""A case in a list: what it is, what was done, and its pictures in the shape that shows them."""

from __future__ import annotations

from casebook.model.archive import Archive, Case
from casebook.output.case_page import about_line, status_of, title_of
from casebook.output.contexts import Card, Pair
from casebook.output.pictures import Pictures, case_pictures, pair_of
from casebook.output.treatment_view import work_line
from casebook.output.wording import Wording

_FRAME = (3, 2)
"""Width to height of the place of one picture, as the style sheet has it."""

_LOSS = 0.15
"""Where more than this share of a picture would be cropped away, it stands whole on a mount."""

_WIDE = 3.0
"""From this width to height on, pictures stand one above the other: side by side they are slits."""


def card(case: Case, archive: Archive, pictures: Pictures, wording: Wording) -> Card:
    """The case in a list."""
    views = case_pictures(case, archive, pictures, wording.root)
    pair = pair_of(case, views)
    return Card(
        href=f"{wording.root}cases/{case.id}/index.html",
        title=title_of(case),
        about=about_line(case, wording),
        work=work_line(case, wording),
        status=status_of(case),
        before=pair.before,
        after=pair.after,
        shape=shape_of(pair),
    )


def shape_of(pair: Pair) -> str:
    """How the pictures of a card stand: "" cropped a little, "whole", or "wide"; alike for both."""
    ratios = [one.width / one.height for one in (pair.before, pair.after) if one]
    if ratios and min(ratios) >= _WIDE:
        return "wide"
    alone = len(ratios) == 1
    return "whole" if alone or any(_cropped(one) > _LOSS for one in ratios) else ""


def _cropped(ratio: float) -> float:
    """The share of a picture that would be cropped away to fill its place."""
    frame = _FRAME[0] / _FRAME[1]
    return 1 - min(ratio, frame) / max(ratio, frame)
