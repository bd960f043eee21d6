"""Strategies for hypothesis: cases that are half written."""

from __future__ import annotations

import typing
from dataclasses import replace
from typing import Any

from hypothesis import strategies as st

from casebook.model.archive import Case
from casebook.model.base import Gap, Record, Unknowing, schema

KEPT = ("id", "audience")
"""What a case on a site has for certain: the reader sees to it."""


@st.composite
def half_written(draw: st.DrawFn, whole: Case) -> Case:
    """A case from which any field of any record may be missing, or said not to be known."""
    kept = {name: getattr(whole, name) for name in KEPT}
    less: Case = _less(draw, whole)
    return replace(less, **kept)


def _less(draw: st.DrawFn, one: Record) -> Any:
    changes: dict[str, Any] = {}
    empty = type(one)()
    for info in schema(type(one)).values():
        value = getattr(one, info.name)
        if not value:
            continue
        fate = draw(st.sampled_from(("kept", "kept", "kept", "left out", "gap")))
        if fate == "left out":
            changes[info.name] = getattr(empty, info.name)
        elif fate == "gap" and _may_be_gap(info.type):
            changes[info.name] = Gap(draw(st.sampled_from(Unknowing)))
        else:
            changes[info.name] = _inside(draw, value)
    return replace(one, **changes)


def _may_be_gap(hint: Any) -> bool:
    return Gap in typing.get_args(hint)


def _inside(draw: st.DrawFn, value: Any) -> Any:
    if isinstance(value, Record):
        return _less(draw, value)
    if isinstance(value, tuple):
        return tuple(_inside(draw, one) for one in value)
    if hasattr(value, "items"):
        return {name: _inside(draw, one) for name, one in value.items()}
    return value
