"""The Lights of the Coast: two volumes in half calf, one on the other, their joints bridged.

Offered under the GPL, version 3 or later, as well as under the project's LICENSE.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from tests.renders import bench, blender, boards, layers, surfaces
from tests.renders.book import Board, Book, Spine, text_block
from tests.renders.paint import fibres, rgb, step

FIRST = Book(tall=232, wide=145, thick=34, spine=36, rise=6, board=3, square=3, sections=18, px=8)
SECOND = replace(FIRST, thick=33, spine=35, sections=17)
BANDS = (74.0, 38.0, 2.0, -34.0, -70.0)
CALF = rgb(0.38, 0.235, 0.14)


def build(state: str, _view: str) -> None:
    """Volume 1 below, volume 2 on it: before, during (tissue not yet toned) or after."""
    before = set(blender.things())
    _volume(FIRST, 1, state)
    first = set(blender.things()) - before
    _volume(SECOND, 2, state)
    for thing in set(blender.things()) - first - before:
        if thing.parent is None:
            blender.shift(thing, -2.5, 3.0, FIRST.top + 0.8)
    bench.ground(900)
    bench.crumbs(40 if state == "before" else 0, (-14, -60), (-120, 120), (0.34, 0.22, 0.14), 6)
    bench.from_spine(262, 72, FIRST.rise, after=state == "after")


def _volume(book: Book, number: int, state: str) -> None:
    text_block(book, dirt=0.35)
    _spine(book, number, state).build(every=2)
    for side in (-1, 1):
        board, seed = Board(book), 800 + 10 * number + side
        boards.sides(board, seed, surfaces.marbled(board, 801 + number, 0.6, PALETTE))
        boards.leather_edges(board, seed, strip=26, corner=30, colour=CALF)
        if side > 0:
            _joint_on(board, number, state)
        boards.worn_edges(board, seed, mended=False)
        thing = board.build(side)
        if side > 0 and number == 2 and state == "before":
            thing.location.x += 0.0018
            blender.turn(thing, 0, -0.4, -0.5)


def _joint_on(board: Board, number: int, state: str) -> None:
    """On the board: the crack's pale edge, or the paper that bridges it."""
    fine = board.noise(0.5, 830, 3)
    if state == "before":
        reach = 1.0 if number == 2 else step(board.y + 74, 0, 4)
        past = board.x - 0.9 - 1.2 * np.abs(board.noise(5, 831 + number, 5))
        board.tint(step(-past, 0, 0.4) * reach, surfaces.FLESH * (1 + 0.2 * fine)[..., None])
        return
    colour = rgb(0.90, 0.87, 0.79) if state == "during" else CALF * 1.12
    mask = step(6.0 + 0.35 * board.noise(2, 832) - board.x, -0.4, 0.3) * (np.abs(board.y) < 114)
    cover = 0.62 if state == "during" else 0.86
    board.tint(mask * cover, colour * (1 + 0.05 * board.noise(4, 833) + 0.03 * fine)[..., None])
    board.rough = board.rough * (1 - mask) + 0.75 * mask
    board.grain = board.grain * (1 - 0.8 * mask)


def _spine(book: Book, number: int, state: str) -> Spine:
    split = state == "before" and number == 2
    spine = Spine(book, upper=not split)
    layers.folds(spine)
    spine.there[:] = True
    for y in BANDS:
        spine.height += 1.1 * np.exp(-(((spine.y - y) / 1.3) ** 2))
    spine.height = spine.soft(spine.height, 0.6)
    kept = book.arc / 2 + (0.6 if split else 99) - spine.x + 0.5 * spine.noise(4, 841, 5)
    if number == 2 and state == "before":
        cap = (
            book.tall / 2
            - 1
            - spine.y
            - 8.5 * np.exp(-((spine.x / 9) ** 4))
            + 0.9 * spine.noise(4, 842, 4)
        )
        kept = np.minimum(kept, cap)
        spine.there = (kept > 0) | (spine.leafy & (np.abs(spine.x) < book.arc / 2))
    layers.old_leather(spine, kept, places=BANDS, colour=CALF, curl=0.5, seed=850 + number)
    layers.label(
        spine,
        (("THE LIGHTS", 60.5, 3.2), ("OF THE COAST", 54, 2.4)),
        45,
        69,
        16,
        kept=kept,
        rub=0.4,
    )
    layers.label(
        spine,
        ((("I" * number) + ".", 20, 8),),
        12,
        29,
        9,
        kept=kept,
        colour=rgb(0.10, 0.24, 0.17),
        rub=0.4,
    )
    _gilt(spine)
    if state == "before" and number == 1:
        far = spine.x - book.arc / 2 - 1.4 + 0.5 * spine.noise(6, 843, 4)
        spine.tint(np.exp(-((far / 0.45) ** 2)) * step(spine.y + 74, 0, 4), surfaces.FLESH)
        spine.tint(np.exp(-((far / 0.16) ** 2)) * step(spine.y + 74, 0, 4), rgb(0.10, 0.06, 0.04))
    if state != "before":
        _bridge(spine, number, state)
    layers.caps(spine)
    return spine


def _gilt(spine: Spine) -> None:
    lines = spine.flat()
    for y in BANDS:
        for off in (-2.6, 2.6):
            lines = np.maximum(lines, step(0.2 - np.abs(spine.y - y - off), -0.06, 0.06))
    layers.gild(spine, lines * (np.abs(spine.x) < spine.book.arc / 2 - 0.5), rub=0.75)


def _bridge(spine: Spine, number: int, state: str) -> None:
    """The tissue over the front joint; in the end toned, and over the head of volume 2."""
    fine, long = spine.noise(0.5, 844, 3), fibres(spine, 0.7, 5, 845, along=0.6)
    edge = spine.x - spine.book.arc / 2 + 4.5 + 0.35 * spine.noise(2, 846)
    reach = np.minimum(edge, 114.5 - np.abs(spine.y))
    if number == 2 and state == "after":
        cap = spine.y - spine.book.tall / 2 + 11 + 0.5 * spine.noise(3, 847)
        reach = np.maximum(edge, cap)
    mask = step(reach, -0.4, 0.3)
    during = state == "during"
    colour = rgb(0.90, 0.87, 0.79) if during else CALF * 1.12
    spine.drape(mask, 0.35)
    cover = np.clip((0.5 if during else 0.8) + 0.3 * long, 0, 0.95)
    spine.tint(mask * cover, colour * (1 + 0.05 * spine.noise(4, 848) + 0.03 * fine)[..., None])
    spine.rough, spine.grain = (
        spine.rough * (1 - mask) + 0.75 * mask,
        spine.grain * (1 - 0.85 * mask),
    )
    spine.there |= mask > 0.5


PALETTE = (
    rgb(0.24, 0.29, 0.25), rgb(0.46, 0.15, 0.12), rgb(0.78, 0.69, 0.50), rgb(0.20, 0.24, 0.33),
    rgb(0.80, 0.75, 0.64), rgb(0.12, 0.14, 0.13), rgb(0.50, 0.35, 0.18),
)  # fmt: skip
