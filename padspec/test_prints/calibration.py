"""Studio in, the calibration PDF out: edge scales, a cross to measure, steps of lines and tints, the page turn.

The pages are drawn as if the printer were true, so that what they measure on paper is what it makes of them.
Corrected, they are drawn through the studio's own numbers, and must then measure true.
"""

from dataclasses import dataclass, replace

from padspec.base.errors import Problem, ProblemsError
from padspec.base.geometry import Affine, Box, Sides, Size
from padspec.base.numbers import mm_text
from padspec.base.place import Place
from padspec.draw.pdf import sheets_pdf
from padspec.resolve.font import Font
from padspec.scene.nodes import Layer, Scene
from padspec.sheet.arrangement import Grid
from padspec.sheet.bed import make_bed
from padspec.sheet.sheet import Sheet, Slot
from padspec.test_prints.cards import BETWEEN, Card, air, dealt, paragraph, stacked, steps
from padspec.test_prints.readings import lines_card, margins_card, offset_card, scale_card, tints_card
from padspec.test_prints.scales import BAND, BESIDE, Cross, cross_of, draw_cross, edge_scales, quadrants
from padspec.test_prints.setting import CAPS, LEADING, TITLE, Nodes, Type, type_of, words
from padspec.test_prints.turn_page import turn_page
from padspec.test_prints.workshop import Workshop

#: Cards are set no narrower and no wider than this, in mm.
LEAST_CARD, MOST_CARD = 70.0, 100.0
LEAST_SHEET = Size(LEAST_CARD + 2 * BAND, 200.0)


@dataclass(frozen=True, slots=True)
class Page:
    """What one page shows, and the map from a place on its paper to where it is drawn."""

    size: Size
    nodes: Nodes
    correction: Affine


def calibration_pdf(workshop: Workshop, small_print: Font, is_corrected: bool, date: str | None = None) -> bytes:
    """The pages as they print. Raises ProblemsError where the sheet is too small for them."""
    title = " · ".join((_title(is_corrected), workshop.wish.size_name, workshop.studio.name))
    pages = (_sheet(page, workshop, title) for page in calibration_pages(workshop, small_print, is_corrected))
    return sheets_pdf(((sheet, (scene,)) for sheet, scene in pages), date=date)


def calibration_pages(workshop: Workshop, small_print: Font, is_corrected: bool) -> tuple[Page, ...]:
    """The page of scales, further ones where its readings find no room on it, and last the page-turn test."""
    upright = _upright(workshop)
    _refuse_small(upright, workshop)
    face = type_of(small_print)
    cross = cross_of(upright, workshop.studio.printer.margins)
    correction = _correction(workshop, upright, is_corrected)
    cells = quadrants(upright)
    narrow = cells[0].width < LEAST_CARD
    width = min(_column(upright) if narrow else cells[0].width, MOST_CARD)
    laid, left = dealt(_cards(workshop, cross, width, face, is_corrected), () if narrow else cells)
    fixed = (*edge_scales(upright, face), *draw_cross(cross, face))
    pages = [Page(upright, (*fixed, *laid), correction)]
    while left:
        laid, left = dealt(left, _columns(upright, width))
        pages.append(Page(upright, laid, correction))
    wide = upright.turned()
    turn = turn_page(wide, face, workshop.studio.printer.turn if is_corrected else None)
    return (*pages, Page(wide, turn, _correction(workshop, wide, is_corrected)))


def _upright(workshop: Workshop) -> Size:
    size = workshop.wish.size
    return size if size.width <= size.height else size.turned()


def _correction(workshop: Workshop, size: Size, is_corrected: bool) -> Affine:
    if not is_corrected:
        return Affine()
    return make_bed(replace(workshop.wish, size=size), workshop.studio).correction


def _title(is_corrected: bool) -> str:
    return "Calibration proof" if is_corrected else "Calibration"


