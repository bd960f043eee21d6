"""The worked examples: five treatments whose way back is known by hand; all invented."""

from __future__ import annotations

from casebook.compute.evidence import Failed, Result, Tried
from casebook.compute.structure import Since, Structure
from tests.compute.way_back.built import (
    PASTE,
    PVA,
    VAE,
    bears,
    fold,
    grown,
    held,
    joint,
    layer,
    part,
    structure,
    stuck,
    tried,
)

BOOK = (part("text-block"), part("spine"), grown("text-block", "spine"))
BOARDS = (part("board 1", "pasteboard"), part("board 2", "pasteboard"))
TISSUE = (
    layer("release-tissue", "japanese-tissue", splits=True),
    stuck("spine", "release-tissue", PASTE),
)

PULLED = structure(
    *BOOK,
    *TISSUE,
    layer("linen-lining", "linen"),
    stuck("release-tissue", "linen-lining", VAE),
)
"""A long-fibred tissue on paste, under linen stuck with a synthetic dispersion."""

LINED = structure(
    *BOOK,
    *BOARDS,
    *TISSUE,
    layer("linen-lining/spine", "linen"),
    layer("linen-lining/board 1", "linen"),
    layer("linen-lining/board 2", "linen"),
    stuck("release-tissue", "linen-lining/spine", VAE),
    stuck("board 1", "linen-lining/board 1", PVA),
    stuck("board 2", "linen-lining/board 2", PVA),
    joint("linen-lining/spine", "linen-lining/board 1"),
    joint("linen-lining/spine", "linen-lining/board 2"),
)
"""The same, with the linen out on both boards, which it holds."""

HOLLOW = structure(
    *BOOK,
    layer("first-tissue", "kozo-paper"),
    layer("paste-barrier", PASTE),
    layer("tube/inner", "kraft-paper"),
    layer("tube/outer", "kraft-paper"),
    layer("second-tissue", "kozo-paper"),
    stuck("spine", "first-tissue", PASTE),
    stuck("first-tissue", "paste-barrier", PASTE),
    stuck("paste-barrier", "tube/inner", PVA),
    fold("tube"),
    stuck("tube/outer", "second-tissue", PASTE),
)
"""A hollow tube between two tissues, with a coat of paste as a barrier under its dispersion."""

REBACK = structure(
    *BOOK,
    *BOARDS,
    part("old-spine", "calf"),
    part("title-label", "goat"),
    grown("old-spine", "title-label"),
    layer("spine-lining", "japanese-tissue", splits=True),
    layer("reback/spine", "kozo-paper"),
    layer("reback/board 1", "kozo-paper"),
    layer("reback/board 2", "kozo-paper"),
    stuck("spine", "spine-lining", PASTE),
    stuck("spine-lining", "reback/spine", PASTE),
    stuck("board 1", "reback/board 1", PASTE),
    stuck("board 2", "reback/board 2", PASTE),
    joint("reback/spine", "reback/board 1"),
    joint("reback/spine", "reback/board 2"),
    stuck("reback/spine", "old-spine", PASTE, reused=True),
)
"""A paper reback on which the original spine piece, with its label, was put back."""

LINED_MAP = structure(
    part("sheet", "laid-paper"),
    layer("mends", "kozo-paper"),
    layer("sheet-lining", "kozo-paper"),
    stuck("sheet", "mends", PASTE),
    stuck("sheet", "sheet-lining", PASTE),
    stuck("mends", "sheet-lining", PASTE),
)
"""A map, mended and lined with paste."""

GUARDED = structure(
    part("section", "laid-paper"),
    part("text-block"),
    grown("text-block", "section"),
    layer("guard", "kozo-paper"),
    layer("thread", "linen-thread"),
    stuck("section", "guard", PASTE),
    held("guard", "thread", "sewn", cuts=("section", "guard")),
    held("section", "thread", "sewn", cuts=("section", "guard")),
)
"""A guard pasted round a section's fold and sewn through."""

MAP_TESTS = bears("sheet")
BOOK_TESTS = bears("spine", "section")
LEATHER_DARKENS = tried("old-spine", Result.HARM, agent="water")

EXAMPLES: dict[str, tuple[Structure, tuple[Tried | Failed, ...]]] = {
    "pulled-linen": (PULLED, ()),
    "lined-boards": (LINED, ()),
    "hollow": (HOLLOW, BOOK_TESTS),
    "reback": (REBACK, BOOK_TESTS),
    "lined-map": (LINED_MAP, MAP_TESTS),
    "sewn-guard": (GUARDED, BOOK_TESTS),
}
"""Every example with the tests on record."""

OLD = Since.FOUND
