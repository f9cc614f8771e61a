"""padspec palette: what a picture is made of, and the colours a design would take from it."""

from pathlib import Path

import click

from padspec.art.errors import ArtError
from padspec.base.colour import Colour
from padspec.base.errors import ProblemsError
from padspec.base.mixing import lch
from padspec.cli.options import CONTEXT, as_json
from padspec.cli.picture import picture_bytes
from padspec.cli.say import one_problem, say_json, table, unusable
from padspec.resolve import pictures
from padspec.resolve.roles import COLOURWAYS, ready_set, recipe_named

EPILOG = """\b
Examples:
  padspec palette art/moth.png
  padspec palette art/moth.png --colourway deeper
  padspec palette art/moth.png --json
"""


@click.command("palette", epilog=EPILOG, context_settings=CONTEXT)
@click.argument("art", type=click.Path())
@click.option(
    "--colourway", type=click.Choice(COLOURWAYS), default="natural", help="Which ready set of colours to show."
)
@as_json
def command(art: str, colourway: str, as_json: bool) -> int:
    """Show the colours of a picture by the area they cover.

    RANK is what {from: art, rank: N} takes. Below them stand the colours that a design without a palette gets.
    """
    try:
        data, name = picture_bytes(art), Path(art).name
        clusters = pictures.colours(data, name, "auto")
        hue = pictures.leading_hue(data, name, "auto")
    except ArtError as error:
        return unusable(one_problem(art, error.message, error.mend), as_json)
    except ProblemsError as error:
        return unusable(error, as_json)
    named = dict(ready_set(hue, recipe_named(colourway)))
    if as_json:
        found = [
            {"rank": n, "colour": c.colour.hex, "share": round(c.share, 4)} for n, c in enumerate(clusters, 1)
        ]
        say_json({"colours": found, "leading_hue": hue, "roles": {name: c.hex for name, c in named.items()}})
        return 0
    rows = [(str(n), *_cells(c.colour), f"{c.share * 100:.1f} %") for n, c in enumerate(clusters, 1)]
    click.echo(table(("rank", "colour", "lightness", "chroma", "hue", "area"), rows))
    click.echo(
        "\n" + table(("role", "colour", "lightness", "chroma", "hue"), [(n, *_cells(c)) for n, c in named.items()])
    )
    return 0


def _cells(colour: Colour) -> tuple[str, ...]:
    lightness, chroma, hue = lch(colour)
    return colour.hex, f"{lightness:.2f}", f"{chroma:.3f}", f"{hue:.0f}°" if chroma > 0.004 else "–"
