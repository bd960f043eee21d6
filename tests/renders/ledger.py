"""The tide-gauge keeper's day book: half calf, tight back on recessed cords, rebacked in paper.

Offered under the GPL, version 3 or later, as well as under the project's LICENSE.
"""

from __future__ import annotations

import numpy as np

from tests.renders import bench, blender, boards, layers, surfaces
from tests.renders.book import Board, Book, Spine, endband, strip, text_block
from tests.renders.paint import Array, Field, rgb

BOOK = Book(
    tall=413, wide=260.5, thick=64, spine=68, rise=14, board=3.5, square=7.5, sections=52, px=7
)
CORDS = (132.0, 66.0, 0.0, -66.0, -132.0)
SILK = (rgb(0.55, 0.12, 0.10), rgb(0.80, 0.72, 0.55))
WASTE = (
    "1873 5.12 17.38 6.01 18.27 6.54 19.20 High Water Morn. Aft. ft. in. 14.3 13.9 12.11 Spring "
    "Neap Moon Full Quernmouth Bar Days Sat. Sun. Mon. 7.49 20.16 8.45 21.13"
)
TITLE = (("TIDES", 99.0, 11.0),)


def build(state: str, view: str) -> None:
    """Set up the ledger in a state, on the bench, in front of the lens."""
    after = state == "after"
    text_block(BOOK, dirt=0.12 if after else 0.34)
    spine = _spine(state)
    spine.build(every=2)
    _board(-1, after)
    if state in ("before", "after"):
        upper = _board(1, after)
        endband(BOOK, 1, SILK)
        endband(BOOK, -1, SILK)
        if not after:
            upper.location.x += 0.004
            blender.turn(upper, 0.1, -0.3, -1.0)
    if state == "linings":
        _overhang()
    if view == "front":
        _strap()
        if not after:
            _twine()
        bench.ground(1400)
        bench.crumbs(180 if not after else 0, (-20, -60), (-200, 200), (0.34, 0.21, 0.13), 3)
        bench.from_above(BOOK.tall, BOOK.wide + 90, BOOK.top, after=after, left=-14)
        return
    litter = {"before": 420, "bare": 90, "tissue": 12}.get(state, 0)
    bench.ground(1000)
    bench.crumbs(litter, (-19, -110), (-225, 225), (0.33, 0.20, 0.12), 3)
    bench.from_spine(BOOK.tall, BOOK.thick, BOOK.rise, after=after)


def _spine(state: str) -> Spine:
    after = state == "after"
    spine = Spine(BOOK, upper=after, lower=True)
    layers.folds(spine, clean=0.0 if state == "before" else 0.6)
    layers.kettles(spine, 22)
    layers.cords(spine, CORDS, radius=1.9, proud=False)
    if state == "before":
        layers.glue(spine, 0.45, 0.5)
        kept = _kept(spine)
        layers.old_leather(spine, kept)
        layers.blind(spine, CORDS)
        layers.label(spine, TITLE, 84, 114.5, 26, kept=kept, rub=0.75)
        layers.dust(spine, 0.22)
        return spine
    layers.waste(spine, -63, -3, WASTE)
    for shown, lay in (
        ("tissue", lambda: layers.tissue(spine, 390)),
        ("linings", lambda: layers.paper_lining(spine, 380, 74, rgb(0.72, 0.62, 0.46))),
        ("linings", lambda: layers.cloth_lining(spine, 366)),
    ):
        if state in _FROM[shown]:
            lay()
    if after:
        spine.height = spine.soft(spine.height, 2.0)
        layers.toned_paper(spine)
        layers.blind(spine, CORDS)
        layers.label(spine, TITLE, 84, 114.5, 26, rub=0.7)
        layers.caps(spine)
    return spine


_FROM = {"tissue": ("tissue", "linings", "after"), "linings": ("linings", "after")}


def _kept(spine: Spine) -> Array:
    """How far inside the surviving leather each point is: lost at head and tail, torn at the joint."""
    rough = spine.noise(9, 21, 6, 0.6) * 13 + spine.noise(1.4, 22, 4) * 1.8
    tail = (
        spine.y
        + 128
        + 0.5 * (spine.x - 4)
        + 40 * np.exp(-(((spine.x + 18) / 14) ** 2))
        + rough * 1.3
    )
    head = BOOK.leaf / 2 - 34 - 0.6 * spine.x - spine.y + rough * 1.1
    joint = BOOK.arc / 2 - 2.5 - spine.x + rough * 0.3
    hole = np.hypot((spine.y - 22) * 0.7, spine.x - BOOK.arc / 2 + 4) - 15 + rough * 0.8
    return np.minimum.reduce([tail, head, joint, hole])


