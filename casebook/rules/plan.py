"""Rules about the treatment plan: what was proposed, with what, for how long, and who agreed."""

from __future__ import annotations

from collections.abc import Iterator

from casebook.model.archive import Case
from casebook.model.base import items, known
from casebook.model.proposal import Choice, Decision, Option, Proposal, courses
from casebook.rules.declare import AIC_26B, MUST, SHOULD, Raised, rule
from casebook.rules.look import Due, Look

_APPROVAL = (
    "written owner/custodian approval of plan and of significant deviations "
    "(unless a prior written understanding exists)"
)


def _proposal(case: Case) -> Proposal | None:
    return known(case.proposal)


def _options(look: Look) -> tuple[Option, ...]:
    """The options that were chosen; all of them as long as none is."""
    proposal = _proposal(look.case)
    every = courses(proposal) if proposal else ()
    return tuple(one for one in every if one.outcome is Choice.CHOSEN) or every


def _lacking(look: Look, name: str) -> Iterator[Option]:
    """The options at issue, if none of them says anything under a field."""
    options = _options(look)
    if options and not any(look.tells(one, name) for one in options):
        yield options[0]


@rule(
    why="Owner and conservator can agree only on what is written down.",
    source=AIC_26B,
    fields=(
        "Case.proposal",
        "Proposal.options",
        "Proposal.questions",
        "Option.name",
        "Proposal.aims",
    ),
    weight=MUST,
    raises="# no proposal",
    passes="proposal: {options: [{name: toned paper reback}]}",
    due=Due.PLANNED,
    rows=("treatment plan in writing: proposed course of treatment",),
    gap="The record does not say what treatment was proposed.",
)
def plan(look: Look) -> Iterator[Raised]:
    """A case that was proposed or treated says what was proposed."""
    ways = (("proposal", "options"), ("proposal", "questions"), ("proposal", "aims"))
    if not any(look.tells(look.case, *way) for way in ways):
        message = "the record does not say what treatment was proposed"
        hint = "write `proposal: {options: [{name: toned paper reback, outcome: chosen}]}`"
        yield Raised(message, look.place("proposal", "options"), hint)


@rule(
    why="What is to stay on the object is for the owner to know before it is there.",
    source=AIC_26B,
    fields=("Proposal.options", "Option.materials"),
    weight=MUST,
    raises="proposal: {options: [{name: toned paper reback, time: 14 h}]}",
    passes="proposal: {options: [{name: reback, time: 14 h, materials: [tengujo, linen]}]}",
    due=Due.PLANNED,
    rows=("treatment plan: materials to be used",),
    gap="The record does not say which materials were proposed.",
)
def materials_of_plan(look: Look) -> Iterator[Raised]:
    """The proposed treatment names the materials to be used."""
    for option in _lacking(look, "materials"):
        message = f"{_named(option)} does not say which materials it would use"
        yield Raised(message, option.span(), "add `materials: [tengujo, wheat-starch-paste]`")


@rule(
    why="Owners decide by it, and the next estimate learns from it.",
    source=AIC_26B,
    fields=("Proposal.options", "Option.time", "Case.time", "Lump.estimated"),
    weight=MUST,
    raises="proposal: {options: [{name: reback, materials: [linen]}]}\n# no time",
    passes="proposal: {options: [{name: reback, materials: [linen], time: 14 h}]}",
    due=Due.PLANNED,
    rows=("treatment plan: time estimate",),
    gap="The record does not say how long the treatment was thought to take.",
)
def time_of_plan(look: Look) -> Iterator[Raised]:
    """The proposed treatment has an estimate of time."""
    if look.tells(look.case, "time", "estimated"):
        return
    for option in _lacking(look, "time"):
        message = f"{_named(option)} has no estimate of time"
        yield Raised(message, option.span(), "add `time: 14 h`, or `time: 10-16 h`")


@rule(
    why="The code asks for it where the plan is the basis of a contract; a record that names a "
    "client often is, and cannot show it, so this is never more than a warning.",
    source=AIC_26B,
    fields=("Case.client", "Proposal.options", "Option.cost"),
    weight=SHOULD,
    raises="client: harbour\nproposal: {options: [{name: reback}]}",
    passes="client: harbour\nproposal: {options: [{name: reback, cost: none (a gift)}]}",
    due=Due.PLANNED,
    rows=("treatment plan: cost estimate",),
)
def cost_of_plan(look: Look) -> Iterator[Raised]:
    """A treatment proposed to a client has an estimate of cost."""
    for option in _lacking(look, "cost") if known(look.case.client) else ():
        message = f"{_named(option)} has no estimate of cost"
        yield Raised(message, option.span(), "add `cost: …`; only the lab and the client see it")


