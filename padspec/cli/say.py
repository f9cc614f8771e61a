"""How padspec speaks: problems and findings with the line they are about, and small tables."""

import os
from collections.abc import Callable, Container, Sequence
from pathlib import Path
from typing import Any

import click

from padspec.base.errors import Problem, ProblemsError
from padspec.base.place import Place
from padspec.report import json_text, problem_data

_TINTS = {"error": "red", "warning": "yellow", "note": "cyan"}


def tint(text: str, colour: str, bold: bool = False) -> str:
    """Coloured text; click takes the colour out again where it goes to a file or a pipe."""
    return text if "NO_COLOR" in os.environ else click.style(text, fg=colour, bold=bold)


def say_problems(error: ProblemsError, root: Path | None) -> None:
    """Every problem on stderr: place, line with caret, what is wrong, how to mend it."""
    for problem in error.problems:
        click.echo(f"{tint(_where(problem.place, root), 'red', True)}: {problem.message}", err=True)
        _say_excerpt(problem.place, root)
        if problem.mend:
            click.echo(f"  {problem.mend}", err=True)


def say_finding(finding: dict[str, Any], root: Path) -> None:
    """One finding (as `report.finding_data` gives it) on stderr."""
    place = Place(finding["file"], finding["line"], finding["column"], finding["length"])
    severity = f"allowed {finding['severity']}" if finding["allowed"] else finding["severity"]
    head = tint(severity, _TINTS[finding["severity"]], True)
    click.echo(f"{_where(place, root)}: {head} {finding['check']}: {finding['message']}", err=True)
    _say_excerpt(place, root)
    click.echo(f"  measured {finding['measured']}, limit {finding['limit']}", err=True)
    if finding["allowed"]:
        click.echo(f"  allowed: {finding['allowed']}", err=True)
    elif finding["remedy"]:
        click.echo(f"  {finding['remedy']}", err=True)


def say_json(data: Any) -> None:
    """One JSON document on stdout."""
    # Half a character, as a file's name may hold, is then written as JSON's own escape.
    click.echo(json_text(data).encode("utf-8", "backslashreplace").decode("utf-8"), nl=False)


def problems_json(error: ProblemsError) -> dict[str, Any]:
    """What `--json` prints where the input could not be used."""
    return {"problems": [problem_data(problem) for problem in error.problems]}


def table(head: tuple[str, ...], rows: Sequence[tuple[str, ...]], right: Container[int] = ()) -> str:
    """Columns set to their widest cell, nothing but space between them; those counted in `right` end in line, as
    amounts do.
    """
    widths = [max(len(row[n]) for row in [head, *rows]) for n in range(len(head))]
    lines = [
        "  ".join(
            cell.rjust(width) if at in right else cell.ljust(width)
            for at, (cell, width) in enumerate(zip(row, widths, strict=True))
        )
        for row in [head, *rows]
    ]
    return "\n".join(line.rstrip() for line in lines)


def counted(number: int, word: str) -> str:
    """A count with its noun.

    >>> counted(1, "note"), counted(2, "error")
    ('1 note', '2 errors')
    """
    return f"{number} {word}" if number == 1 else f"{number} {word}s"


def tally(findings: list[dict[str, Any]]) -> str:
    """How many findings of each severity, allowed ones apart."""
    parts = []
    for severity in ("error", "warning", "note"):
        number = sum(1 for f in findings if f["severity"] == severity and not f["allowed"])
        if number:
            parts.append(counted(number, severity))
    allowed = sum(1 for f in findings if f["allowed"])
    return ", ".join([*parts, *([f"{allowed} allowed"] if allowed else [])]) or "none"


def shown_path(path: Path) -> str:
    """A path as short as it can be said from here."""
    try:
        return str(path.resolve().relative_to(Path.cwd()))
    except (OSError, RuntimeError, ValueError):
        return str(path)


def _where(place: Place, root: Path | None) -> str:
    if root is None or not _is_there(root / place.file):
        return str(place)
    return str(Place(shown_path(root / place.file), place.line, place.column))


def _is_there(path: Path) -> bool:
    try:
        return path.exists()
    except (OSError, ValueError):  # no file can have this name
        return False


def _say_excerpt(place: Place, root: Path | None) -> None:
    from padspec.reading.excerpt import excerpt

    path = (root or Path.cwd()) / place.file
    if place.line and _is_there(path) and path.is_file():
        text = path.read_bytes().decode("utf-8-sig", "replace")
        click.echo(excerpt(text, place), err=True)


def one_problem(file: str, message: str, mend: str = "") -> ProblemsError:
    """A problem about a file as a whole."""
    return ProblemsError(Problem(Place(file, 0, 0), message, mend))


def unusable(error: ProblemsError, as_json: bool) -> int:
    """Say what could not be used, in the form asked for; the exit status to leave with."""
    if as_json:
        say_json(problems_json(error))
    else:
        say_problems(error, None)
    return 2


def teller(verbose: bool, path: str) -> Callable[[str], None]:
    """A listener that names each step of the pipeline on stderr, or says nothing."""

    def tell(step: str) -> None:
        if verbose:
            click.echo(f"{path}: {step}", err=True)

    return tell
