"""padspec calibrate: the pages that show what the printer makes of a sheet, to be measured."""

from pathlib import Path

import click

from padspec.base.errors import ProblemsError
from padspec.base.geometry import Affine
from padspec.base.numbers import mm_text, number_text
from padspec.cli.options import CONTEXT, as_json
from padspec.cli.say import one_problem, say_json, say_problems, shown_path, unusable
from padspec.collection.targets import project_root, why
from padspec.resolve.lettering_fonts import FontShelf
from padspec.resolve.settings import Troubles
from padspec.resolve.studio import Printer
from padspec.sheet.bed import make_bed
from padspec.test_prints.calibration import calibration_pdf
from padspec.test_prints.steps import written_weight
from padspec.test_prints.workshop import Workshop, read_workshop
from padspec.workspace import FolderWorkspace

#: The day that is written where SOURCE_DATE_EPOCH names none.
_FIRST_DAY = "2000-01-01"

EPILOG = """\b
Examples:
  padspec calibrate                out/calibration.pdf, for the sheet of the studio here
  padspec calibrate --corrected    the same drawn through your numbers: it must measure true
  padspec calibrate ~/pads --out ~/to-print
"""


@click.command("calibrate", epilog=EPILOG, context_settings=CONTEXT)
@click.argument("path", type=click.Path(), default=".")
@click.option(
    "--out", "out", type=click.Path(file_okay=False), help="Where to write. [default: out/ in the project]"
)
@click.option("--corrected", is_flag=True, help="Draw the page through the numbers in studio.yaml, to prove them.")
@as_json
def command(path: str, out: str | None, corrected: bool, as_json: bool) -> int:
    """Make the pages to calibrate a printer with.

    PATH is a folder of designs or its studio.yaml. Print the pages at 100 %, read margins, offset, scale, the
    thinnest lines and the turn of a page off them, and write the numbers into studio.yaml: every sheet is then
    corrected.
    Exit status: 0, or 2 where a file could not be used.
    """
    root = None
    try:
        root = _root(path)
        source = FolderWorkspace(root)
        workshop = read_workshop(source)
        small_print = FontShelf(source, Troubles()).plain()
        pdf = calibration_pdf(workshop, small_print, corrected, source.date() or _FIRST_DAY)
        folder = Path(out) if out else root / "out"
        name = "calibration-proof.pdf" if corrected else "calibration.pdf"
        FolderWorkspace(folder).write(name, pdf)
    except ProblemsError as error:
        if as_json:
            return unusable(error, as_json)
        say_problems(error, root)
        return 2
    written = shown_path(folder / name)
    if as_json:
        say_json(_data(workshop, corrected, written))
        return 0
    click.echo(f"Wrote {written}, for {workshop.wish.size_name}.")
    click.echo(_next_proof(workshop) if corrected else _next(workshop))
    return 0


def _root(path: str) -> Path:
    """The project that a path belongs to."""
    try:
        there = Path(path)
        if not there.exists():
            raise one_problem(
                path, "There is no such file or folder.", "Name a folder of designs, or its studio.yaml."
            )
        return project_root(there)
    except (OSError, RuntimeError, ValueError) as error:
        raise one_problem(path, f"This path cannot be used: {why(error)}.") from None


def _data(workshop: Workshop, corrected: bool, written: str) -> dict[str, object]:
    return {
        "sheet": workshop.wish.size_name,
        "corrected": corrected,
        "printer": _printer(workshop.studio.printer),
        "written": written,
    }


def _printer(printer: Printer) -> dict[str, object]:
    """The numbers as they are now, in the form of studio.yaml."""
    m, (x, y), (across, down) = printer.margins, printer.offset, printer.scale
    return {
        "margins": {"left": _mm(m.left), "right": _mm(m.right), "top": _mm(m.top), "bottom": _mm(m.bottom)},
        "offset": {"x": _mm(x), "y": _mm(y)},
        "scale": {"x": _percent(across), "y": _percent(down)},
        "turn": printer.turn,
        "least-line": written_weight(printer.least_line),
        "least-screened-line": written_weight(printer.least_screened_line),
    }


def _mm(length: float) -> str:
    return mm_text(length, 3)


def _percent(share: float) -> str:
    return f"{number_text(share * 100)} %"


def _next(workshop: Workshop) -> str:
    """What to do now, with the lines as they stand, so that only the numbers have to be changed."""
    lines = ["printer:"]
    for key, value in _printer(workshop.studio.printer).items():
        told = f"{{{', '.join(f'{k}: {v}' for k, v in value.items())}}}" if isinstance(value, dict) else value
        lines.append(f"  {key}: {told}")
    block = "\n".join(f"  {line}" for line in lines)
    return (
        "Next: print it at 100 % and measure as the page says. Then write your numbers over these in studio.yaml:"
        f"\n\n{block}\n\nand prove them: padspec calibrate --corrected"
    )


def _next_proof(workshop: Workshop) -> str:
    if make_bed(workshop.wish, workshop.studio).correction == Affine():
        return (
            "Nothing is corrected yet: offset is 0 mm and scale 100 %. "
            "Run padspec calibrate first if you have not measured them."
        )
    return (
        "Next: print it at 100 % and measure the cross: it must be true to half a millimetre. "
        "Read the margins off its scales, and write them into studio.yaml."
    )
