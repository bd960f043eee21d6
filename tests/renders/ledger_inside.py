"""The day book from inside: the front board opened as far as its twine lets it, and the first leaf.

Offered under the GPL, version 3 or later, as well as under the project's LICENSE.
"""

from __future__ import annotations

import numpy as np

from tests.renders import blender, opening, surfaces
from tests.renders.ledger import BOOK
from tests.renders.opening import Page
from tests.renders.paint import ITALIC, Array, rgb, step

TURN_IN = 13.0
"""How far the covering comes round the edges of the board, in mm."""


def build(_state: str, _view: str) -> None:
    """The opening, lit from low on the left."""
    left, right = Page(-1, BOOK.board_wide, BOOK.tall, 4), Page(1, BOOK.wide - 2, BOOK.leaf, 4)
    _covering(left)
    _paper(left, rgb(0.80, 0.73, 0.59), TURN_IN)
    _paper(right, rgb(0.83, 0.765, 0.635), 0)
    _notes(left)
    show = surfaces.written(right, (40, 236, -170, 168), 5, size=3.1)
    right.tint(show * 0.16, rgb(0.32, 0.22, 0.14))
    left.build(58, dip=0, waves=0.5)
    right.build(BOOK.thick, dip=6, waves=1.2)
    opening.stack(1, right.width, right.tall, BOOK.thick - 1, (0.74, 0.66, 0.52))
    _support(left)
    _twine()
    opening.stage(BOOK.board_wide, BOOK.tall, 60, after=False, light="raking")


def _covering(board: Page) -> None:
    """Calf at the corners and marbled paper, as they come round the edges."""
    board.colour, board.relief = surfaces.leather(board, 207)
    corner = board.out + np.abs(board.y) > board.width + board.tall / 2 - 46
    sides = surfaces.marbled(board, 200, 0.8)
    board.tint((~corner & (board.edge < 40)).astype(np.float32), sides)


def _paper(page: Page, colour: Array, inset: float) -> None:
    """The pastedown or the leaf: browned towards its edges, spotted, dirty in the gutter."""
    paint, relief = surfaces.old_paper(page, 31 + page.side, colour)
    mask = step(page.edge - inset + 0.3 * page.noise(5, 4), -0.1, 0.1) if inset else 1 + page.flat()
    page.add(mask, paint, 0.15, rough=0.85, relief=relief)
    brown = step(26 - page.edge + inset + 8 * page.noise(30, 5), 0, 24) * 0.35
    page.tint(mask * brown, rgb(0.55, 0.41, 0.26))
    page.tint(mask * step(page.noise(2.5, 6, 2), 0.62, 0.8) * 0.35, rgb(0.50, 0.35, 0.2))
    page.shade_gutter(0.45)


def _notes(board: Page) -> None:
    """The keeper's pencil, and the stationer's ticket with its name scratched out."""
    note = board.text("Do not take from the hut", -140, 60, 13, face=ITALIC, turn=2.5)
    board.tint(board.soft(note, 0.1) * 0.85, rgb(0.33, 0.32, 0.32))
    ticket = board.inside(-243, -205, 168, 186, 0.1)
    board.add(ticket, rgb(0.50, 0.58, 0.52), 0.1, rough=0.6)
    lines = (board.text("STATIONER", -224, 180, 4), board.text("Quernmouth", -224, 172, 3.4))
    board.tint(np.maximum(*lines) * ticket * 0.8, rgb(0.12, 0.12, 0.14))
    scratched = step(board.noise(0.9, 8, 2), 0, 0.3) * board.inside(-239, -209, 174.5, 179, 0.5)
    board.tint(scratched * 0.8, rgb(0.74, 0.70, 0.6))


def _support(board: Page) -> None:
    """The board's thickness, on a cushion."""
    half = board.tall / 2
    edge = blender.plain("boards", (0.30, 0.2, 0.13), rough=0.8)
    blender.box("board", (-board.width + 1, -1), (1.5 - half, half - 1.5), (54, 57.6), edge)
    grey = blender.plain("cushion", (0.42, 0.43, 0.46), bumps_mm=1.2)
    blender.box("cushion", (-235, -12), (-170, 170), (0, 54), grey, round_mm=6)


def _twine() -> None:
    """The twine across the gutter at four holes, run along the board, knotted, its ends loose."""
    random = np.random.default_rng(12)
    paths, places = [], []
    for y in (118, 62, -48, -126):
        x, t = -20 + random.normal(0, 1.5), np.linspace(0, 1, 22)
        z = 59.2 + 5.6 * t - 2.4 * np.sin(np.pi * t) ** 2
        over = zip(t, z, strict=True)
        paths.append([(x + (9 - x) * k, y + 2 * k + 0.5 * np.sin(9 * k), h) for k, h in over])
        places.append((x, y))
    for first, second in (places[:2], places[2:]):
        paths += _knotted(first, second)
    tar = blender.plain("tar", (0.16, 0.12, 0.09), rough=0.6, bumps_mm=0.4, uneven=0.25)
    blender.twisted("twine", paths, 0.72, 0.42, tar)


def _knotted(first: tuple[float, float], second: tuple[float, float]) -> list:
    """The run between two holes, the turns of its knot, and its loose end."""
    (x0, y0), (x1, y1) = first, second
    run = [
        (x0 + (x1 - x0) * k + 1.1 * np.sin(5 * k), y0 + (y1 - y0) * k, 59.3)
        for k in np.linspace(0, 1, 30)
    ]
    turns = np.linspace(0, 4.5 * np.pi, 40)
    knot = [(x0 + 1.7 * np.cos(a), y0 + 1.5 * np.sin(a), 59.4 + 0.12 * a) for a in turns]
    ends = np.linspace(0, 1, 14)
    loose = [(x0 - 26 * k, y0 + 10 * k * k + 1.5 * np.sin(6 * k), 59.9 - 0.6 * k) for k in ends]
    return [run, knot, loose]
