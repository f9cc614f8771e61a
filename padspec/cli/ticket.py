"""padspec ticket: one page that goes with the job through the workshop."""

from contextlib import suppress
from pathlib import Path

import click

from padspec.base.errors import ProblemsError
from padspec.cli.haste import make_haste
from padspec.cli.options import CONTEXT, as_json, paths
from padspec.cli.plan import failing, planned, say_looked
from padspec.cli.say import counted, say_json, say_problems, shown_path, teller, unusable
from padspec.costing.costed import costed
from padspec.jobs.build import build_plan, withdraw_plan
from padspec.jobs.figures import figures_of
from padspec.jobs.job import wanted_of
from padspec.jobs.load import Loaded, load
from padspec.jobs.pages import folder_of
from padspec.schedule.wording import timeline_lines
from padspec.ticket.as_data import ticket_data
from padspec.ticket.make import ticket_files
from padspec.ticket.ticket import ticket_of
from padspec.workspace import FolderWorkspace

EPILOG = """\b
Examples:
  padspec ticket saturday.job.yaml            out/jobs/Saturday-market/ticket.html
  padspec ticket --pads 24 moth.pad.yaml      twenty-four of one
  padspec ticket saturday.job.yaml --json     the same as data
"""


@click.command("ticket", epilog=EPILOG, context_settings=CONTEXT)
@paths
@click.option(
    "--pads", "words", multiple=True, metavar="[SKU=]NUMBER", help="How many pads, of one design or of each."
)
@click.option("--no-gang", is_flag=True, help="Keep every sheet to one design.")
@click.option("--out", type=click.Path(file_okay=False), help="Where to write. [default: out/ in the project]")
@as_json
def command(paths: tuple[str, ...], words: tuple[str, ...], no_gang: bool, out: str | None, as_json: bool) -> int:
    """Make the job ticket: a page or two to print, with all that the workshop needs; and the pages of the job.

    PATHS are a job file, or designs, collections or folders with --pads. On it: the pads, what to fetch, a time
    line, every step with its tick boxes, what a good pad shows, cautions, and the cuts in order with drawings.
    Exit status: 0, 1 where a design of the job has errors, 2 where a file could not be used.
    """
    make_haste()
    loaded = None
    try:
        loaded = load(paths, words, not no_gang, lambda path: teller(False, path))
        wanted = wanted_of(loaded.job, tuple(pad.design for pad in loaded.pads))
        failed = failing(loaded, wanted)
        if failed:
            withdraw_plan(loaded.job.name, FolderWorkspace(_folder(loaded, out)))
            return _held_back(failed, as_json)
        plan = planned(loaded, wanted)
        figures = figures_of(plan)
        found = costed(plan, figures.inks)
        output = FolderWorkspace(_folder(loaded, out))
        ticket = ticket_of(found, f"{output.root.name}/{folder_of(plan.name)}")
        files = ticket_files(ticket)
        pages = build_plan(plan, figures, output, proofs=False)
        for path, content in files.items():
            output.write(path, content)
    except ProblemsError as error:
        if loaded is not None:
            with suppress(ProblemsError):  # the one that is told comes first
                withdraw_plan(loaded.job.name, FolderWorkspace(_folder(loaded, out)))
        if as_json:
            return unusable(error, as_json)
        say_problems(error, loaded.root if loaded else None)
        return 2
    written = [shown_path(output.root / path) for path in (*files, *pages)]
    if as_json:
        say_json({**ticket_data(ticket), "files": written})
        return 0
    say_looked(figures, loaded)
    click.echo(f"Wrote {written[0]}: {counted(found.batch.pads, 'pad')}, {counted(len(ticket.steps), 'step')}.")
    click.echo("\n".join(timeline_lines(found.timeline)))
    click.echo("Next: open it in a browser and print it; the pages to print for the pads lie beside it.")
    return 0


def _folder(loaded: Loaded, out: str | None) -> Path:
    return Path(out) if out else loaded.root / "out"


def _held_back(failed: tuple[str, ...], as_json: bool) -> int:
    if as_json:
        say_json({"designs_with_errors": list(failed), "files": []})
    else:
        names = ", ".join(failed)
        click.echo(
            f"No ticket was written: {counted(len(failed), 'design')} with errors ({names}). "
            "Mend them first: padspec check.",
            err=True,
        )
    return 1
