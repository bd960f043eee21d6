"""A bound book's form in mm: text block, spine profile, boards, endbands, and their meshes.

The book lies on its back board: x runs from spine to fore-edge, y from tail to head, z upwards.
Offered under the GPL, version 3 or later; see LICENSE for the rest.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from tests.renders import blender
from tests.renders.paint import Array, Field, mix, noise, resized, rgb, step

PAPER = rgb(0.80, 0.73, 0.60)


@dataclass(frozen=True)
class Book:
    """Measures of a bound book in mm, as its record gives them."""

    tall: float
    """Height of a board."""
    wide: float
    """Width of the leaves, from the folds to the fore-edge."""
    thick: float
    """Thickness of the text block."""
    spine: float
    """Straight across the back."""
    rise: float
    board: float = 3.0
    square: float = 3.2
    sections: int = 22
    joint: float = 3.6
    """Where the board's edge begins, from the folds."""
    px: float = 10.0
    """Pixels per mm of the spine; the boards have half as many."""

    @property
    def leaf(self) -> float:
        """Height of the leaves."""
        return self.tall - 2 * self.square

    @property
    def radius(self) -> float:
        """Radius of the spine's curve."""
        return (self.spine**2 / 4 + self.rise**2) / (2 * self.rise)

    @property
    def angle(self) -> float:
        """Half the angle of the spine's curve."""
        return math.asin(self.spine / 2 / self.radius)

    @property
    def arc(self) -> float:
        """Along the spine's curve."""
        return 2 * self.angle * self.radius

    @property
    def board_wide(self) -> float:
        """Width of a board."""
        return self.wide + self.square - self.joint

    @property
    def middle(self) -> float:
        """Height of the middle of the text block over the bench."""
        return self.board + self.thick / 2

    @property
    def top(self) -> float:
        """Height of the upper board over the bench."""
        return self.middle + self.thick / 2 + self.board

    def half(self, x: Array) -> Array:
        """Half the thickness of the text block at a distance from the folds."""
        more = self.spine / 2 - self.thick / 2
        return self.thick / 2 + more * np.exp(-((np.clip(x, 0, None) / 2.6) ** 2))

    def block(self, along: Array, across: Array) -> tuple[Array, Array]:
        """x and z in the text block: `along` 0 at the folds, 1 at the fore-edge; `across` ±1."""
        deep = np.sqrt(self.radius**2 - (across * self.spine / 2) ** 2)
        start = -(deep - (self.radius - self.rise))
        end = self.wide - self.rise * 0.75 * (1 - across * across)
        x = start + along * (end - start)
        return x, across * self.half(x + self.rise * (1 - across * across) * 0)


class Spine(Field):
    """The spine laid out flat: `x` is the distance along its curve from the middle, `y` up.

    `phase` counts the sections from the lower joint, once their folds are painted.

    `upper` and `lower`: whether what covers it runs on over that joint to the board.
    """

    def __init__(self, book: Book, *, upper: bool = True, lower: bool = True) -> None:
        self.book = book
        self.path, left = _profile(book, upper, lower)
        self.phase: Array = np.zeros(0)
        super().__init__(len(self.path) / book.px, book.tall, book.px, x0=left)
        self.leafy = np.abs(self.y) < book.leaf / 2 - 0.2

    def build(self, name: str = "spine", every: int = 2) -> blender.Thing:
        """Bend it round its profile, push it out by its height, and hand it to Blender."""
        rows, columns = (np.arange(0, n, every) for n in self.shape)
        tangent = np.gradient(self.path, axis=0)
        tangent /= np.linalg.norm(tangent, axis=1, keepdims=True) + 1e-9
        out = np.stack([-tangent[:, 1], tangent[:, 0]], 1)[columns]
        at, high = self.path[columns], self.height[np.ix_(rows, columns)]
        x = at[None, :, 0] + out[None, :, 0] * high
        z = at[None, :, 1] + out[None, :, 1] * high + self.book.middle
        y = self.y[np.ix_(rows, columns)]
        there = self.there[np.ix_(rows, columns)]
        return blender.mesh(name, np.stack([x, y, z], -1), blender.painted(name, self), there=there)


