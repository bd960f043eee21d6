"""What is dear to work out, kept between builds: values of plain text and numbers, as JSON."""

from __future__ import annotations

import json
import typing
from collections.abc import Callable
from dataclasses import asdict, fields, is_dataclass
from functools import cache
from typing import Any, Protocol, TypeVar

from markupsafe import Markup

T = TypeVar("T")


class Store(Protocol):
    """Keeps bytes by a key; what it does not have any more is worked out again."""

    def get(self, kind: str, key: str) -> bytes | None:
        """The data, or None."""

    def put(self, kind: str, key: str, data: bytes) -> None:
        """Keep data."""


def kept(store: Store | None, kind: str, key: str, cls: type[T], make: Callable[[], T]) -> T:
    """A frozen dataclass of texts, numbers, tuples and the like, from the store or made anew.

    `key` must say all that `make` looks at. Texts come back as `Markup` where they were so.
    """
    found = store.get(kind, key) if store else None
    if found is not None:
        value: T = _read(cls, json.loads(found))
        return value
    made = make()
    if store:
        store.put(kind, key, json.dumps(_written(made), ensure_ascii=False).encode())
    return made


def _written(value: Any) -> Any:
    if is_dataclass(value) and not isinstance(value, type):
        return asdict(value, dict_factory=lambda pairs: {k: _written(v) for k, v in pairs})
    if isinstance(value, (tuple, list)):
        return [_written(one) for one in value]
    return {"html": str(value)} if isinstance(value, Markup) else value


def _read(hint: Any, data: Any) -> Any:
    if isinstance(data, list):
        inner = typing.get_args(hint)[0]
        return tuple(_read(inner, one) for one in data)
    if isinstance(data, dict):
        if data.keys() == {"html"}:
            return Markup(data["html"])
        return hint(**{name: _read(type_, data[name]) for name, type_ in _fields(hint)})
    return data


@cache
def _fields(cls: Any) -> tuple[tuple[str, Any], ...]:
    hints = typing.get_type_hints(cls)
    return tuple((one.name, hints[one.name]) for one in fields(cls))
