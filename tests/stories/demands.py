"""One demand on the record in one text: a small archive, what is said of it, its page, its sums.

A text begins with the demand in words. Then come the files, each after a line `-- PATH --`, and
behind them what is expected, after `-- diagnostics --`, `-- page --` and `-- figures --`. A path
in `cases/`, `vocabulary/` or `lab.yml` stands from the archive's top; `case.md` and `episodes/`
are those of the case in question, and the keys that a `case.md` does not name are taken from a
complete one, against which no rule has anything to say (a line `# no care` leaves one out); its
sittings come first, unless the text has `steps` or `episodes` of its own. Page and figures are
what that case says beyond the complete one.
"""

from __future__ import annotations

import datetime
import re
import zlib
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from PIL import Image

from casebook import flow
from casebook.compute.areas import LayerArea
from casebook.compute.clocks import Clock, Hours
from casebook.compute.figures import Figure
from casebook.compute.summary import summarise
from casebook.diagnostics import Diagnostic
from casebook.loading import Loaded
from casebook.model.archive import Case
from casebook.model.base import Audience
from casebook.output.tables import area_text, clock_text
from casebook.vocabulary import Lexicon
from tests.builders import PICTURES
from tests.output.plain import beyond, sections
from tests.rules.written import BASE

HOME = Path(__file__).parents[1] / "golden" / "demands"
TODAY = datetime.date(2026, 1, 1)
MAIN = "cases/2025-031"
EXPECTED = ("diagnostics", "page", "figures")
SECTIONS = frozenset(
    {
        *("The object", "Cases that belong with it", "Condition", "What was proposed and agreed"),
        *("The treatment", "Materials", "Time", "How it holds", "Care", "Photographs"),
        "What this record does not say",
    }
)
"""The sections that tell a record in words; structure and likeness have tests of their own."""

PLANNED = (
    "materials: [linen, cotton, calf, kozo-paper, japanese-tissue, tengujo, remoistenable-tissue, "
    "linen-thread, gelatine, millboard, wheat-starch-paste, methyl-cellulose, "
    "paste-and-methyl-cellulose, hydroxypropyl-cellulose]"
)
"""What the complete case's plan names, so that steps may use any of it."""

_HEAD = re.compile(r"^-- (.+) --\n", re.MULTILINE)
_KEY = re.compile(r"^([a-z-]+):", re.MULTILINE)
_LEFT_OUT = re.compile(r"^# no ([a-z-]+)$", re.MULTILINE)
_PHOTO = re.compile(r"file: ([\w-]+\.jpg)")


@dataclass(frozen=True, slots=True)
class Demand:
    """A demand as it is written down: its words, its files by path, and what is expected."""

    name: str
    words: str
    files: dict[str, str]
    source: str
    expected: str


COMPLETE = Demand("complete", "", {}, "", "")
"""The complete case as it is."""


def demand(name: str) -> Demand:
    """The demand in a file."""
    text = (HOME / f"{name}.txt").read_text("utf-8")
    parts = _HEAD.split(text)
    named = list(zip(parts[1::2], parts[2::2], strict=True))
    files = {path: body for path, body in named if path.split()[0] not in EXPECTED}
    cut = re.search(r"^-- diagnostics --\n", text, re.MULTILINE)
    at = cut.start() if cut else len(text)
    return Demand(name, " ".join(parts[0].split()), files, text[:at], text[at:])


def names() -> list[str]:
    """The names of all demands."""
    return sorted(path.stem for path in HOME.glob("*.txt"))


def laid_out(one: Demand, root: Path) -> Loaded:
    """The archive of a demand, written to disk and read again."""
    files = {"lab.yml": "format: 1\nname: Invented bindery\n", **dict(_own(one.files))}
    for path, text in files.items():
        file = root / path
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(text, "utf-8")
        for photo in _PHOTO.findall(text) if path.endswith("case.md") else ():
            red, green, blue, _ = zlib.crc32(f"{path} {photo}".encode()).to_bytes(4, "big")
            Image.new("RGB", (24, 16), (red, green, blue)).save(file.parent / photo)
    return flow.load(root)


def _own(files: dict[str, str]) -> Iterator[tuple[str, str]]:
    """The files of an archive by their paths from its top, the case in question made whole."""
    for path, text in {"case.md": "---\n---\n", **files}.items():
        inside = path.startswith(("cases/", "vocabulary/")) or path == "lab.yml"
        record = path.endswith("case.md")
        yield (path if inside else f"{MAIN}/{path}"), whole(text) if record else text


def whole(text: str) -> str:
    """A record with the keys that it does not name taken from the complete one."""
    front, _, story = text.removeprefix("---").partition("\n---\n")
    named = {*_KEY.findall(front), *_LEFT_OUT.findall(front)}
    named |= {"episodes"} if "steps" in named else set()
    base = BASE.replace("materials: [linen]", PLANNED)
    rest = [block for key, block in _blocks(base) if key not in named]
    return f"---\n{front.strip()}\n{''.join(rest)}---\n{story}"


