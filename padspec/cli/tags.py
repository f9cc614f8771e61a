"""padspec tags: price stickers and hang tags for the pads of a job, on a sheet of labels."""

from pathlib import Path
from typing import Any

import click

from padspec.base.errors import ProblemsError
from padspec.base.numbers import mm_text, percent_text
from padspec.cli.haste import make_haste
from padspec.cli.options import CONTEXT, as_json, paths
from padspec.cli.say import counted, say_json, say_problems, shown_path, table, tint, unusable
from padspec.collection.targets import project_root
from padspec.jobs.job import wanted_of
from padspec.jobs.load import Loaded, load
from padspec.jobs.tags import SYMBOLS, MadeTags, SymbolWish, TagWish, make_tags
from padspec.pipeline import silent
from padspec.report import json_text
from padspec.sheet.cautions import CAUTIONS
from padspec.workspace import FolderWorkspace

EPILOG = """\b
Examples:
  padspec tags                                a tag for each design here
  padspec tags saturday.job.yaml              one for each pad of a job
  padspec tags --pads NG-MOTH=12 --from 5     twelve, from the fifth label of a part-used sheet
  padspec tags --sheet stickers --outline     with the labels' outlines, to be tried on plain paper
"""
FOLDER, PDF, PROOF, DATA, OLD = "tags", "tags.pdf", "tags.png", "tags.json", "tags.old.pdf"
_CAUTION = (
    "Numbers must be licensed from GS1. How prices are marked and what else a tag must say differs from place to "
    "place: follow local rules."
)


@click.command("tags", epilog=EPILOG, context_settings=CONTEXT)
@paths
@click.option(
    "--pads", "words", multiple=True, metavar="[SKU=]NUMBER", help="How many tags, of one design or of each."
)
@click.option("--sheet", metavar="NAME", help="Which of the studio's tag-sheets, or cards. [default: the first]")
@click.option(
    "--symbol", type=click.Choice(SYMBOLS), default="auto", show_default=True, help="What is to be scanned."
)
@click.option(
    "--from",
    "start",
    type=click.IntRange(1, 10_000),
    default=1,
    show_default=True,
    metavar="N",
    help="The first free label of a part-used sheet, row by row.",
)
@click.option("--outline", is_flag=True, help="Draw the labels' outlines, for a test on plain paper.")
@click.option(
    "--out", "out", type=click.Path(file_okay=False), help="Where to write. [default: out/ in the project]"
)
@as_json
def command(
    paths: tuple[str, ...],
    words: tuple[str, ...],
    sheet: str | None,
    symbol: SymbolWish,
    start: int,
    outline: bool,
    out: str | None,
    as_json: bool,
) -> int:
    """Make price stickers or hang tags.

    PATHS are a job file, or designs, collections or folders: one tag for each pad wanted, one of each design where
    no number is named. The symbol is the design's barcode, else its link as a QR code, else none.
    Exit status: 0, or 2 where a file could not be used; tags of an earlier run are then set aside.
    """
    make_haste()
    loaded = None
    try:
        loaded = load(paths, words, True, lambda _: silent)
        wanted = wanted_of(loaded.job, tuple(pad.design for pad in loaded.pads))
        made = make_tags(loaded.pads, wanted, TagWish(sheet, symbol, start, outline))
        folder = Path(out) if out else loaded.root / "out"
        data = _write(made, loaded, folder, wanted[0].design.date)
    except ProblemsError as error:
        aside = _withdraw(paths, out, sheet)
        if as_json:
            return unusable(error, as_json)
        say_problems(error, loaded.root if loaded else None)
        for path in aside:
            click.echo(f"Tags of an earlier run were set aside: {shown_path(path)}", err=True)
        return 2
    if as_json:
        say_json(data)
        return 0
    _say(made, loaded, folder)
    return 0


