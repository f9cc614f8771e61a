"""padspec check: every finding of every design, without writing anything."""

import click

from padspec.base.errors import ProblemsError
from padspec.cli.built import say_failures, say_findings, variants_table
from padspec.cli.options import CONTEXT, as_json, loudness, only_these, paths
from padspec.cli.running import problems_of
from padspec.cli.say import problems_json, say_json, tally, teller, unusable
from padspec.collection.build import Failed
from padspec.collection.only import only
from padspec.collection.site import Built
from padspec.collection.targets import Target, targets
from padspec.pipeline import make
from padspec.report import pad_data
from padspec.workspace import FolderWorkspace

EPILOG = """\b
Examples:
  padspec check                    every design of this folder
  padspec check moth.pad.yaml      one design
  padspec check --only frost       the variants of one colourway
  padspec check --json             for another program
"""


@click.command("check", epilog=EPILOG, context_settings=CONTEXT)
@paths
@only_these
@as_json
@loudness
def command(paths: tuple[str, ...], words: tuple[str, ...], as_json: bool, quiet: bool, verbose: bool) -> int:
    """Look designs over before they are printed.

    Shows each finding with its line of YAML, what was measured, the limit, and what to do. Nothing is written.
    Exit status: 0 without errors, 1 with findings of severity error, 2 where a file could not be used.
    """
    try:
        found = only(targets(paths), words)
    except ProblemsError as error:
        return unusable(error, as_json)
    checked: list[Built] = []
    failed: list[Failed] = []
    for target in found:
        try:
            checked.append(_check(target, verbose))
        except ProblemsError as error:
            failed.append(Failed(target, error))
    if as_json:
        problems = [problem for error in problems_of(failed) for problem in problems_json(error)["problems"]]
        say_json({"designs": [one.summary for one in checked], "problems": problems})
    else:
        say_failures(failed)
        say_findings(checked)
        if not quiet:
            _say(checked)
    return 2 if failed else int(any(one.summary["state"] == "failed" for one in checked))


def _check(target: Target, verbose: bool) -> Built:
    tell = teller(verbose, target.path)
    pad = make(target.path, FolderWorkspace(target.root), tell, target.variation)
    return Built(target, pad_data(pad.design, pad.sheet, pad.findings), ())


def _say(checked: list[Built]) -> None:
    if any(one.target.variation.values for one in checked):
        click.echo(variants_table(checked), err=True)
        return
    for one in checked:
        click.echo(f"{one.summary['design']}: findings {tally(one.summary['findings'])}", err=True)
