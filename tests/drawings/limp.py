"""The boatbuilder's account book in limp parchment: front, spine, and its sewing laid bare."""

from __future__ import annotations

from PIL import Image, ImageChops, ImageDraw, ImageFilter, ImageFont

from tests.drawings import surfaces as s
from tests.drawings.ledger import cord, hole
from tests.drawings.scene import Scene

CASE = "2025-058"
SKIN, OLD, TAWED, LEAVES = (222, 204, 164), (206, 184, 138), (236, 230, 216), (214, 200, 168)
SCALE = 3.35


def front(*, mended: bool) -> Scene:
    """The front cover, raking light from the right."""
    scene = Scene((1600, 1200), SCALE, 700 + mended)
    book = (round(102 * SCALE), round(304 * SCALE))
    at = (560, 84)
    _leaves(scene, at, book, mended)
    size = book if mended else (book[0] - round(6 * SCALE), book[1])
    skin = _cockled(s.parchment(size, 701, SKIN if mended else OLD), 702, 0.16 if mended else 1.0)
    skin = _title(skin)
    skin, mask = _corner(skin, mended)
    _ties(scene, at, book)
    scene.lay(skin, mask, at, height=11)
    scene.target((1030, 1000), CASE, "front   raking light from the right")
    return scene


def _leaves(scene: Scene, at: tuple[int, int], book: s.Size, mended: bool) -> None:
    """The fore-edge of the leaves, standing out where the cover has shrunk."""
    if mended:
        return
    size = (60, book[1] - 24)
    edge = s.shaded(s.paper(size, 711, LEAVES), s.brushed(size, 712, 3, 700, 0.6))
    mask = s.polygon(
        size,
        [(0, 0), (48, 0), (50, size[1] * 0.5), (58, size[1] * 0.62), (56, size[1]), (0, size[1])],
        1,
    )
    scene.lay(edge, mask, (at[0] + book[0] - 56, at[1] + 12), height=12)


def _cockled(skin: Image.Image, seed: int, strength: float) -> Image.Image:
    """Ridges that run across the skin, lit from the right."""
    size = skin.size
    small = s.brushed(size, seed, 240, 46, 1.0).filter(ImageFilter.GaussianBlur(7))
    large = s.brushed(size, seed + 1, 90, 120, 1.0).filter(ImageFilter.GaussianBlur(14))
    height = Image.blend(small, large, 0.5)
    moved = ImageChops.offset(height, -9, 6)
    shade = ImageChops.subtract(height, moved, scale=1, offset=128).filter(
        ImageFilter.GaussianBlur(2)
    )
    skin = s.shaded(skin, s.levels(shade, 3.2 * strength))
    across = s.slope(size, [(0, 70), (0.06, 112), (0.5, 128), (0.94, 150), (1, 160)])
    skin = s.shaded(skin, across)
    dirt = s.slope(size, [(0, 210), (0.07, 60), (0.5, 0), (0.92, 40), (1, 190)])
    grime = ImageChops.multiply(dirt, s.clouds(size, seed + 3, 60, 1.2))
    return s.stained(skin, grime, (150, 122, 84), 0.9)


def _title(skin: Image.Image) -> Image.Image:
    """The boatbuilder's own words on the cover."""
    layer = Image.new("L", skin.size)
    draw = ImageDraw.Draw(layer)
    for y, text, size in ((0.14, "Wm Garrow", 38), (0.20, "His Book", 36), (0.255, "of Boats", 36)):
        draw.text((56, skin.size[1] * y), text, font=ImageFont.load_default(size), fill=225)
    layer = layer.transform(
        skin.size, Image.Transform.AFFINE, (1, 0.28, -64, 0.05, 1, -8), s.SMOOTH
    )
    worn = ImageChops.subtract(
        layer, s.spots(skin.size, 721, 12, 0.16, 1).point([round(v * 0.6) for v in range(256)])
    )
    return s.stained(skin, worn.filter(ImageFilter.GaussianBlur(1.0)), (92, 62, 38), 0.88)


