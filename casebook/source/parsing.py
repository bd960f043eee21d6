"""From text to a tree with its faults; behind a fault of grammar the reading goes on."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from casebook.diagnostics import Diagnostic
from casebook.source.compose import Composer
from casebook.source.listed import by_item
from casebook.source.nodes import Entry, Mapping, Node
from casebook.source.text import Source, clean
from casebook.source.traps import Pair, Placed, entries_of

_MAX_RESTARTS = 20
_SECTION = re.compile(
    r"""^(?:[^\s#'"\-\[\]{},&*!|>%@`?:][^\n]*?:(?=\s|$)|"[^"\n]*"\s*:|'[^'\n]*'\s*:)""",
    re.MULTILINE,
)


@dataclass(frozen=True, slots=True)
class Parsed:
    """The root of a file with every fault met; after a fault of grammar, what could be read."""

    node: Node | None
    diagnostics: tuple[Diagnostic, ...]


def parse(text: str, file: str, first_line: int = 1) -> Parsed:
    """Read a YAML text. Never raises for what the text holds.

    `file` is the name put into places, `first_line` the line of the file at which the text begins.
    Behind a fault of grammar the reading goes on at the next key in the first column: the node
    then lacks the entries that could not be read.
    """
    source, hidden = clean(text, file, first_line)
    whole = Composer(source)
    if whole.failure is None:
        node, faults = whole.root, whole.faults
    else:
        node, faults = _recovered(whole)
    return Parsed(node, tuple(sorted({*hidden, *faults}, key=_in_order)))


def _in_order(fault: Diagnostic) -> tuple[int, int, str, str]:
    place = (fault.span.line, fault.span.column) if fault.span else (0, 0)
    return (*place, fault.rule, fault.message)


def _recovered(broken: Composer) -> tuple[Node | None, list[Diagnostic]]:
    """Read a text that broke off section by section, a section being a key in the first column."""
    entries: list[Entry] = []
    faults: list[Diagnostic] = []
    for _ in range(_MAX_RESTARTS):
        rest = _save(broken, entries, faults)
        if rest is None:
            break
        broken = Composer(rest)
        if broken.failure is None:
            _keep(broken, entries, faults)
            break
    if not entries:
        return None, faults
    pairs = [_pair(entry) for entry in entries]
    whole = entries_of(broken.source, pairs, faults, flow=False)
    last = whole[-1].value.span
    span = replace(whole[0].key.span, end_line=last.end_line, end_column=last.end_column)
    return Mapping(whole, span), faults


def _pair(entry: Entry) -> Pair:
    return Pair(Placed(entry.key, 0, 0), Placed(entry.value, 0, 0))


def _save(broken: Composer, entries: list[Entry], faults: list[Diagnostic]) -> Source | None:
    """Keep what stood before the broken section and its own faults; what follows it, if any."""
    top, source = broken.top(), broken.source
    if top is None or broken.failure is None:
        faults += [*broken.faults, *_known(broken.failure)]
        return None
    key = top.key or (top.pairs.pop().key if top.pairs else None)
    start = source.line_start(key.start) if key else 0
    entries += entries_of(source, top.pairs, faults, flow=False)
    line = source.line_at(start)
    faults += [fault for fault in broken.faults if fault.span and fault.span.line < line]
    following = _SECTION.search(source.text, key.end if key else 1)
    end = following.start() if following else len(source.text)
    _keep(Composer(source.part(start, end)), entries, faults, broken.failure)
    return source.part(end, len(source.text)) if following else None


def _keep(
    section: Composer,
    entries: list[Entry],
    faults: list[Diagnostic],
    otherwise: Diagnostic | None = None,
) -> None:
    """Keep the entries and faults of a section; `otherwise` is its fault if it shows none alone.

    Of a broken list the items that can be read are kept.
    """
    listed = by_item(section.source) if section.failure else None
    if listed:
        entries.append(listed.entry)
        faults += listed.faults
        return
    faults += section.faults
    faults += _known(section.failure or otherwise)
    if isinstance(section.root, Mapping) and section.failure is None:
        entries += section.root.entries


def _known(fault: Diagnostic | None) -> list[Diagnostic]:
    return [fault] if fault else []
