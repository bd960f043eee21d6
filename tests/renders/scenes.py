"""The table of scenes: which picture of which case is of what, in which state, from where.

It is plain data, so that what is missing can be told without Blender.
"""

from __future__ import annotations

from typing import NamedTuple


class Scene(NamedTuple):
    """One picture of the demo archive; `place` and `comment` go into its tags on purpose."""

    case: str
    file: str
    object: str
    """The module beside this one whose `build(state, view)` sets it up."""
    state: str
    view: str
    taken: str
    seed: int = 7
    place: tuple[float, float] | None = None
    comment: str = ""

    @property
    def path(self) -> str:
        """Where the picture stands, below the folder of the cases."""
        return f"{self.case}/photos/{self.file}"


AT_SEA = (31.5, -38.25)
"""A place in the open Atlantic, for the few pictures whose tags give a place away."""

DAY_BOOK = "2025-031-tide-gauge-day-book"

CHART = "2025-044-roadstead-chart"
GUIDE = "1984-017-pilots-guide"
LAMP = "2025-009-lamp-boat"
SEA = "2025-070-sea-garden-album"
TUNES = "2025-077-chapel-tune-book"
PLAYBILL = "2025-019-theatre-playbill"
REGISTER = "2025-024-pilots-guild-register"
LIGHTS = "2025-063-lights-of-the-coast"
SCRAPS = "2025-036-shipping-scrapbook"
REGATTA = "2025-049-regatta-album"
SCROLL = "2025-052-harbour-scroll"
PLAN = "2026-003-breakwater-plan"
FLAGS = "2026-011-signal-flags-poster"
ACCOUNTS = "2025-058-boatbuilders-account-book"

