"""Books cased in cloth: the pilot's guide of 1984 and 2026, the Lamp Boat, the Sea Garden.

Offered under the GPL, version 3 or later, as well as under the project's LICENSE.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

import numpy as np
from PIL import ImageDraw

from tests.renders import bench, blender, layers, surfaces
from tests.renders.book import Board, Book, Spine, text_block
from tests.renders.paint import BOLD, SERIF, Array, Field, line, mix, rgb, step


class Cased(NamedTuple):
    """A book in a cloth case: its form, its cloth, and what is stamped on it."""

    book: Book
    cloth: Array
    seed: int
    stamp: Callable[[Board], tuple[Array, Array]]
    """Gold and black (or blind) of the front board, as masks."""
    title: tuple[tuple[str, float, float], ...]
    tapes: tuple[float, ...] = ()
    joint: Array | None = None
    """The colour of a new cloth along the joints; None where it has its own."""
    over: float = 0.0
    """How far the new cloth lies over the old one of the boards; under it where nought."""


def build(state: str, view: str) -> None:
    """`guide-2026`, `lamp-before`, `lamp-bare`, `lamp-hollow`, `lamp-after`, `sea-before` …"""
    name, stage = state.split("-")
    made = {"guide": GUIDE, "lamp": LAMP, "sea": SEA}[name]
    after = stage in ("after", "2026")
    text_block(made.book, dirt=0.3, paper=rgb(0.81, 0.74, 0.61))
    if stage in ("bare", "hollow"):
        _bare(made, stage).build(every=2)
    else:
        _spine(made, stage).build(every=2)
    if stage not in ("bare", "hollow"):
        upper = _board(made, stage, 1)
        if made.joint is not None and not made.over and after:
            _joint(made, made.joint)
        if stage == "before" and name == "lamp":
            upper.location.x += 0.0025
            blender.turn(upper, 0, -0.6, -0.8)
    if stage == "hollow":
        _wings(made.book)
    _board(made, stage, -1)
    if name == "sea" and after:
        _film(made.book)
    bench.ground(900)
    if view == "front":
        bench.from_above(made.book.tall, made.book.wide + 6, made.book.top, after=after, left=-8)
    else:
        bench.crumbs(25 if stage == "before" else 0, (-8, -50), (-100, 100), (0.45, 0.36, 0.3), 5)
        bench.from_spine(made.book.tall, made.book.thick, made.book.rise, after=after)


def _board(made: Cased, stage: str, side: int) -> blender.Thing:
    board, seed = Board(made.book), made.seed + 20 * side
    worn = 1.1 * step(2.0 - board.edge, 0, 2.2) + 0.8 * step(9 - board.corner, 0, 9) - 0.1
    paint, relief = surfaces.book_cloth(board, made.cloth, seed, worn=worn, fade=0.12)
    board.add(np.ones(board.shape, np.float32), paint, 0.05, rough=0.6, relief=relief)
    if side > 0:
        gold, black = made.stamp(board)
        rubbed = (
            0.75 + 0.3 * board.noise(4, seed + 5) - 0.4 * step(board.noise(14, seed + 6), 0.2, 0.6)
        )
        board.tint(black * np.clip(rubbed, 0, 1) * 0.85, rgb(0.07, 0.06, 0.06))
        board.relief = board.relief - 0.3 * np.maximum(gold, black)
        board.tint(gold * np.clip(rubbed, 0, 1) * 0.9, surfaces.GOLD)
        board.metal = np.maximum(board.metal, gold * 0.9 * np.clip(rubbed, 0, 1))
        board.rough = mix(board.rough, 0.35, gold)
    if made.over and made.joint is not None and stage in ("after", "2026"):
        paint, relief = surfaces.book_cloth(board, made.joint, seed + 3, worn=worn * 0, fade=0.0)
        board.add(
            step(made.over - board.x + 0.1 * board.noise(3, 8), -0.06, 0.06),
            paint,
            -0.04,
            rough=0.65,
            relief=relief,
        )
        board.tint(
            np.exp(-(((board.x - made.over - 0.2) / 0.25) ** 2)) * 0.5, rgb(0.12, 0.10, 0.08)
        )
    groove = np.exp(-(((board.x - 4.5) / 1.6) ** 2))
    board.height -= 0.3 * groove
    board.tint(groove * 0.25, made.cloth * 0.5)
    _handling(board, seed)
    if made is SEA:
        spots = step(board.noise(9, seed + 30, 5), 0.18, 0.5) * step(
            18 - np.minimum(board.edge, board.x), 0, 20
        )
        board.tint(spots * 0.55, rgb(0.62, 0.66, 0.48))
        _split(board, side)
    bare = step(1.6 - board.corner + 1.2 * board.noise(2.4, seed + 9), 0, 0.9)
    board.add(bare, surfaces.BOARD, -0.2, rough=0.9)
    return board.build(side, bumped=0.9)


def _handling(board: Board, seed: int) -> None:
    """Grime where hands lay, pale scuffs, a few drops of something."""
    small = board.noise(3, seed + 41)
    grime = step(board.noise(26, seed + 40) + 0.35 * small, 0.05, 0.9) * 0.32
    board.tint(grime, rgb(0.17, 0.13, 0.09))
    scuff = step(
        board.noise(8, seed + 42, 6, 0.65) + 0.2 * board.noise(0.5, seed + 43, 1), 0.26, 0.5
    )
    near = step(26 - np.minimum(board.edge, board.x), 0, 30)
    board.tint(scuff * (0.12 + 0.3 * near), rgb(0.66, 0.60, 0.47))
    drops = step(board.noise(5, seed + 44, 1), 0.955, 0.97) * 0.4
    board.tint(drops, rgb(0.15, 0.11, 0.08))


def _split(board: Board, side: int) -> None:
    """The cloth split along the joint from the head, its green rubbed away beside it."""
    far = board.x - 3.4 - 0.7 * board.noise(14, 71, 4)
    reach = step(board.y - 6, 0, 5) * (1 if side > 0 else 0)
    board.tint(
        np.exp(-np.abs(far) / 2.2) * 0.5 * (0.6 + 0.5 * board.noise(3, 72)), rgb(0.60, 0.60, 0.44)
    )
    board.add(step(0.75 - np.abs(far), -0.1, 0.2) * reach, surfaces.BOARD * 0.8, -0.3, rough=0.95)


def _spine(made: Cased, stage: str) -> Spine:
    """The cloth of the back: its own, or laid on a new one that shows along the joints."""
    split = stage == "before"
    spine = Spine(made.book, upper=not split)
    book, fine = made.book, spine.noise(0.5, 3, 3)
    worn = layers.wear(spine) + 0.25
    old = rgb(0.30, 0.30, 0.17) if made is GUIDE else made.cloth
    paint, relief = surfaces.book_cloth(
        spine, old, made.seed + 7, worn=worn, fade=0.45 if made is GUIDE else 0.3
    )
    if made.joint is not None and not split:
        new, new_relief = surfaces.book_cloth(spine, made.joint, made.seed + 3, worn=worn * 0)
        spine.add(np.ones(spine.shape, np.float32), new, 0.3, rough=0.65, relief=new_relief)
        edge = np.minimum(book.arc / 2 - 0.6 - np.abs(spine.x), book.tall / 2 - np.abs(spine.y) - 1)
        kept = np.minimum(edge + 0.5 * spine.noise(3, 61, 4) + 0.2, _head(spine))
        mask = step(kept, 0, 0.12)
        spine.tint(np.exp(-((kept / 0.25) ** 2)) * 0.5, rgb(0.16, 0.13, 0.1))
        spine.add(mask, paint, 0.28, rough=0.6, relief=relief)
    else:
        layers.folds(spine)
        mill = rgb(0.74, 0.66, 0.52) * (1 + 0.1 * fine)[..., None]
        spine.there[:] = True
        kept = np.minimum(
            book.arc / 2 + 1.2 - spine.x + 0.9 * np.abs(spine.noise(4, 62, 5)) * -1, _head(spine)
        )
        if not split:
            kept = _head(spine)
        spine.there = (kept > 0) | (spine.leafy & (np.abs(spine.x) < book.arc / 2))
        layers.glue(spine, 0.3, 0.1)
        spine.drape(step(kept, 0, 0.2), 1.6)
        spine.add(step(kept, 0, 0.2), mill, 0.3)
        spine.add(step(kept - 0.25, 0, 0.2), paint, 0.2, rough=0.6, relief=relief)
        fray = (
            step(kept, -0.9, 0.1)
            * step(0.7 - kept, 0, 0.4)
            * step(np.sin(spine.x * 9 + 5 * fine), 0.1, 0.8)
        )
        spine.tint(fray * 0.5, made.cloth * 1.25)
    gold = np.max([spine.text(w, 0, y, size, face=BOLD) for w, y, size in made.title], axis=0)
    for y in (book.tall / 2 - 9, -book.tall / 2 + 9, book.tall / 2 - 11, -book.tall / 2 + 11):
        gold = np.maximum(gold, line(spine.y - y, 0.35) * (np.abs(spine.x) < book.arc / 2 - 1))
    layers.gild(spine, gold * step(kept, 0.3, 0.6), rub=0.7)
    layers.caps(spine)
    return spine


def _head(spine: Spine) -> Array:
    """What is left at the head: in threads, some of it gone."""
    far = spine.book.tall / 2 - 1.5 - spine.y
    return (
        far
        - 3.2 * np.exp(-((spine.x / (spine.book.arc * 0.3)) ** 2))
        + 1.1 * spine.noise(3, 63, 4)
        + 2
    )


def _bare(made: Cased, stage: str) -> Spine:
    spine, book = Spine(made.book, upper=False), made.book
    layers.folds(spine, clean=0.7)
    layers.kettles(spine, 12)
    for y in made.tapes:
        mask = step(6.5 - np.abs(spine.y - y), 0, 0.4)
        threads = surfaces.weave(spine, 0.5)
        spine.drape(mask, 0.3)
        spine.add(
            mask,
            rgb(0.80, 0.75, 0.63) * (0.8 + 0.22 * threads)[..., None],
            0.35,
            rough=0.9,
            relief=0.3 * threads,
        )
        near = np.abs(spine.phase - np.floor(spine.phase) - 0.5)
        over = step(0.055 - near, 0, 0.03) * mask
        spine.add(over, rgb(0.83, 0.79, 0.68), 0.3, rough=0.8)
    if stage == "hollow":
        layers.tissue(spine, 180)
        cloth = spine.inside(-99, 99, -85, 85, 0.05)
        threads = surfaces.weave(spine, 0.45)
        spine.drape(cloth, 0.8, 0.05)
        spine.add(
            cloth,
            rgb(0.88, 0.86, 0.80) * (0.84 + 0.18 * threads)[..., None],
            0.2,
            rough=0.9,
            relief=0.25 * threads,
        )
        layers.paper_lining(spine, 182, book.arc - 0.6, rgb(0.82, 0.75, 0.62))
        edge = np.abs(np.abs(spine.x) - book.arc / 2 + 0.5)
        spine.height += 0.55 * step(0.7 - edge, 0, 0.6) * (np.abs(spine.y) < 91)
    return spine


def _wings(book: Book) -> None:
    """The free edge of the cloth strip over the first leaf."""
    cloth = Field(22, 170, 8, x0=-0.6)
    threads = surfaces.weave(cloth, 0.45)
    cloth.colour = rgb(0.88, 0.86, 0.80) * (0.84 + 0.18 * threads)[..., None]
    cloth.relief = 0.25 * threads
    free = np.clip(cloth.x / 22, 0, 1)
    z = (
        book.middle
        + book.half(cloth.x)
        + 0.4
        + free**1.5 * (1.6 + 1.5 * cloth.noise(40, 5) + 0.8 * np.sin(cloth.y / 23))
    )
    cut = (slice(None, None, 3),) * 2
    blender.mesh("wing", np.stack([cloth.x, cloth.y, z], -1)[cut], blender.painted("wing", cloth))


def _joint(made: Cased, colour: Array) -> None:
    """The new cloth from the shoulder of the back to the board, in under the old cloth's edge."""
    book, cloth = made.book, Field(7.4, made.book.tall - 0.6, 10, x0=0.2)
    cloth.colour, cloth.relief = surfaces.book_cloth(
        cloth, colour, made.seed + 3, worn=cloth.flat()
    )
    cloth.tint(np.exp(-(((cloth.x - 3.4) / 1.3) ** 2)) * 0.3, rgb(0.10, 0.07, 0.06))
    low, up = book.middle + book.spine / 2 + 0.35, step(cloth.x, 1.2, 6.2)
    z = low + (book.top + 0.12 - low) * up - 0.5 * np.exp(-(((cloth.x - 3.4) / 1.2) ** 2))
    points = np.stack([cloth.x, cloth.y, z], -1)[::3, ::3]
    blender.mesh("joint", points, blender.painted("joint", cloth))


