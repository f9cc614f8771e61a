"""A time line in, its drawing out: a lane for hands, one for the printer and one for each clamp, over the hours.

An SVG of its own with letters as text, so that it is set in the face of the page that holds it.
"""

from html import escape

from padspec.schedule.task import Stage
from padspec.schedule.timeline import Placed, Timeline
from padspec.schedule.wording import clock, duration

WIDTH, _LEFT, _LANE, _GAP, _AXIS = 186.0, 17.0, 6.4, 1.6, 5.0
_FILLS: dict[Stage, str] = {
    "set up": "#c9d8d2",
    "print": "#dfe6e2",
    "cut leaves": "#d98a5b",
    "cut boards": "#e6b48f",
    "count off": "#f0d3b2",
    "clamp": "#8fb3a3",
    "coat": "#3f7263",
    "slit apart": "#c7a95c",
    "trim": "#c7a95c",
    "look over": "#e7dcb4",
    "magnets": "#b9a3c4",
    "sleeve": "#a9bcd6",
    "extras": "#c8d3e4",
}
_WHITE_ON = ("coat",)
#: A word finds room in a bar of this many millimetres for each letter.
_LETTER = 1.32


def lanes_svg(timeline: Timeline) -> str:
    """The drawing, `WIDTH` mm wide."""
    whole = max(timeline.minutes, 1.0)
    lanes = [
        ("Hands", [one for one in timeline.placed if one.task.by_hand]),
        ("Printer", [one for one in timeline.placed if one.task.stage == "print"]),
        *_clamps(timeline),
    ]
    shown = [(name, bars) for name, bars in lanes if bars]
    height = len(shown) * (_LANE + _GAP) + _AXIS
    body = [_hours(whole, len(shown) * (_LANE + _GAP))]
    for at, (name, bars) in enumerate(shown):
        y = at * (_LANE + _GAP)
        body.append(f'<text x="0" y="{_n(y + 4.3)}" class="lane">{name}</text>')
        body += [_bar(one, y, whole) for one in bars]
    label = escape(f"Time line of {duration(timeline.minutes)}: lanes for hands, printer and clamp.")
    return (
        f'<svg class="lanes" role="img" aria-label="{label}" viewBox="0 0 {_n(WIDTH)} {_n(height)}" '
        f'xmlns="http://www.w3.org/2000/svg">{"".join(body)}</svg>'
    )


def _clamps(timeline: Timeline) -> list[tuple[str, list[Placed]]]:
    """The loads, each in the first clamp that was free: from filling to opening, as one bar each."""
    loads: dict[int, tuple[Placed, Placed]] = {}
    for one in timeline.placed:
        if one.task.takes_clamp:
            loads[one.task.load] = (one, one)
        if one.task.load in loads and one.end >= loads[one.task.load][1].end and _in_clamp(one):
            loads[one.task.load] = (loads[one.task.load][0], one)
    lanes: list[list[Placed]] = []
    for number, (first, last) in sorted(loads.items(), key=lambda item: item[1][0].start):
        bar = Placed(first.task, first.start, last.end)
        lane = next((lane for lane in lanes if lane[-1].end <= bar.start + 1e-9), None)
        if lane is None:
            lanes.append([bar])
        else:
            lane.append(bar)
        assert bar.task.load == number
    return [("Clamp" if len(lanes) == 1 else f"Clamp {at}", lane) for at, lane in enumerate(lanes, 1)]


def _in_clamp(one: Placed) -> bool:
    return one.task.stage in ("clamp", "coat", "coat dries", "adhesive sets")


def _bar(one: Placed, y: float, whole: float) -> str:
    start, end = _x(one.start, whole), _x(one.end, whole)
    wide = max(end - start, 0.25)
    task = one.task
    text = (
        f"load {task.load}" if task.takes_clamp and one.end - one.start > task.minutes + 1e-9 else str(task.stage)
    )
    fill = _FILLS.get(task.stage, "#e5e1d8")
    told = escape(f"{task.stage}: {task.what}, {clock(one.start)} to {clock(one.end)}")
    bar = (
        f'<rect x="{_n(start)}" y="{_n(y)}" width="{_n(wide)}" height="{_n(_LANE)}" fill="{fill}" stroke="#fff" '
        f'stroke-width="0.2"><title>{told}</title></rect>'
    )
    if len(text) * _LETTER + 1.2 > wide:
        return bar
    colour = "#fff" if task.stage in _WHITE_ON else "#2b2a29"
    return f'{bar}<text x="{_n(start + 0.8)}" y="{_n(y + 4.2)}" class="bar" fill="{colour}">{text}</text>'


def _hours(whole: float, foot: float) -> str:
    """A tick at every round stretch, some eight of them."""
    step = next((step for step in (15, 30, 60, 120, 180, 240, 360, 720) if whole / step <= 9), 1440)
    marks = []
    at = 0
    while at <= whole + 1e-9:
        x = _n(_x(at, whole))
        marks.append(f'<line x1="{x}" y1="0" x2="{x}" y2="{_n(foot)}" stroke="#d9d4ca" stroke-width="0.15"/>')
        anchor = "start" if at == 0 else "middle"
        if _x(at, whole) < WIDTH - 3:
            marks.append(
                f'<text x="{x}" y="{_n(foot + 3.2)}" class="hour" text-anchor="{anchor}">{clock(at)}</text>'
            )
        at += step
    return "".join(marks)


def _x(minutes: float, whole: float) -> float:
    return _LEFT + minutes / whole * (WIDTH - _LEFT)


def _n(value: float) -> str:
    return f"{value:.2f}".rstrip("0").rstrip(".")
