"""A new case: its folder with a commented record, a first episode and a place for photos."""

from __future__ import annotations

import json
import re
from datetime import date
from pathlib import Path

from casebook.authoring.init import InTheWay
from casebook.files import write_whole
from casebook.loading import ID, RESERVED

_PATTERN = Path(__file__).parent / "case"
_GIVEN_ID = re.compile(r"^ *[\"']?id[\"']?: *[\"']?([a-z0-9-]+)", re.MULTILINE)


def new_case(root: Path, name: str, today: date) -> Path:
    """Make the folder of a case, called by an id, by a title or by nothing ("").

    A case without an id gets the next number of the year, such as `2025-031`. Raises `InTheWay`
    where the id or the folder is taken, and `OSError`.
    """
    cases = root / "cases"
    given = _is_id(name)
    taken = _ids(cases)
    case_id = name if given else _next_number(taken, today.year)
    title = "" if given else name
    folder = cases / "-".join(filter(None, (case_id, _slug(title))))
    if case_id in taken:
        raise InTheWay([taken[case_id]])
    if folder.exists():
        raise InTheWay([folder])
    _write(folder, _filled("case.md", case_id, title, today), "case.md")
    _write(folder, _filled("01-arrival.md", case_id, title, today), "episodes/01-arrival.md")
    (folder / "photos").mkdir()
    return folder


def _write(folder: Path, text: str, name: str) -> None:
    path = folder / name
    path.parent.mkdir(parents=True, exist_ok=True)
    write_whole(path, text)


def _is_id(name: str) -> bool:
    """Whether a name is meant for an id: made as one, with a figure in it."""
    made = ID.fullmatch(name) and not RESERVED.fullmatch(name)
    return bool(made) and any(sign.isdigit() for sign in name)


def _ids(cases: Path) -> dict[str, Path]:
    """The ids in use, as the records say and as their folders are called, each with its folder."""
    found: dict[str, Path] = {}
    for record in sorted(cases.glob("*/case.md")):
        said = _GIVEN_ID.search(record.read_text(encoding="utf-8", errors="replace"))
        found[said[1] if said else record.parent.name] = record.parent
    return found


def _next_number(taken: dict[str, Path], year: int) -> str:
    numbers = [int(one[5:8]) for one in taken if re.match(rf"{year}-\d\d\d", one)]
    return f"{year}-{max(numbers, default=0) + 1:03}"


def _slug(title: str) -> str:
    """A title as the end of a folder's name, cut at a word."""
    words = re.sub(r"[^a-z0-9]+", "-", title.lower().replace("'", "")).strip("-")
    return words if len(words) <= 40 else words[:41].rpartition("-")[0]


def _filled(name: str, case_id: str, title: str, today: date) -> str:
    """A pattern with its four blanks filled; a title is quoted so that no sign in it acts."""
    text = (_PATTERN / name).read_text(encoding="utf-8")
    shown = json.dumps(title, ensure_ascii=False) if title else "not recorded"
    return (
        text.replace("@ID@", case_id)
        .replace("@TITLE@", shown)
        .replace("@TODAY@", today.isoformat())
    )
