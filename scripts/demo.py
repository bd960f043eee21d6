"""Sets up Casebook, builds the demo archive and prints the page to open."""

from __future__ import annotations

from _setup import ROOT, run, set_up, tool


def main() -> int:
    """Build the archive that stands in this folder; the exit code of `casebook build`."""
    set_up()
    code = run(tool("casebook"), "build")
    page = ROOT / "site" / "index.html"
    if code == 0:
        print(f"\nOpen this page in a browser:\n  {page}\n  {page.as_uri()}")
    return code


if __name__ == "__main__":
    raise SystemExit(main())
