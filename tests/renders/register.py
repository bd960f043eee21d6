"""The pilots' register: oak boards, tawed skin, double thongs, two clasps, a split and its cure.

Offered under the GPL, version 3 or later, as well as under the project's LICENSE.
"""

from __future__ import annotations

import numpy as np

from tests.renders import bench, blender, layers, surfaces
from tests.renders.book import Board, Book, Spine, strip, text_block
from tests.renders.paint import line, mix, rgb, step

BOOK = Book(
    tall=312, wide=215, thick=48, spine=58, rise=7, board=9, square=6, sections=18, joint=6, px=8
)
BANDS = (98.0, 33.0, -33.0, -98.0)
SKIN, OAK = rgb(0.66, 0.60, 0.50), rgb(0.42, 0.30, 0.19)
SPLIT, CLASPS = 212.0 - 64.0, (92.0, -92.0)
COVERED = 96.0
"""How far the tawed skin reaches over the boards from the joint; beyond it the oak is bare."""


def build(state: str, view: str) -> None:
    """Before, split (the iron off) or after; from the front or at the spine."""
    after = state == "after"
    text_block(BOOK, dirt=0.35, paper=rgb(0.84, 0.78, 0.65))
    _spine(after).build(every=2)
    for side in (-1, 1):
        _board(side, state)
    for number, y in enumerate(CLASPS):
        if after or number:
            _clasp(y, new=after and number == 0)
    if state == "before":
        _iron()
    bench.ground(1100)
    if view == "front":
        light = "raking" if state == "split" else "top"
        bench.from_above(BOOK.tall, BOOK.wide + 14, BOOK.top, after=after, light=light, left=-10)
    else:
        bench.from_spine(BOOK.tall, BOOK.thick + 10, BOOK.rise, after=after)


def _board(side: int, state: str) -> None:
    board, seed = Board(BOOK), 700 + 20 * side
    paint, relief = surfaces.wood(board, seed, OAK)
    dark = step(board.noise(50, seed + 5), -0.2, 0.6) * 0.3
    paint = mix(paint, paint * 0.6, dark)
    board.add(np.ones(board.shape, np.float32), paint, 0.1, rough=0.5, relief=relief)
    _skin(board, seed)
    holes = (
        step(board.noise(3, seed + 9, 1), 0.95, 0.97)
        * step(board.noise(60, seed + 10, 2), 0.1, 0.2)
        * (board.x > COVERED)
    )
    board.tint(holes * 0.9, rgb(0.08, 0.06, 0.04))
    if side > 0:
        _split(board, state)
        palm = np.hypot((board.x - 116) / 42, (board.y + 6) / 62)
        board.tint(
            step(1.15 - palm + 0.12 * board.noise(16, 14), 0, 0.6) * 0.5, rgb(0.16, 0.11, 0.07)
        )
        board.rough = board.rough - 0.12 * step(1.15 - palm, 0, 0.6)
        for y in CLASPS:
            _plate(board, y)
    bevel = step(9 - board.edge, 0, 9)
    board.height -= 3.2 * bevel * (board.x > 8)
    board.tint(step(1.2 - np.abs(board.edge - 8.6), 0, 1) * 0.25, rgb(0.62, 0.5, 0.36))
    board.build(side, bumped=1.6, inner=rgb(0.45, 0.33, 0.22))


def _skin(board: Board, seed: int) -> None:
    """Tawed skin over the third of the board next to the joint, grey with hands."""
    paint, relief = surfaces.parchment(board, seed + 3, SKIN)
    grime = step(board.noise(60, seed + 4) + 0.3 * board.noise(5, seed + 5), -0.6, 0.9)
    paint = mix(paint, paint * rgb(0.62, 0.57, 0.50), grime * 0.8)
    edge = COVERED + 0.5 * board.noise(9, seed + 6, 4) - board.x
    mask = step(edge, -0.1, 0.15)
    board.add(mask, paint, 0.8, rough=0.62, grain=0.5, relief=relief)
    board.tint(np.exp(-(((edge + 0.4) / 0.7) ** 2)) * 0.5, rgb(0.16, 0.12, 0.08))
    for y in BANDS:
        for off in (-4.2, 4.2):
            ridge = np.exp(-(((board.y - y - off) / 2.0) ** 2)) * step(34 - board.x, 0, 14)
            board.height += 1.3 * ridge


def _split(board: Board, state: str) -> None:
    """The split along the grain from the head; closed, it is a dark line."""
    far = board.x - SPLIT - 1.1 * board.noise(40, 21, 3)[:, :1] - 0.25 * board.noise(4, 22)[:, :1]
    along = np.clip((board.y + BOOK.tall / 2 - 76) / 236, 0, 1)
    if state == "after":
        board.tint(np.exp(-((far / 0.28) ** 2)) * (along > 0) * 0.7, rgb(0.12, 0.08, 0.05))
    else:
        gap = 1.5 * along
        open_ = step(gap - np.abs(far), -0.1, 0.15) * (along > 0)
        board.add(open_, rgb(0.018, 0.012, 0.01), -0.25, rough=1.0)
        lip = np.exp(-np.clip(np.abs(far) - gap, 0, 9) / 0.5) * (along > 0) * (1 - open_)
        board.tint(lip * 0.45, rgb(0.60, 0.46, 0.30))
        board.height += 0.9 * along * (far > 0) * np.exp(-np.abs(far) / 30)
    rust = board.depth(SPLIT - 62, SPLIT + 62, 96, 114)
    stain = np.exp(-np.clip(-rust, 0, 50) / 3.0) * (0.55 + 0.3 * board.noise(6, 25))
    board.tint(np.clip(stain, 0, 0.8) * 0.8, rgb(0.27, 0.14, 0.07))
    if state != "before":
        for number in range(6):
            hole = np.hypot(board.x - SPLIT + 54 - 21.6 * number, board.y - 105 - 4 * (number % 2))
            board.tint(step(1.1 - hole, -0.1, 0.1), rgb(0.06, 0.04, 0.03))


