"""Measures of ink: the true bounds of an outline, its area, and which marks hang past the edge of a text."""

from math import sqrt

from padspec.base.geometry import Box
from padspec.scene.outline import Close, Curve, Line, Move, Outline, bounds

#: How much of a mark hangs past the edge that a text is aligned to, so that the edge looks even (common practice,
#: no published source): quotes and points most, dashes by half.
_HANGING = dict.fromkeys("\"'‘’‚‛“”„‟«»‹›.,،۔।", 0.7) | dict.fromkeys("-‐‑–—־", 0.5)


def hangs(character: str) -> bool:
    """Whether a character is a mark that may hang past an edge."""
    return character in _HANGING


def hanging(character: str, outline: Outline) -> float:
    """How far a mark at the edge of a line hangs past it, in the outline's unit; 0 for letters."""
    share = _HANGING.get(character, 0.0)
    return share * bounds(outline).width if share and outline else 0.0


def true_bounds(outline: Outline) -> Box:
    """The box of the ink itself, found at the extremes of every curve rather than at its handles."""
    xs: list[float] = []
    ys: list[float] = []
    x0 = y0 = 0.0
    for step in outline:
        match step:
            case Curve(x1, y1, x2, y2, x, y):
                xs += (x, *_extremes(x0, x1, x2, x))
                ys += (y, *_extremes(y0, y1, y2, y))
            case Move(x, y) | Line(x, y):
                xs.append(x)
                ys.append(y)
            case Close():
                continue
        x0, y0 = x, y
    return Box(min(xs), min(ys), max(xs) - min(xs), max(ys) - min(ys))


def _extremes(p0: float, p1: float, p2: float, p3: float) -> tuple[float, ...]:
    """What a cubic comes to where its derivative is nought, between its ends."""
    if min(p0, p3) <= min(p1, p2) and max(p1, p2) <= max(p0, p3):
        return ()
    a, b, c = 3 * (p3 - p0) + 9 * (p1 - p2), 6 * (p0 - 2 * p1 + p2), 3 * (p1 - p0)
    if abs(a) < 1e-12:
        roots = [-c / b] if abs(b) > 1e-12 else []
    else:
        inside = b * b - 4 * a * c
        if inside < 0:
            return ()
        roots = [(-b + sqrt(inside)) / (2 * a), (-b - sqrt(inside)) / (2 * a)]
    return tuple(
        (1 - t) ** 3 * p0 + 3 * (1 - t) ** 2 * t * p1 + 3 * (1 - t) * t * t * p2 + t**3 * p3
        for t in roots
        if 0 < t < 1
    )


def area(outline: Outline) -> float:
    """The area that closed parts enclose, holes taken off (Green's theorem, exact for cubics)."""
    total = 0.0
    x0 = y0 = first_x = first_y = 0.0
    for step in outline:
        match step:
            case Move(x, y):
                first_x, first_y = x, y
            case Line(x, y):
                total += (x0 * y - x * y0) / 2
            case Curve(x1, y1, x2, y2, x, y):
                total += (
                    3
                    * (
                        (y - y0) * (x1 + x2)
                        - (x - x0) * (y1 + y2)
                        + y1 * (x0 - x2)
                        - x1 * (y0 - y2)
                        + y * (x2 + x0 / 3)
                        - x * (y2 + y0 / 3)
                    )
                    / 20
                )
            case Close():
                total += (x0 * first_y - first_x * y0) / 2
                x, y = first_x, first_y
        x0, y0 = x, y
    return abs(total)
