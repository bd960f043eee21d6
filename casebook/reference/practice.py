"""Rules for readers: one explained on the terminal, all of them on a page."""

from __future__ import annotations

import inspect
from collections.abc import Iterator

from casebook.photos.told import TELLINGS, Telling
from casebook.reading import did_you_mean
from casebook.rules import ALL, NAMED
from casebook.rules.declare import Rule
from casebook.rules.fields import field
from casebook.rules.look import Due

_DUE = {
    Due.EXAMINED: "of every case",
    Due.PLANNED: "once a treatment is proposed",
    Due.TREATED: "once treatment has begun",
    Due.FINISHED: "once the case is complete",
}
_HEAD = """\
# Rules

<!-- Made from the code by casebook.reference.rules_page; a test holds it to that. -->

`casebook check` holds every case against these rules. How much one matters depends on how far the
case has come and on what the record was made from: *draft* is a case that is not yet complete,
*finished* a complete one recorded at the bench, *old* one written up from notes or a publication.
Only an error stops a build. `casebook explain RULE` prints one of them. What is told of
[photo files](#photo-files) stands at the end.
"""
_FILES = """\
## Photo files

Every image file that a record names is looked at when it is read, and told for these things, as
heavily in every case. None of them hides another, nor the rest of the case.
"""
_TOLD = {one.name: one for one in TELLINGS}


def explained() -> Iterator[tuple[str, str]]:
    """The name of every rule and of all that is told of photo files, with what it asks."""
    yield from ((one.name, one.what) for one in ALL)
    yield from ((one.name, one.what) for one in TELLINGS)


def explain(name: str) -> str:
    """A rule in full, as plain text. An unknown name is a KeyError: see `suggest_rule`."""
    if name in _TOLD:
        return _explain_told(_TOLD[name])
    rule = NAMED[name]
    parts = [
        f"{rule.name}\n\n{rule.what}",
        f"Why: {rule.why}\nSource: {rule.source}\nAsked: {_DUE[rule.due]}",
        f"Severity: {_severities(rule)}",
        f"This raises it:\n\n{_indented(rule.raises)}",
        f"This does not:\n\n{_indented(rule.passes)}",
    ]
    return "\n\n".join(parts) + "\n"


def _explain_told(one: Telling) -> str:
    parts = [
        f"{one.name}\n\n{one.what}",
        f"Why: {one.why}\nSource: {one.source}\nAsked: of every image file",
        f"Severity: {one.severity.word}",
        f"It says, for example:\n\n{_indented(one.example)}",
    ]
    return "\n\n".join(parts) + "\n"


def suggest_rule(name: str) -> str:
    """A hint with the closest rules, or where to find them all."""
    names = [one for one, _ in explained()]
    return did_you_mean(name, names) or "`docs/reference/rules.md` lists them all"


def _severities(rule: Rule) -> str:
    weight = rule.weight
    kinds = (("draft", weight.draft), ("finished", weight.finished), ("old", weight.old))
    return ", ".join(f"{severity.word} ({kind})" for kind, severity in kinds)


def _indented(text: str) -> str:
    return "\n".join(f"    {line}" for line in text.splitlines())


def rules_page() -> str:
    """All rules as Markdown, by subject, and at the end what is told of photo files."""
    rules = (line for rule in ALL for line in _section(rule))
    return "\n".join((_HEAD, *_overview(), *rules, *_photo_files()))


def _overview() -> Iterator[str]:
    yield "| rule | what it asks | draft | finished | old |"
    yield "|---|---|---|---|---|"
    for rule in ALL:
        weight = rule.weight
        words = " | ".join(one.word for one in (weight.draft, weight.finished, weight.old))
        yield f"| [`{rule.name}`](#{rule.name}) | {rule.what} | {words} |"
    yield ""


def _section(rule: Rule) -> Iterator[str]:
    more = inspect.getdoc(rule.check) or ""
    further = " ".join(more.partition("\n\n")[2].split())
    yield f"## {rule.name}\n"
    yield f"{rule.what} {further}".strip() + "\n"
    yield f"Why: {rule.why}\n"
    yield f"Source: {rule.source}.\n"
    yield f"Asked {_DUE[rule.due]}; {_severities(rule)}.\n"
    yield f"Reads {', '.join(f'`{_written(name)}`' for name in rule.fields)}.\n"
    if rule.rows:
        yield "Answers: " + "; ".join(rule.rows) + ".\n"
    yield f"Raises it:\n\n```yaml\n{rule.raises}\n```\n"
    yield f"Does not:\n\n```yaml\n{rule.passes}\n```\n"


def _photo_files() -> Iterator[str]:
    yield _FILES
    yield "| what is told | what is asked | severity |"
    yield "|---|---|---|"
    for one in TELLINGS:
        yield f"| [`{one.name}`](#{one.name}) | {one.what} | {one.severity.word} |"
    yield ""
    for one in TELLINGS:
        yield f"### {one.name}\n"
        yield f"{one.what}\n"
        yield f"Why: {one.why}\n"
        yield f"Source: {one.source}.\n"
        yield f"It says, for example:\n\n```text\n{one.example}\n```\n"


def _written(name: str) -> str:
    """A field as it is written in a file: `Case.as_found` is `case: as-found`."""
    return f"{name.partition('.')[0].lower()}: {field(name).key}"
