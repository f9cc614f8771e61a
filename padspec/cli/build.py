"""padspec build: faces, sheets and proofs of every design, and a short table of what was made."""

import sys
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import click

from padspec.base.errors import ProblemsError
from padspec.cli.haste import make_haste
from padspec.cli.options import CONTEXT, as_json, loudness, paths
from padspec.cli.say import (
    problems_json,
    say_finding,
    say_json,
    say_problems,
    shown_path,
    table,
    tally,
    teller,
    unusable,
)
from padspec.collection.build import BuildWish, Built, build
from padspec.collection.targets import COLLECTION_FILE, Target, left_out, targets
from padspec.workspace import FolderWorkspace

EPILOG = """\b
Examples:
  padspec build                        every design of this folder, into out/
  padspec build moth.pad.yaml          one design
  padspec build --out ~/to-print       somewhere else
  padspec build --plan market.job.yaml the pages of a job, in the order to print them
"""


@dataclass(frozen=True, slots=True)
class _Run:
    """How this run was asked for."""

    out: str | None
    wish: BuildWish
    as_json: bool
    quiet: bool
    verbose: bool

    def folder(self, target: Target) -> Path:
        """Where the files of a design go."""
        return Path(self.out) if self.out else target.root / "out"


@click.command("build", epilog=EPILOG, context_settings=CONTEXT)
@paths
@click.option(
    "--out", "out", type=click.Path(file_okay=False), help="Where to write. [default: out/ in the project]"
)
@click.option("--embed", is_flag=True, help="Put pictures into the SVG faces instead of beside them.")
@click.option("--no-proofs", is_flag=True, help="Leave out the PNG proofs.")
@click.option("--despite-errors", is_flag=True, help="Write the sheet even where a check says not to print it.")
@click.option("--again", is_flag=True, help="Make even what has not changed.")
@click.option("--plan", "job", type=click.Path(), metavar="JOB", help="Make the pages of a job instead.")
@as_json
@loudness
def command(
    paths: tuple[str, ...],
    out: str | None,
    embed: bool,
    no_proofs: bool,
    despite_errors: bool,
    again: bool,
    job: str | None,
    as_json: bool,
    quiet: bool,
    verbose: bool,
) -> int:
    """Make faces, sheets and proofs, checked.

    What has not changed since the last build is left as it is. Exit status: 0 without errors, 1 with findings of
    severity error (the sheet is then held back), 2 where a file could not be used.
    """
    make_haste()
    if job is not None:
        from padspec.cli.build_plan import PagesRun, build_pages

        if embed or again:
            raise click.UsageError("--plan makes pages, never faces: leave --embed and --again out.")
        pages = PagesRun(out, not no_proofs, despite_errors, as_json, quiet, verbose)
        return build_pages(job, paths, pages)
    run = _Run(out, BuildWish(embed, despite_errors, not no_proofs, again), as_json, quiet, verbose)
    try:
        found = targets(paths)
    except ProblemsError as error:
        return unusable(error, as_json)
    made, problems = _build_all(found, run)
    if not (as_json or quiet):
        for design in left_out(paths, found):
            click.echo(f"{shown_path(design)} is not in {COLLECTION_FILE}, so it was left out.", err=True)
    if as_json:
        say_json({"designs": [_data(built, run) for built in made], "problems": problems})
    elif made:
        _say_findings(made)
        if not quiet:
            _say_made(made, run)
    return 2 if problems else int(any(built.summary["state"] == "failed" for built in made))


def _build_all(found: tuple[Target, ...], run: _Run) -> tuple[list[Built], list[dict[str, Any]]]:
    """Build each design; one that cannot be used does not hold up the others."""
    made: list[Built] = []
    problems: list[dict[str, Any]] = []
    faults: list[tuple[ProblemsError, Target]] = []
    claimed: dict[str, str] = {}
    watched = sys.stderr.isatty() and not (run.as_json or run.quiet or run.verbose)
    with click.progressbar(
        found, label="Building", file=sys.stderr, hidden=not watched or len(found) < 2, show_pos=True
    ) as bar:
        for target in bar:
            output = FolderWorkspace(run.folder(target))
            try:
                made.append(build(target, output, run.wish, claimed, teller(run.verbose, target.path)))
            except ProblemsError as error:
                problems += problems_json(error)["problems"]
                faults.append((error, target))
    if not run.as_json:
        for fault, where in faults:
            say_problems(fault, where.root)
    return made, problems


def _say_findings(made: list[Built]) -> None:
    for built in made:
        for finding in built.summary["findings"]:
            say_finding(finding, built.target.root)


def _say_made(made: list[Built], run: _Run) -> None:
    rows = [_row(built, run) for built in made]
    click.echo(table(("design", "sheet", "sheets for a pad", "cuts", "findings", "files"), rows))
    for caution in dict.fromkeys(built.summary["caution"] for built in made):
        click.echo(caution)
    held = [built.summary["design"] for built in made if _is_held_back(built)]
    if held:
        click.echo(f"No sheet was written for {', '.join(held)}: mend the errors first, or add --despite-errors.")


def _row(built: Built, run: _Run) -> tuple[str, ...]:
    summary = built.summary
    fits = summary["n_up"] > 0
    files = shown_path(run.folder(built.target) / summary["sku"]) + "/"
    return (
        summary["design"],
        f"{summary['n_up']}-up on {summary['sheet']}" if fits else f"does not fit {summary['sheet']}",
        str(summary["copies"]) if fits else "–",
        str(summary["cuts"]) if fits else "–",
        tally(summary["findings"]),
        f"{files} (unchanged)" if built.was_current else files,
    )


def _is_held_back(built: Built) -> bool:
    return f"{built.summary['sku']}/sheet.pdf" not in built.files


def _data(built: Built, run: _Run) -> dict[str, Any]:
    folder = shown_path(run.folder(built.target))
    return {
        **built.summary,
        "unchanged": built.was_current,
        "files": [f"{folder}/{name}" for name in built.files],
    }
