"""The short form of a record: the one text that its type reads back to exactly the same keys."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import product

from casebook.model.base import Record, remembered, schema

Said = str | list[str]
"""What a key says: a text, or a list of them."""

FIRST = ("{text}", "{key} {text}", "{text} on")
NEXT = (" {text}", ", {text}", " {key} {text}", " in {text}", ", {text} off")
"""How the first key and each one after it may stand in a text; the type itself says which."""

MOST = 3
"""How many keys a text stands for at most."""


def joined(cls: type[Record], said: Mapping[str, Said]) -> str | None:
    """One text for several keys of a type, or for one that is not its `SHORT`; None without one.

    Nothing here knows any type: ways of joining are tried, and `from_text` must give back the
    same keys with the same texts, such as `2 h under blotter + weights` for `for` and `under`.
    """
    if not 0 < len(said) <= MOST or not _reads_more(cls):
        return None
    keys = sorted(said, key=list(schema(cls)).index)
    wanted = {key: _plain(said[key]) for key in keys}
    for text in _tries({key: _text(said[key]) for key in keys}):
        if {key: _plain(one) for key, one in cls.from_text(text).items()} == wanted:
            return text
    return None


@remembered
def _reads_more(cls: type[Record]) -> bool:
    """Whether a type reads more out of a text than the one key that `SHORT` names."""
    return any("from_text" in vars(one) for one in cls.__mro__ if one is not Record)


def _tries(texts: Mapping[str, str]) -> Iterator[str]:
    for forms in product(FIRST, *([NEXT] * (len(texts) - 1))):
        pairs = zip(forms, texts.items(), strict=True)
        yield "".join(form.format(key=key, text=text) for form, (key, text) in pairs)


def _text(said: Said) -> str:
    return said if isinstance(said, str) else " + ".join(said)


def _plain(said: Said) -> Said:
    """A list of one as its item: fields that hold several read both alike."""
    return said[0] if isinstance(said, list) and len(said) == 1 else said
