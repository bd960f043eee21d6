"""Measures how simple the code is, prints one table of bars, and fails when one is missed.

    python .ci/bars.py [FOLDER]

Lengths are lines from `def` to the last line, docstring and comments counted. The share of 95 in
100 is by nearest rank. Every function counts, methods and functions within functions too.
"""

from __future__ import annotations

import ast
import io
import math
import re
import statistics
import sys
import tokenize
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

ROOMS = ("casebook", "plugins/casebook_mkdocs")
PLUGIN = "plugins/casebook_mkdocs"
LEFT_OPEN = re.compile(r"\b(TODO|FIXME)\b")
Definition = ast.FunctionDef | ast.AsyncFunctionDef | ast.ClassDef


@dataclass(frozen=True)
class Module:
    """One file of code: its path from the project's folder, its text and its tree."""

    path: str
    text: str
    tree: ast.Module

    @property
    def lines(self) -> int:
        """How long the file is."""
        return len(self.text.splitlines())

    @property
    def test(self) -> str | None:
        """Where its test stands; None for files that need none of their own."""
        path = Path(self.path)
        if path.stem in ("__init__", "__main__"):
            return None
        room = path.parent.relative_to(path.parts[0])
        under = Path("plugins") if path.parts[0] == "plugins" else room
        return (Path("tests") / under / f"test_{path.name}").as_posix()


@dataclass(frozen=True)
class Bar:
    """One line of the table: what is measured, its limit, and where the worst of it stands."""

    name: str
    measured: float
    limit: float
    at_least: bool = False
    unit: str = ""
    missed_at: tuple[str, ...] = ()

    @property
    def ok(self) -> bool:
        """Whether the measured value keeps to the limit."""
        return self.measured >= self.limit if self.at_least else self.measured <= self.limit

    def row(self) -> str:
        """The bar as a line of the table, followed by the places to mend if it is missed."""
        limit = f"{'>=' if self.at_least else '<='} {self.limit:g}{self.unit}"
        measured = f"{self.measured:g}{self.unit}"
        line = f"{self.name:<38}{measured:>10}{limit:>12}   {'ok' if self.ok else 'MISSED'}"
        shown = () if self.ok else self.missed_at[:20]
        return "\n".join((line, *(f"    {place}" for place in shown)))


def modules(root: Path) -> list[Module]:
    """All files of code under the measured rooms, in the order of their paths."""
    paths = sorted(path for room in ROOMS for path in (root / room).rglob("*.py"))
    return [read(root, path) for path in paths]


def read(root: Path, path: Path) -> Module:
    """One file; a syntax error in it is raised."""
    text = path.read_text(encoding="utf-8")
    return Module(path.relative_to(root).as_posix(), text, ast.parse(text, str(path)))


def rank(values: list[int], share: float) -> int:
    """The smallest value that `share` (0 to 1) of all values do not exceed; 0 of no values."""
    return sorted(values)[math.ceil(share * len(values)) - 1] if values else 0


def percent(found: int, of: int) -> float:
    """A share in percent, rounded down to a tenth, so that 94.99 never passes for 95."""
    return math.floor(1000 * found / of) / 10 if of else 100


def functions(module: Module) -> Iterator[tuple[int, str]]:
    """Length and place of every function."""
    for node in ast.walk(module.tree):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef) and node.end_lineno:
            yield node.end_lineno - node.lineno + 1, f"{module.path}:{node.lineno} {node.name}"


def public(module: Module) -> Iterator[tuple[bool, str]]:
    """Whether each public thing has a docstring, and its place: the module, its classes and
    functions, and theirs; not what stands inside a function, nor overloads and setters."""
    yield ast.get_docstring(module.tree) is not None, module.path
    for node in _public_in(module.tree):
        yield ast.get_docstring(node) is not None, f"{module.path}:{node.lineno} {node.name}"


def _public_in(parent: ast.Module | ast.ClassDef) -> Iterator[Definition]:
    for node in parent.body:
        if isinstance(node, Definition) and not node.name.startswith("_") and not _again(node):
            yield node
            if isinstance(node, ast.ClassDef):
                yield from _public_in(node)


def _again(node: Definition) -> bool:
    """Whether this is one more signature of a thing that is documented elsewhere."""
    marks = {ast.unparse(mark).rpartition(".")[2] for mark in node.decorator_list}
    return bool(marks & {"overload", "setter", "deleter"})


def introduced(module: Module) -> bool:
    """Whether the very first line is a docstring of at least three words."""
    first = module.text.partition("\n")[0]
    return first.startswith('"""') and len(first.strip('"').split()) >= 3


def left_open(module: Module) -> Iterator[str]:
    """Every comment or docstring that puts work off, by its place."""
    for token in tokenize.generate_tokens(io.StringIO(module.text).readline):
        if token.type in (tokenize.COMMENT, tokenize.STRING) and LEFT_OPEN.search(token.string):
            yield f"{module.path}:{token.start[0]}"


def lengths(found: list[tuple[int, str]], what: str, share: int, most: int) -> list[Bar]:
    """The two bars of a kind of length: 95 in 100, and none above."""
    values = [length for length, _ in found]
    longest = sorted(found, reverse=True)
    above = {k: tuple(f"{n} lines: {at}" for n, at in longest if n > k) for k in (share, most)}
    return [
        Bar(f"{what}: 95 in 100, lines", rank(values, 0.95), share, missed_at=above[share]),
        Bar(f"{what}: longest, lines", max(values, default=0), most, missed_at=above[most]),
    ]


def shared(found: list[tuple[bool, str]], what: str, limit: float) -> Bar:
    """The bar of a share: how many of all have it, and which have not."""
    have = sum(has for has, _ in found)
    lacking = tuple(at for has, at in found if not has)
    return Bar(what, percent(have, len(found)), limit, at_least=True, unit=" %", missed_at=lacking)


def measure(root: Path) -> list[Bar]:
    """Every bar of the project in a folder."""
    code = modules(root)
    bodies = [one for module in code for one in functions(module)]
    todo = tuple(place for module in code for place in left_open(module))
    plugin = sum(module.lines for module in code if module.path.startswith(PLUGIN))
    mirrors = [(module.path, module.test) for module in code if module.test]
    tests = [((root / test).is_file(), f"{path}: no {test}") for path, test in mirrors]
    return [
        Bar("function: median, lines", statistics.median([n for n, _ in bodies] or [0]), 8),
        *lengths(bodies, "function", 30, 60),
        *lengths([(module.lines, module.path) for module in code], "module", 300, 400),
        shared([one for module in code for one in public(module)], "public docstrings", 95),
        shared([(introduced(m), m.path) for m in code], "first line says what it is for", 100),
        shared(tests, "test file of the same name", 95),
        Bar("work put off in comments", len(todo), 0, missed_at=todo),
        Bar("builder plugin: together, lines", plugin, 249),
    ]


def main(arguments: list[str]) -> int:
    """Print the table; 1 when a bar is missed or nothing is there to measure."""
    root = Path(arguments[0]) if arguments else Path(__file__).resolve().parent.parent
    if not modules(root):
        print(f"no code under {root}: nothing was measured")
        return 1
    bars = measure(root)
    print("\n".join(bar.row() for bar in bars))
    return int(not all(bar.ok for bar in bars))


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
