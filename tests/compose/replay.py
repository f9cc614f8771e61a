"""Outlines of ours sent through the pens of fontTools, so that another program measures them."""

from fontTools.pens.areaPen import AreaPen
from fontTools.pens.basePen import AbstractPen
from fontTools.pens.boundsPen import BoundsPen

from padspec.scene.outline import Close, Curve, Line, Move, Outline


def replay(outline: Outline, pen: AbstractPen) -> None:
    """Draw an outline of closed parts into a pen."""
    for step in outline:
        match step:
            case Move(x, y):
                pen.moveTo((x, y))
            case Line(x, y):
                pen.lineTo((x, y))
            case Curve(x1, y1, x2, y2, x, y):
                pen.curveTo((x1, y1), (x2, y2), (x, y))
            case Close():
                pen.closePath()


def true_bounds(outline: Outline) -> tuple[float, float, float, float]:
    """Left, top, right and bottom of the ink itself, handles left aside."""
    pen = BoundsPen(None)
    replay(outline, pen)
    return pen.bounds


def true_area(outline: Outline) -> float:
    """The area inside, whichever way round the outline runs."""
    pen = AreaPen(None)
    replay(outline, pen)
    return abs(pen.value)
