"""Motif: the maker's own small picture in half-drop, each column half a step below the one before."""

from collections.abc import Iterator
from dataclasses import replace
from math import cos, pi, radians, sin, sqrt
from random import Random

from padspec.base.geometry import Affine, Box, Size
from padspec.compose.ground.repeat import repeat
from padspec.resolve.ground import Pattern, Phase
from padspec.scene.nodes import Cause, Group, Picture


def motif(pattern: Pattern, area: Box, trim: Size, cause: Cause) -> Iterator[tuple[Box, Group]]:
    """Every copy that reaches into the area, with the box of its middle; nearest neighbours are one `size` apart.

    All copies share one picture. Each is turned and strays by chance, as far as `turn` and `jitter` let it, and
    stands upright but for that. Copies differ so much that out of step is no other phase than centred.
    """
    placed = pattern.picture
    if placed is None:
        return
    phase: Phase = "run-on" if pattern.phase == "run-on" else "centred"
    step = pattern.size
    lattice = repeat(replace(pattern, phase=phase), trim, (step * sqrt(3) / 2, step / 2), (0.0, step))
    picture = Picture(placed.image, Box(-placed.width / 2, -placed.height / 2, placed.width, placed.height), cause)
    stray = pattern.jitter * max(step - max(placed.width, placed.height), 0.0) / 2
    reach = sqrt(placed.width**2 + placed.height**2) / 2 + stray
    for i, j in lattice.near(area, reach):
        x, y = lattice.at(i, j)
        chance = Random("{} {} {}".format(pattern.seed, *lattice.same(i, j)))
        turn = radians(pattern.turn) * (2 * chance.random() - 1)
        way, off = 2 * pi * chance.random(), stray * sqrt(chance.random())
        x, y = x + off * cos(way), y + off * sin(way)
        c, s = cos(turn), sin(turn)
        yield Box(x, y, 0, 0), Group((picture,), Affine(c, s, -s, c, x, y))
