"""The tide-gauge keeper's day book: its front, and the inside of the front board."""

from __future__ import annotations

import random

from PIL import Image, ImageChops, ImageDraw, ImageFilter, ImageFont

from tests.drawings import surfaces as s
from tests.drawings.scene import Scene

CASE = "2025-031"
CALF, TONED = (108, 80, 60), (118, 88, 66)
FRONT = 2.42


def front(*, mended: bool) -> Scene:
    """The front board, before or after."""
    scene = Scene((1600, 1200), FRONT, 100 + mended)
    board = (round(262 * FRONT), round(413 * FRONT))
    at = (420, 92)
    if not mended:
        _text_edge(scene, at, board)
    _spine_side(scene, at, board, mended)
    cover, mask = _board(board, mended)
    if not mended:
        cover, mask = (one.rotate(-0.9, s.SMOOTH, expand=False) for one in (cover, mask))
    place = at if mended else (at[0] + 11, at[1] + 5)
    scene.lay(cover, mask, place, height=16)
    _strap(scene, (at[0] + board[0], at[1] + 470))
    if not mended:
        _twine(scene, at, board)
    scene.target((1176, 1010), CASE, "front   10 cm")
    return scene


def _text_edge(scene: Scene, at: tuple[int, int], board: s.Size) -> None:
    """The leaves that show beside the board that slipped."""
    size = (board[0] - 6, board[1] - 34)
    edge = s.shaded(s.paper(size, 21, (196, 182, 152)), s.brushed(size, 22, 3, 600, 0.5))
    scene.lay(edge, Image.new("L", size, 255), (at[0] - 4, at[1] + 17), height=14)


def _spine_side(scene: Scene, at: tuple[int, int], board: s.Size, mended: bool) -> None:
    """What is seen of the round spine, left of the board."""
    size = (44, board[1] - 2)
    skin = s.leather(size, 31, TONED if mended else CALF, 0.3 if mended else 0.9)
    if not mended:
        skin = powder(skin, 32)
    skin = s.shaded(skin, s.slope(size, [(0, 30), (0.55, 120), (0.85, 150), (1, 70)]))
    mask = s.box(size, (2, 3, 44, size[1] - 3), 2)
    if not mended:
        mask = s.eroded(s.box(size, (2, 26, 44, size[1] - 40), 1), 33, 40, 7)
    scene.lay(skin, mask, (at[0] - 30, at[1] + 1), height=14)


def powder(skin: Image.Image, seed: int) -> Image.Image:
    """Leather gone to powder: paler, redder, its surface lost in flakes."""
    raw = s.shaded(
        s.paper(skin.size, seed, (146, 106, 82), 30), s.grain(skin.size, seed + 1, 2, 0.3)
    )
    flakes = s.spots(skin.size, seed + 2, 26, 0.42, 0.9)
    edge = s.levels(s.relief(flakes.filter(ImageFilter.GaussianBlur(1)), 2, 0.5), 0.5)
    return s.shaded(s.mix(skin, raw, flakes), edge)


def _board(size: s.Size, mended: bool) -> tuple[Image.Image, Image.Image]:
    """The board with its leather edge and marbled side."""
    sides = s.marbled(size, 41)
    scuffs = s.spots(size, 42, 18, 0.05 if mended else 0.075, 1.2)
    sides = s.mix(sides, s.paper(size, 43, (150, 140, 120)), s.levels(scuffs, 1))
    if not mended:
        sides = s.shaded(sides, s.clouds(size, 44, 160, 0.35).point([v * 0.86 for v in range(256)]))
    width = round(38 * FRONT)
    skin = s.leather(size, 45, TONED if mended else CALF, 0.35 if mended else 0.8)
    skin = skin if mended else powder(skin, 46)
    edge = s.polygon(
        size,
        [(0, 0), *s.jagged((width, 0), (width, size[1]), 47, 0.5 if mended else 2), (0, size[1])],
    )
    cover = s.mix(sides, skin, edge)
    cover = line(cover, [(width, 0), (width, size[1])], 1.6, 60)
    if mended:
        for x in (width - 9, width - 14):
            cover = line(cover, [(x, 4), (x, size[1] - 4)], 1.4, 70)
        cover = s.shaded(
            cover, s.slope(size, [(0, 104), (0.022, 92), (0.04, 146), (0.07, 128), (1, 128)])
        )
    cover = _bevelled(cover, size)
    mask = s.polygon(size, [(0, 0), (size[0], 0), (size[0], size[1]), (0, size[1])], 1.2)
    return _corners(cover, mask, mended)


