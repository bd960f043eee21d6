"""The cross-section of a sheet, a leaf, a board or any flat part: what lies on either face."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from casebook.compute.structure import Bond
from casebook.drawings import badges, outlines, section
from casebook.drawings.badges import PITCH, Badge, Column, End
from casebook.drawings.carried import INNER
from casebook.drawings.cuts import Cut, Numbers, cut_key, cut_lines, cut_words, marks
from casebook.drawings.facts import Facts
from casebook.drawings.finish import finished
from casebook.drawings.lanes import Band, Flat
from casebook.drawings.outlines import Outline
from casebook.drawings.patterns import INK
from casebook.drawings.pile import MOST
from casebook.drawings.section import WIDTH, On, Section, Seen, extent
from casebook.drawings.stack import Sight, Story
from casebook.drawings.svg import Point, Svg, joined, tag
from casebook.drawings.words import Drawing, the

ACROSS = 268.0
"""The width of the part in units."""
MIDDLE = 196.0
THICK = 16.0
"""The thickness of a part nobody measured, in units."""
TOP = 22.0
FURTHEST = 1.08
"""How far a layer reaches beyond the part at most, in parts of it."""
LEAST_BEYOND = 1.03

OVER, UNDER, WITHIN = "over", "under", "within"

NAMES = (
    ("recto", "verso", ("recto", "verso", "sheet", "leaf", "plate", "map")),
    ("outside", "inside", ("inner", "outer", "inside", "outside", "board", "cover", "case")),
)
"""The names of the upper and the lower face, and the words that tell which names apply."""


@dataclass(frozen=True, slots=True)
class Stack:
    """A flat part with its faces in their places."""

    section: Section
    top: float
    thick: float

    @property
    def bottom(self) -> float:
        """Where the lowest layer ends."""
        return self.top + self.thick + self.section.top(UNDER)

    def lane(self, part: str) -> Flat:
        """The lane of a face; what lies in the thickness is counted from the lower face."""
        low = self.top + self.thick
        surface = self.top if part == OVER else low
        return Flat(MIDDLE, surface, ACROSS, -1 if part == UNDER else 1)

    def band(self, seen: Seen) -> Band:
        """Where a thing runs on its face, or in the thickness."""
        start, end = _extent(self.section, seen)
        if seen.part == WITHIN:
            return Band(start, end, 0, self.thick)
        return Band(start, end, seen.slot.low, seen.slot.high)


def draw(told: Story, facts: Facts, prefix: str, cuts: Sequence[Cut] = ()) -> Drawing:
    """The cross-section of a flat part, the face that is read uppermost.

    With cuts it shows the way back in the story's last state.
    """
    stack = shaped(told, facts, prefix)
    found = marks(stack, cuts)
    numbers, low = _numbers(stack)
    dark, deep = Numbers(WIDTH - 16, low + PITCH / 2, at_left=False).draw(found)
    bands = (
        outlines.bands(stack.section, *_bands(stack)),
        *(joined(_faces(stack)), cut_lines(prefix, found)),
        *(dark, badges.marked(prefix, numbers)),
    )
    key, below = outlines.key(stack.section, max(low, deep, stack.bottom) + 14)
    more, end = cut_key(prefix, found, below)
    title = f"Cross-section of {the(told.roots[0])}"
    made = finished(stack.section, title, (WIDTH, end + 6), *bands, key, more)
    return replace(made, cuts=cut_words(cuts))


def shaped(told: Story, facts: Facts, prefix: str) -> Stack:
    """Lay out a flat part so that its pile and its column of numbers are level with each other."""
    laid = section.section(prefix, told, facts, _on_faces(told), _per_um(told, facts), {})
    root = section.roots(laid).get(told.roots[0])
    true = (root.thing.thickness_um or 0) * _per_um(told, facts) if root else 0.0
    thick = max(min(true, MOST), THICK)
    height = laid.top(OVER) + thick + laid.top(UNDER)
    column = _count(laid) * PITCH
    top = TOP + max(column - height, 0) / 2 + laid.top(OVER)
    return Stack(replace(laid, notes=_notes(told, facts)), top, thick)


def _width(told: Story, facts: Facts) -> int:
    part = told.roots[0]
    own = next((one.thing.width_um for one in told.sights if one.name == part), None)
    return own or facts.widths.get(part, 0)


def _per_um(told: Story, facts: Facts) -> float:
    width = _width(told, facts)
    return ACROSS / width if width else 0.0


def _notes(told: Story, facts: Facts) -> tuple[str, ...]:
    name = the(told.roots[0])
    return () if _width(told, facts) else (f"The width of {name} is not recorded.",)


def _extent(section: Section, seen: Seen) -> tuple[float, float]:
    """From where to where a thing reaches; what hangs over the edge is seen to."""
    told, width = section.told, seen.sight.thing.width_um
    per_um = _per_um(told, section.facts)
    if width and per_um and seen.slot.of == 1 and width * per_um > ACROSS:
        ratio = min(max(width * per_um / ACROSS, LEAST_BEYOND), FURTHEST)
        return (-ratio, ratio)
    if seen.part == WITHIN and seen.slot.of == 1:
        return (-0.2, 0.35)
    return extent(seen, ACROSS, per_um)


def _on_faces(told: Story) -> On:
    """What lies on either face and in the thickness, with the bonds that hold it there."""
    sides = _sides(told)
    found: dict[str, list[tuple[Sight, tuple[Bond, ...]]]] = {WITHIN: [], OVER: [], UNDER: []}
    for sight in told.carriers():
        found[sides[sight]].append((sight, sight.seat.bonds))
    return found


def _sides(told: Story) -> Mapping[Sight, str]:
    """On which face each thing lies: its own where it says so, else that of what carries it."""
    by_name: dict[str, list[Sight]] = {}
    for sight in told.sights:
        by_name.setdefault(sight.name, []).append(sight)
    return {sight: _side(sight, told.roots, by_name) for sight in told.carriers()}


def _side(sight: Sight, roots: Sequence[str], by_name: Mapping[str, Sequence[Sight]]) -> str:
    waiting, seen = [sight], set[Sight]()
    while waiting:
        one = waiting.pop(0)
        seen.add(one)
        if any(bond.within and bond.lower in roots for bond in one.seat.bonds):
            return WITHIN if one is sight else OVER
        if one.seat.turned or _inner_zone(one):
            return UNDER
        below = (low for name in one.seat.below for low in by_name.get(name, ()))
        waiting.extend(low for low in below if low.meets(one) and low not in seen)
    return OVER


def _inner_zone(sight: Sight) -> bool:
    return sight.thing.zone.rpartition("/")[2].casefold() in INNER


def _bands(stack: Stack) -> Iterator[Svg]:
    """The part itself, what lies in its thickness, and what lies on its faces."""
    for sight in section.roots(stack.section).values():
        whole = stack.lane(WITHIN).band(Band(-1, 1, 0, stack.thick))
        yield outlines.shown(stack.section, sight, outlines.filled(stack.section, sight, whole))
    drawn = (_outline(stack, seen) for seen in stack.section.everything())
    yield from outlines.layers(stack.section, drawn)


def _outline(stack: Stack, seen: Seen) -> Outline:
    """A thing on its face; what lies in the thickness has its adhesive at its edges, not drawn."""
    lane, band = stack.lane(seen.part), stack.band(seen)
    data = outlines.strip(seen, lane, band)
    if seen.part == WITHIN:
        return Outline(seen, data)
    return outlines.outline(stack.section, seen, lane, band, data)


def _faces(stack: Stack) -> Iterator[Svg]:
    """The names of the faces at the left, where they have names."""
    for above, below, _ in _named(stack.section):
        y = stack.top + stack.thick
        for name, at in ((above, stack.top - 4), (below, y + 14)):
            yield tag("text", name, x=4, y=at, class_="d-face", fill=INK, font_size="14")


def _named(laid: Section) -> Sequence[tuple[str, str, tuple[str, ...]]]:
    bonds = (bond for seen in laid.everything() for bond in seen.bonds)
    faces = {bond.face.casefold() for bond in bonds if bond.face}
    spoken = faces | set(laid.told.roots[0].casefold().replace("/", " ").split())
    return [names for names in NAMES if spoken & set(names[2])][:1]


def _badges(laid: Section, ends: Mapping[Sight, End]) -> Sequence[Badge]:
    """The numbers from the top of the pile down."""
    over = sorted(laid.by_part[OVER], key=lambda one: (-one.slot.low, one.slot.place))
    under = sorted(laid.by_part[UNDER], key=lambda one: (one.slot.low, one.slot.place))
    inside = laid.by_part[WITHIN]
    order = (
        *(one.sight for one in over),
        *section.roots(laid).values(),
        *(one.sight for one in (*inside, *under)),
    )
    return [outlines.badge(laid, sight, ends.get(sight, _nowhere)) for sight in order]


def _nowhere(_: float) -> Point:
    return (0.0, 0.0)


def _count(laid: Section) -> int:
    """How many rows the numbers take."""
    return max(badges.rows(_badges(laid, {})), default=-1) + 1


def _numbers(stack: Stack) -> tuple[Svg, float]:
    laid = stack.section
    ends = {seen.sight: _end(stack, seen) for seen in laid.everything()}
    middle = stack.lane(WITHIN).point(0.94, stack.thick / 2)
    ends.update((sight, lambda _: middle) for sight in section.roots(laid).values())
    height = laid.top(OVER) + stack.thick + laid.top(UNDER)
    column = _count(laid) * PITCH
    top = stack.top - laid.top(OVER) + max(height - column, 0) / 2 - max(column - height, 0) / 2
    numbers, low = Column(WIDTH - 16, top + PITCH / 2).draw(_badges(laid, ends), laid.told.last)
    return numbers, low - PITCH / 2


def _end(stack: Stack, seen: Seen) -> End:
    lane, band = stack.lane(seen.part), stack.band(seen)
    at = band.end - 0.05 * (band.end - band.start)
    return lambda _: lane.point(at, band.middle)
