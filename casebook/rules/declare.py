"""How a rule is declared: what it asks, why, by whose word, how heavily, with two examples."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from casebook.diagnostics import Severity, Span
from casebook.rules.look import Due, Look

AIC_24B = "AIC Commentary 24 B (revised text, conservation-us.org)"
AIC_25B = "AIC Commentary 25 B (draft text; not readable again)"
AIC_26B = "AIC Commentary 26 B (draft text; not readable again)"
AIC_27A = "AIC Commentary 27 A (revised text, conservation-us.org)"
AIC_27B = "AIC Commentary 27 B (revised text, conservation-us.org)"
ECCO_9 = "ECCO Professional Guidelines II (2003) Art. 9"
ECCO_10 = "ECCO Professional Guidelines II (2003) Art. 10"
PMG = "AIC wiki, PMG Examination and Documentation (conservation-wiki.com)"
NO_SOURCE = "common practice, no source"
OWN = "Casebook's own format, docs/reference/fields.md"


@dataclass(frozen=True, slots=True)
class Weight:
    """How much a rule matters: for a draft, for a finished bench record, for an old record."""

    draft: Severity
    finished: Severity
    old: Severity


MUST = Weight(Severity.WARNING, Severity.ERROR, Severity.SUGGESTION)
"""A published code says must."""
SHOULD = Weight(Severity.SUGGESTION, Severity.WARNING, Severity.SUGGESTION)
"""A published code says should, or good practice asks for it."""
ADVICE = Weight(Severity.SUGGESTION, Severity.SUGGESTION, Severity.SUGGESTION)
"""An aim, or something that only helps."""
SLIP = Weight(Severity.WARNING, Severity.WARNING, Severity.WARNING)
"""Something that was probably not meant, whatever the record."""
MISTAKE = Weight(Severity.WARNING, Severity.ERROR, Severity.WARNING)
"""The record contradicts itself: a draft may, a finished one may not."""
FAULT = Weight(Severity.ERROR, Severity.ERROR, Severity.ERROR)
"""A page could not be made rightly, or the wrong people could see it."""


@dataclass(frozen=True, slots=True)
class Raised:
    """What a rule has to say once: the message, its place, what to write, and a limit of weight."""

    message: str
    span: Span | None = None
    hint: str = ""
    cap: Severity = Severity.ERROR


Check = Callable[[Look], Iterable[Raised]]


@dataclass(frozen=True, slots=True)
class Rule:
    """Something a record must or should satisfy.

    `fields` are the fields it reads (`Written.by`), `raises` and `passes` keys of a case that raise
    it and do not, put over a complete case; a line `# no written` in them leaves that key out.
    `rows` are the demands of published codes that it answers, by their text in the table of
    required fields. `gap` is the sentence for readers of a page, "" where it is not for them.
    """

    name: str
    what: str
    why: str
    source: str
    fields: tuple[str, ...]
    weight: Weight
    raises: str
    passes: str
    check: Check
    due: Due = Due.EXAMINED
    rows: tuple[str, ...] = ()
    gap: str = ""

    def severity(self, look: Look) -> Severity | None:
        """How much it matters for this case; None before the case has come so far."""
        if look.stage < self.due:
            return None
        if look.old:
            return self.weight.old
        return self.weight.finished if look.stage is Due.FINISHED else self.weight.draft


def rule(
    *,
    why: str,
    source: str,
    fields: tuple[str, ...],
    weight: Weight,
    raises: str,
    passes: str,
    due: Due = Due.EXAMINED,
    rows: tuple[str, ...] = (),
    gap: str = "",
) -> Callable[[Check], Rule]:
    """Make a rule of a function: its name is the function's, what it asks the docstring's first."""

    def declared(check: Check) -> Rule:
        name = getattr(check, "__name__", "").replace("_", "-")
        what = " ".join((check.__doc__ or "").partition("\n\n")[0].split())
        return Rule(name, what, why, source, fields, weight, raises, passes, check, due, rows, gap)

    return declared
