"""What covers boards: half leather over marbled paper, cloth, and the wear of them.

Offered under the GPL, version 3 or later, as well as under the project's LICENSE.
"""

from __future__ import annotations

import numpy as np

from tests.renders import surfaces
from tests.renders.book import Board
from tests.renders.paint import Array, mix, rgb, step


def sides(board: Board, seed: int, paint: Array, *, rubbed: float = 1.0) -> None:
    """Decorated paper over the whole board, aged and scuffed."""
    wide, small, fine = (
        board.noise(14, seed),
        board.noise(2.4, seed + 1),
        board.noise(0.5, seed + 2, 3),
    )
    paint = np.clip(paint * (1 + 0.10 * wide + 0.06 * small + 0.06 * fine)[..., None], 0, 1)
    paint = mix(paint, paint * 0 + rgb(0.60, 0.50, 0.36), np.full(board.shape, 0.16, np.float32))
    near = 0.035 * np.clip(board.edge, 0, 30)
    rub = step(small * 0.5 + fine * 0.45 + board.noise(6, seed + 4) * 0.7 - near + 0.25, 0.12, 0.6)
    scuff = step(
        board.noise(9, seed + 5, 6, 0.62) + 0.25 * board.noise(0.4, seed + 6, 1), 0.22, 0.45
    )
    pale = rgb(0.66, 0.58, 0.46) * (1 + 0.08 * fine)[..., None]
    worn = np.clip((board.soft(rub, 0.3) * 0.5 + board.soft(scuff, 0.24) * 0.42) * rubbed, 0, 0.8)
    board.add(
        np.ones(board.shape, np.float32),
        mix(paint, pale, worn),
        0.08,
        rough=0.52,
        relief=-0.06 * rub + 0.02 * fine,
    )


def leather_edges(
    board: Board, seed: int, *, strip: float, corner: float, colour: Array = surfaces.CALF,
    dry: float = 1.0,
) -> None:  # fmt: skip
    """Leather along the joint for `strip` mm and over the corners for `corner` mm."""
    book, small = board.book, board.noise(2.4, seed + 1)
    worn = step(2.6 - board.edge, 0, 2.8) - 0.2 + 0.3 * board.noise(14, seed)
    paint, relief = surfaces.leather(board, seed + 7, colour, worn=worn, dry=dry)
    past = board.x + np.abs(board.y) - (book.board_wide + book.tall / 2 - corner)
    mask = np.maximum(
        step(strip + 0.15 * small - board.x, -0.08, 0.08) if strip else 0,
        step(past + 0.15 * small, -0.08, 0.08) if corner else 0,
    )
    pressed = np.maximum(
        step(0.22 - np.abs(board.x - strip + 2), -0.05, 0.08),
        step(0.22 - np.abs(past - 2.6), -0.05, 0.08),
    )
    paint = paint * (1 - 0.35 * pressed)[..., None]
    board.add(mask, paint, 0.28, rough=0.46, grain=1, relief=relief - 0.25 * pressed)


def paper_edge(board: Board, seed: int, wide: float, colour: Array) -> None:
    """Toned paper along the joint, its edge under the sides: flat, fibrous, without grain."""
    small, fine = board.noise(2.4, seed + 1), board.noise(0.5, seed + 2, 3)
    mask = step(wide + 0.1 * small - board.x, -0.08, 0.08)
    paint = colour * (1 + 0.08 * board.noise(14, seed) + 0.05 * small + 0.04 * fine)[..., None]
    board.add(mask, paint, 0.02, rough=0.62, grain=0.15, relief=0.05 * fine)


def torn_edge(board: Board, seed: int) -> None:
    """Flesh and bare board where the leather broke along the joint."""
    fine = board.noise(0.5, seed + 2, 3)
    past = board.x - 1.2 - 3.5 * np.abs(board.noise(4, seed + 31, 6, 0.6))
    torn = step(-past, 0, 0.5)
    board.add(
        torn,
        surfaces.FLESH * 0.85 * (1 + 0.2 * fine)[..., None],
        -0.25,
        rough=0.95,
        relief=0.3 * fine,
    )
    board.tint(np.exp(-((past / 0.35) ** 2)) * 0.6, surfaces.FLESH)


def worn_edges(board: Board, seed: int, *, mended: bool, amount: float = 1.0) -> None:
    """Bare board at corners and edges; toned down where mended."""
    wide, small, fine = (
        board.noise(14, seed),
        board.noise(2.4, seed + 1),
        board.noise(0.5, seed + 2, 3),
    )
    bare = step(2.2 * amount - board.corner + 1.6 * small + fine + 0.8 * wide, 0, 0.9)
    edge = step(
        0.55 * amount - np.abs(board.edge) + 0.9 * small + 0.5 * fine + 0.7 * wide, 0.25, 0.7
    )
    mask = np.clip(bare + edge * 0.8, 0, 1) * (0.62 if mended else 1)
    board.add(
        mask,
        surfaces.BOARD * (1 + 0.14 * fine + 0.08 * small)[..., None],
        -0.2,
        rough=0.9,
        relief=0.15 * fine,
    )
    if mended:
        board.tint(np.clip(mask, 0, 1) * 0.55, rgb(0.40, 0.27, 0.17))


def marks_of_use(
    board: Board, seed: int, *, stain: tuple[float, float, float], strength: float = 1.0
) -> None:
    """A damp stain from the fore-edge (x from it, y, radius) and grey dust."""
    away, y, radius = stain
    edge = np.hypot((board.x - board.book.board_wide - away) * 0.9, (board.y - y) * 0.75) - radius
    surfaces.tideline(board, edge + 9 * board.noise(11, seed + 9), rgb(0.25, 0.17, 0.10), strength)
    board.tint(
        step(board.noise(0.8, seed + 10, 4), 0.12, 0.5) * 0.14 * strength, rgb(0.66, 0.61, 0.53)
    )
