"""Dashes, dots and fills that let something through: the same in SVG, in the PDF and on the plates of a press.

resvg draws the SVG, pdfium the PDF, Ghostscript the press PDF; none of them shares code with this repository. What
a fill of opacity a over a ground comes to is a × fill + (1 - a) × ground (ISO 32000-1, 11.3.3, the Normal mode).
"""

import numpy as np
import pytest
from press.made import separator

from padspec.base.colour import BLACK, Colour
from padspec.base.geometry import Box, Size
from padspec.draw.pdf import face_pdf
from padspec.draw.png import rasterise
from padspec.draw.press.separations import face_separations
from padspec.draw.svg import face_svg
from padspec.press.inks import INKS
from padspec.scene.nodes import Cause, Layer, Picture, Scene, Shape, Stroke
from padspec.scene.outline import line, rectangle, rounded

from .reading_back import largest_difference, svg_pixels
from .small import PLUM, tiles
from .test_press_separations import PPI, at, separated
from .test_two_emitters import LIMIT, embedded

SIZE = Size(50.8, 50.8)
GROUND, PAPER, ROSE = Colour(0x40, 0x78, 0x90), Colour(0xFF, 0xF8, 0xF0), Colour(0xD0, 0x60, 0x70)
PANEL, SECOND = Box(5, 5, 30, 40), Box(25, 20, 20, 20)
OPACITY = 0.85
#: y, weight, ends, dash and gap of lines across the panel.
PENS = {
    10.0: Stroke(PLUM, 0.4, "butt", (1.6, 1.1)),
    15.0: Stroke(PLUM, 0.6, "round", (0.001, 1.9)),
    20.0: Stroke(PLUM, 0.4, "round", (2.0, 1.5)),
    25.0: Stroke(PLUM, 0.4),
}


def scene(opacity: float = OPACITY) -> Scene:
    """A ground, a panel that lets it through, a second one over both, and lines of every kind."""
    whole = Shape(rectangle(Box(0, 0, 50.8, 50.8)), Cause("ground", "ground"), GROUND)
    panels = (
        Shape(rounded(PANEL, 3), Cause("panel", "panel"), PAPER, opacity=opacity),
        Shape(rectangle(SECOND), Cause("second", "panel"), ROSE, opacity=0.5),
        Shape(rectangle(Box(40, 42, 6, 6)), Cause("third", "panel"), PAPER),
    )
    rules = tuple(Shape(line(7, y, 24.3, y), Cause("rows", "rule"), stroke=pen) for y, pen in PENS.items())
    return Scene(SIZE, 0, (Layer("ground", (whole,)), Layer("panel", panels), Layer("rules", rules)))


def over(opacity: float, fill: tuple[float, ...], under: tuple[float, ...]) -> tuple[float, ...]:
    return tuple(opacity * a + (1 - opacity) * b for a, b in zip(fill, under, strict=True))


def rgb(colour: Colour) -> tuple[float, ...]:
    return (colour.red, colour.green, colour.blue)


SEEN = {
    "the ground alone": ((2, 2), rgb(GROUND)),
    "the panel over the ground": ((15, 35), over(OPACITY, rgb(PAPER), rgb(GROUND))),
    "the second over the ground": ((42, 30), over(0.5, rgb(ROSE), rgb(GROUND))),
    "the second over the panel": ((30, 30), over(0.5, rgb(ROSE), over(OPACITY, rgb(PAPER), rgb(GROUND)))),
    "an opaque one after them": ((43, 45), rgb(PAPER)),
}


@pytest.fixture(scope="module")
def in_pdf() -> np.ndarray:
    return rasterise(face_pdf(scene()), 600)


@pytest.fixture(scope="module")
def in_svg() -> np.ndarray:
    return svg_pixels(face_svg(scene(), "A face", embedded), 600)


def pixel(pixels: np.ndarray, place: tuple[float, float]) -> list[int]:
    x, y = (round(side / 25.4 * 600) for side in place)
    return pixels[y, x].tolist()


@pytest.mark.parametrize("name", SEEN)
def test_svg_and_pdf_show_a_translucent_fill_in_one_colour(name: str, in_pdf, in_svg) -> None:
    place, wanted = SEEN[name]
    assert pixel(in_pdf, place) == pytest.approx(wanted, abs=2)
    assert pixel(in_svg, place) == pytest.approx(wanted, abs=2)


def test_svg_and_pdf_show_the_same_dashes_and_edges(in_pdf, in_svg) -> None:
    assert largest_difference(in_svg, in_pdf) < LIMIT


def test_a_dash_somewhere_else_is_seen(in_pdf) -> None:
    """The limit above is worth something: with dashes a fifth longer the two differ by far more."""
    longer = {**PENS, 10.0: Stroke(PLUM, 0.4, "butt", (1.9, 1.1))}
    rules = tuple(Shape(line(7, y, 24.3, y), Cause("rows", "rule"), stroke=pen) for y, pen in longer.items())
    whole = scene()
    other = Scene(SIZE, 0, (*whole.layers[:2], Layer("rules", rules)))
    assert largest_difference(svg_pixels(face_svg(other, "A face", embedded), 600), in_pdf) > 2 * LIMIT


def runs_of_ink(pixels: np.ndarray, y: float) -> list[tuple[float, float]]:
    """Where a line across the panel has ink: each run as its start and end, in mm."""
    row = pixels[round(y / 25.4 * 600), :, 1].astype(int) < 150
    row[round(24.6 / 25.4 * 600) :] = False
    row[: round(6.5 / 25.4 * 600)] = False
    edges = np.flatnonzero(np.diff(row.astype(int)))
    return [(a / 600 * 25.4, b / 600 * 25.4) for a, b in zip(edges[::2], edges[1::2], strict=True)]


