"""The copy stand: a grey bench, things laid on it with their shadows, scale, target and file."""

from __future__ import annotations

import random
from pathlib import Path

from PIL import Image, ImageDraw, ImageFilter, ImageFont

from tests.drawings.surfaces import Colour, Size, clouds, grain, mix, shaded, slope, tinted

GREYS = (243, 201, 161, 122, 85, 52)
PATCHES: tuple[Colour, ...] = (
    (176, 48, 60),
    (238, 198, 40),
    (74, 148, 74),
    (20, 134, 166),
    (58, 62, 150),
    (186, 88, 150),
)
DEVICE = ("Oakum Row", "Copy stand 1 (invented)")


class Scene:
    """One picture in the making. `scale` is in pixels per mm."""

    def __init__(self, size: Size, scale: float, seed: int) -> None:
        self.size, self.scale, self.seed = size, scale, seed
        floor = tinted(
            clouds(size, seed, 420, 0.35), (150, 147, 140), (181, 177, 168), (204, 200, 191)
        )
        floor = shaded(floor, grain(size, seed + 1, 1.9, 0.09))
        light = slope(size, [(0, 150), (0.45, 138), (1, 106)])
        self.image = shaded(shaded(floor, light), slope(size, [(0, 140), (1, 114)], down=True))

    def lay(
        self,
        thing: Image.Image,
        mask: Image.Image,
        at: tuple[int, int],
        *,
        height: float = 10,
        dark: float = 0.55,
    ) -> None:
        """Lay a thing down with the shadow of something `height` pixels thick."""
        if dark:
            self._shadow(mask, at, height, dark)
        self.image.paste(thing, at, mask)

    def _shadow(self, mask: Image.Image, at: tuple[int, int], height: float, dark: float) -> None:
        """A wide, soft shadow to the lower right, and a narrow one where the thing touches."""
        for reach, blur, part in ((0.9, 1.1, 0.75), (0.25, 0.28, 0.6)):
            shadow = Image.new("L", self.size)
            move = round(height * reach)
            shadow.paste(mask, (at[0] + move, at[1] + move))
            shadow = shadow.filter(ImageFilter.GaussianBlur(max(1.5, height * blur)))
            shadow = shadow.point([round(v * dark * part) for v in range(256)])
            self.image = mix(self.image, Image.new("RGB", self.size, (38, 34, 30)), shadow)

    def target(self, at: tuple[int, int], case: str, note: str, *, upright: bool = False) -> None:
        """A card with the case's number, a scale of 10 cm, six greys and six colours."""
        card = _card(self.scale, case, note)
        if upright:
            card = card.rotate(90, expand=True)
        mask = Image.new("L", card.size, 255)
        self.lay(card, mask, at, height=4, dark=0.5)

    def save(self, path: Path, date: str) -> None:
        """Finish the picture as a camera would, and write it with its date (YYYY-MM-DD)."""
        noise = Image.merge(
            "RGB", [grain(self.size, self.seed + k, 1.4, 0.028) for k in (51, 52, 53)]
        )
        image = shaded(_lens(self.image), noise.convert("L"))
        path.parent.mkdir(parents=True, exist_ok=True)
        image.save(path, quality=78, optimize=True, exif=_tags(date, self.seed))


def _lens(image: Image.Image) -> Image.Image:
    """A little darker towards the corners."""
    width, height = image.size
    across = slope(image.size, [(0, 116), (0.3, 130), (0.7, 130), (1, 116)])
    down = slope(image.size, [(0, 118), (0.3, 130), (0.7, 130), (1, 118)], down=True)
    return shaded(shaded(image, across), down).resize((width, height))


def _card(scale: float, case: str, note: str) -> Image.Image:
    """The card, ten centimetres and a margin long."""
    long, margin = round(100 * scale), round(6 * max(scale, 2))
    high = max(108, round(26 * scale)) if scale < 4 else round(24 * scale)
    card = tinted(
        clouds((long + 2 * margin, high), 7, 60, 0.2),
        (226, 225, 221),
        (240, 239, 235),
        (250, 249, 246),
    )
    draw = ImageDraw.Draw(card)
    row = round(high * 0.2)
    _rule(draw, margin, round(high * 0.08), scale, row)
    top = round(high * 0.08) + row + round(high * 0.05)
    step = long / 12
    for index, colour in enumerate([(g, g, g) for g in GREYS] + list(PATCHES)):
        left = margin + step * index
        draw.rectangle((left, top, left + step - 2, top + round(high * 0.26)), fill=colour)
    size = max(15, round(high * 0.17))
    text = round(high * 0.66)
    draw.text((margin, text), case, font=ImageFont.load_default(size), fill=(40, 40, 40))
    small = ImageFont.load_default(max(12, round(size * 0.72)))
    wide = draw.textlength(note, font=small)
    draw.text((margin + long - wide, text + size * 0.26), note, font=small, fill=(90, 90, 90))
    return card.filter(ImageFilter.GaussianBlur(0.45))


def _rule(draw: ImageDraw.ImageDraw, left: int, top: int, scale: float, high: int) -> None:
    """Ten centimetres in black and white, with figures left to the note."""
    for index in range(10):
        start, end = left + index * 10 * scale, left + (index + 1) * 10 * scale
        dark, light = (34, 34, 34), (250, 250, 250)
        draw.rectangle((start, top, end, top + high / 2), fill=dark if index % 2 else light)
        draw.rectangle((start, top + high / 2, end, top + high), fill=light if index % 2 else dark)
    draw.rectangle((left, top, left + 100 * scale, top + high), outline=(34, 34, 34))


def _tags(date: str, seed: int) -> Image.Exif:
    """What a camera writes: when, and with what."""
    minute = random.Random(seed).randrange(9 * 60, 17 * 60)
    taken = f"{date.replace('-', ':')} {minute // 60:02}:{minute % 60:02}:00"
    tags = Image.Exif()
    tags[0x010F], tags[0x0110], tags[0x0132] = *DEVICE, taken
    tags.get_ifd(0x8769)[0x9003] = taken
    return tags
