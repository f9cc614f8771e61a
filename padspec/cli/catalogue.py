"""padspec catalogue: every pad of a collection on one page, to look through, send to a shop and print."""

from pathlib import Path

import click

from padspec.base.errors import ProblemsError
from padspec.cli.built import say_failures, say_findings
from padspec.cli.haste import make_haste
from padspec.cli.options import CONTEXT, as_json, loudness, only_these, paths, workers_wanted
from padspec.cli.running import AllBuilt, Speech, make_all, problems_of, run_of
from padspec.cli.say import counted, one_problem, problems_json, say_json, shown_path, unusable
from padspec.collection.only import only
from padspec.collection.targets import Meant, meant
from padspec.collection.work import BuildWish
from padspec.workspace import FolderWorkspace

EPILOG = """\b
Examples:
  padspec catalogue                       every pad of this folder, into out/catalogue/
  padspec catalogue seasons.collection.yaml --only wide
"""


@click.command("catalogue", epilog=EPILOG, context_settings=CONTEXT)
@paths
@click.option(
    "--out", "out", type=click.Path(file_okay=False), help="Where to write. [default: out/ in the project]"
)
@only_these
@workers_wanted
@as_json
@loudness
def command(
    paths: tuple[str, ...],
    out: str | None,
    words: tuple[str, ...],
    jobs: int | None,
    scheduler: str | None,
    as_json: bool,
    quiet: bool,
    verbose: bool,
) -> int:
    """Build what has changed, and put all pads on one page.

    The page opens from disk, is searched and filtered there, and prints as a line sheet with an order column;
    beside it lie the same as CSV and JSON. Exit status: 0 without errors, 1 with findings of severity error, 2
    where a file could not be used.
    """
    make_haste()
    speech = Speech(as_json, quiet, verbose)
    try:
        found = meant(paths)
        targets = only(found.targets, words)
        run = run_of(out, BuildWish(), jobs, scheduler, speech)
        roots = list(dict.fromkeys(target.root for target in targets))
        if len(roots) > 1:
            raise one_problem(str(roots[1]), f"These pads belong to {len(roots)} projects.", "Name one at a time.")
        made = make_all(targets, run, speech)
        name, about = _title(found, roots[0])
        output = FolderWorkspace(run.folder_of(roots[0]))
        files = _catalogue(name, about, made, output)
    except ProblemsError as error:
        return unusable(error, as_json)
    _say(made, output.root, files, speech)
    return made.status


def _title(found: Meant, root: Path) -> tuple[str, str]:
    """Name and description: those of the collection, where one was meant, else the folder's name."""
    if len(found.collections) == 1:
        ((_, collection),) = found.collections
        return collection.name, collection.about
    return root.name.replace("-", " ").replace("_", " ").strip().capitalize() or "Pads", ""


def _catalogue(name: str, about: str, made: AllBuilt, output: FolderWorkspace) -> tuple[str, ...]:
    from padspec.catalogue.card import Unread
    from padspec.catalogue.catalogue import write_catalogue

    unread = [
        Unread(
            failure.target.path,
            ", ".join(value for _, value in failure.target.variation.values),
            str(failure.error.problems[0]),
        )
        for failure in made.failed
    ]
    return write_catalogue(name, about, made.built, unread, output)


def _say(made: AllBuilt, folder: Path, files: tuple[str, ...], speech: Speech) -> None:
    if speech.as_json:
        problems = [problem for error in problems_of(made.failed) for problem in problems_json(error)["problems"]]
        say_json(
            {"pads": len(made.built), "files": [shown_path(folder / path) for path in files], "problems": problems}
        )
        return
    say_failures(made.failed)
    say_findings(made.built)
    if not speech.quiet:
        page = shown_path(folder / files[0])
        click.echo(f"{counted(len(made.built), 'pad')} on {page}; the same as CSV and JSON beside it.")
        if made.failed:
            click.echo(f"{counted(len(made.failed), 'pad')} could not be made; the page says so, and why.")
