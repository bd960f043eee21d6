"""The layers of a spine, from the folds outward: each call lays one more on the field.

A stage of a treatment is the same stack stopped earlier or later, as on the bench.
Offered under the GPL, version 3 or later, as well as under the project's LICENSE.
"""

from __future__ import annotations

import numpy as np

from tests.renders import surfaces
from tests.renders.book import Spine
from tests.renders.paint import BOLD, Array, fibres, line, mix, rgb, step

LINEN, TISSUE = rgb(0.86, 0.82, 0.72), rgb(0.885, 0.865, 0.80)
TONED = rgb(0.335, 0.215, 0.135)


def folds(spine: Spine, *, clean: float = 0.0, pale: Array | None = None) -> None:
    """The folds of the sections, uneven, dark between; `clean` from 0 to 1."""
    book = spine.book
    small, fine = spine.noise(1.8, 2), spine.noise(0.5, 3, 3)
    wobble = spine.x + 0.22 * spine.noise(9, 4, 1) + 0.1 * spine.noise(2.5, 5, 1)
    random = np.random.default_rng(66)
    at = np.cumsum(1 + 0.22 * random.normal(0, 1, book.sections + 12))
    at = (at - at[5]) * book.sections / (at[book.sections + 5] - at[5])
    where = (wobble + book.arc / 2) / book.arc * book.sections
    spine.phase = np.interp(where, at, np.arange(-5, book.sections + 7)).astype(np.float32)
    number = np.clip(np.floor(spine.phase).astype(int) + 3, 0, book.sections + 7)
    each = np.random.default_rng(6).normal(0, 1, book.sections + 8)[number]
    ridge = np.abs(np.sin(np.pi * (spine.phase - np.floor(spine.phase)))) ** 0.55
    deep = min(0.55, 0.28 * book.arc / book.sections)
    spine.height += deep * ridge + 0.2 * deep * each * ridge
    paper = rgb(0.80, 0.71, 0.56) if pale is None else pale
    spine.colour = paper * (1 + 0.05 * each + 0.05 * small + 0.04 * fine)[..., None]
    spine.tint((1 - step(ridge, 0.15, 0.75)) * (0.85 - 0.3 * clean), rgb(0.30, 0.21, 0.13))
    stain = step(spine.noise(16, 1) + 0.3 * small + 0.1 * fine, 0, 0.8) * (0.65 - 0.3 * clean)
    spine.tint(stain, rgb(0.52, 0.37, 0.22))
    spine.relief = 0.10 * fine
    spine.there = spine.leafy & (np.abs(spine.x) < book.arc / 2 + 2.4)


def kettles(spine: Spine, inset: float = 11) -> None:
    """The chain of kettle stitches near head and tail."""
    fine = spine.noise(0.5, 3, 3)
    for y in (-spine.book.leaf / 2 + inset, spine.book.leaf / 2 - inset):
        wave = 0.25 * np.sin(spine.phase * 2 * np.pi)
        mask = step(0.75 - np.abs(spine.y - y - wave), 0, 0.35) * (
            np.abs(spine.x) < spine.book.arc / 2
        )
        spine.add(mask, rgb(0.74, 0.64, 0.47) * (1 + 0.2 * fine)[..., None], 0.35, rough=0.85)


def cords(
    spine: Spine, places: tuple[float, ...], *, radius: float = 2.1, proud: bool = True
) -> None:
    """Sewing cords across the spine: proud of the folds, or sunk in saw cuts."""
    fine = spine.noise(0.5, 3, 3)
    for y in places:
        far = np.abs(spine.y - y - 0.25 * spine.noise(8, 7, 1))
        if not proud:
            cut = step(radius + 0.35 - far, 0, 0.3)
            spine.add(cut, rgb(0.26, 0.19, 0.12), -1.3)
        swell = np.sqrt(np.clip(1 - (far / radius) ** 2, 0, 1))
        twist = 0.5 + 0.5 * np.sin((spine.x + (spine.y - y) * 1.1) * 2 * np.pi / 1.15)
        colour = rgb(0.76, 0.64, 0.46) * (0.74 + 0.32 * twist + 0.1 * fine)[..., None]
        spine.add(step(swell, 0, 0.3), colour, rough=0.9, relief=0.25 * twist)
        spine.height += swell * radius * (0.9 if proud else 0.62)


def bands_near(spine: Spine, places: tuple[float, ...]) -> Array:
    """Distance in mm from the nearest of some heights."""
    return np.min([np.abs(spine.y - y) for y in places], axis=0)


