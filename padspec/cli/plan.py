"""padspec plan: what to print for so many pads, and how to cut it."""

from typing import Any

import click

from padspec.base.errors import PadspecError, Problem, ProblemsError
from padspec.cli.haste import make_haste
from padspec.cli.options import CONTEXT, as_json, paths
from padspec.cli.plan_text import plan_lines
from padspec.cli.restock_options import RestockOptions, restocking
from padspec.cli.say import counted, one_problem, say_finding, say_json, say_problems, teller, unusable
from padspec.jobs.as_data import plan_data
from padspec.jobs.figures import Figures, figures_of
from padspec.jobs.job import wanted_of
from padspec.jobs.load import Loaded, load
from padspec.jobs.plan import JobPlan, Wanted, make_plan, unfit
from padspec.report import finding_data

EPILOG = """\b
Examples:
  padspec plan saturday.job.yaml                       a job from its file
  padspec plan --pads NG-MOTH=12 --pads NG-OWL=6       some designs of this folder
  padspec plan --pads 10 moth.pad.yaml                 ten of one
  padspec plan --restock --write                       what to make for the next market, as a job
  padspec build --plan saturday.job.yaml               the pages of a job, to print
"""


@click.command("plan", epilog=EPILOG, context_settings=CONTEXT)
@paths
@click.option(
    "--pads", "words", multiple=True, metavar="[SKU=]NUMBER", help="How many pads, of one design or of each."
)
@click.option("--no-gang", is_flag=True, help="Keep every sheet to one design.")
@restocking
@as_json
def command(paths: tuple[str, ...], words: tuple[str, ...], no_gang: bool, as_json: bool, **restock: Any) -> int:
    """Say what to print for so many pads of which designs, and how to cut it.

    PATHS are a job file (NAME.job.yaml), or designs, collections or folders with --pads. The plan takes as few
    sheets as it can, then as few different pages; it says the cuts in order, the chance of a white edge, what
    other paper would come to, and what ink is used. With --restock it proposes the numbers, for the next market;
    --pads SKU=NUMBER then sets one of them.
    Exit status: 0, 1 where a design of the job has errors, 2 where a file could not be used.
    """
    make_haste()
    options = RestockOptions(**restock)
    if options.restock:
        from padspec.cli.plan_restock import plan_restock

        return plan_restock(paths, words, not no_gang, options, as_json)
    loaded = None
    try:
        options.refuse_without_restock()
        loaded = load(paths, words, not no_gang, lambda path: teller(False, path))
        wanted = wanted_of(loaded.job, tuple(pad.design for pad in loaded.pads))
        plan = planned(loaded, wanted)
    except ProblemsError as error:
        if as_json:
            return unusable(error, as_json)
        say_problems(error, loaded.root if loaded else None)
        return 2
    figures = figures_of(plan)
    failed = failing(loaded, wanted)
    if as_json:
        say_json({**plan_data(plan, figures), "designs_with_errors": list(failed)})
    else:
        say_failing(failed)
        say_looked(figures, loaded)
        click.echo("\n".join(plan_lines(plan, figures)))
    return 1 if failed else 0


def planned(loaded: Loaded, wanted: tuple[Wanted, ...], remark: str = "") -> JobPlan:
    """The plan of a job; raises ProblemsError for a design that does not fit its sheet."""
    misfits = {design.sku for design in unfit(wanted)}
    told = [finding for pad in loaded.pads if pad.design.sku in misfits for finding in pad.findings]
    problems = [
        Problem(finding.place, finding.message, finding.remedy.text if finding.remedy else "")
        for finding in told
        if finding.check == "sheet-fit"
    ]
    if problems:
        raise ProblemsError(*problems)
    try:
        return make_plan(loaded.job.name, wanted, loaded.job.gang, remark)
    except PadspecError as error:
        raise one_problem(wanted[0].design.file, str(error)) from None


def failing(loaded: Loaded, wanted: tuple[Wanted, ...]) -> tuple[str, ...]:
    """The SKUs of designs of a job that have errors."""
    ordered = {one.design.sku for one in wanted}
    return tuple(pad.design.sku for pad in loaded.pads if pad.failed and pad.design.sku in ordered)


def say_looked(figures: Figures, loaded: Loaded) -> None:
    """What was found about pages that designs share."""
    for looked in figures.looked:
        for finding in looked.findings:
            say_finding(finding_data(finding), loaded.root)


def say_failing(failed: tuple[str, ...]) -> None:
    """Say which designs are not to be printed as they are."""
    if failed:
        names = ", ".join(failed)
        click.echo(f"{counted(len(failed), 'design')} with errors: {names}. Run padspec check.", err=True)