SCENES = (
    Scene(DAY_BOOK, "spine-before.jpg", "ledger", "before", "spine", "2025-01-28", 11, AT_SEA,
          "Keeper wants the twine back. Do not publish."),
    Scene(DAY_BOOK, "spine-after.jpg", "ledger", "after", "spine", "2025-03-31", 12),
    Scene(DAY_BOOK, "spine-bare.jpg", "ledger", "bare", "spine", "2025-03-11", 13),
    Scene(DAY_BOOK, "spine-tissue.jpg", "ledger", "tissue", "spine", "2025-03-14", 14),
    Scene(DAY_BOOK, "spine-linings.jpg", "ledger", "linings", "spine", "2025-03-18", 15),
    Scene(DAY_BOOK, "front-before.jpg", "ledger", "before", "front", "2025-01-28", 16),
    Scene(DAY_BOOK, "front-after.jpg", "ledger", "after", "front", "2025-03-31", 17),
    Scene(DAY_BOOK, "twine-before.jpg", "ledger_inside", "before", "inside", "2025-01-28", 18),
    Scene(CHART, "recto-before.jpg", "chart", "before", "recto", "2025-05-20", 21),
    Scene(CHART, "verso-before.jpg", "chart", "before", "verso", "2025-05-20", 22),
    Scene(CHART, "verso-mended.jpg", "chart", "mended", "verso", "2025-07-08", 23),
    Scene(CHART, "recto-after.jpg", "chart", "after", "recto", "2025-07-16", 24, AT_SEA),
    Scene(CHART, "verso-after.jpg", "chart", "after", "verso", "2025-07-16", 25),
    Scene(CHART, "recto-lit-before.jpg", "chart", "before", "table", "2025-05-20", 27),
    Scene(ACCOUNTS, "front-before.jpg", "limp", "before", "front", "2025-09-04", 31),
    Scene(ACCOUNTS, "spine-before.jpg", "limp", "before", "spine", "2025-09-04", 32, AT_SEA),
    Scene(ACCOUNTS, "sewing-during.jpg", "limp", "sewing", "spine", "2025-09-25", 33),
    Scene(ACCOUNTS, "front-after.jpg", "limp", "after", "front", "2025-09-30", 34),
    Scene(ACCOUNTS, "spine-after.jpg", "limp", "after", "spine", "2025-09-30", 35),
    Scene(GUIDE, "front-2026.jpg", "cloth", "guide-2026", "front", "2026-05-12", 41),
    Scene(LAMP, "spine-before.jpg", "cloth", "lamp-before", "spine", "2025-01-16", 42),
    Scene(LAMP, "spine-bare.jpg", "cloth", "lamp-bare", "spine", "2025-02-12", 43),
    Scene(LAMP, "spine-hollow.jpg", "cloth", "lamp-hollow", "spine", "2025-02-19", 44),
    Scene(LAMP, "spine-after.jpg", "cloth", "lamp-after", "spine", "2025-02-27", 45),
    Scene(LAMP, "front-before.jpg", "cloth", "lamp-before", "front", "2025-01-16", 46),
    Scene(LAMP, "front-after.jpg", "cloth", "lamp-after", "front", "2025-02-27", 49),
    Scene(SEA, "front-before.jpg", "cloth", "sea-before", "front", "2025-10-08", 47),
    Scene(SEA, "front-after.jpg", "cloth", "sea-after", "front", "2025-11-18", 48),
    Scene(PLAYBILL, "recto-before.jpg", "playbill", "before", "recto", "2025-03-20", 51),
    Scene(PLAYBILL, "verso-before.jpg", "playbill", "before", "verso", "2025-03-20", 52),
    Scene(PLAYBILL, "verso-during.jpg", "playbill", "mended", "verso", "2025-04-16", 53),
    Scene(PLAYBILL, "recto-after.jpg", "playbill", "after", "recto", "2025-04-23", 54),
    Scene(PLAYBILL, "recto-uv-before.jpg", "playbill", "before", "ultraviolet", "2025-03-20", 59),
    Scene(PLAYBILL, "recto-uv-after.jpg", "playbill", "after", "ultraviolet", "2025-04-23", 60),
    Scene(TUNES, "spine-before.jpg", "tune_book", "before", "spine", "2025-11-26", 55),
    Scene(TUNES, "spine-glue.jpg", "tune_book", "glue", "spine", "2025-12-17", 56),
    Scene(TUNES, "spine-bare.jpg", "tune_book", "bare", "spine", "2026-01-16", 57),
    Scene(TUNES, "spine-after.jpg", "tune_book", "after", "spine", "2026-02-09", 58),
    Scene(REGISTER, "front-before.jpg", "register", "before", "front", "2025-04-02", 61),
    Scene(REGISTER, "spine-before.jpg", "register", "before", "spine", "2025-04-02", 62),
    Scene(REGISTER, "board-split-during.jpg", "register", "split", "front", "2025-05-19", 63),
    Scene(REGISTER, "front-after.jpg", "register", "after", "front", "2025-06-24", 64),
    Scene(REGISTER, "spine-after.jpg", "register", "after", "spine", "2025-06-24", 65),
    Scene(LIGHTS, "pair-before.jpg", "pair", "before", "spine", "2025-09-18", 71, AT_SEA),
    Scene(LIGHTS, "pair-during.jpg", "pair", "during", "spine", "2025-11-04", 72),
    Scene(LIGHTS, "pair-after.jpg", "pair", "after", "spine", "2025-11-12", 73),
    Scene(REGATTA, "opening-before.jpg", "albums", "regatta-before", "opening", "2025-06-05", 81),
    Scene(REGATTA, "opening-after.jpg", "albums", "regatta-after", "opening", "2025-08-26", 82),
    Scene(SCRAPS, "opening-before.jpg", "albums", "scraps-before", "opening", "2025-02-27", 83, AT_SEA,
          "Percy's page 12. Family only."),
    Scene(SCRAPS, "opening-after.jpg", "albums", "scraps-after", "opening", "2025-06-17", 84),
    Scene(SCROLL, "unrolled-before.jpg", "scroll", "before", "recto", "2025-09-25", 85),
    Scene(SCROLL, "verso-during.jpg", "scroll", "during", "verso", "2025-11-18", 86),
    Scene(SCROLL, "unrolled-after.jpg", "scroll", "after", "recto", "2025-12-08", 87),
    Scene(PLAN, "recto-before.jpg", "plan", "before", "recto", "2026-01-22", 88),
    Scene(PLAN, "verso-mends.jpg", "plan", "mends", "verso", "2026-02-26", 89),
    Scene(PLAN, "recto-left.jpg", "plan", "left", "recto", "2026-02-26", 90),
    Scene(PLAN, "recto-lit-before.jpg", "plan", "before", "table", "2026-01-22", 92),
    Scene(PLAN, "recto-lit-left.jpg", "plan", "left", "table", "2026-02-26", 93),
    Scene(FLAGS, "recto-before.jpg", "flags", "before", "recto", "2026-11-05", 91),
    Scene(FLAGS, "flakes-before.jpg", "flags", "before", "detail", "2026-11-05", 94),
)  # fmt: skip
