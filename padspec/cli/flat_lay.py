"""padspec flat-lay: pictures of finished pads for a shop's page, made from their real faces."""

from dataclasses import dataclass, replace
from math import isfinite
from pathlib import Path
from typing import Any

import click

from padspec.base.colour import WHITE, Colour
from padspec.base.errors import Problem, ProblemsError
from padspec.base.nearest import did_you_mean
from padspec.cli.backdrop import backdrop_colour
from padspec.cli.haste import make_haste
from padspec.cli.options import CONTEXT, as_json, only_these, paths
from padspec.cli.say import one_problem, problems_json, say_json, say_problems, shown_path, unusable
from padspec.collection.only import only
from padspec.collection.targets import Target, targets
from padspec.flat_lay.wish import (
    ARRANGEMENTS,
    GREY,
    KRAFT,
    LEAST_IN_FAN,
    LEAST_SIZE,
    MOST_IN_FAN,
    MOST_SIZE,
    MOST_TURN,
    SHAPES,
    USUAL_SIZE,
    Arrange,
    Shape,
    Wish,
    usual_turn,
)
from padspec.resolve.design import Design
from padspec.resolve.roles import COLOURWAYS
from padspec.workspace import FolderWorkspace

EPILOG = """\b
Examples:
  padspec flat-lay moth.pad.yaml                   out/NG-MOTH/flat-lay.png
  padspec flat-lay                                 one picture of every design here
  padspec flat-lay --arrange stack --backdrop linen moth.pad.yaml
  padspec flat-lay --arrange fan moth.pad.yaml owl.pad.yaml
  padspec flat-lay --colourways natural,deeper,muted moth.pad.yaml
"""
_BOARDS = {"kraft": KRAFT, "grey": GREY}
_FAN_FILE, _COLOURWAYS_FILE, _FILE = "flat-lay-fan.png", "flat-lay-colourways.png", "flat-lay.png"


@dataclass(frozen=True, slots=True)
class _Pad:
    """A pad to be pictured: its design, as it is or in one of the ready colourways."""

    target: Target
    colourway: str = ""


@dataclass(frozen=True, slots=True)
class _Run:
    """How this run was asked for; `wish` still has no backdrop of its own."""

    wish: Wish
    backdrop: str | None
    board: Colour
    out: str | None

    def folder(self, pad: _Pad) -> Path:
        """Where the picture of a design goes."""
        return Path(self.out) if self.out else pad.target.root / "out"


@dataclass(frozen=True, slots=True)
class _Made:
    """One picture that was written."""

    designs: tuple[Design, ...]
    wish: Wish
    written: str


def _finite(_context: click.Context, _option: click.Parameter, value: float | None) -> float | None:
    """A turn that is a number at all."""
    if value is not None and not isfinite(value):
        raise click.BadParameter(f"{value} is not a number of degrees.")
    return value


@click.command("flat-lay", epilog=EPILOG, context_settings=CONTEXT)
@paths
@only_these
@click.option(
    "--arrange", type=click.Choice(ARRANGEMENTS), default="single", show_default=True, help="How they lie."
)
@click.option(
    "--colourways",
    metavar="NAMES",
    help=f"Fan one design in some of its ready colourways: all, or names with commas ({', '.join(COLOURWAYS)}).",
)
@click.option(
    "--shape", type=click.Choice(SHAPES), default="square", show_default=True, help="The picture's shape."
)
@click.option(
    "--size",
    type=click.IntRange(LEAST_SIZE, MOST_SIZE),
    default=USUAL_SIZE,
    show_default=True,
    metavar="PIXELS",
    help="Its longer side.",
)
@click.option(
    "--backdrop", metavar="COLOUR", help="#rrggbb, a CSS name or one of the palette. [default: one that fits]"
)
@click.option(
    "--board", type=click.Choice(tuple(_BOARDS)), default="kraft", show_default=True, help="The pads' back."
)
@click.option(
    "--turn",
    type=click.FloatRange(-MOST_TURN, MOST_TURN),
    callback=_finite,
    metavar="DEGREES",
    help="Turn the pads clockwise. [default: a little to the left]",
)
@click.option(
    "--out", "out", type=click.Path(file_okay=False), help="Where to write. [default: out/ in the project]"
)
@as_json
def command(
    paths: tuple[str, ...],
    words: tuple[str, ...],
    arrange: Arrange,
    colourways: str | None,
    shape: Shape,
    size: int,
    backdrop: str | None,
    board: str,
    turn: float | None,
    out: str | None,
    as_json: bool,
) -> int:
    """Picture finished pads for a shop's page.

    The pads lie flat, seen from above, with the real face and the thickness of their leaves. Each design gets a
    picture of its own; a fan shows two to nine together. Nothing is checked here: that is padspec check.
    Exit status: 0, or 2 where a file could not be used.
    """
    make_haste()
    arrange = "fan" if colourways else arrange
    wish = Wish(WHITE, arrange, size, shape, usual_turn(arrange) if turn is None else turn)
    run = _Run(wish, backdrop, _BOARDS[board], out)
    try:
        groups = _groups(paths, words, arrange, colourways)
    except ProblemsError as error:
        return unusable(error, as_json)
    made, faults = _make_all(groups, run)
    if as_json:
        problems = [problem for fault, _ in faults for problem in problems_json(fault)["problems"]]
        say_json({"pictures": [_data(one) for one in made], **({"problems": problems} if problems else {})})
    else:
        _say(made, faults)
    return 2 if faults else 0


