"""The commands: each finds the archive, calls one room, and says what came of it."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

import click

from casebook import __version__
from casebook.authoring.init import init_archive
from casebook.authoring.new import new_case
from casebook.cli.align import align
from casebook.cli.job import Job, installed_builder
from casebook.cli.shared import (
    archive_option,
    audience_option,
    client_option,
    find_archive,
    for_whom,
    place_of,
    read,
    say,
    tell,
    today,
    uncollected,
)
from casebook.cli.tidy import tidy
from casebook.diagnostics import Diagnostic, Severity
from casebook.files import templates_folder
from casebook.flow import broken_cases
from casebook.loading import Loaded
from casebook.model.base import Audience
from casebook.terminal import Progress, counted, to_json

CLEAN, FAULTS = 0, 1
WATCHED = ("cases", "vocabulary", "pages", "lab.yml", "mkdocs.yml")
PORT = 8000


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="casebook")
def cli() -> None:
    """Treatment case histories of books and paper: from a folder of plain files to a site.

    \b
    casebook init my-archive     make an archive
    casebook new "Day book"      start a case
    casebook check               say what its records lack
    casebook tidy                write each thing the one settled way
    casebook serve               look at it while writing
    casebook build               build the public site

    Exit codes: 0 all is well, 1 the records have errors, 2 the command could not run.
    """


cli.add_command(tidy)
cli.add_command(align)


@cli.command()
@click.argument("folder")
def init(folder: str) -> int:
    """Make an archive of your own in FOLDER.

    \b
    Example:
      casebook init my-archive
    """
    for path in init_archive(Path(folder)):
        say(f"  {path}")
    say(f"\nNow: cd {folder}\n     casebook new")
    return CLEAN


@cli.command()
@click.argument("name", required=False, metavar="[ID or TITLE]")
@archive_option
def new(name: str | None, archive: str | None) -> int:
    """Start a case: its folder with a commented case.md, a first episode, a place for photos.

    An ID is a-z, 0-9 and hyphens with a figure in it; anything else is taken for the title. Without
    either, or with a title, the case gets the next number of this year.

    \b
    Examples:
      casebook new 2025-031
      casebook new "Tide-gauge keeper's day book"
    """
    root = find_archive(archive)
    case = new_case(root, name or "", today())
    say(f"made {case.relative_to(root)}\n\nNow: write in it, put photos into photos/, then")
    say("     casebook check")
    return CLEAN


@cli.command()
@click.argument("cases", nargs=-1, metavar="[CASE]...")
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text")
@click.option("--all", "show_all", is_flag=True, help="Show all messages, not ten of a kind.")
@archive_option
@uncollected()
def check(cases: tuple[str, ...], form: str, show_all: bool, archive: str | None) -> int:
    """Say what is wrong in the records, or lacking: all of it, or that of some cases.

    Only errors make the exit code 1; warnings and suggestions leave it 0.

    \b
    Examples:
      casebook check
      casebook check 2025-031 --all
      casebook check --format json > faults.json
    """
    root = find_archive(archive)
    loaded, found = read(root)
    found = _of(loaded, found, cases)
    if form == "json":
        click.echo(to_json(found), nl=False)
    else:
        tell(root, found, err=False, show_all=show_all)
    if not found:
        say(f"{len(loaded.archive.cases)} cases, and nothing to say")
    return FAULTS if _errors(found) else CLEAN


def _of(
    loaded: Loaded, found: tuple[Diagnostic, ...], cases: tuple[str, ...]
) -> tuple[Diagnostic, ...]:
    """What is said of the cases named, by id or folder; of the archive itself always."""
    if not cases:
        return found
    folders = {loaded.folders.get(one, one) for one in cases}
    known = {*loaded.folders.values(), *(one.case for one in found)}
    if unknown := sorted(folders - known):
        raise click.UsageError(f"there is no case `{unknown[0]}` in this archive")
    return tuple(one for one in found if not one.case or one.case in folders)


def _errors(found: Iterable[Diagnostic]) -> list[Diagnostic]:
    return [one for one in found if one.severity is Severity.ERROR]


@cli.command()
@audience_option
@client_option
@click.option("--leave-out", is_flag=True, help="Build without the cases that have errors.")
@archive_option
@uncollected()
def build(audience: str | None, client: str | None, leave_out: bool, archive: str | None) -> int:
    """Build the site of an audience: public into site/, others into a folder beside it.

    An error in a record stops the build and leaves the old site; warnings do not.
    With --leave-out the rest is built, the cases left out are named, and the exit code is 1.

    \b
    Examples:
      casebook build
      casebook build --audience lab
      casebook build --audience client --client kestrel-trust
    """
    root = find_archive(archive)
    builder = installed_builder()
    loaded, found = read(root)
    whom, key = for_whom(loaded, audience or "public", client)
    tell(root, (one for one in found if one.severity > Severity.SUGGESTION), err=True)
    errors = _errors(found)
    if errors and not (leave_out and all(one.case for one in errors)):
        say(_stopped(loaded, errors))
        return FAULTS
    place = place_of(root, whom, key)
    with Progress("pictures") as progress:
        broken = broken_cases(loaded, found)
        builder.build(Job(loaded, found, whom, key, broken, progress), place)
    click.echo(place / "index.html")
    if whom is Audience.PUBLIC and (lack := _lack(place)):
        say(lack)
    if errors:
        say("left out: " + ", ".join(sorted({one.case for one in errors})))
    return FAULTS if errors else CLEAN


def _lack(place: Path) -> str:
    """What a public site goes without for want of a setting; "" if nothing."""
    if not (place / "sitemap.xml").is_file():
        return "no `site_url` in mkdocs.yml: no sitemap, no news feed, no full addresses"
    return "" if (place / "feed.xml").is_file() else "no `tag` in lab.yml: no news feed"


def _stopped(loaded: Loaded, errors: list[Diagnostic]) -> str:
    """Why nothing was built, how many cases are whole, and what to do."""
    broken = {one.case for one in errors if one.case}
    whole = len(set(loaded.folders.values()) - broken)
    archive = any(not one.case for one in errors)
    text = f"nothing was built: {counted(errors)}; cases without one: {whole}"
    return text if archive or not whole else f"{text} (--leave-out builds these)"


@cli.command()
@audience_option
@client_option
@click.option("--port", type=click.IntRange(1, 65535), default=PORT, show_default=True)
@archive_option
def serve(audience: str | None, client: str | None, port: int, archive: str | None) -> int:
    """Show the lab's own site on this machine while you write, anew after every change.

    A case with errors is shown with them; nothing stops. Nobody else can reach it.

    \b
    Examples:
      casebook serve
      casebook serve --port 8001 --audience public
    """
    root = find_archive(archive)
    builder = installed_builder()
    whom, key = for_whom(read(root)[0], audience or "lab", client)

    def make(stage: Path) -> None:
        loaded, found = read(root)
        say(counted(found))
        builder.make(Job(loaded, found, whom, key), stage, site_url="")

    watched = [*(root / name for name in WATCHED), templates_folder()]
    notes = root / ".casebook"
    notes.mkdir(exist_ok=True)
    builder.serve(notes, watched, port, make)
    return CLEAN


@cli.command()
@click.argument("rule", required=False)
def explain(rule: str | None) -> int:
    """Explain a RULE: what it asks, why, and its source; without one, list them all.

    \b
    Example:
      casebook explain before-and-after
    """
    from casebook import reference

    every = dict(reference.explained())
    if rule is None:
        width = max(len(name) for name in every)
        click.echo("\n".join(f"{name:{width}}  {what}" for name, what in every.items()))
    elif rule in every:
        click.echo(reference.explain(rule).rstrip("\n"))
    else:
        raise click.UsageError(f"there is no rule `{rule}`. {reference.suggest_rule(rule)}".strip())
    return CLEAN


@cli.command()
def schema() -> int:
    """Print the JSON Schema of a case, for editors that complete and check while you type.

    \b
    Example:
      casebook schema > case.schema.json
    """
    from casebook.reference import json_schema_text

    click.echo(json_schema_text().rstrip("\n"))
    return CLEAN
