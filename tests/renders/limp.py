"""The boatbuilder's account book: limp parchment laced on with two thongs, before and after.

Offered under the GPL, version 3 or later, as well as under the project's LICENSE.
"""

from __future__ import annotations

import numpy as np

from tests.renders import bench, layers, surfaces
from tests.renders.book import Board, Book, Spine, strip, text_block
from tests.renders.paint import ITALIC, Array, rgb, step

BOOK = Book(
    tall=304,
    wide=101,
    thick=21,
    spine=22,
    rise=1.2,
    board=1.0,
    square=2.2,
    sections=6,
    joint=1.5,
    px=9,
)
SKIN = rgb(0.80, 0.715, 0.545)
STATIONS = (92.0, -92.0)


def build(state: str, view: str) -> None:
    """Set up the account book in a state, on the bench, in front of the lens."""
    after = state == "after"
    text_block(BOOK, dirt=0.35, paper=rgb(0.80, 0.73, 0.59))
    bench.ground(900)
    if state == "sewing":
        _sewing().build(every=2)
        _threads()
    else:
        _spine(after).build(every=2)
        _lacing(after)
        for side in (-1, 1):
            _cover(side, after)
    if view == "front":
        bench.from_above(BOOK.tall, BOOK.wide + 8, BOOK.top, after=after, light="raking", left=-4)
    else:
        bench.crumbs(30 if state == "before" else 0, (-10, -60), (-150, 150), (0.45, 0.40, 0.33), 3)
        bench.from_spine(BOOK.tall, BOOK.thick, BOOK.rise, after=after)


def _cover(side: int, after: bool) -> None:
    board, seed = Board(BOOK), 400 if side > 0 else 430
    paint, relief = surfaces.parchment(board, seed, SKIN)
    board.add(np.ones(board.shape, np.float32), paint, 0.05, rough=0.42, relief=relief)
    edges = step(5 - board.edge + 2 * board.noise(9, seed + 7), 0, 6)
    board.tint(edges * 0.45, rgb(0.52, 0.42, 0.29))
    if side > 0:
        for words, y in (("Wm Garrow", 92), ("His Book of Boats", 76)):
            title = board.text(words, 50, y, 9.5, face=ITALIC, turn=1.2)
            board.tint(
                board.soft(title, 0.12) * (0.7 + 0.3 * board.noise(3, 9)), rgb(0.23, 0.13, 0.07)
            )
        _corner(board, after)
        _tear(board, after)
    ridge = np.maximum(board.noise(46, seed + 11, 3), -0.25) + 0.25
    creases = np.exp(-((np.abs(board.noise(60, seed + 12, 2)) / 0.05) ** 2))
    free = np.clip(board.x / BOOK.board_wide, 0, 1)
    bend = (9.5 * ridge * free**0.7 + 0.8 * creases) if not after else 1.3 * ridge * free
    bend = bend + (5.5 * free**4 if not after else 0.6 * free**4)
    shrunk = board.build(side, bumped=0.4, bend=np.clip(bend, 0, None), thin=True)
    if not after:
        shrunk.scale = (0.945, 1, shrunk.scale[2])


def _corner(board: Board, after: bool) -> None:
    """The corner at the fore-edge and the tail that mice had: 31 by 22 mm; or its fill."""
    gone = 1 - np.maximum((BOOK.board_wide - board.x) / 22, (board.y + BOOK.tall / 2) / 31)
    gone = gone + 0.12 * board.noise(6, 21) + 0.05 * board.noise(1.5, 22)
    round_ = (
        1.25
        - np.hypot((BOOK.board_wide - board.x) / 22, (board.y + BOOK.tall / 2) / 31)
        + 0.10 * board.noise(5, 23, 4)
    )
    gnawed = np.minimum(gone + 0.3, round_)
    if not after:
        board.there = gnawed < 0
        board.tint(step(gnawed, -0.16, 0), rgb(0.36, 0.28, 0.19))
        return
    pale, relief = surfaces.parchment(board, 77, rgb(0.87, 0.81, 0.68))
    mask = step(gnawed, -0.02, 0.05)
    board.add(mask, pale, 0.0, rough=0.45, relief=relief)
    board.tint(np.exp(-((gnawed / 0.03) ** 2)) * 0.4, rgb(0.45, 0.36, 0.24))


def _tear(board: Board, after: bool) -> None:
    """The tear of 46 mm from the tail, close to the joint."""
    along = (-BOOK.tall / 2 + 46 - board.y) / 46
    far = board.x - 5 - 1.4 * board.noise(18, 25, 4)[:, :1]
    if after:
        board.tint(np.exp(-((far / 0.3) ** 2)) * step(along, 0, 0.06) * 0.6, rgb(0.35, 0.27, 0.18))
        return
    board.there &= ~((np.abs(far) < 1.7 * np.clip(along, 0, 1)) & (along > 0))
    board.tint(np.exp(-((far / 1.6) ** 2)) * step(along, 0, 0.1) * 0.7, rgb(0.40, 0.31, 0.2))


