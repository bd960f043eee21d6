"""Contexts are values: they never change once made."""

from __future__ import annotations

import dataclasses
import inspect

import pytest

from casebook.output import contexts

CLASSES = [one for _, one in inspect.getmembers(contexts, dataclasses.is_dataclass)]


@pytest.mark.parametrize("cls", CLASSES, ids=lambda cls: cls.__name__)
def test_a_context_is_frozen_and_documented(cls: type) -> None:
    assert cls.__dataclass_params__.frozen  # type: ignore[attr-defined]
    assert cls.__doc__
