"""Contradictions that a replay meets: values, which the rules turn into diagnostics."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from casebook.compute.steps import Placed
from casebook.model.base import key_of
from casebook.model.treatment import Step


class Kind(StrEnum):
    """What is wrong."""

    NOT_THERE = "not-there"
    """It acts on something that no step added and that was not found."""
    GONE = "gone"
    """It acts on something that was removed before."""
    LATER = "later"
    """It acts on something that is added only later."""
    NOT_OFF = "not-off"
    """It puts back what was not taken off."""
    ITSELF = "itself"
    """It lays something on itself."""
    NOWHERE = "nowhere"
    """It puts something back, and nothing says on what."""
    ALREADY_OFF = "already-off"
    """It takes off what was taken off before, and did not come back."""
    TWICE = "twice"
    """It adds what was added before."""
    LONGER = "longer"
    """It lays a lining or a tube that is longer than the lining under it."""
    NIGHTS = "nights"
    """It dries for more nights than its dates have."""
    SAME_PLACE = "same-place"
    """It lies where something else lies."""
    STILL_HELD = "still-held"
    """It takes away what something that stays still holds."""
    LEFT = "left"
    """It adds something temporary that no step removes."""


ORDERLESS = frozenset(
    {Kind.NOT_THERE, Kind.ITSELF, Kind.TWICE, Kind.LONGER, Kind.NIGHTS, Kind.LEFT}
)
"""What can be said although nobody recorded in which order the steps were done."""

_ADRIFT = frozenset({Kind.GONE, Kind.LATER, Kind.NOT_THERE, Kind.ITSELF})
"""Where a step lays something on what is not there, it is not known where that lies."""


@dataclass(frozen=True, slots=True)
class Fault:
    """A contradiction: the step as written, its number, what is wrong, what to do, at which key.

    `doubtful` says that what is missing may only have been left unsaid.
    """

    record: Step
    step: int
    kind: Kind
    message: str
    hint: str
    key: str
    doubtful: bool = False


class Faults:
    """The contradictions of one case as they are met, each worded for whoever wrote the step.

    Where nobody recorded the order of the steps, what rests on an order is not said.
    """

    def __init__(self, steps: tuple[Placed, ...]) -> None:
        self.found: list[Fault] = []
        self._steps = steps
        self._number = 0
        self._ordered = True

    def begin(self, number: int, *, ordered: bool) -> None:
        """Turn to another step."""
        self._number, self._ordered = number, ordered

    @property
    def number(self) -> int:
        """The number of the step in hand."""
        return self._number

    def say(
        self,
        kind: Kind,
        message: str,
        hint: str,
        field: str,
        number: int = 0,
        *,
        doubtful: bool = False,
    ) -> None:
        """Keep a fault of the step in hand, or of another by its number."""
        if not self._ordered and kind not in ORDERLESS:
            return
        at = number or self._number
        step = self._steps[at - 1].step
        self.found.append(Fault(step, at, kind, message, hint, key_of(field), doubtful))

    def when(self, number: int) -> str:
        """In which sitting a step was done, as words behind a verb."""
        other, own = (self._steps[one - 1].episode for one in (number, self._number))
        if other == own or not other:
            return "further up" if number < self._number else "further down"
        return f"in sitting {other}"

    def gone(self, place: str, since: int, field: str) -> None:
        """It acts on what was removed before."""
        hint = (
            "if only some of it went there, add `leaves` to that step; if it came back, write "
            "`takes-off` there and `puts-back` where it came back"
        )
        when = self.when(since)
        self.say(Kind.GONE, f"`{place}` was removed {when}, and is not there any more", hint, field)

    def later(self, place: str, laid: int, field: str) -> None:
        """It acts on what is added only later."""
        message = f"`{place}` is added only {self.when(laid)}, and is not there yet"
        hint = (
            "put the steps in the order in which they were done; where an older thing is meant, "
            "give what is added a name of its own"
        )
        self.say(Kind.LATER, message, hint, field)

    def not_there(self, place: str, field: str) -> None:
        """It acts on what was never there."""
        message = f"nothing says that `{place}` was there: it was neither found nor added"
        hint = "list it under `as-found`, or name the layer as the step calls it that added it"
        self.say(Kind.NOT_THERE, message, hint, field)

    def itself(self, place: str, field: str) -> None:
        """It lays something on itself."""
        message = f"`{place}` cannot lie on itself"
        self.say(Kind.ITSELF, message, f"write under `{key_of(field)}` what lies beneath it", field)

    def nowhere(self, place: str) -> None:
        """It puts something back on nothing; unless it was put on what is not there."""
        if any(one.step == self._number and one.kind in _ADRIFT for one in self.found[-2:]):
            return
        message = f"`{place}` is put back, and nothing says what it holds to"
        hint = "add `onto: …` with the part or layer; what held it before is not there any more"
        self.say(Kind.NOWHERE, message, hint, "puts_back", doubtful=True)

    def not_off(self, place: str, removed: int) -> None:
        """It puts back what was not taken off."""
        if removed:
            message = f"`{place}` is put back, and was removed for good {self.when(removed)}"
            hint = "what comes back was taken off: write `takes-off` there in place of `removes`"
        else:
            message = f"`{place}` is put back, and no step before this one took it off"
            hint = "add the step with `takes-off`, or, if it had come loose, the finding"
        self.say(Kind.NOT_OFF, message, hint, "puts_back", doubtful=True)

    def already_off(self, place: str) -> None:
        """It takes off what is off."""
        message = f"`{place}` was taken off before, and no step put it back since"
        hint = "add the step with `puts-back`"
        self.say(Kind.ALREADY_OFF, message, hint, "takes_off", doubtful=True)

    def twice(self, name: str, before: int) -> None:
        """It adds what was added before."""
        message = f"`{name}` is added a second time: it was added {self.when(before)}"
        hint = "made and laid is one step; a second piece has a name of its own"
        self.say(Kind.TWICE, message, hint, "adds")

    def longer(
        self, upper: str, lower: str, lengths: tuple[str, str], *, deeper: str, part: str
    ) -> None:
        """It lays something longer than what is under it.

        A longer lining `deeper` down may lie under its ends, or else the `part` itself; each is ""
        where it is not known to reach so far.
        """
        message = f"`{upper}` is {lengths[0]} long, and `{lower}` under it only {lengths[1]}"
        bare = f"lie on `{part}` itself" if part else "have nothing beneath them"
        ends = f"lie on `{deeper}`" if deeper else bare
        hint = f"look at both figures: its ends {ends}; if it is meant so, say `because: …`"
        self.say(Kind.LONGER, message, hint, "cut", doubtful=bool(deeper))

    def same_place(self, upper: str, other: str, lower: str) -> None:
        """It lies where something else lies; unless what it was laid on is not there."""
        if any(one.step == self._number and one.kind in _ADRIFT for one in self.found[-2:]):
            return
        message = f"`{upper}` is laid onto `{lower}`, and `{other}` lies there"
        hint = f"write `onto: {other}` if it lies on that, or the step that removed `{other}`"
        self.say(Kind.SAME_PLACE, message, hint, "onto")

    def still_held(self, going: str, holder: str, field: str) -> None:
        """It takes away what something that stays still holds."""
        message = f"`{going}` goes, and `{holder}`, which stays, still holds it"
        hint = (
            f"say how it was opened: a step before with `opens: {holder}`, or one that removes it"
        )
        self.say(Kind.STILL_HELD, message, hint, field)

    def left(self, name: str, number: int) -> None:
        """It adds something temporary that no step removes."""
        message = f"`{name}` is temporary, and no step removes it"
        hint = f"add the step with `removes: {name}`"
        self.say(Kind.LEFT, message, hint, "temporary", number)

    def nights(self, nights: int, days: int, number: int) -> None:
        """It dries for more nights than its dates have."""
        span = "one day" if days == 1 else f"{days} days"
        message = f"it dries for {nights} nights, and its dates are {span}"
        hint = "give the sitting, or the step, the days from first to last: `2025-03-14/2025-03-17`"
        self.say(Kind.NIGHTS, message, hint, "dries", number)
