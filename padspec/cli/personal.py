"""A collection's personal run as padspec build makes it, and how it is told."""

import sys
from contextlib import AbstractContextManager
from dataclasses import dataclass
from functools import partial
from typing import Any

import click

from padspec.base.errors import ProblemsError
from padspec.cli.running import Speech
from padspec.cli.say import counted, say_finding, say_problems, shown_path, table, tint
from padspec.collection.build import Run
from padspec.collection.targets import Meant
from padspec.personal.run import PersonalBuilt, build_personal

_TINTS = {"error": "red", "warning": "yellow"}


@dataclass(frozen=True, slots=True)
class AllPersonal:
    """Every personal run that was meant: what was built, and what could not be used, each with its project."""

    built: tuple[PersonalBuilt, ...]
    errors: tuple[ProblemsError, ...]

    @property
    def status(self) -> int:
        """The exit status, as that of a build."""
        return 2 if self.errors else int(any(one.summary["state"] == "failed" for one in self.built))


def make_personal_runs(found: Meant, run: Run, speech: Speech) -> AllPersonal:
    """The personal runs of all collections that were meant; what cannot be used stops one and not the others."""
    built: list[PersonalBuilt] = []
    errors: list[ProblemsError] = []
    for root, collection in found.collections:
        with _bar(speech, collection.personal is not None) as bar:
            try:
                built += build_personal(collection, root, run, partial(_move, bar))
            except ProblemsError as error:
                errors.append(error)
                if not speech.as_json:
                    say_problems(error, root)
    return AllPersonal(tuple(built), tuple(errors))


def say_personal(personal: AllPersonal, run: Run, speech: Speech) -> None:
    """Faults of rows on stderr; then what was made, and how to print it."""
    built = personal.built
    for one in built:
        # A design that is not to be printed holds its run back, whatever the rows say.
        for finding in one.summary["findings"]:
            say_finding(finding, one.root)
    for one in built:
        for row in one.summary["rows"]:
            place = f"{shown_path(one.root / row['file'])}:{row['line']}"
            click.echo(
                f"{place}: {tint(row['severity'], _TINTS[row['severity']], True)} {row['message']}", err=True
            )
            if row["mend"]:
                click.echo(f"  {row['mend']}", err=True)
        more = one.summary["errors"] - sum(row["severity"] == "error" for row in one.summary["rows"])
        if more > 0:
            click.echo(f"  and {counted(more, 'error')} more in {one.summary['table']}", err=True)
    if built and not speech.quiet:
        click.echo(
            table(("personal", "pads", "sheets", "copies of each", "volumes"), [_row(one, run) for one in built])
        )
        for note in dict.fromkeys(note for one in built for note in one.summary["notes"]):
            click.echo(note)
        for caution in dict.fromkeys(one.summary["caution"] for one in built if one.summary["volumes"]):
            click.echo(caution)


def personal_data(one: PersonalBuilt, run: Run) -> dict[str, Any]:
    """One pad of a run for --json."""
    folder = shown_path(run.folder_of(one.root) / one.summary["sku"] / "personal")
    return {**one.summary, "unchanged": one.was_current, "folder": folder}


def _row(one: PersonalBuilt, run: Run) -> tuple[str, ...]:
    summary = one.summary
    folder = shown_path(run.folder_of(one.root) / summary["sku"] / "personal")
    state = "held back: mend the errors first" if not summary["volumes"] else f"{summary['volumes']} in {folder}/"
    unchanged = " (unchanged)" if one.was_current else ""
    return summary["sku"], str(summary["pads"]), str(summary["sheets"]), str(summary["copies"]), state + unchanged


def _bar(speech: Speech, wanted: bool) -> AbstractContextManager[Any]:
    return click.progressbar(
        length=1, label="Setting names", file=sys.stderr, hidden=not (speech.watched and wanted), show_pos=True
    )


def _move(bar: Any, done: int, whole: int) -> None:
    bar.length = whole
    bar.update(done - bar.pos)
