"""Two photos of one view are laid over one another by what they show, or that is refused."""

from __future__ import annotations

import math
import random
from pathlib import Path
from typing import Any

import pytest
from PIL import ExifTags, Image, ImageDraw

from casebook.photos.align import NoFit, Proposed, propose
from casebook.values.points import Point

SIZE = (900, 700)


def scene(seed: int = 1) -> Image.Image:
    """A picture full of corners, none like another."""
    chance = random.Random(seed)
    image = Image.new("RGB", SIZE, (200, 195, 180))
    draw = ImageDraw.Draw(image)
    for _ in range(260):
        x, y = chance.randrange(SIZE[0]), chance.randrange(SIZE[1])
        wide, high = chance.randrange(6, 60), chance.randrange(6, 60)
        draw.rectangle((x, y, x + wide, y + high), fill=tuple(chance.randrange(256) for _ in "rgb"))
    return image


def moved(
    image: Image.Image, degrees: float, scale: float, shift: tuple[float, float]
) -> Image.Image:
    """The picture turned and scaled round its middle, then moved."""
    cos, sin = math.cos(math.radians(degrees)) * scale, math.sin(math.radians(degrees)) * scale
    back = 1 / (cos * cos + sin * sin)
    a, b = cos * back, sin * back
    mx, my = SIZE[0] / 2, SIZE[1] / 2
    x, y = mx + shift[0], my + shift[1]
    way = (a, b, mx - a * x - b * y, -b, a, my + b * x - a * y)
    return image.transform(SIZE, Image.Transform.AFFINE, way, Image.Resampling.BICUBIC)


def place(point: tuple[float, float], degrees: float, scale: float, shift: tuple[float, float]):
    """Where `moved` takes a point."""
    cos, sin = math.cos(math.radians(degrees)) * scale, math.sin(math.radians(degrees)) * scale
    x, y = point[0] - SIZE[0] / 2, point[1] - SIZE[1] / 2
    return (
        cos * x - sin * y + SIZE[0] / 2 + shift[0],
        sin * x + cos * y + SIZE[1] / 2 + shift[1],
    )


def proposed(folder: Path, one: Image.Image, other: Image.Image, **how: Any) -> Proposed:
    one.save(folder / "here.png", **how)
    other.save(folder / "there.png")
    return propose(folder / "here.png", folder / "there.png")


def spot(point: Point) -> tuple[float, float]:
    x, y = point.on(*SIZE)
    return float(x), float(y)


@pytest.mark.parametrize(
    ("degrees", "scale", "shift"),
    [(0, 1, (0, 0)), (3, 1, (14, -9)), (-7, 1.1, (-20, 6)), (12, 0.9, (0, 30))],
)
def test_a_turn_a_scale_and_a_shift_are_found(tmp_path: Path, degrees, scale, shift) -> None:
    found = proposed(tmp_path, scene(), moved(scene(), degrees, scale, shift))
    for here, there in zip(found.here, found.there, strict=True):
        assert math.dist(place(spot(here), degrees, scale, shift), spot(there)) < 1.5
    assert found.degrees == pytest.approx(-degrees, abs=0.3)
    assert found.scale == pytest.approx(1 / scale, rel=0.01)


def test_the_same_photos_give_the_same_points(tmp_path: Path) -> None:
    other = moved(scene(), 5, 1.05, (3, 4))
    assert proposed(tmp_path, scene(), other) == proposed(tmp_path, scene(), other)


def test_points_are_those_of_the_upright_original(tmp_path: Path) -> None:
    tags = Image.Exif()
    tags[ExifTags.Base.Orientation] = 3  # stored upside down
    stored = scene().transpose(Image.Transpose.ROTATE_180)
    found = proposed(tmp_path, stored, scene(), exif=tags)
    for here, there in zip(found.here, found.there, strict=True):
        assert math.dist(spot(here), spot(there)) < 1


def test_a_large_photo_is_told_in_its_own_pixels(tmp_path: Path) -> None:
    large = scene().resize((2700, 2100))
    found = proposed(tmp_path, large, scene())
    for here, there in zip(found.here, found.there, strict=True):
        x, y = (float(part) for part in here.on(2700, 2100))
        assert math.dist((x / 3, y / 3), spot(there)) < 1.5


@pytest.mark.parametrize(
    ("other", "reason"),
    [
        (Image.new("RGB", SIZE, "white"), "only 0 places look alike"),
        (scene(2), "fit together"),
        (moved(scene(), 30, 1, (0, 0)), "turned by 30 degrees"),
        (moved(scene(), 0, 0.6, (0, 0)), "0.60 times as large"),
    ],
)
def test_what_does_not_fit_is_refused_and_said(
    tmp_path: Path, other: Image.Image, reason: str
) -> None:
    with pytest.raises(NoFit, match=reason):
        proposed(tmp_path, scene(), other)


def test_a_small_thing_that_both_show_is_not_enough(tmp_path: Path) -> None:
    """A colour target in the same place says nothing of the object."""
    plain = Image.new("RGB", SIZE, "white")
    plain.paste(scene().crop((0, 0, 150, 120)), (700, 560))
    with pytest.raises(NoFit):
        proposed(tmp_path, plain, plain)