def _board(side: int, after: bool) -> blender.Thing:
    board, seed = Board(BOOK), 200 if side > 0 else 300
    boards.sides(board, seed, surfaces.marbled(board, seed, 0.8))
    boards.leather_edges(board, seed, strip=0 if after else 32, corner=46)
    if after:
        boards.paper_edge(board, seed, 31, layers.TONED)
    elif side > 0:
        boards.torn_edge(board, seed)
    boards.worn_edges(board, seed, mended=after, amount=1.6)
    boards.marks_of_use(board, seed, stain=(8, -95, 66), strength=0.5 if after else 1)
    return board.build(side, bumped=0.6 if after else 1.4)


def _overhang() -> None:
    """The free edge of the linen over the first leaf, ready for the board."""
    wide = 40.0
    cloth = Field(wide, 366, 7, x0=-1.2)
    threads = surfaces.weave(cloth)
    cloth.colour = layers.LINEN * (0.80 + 0.22 * threads)[..., None]
    cloth.relief = 0.3 * threads
    slow, quick = cloth.noise(50, 5), cloth.noise(4, 6)
    free = np.clip(cloth.x / wide, 0, 1)
    lift = free**1.6 * (3.5 + 2.6 * slow + 1.4 * np.sin(cloth.y / 41))
    z = BOOK.middle + BOOK.half(cloth.x) + 0.5 + lift
    teeth = (
        0.8
        * np.sign(np.sin(2 * np.pi * cloth.y / 0.62))
        * np.random.default_rng(3).random((cloth.shape[0], 1))
    )
    there = wide - 1.6 - cloth.x + 0.5 * quick + teeth > 0
    cut = (slice(None, None, 4),) * 2
    points = np.stack([cloth.x + 0.4 * quick * free, cloth.y, z], -1)[cut]
    blender.mesh("flap", points, blender.painted("flap", cloth), there=there[cut])


def _strap() -> None:
    """The strap from the back board with its brass clasp, lying open beside the fore-edge."""
    u, v = np.meshgrid(np.linspace(0, 1, 80), np.linspace(-12, 12, 30))
    x = BOOK.wide - 6 + 92 * u
    z = (
        4.2 * np.exp(-((u / 0.35) ** 2))
        + 0.9
        + 1.6 * np.exp(-(((u - 0.6) / 0.2) ** 2))
        + 0.15 * (v / 12) ** 2
    )
    strip(
        np.stack([x, v * (1 - 0.12 * u) + 2 * u, z], -1), surfaces.CALF * 1.05, "strap", 91, grain=1
    )
    brass = blender.plain(
        "brass", (0.62, 0.47, 0.22), rough=0.38, metal=0.9, bumps_mm=0.8, uneven=0.2
    )
    end = BOOK.wide + 86
    blender.box("clasp", (end - 14, end + 5), (-8.5, 12.5), (0.6, 2.4), brass, round_mm=0.5)
    blender.box("hook", (end + 5, end + 13), (-2, 6), (0.5, 1.6), brass, round_mm=0.4)


def _twine() -> None:
    """Net twine through the front board and over its edge into the first sections."""
    random = np.random.default_rng(11)
    tar = blender.plain("tar", (0.16, 0.12, 0.09), rough=0.6, bumps_mm=0.4, uneven=0.25)
    top, paths = BOOK.top + 1.2, []
    holes = [(BOOK.joint + 17 + random.normal(0, 1.2), y) for y in (118, 62, -48, -126)]
    for x, y in holes:
        bend = np.linspace(0, 1, 14)
        over = top + 0.6 * np.sin(np.pi * bend) - 5 * np.clip(bend - 0.8, 0, 1) / 0.2
        paths.append([(x - (x + 2.5) * t, y + 2.5 * t, z) for t, z in zip(bend, over, strict=True)])
    for (x0, y0), (x1, y1) in (holes[:2], holes[2:]):
        t = np.linspace(0, 1, 24)
        sag = 0.9 * np.sin(np.pi * t * 3)
        paths.append(
            [(x0 + (x1 - x0) * k + s, y0 + (y1 - y0) * k, top) for k, s in zip(t, sag, strict=True)]
        )
    blender.twisted("twine", paths, 0.75, 0.45, tar)
