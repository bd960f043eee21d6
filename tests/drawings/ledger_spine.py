"""The spine of the day book: as it came, bare, under its linings, and after treatment."""

from __future__ import annotations

import random

from PIL import Image, ImageChops, ImageDraw, ImageFilter, ImageFont

from tests.drawings import surfaces as s
from tests.drawings.ledger import CALF, CASE, line, powder
from tests.drawings.scene import Scene

GLUE, LEAVES, LINEN = (92, 60, 34), (222, 210, 184), (206, 198, 178)
SPINE = 3.2
LONG, HIGH = round(398 * SPINE), round(70 * SPINE)


def spine(state: str) -> Scene:
    """The spine, head to the left: before, bare, tissue, linings or after."""
    scene = Scene((1600, 780), SPINE, 200 + len(state))
    at = (160, 200)
    if state in ("before", "after"):
        _board_edges(scene, at)
    elif state == "linings":
        _flanges(scene, at)
    face = {"before": _decayed, "after": _rebacked}.get(state, _lined)(state)
    mask = s.box(face.size, (0, 0, *face.size), 1.2)
    scene.lay(_rounded(face), mask, at, height=20)
    if state in ("before", "after"):
        _endbands(scene, at)
    scene.target((1160, 590), CASE, "spine, head left   10 cm")
    return scene


def _rounded(face: Image.Image) -> Image.Image:
    """The shade of a round back lit from above."""
    stops = [(0, 30), (0.12, 88), (0.34, 164), (0.55, 136), (0.85, 72), (1, 14)]
    light = s.slope(face.size, stops, down=True)
    return s.shaded(s.shaded(face, light), s.levels(light, 0.55))


def _board_edges(scene: Scene, at: tuple[int, int]) -> None:
    """The spine edges of the two boards, above and below."""
    size = (round(413 * SPINE), 26)
    for y, seed in ((at[1] - 18, 211), (at[1] + HIGH - 8, 212)):
        edge = s.shaded(
            s.leather(size, seed, (104, 66, 42)), s.slope(size, [(0, 150), (1, 60)], down=True)
        )
        scene.lay(edge, s.box(size, (0, 0, *size), 2), (at[0] - 24, y), height=12)


def _folds() -> Image.Image:
    """Fifty-two folds of sections, five cords in their cuts, thread at the kettle stitches."""
    size = (LONG, HIGH)
    base = s.shaded(s.paper(size, 221, LEAVES, 30), s.brushed(size, 222, 260, 4, 0.35))
    gap = HIGH / 52
    dice = random.Random(223)
    seams = [
        s.jagged((0, gap * k), (LONG, gap * k + dice.uniform(-1, 1)), 230 + k, 0.6)
        for k in range(1, 52)
    ]
    base = s.stained(base, s.strokes(size, seams, 1.1, 0.7), (112, 84, 58), 0.75)
    for k, x in enumerate(_stations()):
        cut = s.box(size, (x - 6, 2, x + 6, HIGH - 2), 1.6)
        base = s.stained(base, cut, (120, 92, 66), 0.75)
        if 0 < k < 6:
            twist = s.shaded(
                Image.new("RGB", size, (176, 150, 108)), s.brushed(size, 290 + k, 4, 5, 1.0)
            )
            base = s.mix(base, twist, s.strokes(size, [[(x, 4), (x, HIGH - 4)]], 6, 0.8))
    return base


def _stations() -> list[float]:
    return [LONG * share for share in (0.035, 0.16, 0.33, 0.5, 0.67, 0.84, 0.965)]