def _film(book: Book) -> None:
    """A jacket of clear film over the board, its folds catching the light."""
    u, v = np.meshgrid(
        np.linspace(-2, book.board_wide + 5, 60),
        np.linspace(-book.tall / 2 - 0.5, book.tall / 2 + 0.5, 90),
    )
    ripple = 0.5 * np.sin(u / 17 + v / 60) * np.sin(v / 37) + 0.7
    points = np.stack([u, v, book.top + 0.9 + ripple], -1)
    blender.mesh("film", points, blender.film("film"))


def _anchor(board: Board) -> tuple[Array, Array]:
    """Blind panel lines and a blind anchor."""
    depth = board.depth(8, board.book.board_wide - 8, -board.tall / 2 + 13, board.tall / 2 - 13)
    blind = np.maximum(line(depth, 0.5), line(depth - 3, 0.25))
    cx = (board.book.board_wide + 6) / 2

    def draw(pen: ImageDraw.ImageDraw, on: Field) -> None:
        wide = int(1.6 * on.px)
        pen.line([on.at(cx, 22), on.at(cx, -24)], fill=255, width=wide)
        pen.line([on.at(cx - 10, 14), on.at(cx + 10, 14)], fill=255, width=wide)
        pen.arc([*on.at(cx - 18, 12), *on.at(cx + 18, -24)], 20, 160, fill=255, width=wide)
        pen.ellipse([*on.at(cx - 4, 30), *on.at(cx + 4, 22)], outline=255, width=wide)

    return board.flat(), np.maximum(blind, board.drawn(draw)) * 0.5