def _cards(workshop: Workshop, cross: Cross, width: float, face: Type, is_corrected: bool) -> tuple[Card, ...]:
    intro = _intro(workshop, cross, width, face, is_corrected)
    if is_corrected:
        return (intro, margins_card(width, face, is_corrected=True))
    return (
        intro,
        stacked((scale_card(cross, width, face), offset_card(cross, width, face)), BETWEEN),
        stacked((margins_card(width, face, is_corrected=False), tints_card(width, face)), BETWEEN),
        lines_card(width, face),
    )


def _intro(workshop: Workshop, cross: Cross, width: float, face: Type, is_corrected: bool) -> Card:
    title = Card(TITLE * CAPS + 2.6, (words(_title(is_corrected), 0, TITLE * CAPS, face.strong, TITLE),))
    about = f"{workshop.wish.size_name} sheet, {workshop.studio.name}"
    told = _proving(workshop, cross) if is_corrected else _instructions()
    return stacked((title, paragraph(about, width, face), air(LEADING / 2), steps(told, width, face)))


def _instructions() -> tuple[str, ...]:
    return (
        "Print all pages at 100 % (actual size, no scaling), one-sided, on the paper of your pads.",
        "Take the sheets from the printer together, and leave them as they lie.",
        "Make the readings 1 to 6 with a steel ruler and write each number into its box.",
        "Copy the lines into studio.yaml, all under one key, printer:",
        "Prove it: padspec\u00a0calibrate\u00a0--corrected draws this page through your numbers. "
        "Its cross must measure true.",
    )


def _way(offset: float, forth: str, back: str) -> str:
    """An offset in words.

    >>> _way(-0.4, "down", "up")
    '0.4 mm up'
    """
    return f"{mm_text(abs(offset))} {back if offset < 0 else forth}"


def _proving(workshop: Workshop, cross: Cross) -> tuple[str, ...]:
    printer = workshop.studio.printer
    x, y = (mm_text(at) for at in cross.middle)
    return (
        f"This page is drawn through your numbers: scale {_percent(printer.scale[0])} across and "
        f"{_percent(printer.scale[1])} down, offset {_way(printer.offset[0], 'right', 'left')} and "
        f"{_way(printer.offset[1], 'down', 'up')}.",
        f"The cross must measure {mm_text(cross.across)} across and {mm_text(cross.down)} down.",
        f"Its middle must lie {x} from the left edge of the paper and {y} from the top edge.",
        "More than half a millimetre off? Print padspec calibrate again, and make readings 1 and 2 anew.",
    )


def _percent(share: float) -> str:
    return f"{share * 100:.10g} %"


def _column(size: Size) -> float:
    return size.width - 2 * BAND


def _columns(size: Size, width: float) -> tuple[Box, ...]:
    """The cells of a page without a cross: as many columns as go side by side."""
    n = max(int((_column(size) + 2 * BESIDE) // (width + 2 * BESIDE)), 1)
    height = size.height - 2 * BAND
    return tuple(Box(BAND + i * (width + 2 * BESIDE), BAND, width, height) for i in range(n))


def _sheet(page: Page, workshop: Workshop, title: str) -> tuple[Sheet, Scene]:
    """The page as one slot that is as large as the paper."""
    size = page.size
    paper = Box(0, 0, size.width, size.height)
    sheet = Sheet(
        size=size,
        size_name=workshop.wish.size_name,
        title=title,
        arrangement=Grid(1, 1, size, turned=False),
        cuts=0,
        gutter=0.0,
        slots=(Slot(paper, (paper,), Sides.all(0.0), (), Affine(), turned=False),),
        printable=paper,
        marks=(),
        left_out=(),
        copies=1,
        correction=page.correction,
    )
    return sheet, Scene(size, 0.0, (Layer("lettering", page.nodes),))


def _refuse_small(size: Size, workshop: Workshop) -> None:
    least = LEAST_SHEET
    if size.width < least.width or size.height < least.height:
        message = (
            f"A sheet of {mm_text(size.width)} × {mm_text(size.height)} is too small for the calibration page."
        )
        mend = (
            f"It takes {mm_text(least.width)} × {mm_text(least.height)} or more: calibrate with sheet: "
            "{size: A4}, or the largest sheet that your printer takes, and set the size back afterwards."
        )
        raise ProblemsError(Problem(Place(workshop.file, 0, 0), message, mend))
