"""padspec gallery: every layout on a choice of grounds, as a pattern book to be looked at."""

from collections.abc import Callable, Sequence
from itertools import groupby
from pathlib import Path
from typing import Any

import click

from padspec.base.errors import ProblemsError
from padspec.base.findings import Finding
from padspec.cli.haste import make_haste
from padspec.cli.options import CONTEXT, as_json
from padspec.cli.say import counted, one_problem, problems_json, say_json, say_problems, shown_path, tint, unusable
from padspec.collection.collection_file import COLLECTION_FILE, DESIGN_ENDING
from padspec.collection.targets import project_root, targets
from padspec.gallery.make import make_gallery
from padspec.gallery.specimen import Gallery, Specimen, by_page, leaders, shown_name, trim_text
from padspec.gallery.wish import HEADINGS, GalleryWish, names_in, trims_in
from padspec.gallery.write import BOOK, PAGE, write_gallery
from padspec.reading.gather import read_file
from padspec.reading.tree import Scalar
from padspec.report import finding_data
from padspec.workspace import FolderWorkspace

EPILOG = """\b
Examples:
  padspec gallery                                 every layout, each on grounds of its own
  padspec gallery --grounds all                   every layout on every ground
  padspec gallery --layouts week,meals --trims own --headings long
  padspec gallery --trims '90 mm x 190 mm'        all at one size
"""
_TINTS = {"error": "red", "warning": "yellow"}


@click.command("gallery", epilog=EPILOG, context_settings=CONTEXT)
@click.argument("path", type=click.Path(), default=".")
@click.option("--grounds", help="Grounds with commas between, or all. [default: some that differ by layout]")
@click.option("--layouts", help="Layouts with commas between. [default: every one]")
@click.option(
    "--trims", default="first", show_default=True, help="first or own (all) that a layout states, or sizes."
)
@click.option(
    "--headings",
    type=click.Choice(["default", *HEADINGS]),
    default="default",
    show_default=True,
    help="What to set.",
)
@click.option(
    "--out", type=click.Path(file_okay=False), help="Where to write. [default: out/gallery in the project]"
)
@click.option("-v", "--verbose", is_flag=True, help="Name each layout as it is begun.")
@as_json
def command(
    path: str,
    grounds: str | None,
    layouts: str | None,
    trims: str,
    headings: str,
    out: str | None,
    verbose: bool,
    as_json: bool,
) -> int:
    """Show every layout on a choice of grounds, as a pattern book (PDF) and as a page for a browser.

    PATH is a folder, a collection or a design: its studio, its layouts/ and the pictures of its designs are used.
    Faces are made in memory and looked over as any design is.
    Exit status: 0, 1 where a face has an error, 2 where a file could not be used.
    """
    make_haste()
    root = None
    try:
        root, designs = _meant(path)
        source = FolderWorkspace(root)
        wish = _wish(grounds, layouts, trims, headings)
        gallery = make_gallery(designs, source, wish, _title(root, source), _teller(verbose))
        folder = Path(out) if out else root / "out" / "gallery"
        written = write_gallery(gallery, FolderWorkspace(folder)) if gallery.specimens else ()
    except ProblemsError as error:
        if as_json:
            return unusable(error, as_json)
        say_problems(error, root)
        return 2
    if as_json:
        say_json(_data(gallery, folder, written))
    else:
        _say(gallery, root, folder)
    return 2 if gallery.problems else 1 if gallery.failed else 0


def _meant(path: str) -> tuple[Path, tuple[str, ...]]:
    """The project folder, and the designs whose pictures are borrowed: there may be none."""
    place = Path(path)
    if place.is_dir() and not (place / COLLECTION_FILE).is_file() and not any(place.glob(f"*{DESIGN_ENDING}")):
        return project_root(place), ()
    found = targets((path,))
    root = found[0].root if found else project_root(place)
    return root, tuple(target.path for target in found if target.root == root)


def _wish(grounds: str | None, layouts: str | None, trims: str, headings: str) -> GalleryWish:
    return GalleryWish(
        _named("--layouts", layouts), _named("--grounds", grounds), trims_in(trims), HEADINGS.get(headings)
    )


def _named(option: str, text: str | None) -> tuple[str, ...] | None:
    if text is None:
        return None
    names = names_in(text)
    if not names:
        raise one_problem(option, "This names nothing.", "Write names with commas between, or leave it out.")
    return names


def _title(root: Path, source: FolderWorkspace) -> str:
    """The collection's name, else the folder's."""
    if source.is_file(COLLECTION_FILE):
        name = read_file(COLLECTION_FILE, "collection", source).root.get("collection")
        if isinstance(name, Scalar):
            return name.text
    return shown_name(root.name) or "Gallery"


def _teller(verbose: bool) -> Callable[[str], None]:
    """A listener that names each layout on stderr as it is begun, or says nothing."""

    def tell(name: str) -> None:
        if verbose:
            click.echo(f"{name} …", err=True)

    return tell


def _say(gallery: Gallery, root: Path, folder: Path) -> None:
    for line in _found_lines(gallery.specimens):
        click.echo(line, err=True)
    if gallery.problems:
        say_problems(ProblemsError(*gallery.problems), root)
    if not gallery.specimens:
        click.echo("Nothing could be shown.", err=True)
        return
    faces = counted(len(gallery.specimens), "face")
    layouts = counted(len(leaders(gallery.specimens)), "layout")
    pages = counted(len(by_page(gallery.specimens)) + 1, "page")
    click.echo(f"Wrote {shown_path(folder / BOOK)}: {faces} of {layouts} on {pages}.")
    click.echo(f"Wrote {shown_path(folder / PAGE)}: the same, for a browser.")


def _found_lines(specimens: Sequence[Specimen]) -> list[str]:
    """What was found, once for all grounds of a layout that share it."""
    lines: dict[tuple[str, ...], list[str]] = {}
    for one in specimens:
        for found in one.findings:
            key = (f"{one.layout}, {trim_text(one.trim)}", found.severity.word, found.check, _measure(found))
            lines.setdefault(key, []).append(one.ground)
    return [
        f"{where}, on {', '.join(dict.fromkeys(on))}: {tint(word, _TINTS[word], True)} {check}: {told}"
        for (where, word, check, told), on in lines.items()
    ]


def _measure(found: Finding) -> str:
    return f"{found.message} Measured {found.measured}, limit {found.limit}."


def _data(gallery: Gallery, folder: Path, written: tuple[str, ...]) -> dict[str, Any]:
    layouts = groupby(gallery.specimens, lambda one: one.layout)
    return {
        "title": gallery.title,
        "studio": gallery.studio,
        "layouts": [{"layout": name, "faces": [_face(one) for one in some]} for name, some in layouts],
        **problems_json(ProblemsError(*gallery.problems)),
        "written": [shown_path(folder / path) for path in written],
    }


def _face(one: Specimen) -> dict[str, Any]:
    return {
        "ground": one.ground,
        "width": one.trim.width,
        "height": one.trim.height,
        "findings": [finding_data(found) for found in one.findings],
    }