def _profile(book: Book, upper: bool, lower: bool) -> tuple[Array, float]:
    """Points every pixel from lower joint round the spine to upper joint, and where they begin."""
    angles = np.linspace(-book.angle, book.angle, 400)
    flat = book.radius - book.rise
    arc = np.stack([flat - book.radius * np.cos(angles), book.radius * np.sin(angles)], 1)
    low = _joint(book, -1)[::-1] if lower else _joint(book, -1)[[2, 1, 0]]
    high = _joint(book, 1) if upper else _joint(book, 1)[[0, 1, 2]]
    points = np.concatenate([low[:-1], arc, high[1:]])
    length = np.concatenate([[0], np.cumsum(np.hypot(*np.diff(points, axis=0).T))])
    at = np.arange(0, length[-1], 1 / book.px)
    path = np.stack([np.interp(at, length, points[:, axis]) for axis in (0, 1)], 1)
    reach = 9
    weights = np.exp(-(np.linspace(-2, 2, 2 * reach + 1) ** 2))
    padded = np.pad(path, ((reach, reach), (0, 0)), "edge")
    smooth = [np.convolve(padded[:, k], weights / weights.sum(), "valid") for k in (0, 1)]
    return np.stack(smooth, 1), -float(length[len(low) - 1]) - book.arc / 2


def _joint(book: Book, side: int) -> Array:
    edge, top = book.spine / 2, book.thick / 2 + book.board
    points = [[0, edge], [1.1, edge - 0.1], [2, edge - 0.5], [3, edge - 0.4]]
    points += [[4, max(top - 0.7, edge - 1.5)], [book.joint + 2.4, top - 0.6]]
    return np.array(points) * [1, side]


def text_block(book: Book, *, dirt: float = 0.3, paper: Array = PAPER, stains: bool = True) -> None:
    """The leaves: head, tail and fore-edge with every leaf's edge, and the outer leaves."""
    for side in (-1, 1):
        _edge(book, side, dirt if side > 0 else dirt / 2)
        _outer_leaf(book, side, paper, stains)
    _edge(book, 0, dirt / 2.5)


def _edge(book: Book, side: int, dirt: float) -> None:
    """Head (1), tail (-1) or fore-edge (0) of the leaves."""
    leaves, along = 500, 90
    field, out = _edge_field(book, leaves * 2, 900, 61 + side, dirt)
    out = resized(out, (leaves, along))
    u, across = np.meshgrid(np.linspace(0, 1, along), np.linspace(-1, 1, leaves))
    if side:
        x, z = book.block(u, across)
        y = side * (book.leaf / 2 + out)
    else:
        x, z = book.block(np.ones_like(u), across)
        x, y = x + out, (u - 0.5) * book.leaf
    points = np.stack([x, y, z + book.middle], -1)
    material = blender.painted("edge", field, relief_mm=0.25)
    blender.mesh("edge", points, material, flip=side > 0)


