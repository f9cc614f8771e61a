"""Plates by two renderers: Ghostscript separates the press PDF itself, pdfium draws one ink at a time.

Ghostscript's tiffsep device writes one grey TIFF a plate, 0 where ink is solid, and honours overprint.
"""

import io
import subprocess
from pathlib import Path

import numpy as np
import pytest
from PIL import Image
from press.made import separator

from padspec.base.colour import BLACK, WHITE, Colour
from padspec.base.geometry import Affine, Box, Sides, Size
from padspec.draw.press.pdf import press_pdf
from padspec.draw.press.separations import face_cover, face_separations, press_proof_png
from padspec.press.inks import INKS
from padspec.press.single import single_page
from padspec.scene.nodes import Cause, Layer, Picture, Raster, Scene, Shape, Stroke
from padspec.scene.outline import line, rectangle
from padspec.sheet.arrangement import Grid
from padspec.sheet.sheet import Sheet, Slot

from .press_small import GREY, small_print, with_everything
from .small import BLEED, DOT, GROUND, PLUM, TRIM, small_scene

PPI = 150
FACE = Size(25.4, 25.4)
DEEP, PALE_GREY = Colour(0x20, 0x60, 0xA0), Colour(0xDD, 0xDD, 0xDD)


def plates_of(pdf: bytes, folder: Path) -> np.ndarray:
    """The four plates of the first page by Ghostscript, 255 where an ink is solid, smoothed from 1200 ppi."""
    (folder / "in.pdf").write_bytes(pdf)
    subprocess.run(
        [
            "gs", "-q", "-dNOPAUSE", "-dBATCH", "-dSAFER", "-sDEVICE=tiffsep", f"-r{8 * PPI}",
            "-dDownScaleFactor=8", "-dLastPage=1", f"-sOutputFile={folder / 'out.tif'}", folder / "in.pdf",
        ],
        check=True,
    )  # fmt: skip
    names = [folder / f"out({ink.capitalize()}).tif" for ink in INKS]
    return np.stack([255 - np.asarray(Image.open(name).convert("L")) for name in names], axis=-1)


def bare_page(scene: Scene) -> Sheet:
    """A page that is the face with its bleed and nothing more, so that whole pixels cover it."""
    size = Size(scene.size.width + 2 * scene.bleed, scene.size.height + 2 * scene.bleed)
    trim = Box(scene.bleed, scene.bleed, scene.size.width, scene.size.height)
    slot = Slot(
        trim, (trim.inset(-scene.bleed),), Sides.all(scene.bleed), (), Affine.move(trim.x, trim.y), turned=False
    )
    whole = Box(0, 0, size.width, size.height)
    return Sheet(size, "bare", "bare", Grid(1, 1, scene.size, False), 4, 0, (slot,), whole, (), (), 1)


def separated(scene: Scene, folder: Path) -> np.ndarray:
    return plates_of(press_pdf([(bare_page(scene), [scene])], separator(), "A", "2000-01-01"), folder)


def square(colour: Colour, box: Box = Box(5, 5, 10, 10)) -> Shape:  # noqa: B008
    return Shape(rectangle(box), Cause("heading", "lettering"), fill=colour)


def face(ground: Colour, *lettering: Shape) -> Scene:
    """An inch square with a ground and some lettering."""
    whole = Shape(rectangle(Box(0, 0, 25.4, 25.4)), Cause("ground", "ground"), fill=ground)
    return Scene(FACE, 0, (Layer("ground", (whole,)), Layer("lettering", lettering)))


def at(plates: np.ndarray, x: float, y: float) -> list[int]:
    """The inks at a place in mm of a face without bleed."""
    return plates[round(y / 25.4 * PPI), round(x / 25.4 * PPI)].tolist()


@pytest.fixture(scope="module")
def both(tmp_path_factory) -> tuple[np.ndarray, np.ndarray]:
    """The plates of the small face with everything: by Ghostscript and by pdfium."""
    scene = with_everything()
    return separated(scene, tmp_path_factory.mktemp("gs")), face_separations(scene, separator(), PPI)


