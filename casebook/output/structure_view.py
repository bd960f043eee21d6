"""The structure of a case and the way back, as its page and the page for the box show them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from markupsafe import Markup

from casebook.compute.evidence import evidence
from casebook.compute.layers import Replay, replay
from casebook.compute.steps import placed
from casebook.compute.structure import Since
from casebook.compute.way_back import WayBack, way_back
from casebook.compute.way_back.instructions import Answer, Opening, Place, Question
from casebook.compute.way_back.numbering import numbered
from casebook.compute.way_back.words import listed, the
from casebook.drawings.choose import drawings_for, way_back_for
from casebook.drawings.cuts import Cut
from casebook.drawings.words import Drawing
from casebook.model.archive import Case
from casebook.model.base import items
from casebook.output.contexts import Line
from casebook.output.way_back_view import AnswerView, Telling
from casebook.values.notation import PLAIN, Notation
from casebook.vocabulary import Lexicon

_UNKNOWN_ORDER = (
    "Nobody recorded in which order some steps were done. What lies there at the end is told; "
    "what lay there in between is not."
)


@dataclass(frozen=True, slots=True)
class StructureView:
    """What is drawn and told of a case's structure: all states, and how it comes apart."""

    drawings: tuple[Drawing, ...] = ()
    note: str = ""
    """What is not known of the order of steps, or of where something lies; else ""."""
    bare: tuple[AnswerView, ...] = ()
    free: tuple[AnswerView, ...] = ()
    layers: tuple[AnswerView, ...] = ()
    sources: tuple[Line, ...] = ()
    """Where what the openings use was read: notes a, b and so on."""

    @property
    def apart(self) -> bool:
        """Whether there is anything to say of taking it apart."""
        return bool(self.bare or self.free or self.layers)


NO_STRUCTURE = StructureView()
"""Nothing lies there, or nothing of it may be shown."""


@dataclass(frozen=True, slots=True)
class Known:
    """What is worked out of a case once, and looked at by several pages."""

    replay: Replay
    way: WayBack


def work_out(case: Case, lexicon: Lexicon) -> Known:
    """The layers of a case after each step, and the way back from the last."""
    played = replay(case, lexicon)
    return Known(played, way_back(played.final, evidence(case, lexicon), lexicon))


def structure_view(
    case: Case, lexicon: Lexicon, told: Known, notation: Notation = PLAIN
) -> StructureView:
    """A case's drawings and its ways back, the parts first."""
    telling, answers = Telling(), numbered(asked(told.way))
    drawn = _drawn(case, lexicon, told, answers, notation)
    bare = tuple(telling.answer(one, drawn.get(one.of, ())) for one in _of(answers, Question.BARE))
    free = tuple(telling.answer(one) for one in _of(answers, Question.FREE))
    layers = tuple(telling.answer(one) for one in _of(answers, Question.TAKE_OFF))
    return StructureView(
        drawings=_marked(drawings_for(told.replay.moments, case, lexicon, notation=notation)),
        note=" ".join(_notes(told.replay)),
        bare=bare,
        free=free,
        layers=layers,
        sources=telling.sources,
    )


def asked(way: WayBack) -> Iterator[Answer]:
    """The answers that have something to say, in the order of a page.

    First how parts are bared, then how they are freed, then each layer by itself; those that need
    most openings come first.
    """
    for answers in (way.bare, way.free, way.take_off):
        there = [one for one in answers.values() if one.openings or one.stops or one.stays]
        yield from sorted(there, key=lambda one: (-len(one.openings), one.of))


def _of(answers: Iterable[Answer], question: Question) -> Iterator[Answer]:
    return (one for one in answers if one.question is question)


def _notes(played: Replay) -> Iterator[str]:
    """What is not known of the structure as a whole."""
    if not played.order_known:
        yield _UNKNOWN_ORDER
    things = played.final.things.values()
    loose = sorted({one.of for one in things if one.apart and one.since is Since.ADDED})
    if loose:
        names = listed(the(one) for one in loose)
        yield f"Lying apart, or nobody recorded on what: {names}. The way back passes over that."


def _marked(drawings: tuple[Drawing, ...]) -> tuple[Drawing, ...]:
    """Drawings whose SVG goes onto the page as it is: every text in it is escaped already."""
    return tuple(replace(one, svg=Markup(one.svg)) for one in drawings)


def _drawn(
    case: Case, lexicon: Lexicon, told: Known, answers: Iterable[Answer], notation: Notation
) -> Mapping[str, tuple[Drawing, ...]]:
    """Where the openings run that bare parts, on what lies there now.

    Each drawing stands under the part that it is of, or else under the first that is bared.
    """
    bared = [one for one in answers if one.question is Question.BARE and one.openings]
    cuts = dict.fromkeys(cut for one in bared for opening in one.openings for cut in _cuts(opening))
    final = (replace(told.replay.moments[-1], structure=told.replay.final),)
    found = _marked(way_back_for(final, case, lexicon, tuple(cuts), "cuts", notation))
    names = [one.of for one in bared]
    where = [one.part if one.part in names else names[0] for one in found]
    pairs = tuple(zip(where, found, strict=True))
    return {name: tuple(one for at, one in pairs if at == name) for name in names}


def _cuts(opening: Opening) -> Iterator[Cut]:
    for one in opening.opened:
        split = one.place is Place.SPLIT
        yield Cut(opening.number, one.lower, one.lower if split else one.upper)


def layered(case: Case) -> bool:
    """Whether anything lies on the object that could be taken off: found there, or added."""
    return bool(items(case.as_found)) or any(one.step.adds for one in placed(case))
