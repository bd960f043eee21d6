"""The files beside a case's page: its citation for programs, its data, and the page as text."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from casebook.model.archive import Case
from casebook.output.case_contexts import FileView
from casebook.output.citing import Citation, bibtex, csl_json
from casebook.output.site import Asset

Text = Callable[[], str]

FILES = (
    ("citation.bib", "The citation for BibTeX", ".bib"),
    ("citation.json", "The citation for other programs", "CSL-JSON"),
    ("case.jsonld", "The case in brief, for programs", "JSON-LD, schema.org"),
    ("case.txt", "The case as plain text", "UTF-8"),
)
"""The names that a file has for ever beside its page, what it is, and its kind."""


def files_of(case: Case) -> tuple[FileView, ...]:
    """The files as the page offers them; once saved, a name says which case it is of."""
    return tuple(
        FileView(name, f"{case.id}.{name.partition('.')[2]}", title, kind)
        for name, title, kind in FILES
    )


def downloads(case: Case, cited: Citation, data: Text, text: Text) -> Iterator[Asset]:
    """The files themselves, each made only when it is asked for.

    `data` makes what the page itself says to programs, `text` the page as plain text.
    """
    makers: tuple[Text, ...] = (lambda: bibtex(cited), lambda: csl_json(cited), data, text)
    for (name, _, _), made in zip(FILES, makers, strict=True):
        yield Asset(f"cases/{case.id}/{name}", _later(made))


def _later(made: Text) -> Callable[[], bytes]:
    return lambda: made().encode()