@pytest.mark.parametrize("place", range(4), ids=INKS)
def test_both_renderers_find_the_same_ink_on_a_plate(both, place):
    """In means of squares of a millimetre: edges are smoothed otherwise, and pdfium rounds pictures to pixels."""
    theirs, ours = (plates[..., place].astype(float) for plates in both)
    assert theirs.shape == ours.shape
    height, width = (side // 6 * 6 for side in theirs.shape)
    squares = [p[:height, :width].reshape(height // 6, 6, width // 6, 6).mean(axis=(1, 3)) for p in (theirs, ours)]
    off = np.abs(squares[0] - squares[1])
    assert off.mean() < 0.6
    assert np.percentile(off, 99) < 15


@pytest.mark.parametrize("place", range(4), ids=INKS)
def test_both_renderers_find_the_same_mean_cover(both, place):
    theirs, ours = (plates[..., place].mean() / 255 for plates in both)
    assert ours == pytest.approx(theirs, abs=0.002)


def test_flat_areas_hold_the_inks_of_their_separation(both):
    wanted = separator().area(GROUND).steps
    for plates in both:
        assert plates[3, 150].tolist() == pytest.approx(wanted, abs=1)


def test_black_lettering_leaves_the_ground_under_it(tmp_path):
    """Overprint: on the coloured plates nothing is cut out for it."""
    scene = face(GROUND, square(BLACK))
    ground = separator().area(GROUND).steps
    for plates in (separated(scene, tmp_path), face_separations(scene, separator(), PPI)):
        assert at(plates, 10, 10) == pytest.approx([*ground[:3], 255], abs=1)


def test_grey_lettering_on_a_paler_ground_leaves_it_too(tmp_path):
    scene = face(GROUND, square(GREY))
    inks = [*separator().area(GROUND).steps[:3], separator().line(GREY).black]
    for plates in (separated(scene, tmp_path), face_separations(scene, separator(), PPI)):
        assert at(plates, 10, 10) == pytest.approx(inks, abs=1)


def test_pale_lettering_on_a_dark_ground_is_cut_out_and_stays_pale(tmp_path):
    scene = face(DEEP, square(PALE_GREY))
    inks = separator().line(PALE_GREY).steps
    for plates in (separated(scene, tmp_path), face_separations(scene, separator(), PPI)):
        assert at(plates, 10, 10) == pytest.approx(inks, abs=1)


def test_white_lettering_is_bare_paper(tmp_path):
    scene = face(DEEP, square(WHITE))
    for plates in (separated(scene, tmp_path), face_separations(scene, separator(), PPI)):
        assert at(plates, 10, 10) == [0, 0, 0, 0]


def test_coloured_lettering_is_cut_out_of_the_ground(tmp_path):
    scene = face(GROUND, square(PLUM))
    inks = separator().line(PLUM).steps
    for plates in (separated(scene, tmp_path), face_separations(scene, separator(), PPI)):
        assert at(plates, 10, 10) == pytest.approx(inks, abs=1)


def test_a_white_letter_with_a_black_edge_covers_inside_and_overprints_at_its_edge(tmp_path):
    letter = Shape(rectangle(Box(5, 5, 10, 10)), Cause("heading", "lettering"), WHITE, Stroke(BLACK, 2))
    scene = face(GROUND, letter)
    ground = separator().area(GROUND).steps
    for plates in (separated(scene, tmp_path), face_separations(scene, separator(), PPI)):
        assert at(plates, 10, 10) == [0, 0, 0, 0]
        assert at(plates, 4.5, 10) == pytest.approx([*ground[:3], 255], abs=1)


def test_a_half_transparent_pixel_mixes_ink_with_the_ground_under_it(tmp_path):
    """ISO 32000-1, 11.3.6, on each plate by itself."""
    raster = Raster("dot", "0000000d", 1, 1, bytes([DOT.red, DOT.green, DOT.blue]), bytes([128]))
    whole = face(GROUND).layers[0]
    art = Picture(raster, Box(5, 5, 10, 10), Cause("header", "art"))
    scene = Scene(FACE, 0, (whole, Layer("art", (art,))))
    over, under = np.array(separator().area(DOT).steps), np.array(separator().area(GROUND).steps)
    wanted = (over * 128 + under * 127) / 255
    for plates in (separated(scene, tmp_path), face_separations(scene, separator(), PPI)):
        assert at(plates, 10, 10) == pytest.approx(wanted.tolist(), abs=1.1)


def test_crop_marks_are_solid_on_every_plate(tmp_path):
    """By Ghostscript: the marks of a single face, above its bleed, are the same on all four."""
    scene = small_scene()
    page = single_page(TRIM, BLEED, "A", "slug", small_print())
    plates = plates_of(press_pdf([(page, [scene])], separator(), "A", "2000-01-01"), tmp_path)
    strip = plates[: round(7.5 / 25.4 * PPI)]
    assert strip.max() > 150
    assert all(np.array_equal(strip[..., 0], strip[..., place]) for place in range(1, 4))


def test_the_slug_is_on_every_plate(tmp_path):
    scene = small_scene()
    page = single_page(TRIM, BLEED, "A", "slug", small_print())
    plates = plates_of(press_pdf([(page, [scene])], separator(), "A", "2000-01-01"), tmp_path)
    foot = plates[-round(7.5 / 25.4 * PPI) :]
    assert all(np.array_equal(foot[..., 0], foot[..., place]) for place in range(1, 4))


def test_cover_of_a_plain_face_is_that_of_its_ground():
    found = face_cover(face(DEEP), separator())
    inks = separator().area(DEEP)
    assert found.means == pytest.approx(inks.shares, abs=0.003)
    assert found.most == pytest.approx(inks.cover, abs=0.012)


def test_cover_counts_black_on_top_of_the_ground_where_it_overprints():
    found = face_cover(face(DEEP, square(BLACK, Box(15, 5, 5, 5))), separator())
    inks = separator().area(DEEP)
    assert found.most == pytest.approx(sum(inks.shares[:3]) + 1, abs=0.012)
    assert 15 <= found.at[0] <= 20
    assert 5 <= found.at[1] <= 10


def test_cover_is_told_from_the_corner_of_the_trim():
    """A heavy square in the bleed lies at a negative place."""
    spot = Shape(rectangle(Box(-2.54, -2.54, 2, 2)), Cause("ground", "ground"), fill=BLACK)
    scene = Scene(Size(20.32, 20.32), 2.54, (Layer("ground", (spot,)),))
    x, y = face_cover(scene, separator()).at
    assert -2.54 < x < 0
    assert -2.54 < y < 0


def test_the_proof_has_the_size_of_the_trim_and_the_colour_of_the_paper():
    scene = Scene(Size(25.4, 50.8), 2.54, (Layer("ground", (square(PLUM),)),))
    image = Image.open(io.BytesIO(press_proof_png(scene, separator(), 100)))
    assert image.size == (100, 200)
    paper = image.getpixel((90, 190))
    assert paper != (255, 255, 255)
    assert min(paper) > 200


def test_a_rule_shows_on_the_proof_as_its_few_inks_print():
    rule = Shape(line(0, 10, 25.4, 10), Cause("rows", "rule"), stroke=Stroke(PLUM, 4))
    scene = Scene(FACE, 0, (Layer("rules", (rule,)),))
    shown = Image.open(io.BytesIO(press_proof_png(scene, separator(), PPI))).getpixel((75, round(10 / 25.4 * PPI)))
    inks = np.array([[separator().line(PLUM).steps]], np.uint8)
    assert shown == pytest.approx(tuple(separator().conversion.screen(inks)[0, 0].tolist()), abs=2)
