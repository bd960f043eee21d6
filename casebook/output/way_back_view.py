"""The way back on a page: each opening told once under its number, and named by it after that."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from casebook.compute.way_back.instructions import Answer, Opening, Question
from casebook.compute.way_back.sentences import instruction
from casebook.compute.way_back.words import name, the
from casebook.drawings.words import Drawing
from casebook.output.contexts import Line, Run
from casebook.output.wording import capital_text, listed, sentence_text

_TITLES = {
    Question.BARE: "To bare {}: take off all that was put on it",
    Question.FREE: "To free {}",
    Question.TAKE_OFF: "To take off {}",
}
_ALPHABET = 26
_PAIR = 2


@dataclass(frozen=True, slots=True)
class OpeningView:
    """One instruction: what to do, what comes off and what stays, what to mind."""

    number: int
    do: tuple[str, ...]
    off: tuple[str, ...]
    stays: tuple[str, ...]
    mind: tuple[str, ...]
    cannot: tuple[str, ...]
    sources: Line
    """The letters of the notes that say where it was read, each a link."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """Openings of one answer that follow one another: told here, or told before."""

    why: tuple[str, ...]
    """What they lay open, where they are done for that alone."""
    numbers: Line
    """Their numbers, such as "1 to 3", each a link."""
    openings: tuple[OpeningView, ...]
    """Those that are told here; () where they were told before."""


@dataclass(frozen=True, slots=True)
class AnswerView:
    """What to do, in order, to bare or free one part, or to take off one layer.

    `stops` say where the way ends and why, `stays` what never comes off.
    """

    anchor: str
    title: str
    thing: str
    """The part or layer alone, as the head of a row."""
    stretches: tuple[Stretch, ...]
    stops: tuple[str, ...]
    stays: tuple[str, ...]
    drawings: tuple[Drawing, ...] = ()


class Telling:
    """Tells numbered answers one after another, and keeps what was told and what was read for it.

    The answers come from `numbered`, in the order in which a page shows them.
    """

    def __init__(self) -> None:
        self._last = 0
        self._sources: dict[str, str] = {}

    @property
    def sources(self) -> tuple[Line, ...]:
        """Where all that was told was read; the first is note a."""
        return tuple((Run(text, anchor=f"source-{key}"),) for text, key in self._sources.items())

    def answer(self, answer: Answer, drawings: tuple[Drawing, ...] = ()) -> AnswerView:
        """One answer, in which an opening that was told before has its number alone."""
        return AnswerView(
            anchor=anchor_of(answer),
            title=_TITLES[answer.question].format(the(answer.of)),
            thing=capital_text(name(answer.of)),
            stretches=tuple(self._stretches(answer.openings)),
            stops=tuple(
                sentence_text(f"{the(one.thing)} cannot be parted: {one.why}")
                for one in answer.stops
            ),
            stays=tuple(
                sentence_text(f"{name(one.what)} stays: it has soaked in") for one in answer.stays
            ),
            drawings=drawings,
        )

    def _stretches(self, openings: Iterable[Opening]) -> Iterator[Stretch]:
        marked = [(_why(one), self._is_new(one), one) for one in openings]
        for (why, new), group in groupby(marked, lambda told: told[:2]):
            ones = [one for _, _, one in group]
            fresh = tuple(self._opening(one) for one in ones) if new else ()
            yield Stretch(why, _numbers([one.number for one in ones]), fresh)

    def _is_new(self, opening: Opening) -> bool:
        new = opening.number > self._last
        self._last = max(self._last, opening.number)
        return new

    def _opening(self, opening: Opening) -> OpeningView:
        said = instruction(opening)
        mind = tuple(sentence_text(one) for one in said.mind)
        sources = self._cited(opening.sources)
        return OpeningView(
            opening.number, said.do, said.off, said.stays, mind, said.cannot, sources
        )

    def _cited(self, sources: Iterable[str]) -> Line:
        keys = [self._sources.setdefault(one, _letter(len(self._sources))) for one in sources]
        return listed([(Run(key, f"#source-{key}"),) for key in sorted(keys, key=_by_letter)], ", ")


def anchor_of(answer: Answer) -> str:
    """The name of an answer on its page, such as `bare-board-1`."""
    return f"{answer.question.value}-{answer.of}".replace(" ", "-").replace("/", "-")


def _why(opening: Opening) -> tuple[str, ...]:
    return instruction(replace(opening, in_piece=0)).why


def _numbers(numbers: Sequence[int]) -> Line:
    """Numbers in their order as links, three or more in a row as the first to the last."""
    parts: list[Line] = []
    for _, group in groupby(enumerate(numbers), lambda pair: pair[1] - pair[0]):
        row = [Run(str(one), f"#opening-{one}") for _, one in group]
        long = len(row) > _PAIR
        parts.extend([(row[0], Run(" to "), row[-1])] if long else [(one,) for one in row])
    return listed(parts)


def _letter(index: int) -> str:
    """The letters of notes: a to z, then aa; as a list of that kind counts."""
    before, last = divmod(index, _ALPHABET)
    return (_letter(before - 1) if before else "") + chr(ord("a") + last)


def _by_letter(key: str) -> tuple[int, str]:
    return len(key), key
