"""The project stands on its own: it points at nothing outside, and its core needs no plugin."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
INSIDE = "CASEBOOK_INSIDE_A_COPY"  # set in the copy's own run, so that it makes no further copy

OUTSIDE = re.compile(
    r"\.\./shared|(?<![\w.])/(?:work|root|home/\w+|Users/\w+|tmp/\w+)/"
    r"|[A-Za-z]:\\Users\\|pypi\.org|registry\.npmjs|npmmirror|files\.pythonhosted"
)
NOT_OURS = {
    ".benchmarks", ".casebook", ".git", ".grimp_cache", ".hypothesis", ".import_linter_cache",
    ".mypy_cache", ".pytest_cache", ".ruff_cache", ".venv", "__pycache__", "build", "dist", "site",
}  # fmt: skip
PLUGIN = ("plugins", "tests/plugins", "tests/browser", "tests/bench")


def foreign(_folder: str, names: list[str]) -> set[str]:
    """What git would not track, among the names in a folder."""
    made = ("site-", ".venv-", ".env")
    return {one for one in names if one in NOT_OURS or one.startswith(made) or ".egg-info" in one}


def project_files() -> list[Path]:
    """Every file of the project, as git would track it."""
    found = []
    for folder, folders, names in os.walk(ROOT):
        left_out = foreign(folder, [*folders, *names])
        folders[:] = [one for one in folders if one not in left_out]
        found += [Path(folder, one) for one in names if one not in left_out]
    return sorted(found)


def places_outside(text: str) -> list[str]:
    """Every mention of a place outside the project, with the number of its line."""
    lines = enumerate(text.splitlines(), 1)
    return [f"{number}: {one}" for number, line in lines for one in OUTSIDE.findall(line)]


def test_no_file_mentions_a_place_outside_the_project():
    texts = {path: path.read_bytes() for path in project_files() if path != Path(__file__)}
    found = {
        path.relative_to(ROOT).as_posix(): places
        for path, body in texts.items()
        if b"\0" not in body and (places := places_outside(body.decode(errors="replace")))
    }
    assert len(texts) > 20
    assert found == {}


@pytest.mark.parametrize(
    "text",
    [
        "see ../shared" + "/design.md",
        'open("/' + 'work/main/x")',
        "https://" + "pypi" + ".org/simple",
    ],
)
def test_a_place_outside_the_project_is_seen(text):
    assert places_outside(text)


@pytest.mark.parametrize("text", ["casebook/bench.py", "the work/time ratio", "../photos/a.jpg"])
def test_a_place_inside_is_left_in_peace(text):
    assert places_outside(text) == []


WITHOUT_THE_ORIGINAL = """
import sys
sys.path[:] = [place for place in sys.path if place not in {places!r}]
"""


def copy_without_plugin(copy: Path) -> None:
    """Copy the project, then delete what knows MkDocs and what tests need it or a browser."""
    shutil.copytree(ROOT, copy, ignore=foreign)
    for name in PLUGIN:
        shutil.rmtree(copy / name, ignore_errors=True)


def run(copy: Path, *command: str) -> subprocess.CompletedProcess[str]:
    """Run Python in the copy, where an editable install does not lead back to the original."""
    hook = copy.parent / "hook"
    hook.mkdir(exist_ok=True)
    text = WITHOUT_THE_ORIGINAL.format(places=[str(ROOT), str(ROOT / "plugins")])
    (hook / "sitecustomize.py").write_text(text, encoding="utf-8")
    kept = {name: value for name, value in os.environ.items() if not name.startswith("PYTEST")}
    path = os.pathsep.join((str(hook), str(copy)))
    return subprocess.run(
        [sys.executable, *command],
        cwd=copy,
        env={**kept, "PYTHONPATH": path, INSIDE: "1"},
        capture_output=True,
        text=True,
        check=False,
    )


@pytest.mark.slow
def test_without_the_plugin_all_other_tests_still_pass(tmp_path):
    assert INSIDE not in os.environ, "this test must not run in its own copy"
    copy = tmp_path / "casebook"
    copy_without_plugin(copy)
    found = "import casebook, importlib.util as u; print(casebook.__file__, u.find_spec(PLUGIN))"
    seen = run(copy, "-c", found.replace("PLUGIN", "'casebook_mkdocs'")).stdout
    assert seen.split() == [str(copy / "casebook" / "__init__.py"), "None"]
    options = ["-q", "-x", "-p", "no:cacheprovider", "-n", "2", "-m", "not slow"]
    itself = f"--ignore=tests/{Path(__file__).name}"
    done = run(copy, "-m", "pytest", *options, "tests", itself)
    assert done.returncode == 0, done.stdout[-4000:] + done.stderr[-2000:]