def _corner(skin: Image.Image, mended: bool) -> tuple[Image.Image, Image.Image]:
    """The gnawed corner and the tear at the tail, or their mends."""
    wide, high = skin.size
    mask = s.polygon(skin.size, [(3, 2), (wide - 3, 0), (wide, high), (0, high - 2)], 1.6)
    lost = s.polygon(
        skin.size,
        [
            (wide + 9, high - 31 * SCALE),
            (wide - 8 * SCALE, high - 27 * SCALE),
            (wide - 22 * SCALE, high - 9 * SCALE),
            (wide - 20 * SCALE, high + 9),
            (wide + 9, high + 9),
        ],
    )
    lost = s.eroded(lost, 731, 26, 6)
    tear = s.strokes(
        skin.size, [s.jagged((13, high), (17, high - 46 * SCALE), 732, 2)], 3 if mended else 9, 1
    )
    if mended:
        new = s.parchment(skin.size, 733, (236, 224, 194))
        new = s.shaded(new, s.slope(skin.size, [(0, 128), (1, 138)]))
        skin = s.mix(skin, new, lost)
        rim = ImageChops.subtract(lost.filter(ImageFilter.GaussianBlur(3)), lost)
        skin = s.stained(skin, rim, (170, 142, 100), 0.6)
        return s.stained(skin, tear, (160, 132, 94), 0.45), mask
    edge = lost.filter(ImageFilter.GaussianBlur(7))
    skin = s.stained(skin, edge, (150, 116, 74), 0.7)
    curl = ImageChops.offset(tear.filter(ImageFilter.GaussianBlur(4)), 7, 0)
    skin = s.mix(skin, s.shaded(skin, Image.new("L", skin.size, 196)), curl)
    return skin, ImageChops.subtract(ImageChops.subtract(mask, lost), tear)


def _ties(scene: Scene, at: tuple[int, int], book: s.Size) -> None:
    """Two stubs of ties at the fore-edge."""
    for share, seed in ((0.3, 741), (0.68, 742)):
        size = (46, 16)
        stub = s.leather(size, seed, (176, 154, 116), 0.6)
        mask = s.eroded(s.box(size, (0, 2, 40, 14)), seed + 5, 10, 3)
        scene.lay(stub, mask, (at[0] + book[0] - 12, at[1] + round(book[1] * share)), height=5)


# --- the spine -------------------------------------------------------------------------------------

WIDE = 4.0
LONG, HIGH = round(304 * WIDE), round(24 * WIDE)


def spine(*, mended: bool) -> Scene:
    """The spine of the cover with its two lacings, head to the left."""
    scene = Scene((1600, 620), WIDE, 760 + mended)
    at = (190, 160)
    size = (LONG, HIGH + 40)
    skin = _cockled(s.parchment(size, 761, SKIN if mended else OLD), 762, 0.2 if mended else 0.9)
    skin = s.shaded(
        skin, s.slope(size, [(0, 40), (0.2, 118), (0.4, 160), (0.75, 104), (1, 34)], down=True)
    )
    mask = s.polygon(
        size, [(2, 6), (size[0] - 2, 4), (size[0], size[1] - 4), (0, size[1] - 7)], 1.8
    )
    tear = s.strokes(
        size, [s.jagged((LONG, 30), (LONG - 46 * WIDE, 26), 763, 3)], 3 if mended else 13, 1
    )
    if mended:
        skin = s.stained(skin, tear, (150, 122, 86), 0.5)
    else:
        _under(scene, at, size)
        curl = ImageChops.offset(tear.filter(ImageFilter.GaussianBlur(5)), 0, 11)
        skin = s.mix(skin, s.shaded(skin, Image.new("L", size, 205)), curl)
        mask = ImageChops.subtract(mask, tear)
    scene.lay(skin, mask, at, height=22)
    for share, whole in ((0.24, True), (0.76, mended)):
        _lacing(
            scene, (at[0] + LONG * share, at[1]), size[1], whole=whole, new=mended and share > 0.5
        )
    scene.target((1060, 430), CASE, "spine, head left   10 cm")
    return scene


def _under(scene: Scene, at: tuple[int, int], size: s.Size) -> None:
    """What the open tear shows: the folds of the leaves."""
    inner = (260, size[1] - 20)
    folds = s.shaded(s.paper(inner, 765, (150, 132, 100)), s.brushed(inner, 766, 300, 5, 0.7))
    scene.lay(folds, Image.new("L", inner, 255), (at[0] + size[0] - 264, at[1] + 10), height=4)


