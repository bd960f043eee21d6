"""Each bar fails on a small tree that misses it, and a good tree passes them all."""

from __future__ import annotations

import pytest

import bars

GOOD = '''"""Counts the things on the bench."""


def count(things):
    """How many there are."""
    return len(things)
'''


def write(root, path, text):
    target = root / path
    target.parent.mkdir(parents=True, exist_ok=True)
    target.write_text(text, encoding="utf-8")


def body(lines):
    """A documented function of so many lines."""
    rest = "    things += 1\n" * (lines - 2)
    return f'def many(things):\n    """Adds."""\n{rest}\n\n'


@pytest.fixture
def good(tmp_path):
    """A small project that keeps to every bar."""
    for name in ("one", "two", "three"):
        write(tmp_path, f"casebook/room/{name}.py", GOOD)
        write(tmp_path, f"tests/room/test_{name}.py", '"""Tests."""\n')
    write(tmp_path, "casebook/__init__.py", '"""The core of a small project."""\n')
    write(tmp_path, "plugins/casebook_mkdocs/build.py", GOOD)
    write(tmp_path, "tests/plugins/test_build.py", '"""Tests."""\n')
    return tmp_path


def missed(root):
    return {bar.name for bar in bars.measure(root) if not bar.ok}


def test_a_good_tree_passes_and_every_bar_is_in_the_table(good, capsys):
    assert bars.main([str(good)]) == 0
    rows = capsys.readouterr().out.splitlines()
    assert len(rows) == len(bars.measure(good)) == 10
    assert all(row.endswith("   ok") for row in rows)


MISSES = {
    "function: median, lines": ("casebook/room/one.py", GOOD + body(9) * 5),
    "function: 95 in 100, lines": ("casebook/room/one.py", GOOD + body(31)),
    "function: longest, lines": ("casebook/room/one.py", GOOD + body(61)),
    "module: 95 in 100, lines": ("casebook/room/one.py", GOOD + "#\n" * 295),
    "module: longest, lines": ("casebook/room/one.py", GOOD + "#\n" * 395),
    "public docstrings": ("casebook/room/one.py", GOOD + "\n\ndef bare():\n    return 1\n"),
    "first line says what it is for": ("casebook/room/one.py", "# a comment first\n" + GOOD),
    "test file of the same name": ("casebook/room/four.py", GOOD),
    "work put off in comments": ("casebook/room/one.py", GOOD + "# TO" + "DO: the rest\n"),
    "builder plugin: together, lines": ("plugins/casebook_mkdocs/build.py", GOOD + "#\n" * 244),
}


@pytest.mark.parametrize("name", MISSES)
def test_a_bar_that_is_missed_fails_the_run_and_names_the_place(name, good, capsys):
    path, text = MISSES[name]
    write(good, path, text)
    assert name in missed(good)
    assert bars.main([str(good)]) == 1
    table = capsys.readouterr().out
    row = next(line for line in table.splitlines() if line.startswith(name))
    assert row.endswith("MISSED")


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("function: median, lines", GOOD + body(8) * 5),
        ("function: 95 in 100, lines", GOOD + body(30)),
        ("module: 95 in 100, lines", GOOD + "#\n" * 294),
        ("work put off in comments", GOOD + "LEFT = 'nothing to be done'\n"),
    ],
)
def test_a_bar_is_kept_up_to_its_very_limit(name, text, good):
    write(good, "casebook/room/one.py", text)
    assert name not in missed(good)


def test_every_bar_has_a_tree_that_misses_it(good):
    assert {bar.name for bar in bars.measure(good)} == set(MISSES)


def test_the_place_of_a_function_that_is_too_long_is_named(good, capsys):
    write(good, "casebook/room/one.py", GOOD + body(61))
    bars.main([str(good)])
    assert "61 lines: casebook/room/one.py:7 many" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("path", "test"),
    [
        ("casebook/flow.py", "tests/test_flow.py"),
        ("casebook/values/dates.py", "tests/values/test_dates.py"),
        ("plugins/casebook_mkdocs/plugin.py", "tests/plugins/test_plugin.py"),
        ("casebook/values/__init__.py", None),
        ("casebook/__main__.py", None),
    ],
)
def test_tests_stand_where_the_code_stands(path, test, tmp_path):
    write(tmp_path, path, GOOD)
    assert bars.read(tmp_path, tmp_path / path).test == test


def test_private_things_overloads_and_setters_need_no_docstring(tmp_path):
    write(
        tmp_path,
        "casebook/one.py",
        GOOD
        + "def _own():\n    def inner(): ...\n\n@typing.overload\ndef f(): ...\n\n"
        + 'class Thing:\n    """One."""\n    @size.setter\n    def size(self, n): ...\n',
    )
    found = list(bars.public(bars.read(tmp_path, tmp_path / "casebook/one.py")))
    assert [place for _, place in found] == [
        "casebook/one.py",
        "casebook/one.py:4 count",
        "casebook/one.py:13 Thing",
    ]
    assert all(has for has, _ in found)


@pytest.mark.parametrize(("found", "of", "share"), [(0, 0, 100), (9499, 10000, 94.9), (19, 20, 95)])
def test_a_share_is_rounded_down(found, of, share):
    assert bars.percent(found, of) == share


@pytest.mark.parametrize(("values", "at"), [([], 0), ([7], 7), (list(range(1, 101)), 95)])
def test_95_in_100_is_by_nearest_rank(values, at):
    assert bars.rank(values, 0.95) == at


def test_where_nothing_is_there_nothing_passes(tmp_path, capsys):
    assert bars.main([str(tmp_path)]) == 1
    assert "nothing was measured" in capsys.readouterr().out