def glue(spine: Spine, amount: float = 0.25, thick: float = 0.16) -> None:
    """Old brown glue, glossy and crackled; thicker and wider with `amount`."""
    wide, small, fine = spine.noise(6, 1), spine.noise(1.8, 2), spine.noise(0.5, 3, 3)
    mask = step(wide + 0.5 * small + amount, -0.1, 0.25) * spine.there
    crackle = step(0.05 - np.abs(spine.noise(1.6, 8, 4)), 0, 0.05)
    colour = rgb(0.33, 0.185, 0.075) * (1 + 0.45 * small + 0.25 * fine)[..., None]
    colour = colour * (1 - 0.45 * crackle)[..., None]
    spine.drape(mask * 0.8, 0.35)
    spine.add(mask * 0.93, colour, thick, rough=0.34, relief=-0.15 * crackle + 0.05 * small)


def waste(spine: Spine, low: float, high: float, words: str, *, torn: float = 0.4) -> None:
    """A strip of printed waste between two heights, its edges torn."""
    small, fine = spine.noise(1.8, 2), spine.noise(0.5, 3, 3)
    depth = spine.depth(-spine.book.arc / 2 + 1, spine.book.arc / 2 - 1, low, high)
    rough = torn * (spine.noise(6, 44, 5) * 3 + spine.noise(1, 45, 3))
    mask = step(depth + rough, 0, 0.3)
    paper = rgb(0.73, 0.61, 0.43) * (1 + 0.10 * small + 0.07 * fine)[..., None]
    paper = mix(
        paper, paper * 0 + rgb(0.20, 0.15, 0.11), surfaces.printed(spine, 12, words, size=3.0) * 0.8
    )
    stain = step(small + spine.noise(6, 1) * 0.7 + 0.3 * fine, 0.12, 0.55) * 0.5
    paper = mix(paper, paper * 0 + rgb(0.40, 0.27, 0.15), stain)
    spine.drape(mask, 0.3)
    spine.add(mask, paper, 0.12, rough=0.75, relief=0.04 * fine)


def tissue(spine: Spine, tall: float, *, seed: int = 14) -> None:
    """A long-fibred tissue so thin that what lies under it shows; its edges feathered."""
    wide, small, fine = spine.noise(6, 1), spine.noise(1.8, 2), spine.noise(0.5, 3, 3)
    depth = spine.depth(-spine.book.arc / 2 - 1, spine.book.arc / 2 + 1, -tall / 2, tall / 2)
    mask = step(depth + 0.9 * small + 0.5 * fine, -0.5, 0.45)
    long, loose = (
        fibres(spine, 0.75, 6, seed, along=0.5),
        fibres(spine, 0.04, 11, seed + 1, width=2),
    )
    cover = np.clip(0.34 + 0.34 * long + 0.24 * loose + 0.20 * small + 0.16 * wide, 0, 0.93)
    spine.height = mix(spine.height, spine.soft(spine.height, 0.22) * 0.92 + 0.06, mask)
    spine.tint(cover * mask, TISSUE * (1 + 0.02 * fine)[..., None])
    spine.rough = mix(spine.rough, 0.78, mask)
    spine.relief = mix(spine.relief, 0.10 * long + 0.12 * loose + 0.05 * fine, mask)


def paper_lining(spine: Spine, tall: float, wide: float, colour: Array) -> None:
    """A stout lining paper, its edges cut."""
    fine, long = spine.noise(0.5, 3, 3), fibres(spine, 0.5, 7, 21, along=0.8)
    mask = spine.inside(-wide / 2, wide / 2, -tall / 2, tall / 2, 0.12)
    spine.drape(mask, 0.6, 0.03)
    paint = colour * (0.98 + 0.03 * spine.noise(5, 23) + 0.02 * fine)[..., None]
    spine.add(
        mask, mix(paint, paint * 1.06, long), 0.12, rough=0.85, relief=0.08 * long + 0.03 * fine
    )


def cloth_lining(spine: Spine, tall: float) -> None:
    """Linen over the whole back and on over both shoulders."""
    half = spine.book.arc / 2 + 9
    mask = spine.inside(-half, half, -tall / 2, tall / 2, 0.05)
    threads = surfaces.weave(spine)
    spine.drape(mask, 0.9, 0.05)
    spine.add(
        mask, LINEN * (0.76 + 0.28 * threads)[..., None], 0.25, rough=0.9, relief=0.35 * threads
    )


def toned_paper(spine: Spine, colour: Array = TONED) -> None:
    """The new spine of toned paper, from joint to joint, turned in at head and tail."""
    spine.there[:] = True
    wide, small, fine = spine.noise(6, 1), spine.noise(1.8, 2), spine.noise(0.5, 3, 3)
    long = fibres(spine, 0.8, 7, 14, along=0.7)
    spine.height = spine.soft(spine.height, 0.9) + 0.15
    paint = colour * (1 + 0.10 * wide + 0.06 * small + 0.04 * fine)[..., None]
    paint = mix(paint, paint * 0 + colour * 1.35, long * 0.30)
    spine.add(
        np.ones(spine.shape, np.float32),
        paint,
        0.25,
        rough=0.62,
        grain=0.15,
        relief=0.07 * long + 0.04 * fine,
    )


