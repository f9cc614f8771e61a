"""What a resolved design is: every value typed, every length in millimetres, every colour a colour.

Nothing here is optional, relative, inherited or a name that must still be looked up; where `None`
stands it is a choice of the maker (no pattern, no checkbox), never a gap.
"""

from dataclasses import dataclass, replace
from typing import Literal

from padspec.base.colour import Colour
from padspec.base.findings import Severity
from padspec.base.geometry import Sides, Size
from padspec.base.place import Place
from padspec.resolve.studio import Studio
from padspec.scene.nodes import Raster, Vector

Align = Literal["left", "centre", "right"]


@dataclass(frozen=True, slots=True)
class Font:
    """A font file and the weight to set a variable font to (CSS numbers, 400 regular, 700 bold)."""

    name: str
    digest: str
    data: bytes
    weight: int


@dataclass(frozen=True, slots=True)
class CutoutRecord:
    """How the background of a picture was taken away, for the check that tells of it.

    `wish` is what the design asked for, `method` what was done; `border_spread` says how uneven the border
    was and `removed` which share of the picture went. `doubt` is what cannot be right about it: a `soft-edge` that
    fades over more than `doubt_reach` pixels along this share of it all (0 to 1), or an outline that `leaked` this
    share of what it encloses through gaps wider than that.
    """

    wish: Literal["auto", "even", "none"]
    method: Literal["transparency", "even", "none"]
    border_spread: float
    border_limit: float
    removed: float
    doubt: Literal["", "soft-edge", "leaked"] = ""
    doubt_share: float = 0.0
    doubt_reach: int = 0


@dataclass(frozen=True, slots=True)
class Art:
    """The picture at the size it is placed, `frame` the width of the band around it (0 for none), `corner` the
    radius of the picture's own corners. `source` is its visible size in pixels before it was brought down (0 × 0
    for vectors); `inset` the distance of it all from the edges of the face.
    """

    id: str
    grow: int
    file: str
    image: Raster | Vector
    width: float
    height: float
    overlap: float
    inset: float
    align: Align
    corner: float
    frame: float
    frame_colour: Colour
    source: tuple[int, int]
    cutout: CutoutRecord

    @property
    def ppi(self) -> float | None:
        """Pixels an inch of the maker's picture at the placed size; None for vectors."""
        return self.source[0] * 25.4 / self.width if self.source[0] else None


@dataclass(frozen=True, slots=True)
class Heading:
    """Lettering: wished size (em) and the least it may shrink to, at most `lines` lines."""

    id: str
    grow: int
    text: str
    font: Font
    size: float
    least_size: float
    lines: int
    colour: Colour
    align: Align
    space: float


@dataclass(frozen=True, slots=True)
class Panel:
    """A rounded box and the blocks it holds: `inset` from the face's edges, `pad` inside its own."""

    id: str
    grow: int
    colour: Colour
    corner: float
    inset: float
    pad: float
    holds: "tuple[Block, ...]"


@dataclass(frozen=True, slots=True)
class Rows:
    """Ruled rows. `checkbox` is the outer size of the square or None; `count` fixes how many rows."""

    id: str
    grow: int
    pitch: float
    count: int | None
    checkbox: float | None
    checkbox_corner: float
    checkbox_seat: Literal["rule", "centre"]
    checkbox_gap: float
    checkbox_colour: Colour
    colour: Colour
    weight: float
    ends: Literal["butt", "round"]


@dataclass(frozen=True, slots=True)
class Space:
    """Empty height; None takes its share of what is left."""

    id: str
    grow: int
    height: float | None


Block = Art | Heading | Panel | Rows | Space


@dataclass(frozen=True, slots=True)
class Pattern:
    """A pattern on the ground: `size` centre to centre, `mark` the share of it that is coloured."""

    kind: Literal["stripes", "dots"]
    colour: Colour
    size: float
    mark: float
    angle: float


@dataclass(frozen=True, slots=True)
class Ground:
    """The background of the face."""

    colour: Colour
    pattern: Pattern | None


@dataclass(frozen=True, slots=True)
class SheetWish:
    """The paper and how faces are to sit on it; `n_up` is None for as many as fit."""

    size_name: str
    size: Size
    n_up: int | None
    gutter: float
    bleed: float
    least_bleed: float
    marks: bool


@dataclass(frozen=True, slots=True)
class Limit:
    """A limit that the maker set for one level of one check, as text with its place."""

    check: str
    severity: Severity | None
    text: str
    place: Place


@dataclass(frozen=True, slots=True)
class Allowance:
    """A finding that the maker accepts, with the reason."""

    check: str
    reason: str
    place: Place


@dataclass(frozen=True, slots=True)
class Key:
    """Where a setting of a block stands in the files, and the path of keys that would set it."""

    block: str
    name: str
    place: Place
    path: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Design:
    """One design, ready to be composed."""

    name: str
    sku: str
    file: str
    place: Place
    trim: Size
    leaves: int
    date: str
    layout: str
    palette: tuple[tuple[str, Colour], ...]
    ground: Ground
    face: tuple[Block, ...]
    sheet: SheetWish
    studio: Studio
    safe: Sides
    small_print: Font
    limits: tuple[Limit, ...]
    allowances: tuple[Allowance, ...]
    keys: tuple[Key, ...]

    def key(self, block: str, name: str) -> Key:
        """Where a setting stands, or where it would be written, so that every finding has a place."""
        for key in self.keys:
            if key.block == block and key.name == name:
                return key
        return Key(block, name, self.place, (block, name))


def blocks(design: Design) -> tuple[Block, ...]:
    """Every block of the face, panels opened, head to foot."""
    found: list[Block] = []

    def walk(some: tuple[Block, ...]) -> None:
        for block in some:
            found.append(block)
            if isinstance(block, Panel):
                walk(block.holds)

    walk(design.face)
    return tuple(found)


def with_sheet(design: Design, **changes: float | None) -> Design:
    """The design with other wishes for its sheet, for a check that tries what a remedy would do."""
    return replace(design, sheet=replace(design.sheet, **changes))  # type: ignore[arg-type]
