"""Sets up Casebook with its tools, runs every check and all tests, and says how long each took.

Arguments are handed to pytest: `python3 scripts/check.py tests/values -x`.
"""

from __future__ import annotations

import sys
import time

from _setup import run, set_up, tool


def steps(arguments: list[str]) -> list[tuple[str, list[str]]]:
    """Each check by name, with its command; the quick ones first."""
    python = tool("python")
    return [
        ("ruff check", [tool("ruff"), "check", "--quiet"]),
        ("ruff format", [tool("ruff"), "format", "--check", "--quiet"]),
        ("mypy --strict", [tool("mypy"), "--no-error-summary"]),
        ("import floors", [tool("lint-imports"), "--no-logo"]),
        ("bars", [python, ".ci/bars.py"]),
        (
            "pytest",
            [python, "-m", "pytest", "-W", "error", "-n", "auto", *arguments],
        ),
    ]


def main(arguments: list[str]) -> int:
    """Run the checks one after the other; 0 only if all passed."""
    set_up("dev")
    results = []
    for name, command in steps(arguments):
        print(f"\n== {name}")
        started = time.monotonic()
        code = run(*command)
        results.append((name, code, time.monotonic() - started))
    print()
    for name, code, seconds in results:
        print(f"{'passed' if code == 0 else 'FAILED'}  {seconds:6.1f} s  {name}")
    return int(any(code for _, code, _ in results))


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
