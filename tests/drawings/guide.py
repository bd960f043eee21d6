"""The Coasting Pilot's Guide, forty-two years after it was rebacked."""

from __future__ import annotations

import math

from PIL import Image, ImageChops, ImageDraw, ImageFilter

from tests.drawings import surfaces as s
from tests.drawings.scene import Scene

CASE = "1984-017"
SCALE = 4.7
GREEN, STRAW, OLD_SPINE = (72, 108, 82), (176, 162, 112), (112, 96, 60)


def front() -> Scene:
    """The front board: green cloth, the joint faded to straw, the old spine at the edge."""
    scene = Scene((1600, 1200), SCALE, 900)
    board = (round(118 * SCALE), round(186 * SCALE))
    at = (360, 120)
    _edge(scene, at, board)
    cover = s.cloth(board, 901, GREEN, 4, 0.26)
    cover = s.shaded(
        cover, s.relief(s.grain(board, 902, 5).filter(ImageFilter.GaussianBlur(1.4)), 2, 0.22)
    )
    cover = _stamped(cover)
    joint = s.box(board, (0, 0, 11 * SCALE, board[1]), 1)
    straw = s.shaded(s.cloth(board, 903, STRAW, 4, 0.3), s.clouds(board, 904, 120, 0.3))
    cover = s.mix(cover, straw, joint)
    groove = s.slope(board, [(0, 120), (0.03, 80), (0.05, 76), (0.08, 158), (0.1, 128), (1, 122)])
    cover = s.shaded(cover, groove)
    cover = _worn(cover)
    mask = s.eroded(s.box(board, (1, 1, board[0] - 1, board[1] - 1), 2), 905, 30, 5)
    scene.lay(cover, mask, at, height=17)
    scene.target((1024, 880), CASE, "front")
    return scene


def _edge(scene: Scene, at: tuple[int, int], board: s.Size) -> None:
    """The old spine, browned, seen from the side."""
    size = (70, board[1] - 4)
    skin = s.cloth(size, 911, OLD_SPINE, 4, 0.3)
    skin = s.shaded(skin, s.slope(size, [(0, 20), (0.45, 112), (0.8, 150), (1, 88)]))
    gold = ImageDraw.Draw(skin)
    for y in (60, 66, size[1] - 70, size[1] - 64):
        gold.line((14, y, 66, y), fill=(150, 126, 72), width=2)
    mask = s.eroded(s.box(size, (2, 4, 70, size[1] - 4), 3), 912, 18, 4)
    scene.lay(skin.filter(ImageFilter.GaussianBlur(0.4)), mask, (at[0] - 56, at[1] + 2), height=15)


def _stamped(cover: Image.Image) -> Image.Image:
    """Blind frames and an anchor, pressed into the cloth."""
    wide, high = cover.size
    lines: list[s.Points] = []
    for inset in (46, 54, 84):
        lines.append(
            [
                (inset + 44, inset),
                (wide - inset, inset),
                (wide - inset, high - inset),
                (inset + 44, high - inset),
                (inset + 44, inset),
            ]
        )
    x, y = (wide + 44) / 2, high / 2
    lines += [[(x, y - 120), (x, y + 110)], [(x - 52, y - 82), (x + 52, y - 82)]]
    arc = [
        (x + 110 * math.sin(t), y + 10 + 100 * math.cos(t))
        for t in (k / 20 * 2.4 - 1.2 for k in range(21))
    ]
    lines.append(arc)
    for end, side in ((arc[0], 1), (arc[-1], -1)):
        lines.append([(end[0] + side * 26, end[1] + 4), end, (end[0] - side * 2, end[1] + 30)])
    lines.append(
        [
            (x + 17 * math.cos(t), y - 138 + 17 * math.sin(t))
            for t in (k / 12 * math.tau for k in range(13))
        ]
    )
    press = s.strokes(cover.size, lines, 4, 1)
    shade = Image.new("L", cover.size, 128)
    shade.paste(190, mask=ImageChops.offset(press, 2, 2))
    shade.paste(34, mask=press)
    return s.shaded(cover, shade)


def _worn(cover: Image.Image) -> Image.Image:
    """Rubbed edges and corners, a browned rim, a few drops of salt water."""
    wide, high = cover.size
    rim = ImageChops.invert(s.box(cover.size, (12, 12, wide - 12, high - 12), 14))
    rubbed = ImageChops.multiply(rim, s.clouds(cover.size, 921, 26, 1.7))
    cover = s.mix(cover, s.cloth(cover.size, 922, (150, 150, 116), 4, 0.3), rubbed)
    cover = s.stained(cover, s.spots(cover.size, 923, 54, 0.018, 4), (170, 160, 130), 0.6)
    return s.shaded(cover, s.slope(cover.size, [(0, 134), (0.5, 130), (1, 112)]))
