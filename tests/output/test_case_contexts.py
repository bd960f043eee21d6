"""What a case's page is given never changes once made."""

from __future__ import annotations

import dataclasses
import inspect

import pytest

from casebook.output import case_contexts

CLASSES = [
    one
    for _, one in inspect.getmembers(case_contexts, dataclasses.is_dataclass)
    if one.__module__ == case_contexts.__name__
]


@pytest.mark.parametrize("cls", CLASSES, ids=lambda cls: cls.__name__)
def test_a_context_is_frozen_and_documented(cls: type) -> None:
    assert cls.__dataclass_params__.frozen  # type: ignore[attr-defined]
    assert cls.__doc__
