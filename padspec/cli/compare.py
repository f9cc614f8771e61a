"""padspec compare: what changed since a revision, in words and in pictures."""

import sys
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path

import click

from padspec.base.errors import ProblemsError
from padspec.cli.haste import make_haste
from padspec.cli.options import CONTEXT, as_json
from padspec.cli.say import one_problem, say_json, say_problems, shown_path, unusable
from padspec.collection.workers import Here, Processes, Result, Task, Workers, usual_jobs
from padspec.comparing.as_data import comparison_data
from padspec.comparing.compare import compare
from padspec.comparing.comparison import Comparison
from padspec.comparing.message import message
from padspec.comparing.sides import Source, source_of
from padspec.comparing.write import PAGE, write_comparison
from padspec.workspace import FolderWorkspace

HEAD = "HEAD"
EPILOG = """\b
Examples:
  padspec compare                        what is not committed yet
  padspec compare HEAD~3                 what the last three commits changed, and since
  padspec compare v1 moth.pad.yaml       one design since a tag
  padspec compare --since main -- notes  a branch, where a file is called like one
\b
As the text of a commit:
  padspec compare --text-only | git commit -F -
"""


@click.command("compare", epilog=EPILOG, context_settings=CONTEXT)
@click.argument("words", nargs=-1, type=click.Path(), metavar="[REV] [PATHS]...")
@click.option("--since", metavar="REV", help="The revision, where it could be taken for a path.")
@click.option(
    "--out",
    type=click.Path(file_okay=False),
    help="Where to write, into compare/ there. [default: out/ in the project]",
)
@click.option("--text-only", is_flag=True, help="Draw nothing and write nothing: just the text.")
@click.option("-j", "--jobs", type=click.IntRange(1, 256), metavar="N", help="How many processes work at once.")
@as_json
@click.option("-q", "--quiet", is_flag=True, help="Say nothing but what is wrong.")
def command(
    words: tuple[str, ...],
    since: str | None,
    out: str | None,
    text_only: bool,
    jobs: int | None,
    as_json: bool,
    quiet: bool,
) -> int:
    """Show what changed in a collection since a git revision, design by design.

    REV is a commit, branch or tag, HEAD where it is left out; PATHS are designs, collections or folders. What is
    not committed counts as now. In words on stdout, as a commit message; in pictures, before, now and the
    difference, as a page for a browser. Your files, the index and the commits stay as they are.
    Exit status: 0 the same, 1 changed, 2 where a file could not be used.
    """
    make_haste()
    number = jobs or usual_jobs()
    try:
        revision, sources = _asked(words, since)
        workers = _Watched(Here() if number == 1 else Processes(number), as_json or quiet)
        found = compare(sources, revision, not text_only, workers)
        folder = (Path(out) if out else sources[0].root / "out") / "compare"
        if not text_only:
            write_comparison(found, FolderWorkspace(folder))
    except ProblemsError as error:
        return unusable(error, as_json)
    if as_json:
        say_json(comparison_data(found, "" if text_only else shown_path(folder)))
    else:
        _say(found, sources, None if text_only else folder, quiet)
    return found.status


class _Watched:
    """Workers, and how far they are where somebody looks on."""

    def __init__(self, workers: Workers, silent: bool) -> None:
        self._workers = workers
        self._silent = silent or not sys.stderr.isatty()

    def run(self, work: Callable[[Task], Result], tasks: Iterable[Task]) -> Iterator[tuple[Task, Result]]:
        """See Workers.run."""
        to_do = tuple(tasks)
        hidden = self._silent or len(to_do) < 2
        with click.progressbar(
            length=len(to_do), label="Comparing", file=sys.stderr, hidden=hidden, show_eta=True
        ) as bar:
            for outcome in self._workers.run(work, to_do):
                bar.update(1)
                yield outcome


def _asked(words: tuple[str, ...], since: str | None) -> tuple[str, tuple[Source, ...]]:
    """The revision and what is meant. A first word that is no file or folder is taken for a revision."""
    if since is not None:
        return since, tuple(source_of(word) for word in words or (".",))
    if not words or _is_there(words[0]):
        return HEAD, tuple(source_of(word) for word in words or (".",))
    if words[0].endswith((".yaml", ".yml")):
        return HEAD, tuple(source_of(word) for word in words)
    return words[0], tuple(source_of(word) for word in words[1:] or (".",))


def _is_there(word: str) -> bool:
    try:
        return Path(word).exists()
    except (OSError, ValueError):
        raise one_problem(word[:60], "No file and no revision can have this name.") from None


def _say(found: Comparison, sources: tuple[Source, ...], folder: Path | None, quiet: bool) -> None:
    if found.problems:
        say_problems(ProblemsError(*found.problems), sources[0].root)
    if quiet:
        return
    click.echo(message(found), nl=False)
    if folder is not None:
        click.echo(f"{shown_path(folder / PAGE)} shows it.", err=True)
