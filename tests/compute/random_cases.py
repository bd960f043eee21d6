"""Half-written cases at random, built from the schema's own types, to show that none raises."""

from __future__ import annotations

import types
import typing
from collections.abc import Mapping
from enum import StrEnum
from typing import Any

from hypothesis import strategies as st
from hypothesis.strategies import SearchStrategy

from casebook.model.archive import Case
from casebook.model.base import Gap, Record, Unknowing, schema
from casebook.values.colours import Colour
from casebook.values.dates import Date
from casebook.values.durations import Duration
from casebook.values.points import Box, Outline, Path, Point
from casebook.values.quantities import Count, Grammage, Length, Percent, Ratio

WORDS = ["spine", "board 1", "sheet/verso", "a", "b", "a/spine", "/", "", "line", "part", "pva"]
"""Few, so that references often meet what they name, or themselves."""

WRITTEN: Mapping[Any, list[str]] = {
    Length: ["68 mm", "about 14 mm", "16 1/4 in", "0 mm", "3-4 mm", "at least 2 mm"],
    Duration: ["40 min", "about 2 h", "overnight", "at least 1 h"],
    Count: ["0", "3", "about 40"],
    Grammage: ["5 g/m²"],
    Percent: ["4 %"],
    Ratio: ["1:2"],
    Date: ["2025-03-14"],
    Colour: ["L 52 a 3 b 10", "#aa8866"],
    Point: ["1 2", "40% 60%", "900 900"],
    Box: ["1 1 9 9", "1% 1% 9% 9%"],
    Path: ["1 1, 9 9", "1 1, 1 1"],
    Outline: ["1 1, 9 1, 9 9", "1 1, 9 9, 9 1, 1 9", "1 1, 1 1, 1 1"],
}
RECORDS_IN_A_LIST = 3
DEPTH = 6


def cases() -> SearchStrategy[Case]:
    """Whole cases of which any field may be missing, a gap, or filled at random."""
    return _record(Case, DEPTH)


def _record(cls: Any, depth: int) -> SearchStrategy[Any]:
    wanted = {
        info.name: _of(info.type, depth - 1)
        for info in schema(cls).values()
        if info.type is not None
    }
    return st.fixed_dictionaries({}, optional=wanted).map(lambda values: cls(**values))


def _of(hint: Any, depth: int) -> SearchStrategy[Any]:
    origin, args = typing.get_origin(hint), typing.get_args(hint)
    if origin is typing.Annotated:
        return _of(args[0], depth)
    if origin in (typing.Union, types.UnionType):
        return st.one_of([_of(arg, depth) for arg in args])
    if origin is tuple:
        most = RECORDS_IN_A_LIST if depth > 0 else 0
        return st.lists(st.deferred(lambda: _of(args[0], depth)), max_size=most).map(tuple)
    if origin is not None:
        return st.dictionaries(
            st.sampled_from(WORDS), st.deferred(lambda: _of(args[1], depth)), max_size=min(depth, 2)
        )
    return _plain(hint, depth)


def _plain(hint: Any, depth: int) -> SearchStrategy[Any]:
    if hint is Gap:
        return st.builds(Gap, st.sampled_from(Unknowing))
    if hint in WRITTEN:
        return st.sampled_from(WRITTEN[hint]).map(hint.parse)
    if hint is str:
        return st.sampled_from(WORDS)
    if hint is bool:
        return st.booleans()
    if isinstance(hint, type) and issubclass(hint, StrEnum):
        return st.sampled_from(hint)
    if isinstance(hint, type) and issubclass(hint, Record):
        return st.deferred(lambda: _record(hint, depth)) if depth > 0 else st.just(hint())
    return st.none()
