"""padspec strip: a colour test strip of one design, with the line of YAML under every patch."""

from pathlib import Path
from typing import Any

import click

from padspec.base.errors import ProblemsError
from padspec.cli.options import CONTEXT, as_json, only_these
from padspec.cli.say import one_problem, say_json, say_problems, shown_path, unusable
from padspec.collection.only import only
from padspec.collection.targets import Target, targets
from padspec.reading.gather import gather
from padspec.resolve.design import Design
from padspec.resolve.resolve import resolve
from padspec.resolve.vary import varied
from padspec.test_prints.ladders import Ladder, Rung, ladders
from padspec.test_prints.spec_lines import reaches
from padspec.test_prints.strip import strip_pdf
from padspec.workspace import FolderWorkspace

EPILOG = """\b
Examples:
  padspec strip moth.pad.yaml                     out/NG-MOTH/strip.pdf
  padspec strip moth.pad.yaml --out ~/to-print    somewhere else
  padspec strip moth.pad.yaml --json              the lines of every patch, for another program
"""


@click.command("strip", epilog=EPILOG, context_settings=CONTEXT)
@click.argument("path", type=click.Path())
@click.option(
    "--out", "out", type=click.Path(file_okay=False), help="Where to write. [default: out/ in the project]"
)
@only_these
@as_json
def command(path: str, out: str | None, words: tuple[str, ...], as_json: bool) -> int:
    """Make a colour test strip of one design.

    Patches of the face at real size, in steps of the ground's lightness and chroma, of the panel, and of the
    rules' lightness and weight. Under each stands the line of the design that gives it. Exit status: 0, or 2 where
    a file could not be used.
    """
    root = None
    try:
        target = _one(path, words)
        root = target.root
        source = FolderWorkspace(root)
        documents = varied(gather(target.path, source, target.variation))
        design = resolve(documents, source)
        found = ladders(design, reaches(documents, design, source))
        folder = Path(out) if out else root / "out"
        name = f"{design.sku}/strip.pdf"
        FolderWorkspace(folder).write(name, strip_pdf(design, found, design.date))
    except ProblemsError as error:
        if as_json:
            return unusable(error, as_json)
        say_problems(error, root)
        return 2
    written = shown_path(folder / name)
    if as_json:
        say_json(_data(design, found, written))
        return 0
    patches = sum(len(ladder.rungs) for ladder in found)
    click.echo(f"Wrote {written}: {patches} patches in {len(found)} rows, on {design.sheet.size_name}.")
    file = shown_path(root / target.path)
    click.echo(
        "Next: print it at 100 % on the paper of the pads, choose by daylight, and write the line under the"
    )
    click.echo(f"patch into {file}. Then: padspec check {file}")
    return 0


def _one(path: str, words: tuple[str, ...]) -> Target:
    found = only(targets((path,)), words)
    if len(found) != 1:
        mend = f"Name one: {found[0].path}, or a variant by --only SKU."
        raise one_problem(path, f"This holds {len(found)} designs and variants.", mend)
    return found[0]


def _data(design: Design, found: tuple[Ladder, ...], written: str) -> dict[str, Any]:
    return {
        "design": design.name,
        "sku": design.sku,
        "file": design.file,
        "sheet": design.sheet.size_name,
        "rows": [{"row": ladder.name, "patches": [_patch(rung) for rung in ladder.rungs]} for ladder in found],
        "written": written,
    }


def _patch(rung: Rung) -> dict[str, str]:
    line = rung.line
    return {"step": rung.step, "key": ".".join(line.path), "value": line.value, "line": line.text}
