"""padspec cost: what so many pads cost, line by line, and what to ask for one."""

from collections.abc import Mapping, Sequence
from pathlib import Path

import click

from padspec.base.errors import ProblemsError
from padspec.cli.cost_text import cost_lines
from padspec.cli.haste import make_haste
from padspec.cli.options import CONTEXT, as_json, paths
from padspec.cli.plan import failing, planned, say_failing
from padspec.cli.say import one_problem, say_json, say_problems, shown_path, teller, unusable
from padspec.costing.as_data import cost_data
from padspec.costing.chart import chart_svg
from padspec.costing.costed import Costed, costed
from padspec.costing.what_if import MOST_PADS, MOST_SIZES, USUAL_SIZES, Size, what_if
from padspec.jobs.inks import face_ink
from padspec.jobs.job import wanted_of
from padspec.jobs.load import load
from padspec.jobs.pages import folder_of
from padspec.workspace import FolderWorkspace

EPILOG = """\b
Examples:
  padspec cost saturday.job.yaml                     a job from its file
  padspec cost --pads 24 moth.pad.yaml               twenty-four of one
  padspec cost --pads 24 moth.pad.yaml --what-if     and what other batches would come to, with a plot
  padspec cost moth.pad.yaml --what-if 6,12,48       these sizes
"""


@click.command("cost", epilog=EPILOG, context_settings=CONTEXT)
@paths
@click.option(
    "--pads", "words", multiple=True, metavar="[SKU=]NUMBER", help="How many pads, of one design or of each."
)
@click.option("--no-gang", is_flag=True, help="Keep every sheet to one design.")
@click.option(
    "--what-if",
    "sizes",
    is_flag=False,
    flag_value=",".join(map(str, USUAL_SIZES)),
    metavar="[SIZES]",
    help=f"Each design alone in batches of these sizes too. [default: {','.join(map(str, USUAL_SIZES))}]",
)
@click.option("--out", type=click.Path(file_okay=False), help="Where plots go. [default: out/ in the project]")
@as_json
def command(
    paths: tuple[str, ...],
    words: tuple[str, ...],
    no_gang: bool,
    sizes: str | None,
    out: str | None,
    as_json: bool,
) -> int:
    """Say what so many pads cost, line by line, and what to ask for one.

    PATHS are a job file, or designs, collections or folders with --pads. Prices, wage, fees and taxes are what
    studio.yaml says; what it does not say is named and left out of the sum.
    Exit status: 0, 1 where a design of the job has errors, 2 where a file could not be used.
    """
    make_haste()
    loaded = None
    try:
        wished = _sizes(sizes)
        loaded = load(paths, words, not no_gang, lambda path: teller(False, path))
        wanted = wanted_of(loaded.job, tuple(pad.design for pad in loaded.pads))
        plan = planned(loaded, wanted)
        inks = [face_ink(one.design) for one in wanted]
        found = costed(plan, inks)
        others = {
            one.design.sku: what_if(one.design, ink, wished)
            for one, ink in zip(wanted, inks, strict=True)
            if wished
        }
        written = _plots(found, others, Path(out) if out else loaded.root / "out")
    except ProblemsError as error:
        if as_json:
            return unusable(error, as_json)
        say_problems(error, loaded.root if loaded else None)
        return 2
    failed = failing(loaded, wanted)
    if as_json:
        say_json({**cost_data(found, others), "designs_with_errors": list(failed), "files": written})
    else:
        say_failing(failed)
        click.echo("\n".join(cost_lines(found, others)))
        for file in written:
            click.echo(f"Plot: {file}")
    return 1 if failed else 0


def _sizes(text: str | None) -> tuple[int, ...]:
    """Numbers of pads from a list in one word; raises ProblemsError."""
    if text is None:
        return ()
    parts = [part.strip() for part in text.split(",") if part.strip()]
    wrong = [
        part for part in parts if not part.isascii() or not part.isdecimal() or not 1 <= int(part) <= MOST_PADS
    ]
    if wrong or not 1 <= len(parts) <= MOST_SIZES:
        what = f"{wrong[0]} is no number of pads." if wrong else f"Here are {len(parts)} sizes."
        mend = f"Write 1 to {MOST_SIZES} numbers from 1 to {MOST_PADS}, such as --what-if 6,12,48."
        raise one_problem(f"--what-if {text}", what, mend)
    return tuple(int(part) for part in parts)


def _plots(found: Costed, others: Mapping[str, Sequence[Size]], folder: Path) -> list[str]:
    """A plot for each design, beside the pages of the job; the paths written."""
    written, output = [], FolderWorkspace(folder)
    for lot in found.lots:
        design = lot.cost.lot.design
        if design.sku not in others:
            continue
        drawn = chart_svg(design.name, others[design.sku], design.studio.currency, design.small_print)
        name = f"{folder_of(found.batch.plan.name)}/{design.sku}-sizes.svg"
        output.write(name, drawn.encode("utf-8"))
        written.append(shown_path(output.root / name))
    return written
