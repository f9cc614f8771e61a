"""A batch in, a card for each way to cut out: the drawing with its numbers, and the numbers in words."""

import re
from collections.abc import Sequence
from html import escape
from itertools import groupby

from padspec.base.geometry import Size
from padspec.base.numbers import mm_text, number_text
from padspec.batch.batch import Batch
from padspec.draw.cuts.diagram import cut_diagram_svg
from padspec.jobs.plan import PrintedPage
from padspec.making.boards import BoardLayout, Boards
from padspec.sheet.cutting.plan import Cut, CutPlan
from padspec.sheet.cutting.series import SHEET
from padspec.sheet.cutting.wording import cut_lines
from padspec.ticket.setting import set_text

#: Width of a drawing, in mm.
_DRAWING = 42.0
_LYING = "as it lies"
_FED = "as fed"
_NUMBERED = re.compile(r"\s*\d+  ")


def cut_cards(batch: Batch) -> list[str]:
    """First the printed pages, those that are cut alike on one card, then the boards."""
    ways: dict[tuple[str, ...], list[PrintedPage]] = {}
    for page in batch.plan.pages:
        ways.setdefault(cut_lines(page.cuts)[1:-1], []).append(page)
    cards = [_pages_card(pages, batch) for pages in ways.values()]
    if batch.boards is not None:
        cards += [_board_card(layout, batch.boards, batch) for layout in batch.boards.layouts]
    return cards


def _pages_card(pages: Sequence[PrintedPage], batch: Batch) -> str:
    first = pages[0]
    skus = dict.fromkeys(batch.plan.wanted[at].design.sku for page in pages for at in page.designs)
    numbers = ", ".join(str(page.number) for page in pages)
    title = f"Page{'s' if len(pages) > 1 else ''} {numbers}: {', '.join(skus)}"
    lines = [f"{_page_text(page)}, {page.cuts.lifts} × {page.cuts.sheets_a_lift} a lift." for page in pages]
    font = batch.plan.wanted[first.designs[0]].design.small_print
    return _card(title, lines, first.cuts, cut_diagram_svg(first.sheet, first.cuts, font, _DRAWING, _FED))


def _page_text(page: PrintedPage) -> str:
    return f"Page {page.number}: {page.sheets} sheets (and {page.test_sheets} tests)"


def _board_card(layout: BoardLayout, boards: Boards, batch: Batch) -> str:
    font = batch.lots[0].design.small_print
    drawing = cut_diagram_svg(layout.sheet, layout.cuts, font, _DRAWING, _LYING, "back")
    sizes = [(boards.sizes[item], number) for item, number in layout.gives]
    many = "1 big sheet" if layout.sheets == 1 else f"{layout.sheets} big sheets alike"
    lines = [f"{many}; each gives " + ", ".join(f"{number} of {_by(size.trim)}" for size, number in sizes) + "."]
    if len(sizes) == 1:
        size, _ = sizes[0]
        best = "no layout of straight cuts gives more" if size.each == size.bound else f"none over {size.bound}"
        left = number_text(size.waste * 100, 1)
        lines.append(f"{size.wanted} are wanted. Of a full sheet {left} % is left over; {best}.")
    else:
        least = f"; by area {boards.bound} at least" if boards.sheets > boards.bound else ""
        lines.append(f"For this batch {boards.sheets} in all{least}. Backs over are for the next one.")
    return _card("Board", lines, layout.cuts, drawing)


def _card(title: str, lines: Sequence[str], plan: CutPlan, drawing: str) -> str:
    told = cut_lines(plan)
    before = "".join(f"<p>{set_text(line)}</p>" for line in lines)
    after = "".join(f"<p>{set_text(line)}</p>" for line in told[:-1] if line.startswith("Left over"))
    cuts = (
        _runs(plan.cuts) if plan.kind == "knife" else "".join(_cut(line) for line in told if _NUMBERED.match(line))
    )
    svg = drawing[drawing.index("<svg") :]
    return (
        f'<section class="card"><h3>{escape(title)}</h3>{before}'
        f'<div class="drawn">{svg}<ol>{cuts}</ol></div>{after}</section>'
    )


def _cut(line: str) -> str:
    """A line of the plan: its columns stand two spaces apart."""
    number, way, measure, *remark = re.split(r"\s{2,}", line.strip())
    told = f" <i>{set_text(' '.join(remark))}</i>" if remark else ""
    return f"<li><b>{number}</b><span>{way}, {set_text(measure)}{told}</span></li>"


def _runs(cuts: Sequence[Cut]) -> str:
    """By knife nothing moves, so cuts of one direction from one edge make one line."""
    found = []
    for (way, piece, gauge), run in groupby(cuts, key=lambda cut: (cut.upright, cut.piece, cut.gauge)):
        some = list(run)
        numbers = f"{some[0].number}" if len(some) == 1 else f"{some[0].number}–{some[-1].number}"
        places = ", ".join(number_text(cut.distance, 2) for cut in some)
        of = "" if piece == SHEET else f"{piece}, "
        told = f"{of}{'upright' if way else 'level'}, from {gauge.name}: {places} mm"
        found.append(f'<li class="run"><b>{numbers}</b><span>{set_text(told)}</span></li>')
    return "".join(found)


def _by(size: Size) -> str:
    return f"{number_text(size.width, 1)} × {mm_text(size.height, 1)}"
