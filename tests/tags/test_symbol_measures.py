"""Symbols measured in the finished PDF by pdfplumber, against the figures of the GS1 General Specifications
(modules, bar heights and widths as GS1 Sweden's guide to sizes prints them; quiet zones likewise)."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from padspec.base.geometry import Size
from padspec.base.gtin import gtin
from padspec.tags.pattern import link_squares, number_bars, sku_bars
from padspec.tags.sizing import Misfit, Sized, fitted
from tags.project import Made, Project

EAN, UPC = "5012345678900", "036000291452"
#: Magnification: module, bars and whole width with quiet zones, in mm.
SIZES = {0.8: (0.264, 18.28, 29.83), 1.0: (0.330, 22.85, 37.29), 2.0: (0.660, 45.70, 74.58)}


@pytest.mark.parametrize("share", SIZES)
def test_the_published_sizes_are_those_that_fit_exactly(share: float) -> None:
    x, bars, width = SIZES[share]
    # 2 is the largest that is allowed, whatever the room.
    room = Size(width + (0.01 if share < 2 else 100), 200)
    for number in (EAN, UPC):
        sized = fitted(number_bars(gtin(number)), room)
        assert isinstance(sized, Sized)
        assert sized.x == pytest.approx(x, abs=0.0005)
        assert sized.bars == pytest.approx(bars, abs=0.005)
        assert sized.size.width == pytest.approx(width, abs=0.01)
        assert not sized.truncated


def test_just_less_than_eighty_per_cent_is_refused_with_the_sum() -> None:
    misfit = fitted(number_bars(gtin(EAN)), Size(29.8, 100))
    assert isinstance(misfit, Misfit)
    assert "95 modules and quiet zones of 11 and 7; at 80 % (0.264 mm each) that is 29.83 mm" in misfit.message
    assert "29.8 mm are free" in misfit.message


@given(st.floats(20, 200), st.floats(4, 90))
def test_a_symbol_is_legal_and_inside_its_room_or_refused(width: float, height: float) -> None:
    for pattern in (number_bars(gtin(EAN)), sku_bars("NG-MOTH")):
        sized = fitted(pattern, Size(width, height))
        if isinstance(sized, Misfit):
            assert re.search(r"\d", sized.message)
            continue
        assert 0.264 <= sized.x <= 0.660
        assert round(sized.x * 1000, 6) == round(sized.x * 1000)
        assert sized.size.width <= width + 1e-6
        assert sized.size.height <= height + 1e-6
        assert 5 <= sized.bars <= sized.full + 1e-9


@given(st.floats(10, 100))
def test_a_larger_room_never_makes_a_smaller_symbol(side: float) -> None:
    pattern = number_bars(gtin(EAN))
    small, large = fitted(pattern, Size(side, side * 2)), fitted(pattern, Size(side * 1.2, side * 2.4))
    if isinstance(small, Sized):
        assert isinstance(large, Sized)
        assert large.x >= small.x


def test_a_qr_code_grows_by_four_modules_a_version_and_keeps_four_free_all_round() -> None:
    # ISO/IEC 18004: 17 + 4 v modules a side; version 2 holds 26 bytes at level M, version 3 holds 42.
    for length, version in ((26, 2), (27, 3), (42, 3), (43, 4)):
        link = "https://example.com/".ljust(length, "a")
        squares = link_squares(link)
        assert (squares.version, len(squares.rows)) == (version, 17 + 4 * version)
        assert squares.width == 25 + 4 * version


@pytest.fixture(scope="module")
def printed(tmp_path_factory: pytest.TempPathFactory) -> tuple[Made, list[tuple[float, ...]]]:
    folder = tmp_path_factory.mktemp("measured")
    sheet = (
        "{name: stickers, rows: 4, columns: 2, width: 90 mm, height: 60 mm, left: 12 mm, top: 20 mm, "
        "across: 95 mm, down: 62 mm}"
    )
    project = Project(folder).studio(sheet).pad("M", f'barcode: "{EAN}"').pad("U", f'barcode: "{UPC}"')
    made = project.made("--from", "2")
    return made, [tuple(box) for box in made.black_boxes()]


def _of(printed: tuple[Made, list[tuple[float, ...]]], sku: str) -> tuple[Made, dict, list[tuple[float, ...]]]:
    """The measures of a symbol and the bars that lie on its label, from left to right."""
    made, boxes = printed
    place = next(place for place in made.data["places"] if place["sku"] == sku)
    left, top, right, foot = made.box(place)
    inside = [b for b in boxes if left <= b[0] and b[0] + b[2] <= right and top <= b[1] and b[1] + b[3] <= foot]
    return made, made.symbol(sku), sorted(inside)


@pytest.mark.parametrize("sku", ["M", "U"])
def test_bars_in_the_pdf_are_whole_modules_to_a_thousandth(printed: tuple[Made, list], sku: str) -> None:
    _, symbol, bars = _of(printed, sku)
    x = symbol["x_dimension"]
    assert len(bars) == 30  # three guards of two, and two for each of twelve digits
    start = bars[0][0]
    for left, _, width, _ in bars:
        for edge in (left - start, width):
            assert edge == pytest.approx(round(edge / x) * x, abs=0.0015)
    assert bars[-1][0] + bars[-1][2] - start == pytest.approx(95 * x, abs=0.0015)


@pytest.mark.parametrize(("sku", "quiet"), [("M", (11, 7)), ("U", (9, 9))])
def test_quiet_zones_are_empty_and_on_the_label(
    printed: tuple[Made, list], sku: str, quiet: tuple[int, int]
) -> None:
    made, symbol, bars = _of(printed, sku)
    x = symbol["x_dimension"]
    left, _, right, _ = made.box(next(place for place in made.data["places"] if place["sku"] == sku))
    first, last = bars[0][0], bars[-1][0] + bars[-1][2]
    assert first - left >= quiet[0] * x
    assert right - last >= quiet[1] * x
    assert (symbol["quiet_left"], symbol["quiet_right"]) == pytest.approx((quiet[0] * x, quiet[1] * x))


@pytest.mark.parametrize(("sku", "long"), [("M", 6), ("U", 10)])
def test_bar_heights(printed: tuple[Made, list], sku: str, long: int) -> None:
    # The guards reach five modules down between the digits; a UPC-A draws its first and last digit as long.
    _, symbol, bars = _of(printed, sku)
    full = 22.85 * symbol["x_dimension"] / 0.330
    heights = sorted({round(height, 2) for *_, height in bars})
    assert heights == pytest.approx([full, full + 5 * symbol["x_dimension"]], abs=0.01)
    assert sum(height > full + 0.1 for *_, height in bars) == long
    assert symbol["bar_height"] == pytest.approx(full, abs=0.01)


def test_too_low_a_label_cuts_the_bars_short_and_tells_how_much(project: Project) -> None:
    project.studio("{name: stickers, rows: 13, columns: 5, width: 38 mm, height: 21 mm, across: 40 mm}")
    made = project.pad("M", f'barcode: "{EAN}"\nprice: 6.50').made()
    symbol = made.symbol("M")
    assert symbol["bar_height"] < symbol["full_bar_height"]
    assert f"the bars, which are {symbol['bar_height']:g} mm high" in made.notes
    heights = [height for *_, height in made.black_boxes()]
    assert min(heights) == pytest.approx(symbol["bar_height"], abs=0.01)
