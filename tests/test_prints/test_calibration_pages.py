"""What the calibration pages show, and where it lies on paper, as pdfplumber reads it back."""

from itertools import combinations

import numpy as np
import pytest
from draw.reading_back import parts_of_nodes
from kit import problems

from padspec.base.errors import ProblemsError
from padspec.base.geometry import Affine, Box, mapped_box
from padspec.base.units import parse_length
from padspec.draw.png import rasterise
from padspec.scene.nodes import Group, Shape
from padspec.scene.outline import bounds
from padspec.test_prints.cards import stacked
from padspec.test_prints.scales import REACH, cross_of
from padspec.test_prints.steps import WEIGHTS

from .printer import Printer, nearest, pages_of
from .workshops import pages, pdf, workshop

LIMIT = 0.01
SIZES = ["A4", "letter", "legal", "A3", "tabloid", "A5", "half-letter", "JIS B5", "A2"]
PRINTER = Printer((0.8, -0.5), (0.996, 1.0025), "right")


def sized(name: str) -> str:
    return f"sheet: {{size: {name}}}\n"


def lines_on(page, commands: str = "ml"):
    return [part.points for part in page if part.commands == commands]


class TestTheCross:
    def test_takes_200_mm_across_and_250_mm_down_on_a4(self):
        studio = workshop()
        cross = cross_of(studio.wish.size, studio.studio.printer.margins)
        assert (cross.across, cross.down) == (200, 250)

    @pytest.mark.parametrize("name", SIZES)
    def test_is_of_whole_tens_inside_the_margins_and_no_longer_than_a_ruler(self, name):
        studio = workshop(sized(name))
        size = studio.wish.size
        cross = cross_of(size, studio.studio.printer.margins)
        for length, side in ((cross.across, size.width), (cross.down, size.height)):
            assert length % 10 == 0
            assert 10 <= length <= min(side - 2 * 4.2, 300)

    def test_ends_where_it_says_on_paper(self):
        """210 × 297: bars through 105 and 148.5, ends at 105 ± 100 and 148.5 ± 125."""
        (_, found), *_ = pages_of(pdf())
        level = np.array([[5.0, 148.5], [205.0, 148.5]])
        upright = np.array([[105.0, 23.5], [105.0, 273.5]])
        assert nearest([level, upright], lines_on(found)) < LIMIT

    def test_of_the_proof_measures_true_once_the_printer_has_moved_it(self):
        (page, found), *_ = pages_of(pdf(PRINTER.yaml, is_corrected=True))
        printed = [PRINTER.printed(page, points) for points in lines_on(found)]
        level = np.array([[5.0, 148.5], [205.0, 148.5]])
        upright = np.array([[105.0, 23.5], [105.0, 273.5]])
        assert nearest([level, upright], printed) < LIMIT

    def test_of_the_first_print_shows_what_the_printer_does(self):
        """Uncorrected, the bars come out as the printer stretches and shifts them: what is to be read."""
        (page, found), *_ = pages_of(pdf(PRINTER.yaml))
        printed = [PRINTER.printed(page, points) for points in lines_on(found)]
        level = np.array([[105.8 - 99.6, 148.0], [105.8 + 99.6, 148.0]])
        assert nearest([level], printed) < LIMIT

    def test_of_the_wide_proof_lies_in_the_middle_of_the_fed_sheet(self):
        page, found = pages_of(pdf(PRINTER.yaml, is_corrected=True))[-1]
        bar = np.array([[148.5 - 8, 105.0], [148.5 + 8, 105.0]])
        printed = [PRINTER.printed(page, points) for points in lines_on(found)]
        assert nearest([PRINTER.fed(page, bar)], printed) < LIMIT


class TestTheEdgeScales:
    @pytest.mark.parametrize("side", ["left", "right", "top", "bottom"])
    @pytest.mark.parametrize("n", [0, 1, 4, 5, 10, REACH])
    def test_tick_n_lies_n_mm_from_the_edge(self, side, n):
        """Twice on each side, at its quarters."""
        (_, found), *_ = pages_of(pdf())
        half = 2.2 if n % 5 == 0 else 1.2
        for quarter in (1, 3):
            along = (297.0 if side in ("left", "right") else 210.0) * quarter / 4
            at = {"left": n, "top": n, "right": 210.0 - n, "bottom": 297.0 - n}[side]
            tick = np.array([[at, along - half], [at, along + half]])
            wanted = tick if side in ("left", "right") else tick[:, ::-1]
            assert nearest([wanted], [*lines_on(found), *(line[::-1] for line in lines_on(found))]) < LIMIT

    def test_ink_reaches_the_very_edge_of_the_page(self):
        pixels = rasterise(pdf(), 300)
        for edge in (pixels[0], pixels[-1], pixels[:, 0], pixels[:, -1]):
            assert edge.min() < 128


