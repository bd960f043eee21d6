"""Rules about what the object is, whose it is, and how far the case has come."""

from __future__ import annotations

from collections.abc import Iterator

from casebook.model.archive import Standing
from casebook.model.base import known
from casebook.reading import did_you_mean
from casebook.rules.declare import AIC_24B, FAULT, MUST, NO_SOURCE, OWN, SHOULD, SLIP, Raised, rule
from casebook.rules.look import Look

_IDENTIFYING = (
    ("title",),
    ("object", "owner"),
    ("object", "held_by"),
    ("object", "author"),
    ("object", "place"),
    ("object", "made"),
    ("object", "size"),
    ("object", "marks"),
)


@rule(
    why="A record helps nobody who cannot tell which object it is about.",
    source=AIC_24B,
    fields=(
        "Case.title",
        "Object.owner",
        "Object.held_by",
        "Object.author",
        "Object.place",
        "Object.made",
        "Object.size",
        "Object.marks",
    ),
    weight=MUST,
    raises="# no title\nobject: {kind: ledger}",
    passes="# no title\nobject: {kind: ledger, held-by: {name: Harbour Office, shelfmark: T 4}}",
    rows=(
        "unique identification of object (accession/registration no.)",
        "owner/custodian",
        "maker/origin",
        "subject/title",
        "measurements",
        "marks/labels",
        "date of creation of object",
    ),
)
def identified(look: Look) -> Iterator[Raised]:
    """A case says something by which its object can be told from others.

    A title, an owner or holder, a maker, a place or date of making, measures or marks: any serves.
    """
    if not any(look.tells(look.case, *path) for path in _IDENTIFYING):
        hint = "write a `title`, or under `object` a `size`, `made`, `marks`, `author` or `held-by`"
        message = "nothing here tells this object from others"
        yield Raised(message, look.place("object"), hint)


@rule(
    why="The build shows a case to the client whose key it names; a wrong key shows it to nobody, "
    "or one day to somebody else.",
    source=OWN,
    fields=("Case.client", "Settings.clients"),
    weight=FAULT,
    raises="client: harbor",
    passes="client: harbour",
)
def client_key(look: Look) -> Iterator[Raised]:
    """The client that a case names is among the lab's clients."""
    clients = list(look.archive.settings.clients)
    client = known(look.case.client)
    if client and client not in clients:
        message = f"`{client}` is not among the `clients` in lab.yml"
        hint = did_you_mean(client, clients) or f"add `{client}:` under `clients` in lab.yml"
        yield Raised(message, look.case.span("client"), hint)


@rule(
    why="How much a check asks, and whether hours and outcomes count, depends on it.",
    source=NO_SOURCE,
    fields=("Case.status", "Status.is_"),
    weight=SLIP,
    raises="# no status",
    passes="status: in-treatment",
)
def status_said(look: Look) -> Iterator[Raised]:
    """A case says how far it has come."""
    if not look.tells(look.case, "status", "is_"):
        hint = f"write `status: {'in-treatment' if look.worked else 'undecided'}`, or another word"
        yield Raised("the record does not say how far the case has come", look.case.span(), hint)


@rule(
    why="The next conservator finds an object half treated, or not treated, and asks why.",
    source=NO_SOURCE,
    fields=("Case.status", "Status.is_", "Status.because", "Status.left"),
    weight=SHOULD,
    raises="status: stopped",
    passes="status: {is: stopped, because: owner sold it, left: sewn and without boards}",
    gap="The record does not say why work stopped, or how the object was left.",
)
def status_stopped_why(look: Look) -> Iterator[Raised]:
    """A case that was stopped or declined says why; a stopped one, how the object was left."""
    status, standing = known(look.case.status), look.standing
    if status is None or standing not in (Standing.STOPPED, Standing.DECLINED):
        return
    wanted = ("because", "left") if standing is Standing.STOPPED else ("because",)
    missing = [key for key in wanted if not look.tells(status, key)]
    if missing:
        lack = {"because": "why", "left": "how the object was left"}
        message = f"the case is {standing} and does not say {' or '.join(lack[k] for k in missing)}"
        keys = ", ".join(f"{key}: …" for key in wanted)
        hint = f"write `status: {{is: {standing}, {keys}}}`"
        yield Raised(message, look.case.span("status"), hint)


PRACTICE = (identified, client_key, status_said, status_stopped_why)
