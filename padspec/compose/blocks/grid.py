"""A grid: whole squares, centred in their room; lines, dots or crosses."""

from dataclasses import dataclass
from math import floor

from padspec.base.geometry import Box
from padspec.base.numbers import EPSILON
from padspec.compose.face import Drawn, Placement, Room
from padspec.resolve.blocks.grid import Grid
from padspec.scene.nodes import Cause, LayerName, Node, Shape, Stroke
from padspec.scene.outline import Outline, circle, line


@dataclass(frozen=True, slots=True)
class Lattice:
    """How many squares lie across and down, and where the first corner is."""

    across: int
    down: int
    x: float
    y: float


def need(block: Grid, margin: float) -> float:
    """One square at least; the rest is what is left."""
    return side(block, 1) + margin


def draw(block: Grid, room: Room, margin: float) -> Drawn:
    """The grid; nothing where not one square has room."""
    box = Box(room.box.x + margin, room.box.y, room.box.width - 2 * margin, max(room.box.height - margin, 0.0))
    lattice = lattice_in(block, box)
    short = max(side(block, 1) - box.height, 0.0) if not lattice.down else 0.0
    placement = Placement(block.id, box, rows=lattice.down, pitch=block.pitch, short_by=short)
    if not (lattice.across and lattice.down):
        return Drawn(placements=(placement,))
    return Drawn(_nodes(block, lattice), (placement,))


def side(block: Grid, squares: int) -> float:
    """How long so many squares are with their ink."""
    return squares * block.pitch + _ink(block)


def lattice_in(block: Grid, box: Box) -> Lattice:
    """As many whole squares as fit with their ink, centred in the box."""
    ink = _ink(block)
    across = max(floor((box.width - ink) / block.pitch + EPSILON), 0)
    down = max(floor((box.height - ink) / block.pitch + EPSILON), 0)
    x = box.x + (box.width - across * block.pitch) / 2
    y = box.y + (box.height - down * block.pitch) / 2
    return Lattice(across, down, x, y)


def _ink(block: Grid) -> float:
    """How much wider than its squares a grid is: half a line, dot or cross on either side."""
    match block.mark:
        case "dots":
            return block.dot
        case "crosses":
            return max(block.dot, block.weight)
        case "lines":
            return 2 * block.weight if block.heavy_every else block.weight


def _nodes(block: Grid, lattice: Lattice) -> tuple[tuple[LayerName, Node], ...]:
    if block.mark == "dots":
        dots = tuple(step for x, y in _corners(block, lattice) for step in circle(x, y, block.dot / 2))
        return (("rules", Shape(dots, Cause(block.id, "rule"), fill=block.colour)),)
    if block.mark == "crosses":
        arm = block.dot / 2
        crosses = tuple(
            step
            for x, y in _corners(block, lattice)
            for step in (*line(x - arm, y, x + arm, y), *line(x, y - arm, x, y + arm))
        )
        return (("rules", _stroked(block, crosses, block.weight)),)
    return _lines(block, lattice)


def _corners(block: Grid, lattice: Lattice) -> list[tuple[float, float]]:
    return [
        (lattice.x + column * block.pitch, lattice.y + row * block.pitch)
        for row in range(lattice.down + 1)
        for column in range(lattice.across + 1)
    ]


def _lines(block: Grid, lattice: Lattice) -> tuple[tuple[LayerName, Node], ...]:
    """Light lines as one shape, heavy ones as another over it. All reach to the outer edge of the outer lines,
    so that the corners of the grid are square.
    """
    left, head = lattice.x - _half(block, 0), lattice.y - _half(block, 0)
    right = lattice.x + lattice.across * block.pitch + _half(block, lattice.across)
    foot = lattice.y + lattice.down * block.pitch + _half(block, lattice.down)
    light: list[Outline] = []
    heavy: list[Outline] = []
    for n in range(lattice.across + 1):
        x = lattice.x + n * block.pitch
        (heavy if _is_heavy(block, n) else light).append(line(x, head, x, foot))
    for n in range(lattice.down + 1):
        y = lattice.y + n * block.pitch
        (heavy if _is_heavy(block, n) else light).append(line(left, y, right, y))
    shapes = ((light, block.weight), (heavy, 2 * block.weight))
    return tuple(
        ("rules", _stroked(block, tuple(step for outline in some for step in outline), weight))
        for some, weight in shapes
        if some
    )


def _half(block: Grid, n: int) -> float:
    return block.weight if _is_heavy(block, n) else block.weight / 2


def _is_heavy(block: Grid, n: int) -> bool:
    return bool(block.heavy_every) and n % block.heavy_every == 0


def _stroked(block: Grid, outline: Outline, weight: float) -> Shape:
    return Shape(outline, Cause(block.id, "rule"), stroke=Stroke(block.colour, weight))
