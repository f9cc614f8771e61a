"""padspec show: any stage of a design as JSON."""

import click

from padspec.base.errors import ProblemsError
from padspec.cli.options import CONTEXT
from padspec.cli.say import one_problem, say_json, say_problems
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
def command(path: str, stage: str) -> int:
    """Print any stage of one design as JSON: what was read, resolved, composed, tiled or found.

    Lengths are millimetres, colours hex, outlines SVG path data.
    """
    root = None
    try:
        found = targets((path,))
        if len(found) != 1:
            raise one_problem(path, f"This holds {len(found)} designs.", f"Name one of them: {found[0].path}")
        root = found[0].root
        pad = make(found[0].path, FolderWorkspace(root))
    except ProblemsError as error:
        say_problems(error, root)
        return 2
    say_json(stage_data(pad, stage))
    return 0
