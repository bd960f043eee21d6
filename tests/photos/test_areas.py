"""The colour of an area is the mean of its light, upright, in sRGB, and nothing else is told."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest
from PIL import ExifTags, Image, ImageCms

from casebook.files import Cache, digest
from casebook.photos.areas import areas_of, linear
from casebook.values.points import Box

REFERENCE = Path(__file__).parents[1] / "reference" / "colour_constants.csv"
CONSTANTS = {
    row["name"]: row["value"] for row in csv.DictReader(REFERENCE.read_text("utf-8").splitlines())
}


def mean(path: Path, box: str, cache: Cache | None = None):
    name = digest(path.read_bytes())
    return areas_of(path, name, [Box.parse(box)], cache).get(Box.parse(box).canonical())


def halves(size: tuple[int, int] = (40, 20)) -> Image.Image:
    """Left black, right white."""
    image = Image.new("RGB", size, "black")
    image.paste("white", (size[0] // 2, 0, *size))
    return image


def test_a_level_is_brought_to_linear_light_with_the_published_constants() -> None:
    threshold, divisor, offset, exponent = (
        float(CONSTANTS[f"sRGB {name}"])
        for name in ("linear threshold (encoded)", "linear slope divisor", "offset", "exponent")
    )
    for level in range(256):
        encoded = level / 255
        straight = encoded <= threshold
        meant = encoded / divisor if straight else ((encoded + offset) / (1 + offset)) ** exponent
        assert linear(level) == pytest.approx(meant, rel=1e-12)
    assert (linear(0), linear(255)) == (0, 1)


@pytest.mark.parametrize(
    ("box", "meant"),
    [
        ("0 0 40 20", 0.5),
        ("0 0 20 20", 0.0),
        ("20 0 20 20", 1.0),
        ("50% 0% 50% 100%", 1.0),
        ("15 5 10 10", 0.5),
        ("19.6 0 5 5", 1.0),
    ],
)
def test_the_mean_is_that_of_light_and_not_of_levels(
    tmp_path: Path, box: str, meant: float
) -> None:
    halves().save(tmp_path / "a.png")
    assert mean(tmp_path / "a.png", box) == pytest.approx((meant, meant, meant))


def test_what_is_not_wholly_in_the_picture_is_left_out(tmp_path: Path) -> None:
    halves().save(tmp_path / "a.png")
    assert mean(tmp_path / "a.png", "30 0 11 5") is None
    assert mean(tmp_path / "a.png", "3.6 3 0.7 5") is None


def test_places_are_those_of_the_upright_picture(tmp_path: Path) -> None:
    tags = Image.Exif()
    tags[ExifTags.Base.Orientation] = 6  # shown turned a quarter to the right: white below
    halves().save(tmp_path / "a.png", exif=tags)
    assert mean(tmp_path / "a.png", "0 0 20 20") == (0, 0, 0)
    assert mean(tmp_path / "a.png", "0 20 20 20") == (1, 1, 1)


def test_colours_are_those_of_srgb_whatever_the_profile(tmp_path: Path) -> None:
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    Image.new("RGB", (8, 8), (139, 90, 43)).save(tmp_path / "a.png", icc_profile=profile)
    meant = tuple(linear(level) for level in (139, 90, 43))
    assert mean(tmp_path / "a.png", "0 0 8 8") == pytest.approx(meant, abs=0.003)


def test_an_area_measured_before_is_not_measured_again(tmp_path: Path) -> None:
    halves().save(tmp_path / "a.png")
    name = digest((tmp_path / "a.png").read_bytes())
    cache = Cache(tmp_path / "cache", "salt")
    box = Box.parse("15 5 10 10")
    first = areas_of(tmp_path / "a.png", name, [box], cache)
    assert areas_of(tmp_path / "gone.png", name, [box], cache) == first
    assert areas_of(tmp_path / "gone.png", name, [], cache) == {}
