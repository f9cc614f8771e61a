"""padspec stamp: artwork of one black for the back of the board or a rubber stamp."""

from pathlib import Path
from typing import Any

import click

from padspec.base.errors import ProblemsError
from padspec.base.numbers import mm_text, percent_text
from padspec.cli.options import CONTEXT, as_json
from padspec.cli.say import one_problem, say_json, say_problems, shown_path, tint, unusable
from padspec.collection.targets import project_root, why
from padspec.reading.document import read
from padspec.reading.gather import STUDIO_FILE, read_file
from padspec.report import json_text
from padspec.resolve.coverage import lacking
from padspec.resolve.settings import Troubles
from padspec.resolve.stamp import StampWish, read_stamp
from padspec.workspace import FolderWorkspace, Workspace

EPILOG = """\b
Examples:
  padspec stamp                  out/stamp/stamp.pdf and .svg, as the studio here wishes
  padspec stamp --mirrored       the other way round, for a stamp that you cut yourself
"""
FOLDER = "stamp"
_CAUTION = (
    "Cutting a stamp: cut away from the hand that holds it, with a fresh blade or gouge, the block held fast on a "
    "bench hook."
)


_NEXT = "Send it as it is, and say that it is at true size. To cut it yourself: padspec stamp --mirrored."


@click.command("stamp", epilog=EPILOG, context_settings=CONTEXT)
@click.argument("path", type=click.Path(), default=".")
@click.option("--mirrored", is_flag=True, help="Mirror it, for those who cut the stamp themselves.")
@click.option(
    "--out", "out", type=click.Path(file_okay=False), help="Where to write. [default: out/ in the project]"
)
@as_json
def command(path: str, mirrored: bool, out: str | None, as_json: bool) -> int:
    """Make artwork of one black, at its true size, for the back of the board or a rubber stamp.

    PATH is a folder of designs or its studio.yaml, whose stamp: says what stands on it; without that it is the
    studio's name. Exit status: 0, or 2 where a file could not be used; an earlier artwork is then set aside.
    """
    root = None
    stem = "stamp-mirrored" if mirrored else "stamp"
    try:
        root = _root(path)
        folder = Path(out) if out else root / "out"
        wish = _wish(FolderWorkspace(root))
        data = _write(wish, mirrored, folder, stem)
    except ProblemsError as error:
        if root is not None:
            _withdraw(Path(out) if out else root / "out", stem)
        if as_json:
            return unusable(error, as_json)
        say_problems(error, root)
        return 2
    if as_json:
        say_json(data)
        return 0
    size = f"{mm_text(data['width'])} × {mm_text(data['height'])}"
    click.echo(f"Wrote {shown_path(folder / FOLDER / stem)}.pdf and .svg: {size}, black alone.")
    for note in data["notes"]:
        click.echo(f"{tint('note', 'cyan', True)}: {note}", err=True)
    click.echo(_CAUTION if mirrored else _NEXT)
    return 0


def _root(path: str) -> Path:
    try:
        there = Path(path)
        if not there.exists():
            mend = "Name a folder of designs, or its studio.yaml."
            raise one_problem(path, "There is no such file or folder.", mend)
        return project_root(there)
    except (OSError, RuntimeError, ValueError) as error:
        raise one_problem(path, f"This path cannot be used: {why(error)}.") from None


def _wish(source: Workspace) -> StampWish:
    there = source.is_file(STUDIO_FILE)
    document = read_file(STUDIO_FILE, "studio", source) if there else read("{}\n", STUDIO_FILE, "studio")
    troubles = Troubles()
    wish = read_stamp(document.root, source, troubles)
    troubles.raise_if_any()
    return wish


def _write(wish: StampWish, is_mirrored: bool, folder: Path, stem: str) -> dict[str, Any]:
    """Every file, each whole, the data last; what stood there goes first."""
    from padspec.draw.png import proof_png
    from padspec.stamp.artwork import artwork
    from padspec.stamp.files import stamp_pdf, stamp_svg
    from padspec.stamp.weigh import thin_parts

    made = artwork(wish, is_mirrored)
    title = f"{wish.studio} · stamp" + (" · mirrored" if is_mirrored else "")
    pdf = stamp_pdf(made.scene, title)
    notes = [
        f"{percent_text(thin.share, 0)} of the ink of its {thin.part} lies in lines of some "
        f"{mm_text(thin.weight)} or less; under 0.25 mm rubber does not hold them. Make it larger, or heavier."
        for thin in thin_parts(made, pdf)
    ]
    lost = lacking(wish.name_font, wish.studio) + lacking(wish.lines_font, "".join(wish.lines))
    notes += [f"No font at hand has {lost}, so boxes stand there. Name a font that has them."] if lost else []
    data = {
        "studio": wish.studio,
        "text": list(wish.lines),
        "width": round(made.scene.size.width, 4),
        "height": round(made.scene.size.height, 4),
        "mirrored": is_mirrored,
        "link": wish.link or None,
        "notes": notes,
    }
    output = FolderWorkspace(folder)
    for ending in ("json", "png", "svg"):
        output.remove(f"{FOLDER}/{stem}.{ending}")
    output.write(f"{FOLDER}/{stem}.pdf", pdf)
    output.write(f"{FOLDER}/{stem}.svg", stamp_svg(made, title))
    output.write(f"{FOLDER}/{stem}.png", proof_png(pdf, 300))
    output.write(f"{FOLDER}/{stem}.json", json_text(data).encode("utf-8"))
    return data


def _withdraw(folder: Path, stem: str) -> None:
    """Nothing stale looks fresh: an earlier artwork is set aside."""
    try:
        output = FolderWorkspace(folder)
        for ending in ("pdf", "svg"):
            output.set_aside(f"{FOLDER}/{stem}.{ending}", f"{FOLDER}/{stem}.old.{ending}")
        for ending in ("png", "json"):
            output.remove(f"{FOLDER}/{stem}.{ending}")
    except (OSError, ProblemsError):
        return  # there is nothing that can be set aside, and what is wrong is told already