@rule(
    why="The object is somebody's: what is done to it is done with their word.",
    source=AIC_26B,
    fields=(
        "Case.proposal",
        "Proposal.decided",
        "Question.decided",
        "Decision.by",
        "Decision.date",
        "Decision.how",
    ),
    weight=MUST,
    raises="proposal: {options: [{name: reback, outcome: chosen}], decided: {by: [owner]}}",
    passes="proposal: {decided: {date: 2025-02-10, by: [owner], how: letter}}",
    due=Due.TREATED,
    rows=(_APPROVAL,),
    gap="The record does not say who agreed to the treatment, when and how.",
)
def approval(look: Look) -> Iterator[Raised]:
    """A treated case says who agreed to the plan, when, and how."""
    keys = ("by", "date", "how")
    lack = [key for key in keys if not _agreed(look, key)]
    if lack:
        words = {"by": "who agreed to the treatment", "date": "when", "how": "how"}
        said = "the treatment was agreed to" if "by" not in lack else ""
        asked = " and ".join(words[key] for key in lack)
        message = f"the record does not say {asked} {said}".rstrip()
        hint = "under `proposal` write `decided: {date: 2025-02-10, by: [owner], how: letter}`"
        yield Raised(message, look.place("proposal", "decided"), hint)


def _agreed(look: Look, key: str) -> bool:
    """Whether the approval says something: that of the whole plan, or that of every question."""
    proposal = _proposal(look.case)
    questions = items(proposal.questions) if proposal else ()
    apart = bool(questions) and all(look.tells(one, "decided", key) for one in questions)
    return apart or look.tells(look.case, "proposal", "decided", key)


def _decisions(look: Look) -> Iterator[Decision]:
    """The approvals: that of the whole plan, and those of single questions."""
    proposal = _proposal(look.case)
    questions = items(proposal.questions) if proposal else ()
    for one in (proposal, *questions):
        decided = known(one.decided) if one else None
        if decided:
            yield decided


@rule(
    why="A keeper or agent may decide only as far as the owner lets them.",
    source=AIC_26B,
    fields=("Proposal.decided", "Decision.by"),
    weight=MUST,
    raises="proposal: {decided: {date: 2025-02-10, by: [keeper], how: letter}}",
    passes="proposal: {decided: {date: 2025-02-10, by: [keeper (for the trust)], how: letter}}",
    due=Due.TREATED,
    rows=("custodian's authority to approve when not the owner",),
)
def authority(look: Look) -> Iterator[Raised]:
    """Who agreed and is not the owner says in brackets on what authority."""
    for decided in _decisions(look):
        names = items(decided.by)
        if names and not any("owner" in name.lower() or "(" in name for name in names):
            message = f"`{names[0]}` is not said to be the owner, or to decide for the owner"
            hint = f'write `by: [owner]`, or `by: ["{names[0]} (for the trustees)"]`'
            yield Raised(message, decided.span("by"), hint)


@rule(
    why="A change of plan is a new plan: it needs the owner's word as much as the first.",
    source=AIC_26B,
    fields=("Proposal.changes", "Change.agreed"),
    weight=MUST,
    raises="proposal: {changes: [{what: new endbands, because: the old ones fell apart}]}",
    passes="proposal: {changes: [{what: new endbands, because: lost, agreed: 'owner, letter'}]}",
    due=Due.TREATED,
    rows=(_APPROVAL,),
    gap="The record does not say whether every change of plan was agreed to.",
)
def change_agreed(look: Look) -> Iterator[Raised]:
    """A change of plan says whether, how and by whom it was agreed to."""
    proposal = _proposal(look.case)
    for one in items(proposal.changes) if proposal else ():
        if not look.tells(one, "agreed"):
            what = f"the change `{known(one.what)}`" if known(one.what) else "this change"
            hint = 'add `agreed: "owner, by letter of 3 March"`'
            yield Raised(f"{what} does not say whether it was agreed to", one.span(), hint)


def _named(option: Option) -> str:
    name = known(option.name)
    return f"the proposal `{name}`" if name else "the proposal"


PRACTICE = (plan, materials_of_plan, time_of_plan, cost_of_plan, approval, authority, change_agreed)
