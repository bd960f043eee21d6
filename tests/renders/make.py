"""Makes the demo archive's photographs: `python -m tests.renders.make [CASE] [--list] [--again]`.

It makes an environment of its own (CPython 3.13) beside nothing of the project, installs Blender's
module there, and renders every picture of the table in `scenes` that is missing, one at a time,
each in a process of its own at the lowest priority. Debian needs libxrender1 libxi6 libxkbcommon0
libsm6 libgl1 libegl1 fonts-dejavu fonts-liberation.

Only a JPEG whose tags say that it is rendered counts as there.

The generator is offered under the GPL, version 3 or later, as Blender's own module is, as well as
under the project's LICENSE. Neither Casebook nor its tests import it.
"""

from __future__ import annotations

import argparse
import os
import shutil
import subprocess
import sys
import time
from pathlib import Path

from tests.renders.scenes import SCENES, Scene

ROOT = Path(__file__).parents[2]
CASES = ROOT / "cases"
NEEDS = Path(__file__).with_name("requirements.txt")
MARK = b"rendered picture of an invented object"
HOME = Path(os.environ.get("XDG_CACHE_HOME") or Path.home() / ".cache") / "casebook-renders"


def is_there(scene: Scene) -> bool:
    """Whether the rendered picture is in the case's folder."""
    path = CASES / scene.path
    return path.is_file() and MARK in path.read_bytes()[:4096]


def environment(home: Path) -> Path:
    """The Python of the rendering environment, made on first use."""
    python = home / "bin" / "python"
    if not python.exists():
        base = shutil.which("python3.13") or sys.executable
        subprocess.run([base, "-m", "venv", str(home)], check=True)
        subprocess.run([python, "-m", "pip", "install", "-q", "-r", str(NEEDS)], check=True)
    return python


def render(scene: Scene, python: Path, threads: int) -> float:
    """Render one picture into its case; gives the minutes it took."""
    start, out = time.monotonic(), CASES / scene.path
    fresh = out.with_suffix(".new.jpg")
    command = [str(python), "-m", "tests.renders.shoot", scene.case, scene.file, str(fresh)]
    nice = ["nice", "-n", "19"] if shutil.which("nice") else []
    subprocess.run(
        [*nice, *command, "--threads", str(threads)],
        check=True,
        cwd=ROOT,
        stdout=subprocess.DEVNULL,
    )
    fresh.replace(out)
    return (time.monotonic() - start) / 60


def main() -> None:
    """Render what is missing, of one case or of all, or list it."""
    ask = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawTextHelpFormatter
    )
    ask.add_argument(
        "case",
        nargs="?",
        default="",
        help="the beginning of a case's folder name, or of a picture's path below cases",
    )
    ask.add_argument("--again", action="store_true", help="render what is there as well")
    ask.add_argument("--list", action="store_true", help="say what is there and what is missing")
    ask.add_argument("--count", type=int, default=len(SCENES), help="at most so many")
    ask.add_argument("--threads", type=int, default=2)
    ask.add_argument("--environment", type=Path, default=HOME, help="where Blender's module goes")
    said = ask.parse_args()
    wanted = [scene for scene in SCENES if scene.path.startswith(said.case)]
    missing = [scene for scene in wanted if said.again or not is_there(scene)]
    if said.list:
        for scene in wanted:
            print(f"{'missing' if scene in missing else 'there':8} {scene.path}")
        return
    python = environment(said.environment) if missing else Path()
    for scene in missing[: said.count]:
        minutes = render(scene, python, said.threads)
        size = (CASES / scene.path).stat().st_size / 1000
        print(f"{minutes:5.1f} min {size:6.0f} kB  {scene.path}", flush=True)


if __name__ == "__main__":
    main()
