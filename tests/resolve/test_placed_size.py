"""How large a picture is placed: percentages of the trim, in proportion, no sharper than paper shows."""

import numpy as np
import pytest
from kit import PLAIN, apply, disc, pad, picture, png, problems

from padspec.resolve.blocks.art import Art
from padspec.resolve.blocks.space import Space
from padspec.resolve.design import blocks


def placed(changes: dict[str, object], data: bytes | None = None) -> Art:
    text = apply(PLAIN, {"art.file": "a.png", "art.frame": "0 mm"} | changes)
    found = pad(text, files={"a.png": data or disc(480, 480)}).design.face[0]
    assert isinstance(found, Art)
    return found


@pytest.mark.parametrize(
    ("changes", "side"),
    [
        ({"art.height": "20 %"}, 38.0),  # 0.2 × 190
        ({"art.height": "100 %"}, 78.0),  # 190, held to the width between the insets: 90 − 2 × 6
        ({"art.height": "100 %", "art.width": "50 %"}, 39.0),  # 0.5 × 78
        ({"art.height": "100 %", "art.inset": "10 mm"}, 70.0),  # 90 − 2 × 10
        ({"art.height": "30 mm"}, 30.0),
        ({"art.height": "1 in", "art.width": "200 mm"}, 25.4),
    ],
)
def test_heights_count_in_the_trims_height_and_widths_between_the_insets(
    changes: dict[str, object], side: float
) -> None:
    art = placed(changes)
    assert (art.width, art.height) == pytest.approx((side, side))


def test_a_wide_picture_keeps_its_proportions() -> None:
    art = placed({"art.height": "50 %"}, disc(600, 200))
    assert art.width == pytest.approx(78)
    assert art.height == pytest.approx(26)


def test_the_empty_border_is_trimmed_before_the_picture_is_measured() -> None:
    # The disc keeps an eighth of each side free: 360 of 480 pixels are seen.
    assert placed({}).source == (360, 360)
    assert placed({"art.trim-empty": "false"}).source == (480, 480)


def test_resolution_is_that_of_the_makers_pixels_at_the_placed_size() -> None:
    # 360 pixels over 38 mm: 360 × 25.4 ÷ 38 = 240.6 an inch.
    assert placed({"art.height": "20 %"}).ppi == pytest.approx(240.63, abs=0.01)


def test_a_picture_is_brought_down_to_450_pixels_an_inch() -> None:
    art = placed({"art.height": "25.4 mm"}, disc(1200, 1200))
    assert (art.source, art.image.width, art.image.height) == ((900, 900), 450, 450)


def test_a_small_picture_is_not_blown_up() -> None:
    art = placed({"art.height": "25.4 mm"})
    assert (art.image.width, art.image.height) == (360, 360)


def test_a_picture_with_nothing_to_see_is_refused() -> None:
    empty = png(np.zeros((40, 40, 4), np.uint8))
    (problem,) = problems(apply(PLAIN, {"art.file": "a.png"}), files={"a.png": empty})
    assert problem.startswith("x.pad.yaml:6:9 The picture is wholly transparent")


def test_the_height_of_a_space_counts_in_the_trims_height() -> None:
    layout = (
        "layout: mine\nabout: Air above one panel.\nface:\n"
        "  - space: {id: air, height: 10 %}\n"
        "  - panel: {id: panel, grow: 1, holds: [{rows: {id: rows, grow: 1}}]}\n"
    )
    design = pad(apply(PLAIN, {"layout": "mine"}), files={"layouts/mine.yaml": layout.encode()}).design
    assert [block.height for block in blocks(design) if isinstance(block, Space)] == [19]


def test_a_picture_in_a_panel_takes_the_panels_width_and_no_inset_of_its_own() -> None:
    layout = b"layout: inside\nabout: A.\nface:\n  - panel:\n      id: panel\n      grow: 1\n      holds:\n"
    layout += b"        - art: {id: art}\n        - rows: {id: rows, grow: 1}\n"
    text = apply(PLAIN, {"layout": "inside", "art.file": "m.png", "art.height": "90 %"})
    made = pad(text, files={"m.png": picture(1400, 1050), "layouts/inside.yaml": layout})
    placed = made.face.placement("art")
    assert placed.box.width == pytest.approx(90 - 2 * (6 + 5))
    assert placed.box.y == pytest.approx(6 + 5)
    assert placed.short_by == 0


def test_a_giant_picture_is_worked_on_at_no_more_than_twenty_four_megapixels() -> None:
    """Its cut and its colours cost memory for every pixel, and paper shows none of the rest."""
    pixels = np.full((5000, 6000, 3), 240, np.uint8)
    pixels[1000:4000, 1000:5000] = (120, 60, 90)
    art = placed({"art.height": "30 mm", "art.trim-empty": "false"}, png(pixels))
    assert 23_000_000 < art.source[0] * art.source[1] <= 24_100_000
    assert art.source[0] / art.source[1] == pytest.approx(6 / 5, abs=1e-3)