def line(image: Image.Image, points: s.Points, width: float, grey: int) -> Image.Image:
    """A line pressed in: dark with a light lip."""
    dark = s.strokes(image.size, [points], width, 0.8)
    lip = ImageChops.offset(dark, 2, 1)
    shade = Image.new("L", image.size, 128)
    shade.paste(158, mask=lip)
    shade.paste(grey, mask=dark)
    return s.shaded(image, shade)


def _bevelled(image: Image.Image, size: s.Size) -> Image.Image:
    """Light on the upper edges of a board, shade on the lower."""
    light = s.box(size, (0, 0, size[0], size[1]), 0)
    inner = s.box(size, (5, 5, size[0] - 5, size[1] - 5), 3)
    rim = ImageChops.subtract(light, inner)
    shade = Image.new("L", size, 128)
    shade.paste(s.slope(size, [(0, 170), (0.5, 128), (1, 70)]), mask=rim)
    glow = s.slope(size, [(0, 142), (0.4, 132), (1, 112)])
    return s.shaded(s.shaded(image, shade), glow)


def _corners(
    cover: Image.Image, mask: Image.Image, mended: bool
) -> tuple[Image.Image, Image.Image]:
    """The two corners at the fore-edge: crushed into grey layers, or hard again."""
    size, reach = cover.size, 14 if mended else 40
    wide, high = size
    worn = Image.new("L", size)
    for y, side in ((0, 1), (high, -1)):
        points = [(wide, y), (wide - reach, y), (wide, y + side * reach * 1.1)]
        worn.paste(255, mask=s.polygon(size, points))
    board = s.shaded(s.paper(size, 48, (168, 152, 128)), s.brushed(size, 49, 26, 3, 0.5))
    cover = s.mix(cover, board, s.eroded(worn, 50, 16, 5).filter(ImageFilter.GaussianBlur(1)))
    lost = worn.filter(ImageFilter.GaussianBlur(reach / 5)).point(
        [255 if v > 170 else 0 for v in range(256)]
    )
    gone = s.eroded(lost, 52, 12, 4)
    return cover, ImageChops.subtract(mask, gone)


def _strap(scene: Scene, at: tuple[int, int]) -> None:
    """The strap from the back board, with its brass clasp."""
    size = (178, 60)
    skin = s.leather(size, 61, (92, 58, 38), 0.5)
    skin = s.shaded(skin, s.slope(size, [(0, 80), (0.2, 150), (0.7, 128), (1, 70)], down=True))
    for y in (9, 51):
        skin = line(skin, [(20, y), (172, y)], 1.2, 70)
    mask = s.polygon(size, [(14, 2), (178, 0), (178, 60), (14, 58), (4, 30)], 1.4)
    scene.lay(skin, mask, (at[0] - 150, at[1]), height=6)
    plate = (56, 66)
    brass = s.tinted(s.clouds(plate, 62, 30, 0.6), (92, 66, 26), (168, 134, 66), (226, 200, 128))
    brass = s.shaded(brass, s.slope(plate, [(0, 190), (0.35, 120), (0.6, 168), (1, 80)]))
    draw = ImageDraw.Draw(brass)
    for x, y in ((10, 12), (10, 54), (46, 12), (46, 54)):
        draw.ellipse((x - 3, y - 3, x + 3, y + 3), fill=(104, 78, 36))
    scene.lay(
        brass.filter(ImageFilter.GaussianBlur(0.6)),
        s.box(plate, (2, 2, 54, 64), 1),
        (at[0] - 154, at[1] - 3),
        height=5,
    )


def _twine(scene: Scene, at: tuple[int, int], board: s.Size) -> None:
    """Four stitches of tarred net twine over the front joint."""
    for index, share in enumerate((0.13, 0.36, 0.62, 0.86)):
        y = at[1] + board[1] * share
        dice = random.Random(70 + index)
        line = [(at[0] - 22, y + dice.uniform(-6, 6)), (at[0] + 14, y - 5), (at[0] + 58, y + 4)]
        cord(scene, line, 8, (62, 52, 40), 80 + index)
        hole(scene, (at[0] + 60, y + 4), 7)


