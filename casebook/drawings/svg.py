"""A tiny writer of SVG: elements escaped, numbers rounded to 1/100, the same bytes each time."""

from __future__ import annotations

import html
import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

_REFUSED = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
"""What XML 1.0 (section 2.2, Char) allows in no document, escaped or not."""

Value = str | float | None
Point = tuple[float, float]


class Svg(str):
    """Finished SVG: text that is not escaped again."""

    __slots__ = ()


def number(value: float) -> str:
    """A number to 1/100, without zeros at the end."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def words(text: str) -> Svg:
    """Text of a record, safe between tags and in quotes; what XML forbids becomes U+FFFD."""
    return Svg(html.escape(_REFUSED.sub("\ufffd", text)))


def tag(name: str, *inside: str, **attributes: Value) -> Svg:
    """An element. `class_` is `class`, `data_in` is `data-in`; an attribute of None is left out.

    What stands inside is escaped unless it is finished SVG.
    """
    said = "".join(
        f' {key.rstrip("_").replace("_", "-")}="{_value(value)}"'
        for key, value in attributes.items()
        if value is not None
    )
    body = "".join(one if isinstance(one, Svg) else words(one) for one in inside)
    return Svg(f"<{name}{said}>{body}</{name}>" if body else f"<{name}{said}/>")


def _value(value: str | float) -> str:
    return words(value) if isinstance(value, str) else number(value)


Offsets = tuple[float, ...]
Parts = tuple[str | float, ...]
"""A piece of a path: commands and numbers."""


def joined(parts: Iterable[Svg]) -> Svg:
    """Elements one after the other."""
    return Svg("".join(parts))


def path(*parts: str | float) -> str:
    """The data of a path: commands and numbers, as `path("M", 1, 2, "L", 3, 4, "Z")`.

    Commands in capitals count from the corner of the drawing, as in SVG. They are written from
    where the pen is, in tenths of a unit, which is shorter; no rounding adds up.
    """
    pen, start = (0.0, 0.0), (0.0, 0.0)
    found: list[str] = []
    said: Offsets
    for command, values in _commands(parts):
        if command in "Zz":
            said, pen = (), start
        else:
            said, pen = _relative(command, values, pen)
        start = pen if command in "Mm" else start
        name = "M" if command == "M" and not found else command.lower()
        found.append(_written(*_straight(name, said)))
    return "".join(found)


def _straight(command: str, values: Offsets) -> tuple[str, Offsets]:
    """A line that goes straight sideways or straight up or down, by its shorter command."""
    if command != "l" or (values[0] and values[1]):
        return command, values
    return ("h", values[:1]) if values[0] else ("v", values[1:])


def _commands(parts: Iterable[str | float]) -> Iterator[tuple[str, list[float]]]:
    """Each command with the numbers behind it."""
    command, values = "", list[float]()
    for one in parts:
        if isinstance(one, str):
            if command:
                yield command, values
            command, values = one, []
        else:
            values.append(one)
    if command:
        yield command, values


_AXES = {"H": "x", "V": "y", "A": "rrfffxy"}
"""What the numbers of a command are: along x or y, a radius, or a flag; others come in pairs."""


def _relative(command: str, values: Sequence[float], pen: Point) -> tuple[Offsets, Point]:
    """The numbers of a command from where the pen is, and where the pen is after it."""
    axes = _AXES.get(command.upper(), "xy" * (len(values) // 2))
    base = (0.0, 0.0) if command.isupper() else pen
    places = {"x": 0, "y": 1}
    said, end = [], list(pen)
    for axis, value in zip(axes, values, strict=True):
        if axis in places:
            at = places[axis]
            end[at] = round(base[at] + value, 1)
            said.append(end[at] - pen[at])
        else:
            said.append(value)
    return tuple(said), (end[0], end[1])


def _written(command: str, values: Iterable[float]) -> str:
    text = command
    for value in values:
        one = _short(value)
        text += one if text[-1].isalpha() or one.startswith("-") else f" {one}"
    return text


def _short(value: float) -> str:
    """A number in tenths, without the zero before its point."""
    text = number(round(value, 1))
    return text.replace("0.", ".", 1) if text.lstrip("-").startswith("0.") else text


@dataclass(frozen=True, slots=True)
class Frame:
    """What surrounds a drawing: its size in units, its title and its description for readers.

    `prefix` makes the ids of one page differ.
    """

    prefix: str
    width: float
    height: float
    title: str
    description: str
    style: str = ""

    def around(self, *inside: Svg) -> Svg:
        """The whole drawing, named by its title and described by its words."""
        name, told = f"{self.prefix}-title", f"{self.prefix}-desc"
        return tag(
            "svg",
            tag("title", self.title, id=name),
            tag("desc", self.description, id=told),
            *inside,
            xmlns="http://www.w3.org/2000/svg",
            class_=f"drawing {self.style}".strip(),
            viewBox=f"0 0 {number(self.width)} {number(self.height)}",
            role="img",
            aria_labelledby=f"{name} {told}",
            font_size="16",
        )
