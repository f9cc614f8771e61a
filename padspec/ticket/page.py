"""A ticket in, the text of one HTML file out, all in itself: pictures, drawings and style, nothing to fetch."""

import base64
import re
from collections.abc import Sequence
from html import escape

from padspec.base.geometry import Size
from padspec.base.numbers import mm_text, number_text
from padspec.batch.batch import PadLot
from padspec.making.magnets import Hold
from padspec.schedule.wording import clock, duration, timeline_lines
from padspec.ticket.cut_cards import cut_cards
from padspec.ticket.lanes import lanes_svg
from padspec.ticket.setting import set_text
from padspec.ticket.steps import Step, Tick
from padspec.ticket.style import style
from padspec.ticket.ticket import Ticket
from padspec.ticket.type import face_rule

_POLICY = "default-src 'none'; img-src data:; font-src data:; style-src 'unsafe-inline'"
#: What of a page is no text to be set: its tags, pictures in them, and the outlines of drawings.
_LETTERS = re.compile(r"<[^>]*>")
_MOST_BOXES = 16
_BOX = '<span class="box"></span>'
_CARDS_ON_THE_FIRST = 2


def page_html(ticket: Ticket, faces: Sequence[bytes]) -> str:
    """The page; `faces` has the picture of each lot as a PNG file."""
    batch = ticket.found.batch
    studio, name = escape(batch.lots[0].design.studio.name), escape(batch.plan.name)
    cards = cut_cards(batch)
    # A batch of one design has room for its cuts beside what is fetched; more of them come behind the steps.
    on_the_first = len(cards) <= _CARDS_ON_THE_FIRST and len(batch.lots) == 1
    lots = "".join(_lot(lot, face) for lot, face in zip(batch.lots, faces, strict=True))
    body = f"""\
<header class="top"><div><p class="kind" dir="auto">{studio}, job ticket</p><h1 dir="auto">{name}</h1></div>
<div class="blank">wanted for<span></span>done by<span></span></div></header>
{_sums(ticket)}
<main>
<h2>Pads</h2>
<ul class="pads">{lots}</ul>
{_notes(ticket)}
<h2>Fetch</h2>
<table>{"".join(_material(ticket))}</table>
<h2>Time</h2>
{lanes_svg(ticket.found.timeline)}
<p class="note">{"<br>".join(set_text(line) for line in timeline_lines(ticket.found.timeline))}</p>
{_cuts(cards) if on_the_first else ""}
<h2 class="new-page">Steps</h2>
<ol class="steps">{"".join(_step(step) for step in ticket.steps)}</ol>
<div class="two">
<section><h2>A good pad</h2><dl>{_points(ticket.quality)}</dl></section>
<section><h2>Mind</h2><dl class="caution">{_cautions(ticket)}</dl></section>
</div>
{"" if on_the_first else _cuts(cards)}
</main>
<footer>Figures are worked out from studio.yaml and the designs; times are estimates. Product sheets, the
manuals of your tools and local rules come before anything printed here.</footer>
"""
    return f"""\
<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="{_POLICY}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>{name} – job ticket</title>
<style>
{face_rule(_LETTERS.sub("", body))}{style(_paper(ticket))}</style>
</head>
<body>
{body}</body>
</html>
"""


def _paper(ticket: Ticket) -> str:
    """Letter where the studio prints on inch paper, else A4."""
    usual = ticket.found.batch.lots[0].design.studio.sheet
    inches = [number_text(side / 25.4, 4) for side in (usual.width, usual.height)]
    return "letter" if any(inch in ("8.5", "11", "14", "17") for inch in inches) else "A4"


def _sums(ticket: Ticket) -> str:
    plan, timeline = ticket.found.batch.plan, ticket.found.timeline
    sums = (
        (f"{ticket.found.batch.pads}", "pads"),
        (f"{plan.sheets}", "sheets"),
        (f"{plan.strokes}", "strokes of the cutter"),
        (duration(timeline.hands), "by hand"),
        (duration(timeline.minutes), "until all is done"),
    )
    return f'<p class="sums">{"".join(f"<span><b>{many}</b> {of}</span>" for many, of in sums)}</p>'