def cord(scene: Scene, line: s.Points, width: float, colour: s.Colour, seed: int) -> None:
    """A twisted cord laid along points."""
    mask = s.strokes(scene.size, [line], width, 0.7)
    twist = s.brushed(scene.size, seed, 5, 3, 0.7)
    thing = s.shaded(Image.new("RGB", scene.size, colour), twist)
    inner = s.strokes(scene.size, [[(x - 1, y - 1.5) for x, y in line]], width * 0.35, 1)
    thing = s.mix(thing, s.shaded(thing, Image.new("L", scene.size, 205)), inner)
    scene.lay(thing, mask, (0, 0), height=max(3, width * 0.6), dark=0.6)


def hole(scene: Scene, at: tuple[float, float], radius: float) -> None:
    """A dark hole with a worn edge."""
    x, y = at
    ring = s.strokes(scene.size, [[(x, y), (x + 1, y)]], radius * 1.7, 2)
    scene.image = s.stained(scene.image, ring, (90, 74, 58), 0.8)


def inside() -> Scene:
    """Pastedown, pencil note and ticket; net twine over the gutter."""
    scene = Scene((1600, 1200), 4.6, 240)
    size = (1500, 1080)
    sheet = s.paper(size, 401, (206, 200, 184), 28)
    gutter = 940
    shade = s.slope(
        size, [(0, 136), (0.55, 138), (0.61, 70), (0.628, 30), (0.645, 96), (0.72, 134), (1, 126)]
    )
    sheet = s.stained(sheet, s.spots(size, 402, 120, 0.25, 20), (224, 206, 170), 0.8)
    tear = s.strokes(size, [s.jagged((gutter, 0), (gutter + 6, 1080), 403, 1.6)], 4, 1.4)
    sheet = s.mix(s.shaded(sheet, shade), s.leather(size, 404, (58, 40, 28)), tear)
    sheet = _pencil(sheet)
    scene.lay(sheet, s.box(size, (0, 0, *size), 1.5), (-40, -60), height=18)
    for index, y in enumerate((110, 360, 640, 890)):
        line = [(800, y), (850, y - 10), (900, y - 4), (960, y + 10), (1010, y + 3)]
        hole(scene, (800, y), 9)
        hole(scene, (1010, y + 3), 7)
        cord(scene, line, 13, (70, 58, 44), 410 + index)
    cord(scene, [(790, 112), (764, 148), (776, 200), (742, 226)], 11, (70, 58, 44), 420)
    cord(scene, [(797, 118), (806, 160), (790, 190)], 11, (70, 58, 44), 421)
    scene.target((40, 1052), CASE, "inside of front board   10 cm")
    return scene


def _pencil(sheet: Image.Image) -> Image.Image:
    """The keeper's note and the stationer's ticket."""
    note = Image.new("L", (620, 90))
    draw = ImageDraw.Draw(note)
    draw.text((30, 10), "Do not take from the hut", font=ImageFont.load_default(40), fill=190)
    note = note.transform(note.size, Image.Transform.AFFINE, (1, 0.32, -14, 0.03, 1, -6), s.SMOOTH)
    rough = ImageChops.multiply(note, s.grain(note.size, 431, 1.8, 1.4))
    mask = Image.new("L", sheet.size)
    mask.paste(rough.filter(ImageFilter.GaussianBlur(0.6)), (140, 420))
    sheet = s.mix(sheet, Image.new("RGB", sheet.size, (78, 78, 82)), s.levels(mask, 1))
    ticket = s.paper((150, 84), 432, (196, 208, 190))
    draw = ImageDraw.Draw(ticket)
    draw.rectangle((6, 6, 143, 77), outline=(70, 80, 70), width=2)
    draw.text((26, 14), "STATIONER", font=ImageFont.load_default(17), fill=(60, 66, 60))
    draw.text((34, 54), "Quernmouth", font=ImageFont.load_default(14), fill=(60, 66, 60))
    scratch = s.strokes(
        ticket.size, [s.jagged((22, 44), (130, 42), 433 + k, 4) for k in range(5)], 2.4
    )
    ticket = s.mix(ticket, s.paper(ticket.size, 434, (222, 220, 208)), scratch)
    sheet.paste(ticket.filter(ImageFilter.GaussianBlur(0.5)), (130, 130))
    return sheet