def _write(made: MadeTags, loaded: Loaded, folder: Path, date: str) -> dict[str, Any]:
    """The pages, the proof of the first and the data, each file whole, the data last; what stood there goes
    first.
    """
    from padspec.draw.png import proof_png
    from padspec.tags.as_data import tags_data
    from padspec.tags.sheets import tags_pdf

    output = FolderWorkspace(folder)
    at = f"{FOLDER}/{made.sheets.sheet.name}"
    cautions = [_CAUTION, *([CAUTIONS[loaded.pads[0].design.studio.cutter.kind]] if made.sheets.sheet.cut else [])]
    data = {**tags_data(made.sheets, made.contents, made.notes), "cautions": cautions}
    pdf = tags_pdf(made.sheets, date)
    proof = proof_png(pdf)
    for name in (DATA, PROOF):
        output.remove(f"{at}/{name}")
    output.write(f"{at}/{PDF}", pdf)
    output.write(f"{at}/{PROOF}", proof)
    output.write(f"{at}/{DATA}", json_text(data).encode("utf-8"))
    return data


def _withdraw(paths: tuple[str, ...], out: str | None, sheet: str | None) -> tuple[Path, ...]:
    """Nothing stale looks fresh: the tags of an earlier run on this sheet, or on any where none is named, are set
    aside; where they are now.
    """
    aside: list[Path] = []
    try:
        folder = Path(out) if out else project_root(Path(paths[0] if paths else ".")) / "out"
        output = FolderWorkspace(folder)
        names = [sheet] if sheet else sorted(path.parent.name for path in (folder / FOLDER).glob(f"*/{PDF}"))
        for name in names:
            at = f"{FOLDER}/{name}"
            if output.is_file(f"{at}/{PDF}"):
                output.set_aside(f"{at}/{PDF}", f"{at}/{OLD}")
                aside.append(folder / at / OLD)
            for file in (PROOF, DATA):
                output.remove(f"{at}/{file}")
    except (OSError, ValueError, RuntimeError, ProblemsError):
        pass  # what cannot be set aside stays, and what is wrong is told already
    return tuple(aside)


def _say(made: MadeTags, loaded: Loaded, folder: Path) -> None:
    sheets = made.sheets
    sheet = sheets.sheet
    written = shown_path(folder / FOLDER / sheet.name / PDF)
    click.echo(
        f"Wrote {written}: {counted(len(sheets.seats), 'tag')} on {counted(sheets.pages, 'page')} of {sheet.name} "
        f"({sheet.size_name}, {sheet.columns} × {sheet.rows})."
    )
    click.echo("\n" + table(("SKU", "tags", "price", "symbol", "size"), _rows(made)) + "\n")
    for note in made.notes:
        click.echo(f"{tint('note', 'cyan', True)}: {note}", err=True)
    left = sheet.count - sheets.seats[-1].place - 1
    if left and not sheet.cut:
        click.echo(
            f"{counted(left, 'label')} left on the last sheet; next time: --from {sheets.seats[-1].place + 2}"
        )
    click.echo(
        "Print at 100 % (no scaling). Try it on plain paper first, with --outline, and hold it against a sheet."
    )
    if sheet.cut:
        click.echo(CAUTIONS[loaded.pads[0].design.studio.cutter.kind])
    click.echo(_CAUTION)


def _rows(made: MadeTags) -> list[tuple[str, ...]]:
    from padspec.tags.as_data import symbol_data

    rows: list[tuple[str, ...]] = []
    for n, (content, tag) in enumerate(zip(made.contents, made.sheets.tags, strict=True)):
        symbol = symbol_data(tag.symbol)
        number = sum(seat.tag == n for seat in made.sheets.seats)
        price = content.price.text if content.price else "–"
        kind = f"{symbol['kind']} {symbol['text']}" if symbol else "–"
        rows.append((content.sku, str(number), price, kind, _sized(symbol)))
    return rows


def _sized(symbol: dict[str, Any] | None) -> str:
    if symbol is None:
        return ""
    if "magnification" not in symbol:
        return f"module {symbol['x_dimension']:g} mm"
    share = percent_text(symbol["magnification"])
    return f"{share}, module {symbol['x_dimension']:g} mm, bars {mm_text(symbol['bar_height'])}"
