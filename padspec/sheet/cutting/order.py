"""Series in, numbered cuts out: which edge lies against the gauge, how far from it, in which order.

At a gauge (guillotine, lever trimmer) the part against it is the part that is kept: the first cut of either
direction is the far one, with the raw lay edge against the gauge, so that no narrow strip has to be clamped; the
edge that it makes is the one that every further cut of the direction is measured from, farthest first, so that
errors do not add up and the pile need not be turned. With a knife nothing is moved: each distance is from the
sheet's raw left edge or head. Common practice, no published source.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from padspec.base.geometry import Box
from padspec.resolve.studio import CutterKind
from padspec.scene.nodes import Shape
from padspec.scene.outline import bounds
from padspec.sheet.cutting.plan import TOUCH, Cut, Gauge
from padspec.sheet.cutting.series import Series, series_of
from padspec.sheet.sheet import Edge, Sheet

#: Marks stand on trim lines to the sixth place.
_ON_THE_LINE = 1e-5


@dataclass(frozen=True, slots=True)
class _Step:
    """One cut of a series: which of its places, what band comes off, and from where it is measured."""

    place: int
    band: int
    gauge: Gauge
    edge_at: float


def cuts_in_order(sheet: Sheet, kind: CutterKind) -> tuple[Cut, ...]:
    """Every cut of a sheet, numbered from one."""
    marks = _crop_marks(sheet)
    done: list[Cut] = []
    for series in series_of(sheet):
        in_place = kind == "knife"
        steps = _in_place(series) if in_place else _at_the_gauge(series, done)
        for step in steps:
            done.append(_cut(series, step, done, marks, in_place))
    return tuple(done)


def _in_place(series: Series) -> list[_Step]:
    """From the left or the head onwards, all from the raw edge there."""
    edge: Edge = "left" if series.upright else "head"
    last = len(series.places) - 1
    bands = [place + (place == last and series.bands[-1] == "") for place in range(last + 1)]
    return [_Step(place, band, Gauge(edge, None), 0.0) for place, band in enumerate(bands)]


def _at_the_gauge(series: Series, done: list[Cut]) -> list[_Step]:
    near, far = _edges(series, done)
    near_is_waste, far_is_waste = series.bands[0] == "", series.bands[-1] == ""
    last = len(series.places) - 1
    if near_is_waste and far_is_waste:
        made = Gauge(far.edge, len(done) + 1)
        rest = [_Step(place, place, made, series.places[last]) for place in range(last)]
        return [_Step(last, last + 1, near, series.near), *rest]
    if near_is_waste or (not far_is_waste and _age(far) < _age(near)):
        return [_Step(place, place, far, series.far) for place in range(last + 1)]
    return [_Step(place, place + 1, near, series.near) for place in range(last, -1, -1)]


def _age(gauge: Gauge) -> float:
    """The older a cut edge, the fewer errors lie between it and the print; a raw edge comes last."""
    return float("inf") if gauge.cut is None else gauge.cut


def _edges(series: Series, done: list[Cut]) -> tuple[Gauge, Gauge]:
    """The two edges of the piece that its cuts run along."""
    sides: tuple[Edge, Edge] = ("left", "right") if series.upright else ("head", "foot")
    return (
        Gauge(sides[0], _made_by(series, series.near, done)),
        Gauge(sides[1], _made_by(series, series.far, done)),
    )


def _made_by(series: Series, at: float, done: list[Cut]) -> int | None:
    low, high = series.span
    for cut in done:
        along = cut.start <= low + TOUCH and cut.end >= high - TOUCH
        if cut.upright == series.upright and along and abs(cut.at - at) <= TOUCH:
            return cut.number
    return None


def _cut(series: Series, step: _Step, done: list[Cut], marks: list[Box], in_place: bool) -> Cut:
    at, (start, end) = series.places[step.place], series.span
    before = done[-1] if done else None
    same = before is not None and before.piece == series.piece and before.gauge == step.gauge
    return Cut(
        number=len(done) + 1,
        upright=series.upright,
        at=at,
        start=start,
        end=end,
        piece=series.piece,
        gauge=step.gauge,
        distance=abs(at - step.edge_at),
        off=series.bands[step.band],
        off_box=_band(series, step.band),
        jog=not same and not in_place,
        marked=_is_marked(series.upright, at, start, end, marks, in_place),
    )


def _band(series: Series, band: int) -> Box:
    limits = (series.near, *series.places, series.far)
    low, high, box = limits[band], limits[band + 1], series.box
    if series.upright:
        return Box(low, box.y, high - low, box.height)
    return Box(box.x, low, box.width, high - low)


def _crop_marks(sheet: Sheet) -> list[Box]:
    return [
        bounds(node.outline) for node in sheet.marks if isinstance(node, Shape) and node.cause.part == "crop-mark"
    ]


def _is_marked(upright: bool, at: float, start: float, end: float, marks: list[Box], in_place: bool) -> bool:
    """Whether marks stand on the line at both ends: on what is under the blade, or, where all lies in place, on
    the sheet.
    """
    middle = (start + end) / 2
    stretches = list(_on_the_line(upright, at, marks))
    if not in_place:
        stretches = [(low, high) for low, high in stretches if low >= start - TOUCH and high <= end + TOUCH]
    return any(high < middle for _, high in stretches) and any(low > middle for low, _ in stretches)


def _on_the_line(upright: bool, at: float, marks: list[Box]) -> Iterator[tuple[float, float]]:
    """From where to where each mark on a line runs along it."""
    for box in marks:
        across, length = (box.x, box.height) if upright else (box.y, box.width)
        start = box.y if upright else box.x
        if length > 0 and abs(across - at) <= _ON_THE_LINE:
            yield start, start + length