def _lacing(scene: Scene, at: tuple[float, float], high: int, *, whole: bool, new: bool) -> None:
    """Two slips through their holes above and below; an empty lacing is a pair of holes."""
    x, y = at
    for place in (y + high * 0.2, y + high * 0.8):
        for step in (-15, 15):
            hole(scene, (x + step, place), 4)
        if whole:
            size = (30, 20)
            slip = s.leather(size, 771, TAWED if new else (200, 186, 152), 0.4)
            slip = s.shaded(slip, s.slope(size, [(0, 90), (0.3, 150), (1, 96)]))
            scene.lay(
                slip, s.box(size, (1, 1, 29, 19), 1.4), (round(x - 15), round(place - 10)), height=4
            )


def sewing() -> Scene:
    """The text block without its cover: six sections, the old thongs and the new one beside."""
    scale = 4.2
    scene = Scene((1600, 720), scale, 780)
    size, at = (round(300 * scale), round(30 * scale)), (150, 220)
    face = s.shaded(s.paper(size, 781, LEAVES, 26), s.brushed(size, 782, 240, 4, 0.4))
    step = size[1] / 6
    for k in range(6):
        shade = s.slope((size[0], round(step)), [(0, 52), (0.4, 150), (1, 60)], down=True)
        strip = s.shaded(
            face.crop((0, round(k * step), size[0], round(k * step) + round(step))), shade
        )
        face.paste(strip, (0, round(k * step)))
    scene.lay(face, s.box(size, (0, 0, *size), 1.6), at, height=24)
    for share in (0.06, 0.94):
        for k in range(5):
            y = at[1] + step * (k + 0.5)
            x = at[0] + size[0] * share
            cord(scene, [(x, y), (x + 5, y + step / 2), (x, y + step)], 4, (196, 180, 146), 790 + k)
    _thong(scene, (at[0] + size[0] * 0.24, at[1] - 84), round(step * 6 + 168), (206, 192, 160), 801)
    _thong(
        scene,
        (at[0] + size[0] * 0.76, at[1] - 70),
        round(step * 4.6 + 70),
        (196, 180, 146),
        802,
        torn=True,
    )
    _thong(
        scene,
        (at[0] + size[0] * 0.76 + 30, at[1] + round(step * 2.5)),
        round(step * 3.5 + 100),
        TAWED,
        803,
    )
    _wraps(scene, at, size, step)
    scene.target((1060, 540), CASE, "spine of text block, head left")
    return scene


def _thong(
    scene: Scene,
    at: tuple[float, float],
    long: int,
    colour: s.Colour,
    seed: int,
    *,
    torn: bool = False,
) -> None:
    """A strip of tawed skin over the sections."""
    size = (22, long)
    skin = s.leather(size, seed, colour, 0.35)
    skin = s.shaded(skin, s.slope(size, [(0, 84), (0.35, 158), (1, 84)]))
    mask = s.box(size, (2, 1, 20, long - 1), 1.2)
    if torn:
        mask = s.polygon(
            size,
            [
                (2, 1),
                (20, 1),
                (20, long - 24),
                (14, long - 6),
                (10, long - 20),
                (5, long - 2),
                (2, long - 18),
            ],
            1,
        )
    scene.lay(skin, mask, (round(at[0]), round(at[1])), height=5)


def _wraps(scene: Scene, at: tuple[int, int], size: s.Size, step: float) -> None:
    """Thread round the thongs: the old, and a paler new one at sections 4 to 6."""
    for share, first, wide, colour in (
        (0.24, 0, 28, (178, 160, 124)),
        (0.76, 0, 28, (178, 160, 124)),
        (0.76, 3, 58, (240, 234, 216)),
    ):
        for k in range(first, 6):
            y = at[1] + step * (k + 0.5)
            x = at[0] + size[0] * share
            line = [(x - 5, y), (x + wide / 2, y + 1), (x + wide, y)]
            cord(scene, line, 4, colour, 810 + k + first)
