"""The chapel tune book: its goatskin back of 1991, the glue under it, folds, and a back of paper.

Offered under the GPL, version 3 or later, as well as under the project's LICENSE.
"""

from __future__ import annotations

import numpy as np

from tests.renders import bench, boards, layers, surfaces
from tests.renders.book import Board, Book, Spine, text_block
from tests.renders.paint import Array, mix, rgb, step

BOOK = Book(tall=238, wide=288, thick=33, spine=36, rise=2, board=3, square=4, sections=21, px=9)
CORDS = (84.0, 42.0, 0.0, -42.0, -84.0)
GOAT, SHEEP, TONED = rgb(0.50, 0.345, 0.205), rgb(0.40, 0.27, 0.17), rgb(0.42, 0.29, 0.19)


def build(state: str, _view: str) -> None:
    """The back in one of its states: before, glue, bare, after."""
    text_block(BOOK, dirt=0.4, paper=rgb(0.78, 0.70, 0.56))
    _spine(state).build(every=2)
    for side in (-1, 1):
        if side < 0 or state in ("before", "after"):
            _board(side, state)
    bench.ground(1000)
    bench.crumbs(
        {"glue": 160, "bare": 25}.get(state, 0), (-12, -60), (-130, 130), (0.55, 0.38, 0.24), 4
    )
    bench.from_spine(310, BOOK.thick, BOOK.rise, after=state == "after")


def _board(side: int, state: str) -> None:
    board, seed = Board(BOOK), 620 + 20 * side
    worn = (
        1.1 * step(3 - board.edge, 0, 3)
        + 0.7 * step(16 - board.corner, 0, 16)
        - 0.1
        + 0.4 * board.noise(40, seed + 8)
    )
    paint, relief = surfaces.leather(board, seed, SHEEP, worn=worn)
    board.add(np.ones(board.shape, np.float32), paint, 0.1, rough=0.5, grain=0.6, relief=relief)
    depth = board.depth(7, BOOK.board_wide - 7, -BOOK.tall / 2 + 7, BOOK.tall / 2 - 7)
    fillet = step(0.35 - np.abs(depth), -0.1, 0.1)
    board.tint(fillet * 0.5, rgb(0.15, 0.10, 0.07))
    wax = step(board.noise(34, seed + 9, 2), 0.05, 0.2) * step(
        board.noise(5, seed + 10, 1), 0.93, 0.97
    )
    board.add(wax, rgb(0.84, 0.80, 0.68), 0.35, rough=0.35)
    if state == "before":
        reach = step(26 + 0.4 * board.noise(5, seed + 11) - board.x, -0.1, 0.1)
        goat, grain = surfaces.leather(board, seed + 12, GOAT, dry=0.2)
        board.add(reach, goat, 0.3, rough=0.5, grain=1, relief=grain)
        board.tint(np.exp(-(((board.x - 26.3) / 0.35) ** 2)) * 0.5, rgb(0.2, 0.13, 0.08))
    else:
        boards.paper_edge(board, seed, 22, TONED)
    boards.worn_edges(board, seed, mended=False, amount=1.2)
    board.build(side, bumped=1.1)


def _spine(state: str) -> Spine:
    covered = state in ("before", "after")
    spine = Spine(BOOK, upper=covered)
    layers.folds(spine, clean=0.7 if state != "before" else 0.2)
    layers.kettles(spine, 15)
    layers.cords(spine, CORDS, radius=1.5, proud=False)
    if state in ("before", "glue"):
        _white_glue(spine, 1.0)
    if state == "glue":
        _flesh(spine)
        return spine
    if state == "bare":
        _white_glue(spine, 0.0)
        _guards(spine)
        return spine
    spine.height = spine.soft(spine.height, 2.2)
    spine.there[:] = True
    if state == "before":
        paint, relief = surfaces.leather(spine, 640, GOAT, worn=layers.wear(spine) - 0.1, dry=0.3)
        spine.add(np.ones(spine.shape, np.float32), paint, 0.8, rough=0.45, grain=1, relief=relief)
    else:
        layers.toned_paper(spine, TONED)
    layers.caps(spine)
    return spine


def _white_glue(spine: Spine, amount: float) -> None:
    """Dispersion: a clear, rubbery, yellowish skin; where it stays, in the grooves of the middle."""
    small, fine = spine.noise(1.8, 2), spine.noise(0.5, 3, 3)
    valley = 1 - np.abs(np.sin(np.pi * (spine.phase - np.floor(spine.phase)))) ** 0.4
    middle = step(spine.phase, 6.6, 7.2) * step(14.2 - spine.phase, 0, 0.5)
    everywhere = step(spine.noise(11, 651) + 0.9 + 0.3 * small, 0, 0.2)
    mask = np.maximum(everywhere * amount, valley * middle * 0.9) * spine.there
    spine.height = mix(
        spine.height, spine.soft(spine.height, 0.5) + 0.25 * amount, np.clip(mask, 0, 1)
    )
    paint = rgb(0.80, 0.735, 0.56) * (1 + 0.05 * small + 0.03 * fine)[..., None]
    paint = paint * mix(np.ones_like(paint), np.ones_like(paint) * 0.82, valley)
    spine.add(mask * 0.8, paint, 0.1, rough=0.22, relief=0.12 * spine.noise(2.6, 652, 3))


def _flesh(spine: Spine) -> None:
    """What stayed of the goatskin when it was split off: its flesh side, in patches."""
    fine = spine.noise(0.5, 3, 3)
    left = step(spine.noise(20, 655, 5) + 0.25 * spine.noise(2, 656), 0.02, 0.16) * spine.there
    paint = rgb(0.66, 0.49, 0.32) * (1 + 0.12 * fine + 0.08 * spine.noise(2, 657))[..., None]
    spine.add(left, paint, 0.3, rough=0.95, relief=0.3 * fine)


def _guards(spine: Spine) -> None:
    """Nine folds guarded with thin paper."""
    number = np.floor(spine.phase).astype(int)
    chosen: Array = np.isin(number, (0, 1, 4, 7, 9, 11, 14, 19, 20)) & (np.abs(spine.y) < 114)
    mask = spine.soft(chosen.astype(np.float32), 0.15)
    spine.drape(mask, 0.3, 0.03)
    spine.tint(mask * 0.75, rgb(0.91, 0.88, 0.80) * (1 + 0.02 * spine.noise(1, 658))[..., None])
