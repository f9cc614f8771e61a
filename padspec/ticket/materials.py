"""A batch in, what to fetch for it out: everything whole, since nobody fetches a third of a board."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil

from padspec.base.geometry import Size
from padspec.base.numbers import EPSILON, mm_text, number_text
from padspec.batch.batch import Batch

#: Grams of adhesive that stay on brush and pot (common practice, no published source).
_ON_THE_BRUSH = 5.0


@dataclass(frozen=True, slots=True)
class Material:
    """One thing to fetch: how many of what, and what for."""

    number: int
    unit: str
    what: str
    use: str


def materials_of(batch: Batch) -> tuple[Material, ...]:
    """Everything, in the order of the work."""
    return (
        *_paper(batch),
        *_boards(batch),
        *_adhesive(batch),
        *_magnets(batch),
        *_sleeves(batch),
        *_extras(batch),
    )


def _paper(batch: Batch) -> Iterator[Material]:
    sheets: dict[str, int] = {}
    for page in batch.plan.pages:
        sheets[page.sheet.size_name] = sheets.get(page.sheet.size_name, 0) + page.sheet.copies
    stock = batch.lots[0].design.studio.stock
    for name, number in sheets.items():
        pages = sum(page.sheet.size_name == name for page in batch.plan.pages)
        use = f"{pages} page{'s' if pages > 1 else ''}, test sheets and overs in it"
        yield Material(number, "sheets", f"{name} paper of {number_text(stock.grammage, 1)} g/m²", use)


def _boards(batch: Batch) -> Iterator[Material]:
    board, boards = batch.lots[0].design.studio.bench.board, batch.boards
    if boards is None or not boards.sheets:
        return
    what = f"board, {mm_text(board.thickness)} thick, {_size(board.sheet)}"
    use = "backs: " + ", ".join(f"{size.wanted} of {_size(size.trim)}" for size in boards.sizes)
    yield Material(boards.sheets, "big sheet" if boards.sheets == 1 else "big sheets", what, use)


def _adhesive(batch: Batch) -> Iterator[Material]:
    grams = sum(lot.gluing.grams * lot.pads for lot in batch.lots)
    coats = batch.lots[0].design.studio.bench.adhesive.coats
    use = f"{'1 coat' if coats == 1 else f'{coats} coats'} on {batch.pads} pads"
    use += f", {number_text(_ON_THE_BRUSH)} g for the brush in it"
    yield Material(ceil(grams + _ON_THE_BRUSH - EPSILON), "g", "padding adhesive (an estimate)", use)


def _magnets(batch: Batch) -> Iterator[Material]:
    number = sum(lot.pads * lot.design.finish.magnets for lot in batch.lots)
    if number:
        magnets = batch.lots[0].design.studio.bench.magnets
        what = f"flexible magnets, {_size(magnets.size)}, {mm_text(magnets.thickness)} thick"
        each = dict.fromkeys(str(lot.design.finish.magnets) for lot in batch.lots if lot.design.finish.magnets)
        yield Material(number, "pieces", what, f"{' or '.join(each)} on a pad")


def _sleeves(batch: Batch) -> Iterator[Material]:
    numbers: dict[str, int] = {}
    sizes: dict[str, Size] = {}
    for lot in batch.lots:
        if lot.sleeve is not None:
            name = lot.sleeve.sleeve.name
            numbers[name] = numbers.get(name, 0) + lot.pads
            sizes[name] = lot.sleeve.sleeve.size
    for name, number in numbers.items():
        yield Material(number, "sleeves", f"{name}, {_size(sizes[name])}", "one a pad")


def _extras(batch: Batch) -> Iterator[Material]:
    for extra in batch.lots[0].design.studio.bench.extras:
        yield Material(batch.pads, "×", extra.name, "one a pad")


def _size(size: Size) -> str:
    return f"{number_text(size.width, 1)} × {mm_text(size.height, 1)}"
