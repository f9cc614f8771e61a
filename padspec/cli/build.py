"""padspec build: faces, sheets and proofs of every pad, and a short table of what was made."""

import click

from padspec.base.errors import ProblemsError
from padspec.cli.built import made_data, named, say_failures, say_findings, say_made, say_why
from padspec.cli.haste import make_haste
from padspec.cli.options import CONTEXT, as_json, loudness, only_these, paths, workers_wanted
from padspec.cli.personal import AllPersonal, make_personal_runs, personal_data, say_personal
from padspec.cli.running import AllBuilt, Speech, make_all, problems_of, run_of
from padspec.cli.say import problems_json, say_json, shown_path, unusable
from padspec.collection.build import Run, take_orphans
from padspec.collection.collection_file import COLLECTION_FILE
from padspec.collection.only import only
from padspec.collection.targets import Meant, left_out, meant
from padspec.collection.work import BuildWish

EPILOG = """\b
Examples:
  padspec build                        every pad of this folder, into out/
  padspec build moth.pad.yaml          one design
  padspec build --only frost           the variants of one colourway
  padspec build --only NG-MOTH --why   the variants of one design, and why each was made
  padspec build --out ~/to-print       somewhere else
  padspec build --plan market.job.yaml the pages of a job, in the order to print them
"""


@click.command("build", epilog=EPILOG, context_settings=CONTEXT)
@paths
@click.option(
    "--out", "out", type=click.Path(file_okay=False), help="Where to write. [default: out/ in the project]"
)
@only_these
@click.option("--why", is_flag=True, help="Say of every pad why it was made.")
@click.option("--embed", is_flag=True, help="Put pictures into the SVG faces instead of beside them.")
@click.option("--no-proofs", is_flag=True, help="Leave out the PNG proofs.")
@click.option("--despite-errors", is_flag=True, help="Write the sheet even where a check says not to print it.")
@click.option("--again", is_flag=True, help="Make even what has not changed.")
@click.option("--plan", "job", type=click.Path(), metavar="JOB", help="Make the pages of a job instead.")
@workers_wanted
@as_json
@loudness
def command(
    paths: tuple[str, ...],
    out: str | None,
    words: tuple[str, ...],
    why: bool,
    embed: bool,
    no_proofs: bool,
    despite_errors: bool,
    again: bool,
    job: str | None,
    jobs: int | None,
    scheduler: str | None,
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

        if embed or again or words or why or scheduler:
            given = "--embed, --again, --only, --why and --scheduler"
            raise click.UsageError(f"--plan makes pages, never faces: leave {given} out.")
        pages = PagesRun(out, not no_proofs, despite_errors, as_json, quiet, verbose)
        return build_pages(job, paths, pages)
    wish = BuildWish(embed, despite_errors, not no_proofs, again)
    speech = Speech(as_json, quiet, verbose)
    try:
        found = meant(paths)
        targets = only(found.targets, words)
        run = run_of(out, wish, jobs, scheduler, speech)
        made = make_all(targets, run, speech)
    except ProblemsError as error:
        return unusable(error, as_json)
    whole = Meant((), ()) if words else found
    _tidy(whole, run, speech)
    personal = make_personal_runs(whole, run, speech)
    if not (as_json or quiet):
        for design in left_out(paths, found.targets):
            click.echo(f"{shown_path(design)} is not in {COLLECTION_FILE}, so it was left out.", err=True)
    _say(made, personal, run, speech, why)
    return max(made.status, personal.status)


def _say(made: AllBuilt, personal: AllPersonal, run: Run, speech: Speech, why: bool) -> None:
    if speech.as_json:
        errors = (*problems_of(made.failed), *personal.errors)
        say_json(
            {
                "designs": [made_data(one, run.folder_of) for one in made.built],
                "personal": [personal_data(one, run) for one in personal.built],
                "problems": [problem for error in errors for problem in problems_json(error)["problems"]],
            }
        )
        return
    say_failures(made.failed)
    say_findings(made.built)
    if why:
        say_why(made.built)
    if made.built and not speech.quiet:
        say_made(made.built, run.folder_of)
    say_personal(personal, run, speech)


def _tidy(found: Meant, run: Run, speech: Speech) -> None:
    """Nothing of a variant that a collection no longer makes is to look as if it did."""
    for root, collection in found.collections:
        gone = take_orphans(collection, root, run)
        if gone and not (speech.as_json or speech.quiet):
            these = f"{collection.file} no longer makes {named(gone)}"
            click.echo(f"{these}: what had been built of that was taken away, sheets set aside.", err=True)
