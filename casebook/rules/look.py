"""What a rule looks at: one case with its archive, and the questions that rules share."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Mapping
from enum import IntEnum
from functools import cached_property

from casebook.compute.layers import Replay, replay
from casebook.compute.places import Ground, ground
from casebook.compute.runs import inner_steps
from casebook.diagnostics import Span
from casebook.model.archive import Archive, Case, Kind, Standing
from casebook.model.base import NOTHING, Gap, Record, Unknowing, items, key_of, known, walk
from casebook.model.object import Part
from casebook.model.treatment import Episode, Step
from casebook.vocabulary import Lexicon

STANDS_ALONE = frozenset({Unknowing.UNKNOWN, Unknowing.NONE})
"""Ways of not knowing that are an answer without a reason: somebody looked."""


class Due(IntEnum):
    """How far a case must have come before a rule asks anything of it."""

    EXAMINED = 0
    PLANNED = 1
    TREATED = 2
    FINISHED = 3


_DUE = {
    Standing.UNDECIDED: Due.EXAMINED,
    Standing.DECLINED: Due.EXAMINED,
    Standing.PROPOSED: Due.PLANNED,
    Standing.IN_TREATMENT: Due.TREATED,
    Standing.STOPPED: Due.TREATED,
    Standing.COMPLETE: Due.FINISHED,
}


class Look:
    """One case as a rule sees it.

    `today` is the day of the check. With `page`, what was left unknown does not count as said,
    since the gaps of a record are then listed for its readers.
    """

    def __init__(
        self,
        case: Case,
        archive: Archive,
        today: datetime.date,
        lexicon: Lexicon | None = None,
        *,
        page: bool = False,
    ) -> None:
        self.case = case
        self.archive = archive
        self.today = today
        self.page = page
        self._lexicon = lexicon

    @cached_property
    def lexicon(self) -> Lexicon:
        """The vocabulary, whole; made when first asked for."""
        return self._lexicon or Lexicon(self.archive.terms)

    @cached_property
    def records(self) -> tuple[Record, ...]:
        """Every record of the case, outermost first."""
        return tuple(walk(self.case))

    @cached_property
    def ground(self) -> Ground:
        """The parts and layers of the case."""
        return ground(self.case)

    @cached_property
    def replay(self) -> Replay:
        """What lay there after each step, and the contradictions met on the way."""
        return replay(self.case, self.lexicon)

    @cached_property
    def worked(self) -> tuple[tuple[Step, Episode | None], ...]:
        """Every step with its sitting, None for steps outside any; those of runs as written."""
        outside = [(step, None) for step in inner_steps(items(self.case.steps))]
        sittings = items(self.case.episodes)
        inside = [(s, one) for one in sittings for s in inner_steps(items(one.steps))]
        return (*outside, *inside)

    @property
    def steps(self) -> tuple[Step, ...]:
        """Every step."""
        return tuple(step for step, _ in self.worked)

    @property
    def standing(self) -> Standing | None:
        """How far the case has come, where it says so."""
        status = known(self.case.status)
        return status.is_ if status else None

    @property
    def stage(self) -> Due:
        """How far the case has come; without a status, as far as its steps show."""
        if self.standing is None:
            return Due.TREATED if self.worked else Due.EXAMINED
        return _DUE[self.standing]

    @property
    def old(self) -> bool:
        """Whether the record was written up afterwards, from notes or from a publication."""
        return self.case.record in (Kind.FROM_NOTES, Kind.FROM_PUBLICATION)

    @cached_property
    def layers(self) -> frozenset[str]:
        """The ids of layers and parts that were found or added."""
        found = (one.id for one in items(self.case.as_found))
        added = (step.adds for step in self.steps if step.adds)
        return frozenset({*found, *added, *self.ground.layers} - {""})

    @cached_property
    def names(self) -> frozenset[str]:
        """Every name of a part or layer that the case declares itself."""
        return self.layers | frozenset(part_names(self.case.parts))

    @cached_property
    def _bulk(self) -> frozenset[str]:
        """The keys that `gaps` answers for: any way in an old record, else what was looked for."""
        kinds = {one.value for one in (Unknowing if self.old else STANDS_ALONE)}
        said = (keys for kind, keys in self.case.gaps.items() if kind in kinds)
        return frozenset() if self.page else frozenset(key for keys in said for key in items(keys))

    def tells(self, record: Record, *path: str, in_reach: bool = False) -> bool:
        """Whether a record says something along a path of fields such as "written", "by".

        A gap on the way answers for all below it, and one item of a list for the list. What could
        have been known (`in_reach`) is answered by a gap only if the gap gives a reason.
        """
        name, rest = path[0], path[1:]
        value = getattr(record, name)
        if isinstance(value, Gap):
            return self._answers(value, in_reach) or key_of(name) in self._bulk
        if not rest or value in (None, ()):
            return self._has(record, name)
        inner = value if isinstance(value, tuple) else (value,)
        return any(self.tells(one, *rest, in_reach=in_reach) for one in inner)

    def waived(self, name: str) -> bool:
        """Whether `gaps` answers for a key, so that nothing more is asked under it."""
        return key_of(name) in self._bulk

    def _answers(self, gap: Gap, in_reach: bool) -> bool:
        if self.page:
            return gap.kind is Unknowing.NONE and not in_reach
        return bool(gap.reason) or (gap.kind in STANDS_ALONE and not in_reach)

    def _has(self, record: Record, name: str) -> bool:
        """Whether a field is filled; a key that could not be read, or a list left empty, is."""
        if self.page:
            return getattr(record, name) not in (None, (), "", NOTHING)
        return record.tells(name) or key_of(name) in self._bulk

    def place(self, *path: str) -> Span | None:
        """The place of the innermost record or key along a path from the case that is there."""
        record: Record = self.case
        for name in path:
            value = getattr(record, name)
            if not isinstance(value, Record):
                return record.span(key_of(name))
            record = value
        return record.span()


def part_names(parts: Mapping[str, Part]) -> Iterator[str]:
    """The names of declared parts and of theirs."""
    for name, part in parts.items():
        yield name
        yield from part_names(part.parts)