def _boat(board: Board) -> tuple[Array, Array]:
    """A rowing boat with a lamp on three waves, and the title in gold."""
    cx = board.book.board_wide / 2 + 2
    gold = board.text("THE LAMP BOAT", cx, 62, 10.5, face=BOLD)
    gold = np.maximum(gold, board.text("A. M. THORNE", cx, -76, 5, face=SERIF))
    lamp = np.hypot(board.x - cx - 12, board.y - 14)
    rays = (
        step(np.cos(12 * np.arctan2(board.y - 14, board.x - cx - 12)), 0.6, 0.9)
        * (lamp > 8)
        * step(19 - lamp, 0, 3)
    )
    gold = np.maximum.reduce([gold, step(5 - lamp, 0, 0.3), rays])
    hull = np.maximum(np.abs(board.x - cx) / 34, 0) ** 3 * 9
    boat = (
        step(board.y + 20 - hull, -0.3, 0.3)
        * step(-6 - board.y + hull * 0.9, -0.3, 0.3)
        * (np.abs(board.x - cx) < 34)
    )
    black = boat
    for k in range(3):
        wave = board.y + 27 + 7 * k - 2.2 * np.sin((board.x + 9 * k) / 7)
        black = np.maximum(black, line(wave, 0.8) * (np.abs(board.x - cx) < 46))
    mast = line(board.x - cx - 12, 0.6) * (board.y > -8) * (board.y < 9)
    depth = board.depth(7, board.book.board_wide - 5, -board.tall / 2 + 11, board.tall / 2 - 11)
    return gold, np.maximum.reduce([black, mast, line(depth, 0.7), line(depth - 2.6, 0.25)])