def _waste(face: Image.Image) -> Image.Image:
    """The strip of a printed tide table between cords 3 and 4."""
    stations = _stations()
    wide, high = round(60 * SPINE), HIGH - 6
    left = round((stations[3] + stations[4]) / 2 - wide / 2)
    slip = s.paper((high, wide), 301, (206, 190, 150), 30)
    draw = ImageDraw.Draw(slip)
    draw.text((18, 8), "TIDE TABLE for 1873", font=ImageFont.load_default(17), fill=(66, 54, 44))
    draw.line((14, 32, high - 14, 32), fill=(92, 76, 60))
    dice, font = random.Random(302), ImageFont.load_default(11)
    for row in range(10):
        for column in range(5):
            text = f"{dice.randrange(12):>2} {dice.randrange(60):02}"
            draw.text((16 + column * 41, 38 + row * 15), text, font=font, fill=(84, 70, 56))
    slip = slip.filter(ImageFilter.GaussianBlur(0.5)).rotate(90, expand=True)
    mask = s.eroded(s.box(slip.size, (1, 1, slip.size[0] - 1, slip.size[1] - 1)), 303, 18, 4)
    slip = s.stained(slip, s.spots(slip.size, 304, 30, 0.3, 5), (176, 130, 80), 0.7)
    faded = mask.point([round(v * 0.94) for v in range(256)])
    face.paste(slip, (left, 3), faded)
    return face


def _residue(face: Image.Image) -> Image.Image:
    """Brown glue left in the middle folds."""
    band = s.box(face.size, (0, HIGH * 0.38, LONG, HIGH * 0.52), 6)
    streaks = ImageChops.multiply(band, s.spots(face.size, 311, 40, 0.5, 3))
    return s.stained(face, streaks, GLUE, 0.55)


def _lined(state: str) -> Image.Image:
    """The bare spine, and over it as many linings as there are by then."""
    face = _waste(_residue(_folds()))
    if state == "bare":
        return face
    face = _veil(face, 390, (236, 232, 220), 0.56, 321)
    if state == "tissue":
        return face
    face = _veil(face, 380, (204, 188, 154), 0.97, 331)
    inset = round((398 - 366) / 2 * SPINE)
    woven = s.cloth((LONG, HIGH), 341, LINEN, 4)
    return _stepped(face, woven, s.box((LONG, HIGH), (inset, -4, LONG - inset, HIGH + 4), 0.8))


def _veil(face: Image.Image, height: int, colour: s.Colour, cover: float, seed: int) -> Image.Image:
    """A paper of some height (mm) pasted over the spine; thin ones let through what is below."""
    inset = (398 - height) / 2 * SPINE
    sheet = s.paper(face.size, seed, colour, 18)
    hairs = s.strokes(face.size, _fibres(face.size, seed), 0.8, 0.5)
    sheet = s.mix(sheet, Image.new("RGB", face.size, (250, 247, 238)), s.levels(hairs, 0.9))
    mask = s.eroded(s.box(face.size, (inset, 0, LONG - inset, HIGH), 0.8), seed + 3, 5, 1.6)
    return _stepped(face, sheet, mask.point([round(v * cover) for v in range(256)]))


def _fibres(size: s.Size, seed: int) -> list[s.Points]:
    dice = random.Random(seed)
    lines: list[s.Points] = []
    for _ in range(260):
        x, y = dice.uniform(0, size[0]), dice.uniform(0, size[1])
        bend = dice.uniform(-14, 14)
        lines.append([(x, y), (x + 24, y + bend * 0.4), (x + 56, y + bend)])
    return lines


def _stepped(face: Image.Image, sheet: Image.Image, mask: Image.Image) -> Image.Image:
    """A layer laid on with a narrow shadow at its edge."""
    shadow = ImageChops.offset(mask, 3, 2).filter(ImageFilter.GaussianBlur(2.5))
    ends = ImageChops.subtract(shadow, mask)
    return s.mix(s.stained(face, ends, (70, 56, 44), 0.8), sheet, mask)


def _flanges(scene: Scene, at: tuple[int, int]) -> None:
    """The free edges of the cloth on either side of the spine."""
    inset, high = round(16 * SPINE), round(40 * SPINE)
    size = (LONG - 2 * inset, high)
    for y, seed, stops in (
        (at[1] - high + 4, 351, [(0, 128), (0.7, 136), (1, 84)]),
        (at[1] + HIGH - 4, 352, [(0, 60), (0.25, 118), (1, 140)]),
    ):
        woven = s.shaded(s.cloth(size, seed, LINEN, 4), s.slope(size, stops, down=True))
        woven = s.shaded(woven, s.brushed(size, seed + 2, 300, 60, 0.25))
        scene.lay(
            woven, s.box(size, (1, 1, size[0] - 1, size[1] - 1), 1), (at[0] + inset, y), height=5
        )


