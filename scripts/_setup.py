"""Sets up `.venv` for the other scripts, with nothing but Python and its own pip."""

from __future__ import annotations

import hashlib
import json
import os
import shutil
import subprocess
import sys
import time
from pathlib import Path
from typing import NoReturn

ROOT = Path(__file__).resolve().parent.parent
VENV = ROOT / ".venv"
MARK = VENV / "made-by-casebook.json"  # our own sign: a folder without it is somebody's own
OLDEST = (3, 11)


def stop(message: str) -> NoReturn:
    """End with exit code 2 and a message on stderr."""
    print(message, file=sys.stderr)
    raise SystemExit(2)


def tool(name: str) -> str:
    """The path of a program in the environment."""
    if os.name == "nt":
        return str(VENV / "Scripts" / f"{name}.exe")
    return str(VENV / "bin" / name)


def run(*command: str, quiet: bool = False, mute: bool = False) -> int:
    """Run a program in the project's folder, as if `.venv` were active; its exit code.

    A quiet one says nothing on stdout, a mute one nothing at all.
    """
    sys.stdout.flush()
    out = subprocess.DEVNULL if quiet or mute else None
    told = subprocess.DEVNULL if mute else None
    env = _environment()
    done = subprocess.run(command, cwd=ROOT, env=env, stdout=out, stderr=told, check=False)
    return done.returncode


def set_up(extra: str = "") -> None:
    """Make `.venv` and install the project with an extra, where that is not done already.

    Ends the program with exit code 2 and what to do when it cannot.
    """
    if sys.version_info < OLDEST:
        stop(f"Python 3.11 or newer is needed; this is {sys.version.split()[0]}.")
    made_for = f"{ROOT}, Python {sys.version.split()[0]} in {sys.base_prefix}"
    wanted = {"made for": made_for, "inputs": _digest()}
    mark = _read_mark()
    if wanted.items() <= mark.items() and extra in ("", mark["extra"]):
        return
    started = time.monotonic()
    print(f"Setting up .venv with Python {sys.version.split()[0]}, about a minute ...")
    if mark.get("made for") != made_for:
        _make_venv()
    _install(extra)
    MARK.write_text(json.dumps({**wanted, "extra": extra}), encoding="utf-8")
    print(f"Set up in {time.monotonic() - started:.1f} s.", flush=True)


def _environment() -> dict[str, str]:
    """Our own environment first on the path, and nobody's Python settings."""
    kept = {name: value for name, value in os.environ.items() if not name.startswith("PYTHON")}
    path = str(Path(tool("python")).parent) + os.pathsep + os.environ.get("PATH", os.defpath)
    return {**kept, "PATH": path, "VIRTUAL_ENV": str(VENV), "PYTHONUTF8": "1"}


def _digest() -> str:
    """What is installed depends on these two files alone."""
    files = [(ROOT / name).read_bytes() for name in ("pyproject.toml", "constraints.txt")]
    return hashlib.sha256(b"\0".join(files)).hexdigest()


def _read_mark() -> dict[str, str]:
    """What stands in `.venv`; empty where it is missing, half made or broken."""
    if not (MARK.is_file() and Path(tool("python")).exists()):
        return {}
    try:
        mark = json.loads(MARK.read_text(encoding="utf-8"))
    except ValueError:
        return {}
    return mark if isinstance(mark, dict) else {}


def _make_venv() -> None:
    if VENV.exists() and not MARK.exists():
        stop(f"{VENV} was not made by this script: move it away, then run this again.")
    if VENV.exists():
        shutil.rmtree(VENV)
    VENV.mkdir()
    MARK.write_text("{}", encoding="utf-8")
    if run(sys.executable, "-m", "venv", str(VENV), quiet=True):
        stop("Python could not make an environment. On Debian: apt install python3-venv")


def _install(extra: str) -> None:
    project = f".[{extra}]" if extra else "."
    options = ["-qq", "--no-input", "--disable-pip-version-check"]
    pip = [tool("python"), "-m", "pip", "install", *options, "--constraint", "constraints.txt"]
    if run(*pip, "--editable", project):
        stop("pip could not install the project: its message is above. Is there a network?")
    # Only as a wheel: to build it would need a compiler, and all else is whole without it.
    if run(*pip, "--only-binary", ":all:", "pillow-heif", mute=True):
        print("HEIC pictures are not read here: there is no wheel of pillow-heif for this Python.")