def _lot(lot: PadLot, face: bytes) -> str:
    design, block = lot.design, lot.block
    wide = ' class="wide"' if design.trim.width > design.trim.height else ""
    data = base64.b64encode(face).decode("ascii")
    facts = [
        f"{design.leaves} leaves, {_by(design.trim)}",
        f"{number_text(block.thickness.value, 1)} ± {mm_text(block.thickness.error, 1)} thick",
        f"{number_text(block.weight.value, 0)} ± {number_text(block.weight.error, 0)} g",
        *([f"{lot.hold.count} magnets"] if lot.hold else []),
        *([f"sleeve {lot.sleeve.sleeve.name}"] if lot.sleeve else []),
    ]
    told = "".join(f"<p>{set_text(fact)}</p>" for fact in facts)
    return (
        f'<li><img src="data:image/png;base64,{data}" alt="Face of {escape(design.name)}"{wide}>'
        f'<div><p class="number">{lot.pads} ×</p><h3 dir="auto">{escape(design.name)}</h3>'
        f'<p class="sku">{escape(design.sku)}</p>{told}</div></li>'
    )


def _notes(ticket: Ticket) -> str:
    """What the figures say against the pads as they are planned."""
    batch = ticket.found.batch
    notes = [note for lot in batch.lots for note in _of_lot(lot)]
    for lot in batch.lots:
        room, high = lot.design.studio.bench.clamp.height, lot.block.stacked
        if high.value + high.error > room:
            notes.append(
                f"{lot.design.sku}: one pad is {mm_text(high.value, 0)} high, more than the clamp of "
                f"{mm_text(room)}."
            )
    for trim in batch.boards.misfits if batch.boards else ():
        board = _by(batch.lots[0].design.studio.bench.board.sheet)
        notes.append(f"No back of {_by(trim)} fits on a big sheet of {board}: look at board.sheet.")
    return "".join(f'<p class="note warn">{set_text(note)}</p>' for note in dict.fromkeys(notes))


def _of_lot(lot: PadLot) -> list[str]:
    found = []
    if lot.hold is not None and not lot.hold.holds:
        found.append(f"{lot.design.sku}: {slides(lot.hold)}")
    if lot.sleeve is not None and min(lot.sleeve.tightest.width, lot.sleeve.tightest.height) < 0:
        found.append(
            f"{lot.design.sku}: try one pad in the sleeve {lot.sleeve.sleeve.name} first, it may be too tight."
        )
    return found


def slides(hold: Hold) -> str:
    """Why magnets would let a pad slide, with what would hold it."""
    more = f"{hold.enough} would hold it" if hold.enough else "no number of them would"
    source = "as you measured" if hold.measured else "by usual figures; measure yours"
    return (
        f"{hold.count} magnets hold {number_text(hold.slide, 0)} g against sliding and "
        f"{number_text(hold.needed, 0)} g are wanted: {more} ({source})."
    )


def _material(ticket: Ticket) -> list[str]:
    return [
        f'<tr><td class="t"><span class="box"></span></td><td class="n">{one.number}</td>'
        f'<td class="u">{escape(one.unit)}</td><td>{set_text(one.what)}</td>'
        f'<td class="for">{set_text(one.use)}</td></tr>'
        for one in ticket.materials
    ]


def _step(step: Step) -> str:
    ticks = "".join(_tick(tick) for tick in step.ticks)
    return (
        f'<li><div><h3>{escape(step.title)}</h3><p class="time">{_time(step)}</p>'
        f'<p>{set_text(step.how)}</p><ul class="ticks">{ticks}</ul></div></li>'
    )


def _tick(tick: Tick) -> str:
    """Boxes before the words; where they would be too many, one box for five."""
    if tick.boxes <= _MOST_BOXES:
        return f"<li>{_BOX * tick.boxes}{set_text(tick.text)}</li>"
    text = f"{tick.text}: {tick.boxes} {tick.of}, one box for five".replace(" ,", ",")
    return f"<li>{_BOX * -(-tick.boxes // 5)}{escape(text)}</li>"


def _time(step: Step) -> str:
    parts = [
        *([f"{duration(step.by_hand)} by hand"] if step.by_hand else []),
        *([f"{duration(step.waiting)} by itself"] if step.waiting else []),
        f"from {clock(step.begins)}",
    ]
    return ", ".join(parts)


def _points(points: Sequence[tuple[str, str]]) -> str:
    return "".join(f"<dt>{escape(name)}</dt><dd>{set_text(text)}</dd>" for name, text in points)


def _cuts(cards: Sequence[str]) -> str:
    return f'<h2>Cuts</h2><div class="cards">{"".join(cards)}</div>'


def _cautions(ticket: Ticket) -> str:
    return _points([(one.about, one.text) for one in ticket.cautions])


def _by(size: Size) -> str:
    return f"{number_text(size.width, 1)} × {mm_text(size.height, 1)}"
