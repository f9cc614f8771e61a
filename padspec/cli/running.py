"""A build as commands run it: with workers of the wished kind, and progress where somebody watches."""

import sys
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial
from pathlib import Path

import click

from padspec.base.errors import ProblemsError
from padspec.cli.say import shown_path, teller
from padspec.collection.build import Failed, Run, build_all
from padspec.collection.site import Built
from padspec.collection.targets import Target
from padspec.collection.work import BuildWish, Made, Unit, work
from padspec.collection.workers import Here, Processes, Workers, usual_jobs


@dataclass(frozen=True, slots=True)
class Speech:
    """How a command is to speak."""

    as_json: bool = False
    quiet: bool = False
    verbose: bool = False

    @property
    def watched(self) -> bool:
        """Whether somebody looks on who would like to see how far it is."""
        return sys.stderr.isatty() and not (self.as_json or self.quiet or self.verbose)


@dataclass(frozen=True, slots=True)
class AllBuilt:
    """The outcomes of a build, each in the order of its targets."""

    built: tuple[Built, ...]
    failed: tuple[Failed, ...]

    @property
    def status(self) -> int:
        """The exit status: 2 where a file could not be used, 1 where a check says not to print, else 0."""
        if self.failed:
            return 2
        return int(any(built.summary["state"] == "failed" for built in self.built))


def output_folder(out: str | None) -> Callable[[Path], Path]:
    """Where the results of a project go: the folder that was named, else out/ in the project."""
    return lambda root: Path(out) if out else root / "out"


def run_of(out: str | None, wish: BuildWish, jobs: int | None, scheduler: str | None, speech: Speech) -> Run:
    """How to build, as the options say; raises ProblemsError where there is no such cluster."""
    workers, number = _workers(jobs, scheduler, speech)
    doing = partial(_telling, work) if speech.verbose and isinstance(workers, Here) else work
    return Run(output_folder(out), wish, workers, doing, number, _say_waiting)


def make_all(targets: Sequence[Target], run: Run, speech: Speech) -> AllBuilt:
    """Build every pad; raises ProblemsError where the surroundings name a date that is none."""
    outcomes = {}
    with click.progressbar(
        length=len(targets),
        label="Building",
        file=sys.stderr,
        hidden=not speech.watched or len(targets) < 2,
        show_pos=True,
        show_eta=True,
    ) as bar:
        for outcome in build_all(targets, run):
            outcomes[outcome.target.key] = outcome
            bar.update(1)
    in_order = [outcomes[target.key] for target in targets if target.key in outcomes]
    return AllBuilt(
        tuple(outcome for outcome in in_order if isinstance(outcome, Built)),
        tuple(outcome for outcome in in_order if isinstance(outcome, Failed)),
    )


def _workers(jobs: int | None, scheduler: str | None, speech: Speech) -> tuple[Workers, int]:
    if scheduler:
        from padspec.collection.cluster.cluster import Cluster

        cluster = Cluster(scheduler)
        return cluster, cluster.jobs
    number = jobs or usual_jobs()
    # The steps are told only by this process: others have no screen.
    return (Here(), 1) if number == 1 or speech.verbose else (Processes(number), number)


def _telling(work: Callable[[Unit, Callable[[str], None]], tuple[Made, ...]], unit: Unit) -> tuple[Made, ...]:
    return work(unit, teller(verbose=True, path=unit.path))


def _say_waiting(folder: Path) -> None:
    click.echo(f"Another build is writing {shown_path(folder)}; this one waits for it.", err=True)


def problems_of(failed: Sequence[Failed]) -> list[ProblemsError]:
    """What is wrong, each error once, however many variants it stops."""
    found: dict[str, ProblemsError] = {}
    for failure in failed:
        found.setdefault(str(failure.error), failure.error)
    return list(found.values())
