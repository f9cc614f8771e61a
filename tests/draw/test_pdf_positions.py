"""Positions in the PDF, read back by other programs, are within 0.01 mm of the scene."""

import numpy as np
import pytest

from padspec.base.geometry import Affine
from padspec.draw.pdf import sheet_pdf
from padspec.draw.png import rasterise

from .reading_back import farthest, parts_in_pdf, parts_of_nodes, parts_of_scene
from .small import BLEED, CHECKBOXES, RULES, sheet_of, small_face_pdf, small_scene

LIMIT = 0.01
PPI = 1200


def test_every_path_of_a_face_is_where_the_scene_has_it():
    """Judge: pdfplumber, which follows forms and matrices."""
    wanted = parts_of_scene(small_scene(), Affine.move(BLEED, BLEED))
    assert farthest(wanted, parts_in_pdf(small_face_pdf())) < LIMIT


def test_a_face_holds_its_paths_and_the_background_and_no_more():
    wanted = parts_of_scene(small_scene(), Affine.move(BLEED, BLEED))
    assert len(parts_in_pdf(small_face_pdf())) == len(wanted) + 1


def test_every_path_of_a_sheet_is_where_its_slot_puts_it():
    scene = small_scene()
    sheet = sheet_of(scene)
    found = parts_in_pdf(sheet_pdf(scene, sheet))
    wanted = [part for slot in sheet.slots for part in parts_of_scene(scene, slot.transform)]
    assert farthest(wanted + parts_of_nodes(sheet.marks, Affine()), found) < LIMIT


@pytest.fixture(scope="module")
def ink():
    """How much plum lies on each pixel of the face, 0 to 1, the white panel being 0."""
    green = rasterise(small_face_pdf(), PPI)[..., 1].astype(float)
    return (255 - green) / (255 - 0x3B)


def centroid(ink, axis, along, near):
    """The middle, in mm of the face, of a stroke that runs along the other axis, by its ink.

    `axis` 0 looks down through a level stroke, 1 across an upright one; `along` is a stretch of it where
    nothing else lies within 0.6 mm, `near` where it should be.
    """
    from_mm = PPI / 25.4
    start, end = (round((value + BLEED) * from_mm) for value in along)
    first, last = (round((near + reach + BLEED) * from_mm) for reach in (-0.6, 0.6))
    window = ink[first:last, start:end] if axis == 0 else ink[start:end, first:last].T
    profile = window.mean(axis=1)
    middles = np.arange(first, last) + 0.5
    return float((profile * middles).sum() / profile.sum()) / from_mm - BLEED


@pytest.mark.parametrize("rule", RULES)
def test_the_ink_of_a_rule_is_centred_where_the_scene_has_it(ink, rule):
    assert centroid(ink, 0, (15, 35), rule[1]) == pytest.approx(rule[1], abs=LIMIT)


@pytest.mark.parametrize(("box", "wanted"), [(box, side) for box in CHECKBOXES for side in (box.x, box.right)])
def test_the_ink_of_a_checkbox_side_is_centred_where_the_scene_has_it(ink, box, wanted):
    assert centroid(ink, 1, (box.y + 1, box.bottom - 1), wanted) == pytest.approx(wanted, abs=LIMIT)


@pytest.mark.parametrize("box", CHECKBOXES)
def test_the_ink_of_a_checkbox_top_is_centred_where_the_scene_has_it(ink, box):
    assert centroid(ink, 0, (box.x + 1, box.right - 1), box.y) == pytest.approx(box.y, abs=LIMIT)


def test_the_ink_of_a_rule_is_as_heavy_as_the_scene_says(ink):
    from_mm = PPI / 25.4
    first, last = (round((42 + reach + BLEED) * from_mm) for reach in (-0.6, 0.6))
    column = ink[first:last, round((20 + BLEED) * from_mm)]
    assert column.sum() / from_mm == pytest.approx(0.3, abs=LIMIT)