def test_every_line_weight_is_drawn_as_thick_as_it_says_in_black_and_both_colours():
    (_, found), *_ = pages_of(pdf())
    for weight in WEIGHTS:
        drawn = [part for part in found if part.stroke and abs(part.weight - parse_length(weight)) < 0.0006]
        assert len({part.stroke for part in drawn}) >= 3, weight


@pytest.mark.parametrize("name", SIZES)
def test_the_last_page_is_the_same_sheet_on_its_side(name):
    first, *_, last = pages(sized(name))
    assert (last.size.width, last.size.height) == (first.size.height, first.size.width)


@pytest.mark.parametrize("name", ["A4", "letter", "legal", "A3", "tabloid"])
def test_a_common_sheet_takes_two_pages(name):
    assert len(pages(sized(name))) == 2


@pytest.mark.parametrize("name", SIZES)
@pytest.mark.parametrize("is_corrected", [False, True])
def test_words_and_boxes_keep_clear_of_the_edges_and_of_each_other(name, is_corrected):
    """Every run of letters and every box to write in, on every page."""
    for page in pages(sized(name) + PRINTER.yaml, is_corrected):
        paper = Box(0, 0, page.size.width, page.size.height)
        boxes = [(part, box) for part, box in inked(page.nodes) if part in ("lettering", "checkbox")]
        assert all(paper.covers(box) for _, box in boxes)
        for (_, one), (_, other) in combinations(boxes, 2):
            assert not one.overlaps(other), (one, other)


@pytest.mark.parametrize("name", SIZES)
def test_words_keep_clear_of_the_bars_and_scales(name):
    """Each line of a scale by itself: their ends reach further than what lies between."""
    page = pages(sized(name))[0]
    found = [part for part in parts_of_nodes(page.nodes, Affine()) if part.commands == "ml" and part.stroke]
    marks = [Box(*part.points.min(axis=0), *np.ptp(part.points, axis=0)).inset(-0.2) for part in found]
    words = [box for part, box in inked(page.nodes) if part == "lettering"]
    for word in words:
        assert not any(word.overlaps(mark) for mark in marks)


def inked(nodes, affine=Affine()):
    """The box of each shape where it lies on the page, with what it is."""
    for node in nodes:
        if isinstance(node, Group):
            yield from inked(node.children, node.transform.then(affine))
        elif isinstance(node, Shape) and node.outline:
            yield node.cause.part, mapped_box(bounds(node.outline), affine)


def test_nothing_is_lost_where_cards_go_on_further_pages():
    """As many boxes to write in on A5, spread over pages, as on A4."""
    counts = {
        name: sum(part == "checkbox" for page in pages(sized(name)) for part, _ in inked(page.nodes))
        for name in ("A4", "A5")
    }
    assert counts["A5"] == counts["A4"] == 2 + 2 + 4 + 2 + 2 + 1


def test_a_sheet_that_is_wider_than_high_has_its_scales_upright_as_it_is_fed():
    size = pages("sheet: {size: {width: 297 mm, height: 210 mm}}\n")[0].size
    assert (size.width, size.height) == (210, 297)


def test_a_sheet_that_is_too_small_is_refused_with_the_size_it_takes():
    with pytest.raises(ProblemsError, match=r"100 mm × 148 mm is too small .* It takes 107 mm × 200 mm or more"):
        pages("sheet: {size: {width: 100 mm, height: 148 mm}}\n")


def test_a_stretch_beyond_one_per_cent_cannot_be_entered():
    told = problems("pad: X\ntrim: {width: 90 mm, height: 190 mm}\n", "printer: {scale: {x: 97 %}}\n")
    assert "more than 1 % off" in told[0]


def test_the_same_bytes_twice():
    assert pdf.__wrapped__() == pdf.__wrapped__()


def test_an_empty_stack_has_no_height():
    assert stacked(()).height == 0
