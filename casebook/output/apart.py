"""How to take the work apart again: a page by itself, for printing and for the box."""

from __future__ import annotations

from dataclasses import dataclass

from casebook.model.archive import Case
from casebook.model.settings import DEFAULT_NAME, Settings
from casebook.output.case_page import kicker_of, title_of
from casebook.output.contexts import Link, Pair, PictureView
from casebook.output.structure_view import StructureView
from casebook.output.wording import Wording, say


@dataclass(frozen=True, slots=True)
class ApartPage:
    """`pages/apart.html`: what lies there, and how each thing comes off again."""

    title: str
    kicker: str
    """Kind and date of the object in one line."""
    number: str
    """The case's id."""
    case: Link
    lab: tuple[str, ...]
    """The lab's name, and how to reach it where that is known."""
    picture: PictureView | None
    """The object after treatment, where there is a picture of it."""
    structure: StructureView


def apart_page(
    case: Case,
    lab: Settings,
    told: StructureView,
    wording: Wording,
    pair: Pair,
) -> ApartPage:
    """The context of the page."""
    reach = (say(lab.name) or DEFAULT_NAME, say(lab.address), say(lab.contact))
    return ApartPage(
        title=title_of(case),
        kicker=kicker_of(case, wording),
        number=case.id,
        case=Link("The whole case", "../index.html"),
        lab=tuple(one for one in reach if one),
        picture=pair.after or pair.before,
        structure=told,
    )
