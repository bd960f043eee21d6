"""Other cases that belong with one, each in a sentence with the way to its page."""

from __future__ import annotations

from collections.abc import Iterable

from casebook.compute.links import Kin, Tie
from casebook.output.contexts import Line, Run
from casebook.output.wording import Wording, sentence

_SENTENCES = {
    Tie.RETREATS: ("It had been treated before: ", ""),
    Tie.RETREATED_IN: ("It was treated again later: ", ""),
    Tie.SAME_SET: ("It belongs to one set with ", ""),
    Tie.LIKE: ("It is like ", ""),
    Tie.OLD_CARRIER: ("It came off ", ", its old carrier"),
    Tie.CARRIED: ("It once carried ", ", which has a case of its own"),
    Tie.OTHER: ("It belongs with ", ""),
}


def kin_lines(kin: Iterable[Kin], wording: Wording) -> tuple[Line, ...]:
    """A sentence for each case that belongs with this one."""
    return tuple(_line(one, wording) for one in kin)


def _line(kin: Kin, wording: Wording) -> Line:
    before, after = _SENTENCES[kin.tie]
    because = f" ({kin.because})" if kin.because else ""
    return sentence((Run(before), wording.case(kin.case), Run(after + because)))
