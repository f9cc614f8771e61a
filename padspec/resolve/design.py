"""What a resolved design is: every value typed, every length in millimetres, every colour a colour.

Nothing here is optional, relative, inherited or a name that must still be looked up; where `None`
stands it is a choice of the maker (no pattern, no checkbox), never a gap.
"""

from dataclasses import dataclass, replace

from padspec.base.colour import Colour
from padspec.base.findings import Severity
from padspec.base.geometry import Sides, Size
from padspec.base.place import Place
from padspec.resolve.blocks.block import Block, opened
from padspec.resolve.finish import Finish
from padspec.resolve.font import Font
from padspec.resolve.ground import Ground
from padspec.resolve.key import Key
from padspec.resolve.listing import Listing
from padspec.resolve.studio import Studio


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
    listing: Listing
    finish: Finish

    def key(self, block: str, name: str) -> Key:
        """Where a setting stands, or where it would be written, so that every finding has a place."""
        for key in self.keys:
            if key.block == block and key.name == name:
                return key
        return Key(block, name, self.place, (block, name))


def blocks(design: Design) -> tuple[Block, ...]:
    """Every block of the face, holders opened, head to foot."""
    return opened(design.face)


def with_sheet(design: Design, **changes: float | None) -> Design:
    """The design with other wishes for its sheet, for a check that tries what a remedy would do."""
    return replace(design, sheet=replace(design.sheet, **changes))  # type: ignore[arg-type]
