"""Draws the pictures of the demo archive: `python -m tests.drawings.draw_demo_photos`.

They stand in for photographs of invented objects. The same seeds give the same pictures; the date
in each file's tags is that of the record.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path

from tests.drawings import chart, guide, ledger, ledger_spine, limp
from tests.drawings.scene import Scene

CASES = Path(__file__).parents[2] / "cases"

PICTURES: dict[str, dict[str, tuple[str, Callable[[], Scene]]]] = {
    "2025-031-tide-gauge-day-book": {
        "front-before": ("2025-01-28", partial(ledger.front, mended=False)),
        "spine-before": ("2025-01-28", partial(ledger_spine.spine, "before")),
        "twine-before": ("2025-01-28", ledger.inside),
        "spine-bare": ("2025-03-11", partial(ledger_spine.spine, "bare")),
        "spine-tissue": ("2025-03-14", partial(ledger_spine.spine, "tissue")),
        "spine-linings": ("2025-03-18", partial(ledger_spine.spine, "linings")),
        "spine-after": ("2025-03-31", partial(ledger_spine.spine, "after")),
        "front-after": ("2025-03-31", partial(ledger.front, mended=True)),
    },
    "2025-044-roadstead-chart": {
        "recto-before": ("2025-05-20", partial(chart.recto, mended=False)),
        "verso-before": ("2025-05-20", partial(chart.verso, "before")),
        "verso-mended": ("2025-07-08", partial(chart.verso, "mended")),
        "recto-after": ("2025-07-16", partial(chart.recto, mended=True)),
        "verso-after": ("2025-07-16", partial(chart.verso, "after")),
    },
    "2025-058-boatbuilders-account-book": {
        "front-before": ("2025-09-04", partial(limp.front, mended=False)),
        "spine-before": ("2025-09-04", partial(limp.spine, mended=False)),
        "sewing-during": ("2025-09-25", limp.sewing),
        "front-after": ("2025-09-30", partial(limp.front, mended=True)),
        "spine-after": ("2025-09-30", partial(limp.spine, mended=True)),
    },
    "1984-017-pilots-guide": {
        "front-2026": ("2026-05-12", guide.front),
    },
}


def main() -> None:
    """Draw every picture into its case's folder."""
    for folder, pictures in PICTURES.items():
        for name, (date, draw) in pictures.items():
            path = CASES / folder / "photos" / f"{name}.jpg"
            draw().save(path, date)
            print(f"{path.stat().st_size / 1000:6.0f} kB  {folder}/{name}.jpg")


if __name__ == "__main__":
    main()
