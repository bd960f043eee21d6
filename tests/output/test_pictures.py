"""Pictures: none without bytes; before and after are a pair of the same view."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from casebook.files import Cache
from casebook.model.archive import Archive, Case
from casebook.model.base import items
from casebook.model.condition import Stage
from casebook.model.marks import Fit
from casebook.model.photos import Image, Photo
from casebook.model.settings import Settings
from casebook.output.contexts import PictureView
from casebook.output.pictures import (
    Pictures,
    case_pictures,
    elsewhere,
    light_words,
    pair_of,
)
from casebook.output.wording import text_of
from casebook.photos.derive import Derivative, Picture
from tests.builders import PICTURES, record


def photo(name: str, stage: Stage, view: str) -> Photo:
    return Photo(id=name, stage=stage, view=view)


CASE = Case(
    id="c-1",
    photos=(
        photo("a", Stage.BEFORE, "front"),
        photo("b", Stage.BEFORE, "spine"),
        photo("c", Stage.AFTER, "spine"),
    ),
)
ARCHIVE = Archive(Settings(), {}, (CASE,), images={"c-1": {n: Image(n, 8, 6) for n in "abc"}})


def made(name: str) -> Picture:
    jpeg = Derivative(f"{name}.jpg", 400, 300, "JPEG", 9)
    return Picture((jpeg, Derivative(f"{name}.webp", 400, 300, "WebP", 7)))


DERIVED = Pictures({name: made(name) for name in "abc"}, Cache(Path("no-cache"), "test"))


def test_a_photo_without_bytes_is_no_picture() -> None:
    assert case_pictures(CASE, ARCHIVE, PICTURES, "") == {}


def test_a_picture_has_its_sources_and_its_words() -> None:
    view = case_pictures(CASE, ARCHIVE, DERIVED, "../")["b"]
    assert view.src == "../photos/b.jpg"
    assert [one.type for one in view.sources] == ["image/webp", "image/jpeg"]
    assert view.alt == "spine, before treatment: c-1"


@pytest.mark.parametrize(
    ("light", "words"),
    [
        ("normal", "in normal light"),
        ("normal, window from the left", "in normal light (window from the left)"),
        ("raking from the left", "in raking light from the left"),
        ("Raking light from the head, lamp at 10°", "in raking light from the head (lamp at 10°)"),
        ("transmitted", "in transmitted light"),
        ("cross-polarised", "in cross-polarised light"),
        ("UV", "in ultraviolet light"),
        ("ultraviolet, 365 nm", "in ultraviolet light (365 nm)"),
        ("daylight", "in daylight"),
        ("UV fluorescence", "UV fluorescence"),
        ("a torch behind the leaf", "a torch behind the leaf"),
        ("not recorded", "not recorded"),
        ("", ""),
    ],
)
def test_a_light_is_said_as_a_reader_would_say_it(light: str, words: str) -> None:
    assert light_words(light) == words


def told(text: str, settings: Settings) -> PictureView:
    """The view of one photo, in a lab of these settings."""
    case = record(Case, f"{{id: c-1, title: A ledger, photos: [{text}]}}")
    shown = Archive(settings, {}, (case,), images={"c-1": {"a": Image("a", 8, 6)}})
    return case_pictures(case, shown, DERIVED, "")["a"]


def test_a_caption_tells_view_light_and_date_and_ends_without_a_second_stop() -> None:
    text = "{id: a, file: a.jpg, view: spine, light: raking from the left, stage: before, "
    text += "date: 2025-01-28, caption: Glue shows through.}"
    english = told(text, Settings())
    assert english.details == "Spine, in raking light from the left, 28 January 2025"
    assert english.alt == (
        "Glue shows through, before treatment, in raking light from the left: A ledger"
    )
    assert told(text, Settings(language="en-US")).details.endswith(", January 28, 2025")
    assert told("{id: a, file: a.jpg, date: unknown, light: normal}", Settings()).alt == (
        "photograph: A ledger"
    )


def test_before_and_after_show_the_same_view() -> None:
    pair = pair_of(CASE, case_pictures(CASE, ARCHIVE, DERIVED, ""))
    before, after = pair.before, pair.after
    assert before and after
    assert (before.id, after.id) == ("b", "c")


def test_photos_that_are_no_image_here_are_told_with_where_they_are_kept() -> None:
    case = record(
        Case,
        "{id: c-1, photos: [{id: p1, file: a.jpg}, {id: s1, view: spine, stage: before, medium:"
        " slide, held: a museum, light: raking, date: 1986}, {id: s2, held: unknown, date: not recorded}]}",
    )
    archive = Archive(Settings(), {}, (case,), images={"c-1": {"p1": Image("p1", 8, 6)}})
    told = [text_of(one) for one in elsewhere(case, archive)]
    assert told == [
        "Not here: spine, before treatment, in raking light, 1986, slide, kept at a museum.",
        "Not here: no view named, date not recorded, where it is kept is unknown.",
    ]


def with_fit(name: str, text: str) -> dict[str, PictureView]:
    """The views of the case in which one photo says how it lies over another."""
    fit = record(Fit, text)
    photos = tuple(replace(one, fit=fit) if one.id == name else one for one in items(CASE.photos))
    return case_pictures(replace(CASE, photos=photos), ARCHIVE, DERIVED, "")


def numbers(view: PictureView | None) -> list[float]:
    assert view is not None
    return [float(one) for one in view.fit.split()]


def test_two_photos_fitted_by_points_are_the_pair_that_is_compared() -> None:
    views = with_fit("c", "{over: a, here: [0 0, 4 0], there: [1 2, 5 2]}")
    pair = pair_of(CASE, views)
    before, after = pair.before, pair.after
    assert before and before.id == "a"
    assert numbers(after) == [1, 0, 0, 1, 1 / 8, 2 / 8]


def test_it_does_not_matter_which_of_the_two_says_so() -> None:
    views = with_fit("a", "{over: c, here: [1 2, 5 2], there: [0 0, 4 0]}")
    pair = pair_of(CASE, views)
    before, after = pair.before, pair.after
    assert before and before.id == "a"
    assert numbers(after) == [1, 0, 0, 1, 1 / 8, 2 / 8]
    assert before.fit == ""


def test_points_that_lead_nowhere_lay_nothing_over_anything() -> None:
    views = with_fit("c", "{over: a, here: [1 1, 1 1], there: [1 2, 5 2]}")
    assert all(view.fits == {} for view in views.values())
