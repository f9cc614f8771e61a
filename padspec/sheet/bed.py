"""The paper under the print: its size as the page is drawn, what the printer reaches, how it moves the print."""

from dataclasses import dataclass

from padspec.base.geometry import Affine, Box, Sides, Size
from padspec.resolve.design import Design, SheetWish
from padspec.resolve.studio import Studio


@dataclass(frozen=True, slots=True)
class Bed:
    """A page: its size, the margins that the printer cannot reach, and the `correction` that takes a place on the
    paper to the place where it must be drawn.
    """

    size: Size
    margins: Sides
    correction: Affine

    @property
    def printable(self) -> Box:
        """What the printer reaches."""
        return Box(0, 0, self.size.width, self.size.height).shrink(self.margins)


def bed_of(design: Design) -> Bed:
    """The page of a design."""
    return make_bed(design.sheet, design.studio)


def make_bed(wish: SheetWish, studio: Studio) -> Bed:
    """The page of a sheet.

    The studio states margins, offset and scale for the sheet upright as it is fed. A page wider than high is
    turned on its way to the printer: left or right as the page-turn test showed (`printer.turn`). Unknown, the
    larger margin of each pair holds on both sides, and no offset is corrected: it might go the wrong way.
    """
    printer = studio.printer
    size, margins = wish.size, printer.margins
    if size.width <= size.height:
        return Bed(size, margins, _correction(size, printer.offset, printer.scale))
    scale = (printer.scale[1], printer.scale[0])
    right, down = printer.offset
    m = margins
    match printer.turn:
        case "left":  # the head of the page lies on the left of the sheet as fed
            turned, offset = Sides(m.bottom, m.left, m.top, m.right), (-down, right)
        case "right":
            turned, offset = Sides(m.top, m.right, m.bottom, m.left), (down, -right)
        case _:
            upright, across = max(m.top, m.bottom), max(m.left, m.right)
            turned, offset = Sides(upright, across, upright, across), (0.0, 0.0)
    return Bed(size, turned, _correction(size, offset, scale))


def _correction(size: Size, offset: tuple[float, float], scale: tuple[float, float]) -> Affine:
    """What undoes paper = centre + offset + scale × (drawn − centre): the print's own shift and stretch.

    >>> _correction(Size(200, 300), (1.0, -0.5), (1.0, 1.0)).of(100, 150)
    (99.0, 150.5)
    >>> _correction(Size(200, 300), (0.0, 0.0), (0.99, 1.0)).of(1, 150)
    (0.0, 150.0)
    """
    x, y = size.width / 2, size.height / 2
    about = Affine.move(-x - offset[0], -y - offset[1])
    return about.then(Affine(1 / scale[0], 0, 0, 1 / scale[1], 0, 0)).then(Affine.move(x, y))
