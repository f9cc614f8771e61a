"""The line around letters: an outline in, the same outline cut at its corners out.

A stroke runs out to a spike at a sharp corner. Cut there and given round ends, its parts meet in a round corner,
and the line around a letter follows the letter.
"""

from math import atan2, pi

from padspec.scene.outline import Close, Curve, Line, Move, Outline, Step

#: Points no further apart, in mm or ems, are one.
_SAME = 1e-9
#: A turn less than this, in radians, needs no rounding: its spike is no longer than a hundredth of the stroke.
_SMOOTH = 0.28

_Point = tuple[float, float]
#: A stretch of a part: where it begins, and the step that leads on.
_Stretch = tuple[_Point, Line | Curve]


def with_round_corners(outline: Outline) -> Outline:
    """Closed parts opened at every sharp corner, so that round ends make the corners round."""
    return tuple(step for part in _parts(outline) for step in _opened(part))


def _parts(outline: Outline) -> list[list[_Stretch]]:
    """Each closed part as its stretches; the line that closes it is one, points that stand still are none."""
    parts: list[list[_Stretch]] = []
    at = start = (0.0, 0.0)
    for step in outline:
        match step:
            case Move(x, y):
                at = start = (x, y)
                parts.append([])
            case Line(x, y) | Curve(x=x, y=y):
                if any(_apart(point, at) for point in _handles(step)):
                    parts[-1].append((at, step))
                at = (x, y)
            case Close():
                if _apart(at, start):
                    parts[-1].append((at, Line(*start)))
                at = start
    return [part for part in parts if part]


def _opened(part: list[_Stretch]) -> list[Step]:
    corners = [n for n in range(len(part)) if _is_corner(part[n - 1], part[n])]
    first = corners[0] if corners else 0
    found: list[Step] = []
    for k in range(len(part)):
        n = (first + k) % len(part)
        start, step = part[n]
        found += [Move(*start), step] if k == 0 or n in corners else [step]
    return found if corners else [*found, Close()]


def _is_corner(before: _Stretch, after: _Stretch) -> bool:
    turn = _direction(after, first=True) - _direction(before, first=False)
    return abs((turn + pi) % (2 * pi) - pi) > _SMOOTH


def _direction(stretch: _Stretch, first: bool) -> float:
    """Which way a stretch leaves its beginning or reaches its end; handles on that very point are passed over."""
    start, step = stretch
    points = [start, *_handles(step)]
    if not first:
        points.reverse()
    (x0, y0), (x, y) = points[0], next(p for p in points if _apart(p, points[0]))
    return atan2(y - y0, x - x0) if first else atan2(y0 - y, x0 - x)


def _apart(a: _Point, b: _Point) -> bool:
    return abs(a[0] - b[0]) > _SAME or abs(a[1] - b[1]) > _SAME


def _handles(step: Line | Curve) -> tuple[_Point, ...]:
    match step:
        case Line(x, y):
            return ((x, y),)
        case Curve(x1, y1, x2, y2, x, y):
            return ((x1, y1), (x2, y2), (x, y))
