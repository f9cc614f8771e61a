"""A picture that the command line names, read as every file of a maker's is: through the gate, up to its limit."""

from dataclasses import replace
from pathlib import Path

from padspec.base.errors import ProblemsError
from padspec.cli.say import one_problem
from padspec.workspace import FolderWorkspace


def picture_path(art: str) -> Path:
    """Where the picture lies, links followed. Raises ProblemsError where there is none."""
    mend = "Give the path of a PNG, JPEG, WebP, TIFF or SVG."
    try:
        path = Path(art).resolve()
        if path.is_dir():
            raise one_problem(
                art, "This is a folder, not a picture.", "Name a PNG, JPEG, WebP, TIFF or SVG in it."
            )
        if not path.is_file():
            raise one_problem(art, "There is no such picture.", mend)
    except (OSError, RuntimeError, ValueError):
        raise one_problem(art, "There is no such picture.", mend) from None
    return path


def picture_bytes(art: str) -> bytes:
    """What the picture holds. Raises ProblemsError where it cannot be read or is too large."""
    path = picture_path(art)
    try:
        return FolderWorkspace(path.parent).read(path.name)
    except ProblemsError as error:
        told = (replace(problem, place=replace(problem.place, file=art)) for problem in error.problems)
        raise ProblemsError(*told) from None