def _weed(board: Board) -> tuple[Array, Array]:
    """A SEA GARDEN in gold over a branching weed, in a blind frame."""
    cx, random = board.book.board_wide / 2 + 2, np.random.default_rng(8)

    def draw(pen: ImageDraw.ImageDraw, on: Field) -> None:
        def grow(x: float, y: float, turn: float, long: float, left: int) -> None:
            nx, ny = x + long * np.sin(turn), y + long * np.cos(turn)
            pen.line([on.at(x, y), on.at(nx, ny)], fill=255, width=max(2, int(0.34 * left * on.px)))
            if left:
                for side in (-1, 1):
                    grow(nx, ny, turn + side * (0.25 + 0.3 * random.random()), long * 0.8, left - 1)

        grow(cx, -46, 0.0, 17, 6)

    gold = np.maximum(board.drawn(draw), board.text("A SEA GARDEN", cx, 78, 12, face=BOLD))
    depth = board.depth(9, board.book.board_wide - 7, -board.tall / 2 + 14, board.tall / 2 - 14)
    return gold, np.maximum(line(depth, 1.0), line(depth - 4, 0.4)) * 0.35


GUIDE = Cased(
    Book(tall=184, wide=117, thick=28, spine=31, rise=4.5, board=2.8, square=2.8, sections=20),
    rgb(0.11, 0.36, 0.22), 500, _anchor,
    (("COASTING", 58, 4.4), ("PILOT'S", 50, 4.4), ("GUIDE", 42, 4.4), ("⚓", 8, 15)),
    joint=rgb(0.70, 0.64, 0.42), over=12,
)  # fmt: skip
LAMP = Cased(
    Book(tall=190, wide=126, thick=26, spine=27, rise=4, board=2.5, square=3, sections=13),
    rgb(0.40, 0.105, 0.095), 540, _boat,
    (("THE", 62, 4.2), ("LAMP", 54, 5.6), ("BOAT", 46, 5.6), ("BELL", -72, 3.6)),
    tapes=(34.0, -34.0), joint=rgb(0.31, 0.10, 0.09),
)  # fmt: skip
SEA = Cased(
    Book(tall=252, wide=195, thick=25, spine=30, rise=4, board=3, square=3, sections=10, px=8),
    rgb(0.08, 0.47, 0.29), 580, _weed, (("SEA", 60, 6), ("GARDEN", 51, 4.6)),
)  # fmt: skip
