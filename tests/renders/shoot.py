"""Builds one scene, takes its picture and develops it; runs inside the rendering environment.

    python -m tests.renders.shoot CASE FILE OUT [--width 2400] [--samples 6] [--threads 2]

Offered under the GPL, version 3 or later, as Blender's own module is; see LICENSE for the rest.
"""

from __future__ import annotations

import argparse
import importlib
import tempfile
from pathlib import Path

from tests.renders import blender
from tests.renders.develop import develop
from tests.renders.scenes import SCENES, Scene


def shoot(scene: Scene, out: Path, width: int, samples: int, threads: int) -> None:
    """One picture, from an empty bench to a JPEG with its tags."""
    blender.clear()
    importlib.import_module(f"tests.renders.{scene.object}").build(scene.state, scene.view)
    with tempfile.TemporaryDirectory() as folder:
        png = Path(folder) / "raw.png"
        blender.shoot(
            str(png),
            width=width,
            height=width * 2 // 3,
            samples=samples,
            seed=scene.seed,
            threads_used=threads,
        )
        out.parent.mkdir(parents=True, exist_ok=True)
        develop(
            png, out, seed=scene.seed, taken=scene.taken, place=scene.place, comment=scene.comment
        )


def main() -> None:
    """Read what to shoot from the command line."""
    ask = argparse.ArgumentParser(description=__doc__)
    for name in ("case", "file", "out"):
        ask.add_argument(name)
    for name, value in (("--width", 2400), ("--samples", 6), ("--threads", 2)):
        ask.add_argument(name, type=int, default=value)
    said = ask.parse_args()
    found = next(s for s in SCENES if s.case.startswith(said.case) and s.file == said.file)
    shoot(found, Path(said.out), said.width, said.samples, said.threads)


if __name__ == "__main__":
    main()
