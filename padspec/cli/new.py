"""padspec new: a commented design from a picture, already passing every check."""

import re
import unicodedata
from dataclasses import replace
from pathlib import Path

import click

from padspec.base.errors import ProblemsError
from padspec.cli.options import CONTEXT, as_json
from padspec.cli.picture import picture_bytes, picture_path
from padspec.cli.say import one_problem, say_finding, say_json, shown_path, tally, unusable
from padspec.collection.collection_file import DESIGN_ENDING
from padspec.collection.targets import project_root, why
from padspec.first_design import FirstDesign, FirstWish, first_design
from padspec.report import pad_data
from padspec.workspace import FolderWorkspace

#: File systems end names at 255 bytes.
_LONGEST_NAME = 100

EPILOG = """\b
Examples:
  padspec new moth.png
  padspec new moth.png --heading "Before dark" --name "Night moth list"
  padspec new moth.png --layout ruled --trim "100 mm x 150 mm"
"""


@click.command("new", epilog=EPILOG, context_settings=CONTEXT)
@click.argument("art", type=click.Path())
@click.option("--name", default="", help="What the pad is called. [default: from the picture's file name]")
@click.option("--heading", default="", help="The words at its head. [default: the layout's]")
@click.option(
    "--layout", default="", help="A layout, built in or your own. [default: the studio's, else checklist]"
)
@click.option(
    "--colourway", default="", help="Which colours to make from the picture. [default: natural, written out]"
)
@click.option(
    "--trim", default="", help='Size of a leaf, such as "90 mm x 190 mm". [default: what fills the sheet]'
)
@click.option(
    "--to", "to", type=click.Path(dir_okay=False), help="The design to write. [default: NAME.pad.yaml here]"
)
@click.option("--force", is_flag=True, help="Replace a design that is there already.")
@as_json
def command(
    art: str,
    name: str,
    heading: str,
    layout: str,
    colourway: str,
    trim: str,
    to: str | None,
    force: bool,
    as_json: bool,
) -> int:
    """Begin a design from a picture (PNG, JPEG, WebP, TIFF or SVG).

    Colours come from the picture; sizes, heading and sheet are chosen so that every check passes. The design is
    plain YAML with a comment on each line: change what you like and run padspec build.
    """
    try:
        design_path, first, root = _write(
            art, to, FirstWish("", name, heading, layout, *_trim(trim), colourway), force
        )
    except ProblemsError as error:
        return unusable(_as_asked(error, art), as_json)
    outcome = pad_data(first.pad.design, first.pad.sheet, first.pad.findings)
    if as_json:
        say_json({**outcome, "written": shown_path(design_path)})
        return int(first.pad.failed)
    for finding in outcome["findings"]:
        say_finding(finding, root)
    sheet = first.pad.sheet
    fit = f"{sheet.n_up}-up on {sheet.size_name}, {sheet.copies} sheets for a pad" if sheet else "no sheet fits"
    click.echo(f"Wrote {shown_path(design_path)}: {fit}, findings {tally(outcome['findings'])}.")
    click.echo(f"Next: padspec build {shown_path(design_path)}")
    return int(first.pad.failed)


def _write(art: str, to: str | None, wish: FirstWish, force: bool) -> tuple[Path, FirstDesign, Path]:
    picture = picture_path(art)
    if to and not to.endswith(DESIGN_ENDING):
        mend = f"Write --to {to.removesuffix('.yaml')}{DESIGN_ENDING}, so that padspec build finds it."
        raise one_problem(to, f"A design's name ends in {DESIGN_ENDING}.", mend)
    design_path = Path(to) if to else Path.cwd() / f"{_slug(wish.name or Path(art).stem)}.pad.yaml"
    root, inside = _home(design_path, force)
    workspace = FolderWorkspace(root)
    taken_in = _taken_in(art, picture, (root / inside).parent, root)
    wish = replace(wish, art=taken_in)
    first = first_design(inside, wish, workspace)
    workspace.write(inside, first.text.encode("utf-8"))
    return design_path, first, root


def _home(design_path: Path, force: bool) -> tuple[Path, str]:
    """The project that a new design belongs to, and its path there."""
    try:
        if design_path.exists() and not force:
            mend = "Add --force, or --to NAME.pad.yaml."
            raise one_problem(shown_path(design_path), "There is a design here already.", mend)
        folder = design_path.parent.resolve()
        there = next(above for above in (folder, *folder.parents) if above.is_dir())
        root = project_root(there)
        return root, (folder / design_path.name).relative_to(root).as_posix()
    except (OSError, RuntimeError, ValueError) as error:
        message = f"A design cannot be written here: {why(error)}."
        raise one_problem(str(design_path), message, "Choose another place: --to NAME.pad.yaml.") from None


def _taken_in(art: str, full: Path, folder: Path, root: Path) -> str:
    """The picture's path as the design will name it; one from outside the project is copied into art/."""
    if full.is_relative_to(folder):
        return full.relative_to(folder).as_posix()
    workspace = FolderWorkspace(root)
    inside = (folder.relative_to(root) / "art" / full.name).as_posix()
    data = picture_bytes(art)
    if workspace.is_file(inside):
        if workspace.read(inside) == data:
            return f"art/{full.name}"
        raise one_problem(
            shown_path(root / inside), "Another picture of this name is here already.", f"Rename {art} first."
        )
    workspace.write(inside, data)
    click.echo(f"Copied the picture to {shown_path(root / inside)}.", err=True)
    return f"art/{full.name}"


def _trim(text: str) -> tuple[str, str]:
    """Width and height from `90 mm x 190 mm`; two empty texts where nothing was said."""
    if not text:
        return "", ""
    parts = re.split(r"\s*[x×*]\s*", text.strip())
    if len(parts) != 2:
        raise one_problem("--trim", f"{text} is not a size.", 'Write width and height, such as "90 mm x 190 mm".')
    return parts[0], parts[1]


def _as_asked(error: ProblemsError, art: str) -> ProblemsError:
    """Faults of a design that is not written yet, told of the words on the command line that they come from."""
    asked = {
        "art.file": art,
        "layout": "--layout",
        "colourway": "--colourway",
        "pad": "--name",
        "heading.text": "--heading",
        "trim.width": "--trim",
        "trim.height": "--trim",
    }
    return ProblemsError(
        *(
            replace(problem, place=replace(problem.place, file=asked.get(problem.place.file, problem.place.file)))
            for problem in error.problems
        )
    )


def _slug(text: str) -> str:
    """A file name from words: letters of any script stay, what lies between them becomes a hyphen."""
    plain = unicodedata.normalize("NFC", text).strip().lower()
    return re.sub(r"[^\w-]+", "-", plain).strip("-")[:_LONGEST_NAME] or "pad"
