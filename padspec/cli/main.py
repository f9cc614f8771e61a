"""The entry point: a group of commands that are imported only when they are called."""

import os
import sys
from importlib import import_module

import click

from padspec import __version__
from padspec.base.errors import PadspecError
from padspec.base.nearest import nearest

#: Every command with the module that holds it and the line that help shows.
COMMANDS = {
    "new": ("padspec.cli.new", "Begin a design from a picture."),
    "check": ("padspec.cli.check", "Look a design over before it is printed."),
    "build": ("padspec.cli.build", "Make faces, sheets and proofs."),
    "plan": ("padspec.cli.plan", "Say what to print for so many pads, and how to cut it."),
    "ticket": ("padspec.cli.ticket", "Make the job ticket: one page that goes through the workshop."),
    "cost": ("padspec.cli.cost", "Say what so many pads cost, and what to ask for one."),
    "stock": ("padspec.cli.stock", "Enter what was made and sold, and show what is on hand."),
    "tags": ("padspec.cli.tags", "Make price stickers or hang tags."),
    "stamp": ("padspec.cli.stamp", "Make artwork of one black for a stamp."),
    "calibrate": ("padspec.cli.calibrate", "Make the pages that show what the printer does."),
    "strip": ("padspec.cli.strip", "Make a colour test strip of a design."),
    "flat-lay": ("padspec.cli.flat_lay", "Make a picture of the finished pad, for a shop."),
    "catalogue": ("padspec.cli.catalogue", "Put every pad of a collection on one page."),
    "compare": ("padspec.cli.compare", "Show what has changed since a revision."),
    "gallery": ("padspec.cli.gallery", "Show every layout on every ground."),
    "palette": ("padspec.cli.palette", "Show the colours of a picture."),
    "show": ("padspec.cli.show", "Print any stage of a design as JSON."),
    "explain": ("padspec.cli.explain", "Say what a check, a layout or a key means."),
}

TROUBLE = 2


class LazyGroup(click.Group):
    """Knows its commands by name and imports one when it is wanted, so that --version stays quick."""

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: ARG002 (click's signature)
        """The names, in the order of the job."""
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:  # noqa: ARG002 (click's)
        """Import the module that holds a command."""
        if cmd_name not in COMMANDS:
            return None
        command: click.Command = import_module(COMMANDS[cmd_name][0]).command
        return command

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        """Name the nearest command for one that is not known."""
        if args and args[0] not in COMMANDS and not args[0].startswith("-"):
            near = nearest(args[0], COMMANDS)
            mend = f"Did you mean padspec {near}?" if near else f"Commands: {', '.join(COMMANDS)}."
            raise click.UsageError(f"There is no command {args[0]}. {mend}", ctx)
        return super().resolve_command(ctx, args)

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:  # noqa: ARG002 (click's)
        """List the commands without importing any of them."""
        with formatter.section("Commands"):
            formatter.write_dl([(name, line) for name, (_, line) in COMMANDS.items()])


EPILOG = """\b
First steps:
  padspec new moth.png           a design whose colours come from the picture
  padspec build                  every design in this folder, checked and tiled
  padspec explain rule-contrast  what a check measures, and why
\b
Completion of commands and options in bash (zsh and fish likewise):
  eval "$(_PADSPEC_COMPLETE=bash_source padspec)"
"""


@click.group(cls=LazyGroup, epilog=EPILOG, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, message="padspec %(version)s")
def cli() -> None:
    """From one YAML spec and a picture to a checked, tiled sheet of tear-off list pads."""


def main() -> None:
    """Run a command; say what is wrong without a traceback, and exit 2 when the input could not be used."""
    try:
        _refuse_undecodable(sys.argv[1:])
        status = cli.main(prog_name="padspec", standalone_mode=False)
    except click.exceptions.Exit as done:
        status = done.exit_code
    except click.ClickException as error:
        status = _wrong_words(error)
    except (click.Abort, KeyboardInterrupt) as stop:
        click.echo("Stopped. Every file written so far is whole.", err=True)
        status = 130
        _leave_if_processes_ended(stop, status)
    except SystemExit as ended:
        # click ends like this after completing a word, and where the reader of our output went away (a pager,
        # head): nothing is wrong then.
        status = ended.code if "_PADSPEC_COMPLETE" in os.environ else 0
    except PadspecError as error:
        click.echo(str(error), err=True)
        status = TROUBLE
    except Exception as error:
        status = _own_fault(error)
    sys.exit(status if isinstance(status, int) else 0)


def _leave_if_processes_ended(stop: BaseException, status: int) -> None:
    """Leave without the usual waiting for processes beside this one where an interrupt has ended them."""
    if "padspec.collection.workers" in sys.modules:
        from padspec.collection.workers import ProcessesEnded

        if isinstance(stop.__cause__, ProcessesEnded) or isinstance(stop, ProcessesEnded):
            sys.stdout.flush()
            sys.stderr.flush()
            os._exit(status)


def _refuse_undecodable(words: list[str]) -> None:
    """Names that are no text cannot stand in a design, and most screens cannot show them."""
    for word in words:
        if any("\ud800" <= letter <= "\udfff" for letter in word):
            shown = word.encode("utf-8", "replace").decode("utf-8")
            raise click.UsageError(f"{shown} holds bytes that are not UTF-8. Rename the file first.")


def _wrong_words(error: click.ClickException) -> int:
    """Say what is wrong with the command line, as JSON where that was asked for."""
    if "--json" not in sys.argv[1:]:
        error.show()
        return TROUBLE
    from padspec.cli.say import one_problem, unusable

    where = error.ctx if isinstance(error, click.UsageError) else None
    mend = f"See: {where.command_path if where else 'padspec'} --help"
    return unusable(one_problem("", error.format_message(), mend), as_json=True)


def _own_fault(error: Exception) -> int:
    """A fault of padspec's own: one line, and where it happened for who asks."""
    if os.environ.get("PADSPEC_TRACE"):
        raise error
    click.echo(
        f"padspec made a mistake of its own ({type(error).__name__}: {error}). "
        "Set PADSPEC_TRACE=1 and run it again to see where, and please report it.",
        err=True,
    )
    return TROUBLE