def _plate(board: Board, y: float) -> None:
    """A catchplate of brass let into the board's edge."""
    plate = board.inside(BOOK.board_wide - 22, BOOK.board_wide - 1.5, y - 9, y + 9, 0.1)
    board.tint(plate, rgb(0.55, 0.42, 0.2) * (1 + 0.2 * board.noise(3, 31))[..., None])
    board.metal, board.rough = np.maximum(board.metal, plate * 0.9), mix(board.rough, 0.4, plate)
    board.relief, board.height = board.relief * (1 - plate), board.height + 0.4 * plate
    for dx, dy in ((-18, -6), (-18, 6), (-6, 0)):
        pin = np.hypot(board.x - BOOK.board_wide - dx, board.y - y - dy)
        board.tint(step(1.2 - pin, 0, 0.3) * 0.7, rgb(0.22, 0.16, 0.08))


def _clasp(y: float, *, new: bool) -> None:
    """Strap and clasp from the back board round the fore-edge to the catchplate."""
    u, v = np.meshgrid(np.linspace(0, 1, 90), np.linspace(-8.5, 8.5, 24))
    edge, turn = BOOK.wide + BOOK.square, np.clip(u * 2, 0, 1) * np.pi / 2
    x = edge + 2.5 * np.sin(np.clip(u, 0, 1) * np.pi) - 14 * step(u, 0.8, 1.0)
    z = BOOK.board + (BOOK.top - BOOK.board + 1.4) * u - 0.6 * np.cos(turn)
    colour = rgb(0.86, 0.82, 0.73) if new else rgb(0.55, 0.48, 0.38)
    strip(np.stack([x, y + v, z], -1), colour, "strap", 96 + int(new), grain=0.4)
    brass = blender.plain(
        "brass", (0.58, 0.44, 0.21), rough=0.4, metal=0.9, bumps_mm=0.9, uneven=0.25
    )
    top = BOOK.top
    blender.box(
        "clasp",
        (edge - 25, edge + 1.5),
        (y - 9.5, y + 9.5),
        (top + 0.7, top + 2.6),
        brass,
        round_mm=0.6,
    )
    blender.box(
        "lip", (edge - 31, edge - 25), (y - 5, y + 5), (top + 0.6, top + 3.4), brass, round_mm=0.7
    )


def _iron() -> None:
    """The smith's strap of sheet iron, rusted, across the split."""
    iron = blender.plain(
        "iron", (0.24, 0.15, 0.10), rough=0.85, metal=0.25, bumps_mm=0.7, uneven=0.45
    )
    x, top = BOOK.joint + SPLIT, BOOK.top
    blender.box("iron", (x - 60, x + 60), (96, 114), (top + 0.2, top + 1.9), iron, round_mm=0.5)
    for number in range(6):
        px, py = x - 54 + 21.6 * number, 105 + 4 * (number % 2)
        high = top + (2.9 if number != 4 else 4.6)
        blender.box(
            "tack",
            (px - 2.4, px + 2.4),
            (py - 2.3, py + 2.3),
            (top + 1.6, high),
            iron,
            round_mm=1.0,
        )


def _spine(after: bool) -> Spine:
    spine = Spine(BOOK)
    layers.folds(spine)
    for y in BANDS:
        layers.cords(spine, (y - 4.2, y + 4.2), radius=3.4)
    spine.there[:] = True
    spine.height = spine.soft(spine.height, 1.0)
    paint, relief = surfaces.parchment(spine, 720, SKIN)
    rubbed = layers.wear(spine, BANDS)
    grime = step(spine.noise(60, 721) + 0.3 * spine.noise(5, 722) - 0.5 * rubbed, -0.6, 0.9)
    paint = mix(paint, paint * rgb(0.60, 0.55, 0.48), grime * 0.85)
    worn = (
        np.hypot(spine.x / 15, (spine.y + BOOK.tall / 2 - 2) / 9) - 1 + 0.3 * spine.noise(5, 723, 4)
    )
    spine.add(np.ones(spine.shape, np.float32), paint, 0.8, rough=0.6, grain=0.5, relief=relief)
    if after:
        patch = step(0.25 - worn, 0, 0.1)
        spine.tint(patch * 0.9, rgb(0.82, 0.77, 0.67) * (1 + 0.05 * spine.noise(3, 724))[..., None])
    else:
        hole = step(-worn, 0, 0.12)
        spine.add(
            hole,
            rgb(0.55, 0.40, 0.26) * (1 + 0.3 * np.sin(spine.x * 5))[..., None],
            -0.7,
            rough=0.9,
        )
        spine.tint(np.exp(-((worn / 0.12) ** 2)) * 0.5, rgb(0.3, 0.23, 0.16))
    crack = line(spine.x - BOOK.arc / 2 - 1.5 + 0.6 * spine.noise(9, 725, 3), 0.5)
    spine.tint(crack * 0.4, rgb(0.2, 0.15, 0.1))
    layers.caps(spine)
    return spine
