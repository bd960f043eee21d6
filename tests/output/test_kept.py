"""What was worked out is kept, and comes back as it was."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from casebook.output.kept import kept


@dataclass(frozen=True)
class Row:
    number: int
    text: str


@dataclass(frozen=True)
class Drawing:
    svg: str
    rows: tuple[Row, ...]
    lines: tuple[str, ...] = ()


class Memory:
    """A store that forgets nothing, and counts."""

    def __init__(self) -> None:
        self.data: dict[tuple[str, str], bytes] = {}

    def get(self, kind: str, key: str) -> bytes | None:
        return self.data.get((kind, key))

    def put(self, kind: str, key: str, data: bytes) -> None:
        self.data[kind, key] = data


MADE = Drawing(Markup("<svg>&amp;</svg>"), (Row(1, "spine"), Row(2, 'Leim – "alt"')), ("a", "b"))


def never() -> Drawing:
    raise AssertionError("made again")


def test_what_was_made_comes_back_as_it_was() -> None:
    store = Memory()
    assert kept(store, "drawing", "key", Drawing, lambda: MADE) == MADE
    again = kept(store, "drawing", "key", Drawing, never)
    assert again == MADE
    assert isinstance(again.svg, Markup)
    assert isinstance(again.rows, tuple)
    assert not isinstance(again.rows[0].text, Markup)


def test_another_key_is_made_anew() -> None:
    store = Memory()
    kept(store, "drawing", "one", Drawing, lambda: MADE)
    other = Drawing("", ())
    assert kept(store, "drawing", "other", Drawing, lambda: other) == other


def test_without_a_store_it_is_made_each_time() -> None:
    assert kept(None, "drawing", "key", Drawing, lambda: MADE) is MADE
