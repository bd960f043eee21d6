"""The door: runs a command and ends the program, with one line for what a user can mend."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from io import TextIOWrapper

import click

from casebook.authoring.init import InTheWay
from casebook.cli.commands import cli
from casebook.cli.shared import say
from casebook.locks import Busy
from casebook.swaps import NotOurs
from casebook.terminal import visible

COULD_NOT_RUN, INTERRUPTED = 2, 130


def main(arguments: Sequence[str] | None = None) -> None:
    """Run a command and end the program; a user's fault is one line, a bug a traceback."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, TextIOWrapper):  # an old Windows console lacks signs such as →
            stream.reconfigure(errors="backslashreplace")
    sys.exit(_run(arguments))


def _run(arguments: Sequence[str] | None) -> int:
    try:
        return int(cli.main(arguments, prog_name="casebook", standalone_mode=False) or 0)
    except click.exceptions.NoArgsIsHelpError as help_text:
        help_text.show()
    except click.UsageError as fault:
        fault.show()
    except click.ClickException as fault:
        say(f"error: {fault.format_message()}")
    except InTheWay as fault:
        say("error: this is there already, and nothing was written:")
        say("\n".join(f"  {path}" for path in fault.paths))
    except Busy as fault:
        say(f"error: somebody else is at it ({fault.holder}); try again when they are done")
    except NotOurs as fault:
        say(_not_ours(fault))
    except OSError as fault:
        say(f"error: {fault.strerror or fault}" + (f": {fault.filename}" if fault.filename else ""))
    except (click.Abort, KeyboardInterrupt):
        return INTERRUPTED
    return COULD_NOT_RUN


def _not_ours(fault: NotOurs) -> str:
    """Why a folder was not exchanged, and how to go on."""
    name = fault.place.name
    listed = "\n".join(f"  {visible(one)}" for one in fault.paths[:10])
    more = f"\n  and {len(fault.paths) - 10} more" if len(fault.paths) > 10 else ""
    return (
        f"error: {name}/ holds files that casebook did not write, or that were changed since:\n"
        f"{listed}{more}\n"
        f"Nothing was touched. Move what is yours into pages/, from where it is copied into the "
        f"site,\nor rename the folder, and build again. (If .casebook/ was deleted, casebook knows "
        f"none of\nits files any more: then remove or rename {name}/ and build again.)"
    )