@pytest.mark.parametrize("page", ["in_pdf", "in_svg"])
def test_dashes_begin_at_the_start_and_have_their_length(page: str, request: pytest.FixtureRequest) -> None:
    """17.3 mm hold seven dashes of 1.6 mm and six gaps of 1.1 mm, and a little more."""
    found = runs_of_ink(request.getfixturevalue(page), 10.0)
    assert len(found) == 7
    for n, (start, end) in enumerate(found):
        assert start == pytest.approx(7 + n * 2.7, abs=0.1)
        assert end - start == pytest.approx(1.6 if n < 6 else 24.3 - 7 - 6 * 2.7, abs=0.1)


@pytest.mark.parametrize("page", ["in_pdf", "in_svg"])
def test_dots_are_round_and_at_their_distance(page: str, request: pytest.FixtureRequest) -> None:
    """As wide as the line is heavy, 1.901 mm apart: ten of them on 17.3 mm."""
    found = runs_of_ink(request.getfixturevalue(page), 15.0)
    assert len(found) == 10
    for n, (start, end) in enumerate(found):
        assert (start + end) / 2 == pytest.approx(7 + n * 1.901, abs=0.08)
        assert end - start == pytest.approx(0.6, abs=0.1)


@pytest.mark.parametrize("page", ["in_pdf", "in_svg"])
def test_a_line_after_dashed_ones_is_whole(page: str, request: pytest.FixtureRequest) -> None:
    ((start, end),) = runs_of_ink(request.getfixturevalue(page), 25.0)
    assert (start, end) == pytest.approx((7, 24.3), abs=0.1)


def test_a_translucent_fill_over_a_picture_lets_it_through() -> None:
    picture = Picture(tiles(100), Box(0, 0, 50.8, 50.8), Cause("art", "art"))
    panel = Shape(rectangle(Box(0, 0, 50.8, 50.8)), Cause("panel", "panel"), PAPER, opacity=0.9)
    both = Scene(SIZE, 0, (Layer("ground", (picture,)), Layer("panel", (panel,))))
    wanted = over(0.9, rgb(PAPER), (214, 120, 128))
    assert pixel(rasterise(face_pdf(both), 600), (10, 10)) == pytest.approx(wanted, abs=2)
    assert pixel(svg_pixels(face_svg(both, "A face", embedded), 600), (10, 10)) == pytest.approx(wanted, abs=2)


def test_an_opacity_of_one_writes_nothing_about_it() -> None:
    opaque = Scene(SIZE, 0, (Layer("panel", (Shape(rectangle(PANEL), Cause("panel", "panel"), PAPER),)),))
    assert "opacity" not in face_svg(opaque, "A face", embedded)
    assert b"/ca " not in face_pdf(opaque)


# On plates


@pytest.fixture(scope="module")
def plates(tmp_path_factory) -> tuple[np.ndarray, np.ndarray]:
    """By Ghostscript from the press PDF, and by pdfium one ink at a time."""
    return separated(scene(), tmp_path_factory.mktemp("gs")), face_separations(scene(), separator(), PPI)


def inks(colour: Colour) -> tuple[float, ...]:
    return tuple(map(float, separator().area(colour).steps))


@pytest.mark.parametrize(
    ("place", "wanted"),
    [
        ((2, 2), lambda: inks(GROUND)),
        ((15, 35), lambda: over(OPACITY, inks(PAPER), inks(GROUND))),
        ((42, 30), lambda: over(0.5, inks(ROSE), inks(GROUND))),
        ((30, 30), lambda: over(0.5, inks(ROSE), over(OPACITY, inks(PAPER), inks(GROUND)))),
    ],
    ids=["ground", "panel", "second over ground", "second over panel"],
)
def test_plates_hold_the_mixture_of_both_inks(plates, place, wanted) -> None:
    """Within 3 of 255, a little over one hundredth of ink."""
    for found in plates:
        assert at(found, *place) == pytest.approx(wanted(), abs=3)


@pytest.mark.parametrize("place", range(4), ids=INKS)
def test_both_renderers_find_the_same_dashes_on_a_plate(plates, place: int) -> None:
    theirs, ours = (p[..., place].astype(float) for p in plates)
    height, width = (side // 6 * 6 for side in theirs.shape)
    squares = [p[:height, :width].reshape(height // 6, 6, width // 6, 6).mean(axis=(1, 3)) for p in (theirs, ours)]
    off = np.abs(squares[0] - squares[1])
    assert off.mean() < 1  # flats are rounded otherwise
    assert np.percentile(off, 99) < 15


def test_black_dashes_leave_the_ground_in_their_gaps_and_under_them(tmp_path) -> None:
    """Overprint holds for dashes too: the coloured plates do not know of them."""
    whole = Shape(rectangle(Box(0, 0, 25.4, 25.4)), Cause("ground", "ground"), fill=Colour(0xE8, 0xDD, 0xE4))
    rule = Shape(line(3, 12, 22, 12), Cause("rows", "rule"), stroke=Stroke(BLACK, 2.0, "butt", (3.0, 2.0)))
    inch = Scene(Size(25.4, 25.4), 0, (Layer("ground", (whole,)), Layer("rules", (rule,))))
    ground = separator().area(Colour(0xE8, 0xDD, 0xE4)).steps
    for found in (separated(inch, tmp_path), face_separations(inch, separator(), PPI)):
        assert at(found, 4.5, 12) == pytest.approx([*ground[:3], 255], abs=1)
        assert at(found, 7, 12) == pytest.approx(ground, abs=1)
