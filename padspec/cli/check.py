"""padspec check: every finding of every design, without writing anything."""

from typing import Any

import click

from padspec.base.errors import ProblemsError
from padspec.cli.options import CONTEXT, as_json, loudness, only_these, paths
from padspec.cli.say import problems_json, say_finding, say_json, say_problems, tally, teller, unusable
from padspec.collection.only import only
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
    outcomes: list[dict[str, Any]] = []
    problems: list[dict[str, Any]] = []
    for target in found:
        try:
            outcomes.append(_check(target, verbose))
        except ProblemsError as error:
            problems += problems_json(error)["problems"]
            if not as_json:
                say_problems(error, target.root)
            continue
        if not as_json:
            _say(outcomes[-1], target, quiet)
    if as_json:
        say_json({"designs": outcomes, "problems": problems})
    return 2 if problems else int(any(outcome["state"] == "failed" for outcome in outcomes))


def _check(target: Target, verbose: bool) -> dict[str, Any]:
    pad = make(target.path, FolderWorkspace(target.root), teller(verbose, target.path), target.variation)
    return pad_data(pad.design, pad.sheet, pad.findings)


def _say(outcome: dict[str, Any], target: Target, quiet: bool) -> None:
    for finding in outcome["findings"]:
        say_finding(finding, target.root)
    if not quiet:
        click.echo(f"{outcome['design']}: findings {tally(outcome['findings'])}", err=True)
