"""`python -m casebook`: the same commands where the script is not on the path."""

from __future__ import annotations

from casebook.cli import main

main()
