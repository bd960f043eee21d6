"""What the pictures of a photo cost, as a ratio to the plain decode of the same file in one run.

Run `python tests/bench/bench_photos.py [PHOTO]`. Without a photo it makes one of 12 megapixels
(4,000 by 3,000), grain and all. It prints the time of inspecting and of deriving, the peak of memory
of one process that does both, and what a second run costs when nothing has changed.
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from statistics import median

from PIL import Image

from casebook.files import Cache, digest
from casebook.photos.derive import derive, derive_all
from casebook.photos.inspect import inspect

ROUNDS = 5
SIZE = (4000, 3000)
MAKE = "--make"


def photo(path: Path) -> Path:
    """A photo of 12 megapixels, with the grain that makes a JPEG large."""
    small = Image.effect_mandelbrot((SIZE[0] // 4, SIZE[1] // 4), (-2, -1, 1, 1), 80)
    grain = Image.effect_noise(SIZE, 24).convert("L")
    smooth = small.resize(SIZE, Image.Resampling.BICUBIC)
    parts = [
        Image.blend(smooth.point([level * share // 4 for level in range(256)]), grain, 0.1)
        for share in (4, 3, 2)
    ]
    Image.merge("RGB", parts).save(path, "JPEG", quality=92)
    return path


def spent(act: Callable[[], object]) -> float:
    """CPU seconds of a call."""
    start = time.process_time()
    act()
    return time.process_time() - start


def plain(path: Path) -> None:
    """What cannot be less: the file decoded whole."""
    with Image.open(path) as image:
        image.load()


def compared(path: Path, folder: Path) -> None:
    """Print both ratios, each the middle of several rounds in which the two take turns."""
    name = digest(path.read_bytes())
    looked, made = [], []
    for n in range(ROUNDS):
        cache = Cache(folder / str(n), "bench")
        base = spent(lambda: plain(path))
        looked.append(spent(lambda cache=cache: inspect(path, None, "", cache)) / base)  # type: ignore[misc]
        made.append(spent(lambda cache=cache: derive(name, path, cache)) / base)  # type: ignore[misc]
    print(f"plain decode        {base:6.3f} s of CPU")
    print(f"inspecting          {median(looked):6.2f} times the plain decode")
    print(f"deriving            {median(made):6.2f} times the plain decode")


def again(path: Path, folder: Path) -> None:
    """Print what a rebuild costs that has nothing to make."""
    cache = Cache(folder / "0", "bench")
    jobs = [(digest(path.read_bytes()), path)]
    seconds = spent(lambda: derive_all(jobs, cache, None, lambda _done, _total: None))
    print(f"nothing changed     {1000 * seconds:6.1f} ms of CPU")


def peak(path: Path) -> None:
    """Print the memory of a process of its own that inspects and derives once."""
    code = (
        "import resource, sys, tempfile\n"
        "from pathlib import Path\n"
        "from casebook.files import Cache, digest\n"
        "from casebook.photos.derive import derive\n"
        "from casebook.photos.inspect import inspect\n"
        "path = Path(sys.argv[1])\n"
        "before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss\n"
        "with tempfile.TemporaryDirectory() as folder:\n"
        "    cache = Cache(Path(folder), 'bench')\n"
        "    inspect(path, None, '', cache)\n"
        "    derive(digest(path.read_bytes()), path, cache)\n"
        "after = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss\n"
        "print(f'peak of memory      {after / 1024:6.0f} MB, {(after - before) / 1024:.0f} MB for the photo')\n"
    )
    subprocess.run([sys.executable, "-c", code, str(path)], check=True)


def main() -> None:
    """Measure one photo; memory first, since a process starts with the peak of its parent."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        path = Path(sys.argv[1]) if len(sys.argv) > 1 else folder / "photo.jpg"
        if not path.exists():
            subprocess.run([sys.executable, __file__, MAKE, str(path)], check=True)
        with Image.open(path) as image:
            print(f"{image.width} × {image.height}, {path.stat().st_size / 1e6:.1f} MB")
        peak(path)
        compared(path, folder)
        again(path, folder)


if __name__ == "__main__":
    if sys.argv[1:2] == [MAKE]:
        photo(Path(sys.argv[2]))
    else:
        main()