def _spine(after: bool) -> Spine:
    spine = Spine(BOOK)
    paint, relief = surfaces.parchment(spine, 410, SKIN * 0.97)
    spine.add(np.ones(spine.shape, np.float32), paint, 0.35, rough=0.42, relief=relief)
    dirt = step(spine.noise(24, 411) + 0.5 * spine.noise(3, 412), -0.15, 0.6)
    spine.tint(dirt * 0.5, rgb(0.46, 0.37, 0.26))
    spine.height += (0.9 if not after else 0.25) * np.maximum(spine.noise(30, 413, 3), -0.2)
    along = (-BOOK.tall / 2 + 46 - spine.y) / 46
    far = spine.x - BOOK.arc / 2 + 1.5 - 1.6 * spine.noise(16, 414, 4)[:, :1]
    if after:
        spine.tint(np.exp(-((far / 0.25) ** 2)) * step(along, 0, 0.05) * 0.7, rgb(0.33, 0.25, 0.16))
        return spine
    spine.there &= ~((np.abs(far) < 1.9 * np.clip(along, 0, 1)) & (along > 0))
    curl = np.exp(-np.abs(far) / 3) * np.clip(along, 0, 1)
    spine.height += 1.8 * curl
    spine.tint(curl * 0.4, rgb(0.42, 0.33, 0.22))
    return spine


def _lacing(after: bool) -> None:
    """The slips that come through the parchment beside the spine and go back in."""
    for y, whole in zip(STATIONS, (True, after), strict=True):
        colour = rgb(0.86, 0.82, 0.72) if y < 0 and after else rgb(0.74, 0.68, 0.55)
        reach = 15.0 if whole else 3.0
        u, v = np.meshgrid(np.linspace(0, 1, 60), np.linspace(-2.6, 2.6, 16))
        lift = np.sqrt(np.clip(1 - (2 * u - 1) ** 2, 0, 1)) if whole else 1 - u
        x = -2.2 + (reach + 2.5) * u
        z = (
            BOOK.top
            + (3.0 if not after else 1.2)
            + 1.3 * lift
            - (1.9 * np.clip(0.25 - u, 0, 1) / 0.25)
        )
        _slip(np.stack([x, y + v + 0.3 * np.sin(5 * u), z - 0.03 * v * v], -1), colour)


def _slip(points: Array, colour: Array) -> None:
    strip(points, colour, "slip", 95, grain=0.3)


def _sewing() -> Spine:
    """The cover off: folds, two thongs, one of them a stump with a new one beside it."""
    spine = Spine(BOOK, upper=False, lower=False)
    layers.folds(spine, clean=0.2, pale=rgb(0.79, 0.71, 0.57))
    layers.kettles(spine, 16)
    for y, new in ((92.0, False), (-92.0, False), (-85.5, True)):
        colour = rgb(0.90, 0.87, 0.79) if new else rgb(0.70, 0.62, 0.48)
        far = np.abs(spine.y - y - 0.2 * spine.noise(6, 31, 1))
        mask = step(2.5 - far, 0, 0.3)
        if new:
            mask = mask * step(spine.x + 0.5, 0, 0.3)
        elif y < 0:
            mask = mask * step(3.4 - spine.x + 0.8 * spine.noise(1.2, 33), 0, 0.4)
        spine.drape(mask, 0.8, 0.1)
        spine.add(
            mask, colour * (1 + 0.08 * spine.noise(1.5, 32))[..., None], 0.95, rough=0.7, grain=0.2
        )
        _loops(spine, y, new)
    return spine


def _loops(spine: Spine, y: float, new: bool) -> None:
    """Thread over the thong at every section it holds."""
    near = np.abs(spine.phase - np.floor(spine.phase) - 0.5)
    band = step(0.07 - near, 0, 0.02) * step(3.2 - np.abs(spine.y - y), 0, 0.4)
    if new:
        band = band * step(spine.x, 0, 0.4)
    colour = rgb(0.93, 0.91, 0.85) if new else rgb(0.66, 0.58, 0.44)
    spine.add(band, colour, 0.45, rough=0.8)


def _threads() -> None:
    """The ends of the slips, ready to go through the cover again."""
    for y, colour, reach in ((92.0, rgb(0.70, 0.62, 0.48), 26), (-85.5, rgb(0.90, 0.87, 0.79), 38)):
        u, v = np.meshgrid(np.linspace(0, 1, 60), np.linspace(-2.4, 2.4, 14))
        x = -0.6 + reach * u
        z = BOOK.middle + BOOK.spine / 2 + 0.6 + 2.6 * np.sin(2.4 * u) * u
        _slip(np.stack([x, y + v + 3 * u * u, z], -1), colour)
