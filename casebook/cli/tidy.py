"""The command that writes each thing in a record the one settled way."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import nullcontext

import click

from casebook.authoring.edits import Change
from casebook.authoring.tidy import Tidied, save
from casebook.authoring.tidy import tidy as tidy_all
from casebook.cli.shared import archive_option, find_archive, say, tell, uncollected
from casebook.loading import Loaded
from casebook.locks import lock
from casebook.terminal import visible
from casebook.values.showing import count_of
from casebook.vocabulary import Lexicon

CLEAN, FAULTS = 0, 1
WIDTH = 60
"""How much of a place is shown, in characters."""


@click.command()
@click.argument("cases", nargs=-1, metavar="[CASE]...")
@click.option("--check", is_flag=True, help="Change nothing; list the places, exit 1 if any.")
@archive_option
@uncollected()
def tidy(cases: tuple[str, ...], check: bool, archive: str | None) -> int:
    """Write what can be written in two ways the one settled way: in all records, or some cases.

    Short forms where they say the same, ids of the vocabulary, `yes` and `no`. Comments, order,
    measures, dates and prose stay as they are. A file that cannot be read is left alone, and the
    exit code is 1.

    \b
    Examples:
      casebook tidy
      casebook tidy 2025-031
      casebook tidy --check
    """
    from casebook import flow

    root = find_archive(archive)
    with nullcontext() if check else lock(root / ".casebook" / "tidy.lock", "tidying the records"):
        loaded = flow.load(root)
        lexicon = Lexicon(loaded.archive.terms)
        found = list(tidy_all(root, lexicon, _folders(loaded, cases) if cases else None))
        for one in () if check else found:
            save(root, one)
    tell(root, (fault for one in found for fault in one.faults), err=True)
    for line in _lines(found, check):
        click.echo(line)
    say(_summed(found, check))
    wrong = any(one.faults or one.left or (check and one.changes) for one in found)
    return FAULTS if wrong else CLEAN


def _folders(loaded: Loaded, cases: tuple[str, ...]) -> frozenset[str]:
    """The folders of the cases named, by id or by folder."""
    folders = frozenset(loaded.folders.get(one, one) for one in cases)
    for one in sorted(folders):
        if not (loaded.root / "cases" / one / "case.md").is_file():
            raise click.UsageError(f"there is no case `{one}` in this archive")
    return folders


def _lines(found: list[Tidied], check: bool) -> Iterator[str]:
    """What is told of each file: every place where it is only checked, else how many."""
    for one in found:
        if check:
            yield from (_place(one, change) for change in one.changes)
        elif one.changes:
            yield f"{visible(one.file)}: {count_of(len(one.changes), 'place')}"
        for change in one.left:
            yield f"{_at(one, change)}: left as it is: written otherwise it would say otherwise"


def _place(one: Tidied, change: Change) -> str:
    old, new = (_shown(text) for text in (one.old(change), change.text))
    return (
        f"{_at(one, change)}: {f'{old} → {new}' if old else 'white space at the end of the line'}"
    )


def _at(one: Tidied, change: Change) -> str:
    return f"{visible(one.file)}:{change.span.line}:{change.span.column}"


def _shown(text: str) -> str:
    """A text on one line, cut to a length that can be shown."""
    line = visible(" ".join(text.split()))
    return line if len(line) <= WIDTH else f"{line[: WIDTH - 1]}…"


def _summed(found: list[Tidied], check: bool) -> str:
    places = sum(len(one.changes) for one in found)
    files = count_of(sum(bool(one.changes) for one in found), "file")
    alone = sum(bool(one.faults) for one in found)
    ending = f"; left alone for its errors: {count_of(alone, 'file')}" if alone else ""
    if not places:
        return f"nothing to tidy in {count_of(len(found), 'file')}{ending}"
    verb = "to tidy" if check else "tidied"
    return f"{count_of(places, 'place')} in {files} {verb}{ending}"