def _decayed(state: str) -> Image.Image:
    """The old calf: powdery, cracked, lost at head and tail, glue under it."""
    del state
    size = (LONG, HIGH)
    below = s.mix(
        _folds(),
        s.shaded(s.leather(size, 361, GLUE, 1.0), s.clouds(size, 362, 30, 0.9)),
        s.spots(size, 363, 60, 0.74, 3),
    )
    skin = powder(s.leather(size, 364, CALF, 0.9), 365)
    for k, share in enumerate((0.22, 0.52, 0.78)):
        crack = s.strokes(
            size,
            [
                s.jagged(
                    (LONG * 0.1, HIGH * share), (LONG * 0.93, HIGH * (share + 0.03)), 370 + k, 3
                )
            ],
            1.6,
            0.7,
        )
        skin = s.stained(skin, crack, (40, 24, 16), 0.8)
    whole = s.box(size, (LONG * 0.085, -20, LONG * 0.9, HIGH + 20), 1)
    mask = s.eroded(whole, 375, 54, 26)
    holes = s.spots(size, 376, 46, 0.07, 1)
    mask = ImageChops.subtract(mask, holes)
    face = _stepped(below, skin, mask)
    return _label(face, old=True)


def _rebacked(state: str) -> Image.Image:
    """The new spine of toned paper, with blind lines at the cords and the old label."""
    del state
    size = (LONG, HIGH)
    face = s.shaded(s.paper(size, 381, (136, 104, 80), 12), s.clouds(size, 382, 24, 0.14))
    for x in _stations()[1:6]:
        for move in (-7, 7):
            face = line(face, [(x + move, -4), (x + move, HIGH + 4)], 1.6, 66)
    return _label(face, old=False)


def _label(face: Image.Image, *, old: bool) -> Image.Image:
    """The red label, 92 mm from the head, lettered across the spine."""
    wide, high = round(44 * SPINE), HIGH - 30
    label = s.leather((high, wide), 391, (128, 38, 34), 0.5)
    label = s.stained(label, s.spots(label.size, 392, 22, 0.16, 1.2), (150, 118, 96), 0.7)
    gold = Image.new("L", label.size)
    draw = ImageDraw.Draw(gold)
    font = ImageFont.load_default(46)
    start = (high - draw.textlength("TIDES", font=font, features=None)) / 2
    draw.text((start, wide / 2 - 28), "TIDES", font=font, fill=255)
    for y in (8, 13, wide - 14, wide - 9):
        draw.line((4, y, high - 4, y), fill=230, width=2)
    worn = ImageChops.subtract(gold, s.spots(label.size, 393, 9, 0.2, 0.8))
    leaf = s.tinted(s.grain(label.size, 394, 5), (120, 88, 34), (190, 150, 70), (236, 208, 130))
    label = s.mix(label, leaf, worn.filter(ImageFilter.GaussianBlur(0.6)))
    label = label.rotate(90, expand=True)
    mask = s.eroded(s.box(label.size, (2, 2, label.size[0] - 2, label.size[1] - 2)), 395, 20, 1.6)
    left = round(92 * SPINE)
    if not old:
        ring = s.box(face.size, (left - 1, 16, left + wide + 3, HIGH - 12), 2.5)
        face = s.stained(face, ring, (64, 44, 32), 0.7)
    face.paste(label, (left, 15), mask)
    return face


def _endbands(scene: Scene, at: tuple[int, int]) -> None:
    """Striped endbands at head and tail."""
    for x in (at[0] - 9, at[0] + LONG - 1):
        size = (11, HIGH - 46)
        band = Image.new("RGB", size, (206, 196, 172))
        draw = ImageDraw.Draw(band)
        for y in range(0, size[1], 9):
            draw.rectangle((0, y, 11, y + 4), fill=(150, 44, 42))
        band = s.shaded(
            band.filter(ImageFilter.GaussianBlur(0.7)),
            s.slope(size, [(0, 90), (0.4, 160), (1, 80)]),
        )
        scene.lay(band, s.box(size, (0, 0, *size), 1.4), (x, at[1] + 22), height=5)
