"""The structure of a case and the way back, as its page and the page for the box show them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from markupsafe import Markup

from casebook.compute.evidence import evidence
from casebook.compute.layers import Moment, Replay, replay
from casebook.compute.steps import placed
from casebook.compute.structure import Since
from casebook.compute.way_back import WayBack, way_back
from casebook.compute.way_back.instructions import Answer, Opened, Opening, Place, Question
from casebook.compute.way_back.sentences import sentences
from casebook.compute.way_back.words import listed, name, the
from casebook.drawings.choose import drawings_for, way_back_for
from casebook.drawings.cuts import Cut
from casebook.drawings.words import Drawing
from casebook.model.archive import Case
from casebook.model.base import items
from casebook.vocabulary import Lexicon

_TITLES = {
    Question.BARE: "To bare {}: take off all that was put on it",
    Question.FREE: "To free {}",
    Question.TAKE_OFF: "To take off {}",
}
_UNKNOWN_ORDER = (
    "Nobody recorded in which order some steps were done. What lies there at the end is told; "
    "what lay there in between is not."
)


@dataclass(frozen=True, slots=True)
class OpeningView:
    """One instruction: what to do and what comes of it, what to mind, where that was read."""

    number: int
    do: tuple[str, ...]
    mind: tuple[str, ...]
    cannot: tuple[str, ...]
    sources: str


@dataclass(frozen=True, slots=True)
class AnswerView:
    """What to do, in order, to bare or free one part, or to take off one layer.

    `stops` say where the way ends and why, `stays` what never comes off.
    """

    anchor: str
    title: str
    openings: tuple[OpeningView, ...]
    stops: tuple[str, ...]
    stays: tuple[str, ...]
    drawings: tuple[Drawing, ...] = ()


@dataclass(frozen=True, slots=True)
class StructureView:
    """What is drawn and told of a case's structure: all states, and how it comes apart."""

    drawings: tuple[Drawing, ...] = ()
    note: str = ""
    """What is not known of the order of steps, or of where something lies; else ""."""
    bare: tuple[AnswerView, ...] = ()
    free: tuple[AnswerView, ...] = ()
    layers: tuple[AnswerView, ...] = ()

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


def structure_view(case: Case, lexicon: Lexicon, told: Known) -> StructureView:
    """A case's drawings and its ways back, the parts first."""
    answers = _Answers(case, lexicon, told)
    return StructureView(
        drawings=_marked(drawings_for(told.replay.moments, case, lexicon)),
        note=" ".join(_notes(told.replay)),
        bare=tuple(answers.of(told.way.bare, drawn=True)),
        free=tuple(answers.of(told.way.free)),
        layers=tuple(answers.of(told.way.take_off)),
    )


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


class _Answers:
    """Makes the views of a case's answers."""

    def __init__(self, case: Case, lexicon: Lexicon, told: Known) -> None:
        self.case = case
        self.lexicon = lexicon
        self.final = _last(told.replay)

    def of(self, answers: Mapping[str, Answer], drawn: bool = False) -> Iterator[AnswerView]:
        """The answers that have something to say, those of parts that carry most first."""
        there = [one for one in answers.values() if one.openings or one.stops or one.stays]
        for one in sorted(there, key=lambda one: (-len(one.openings), one.of)):
            yield self._view(one, drawn)

    def _view(self, answer: Answer, drawn: bool) -> AnswerView:
        anchor = f"{answer.question.value}-{answer.of}".replace(" ", "-").replace("/", "-")
        return AnswerView(
            anchor=anchor,
            title=_TITLES[answer.question].format(the(answer.of)),
            openings=tuple(_opening(one) for one in answer.openings),
            stops=tuple(
                _sentence(f"{the(one.thing)} cannot be parted: {one.why}") for one in answer.stops
            ),
            stays=tuple(
                _sentence(f"{name(one.what)} stays: it has soaked in") for one in answer.stays
            ),
            drawings=self._drawn(answer, anchor) if drawn else (),
        )

    def _drawn(self, answer: Answer, anchor: str) -> tuple[Drawing, ...]:
        """Where the openings of an answer run, on the drawing of what lies there now."""
        cuts = [
            cut for one in answer.openings for opened in one.opened for cut in _cut(one, opened)
        ]
        drawings = way_back_for((self.final,), self.case, self.lexicon, cuts, f"cuts-{anchor}")
        own = [one for one in drawings if one.part == answer.of]
        return _marked(tuple(own or drawings[:1]))


def _last(played: Replay) -> Moment:
    """What lies there at the end of the record, as a moment."""
    return replace(played.moments[-1], structure=played.final)


def _cut(opening: Opening, opened: Opened) -> Iterator[Cut]:
    split = opened.place is Place.SPLIT
    yield Cut(opening.number, opened.lower, opened.lower if split else opened.upper)


def _opening(opening: Opening) -> OpeningView:
    """An opening's sentences, sorted by what a hand needs them for."""
    every = sentences(opening)
    mind = tuple(_sentence(one) for one in opening.mind)
    cannot = tuple(one for one in every if one.startswith("Cannot be undone"))
    rest = (one for one in every if one not in (*mind, *cannot) and not one.startswith("Source: "))
    return OpeningView(opening.number, tuple(rest), mind, cannot, "; ".join(opening.sources))


def _sentence(text: str) -> str:
    text = f"{text[:1].upper()}{text[1:]}"
    return text if text.endswith(".") else f"{text}."


def layered(case: Case) -> bool:
    """Whether anything lies on the object that could be taken off: found there, or added."""
    return bool(items(case.as_found)) or any(one.step.adds for one in placed(case))
