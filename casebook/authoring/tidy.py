"""The files of an archive in their settled writing: which places differ, and what they become."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import dataclass
from pathlib import Path

from casebook.authoring.edits import Change, Written, apply
from casebook.authoring.settled import Settler, trailing
from casebook.diagnostics import Diagnostic, Severity
from casebook.files import write_whole
from casebook.model.archive import Case
from casebook.model.base import Record
from casebook.model.settings import Settings
from casebook.model.treatment import Episode, Recipe
from casebook.model.vocabulary import KINDS, Term
from casebook.source import Mapping as MappingNode
from casebook.vocabulary import Lexicon

FORMS = (
    (
        "A record with no key but the one its short form stands for is written short.",
        "material: {is: linen}",
        "material: linen",
    ),
    (
        "A record that one text says whole is that text.",
        "dries: {for: 2 h, under: [blotter, weights]}",
        "dries: 2 h under blotter + weights",
    ),
    ("A list in brackets with one text in it is that text.", "hands: [AM]", "hands: AM"),
    (
        "A word of the vocabulary is written as its id; a synonym is kept.",
        "adhesive: Wheat starch paste",
        "adhesive: wheat-starch-paste",
    ),
    ("Yes and no are `yes` and `no`.", "temporary: True", "temporary: yes"),
    ("A way of not knowing is in small letters.", "time: Not recorded", "time: not recorded"),
    ("A choice is written as the list of choices has it.", "grain: Along", "grain: along"),
    ("White space at the end of a line goes.", "fate: discarded  ", "fate: discarded"),
)
"""What is settled: the rule, a step written otherwise, and the same as `tidy` leaves it."""

NEVER = (
    "comments, blank lines and the order of keys",
    "quantities and dates: a printed measure is evidence",
    "synonyms: they may say more than their term",
    "quotes, save where a place is written anew",
    "lists written under one another, and lists of records",
    "a short form in whose way a comment stands",
    "the prose below the keys, and texts over several lines",
    "line ends",
    "any place that would then read otherwise",
)
"""What is never touched."""


@dataclass(frozen=True, slots=True)
class Tidied:
    """One file: the places that change, those that had to be left, and its text afterwards.

    `faults` are the errors for which the file is left alone. `before` and `after` are its bytes;
    they are one where nothing changes.
    """

    file: str
    before: Written
    after: Written
    changes: tuple[Change, ...] = ()
    left: tuple[Change, ...] = ()
    faults: tuple[Diagnostic, ...] = ()

    def old(self, change: Change) -> str:
        """What stands at a place before it is changed."""
        return self.before.text[change.start : change.end]


def tidied(data: bytes, file: str, cls: type[Record], lexicon: Lexicon) -> Tidied:
    """A file as it should be written. `file` is its path in the archive, in which `.md` has prose.

    The record is one of `cls`, in `vocabulary/` a table of them. Never raises for what it holds.
    """
    written = Written(data, file)
    errors = tuple(one for one in written.faults if one.severity is Severity.ERROR)
    if errors or not isinstance(written.root, MappingNode):
        return Tidied(file, written, written, faults=errors)
    changes = _changes(written, written.root, cls, lexicon)
    after, left = apply(written, changes)
    made = tuple(one for one in changes if one not in left)
    return Tidied(file, written, after, made, left)


def _changes(
    written: Written, root: MappingNode, cls: type[Record], lexicon: Lexicon
) -> list[Change]:
    """All that is to be written otherwise, in the order of the file."""
    settler = Settler(written, lexicon)
    tables = written.file.startswith("vocabulary/")
    nodes = [one.value for one in root.entries] if tables else [root]
    found = [change for node in nodes for change in settler.record(cls, node).changes]
    blanks = [one for one in trailing(written) if not _inside(one, found)]
    return sorted((*found, *blanks), key=lambda one: one.start)


def _inside(one: Change, others: list[Change]) -> bool:
    return any(other.start <= one.start and one.end <= other.end for other in others)


def tidy(root: Path, lexicon: Lexicon, cases: Collection[str] | None = None) -> Iterator[Tidied]:
    """Every file of an archive, or of the cases in some folders of `cases/`; nothing is written."""
    for path, cls in files_of(root, cases):
        yield tidied(path.read_bytes(), path.relative_to(root).as_posix(), cls, lexicon)


def files_of(
    root: Path, cases: Collection[str] | None = None
) -> Iterator[tuple[Path, type[Record]]]:
    """The files of keys in an archive, each with the type of its records."""
    if cases is None:
        yield from ((path, Settings) for path in _there(root / "lab.yml"))
        for path in sorted((root / "vocabulary").glob("*.yml")):
            if path.stem in (*KINDS, "recipes"):
                yield path, Recipe if path.stem == "recipes" else Term
    for folder in sorted((root / "cases").glob("[!._]*/")):
        if cases is None or folder.name in cases:
            yield from ((path, Case) for path in _there(folder / "case.md"))
            yield from ((path, Episode) for path in sorted((folder / "episodes").glob("*.md")))


def _there(path: Path) -> Iterator[Path]:
    if path.is_file():
        yield path


def forms_page() -> str:
    """The settled writings as a page of Markdown, for the manual."""
    rows = "\n".join(
        f"| {says} | `{before}`{' (two spaces)' if before.endswith(' ') else ''} | `{after}` |"
        for says, before, after in FORMS
    )
    never = "\n".join(f"- {one};" for one in NEVER)
    return _PAGE.format(rows=rows, never=f"{never.removesuffix(';')}.")


_PAGE = """# One way to write each thing

`casebook tidy` writes what can be written in two ways the one settled way; `casebook tidy --check`
only lists the places, and exits with 1 if there are any. Every other byte of a file stays, and a
file without such a place is not written at all.

| settled | instead of | it writes |
|---|---|---|
{rows}

Before a file is saved it is read again: it must say what it said. A file with an error in its text,
such as an open bracket, is left alone. What is never touched:

{never}
"""


def save(root: Path, one: Tidied) -> None:
    """Write a file that changes, whole; one that does not is not touched."""
    if one.changes:
        write_whole(root / one.file, one.after.data)
