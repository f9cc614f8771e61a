"""Lines of a design: set in its document as a maker would, and asked which of its blocks they reach."""

from collections.abc import Callable
from dataclasses import dataclass, replace

from padspec.base.colour import Colour
from padspec.base.numbers import EPSILON
from padspec.reading.gather import Documents
from padspec.reading.with_value import with_value
from padspec.resolve.blocks.block import Block
from padspec.resolve.blocks.panel import Panel
from padspec.resolve.blocks.rows import Rows
from padspec.resolve.design import Design, blocks
from padspec.resolve.resolve import resolve
from padspec.workspace import Workspace

#: Values that no design has, so that what takes them is known to be reached.
_PANEL, _RULE, _WEIGHT = Colour(2, 253, 5), Colour(3, 252, 7), 0.123


@dataclass(frozen=True, slots=True)
class SpecLine:
    """A path of keys and the value to write there, as text."""

    path: tuple[str, ...]
    value: str

    @property
    def text(self) -> str:
        """The line as it is written.

        >>> SpecLine(("blocks", "list", "colour"), "#7a3b58").text
        'blocks: {list: {colour: "#7a3b58"}}'
        """
        *above, last = self.path
        value = f'"{self.value}"' if self.value.startswith("#") else self.value
        return ": {".join((*above, f"{last}: {value}")) + "}" * len(above)


@dataclass(frozen=True, slots=True)
class Reach:
    """A key and the blocks that it sets, by id; `squares` are the rows whose squares take the rules' colour."""

    path: tuple[str, ...]
    blocks: frozenset[str]
    squares: frozenset[str]


@dataclass(frozen=True, slots=True)
class Reaches:
    """The keys that set the panel, the colour of the rules and their weight; None where a face has none."""

    panel: Reach | None
    rule: Reach | None
    weight: Reach | None


def first_panel(design: Design) -> Panel | None:
    """The panel nearest to the head."""
    return next((block for block in blocks(design) if isinstance(block, Panel)), None)


def first_rows(design: Design) -> Rows | None:
    """The rows nearest to the head."""
    return next((block for block in blocks(design) if isinstance(block, Rows)), None)


def reaches(documents: Documents, design: Design, workspace: Workspace) -> Reaches:
    """Which keys set the first panel and the first rows of a design: found by setting them.

    The key of a whole kind of block is taken where it reaches the block, else the block's own.
    """
    panel, rows = first_panel(design), first_rows(design)

    def probed(panel_at: tuple[str, ...], rows_at: tuple[str, ...]) -> Reaches:
        taken = blocks(resolve(_with_lines(documents, _probe(panel, panel_at, rows, rows_at)), workspace))
        return Reaches(
            _reach((*panel_at, "colour"), panel, taken, lambda b: isinstance(b, Panel) and b.colour == _PANEL),
            _reach((*rows_at, "colour"), rows, taken, lambda b: isinstance(b, Rows) and b.colour == _RULE),
            _reach((*rows_at, "weight"), rows, taken, _has_probed_weight),
        )

    found = probed(("panel",), ("rows",))
    if (panel and not found.panel) or (rows and not (found.rule and found.weight)):
        own = probed(("blocks", panel.id if panel else ""), ("blocks", rows.id if rows else ""))
        return Reaches(found.panel or own.panel, found.rule or own.rule, found.weight or own.weight)
    return found


def _probe(
    panel: Panel | None, panel_at: tuple[str, ...], rows: Rows | None, rows_at: tuple[str, ...]
) -> tuple[SpecLine, ...]:
    of_panel = (SpecLine((*panel_at, "colour"), _PANEL.hex),) if panel else ()
    of_rows = (SpecLine((*rows_at, "colour"), _RULE.hex), SpecLine((*rows_at, "weight"), f"{_WEIGHT} mm"))
    return of_panel + (of_rows if rows else ())


def _reach(
    path: tuple[str, ...], block: Block | None, taken: tuple[Block, ...], took: Callable[[Block], bool]
) -> Reach | None:
    reached = frozenset(other.id for other in taken if took(other))
    if block is None or block.id not in reached:
        return None
    squares = (
        other.id for other in taken if isinstance(other, Rows) and other.squares and other.squares.colour == _RULE
    )
    return Reach(path, reached, frozenset(squares))


def _has_probed_weight(block: Block) -> bool:
    return isinstance(block, Rows) and abs(block.weight - _WEIGHT) < EPSILON


def _with_lines(documents: Documents, lines: tuple[SpecLine, ...]) -> Documents:
    root = documents.design.root
    for line in lines:
        root = with_value(root, line.path, line.value)
    return replace(documents, design=replace(documents.design, root=root))
