"""padspec show: any stage of a design as JSON."""

import click

from padspec.base.errors import ProblemsError
from padspec.cli.options import CONTEXT, only_these
from padspec.cli.say import one_problem, say_json, say_problems
from padspec.collection.only import only
from padspec.collection.targets import targets
from padspec.pipeline import make
from padspec.stages import STAGES, stage_data
from padspec.workspace import FolderWorkspace

EPILOG = """\b
Examples:
  padspec show moth.pad.yaml                    the resolved design: every default filled in
  padspec show moth.pad.yaml --stage sheet      where each leaf lies on the paper, in mm
  padspec show moth.pad.yaml --stage document   the YAML as padspec read it
"""


@click.command("show", epilog=EPILOG, context_settings=CONTEXT)
@click.argument("path", type=click.Path())
@click.option("--stage", type=click.Choice(STAGES), default="design", show_default=True, help="Which stage.")
@only_these
def command(path: str, stage: str, words: tuple[str, ...]) -> int:
    """Print any stage of one design as JSON: what was read, resolved, composed, tiled or found.

    Lengths are millimetres, colours hex, outlines SVG path data.
    """
    root = None
    try:
        found = only(targets((path,)), words)
        if len(found) != 1:
            mend = f"Name one: {found[0].path}, or a variant by --only SKU."
            raise one_problem(path, f"This holds {len(found)} designs and variants.", mend)
        root = found[0].root
        pad = make(found[0].path, FolderWorkspace(root), variation=found[0].variation)
    except ProblemsError as error:
        say_problems(error, root)
        return 2
    say_json(stage_data(pad, stage))
    return 0