def caps(spine: Spine) -> None:
    """Round the covering over at head and tail."""
    past = step(np.abs(spine.y), spine.book.tall / 2 - 3.4, spine.book.tall / 2)
    spine.height -= 2.0 * past**3


def blind(spine: Spine, places: tuple[float, ...], off: tuple[float, ...] = (-1.6, 1.6)) -> None:
    """Blind lines: pressed in, a little darker and glossier."""
    for y in places:
        for away in off:
            mask = line(spine.y - y - away, 0.32)
            spine.tint(mask * 0.45, rgb(0.12, 0.08, 0.05))
            spine.height -= 0.13 * mask
            spine.rough -= 0.15 * mask


def wear(spine: Spine, places: tuple[float, ...] = ()) -> Array:
    """Where hands and shelves rub: over bands, along the joints, at head and tail."""
    book = spine.book
    found = 0.6 * step(np.abs(spine.x), book.arc / 2 - 6, book.arc / 2 + 1) - 0.35
    found = found + 0.4 * step(np.abs(spine.y), book.leaf / 2 - 9, book.leaf / 2 + 2)
    return found + (1.1 * step(3.2 - bands_near(spine, places), 0, 2.6) if places else 0)


def old_leather(
    spine: Spine, kept: Array, *, places: tuple[float, ...] = (), colour: Array = surfaces.CALF,
    curl: float = 1.5, pared: bool = False, seed: int = 31,
) -> None:  # fmt: skip
    """The leather where `kept` (mm inside its torn edge) is over nought.

    Torn, it shows a rim of pale flesh and curls; `pared`, it lies flat with its rim trimmed.
    """
    if pared:
        kept = spine.soft(kept, 0.5)
    mask, fine = step(kept, 0, 0.35), spine.noise(0.5, 3, 3)
    paint, relief = surfaces.leather(
        spine, seed, colour, worn=wear(spine, places), dry=0.6 if pared else 1
    )
    rim = np.exp(-np.clip(kept, 0, 9) / (0.3 if pared else 0.55)) * (0.35 if pared else 1)
    paint = mix(paint, surfaces.FLESH * (1 + 0.18 * fine)[..., None], np.clip(rim, 0, 1))
    spine.height = mix(spine.height, spine.soft(spine.height, 0.6) - 0.08, mask)
    spine.add(
        mask, paint * (0.93 if pared else 1), rough=0.42 if pared else 0.50, grain=1, relief=relief
    )
    thick = (step(kept, 0, 1.1) * 0.95 + 0.12) * (0.5 if pared else 1)
    lift = np.exp(-np.clip(kept, 0, 50) / 1.9) * step(spine.noise(7, 41), -0.1, 0.5)
    spine.height += mask * (thick + (0 if pared else curl) * lift)
    spine.there |= kept > 0


def label(
    spine: Spine, lines: tuple[tuple[str, float, float], ...], low: float, high: float, half: float,
    *, kept: Array | None = None, colour: Array | None = None, rub: float = 0.6,
) -> None:  # fmt: skip
    """A lettering piece: `lines` are words, height of their middle and size, in gold, rubbed."""
    small, fine = spine.noise(1.8, 2), spine.noise(0.5, 3, 3)
    mask = spine.inside(-half, half, low, high, 0.15)
    if kept is not None:
        mask = mask * step(kept, 0.3, 0.6)
    red = rgb(0.42, 0.10, 0.07) if colour is None else colour
    paint = red * (1 + 0.15 * small + 0.1 * fine)[..., None]
    worn = step(wear(spine) * 0.5 + small * 0.7 + fine * 0.3, 0.45, 0.9) * rub
    spine.add(mask, mix(paint, paint * 0 + rgb(0.5, 0.3, 0.2), worn), 0.10, rough=0.42, grain=0.8)
    gold = np.max([spine.text(words, 0, y, size, face=BOLD) for words, y, size in lines], axis=0)
    depth = spine.depth(-half, half, low, high)
    for inset in (0.6, 1.4):
        gold = np.maximum(gold, line(depth - inset, 0.16) * (depth > 0.2))
    gild(spine, gold * mask, rub=rub)


def gild(spine: Spine, mask: Array, *, rub: float = 0.6) -> None:
    """Gold on what is there, rubbed away in places."""
    worn = spine.noise(1.8, 2) + 0.6 * spine.noise(0.5, 3, 3) + 0.4 * spine.noise(6, 1)
    gold = mask * (1 - rub + rub * step(worn, -0.6, 0.05))
    spine.tint(gold * 0.92, surfaces.GOLD)
    spine.metal = np.maximum(spine.metal, gold * 0.95)
    spine.rough = mix(spine.rough, 0.33, gold)
    spine.relief = spine.relief - 0.12 * mask


def dust(spine: Spine, amount: float) -> None:
    """Grey dust in patches."""
    spine.tint(step(spine.noise(0.7, 51, 4), 0.1, 0.5) * amount, rgb(0.62, 0.56, 0.48))
