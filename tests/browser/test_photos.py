"""Photos in a real browser: what was laid over by points coincides, marks lie where they belong."""

from __future__ import annotations

from collections.abc import Callable
from io import BytesIO
from pathlib import Path
from types import SimpleNamespace
from typing import TYPE_CHECKING

import pytest
from PIL import Image as Pixels
from PIL import ImageChops, ImageDraw

from casebook.files import templates_folder
from casebook.model.archive import Archive
from casebook.model.photos import Image
from casebook.output.contexts import PictureView
from casebook.output.marks_view import marked_views, views_of
from casebook.output.pictures import case_pictures, pair_of
from casebook.output.render import render
from casebook.photos.derive import Derivative, Picture
from tests.builders import PICTURES, WORDING, archive
from tests.compute.written import case

if TYPE_CHECKING:
    from playwright.sync_api import Page

Open = Callable[..., "Page"]
Spot = tuple[float, float]

BEFORE, AFTER = (1200, 800), (1000, 900)
SPOTS: tuple[Spot, Spot] = ((300.0, 200.0), (900.0, 640.0))
"""Two points of the object on the first photo; on the second they are turned, scaled, moved."""
COLOURS = ((220, 20, 20), (20, 160, 20))


def turned(spot: Spot) -> Spot:
    """Where a point of the first photo is on the second: scaled by 0.7, turned by some 9 degrees."""
    x, y = spot
    return (0.69 * x - 0.11 * y + 120, 0.11 * x + 0.69 * y + 60)


def dotted(size: tuple[int, int], spots: tuple[Spot, ...], path: Path) -> None:
    """A grey picture with a coloured dot at each spot."""
    image = Pixels.new("RGB", size, (128, 128, 128))
    draw = ImageDraw.Draw(image)
    for (x, y), colour in zip(spots, COLOURS, strict=True):
        draw.ellipse((x - 12, y - 12, x + 12, y + 12), fill=colour)
    image.save(path, "PNG")


def page_of(folder: Path, body: str, *scripts: str) -> Path:
    """A page with the site's own style sheet, its security policy and some of its scripts."""
    assets = templates_folder() / "assets"
    sheets = "".join(one.read_text("utf-8") for one in sorted((assets / "css").iterdir()))
    (folder / "style.css").write_text(sheets, "utf-8")
    for name in scripts:
        (folder / f"{name}.js").write_text(
            (assets / "js" / f"{name}.js").read_text("utf-8"), "utf-8"
        )
    loaded = "".join(f'<script src="{name}.js"></script>' for name in scripts)
    policy = '<meta http-equiv="Content-Security-Policy" content="default-src \'self\'">'
    head = f'<meta charset="utf-8">{policy}<link rel="stylesheet" href="style.css">'
    page = folder / "index.html"
    page.write_text(f"<!doctype html><title>t</title>{head}<main>{body}</main>{loaded}", "utf-8")
    return page


def made(name: str, size: tuple[int, int]) -> Picture:
    return Picture((Derivative(f"{name}.png", *size, "JPEG", 1),))


def compared(folder: Path, fit: str) -> Path:
    """A page that compares two photos as a case page does."""
    one = case(f"""
id: one
photos:
  - {{id: before, file: before.png, stage: before, view: front}}
  - {{id: after, file: after.png, stage: after, view: front, {fit}}}
""")
    images = {"before": Image("b", *BEFORE), "after": Image("a", *AFTER)}
    shown = Archive(archive(one).settings, {}, (one,), images={one.id: images})
    pictures = type(PICTURES)(
        {"b": made("before", BEFORE), "a": made("after", AFTER)}, PICTURES.cache
    )
    views = case_pictures(one, shown, pictures, "")
    pair = pair_of(one, views)
    before, after = pair.before, pair.after
    (folder / "photos").mkdir()
    dotted(BEFORE, SPOTS, folder / "photos" / "before.png")
    dotted(AFTER, tuple(turned(spot) for spot in SPOTS), folder / "photos" / "after.png")
    assert before is not None
    assert after is not None
    opening = f'<div class="pair compared" data-compare{f""" data-fit="{after.fit}" """ if after.fit else ""}>'
    figures = "".join(
        f'<figure><a href="{one.large}"><picture><img src="{one.src}" width="{one.width}" height="{one.height}" alt=""></picture></a></figure>'
        for one in (before, after)
    )
    return page_of(folder, f"{opening}{figures}</div>", "compare")


def dots(page: Page, edge: str) -> list[Spot]:
    """The middle of each coloured dot on the screen, with the edge all the way to one side."""
    page.get_by_role("slider").focus()
    page.keyboard.press(edge)
    seen = Pixels.open(BytesIO(page.locator(".pair").screenshot())).convert("RGB")
    return [middle(seen, colour) for colour in COLOURS]