def _edge_field(book: Book, h: int, w: int, seed: int, dirt: float) -> tuple[Field, Array]:
    random = np.random.default_rng(seed)
    field = Field(w, h, 1)
    leaf = np.repeat(random.normal(0, 1, h // 2 + 1), 2)[:h, None]
    groove = np.abs(((np.arange(h) / h * book.sections) % 1) - 0.5)[:, None] * 2
    long = resized(random.normal(0, 1, (h, max(2, w // 40))), (h, w))
    wide, small = noise(field.shape, 160, seed), noise(field.shape, 30, seed + 1)
    value = 0.09 * leaf + 0.07 * long - 0.28 * step(groove, 0.86, 1)
    paint = rgb(0.76, 0.66, 0.49) * (1 + value + 0.07 * small + 0.06 * wide)[..., None]
    field.colour = np.clip(paint, 0, 1)
    field.tint(np.clip(dirt + 0.25 * wide + 0.25 * small, 0, 0.75), rgb(0.36, 0.27, 0.18))
    field.relief = 0.35 * leaf + 0.2 * long - 0.5 * step(groove, 0.86, 1)
    return field, 0.10 * leaf + 0.05 * long - 0.25 * step(groove, 0.85, 1)


def _outer_leaf(book: Book, side: int, paper: Array, stains: bool) -> None:
    field = Field(book.wide, book.leaf, min(6.0, 1200 / book.leaf), x0=0)
    wide, small, fine = field.noise(20, 70), field.noise(3.3, 71), field.noise(0.7, 72, 3)
    field.colour = paper * (1 + 0.04 * wide + 0.03 * small + 0.03 * fine)[..., None]
    edge = np.minimum(book.wide - field.x, book.leaf / 2 - np.abs(field.y))
    if stains:
        field.tint(step(9 - edge + 3 * small + 4 * wide, 0, 9) * 0.5, rgb(0.50, 0.36, 0.22))
        field.tint(step(7 - field.x + 3 * small, 0, 6) * 0.55, rgb(0.45, 0.31, 0.18))
        spots = (field.noise(1.2, 73, 1) > 0.86) * 0.35 * step(wide, 0, 0.4)
        field.tint(spots, rgb(0.45, 0.30, 0.16))
    field.relief = 0.1 * small
    u, y = np.meshgrid(np.linspace(0, 1, 60), np.linspace(-book.leaf / 2, book.leaf / 2, 60))
    x, z = book.block(u, np.full_like(u, side))
    lift = side * (0.12 + 0.25 * np.maximum(resized(wide, (60, 60)), -0.2) * u)
    points = np.stack([x, y, z + lift + book.middle], -1)
    blender.mesh("leaf", points, blender.painted("leaf", field), flip=side < 0)


def endband(book: Book, side: int, colours: tuple[Array, Array], *, part: float = 1.0) -> None:
    """A worked endband at head (1) or tail (-1): runs of four ribs in two colours."""
    radius, thick = book.radius, 1.45
    angles = np.linspace(-book.angle * 0.97, book.angle * 0.97, 460)
    around, spread = np.linspace(0, 2 * np.pi, 26), angles * radius
    a, t = np.meshgrid(angles, around)
    rib = thick + 0.13 * np.abs(np.sin(np.pi * a * radius / 0.62))
    out = radius - 0.9 + rib * np.cos(t)
    x = -(out * np.cos(a) - (radius - book.rise))
    y = side * (book.leaf / 2 + 1.1 + rib * np.sin(t))
    points = np.stack([x, y, out * np.sin(a) + book.middle], -1)
    field = Field(2000, 64, 1)
    at = np.interp(np.arange(2000), np.linspace(0, 1999, 460), spread)
    first = ((np.floor(at / 0.62).astype(int) // 4) % 2 == 0)[None, :, None]
    shade = 0.8 + 0.25 * np.abs(np.sin(np.pi * at / 0.62))[None, :, None]
    field.colour = np.where(first, colours[0], colours[1]) * shade * np.ones((64, 1, 1))
    field.tint(np.clip(0.22 + 0.2 * field.noise(90, 4), 0, 1), rgb(0.45, 0.36, 0.26))
    there = np.broadcast_to((angles < book.angle * (2 * part - 1) + 1e-6)[None, :], a.shape)
    blender.mesh("endband", points, blender.painted("endband", field), there=there, flip=side < 0)


class Board(Field):
    """A board's outer face with 5 mm more on three sides, which are bent over the edges."""

    def __init__(self, book: Book) -> None:
        self.book = book
        super().__init__(book.board_wide + 5, book.tall + 10, book.px / 2, x0=0)
        self.edge = np.minimum(book.board_wide - self.x, book.tall / 2 - np.abs(self.y))
        self.corner = np.hypot(
            np.maximum(book.board_wide - self.x, 0), np.maximum(book.tall / 2 - np.abs(self.y), 0)
        )

    def build(
        self,
        side: int,
        *,
        bumped: float = 1.0,
        inner: Array | None = None,
        bend: Array | None = None,
        thin: bool = False,
    ) -> blender.Thing:
        """Hand the board to Blender, upper (1) or lower (-1); gives the holder that moves it."""
        book, holder = self.book, blender.holder("board")
        outer = blender.mesh(
            "outer", self._points(bumped, bend), blender.painted("cover", self),
            there=self.there[::3, ::3],
        )  # fmt: skip
        parts = [outer]
        if not thin:
            core = blender.plain("core", (0.47, 0.39, 0.29), rough=0.92, bumps_mm=0.5, uneven=0.16)
            parts.append(self._slab(0.05, 0.6, 0.3, book.board - 0.35, core))
            colour = tuple(float(v) for v in (PAPER * 0.92 if inner is None else inner))
            parts.append(self._slab(0.6, 2.4, 0.02, 0.34, blender.plain("pastedown", colour)))
        for part in parts:
            part.parent = holder
        if side > 0:
            blender.move(holder, book.joint, 0, book.middle + book.thick / 2 + 0.15)
        else:
            holder.scale = (1, 1, -1)
            blender.move(holder, book.joint, 0, book.board)
        return holder

    def _slab(
        self, left: float, inset: float, low: float, high: float, material: blender.Thing
    ) -> blender.Thing:
        reach = self.book.tall / 2 - inset
        across = (left, self.book.board_wide - inset)
        return blender.box("slab", across, (-reach, reach), (low, high), material, round_mm=0.1)

    def _points(self, bumped: float, bend: Array | None) -> Array:
        cut = (slice(None, None, 3),) * 2
        book, x, y, high = self.book, self.x[cut], self.y[cut], self.height[cut]
        over_x, down_x = _roll(x - book.board_wide)
        over_y, down_y = _roll(np.abs(y) - book.tall / 2)
        px = book.board_wide + over_x + high * (down_x > 0.6)
        py = np.sign(y) * (book.tall / 2 + over_y + high * (down_y > 0.6))
        drop = np.minimum(down_x + down_y, book.board - 0.05)
        corner = np.hypot(book.board_wide - px, book.tall / 2 - np.abs(py))
        bump, uneven = bumped * np.exp(-((corner / 4.5) ** 2)), self.noise(5, 7)[cut]
        z = book.board - drop + high * (drop < 0.6) - bump * (0.9 + 0.5 * uneven)
        if bend is not None:
            z = z + bend[cut]
        px = px - bump * 1.3 * (1 + uneven)
        py = py - np.sign(py) * bump * 1.1 * (1 - uneven)
        return np.stack([px, py, z], -1)


def _roll(past: Array, radius: float = 1.0) -> tuple[Array, Array]:
    """Round an edge: how far out and how far down a point goes that lies `past` the edge."""
    turned = np.clip(past + radius, 0, radius * np.pi / 2) / radius
    out = np.where(past > -radius, -radius + radius * np.sin(turned), past)
    over = np.maximum(past + radius - radius * np.pi / 2, 0)
    down = np.where(past > -radius, radius * (1 - np.cos(turned)) + over, 0)
    return out, down


def strip(
    points: Array, colour: Array, name: str, seed: int, *, grain: float = 0.0
) -> blender.Thing:
    """A loose strip, such as a strap or a ribbon, through a grid of points."""
    field = Field(200, 40, 4)
    wide, fine = field.noise(20, seed), field.noise(2, seed + 1, 3)
    field.colour = colour * (1 + 0.16 * wide + 0.12 * fine)[..., None]
    field.tint(step(2.5 - (20 - np.abs(field.y)), 0, 2), colour * 0.7)
    field.grain = field.flat() + grain
    field.rough = mix(field.rough, 0.5, field.grain)
    return blender.mesh(name, points, blender.painted(name, field))
