"""The cross-section of a spine: its curve true to width and rise, linings, boards at both sides."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from casebook.drawings import badges, outlines, section
from casebook.drawings.badges import Badge, Column, End
from casebook.drawings.cuts import Cut, Mark, Numbers, cut_key, cut_lines, cut_words, marks
from casebook.drawings.facts import Facts
from casebook.drawings.finish import finished
from casebook.drawings.lanes import Arc, Band, Board
from casebook.drawings.outlines import Outline
from casebook.drawings.section import WIDTH, Seen
from casebook.drawings.spine_shape import JOINT, TOP, SpineShape, shaped
from casebook.drawings.stack import Runs, Sight, Story, without
from casebook.drawings.svg import Parts, Point, Svg, joined, path, tag
from casebook.drawings.words import Drawing, the


def draw(told: Story, facts: Facts, prefix: str, cuts: Sequence[Cut] = ()) -> Drawing:
    """The cross-section of a spine: the first of the story's parts, then its boards.

    With cuts it shows the way back in the story's last state.
    """
    shape = shaped(told, facts, prefix)
    found = marks(shape, cuts)
    drawn, bottom = everything(shape, found)
    key, low = outlines.key(shape.section, bottom)
    more, end = cut_key(prefix, found, low)
    title = f"Cross-section of {the(told.roots[0])}"
    made = finished(shape.section, title, (WIDTH, end + 6), drawn, key, more)
    return replace(made, cuts=cut_words(cuts))


def everything(shape: SpineShape, found: Sequence[Mark]) -> tuple[Svg, float]:
    """Parts, layers, cuts and numbers, and where they end."""
    order = sorted(shape.section.everything(), key=lambda seen: seen.slot.low)
    shapes = (_outline(shape, seen) for seen in order)
    bands = (*_parts(shape), *outlines.layers(shape.section, shapes))
    prefix = shape.section.prefix
    numbers, bottom = _numbers(shape, found)
    drawn = (
        outlines.bands(shape.section, *bands),
        cut_lines(prefix, found),
        numbers,
    )
    return joined(drawn), max(bottom, shape.bottom) + 14


def _parts(shape: SpineShape) -> Iterator[Svg]:
    """The text block under its curve, and the boards."""
    own = section.roots(shape.section)
    if shape.part in own:
        block = tag(
            "path",
            d=_block(shape),
            fill=f"url(#{shape.section.prefix}-l)",
            stroke_width=str(outlines.EDGE),
        )
        yield outlines.shown(shape.section, own[shape.part], block)
    for name, board in shape.boards.items():
        if name in own:
            yield outlines.shown(shape.section, own[name], _board(shape, name, board, own[name]))


def _block(shape: SpineShape) -> str:
    """The text block: its curve, shoulders over the boards, and a wavy line where it breaks off."""
    arc = shape.arc
    inset = max((shape.thick(name) + 3 for name in shape.boards), default=0)
    left, right = arc.point(-1, 0), arc.point(1, 0)
    a, b = left[0] + inset, right[0] - inset
    shoulder = arc.floor + (JOINT - 3 if shape.boards else 0)
    return path(
        *arc.along(-1, 1, 0),
        *("L", b, shoulder, "V", shape.bottom, *wave(b, a), "V", shoulder, "Z"),
    )


def wave(start: float, end: float) -> Parts:
    """A wavy line sideways: here the thing goes on and the drawing does not."""
    step = (end - start) / 4
    high = -min(7.0, abs(step))
    return ("q", step / 2, high, step, 0, *(("t", step, 0) * 3))


def _board(shape: SpineShape, name: str, board: Board, sight: Sight) -> Svg:
    thick = shape.thick(name)
    inner = board.face - board.side * thick
    sides = ("M", board.face, shape.bottom, "V", board.top, "H", inner, "V", shape.bottom)
    data = path(*sides, *wave(inner, board.face), "Z")
    return outlines.filled(shape.section, sight, data)


def _outline(shape: SpineShape, seen: Seen) -> Outline:
    """A thing on one part as it runs there: bent over from the spine, along the curve, down."""
    lane, band = shape.lane(seen.part), shape.band(seen)
    over = _over(shape, seen)
    if isinstance(lane, Board) and over:
        data = lane.bent(over, band)
    else:
        data = _folds(shape, seen, band) + outlines.strip(seen, lane, band)
    return outlines.outline(shape.section, seen, lane, band, data)


def _over(shape: SpineShape, seen: Seen) -> Band | None:
    """Where the layer of a zone on a board runs on the spine, if it comes from there."""
    if seen.part not in shape.boards:
        return None
    for other in shape.section.by_part.get(shape.part, ()):
        same = other.sight.layer == seen.sight.layer and other.sight.meets(seen.sight)
        if same and other.slot.of == 1 and not other.sight.thing.wall:
            return shape.band(other)
    return None


def _folds(shape: SpineShape, seen: Seen, band: Band) -> str:
    """The two folds of a tube, drawn with its outer wall."""
    if seen.sight.thing.wall != "outer" or seen.part != shape.part:
        return ""
    for other in shape.section.by_part.get(seen.part, ()):
        same = other.sight.layer == seen.sight.layer and other.sight.meets(seen.sight)
        if same and other.sight.thing.wall == "inner":
            inner = shape.band(other)
            return "".join(shape.arc.cap(side, inner, band) for side in (-1, 1))
    return ""


def _numbers(shape: SpineShape, found: Sequence[Mark]) -> tuple[Svg, float]:
    """The numbers of the spine and the right board at the right, those of the left at the left."""
    last, edge = shape.section.told.last, WIDTH - 16
    at_right = [mark for mark in found if mark.part in shape.boards and _is_right(shape, mark.part)]
    at_left = [mark for mark in found if mark not in at_right]
    cut_left, start = Numbers(14, TOP - 8, at_left=True).draw(at_left)
    left = Column(14, max(shape.arc.floor + 20, start), labelled=False)
    marks_left, deep = left.draw([*_beside(shape, -1)], last)
    marks_right, low = Column(edge, TOP - 8).draw([*_right(shape)], last)
    cut_right, lowest = Numbers(edge, low, at_left=False).draw(at_right)
    numbers = badges.marked(shape.section.prefix, joined((marks_right, marks_left)))
    return joined((cut_left, cut_right, numbers)), max(deep, low, lowest, start)


def _is_right(shape: SpineShape, part: str) -> bool:
    return shape.boards[part].side > 0


def _right(shape: SpineShape) -> Iterator[Badge]:
    on_spine = sorted(shape.section.by_part.get(shape.part, ()), key=lambda one: -one.slot.low)
    for seen in on_spine:
        yield outlines.badge(shape.section, seen.sight, _on_arc(shape.arc, shape.band(seen)))
    own = section.roots(shape.section)
    if shape.part in own:
        yield outlines.badge(shape.section, own[shape.part], lambda _: shape.arc.point(0.86, -14))
    yield from _beside(shape, 1)


def _beside(shape: SpineShape, side: int) -> Iterator[Badge]:
    """The numbers of one board and of what lies on it, unless it is numbered on the spine."""
    own = section.roots(shape.section)
    for name, board in shape.boards.items():
        if board.side == side:
            on_board = sorted(shape.section.by_part.get(name, ()), key=lambda one: -one.slot.low)
            for seen in on_board:
                if runs := _not_on_spine(shape, seen.sight):
                    end = _on_board(board, shape.band(seen))
                    yield outlines.badge(shape.section, seen.sight, end, runs)
            if name in own:
                inside = -shape.thick(name) / 2
                end = _on_board(board, Band(0, 1.1, inside, inside))
                yield outlines.badge(shape.section, own[name], end)


def _not_on_spine(shape: SpineShape, sight: Sight) -> Runs:
    """The states in which a layer is seen on a board and not on the spine."""
    on_spine = (one.sight for one in shape.section.by_part.get(shape.part, ()))
    return without(sight.runs, (one.runs for one in on_spine if one.layer == sight.layer))


def _on_arc(arc: Arc, band: Band) -> End:
    """The outermost is met near the middle of the curve, the innermost near its end."""

    def end(down: float) -> Point:
        wanted = 0.15 + 0.7 * down
        low, high = band.start, band.end
        t = min(max(wanted, low + 0.1 * (high - low)), high - 0.1 * (high - low))
        return arc.point(t, band.middle)

    return end


def _on_board(board: Board, band: Band) -> End:
    def end(down: float) -> Point:
        return board.point(band.end * (0.3 + 0.6 * down), band.middle)

    return end