def middle(seen: Pixels.Image, colour: tuple[int, int, int]) -> Spot:
    """The middle of the only patch of a colour."""
    near = [
        part.point([255 * (abs(level - one) < 40) for level in range(256)])
        for part, one in zip(seen.split(), colour, strict=True)
    ]
    box = ImageChops.darker(ImageChops.darker(near[0], near[1]), near[2]).getbbox()
    assert box is not None
    return (box[0] + box[2]) / 2, (box[1] + box[3]) / 2


def points(spots: tuple[Spot, ...]) -> str:
    return "[" + ", ".join(f"{x:.1f} {y:.1f}" for x, y in spots) + "]"


@pytest.mark.parametrize("width", [390, 1280])
@pytest.mark.parametrize("way", ["forth", "in per cent"])
def test_two_photos_fitted_by_points_coincide_to_two_pixels(
    tmp_path: Path, open_page: Open, width: int, way: str
) -> None:
    there, here = points(SPOTS), points(tuple(turned(spot) for spot in SPOTS))
    if way == "in per cent":
        there = "[" + ", ".join(f"{x / 12}% {y / 8}%" for x, y in SPOTS) + "]"
        there = there.replace("53.333333333333336", "53.3333")
    page = open_page(
        compared(tmp_path, f"fit: {{over: before, here: {here}, there: {there}}}"), width=width
    )
    first, second = dots(page, "End"), dots(page, "Home")
    for one, other in zip(first, second, strict=True):
        assert abs(one[0] - other[0]) <= 2
        assert abs(one[1] - other[1]) <= 2


def test_without_points_they_do_not_coincide(tmp_path: Path, open_page: Open) -> None:
    page = open_page(compared(tmp_path, "light: normal"))
    first, second = dots(page, "End"), dots(page, "Home")
    assert max(abs(one[0] - other[0]) for one, other in zip(first, second, strict=True)) > 20


def marked_page(folder: Path) -> Path:
    """A page with one photo on which a red dot is boxed."""
    one = case("""
id: one
findings: [{part: spine, seen: a red dot, marks: {photo: p, box: 288 188 24 24}}]
photos: [{id: p, file: p.png}]
""")
    shown = Archive(archive(one).settings, {}, (one,), images={one.id: {"p": Image("p", *BEFORE)}})
    dotted(BEFORE, SPOTS, folder / "p.png")
    view = PictureView("p", "p.png", (), *BEFORE, "a photo", "", "before", "", "p.png")
    views = marked_views(one, shown, views_of(one, shown, {"p": view}, WORDING), WORDING)
    body = render("parts/case/marks.html", page=SimpleNamespace(marks=views))
    return page_of(folder, str(body), "marks", "zoom")


@pytest.mark.parametrize("width", [390, 1280])
@pytest.mark.parametrize("scripts", [True, False])
def test_a_mark_lies_round_what_it_marks(
    tmp_path: Path, open_page: Open, width: int, scripts: bool
) -> None:
    page = open_page(marked_page(tmp_path), width=width, scripts=scripts)
    shape = page.locator("polygon.mark-line").bounding_box()
    image = page.locator(".marked img").bounding_box()
    assert shape is not None
    assert image is not None
    scale = image["width"] / BEFORE[0]
    assert abs(shape["x"] + shape["width"] / 2 - image["x"] - 300 * scale) <= 1.5
    assert abs(shape["y"] + shape["height"] / 2 - image["y"] - 200 * scale) <= 1.5


def test_marks_can_be_hidden_and_come_large_with_the_photo(tmp_path: Path, open_page: Open) -> None:
    page = open_page(marked_page(tmp_path))
    drawn = page.locator(".marked svg.marks")
    page.get_by_role("button", name="Hide the marks").click()
    assert not drawn.is_visible()
    page.get_by_role("button", name="Show the marks").click()
    assert drawn.is_visible()
    page.locator(".marked figure > a").click()
    large = page.locator(".viewer-stage svg.marks")
    assert large.is_visible()
    page.get_by_role("button", name="Marks", exact=True).click()
    assert not large.is_visible()


def test_marks_are_printed_even_where_they_were_hidden(tmp_path: Path, open_page: Open) -> None:
    page = open_page(marked_page(tmp_path))
    page.get_by_role("button", name="Hide the marks").click()
    page.emulate_media(media="print")
    assert page.locator(".marked svg.marks").is_visible()
    assert not page.get_by_role("button", name="Show the marks").is_visible()
