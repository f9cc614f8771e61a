"""The line around letters: round at every corner, as a renderer that knows round joins draws it."""

from io import BytesIO

import numpy as np
import pytest
import resvg_py
from PIL import Image

from padspec.base.geometry import Box
from padspec.compose.lettering.edge import with_round_corners
from padspec.compose.lettering.shaping import shape_line
from padspec.scene.outline import Close, Curve, Line, Move, Outline, circle, rectangle

from .fonts import shelved

LETTERS = {Move: "M", Line: "L", Curve: "C", Close: "Z"}


def drawn(outline: Outline, attributes: str) -> np.ndarray:
    """How much ink lies on each pixel, 120 to the em."""
    path = " ".join(LETTERS[type(step)] + " ".join(f"{value!r}" for value in step) for step in outline)
    svg = (
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="-0.3 -1.1 5 1.6" width="600" height="192">'
        f'<path d="{path}" fill="none" stroke="black" stroke-width="0.16" {attributes}/></svg>'
    )
    pixels = np.asarray(Image.open(BytesIO(bytes(resvg_py.svg_to_bytes(svg_string=svg)))))
    return pixels[..., 3].astype(float) / 255


@pytest.mark.parametrize(("name", "text"), [("Nunito", "MAW k4"), ("Lora", "WAKE"), ("Lilita One", "VWx7z")])
def test_it_covers_what_a_stroke_with_round_joins_covers(name: str, text: str) -> None:
    outline = shape_line(shelved(name), text).outline
    ours = drawn(with_round_corners(outline), 'stroke-linecap="round"')
    theirs = drawn(outline, 'stroke-linejoin="round"')
    spiked = drawn(outline, 'stroke-linejoin="miter" stroke-miterlimit="10"')
    assert np.abs(ours - theirs).max() < 0.35  # one pixel's edge
    assert np.abs(ours - theirs).mean() < 1e-3
    assert np.abs(spiked - theirs).max() > 0.9


def test_a_square_is_cut_at_its_four_corners() -> None:
    found = with_round_corners(rectangle(Box(0, 0, 2, 1)))
    assert [type(step) for step in found] == [Move, Line] * 4
    assert {(step.x, step.y) for step in found if isinstance(step, Move)} == {(0, 0), (2, 0), (2, 1), (0, 1)}


def test_a_circle_has_no_corner_and_stays_closed() -> None:
    assert with_round_corners(circle(1, 1, 1)) == circle(1, 1, 1)


def test_a_part_that_begins_within_a_smooth_stretch_is_begun_at_its_corner() -> None:
    """A drop: a half circle below, two straight lines that meet in a point above, begun at the bottom."""
    drop = (
        Move(0, 1),
        Curve(0.552, 1, 1, 0.552, 1, 0),
        Line(0, -2),
        Line(-1, 0),
        Curve(-1, 0.552, -0.552, 1, 0, 1),
        Close(),
    )
    found = with_round_corners(drop)
    starts = [(step.x, step.y) for step in found if isinstance(step, Move)]
    assert (0, 1) not in starts
    assert (0, -2) in starts


def test_a_point_that_stands_still_is_no_corner() -> None:
    square = (Move(0, 0), Line(1, 0), Line(1, 0), Line(1, 1), Line(0, 1), Line(0, 0), Close())
    assert [type(step) for step in with_round_corners(square)] == [Move, Line] * 4
