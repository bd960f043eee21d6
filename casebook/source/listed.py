"""A broken list read item by item, so that a slip in one item does not hide the others."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from casebook.diagnostics import Diagnostic
from casebook.source.compose import Composer
from casebook.source.nodes import Entry, Mapping, Node, Sequence
from casebook.source.text import Source

_KEY_ALONE = re.compile(r"[^\n]*:[ \t]*(?:#[^\n]*)?\n")
_ITEM = re.compile(r"^( *)-(?=\s)", re.MULTILINE)


@dataclass(frozen=True, slots=True)
class Listed:
    """A key with the items of its list that can be read, and the faults of all of them."""

    entry: Entry
    faults: tuple[Diagnostic, ...]


def by_item(section: Source) -> Listed | None:
    """Read the list under a key item by item; None where it is no such list, or nothing is won.

    `section` begins with the key, alone on its line; its items begin with `- `, one below the
    other.
    """
    head = _KEY_ALONE.match(section.text)
    key = Composer(section.part(0, head.end())).root if head else None
    if head is None or not isinstance(key, Mapping):
        return None
    items: list[Node] = []
    faults: list[Diagnostic] = []
    broken = False
    for part in _parts(section, head.end()):
        one = Composer(part)
        faults += [*one.faults, *([one.failure] if one.failure else [])]
        broken = broken or one.failure is not None
        items += one.root.items if isinstance(one.root, Sequence) and not one.failure else ()
    if not (items and broken):
        return None
    value = Sequence(tuple(items), items[0].span)
    return Listed(Entry(key.entries[0].key, value), tuple(faults))


def _parts(section: Source, start: int) -> Iterator[Source]:
    """The items of a list, each by itself, up to the next one of the same indentation."""
    marks = list(_ITEM.finditer(section.text, start))
    own = [mark.start() for mark in marks if mark[1] == marks[0][1]]
    if own and not section.text[start : own[0]].strip():
        for begin, end in pairwise((*own, len(section.text))):
            yield section.part(begin, end)
