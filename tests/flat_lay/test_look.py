"""What is made of a design: its real face, exactly its trim."""

import numpy as np
import pytest
from kit import PLAIN, pad

from padspec.draw.pdf import face_pdf
from padspec.draw.png import rasterise
from padspec.flat_lay.look import look_of, thickness_of
from padspec.flat_lay.wish import GREY

GROUND = PLAIN + 'palette: {ground: "#336699"}\n'


@pytest.fixture(scope="module")
def made():
    return pad(GROUND, "studio: X\nleaves: 40\nstock: {caliper: 0.1 mm}\n")


def test_the_face_is_the_trim_at_the_resolution_asked_for(made):
    """90 × 190 mm at 127 ppi, 5 pixels a millimetre."""
    assert look_of(made.design, made.face, 127, GREY).face.shape == (950, 450, 3)


def test_the_face_is_that_of_the_pdf_that_prints(made):
    """Its bleed of 3 mm (15 pixels) is cut off and nothing else is changed."""
    whole = rasterise(face_pdf(made.face.scene), 127)
    edge = round(made.face.scene.bleed * 5)
    assert np.array_equal(
        look_of(made.design, made.face, 127, GREY).face, whole[edge : edge + 950, edge : edge + 450]
    )


def test_the_ground_runs_to_every_corner(made):
    face = look_of(made.design, made.face, 127, GREY).face
    assert {tuple(map(int, face[y, x])) for y in (0, -1) for x in (0, -1)} == {(0x33, 0x66, 0x99)}


def test_leaves_and_caliper_are_those_of_design_and_studio(made):
    look = look_of(made.design, made.face, 50, GREY)
    assert (look.leaves, look.caliper, look.board_colour) == (40, 0.1, GREY)
    assert look.block == pytest.approx(4.0)
    assert thickness_of(made.design) == pytest.approx(look.thickness) == pytest.approx(5.0)
