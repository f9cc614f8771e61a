"""Plane geometry in millimetres: origin top left, y grows downwards, until an emitter converts."""

from dataclasses import dataclass
from math import sqrt

#: A raster of the checks or a proof has no more pixels than this, so that a large sheet costs no gigabytes.
MOST_PIXELS = 40_000_000


@dataclass(frozen=True, slots=True)
class Size:
    """Width and height."""

    width: float
    height: float

    def turned(self) -> "Size":
        """The same size on its side."""
        return Size(self.height, self.width)


def bounded_ppi(size: Size, ppi: float) -> float:
    """The resolution wished for, or as much of it as keeps a raster of this size in mm to forty megapixels.

    >>> bounded_ppi(Size(210, 297), 300), round(bounded_ppi(Size(1000, 1000), 300))
    (300, 161)
    """
    pixels = size.width * size.height * (ppi / 25.4) ** 2
    return ppi if pixels <= MOST_PIXELS else ppi * sqrt(MOST_PIXELS / pixels)


@dataclass(frozen=True, slots=True)
class Sides:
    """A distance for each of the four sides, such as printer margins or the bleed of one slot."""

    left: float
    top: float
    right: float
    bottom: float

    @classmethod
    def all(cls, distance: float) -> "Sides":
        """The same distance on every side."""
        return cls(distance, distance, distance, distance)

    def least(self) -> float:
        """The smallest of the four."""
        return min(self.left, self.top, self.right, self.bottom)


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle by its top left corner and its size.

    >>> Box(0, 0, 90, 190).inset(6).bottom
    184
    """

    x: float
    y: float
    width: float
    height: float

    @property
    def right(self) -> float:
        """The x of the right edge."""
        return self.x + self.width

    @property
    def bottom(self) -> float:
        """The y of the lower edge."""
        return self.y + self.height

    @property
    def centre(self) -> tuple[float, float]:
        """The middle point."""
        return self.x + self.width / 2, self.y + self.height / 2

    @property
    def size(self) -> Size:
        """Its width and height."""
        return Size(self.width, self.height)

    def inset(self, distance: float) -> "Box":
        """Smaller (or, with a negative distance, larger) by the distance on every side."""
        return self.shrink(Sides.all(distance))

    def shrink(self, sides: Sides) -> "Box":
        """Smaller by a distance of its own on each side."""
        return Box(
            self.x + sides.left,
            self.y + sides.top,
            self.width - sides.left - sides.right,
            self.height - sides.top - sides.bottom,
        )

    def moved(self, dx: float, dy: float) -> "Box":
        """The same box elsewhere."""
        return Box(self.x + dx, self.y + dy, self.width, self.height)

    def covers(self, other: "Box", slack: float = 1e-9) -> bool:
        """Whether `other` lies wholly inside, edges included."""
        return (
            other.x >= self.x - slack
            and other.y >= self.y - slack
            and other.right <= self.right + slack
            and other.bottom <= self.bottom + slack
        )

    def overlaps(self, other: "Box", slack: float = 1e-9) -> bool:
        """Whether the two share more than an edge."""
        return (
            min(self.right, other.right) - max(self.x, other.x) > slack
            and min(self.bottom, other.bottom) - max(self.y, other.y) > slack
        )

    def within(self, other: "Box") -> "Box":
        """What of it lies inside another.

        >>> Box(-1, 2, 5, 5).within(Box(0, 0, 10, 6))
        Box(x=0, y=2, width=4, height=4)
        """
        x, y = max(self.x, other.x), max(self.y, other.y)
        return Box(x, y, min(self.right, other.right) - x, min(self.bottom, other.bottom) - y)

    def joined(self, other: "Box") -> "Box":
        """The smallest box around both."""
        x, y = min(self.x, other.x), min(self.y, other.y)
        return Box(x, y, max(self.right, other.right) - x, max(self.bottom, other.bottom) - y)


@dataclass(frozen=True, slots=True)
class Affine:
    """A map of the plane: x' = a x + c y + e, y' = b x + d y + f (the order of SVG and PDF matrices).

    >>> Affine.move(10, 20).of(1, 2)
    (11.0, 22.0)
    """

    a: float = 1.0
    b: float = 0.0
    c: float = 0.0
    d: float = 1.0
    e: float = 0.0
    f: float = 0.0

    @classmethod
    def move(cls, dx: float, dy: float) -> "Affine":
        """A shift."""
        return cls(e=dx, f=dy)

    @classmethod
    def scale(cls, factor: float) -> "Affine":
        """A scaling about the origin."""
        return cls(a=factor, d=factor)

    @classmethod
    def quarter_turn(cls, height: float) -> "Affine":
        """A quarter turn clockwise that lands a box of this height, from the origin, at the origin again."""
        return cls(a=0.0, b=1.0, c=-1.0, d=0.0, e=height, f=0.0)

    def then(self, after: "Affine") -> "Affine":
        """This map, followed by another."""
        return Affine(
            after.a * self.a + after.c * self.b,
            after.b * self.a + after.d * self.b,
            after.a * self.c + after.c * self.d,
            after.b * self.c + after.d * self.d,
            after.a * self.e + after.c * self.f + after.e,
            after.b * self.e + after.d * self.f + after.f,
        )

    def of(self, x: float, y: float) -> tuple[float, float]:
        """Where a point lands."""
        return self.a * x + self.c * y + self.e, self.b * x + self.d * y + self.f


def mapped_box(box: Box, by: Affine) -> Box:
    """The box around a box after a map.

    >>> mapped_box(Box(1, 2, 3, 4), Affine.quarter_turn(10))
    Box(x=4.0, y=1.0, width=4.0, height=3.0)
    """
    corners = [by.of(x, y) for x in (box.x, box.right) for y in (box.y, box.bottom)]
    xs, ys = [x for x, _ in corners], [y for _, y in corners]
    return Box(min(xs), min(ys), max(xs) - min(xs), max(ys) - min(ys))
