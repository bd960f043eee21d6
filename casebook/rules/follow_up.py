"""Rules about looking again: a later look that was due has been taken."""

from __future__ import annotations

from collections.abc import Iterator

from casebook.model.base import items, known
from casebook.model.condition import FollowUp
from casebook.rules.declare import ADVICE, NO_SOURCE, Raised, rule
from casebook.rules.look import Look
from casebook.values.dates import Date


@rule(
    why="Nobody knows how a repair holds until somebody looks at it again.",
    source=NO_SOURCE,
    fields=("Case.follow_up", "FollowUp.date", "FollowUp.next"),
    weight=ADVICE,
    raises="follow-up: [{date: 2025-10-02, state: sound, next: 2025-12}]",
    passes="follow-up: [{date: 2025-10-02, state: sound, next: 2026-12}]",
)
def follow_up_overdue(look: Look) -> Iterator[Raised]:
    """A later look that the record asks for by a date is taken by then.

    It is due when the whole of that date has gone by: `next: 2028` on the first day of 2029.
    """
    looks = items(look.case.follow_up)
    for one in looks:
        due = known(one.next)
        last = due.latest_day() if due else None
        if due and last and last < look.today and not _looked(looks, one, due):
            message = f"it was to be looked at again by {due}, and no later look is on record"
            hint = "add what was seen to `follow-up`, or put off `next`"
            yield Raised(message, one.span("next"), hint)


def _looked(looks: tuple[FollowUp, ...], asked: FollowUp, due: Date) -> bool:
    """Whether a later look is on record: about when it was due, or since it was asked for."""
    dates = [date for one in looks if one is not asked and (date := known(one.date))]
    since = known(asked.date)
    return any(not date.before(due) or bool(since and since.before(date)) for date in dates)


PRACTICE = (follow_up_overdue,)