def _groups(
    paths: tuple[str, ...], words: tuple[str, ...], arrange: Arrange, colourways: str | None
) -> tuple[tuple[_Pad, ...], ...]:
    """The pads of each picture. Raises ProblemsError where a fan has too few or too many."""
    found = only(targets(paths), words)
    if colourways:
        names = _colourways(colourways)
        return tuple(tuple(_Pad(target, name) for name in names) for target in found)
    if arrange != "fan":
        return tuple((_Pad(target),) for target in found)
    if len(found) < LEAST_IN_FAN:
        raise one_problem(
            found[0].path if found else ".",
            f"A fan needs {LEAST_IN_FAN} designs or more, and this is {len(found)}.",
            "Add more paths, fan one design with --colourways all, or leave out --arrange fan.",
        )
    if len(found) > MOST_IN_FAN:
        raise one_problem(
            paths[0] if paths else ".",
            f"A fan shows {MOST_IN_FAN} designs at most, and these are {len(found)}.",
            f"Name the {MOST_IN_FAN} that are to be shown.",
        )
    return (tuple(_Pad(target) for target in found),)


def _colourways(text: str) -> tuple[str, ...]:
    """The colourways that are asked for, each once. Raises ProblemsError."""
    names = COLOURWAYS if text == "all" else tuple(dict.fromkeys(name.strip() for name in text.split(",")))
    for name in names:
        if name not in COLOURWAYS:
            raise one_problem("--colourways", f"{name} is not a colourway.", did_you_mean(name, COLOURWAYS))
    if len(names) < LEAST_IN_FAN:
        mend = f"Name one more of {', '.join(COLOURWAYS)}."
        raise one_problem(
            "--colourways", f"A fan needs {LEAST_IN_FAN} colourways, and this is {len(names)}.", mend
        )
    return names


def _make_all(
    groups: tuple[tuple[_Pad, ...], ...], run: _Run
) -> tuple[list[_Made], list[tuple[ProblemsError, Target]]]:
    """Each picture; one that cannot be made does not hold up the others."""
    made: list[_Made] = []
    faults: list[tuple[ProblemsError, Target]] = []
    claimed: dict[str, str] = {}
    for group in groups:
        try:
            made.append(_make(group, run, claimed))
        except ProblemsError as error:
            faults.append((error, group[0].target))
    return made, faults


def _make(group: tuple[_Pad, ...], run: _Run, claimed: dict[str, str]) -> _Made:
    """One picture, written. `claimed` holds which design every path so far is of."""
    from padspec.compose.compose import compose
    from padspec.flat_lay.backdrop import fitting_colour
    from padspec.flat_lay.look import look_of, thickness_of
    from padspec.flat_lay.picture import face_ppi, flat_lay

    designs = tuple(_design(pad) for pad in group)
    colour = backdrop_colour(run.backdrop, designs[0]) if run.backdrop is not None else None
    name = _file(group, designs, run)
    folder = run.folder(group[0])
    _claim(str(folder / name), designs[0], claimed)
    ppi = face_ppi([design.trim for design in designs], [thickness_of(design) for design in designs], run.wish)
    looks = tuple(look_of(design, compose(design), ppi, run.board) for design in designs)
    wish = replace(run.wish, backdrop=fitting_colour(looks) if colour is None else colour)
    FolderWorkspace(folder).write(name, flat_lay(looks, wish))
    return _Made(designs, wish, shown_path(folder / name))


def _file(group: tuple[_Pad, ...], designs: tuple[Design, ...], run: _Run) -> str:
    if group[0].colourway:
        return f"{designs[0].sku}/{_COLOURWAYS_FILE}"
    return _FAN_FILE if run.wish.arrange == "fan" else f"{designs[0].sku}/{_FILE}"


def _design(pad: _Pad) -> Design:
    from padspec.reading.gather import gather
    from padspec.resolve.in_colourway import in_colourway
    from padspec.resolve.resolve import resolve
    from padspec.resolve.vary import varied

    source = FolderWorkspace(pad.target.root)
    documents = varied(gather(pad.target.path, source, pad.target.variation))
    return resolve(in_colourway(documents, pad.colourway) if pad.colourway else documents, source)


def _claim(path: str, design: Design, claimed: dict[str, str]) -> None:
    """No picture takes the place of another. Raises ProblemsError."""
    if path in claimed:
        problem = Problem(
            design.place,
            f"Its sku {design.sku} is that of {claimed[path]} too: both would be {shown_path(Path(path))}.",
            "Give one of them another sku.",
        )
        raise ProblemsError(problem)
    claimed[path] = design.file


def _say(made: list[_Made], faults: list[tuple[ProblemsError, Target]]) -> None:
    for fault, target in faults:
        say_problems(fault, target.root)
    for one in made:
        width, height = one.wish.frame
        click.echo(f"Wrote {one.written}: {width} × {height} pixels, sRGB, on {one.wish.backdrop.hex}.")


def _data(one: _Made) -> dict[str, Any]:
    width, height = one.wish.frame
    return {
        "designs": [{"design": design.name, "sku": design.sku, "file": design.file} for design in one.designs],
        "arrange": one.wish.arrange,
        "width": width,
        "height": height,
        "backdrop": one.wish.backdrop.hex,
        "turn": one.wish.turn,
        "written": one.written,
    }