def _blocks(text: str) -> Iterator[tuple[str, str]]:
    """Each key at the margin with all that stands under it."""
    pieces = re.split(r"^(?=[a-z-]+:)", text.lstrip("\n"), flags=re.MULTILINE)
    for piece in pieces:
        if piece.strip():
            yield piece.partition(":")[0], piece


@dataclass(frozen=True, slots=True)
class Base:
    """What the complete case says by itself: the lines of its page, and its sums."""

    page: list[str]
    figures: list[str]


def base_in(root: Path) -> Base:
    """The complete case as an archive of its own."""
    loaded = laid_out(COMPLETE, root)
    return Base(_pages(loaded)["2025-031"], figures_of(_case(loaded), loaded))


def shown(one: Demand, root: Path, base: Base) -> str:
    """All that is expected of a demand, as it is now."""
    loaded = laid_out(one, root)
    parts = [("diagnostics", _told(flow.check(loaded, TODAY)))]
    pages = _pages(loaded)
    for name, lines in sorted(pages.items(), key=lambda pair: pair[0] != "2025-031"):
        title = "page" if name == "2025-031" else f"page {name}"
        parts.append((title, beyond(lines, base.page)))
    figures = figures_of(_case(loaded), loaded)
    parts.append(("figures", [line for line in figures if line not in base.figures]))
    return "".join(f"{line}\n" for name, lines in parts for line in (f"-- {name} --", *lines))


def _case(loaded: Loaded) -> Case:
    return next(case for case in loaded.archive.cases if case.id == "2025-031")


def _told(found: tuple[Diagnostic, ...]) -> list[str]:
    return [line for one in found for line in _lines(one)]


def _lines(one: Diagnostic) -> Iterator[str]:
    where = one.span.file.rpartition("/")[2] if one.span else "archive"
    yield f"{one.severity.word} {one.rule} ({where}): {one.message}"
    if one.hint:
        yield f"  {one.hint}"


def _pages(loaded: Loaded) -> dict[str, list[str]]:
    site = flow.publish(flow.show(loaded, Audience.LAB), PICTURES)
    pages = {page.address: page for page in site.pages}
    return {
        case.id: sections(str(pages[f"cases/{case.id}/index.html"].body()), SECTIONS)
        for case in loaded.archive.cases
    }


def figures_of(case: Case, loaded: Loaded) -> list[str]:
    """The sums of a case in short lines: hours, linings, what was used."""
    lexicon = Lexicon(loaded.archive.terms)

    def name(word: str) -> str:
        found = lexicon.resolve("operations", word)
        return found[1] if found else word

    summary = summarise(case, name)
    sheet, areas = summary.hours, summary.areas
    plan = {"planned": sheet.plan.planned, "actual": sheet.plan.actual}
    return [
        *_hours("in all", sheet.whole),
        *(f"plan, {key}: {_minutes(value)}" for key, value in plan.items() if value is not None),
        *(line for row in sheet.by_operation for line in _hours(" + ".join(row.keys), row.hours)),
        *(line for row in sheet.by_hand for line in _hours(_by(row.keys), row.hours)),
        *(_layer(layer) for layer in areas.layers),
        f"linings: bonded {area_text(areas.lining.bonded)}, now {area_text(areas.lining.now)}",
        *(
            f"used: {use.material} as {use.role.value}{' (perhaps)' if use.perhaps else ''}"
            f"{'' if use.named else ' (no name)'} on {', '.join(use.parts) or 'nothing named'}"
            for use in summary.uses
        ),
    ]


def _by(hands: tuple[str, ...]) -> str:
    return f"by {' + '.join(hands) or 'nobody named'}"


def _hours(name: str, hours: Hours) -> Iterator[str]:
    for clock in ("bench", "waiting", "drying"):
        time: Clock = getattr(hours, clock)
        told, why = clock_text(time), _why(time.minutes)
        if told or why:
            yield f"{name or 'in words'}, {clock}: {told or 'none'}{why}"


def _minutes(figure: Figure) -> str:
    return f"{figure.value} min{_why(figure)}"


def _why(figure: Figure) -> str:
    """The doubts about a figure in brackets."""
    return f" ({'; '.join(figure.reasons)})" if figure.reasons else ""


def _layer(layer: LayerArea) -> str:
    tally = layer.tally
    over = f", overhang {area_text(tally.overhang)}" if tally.overhang.value else ""
    bonded = area_text(tally.bonded)
    parts = ", ".join(layer.parts) or "nothing"
    return (
        f"layer {layer.layer}: {layer.operation}, on {parts}, bonded {bonded}{over}, "
        f"{layer.presence.value}{_why(tally.bonded)}"
    )
