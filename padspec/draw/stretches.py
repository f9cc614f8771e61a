"""Stretches of a cut, drawn over the proof of a sheet: what checks found there, never on the paper itself."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil
from typing import Literal

from padspec.base.geometry import Affine, Box, mapped_box
from padspec.draw.deflate import Pixels

Kind = Literal["blind", "telling-before", "telling-after"]

_RED, _AMBER, _CASING = (214, 28, 36), (255, 166, 0), (255, 255, 255)
#: Dashes along a blind stretch and the gaps between them, and how wide either line is, in mm.
_DASH, _GAP, _WIDE = 2.5, 1.5, 0.6
#: How far beside the cut a telling stretch is drawn, clear of a dashed line on it.
_ASIDE = 0.7


@dataclass(frozen=True, slots=True)
class CutStretches:
    """Stretches of one cut: upright at this x of the sheet from this y on, or across at this y from this x on.

    `spans` are in mm from its start. Blind ones are dashed red on the cut. Telling ones are amber beside it, in
    the strip that would show: `telling-before` left of it or above, `telling-after` right of it or below.
    """

    kind: Kind
    upright: bool
    at: float
    start: float
    spans: tuple[tuple[float, float], ...]


def with_stretches(
    pixels: Pixels, ppi: float, overlays: Sequence[CutStretches], correction: Affine = Affine()
) -> Pixels:
    """The pixels of a sheet with stretches over them; `correction` takes places of the sheet to where they are
    drawn. The same pixels where there are none.
    """
    if not overlays:
        return pixels
    marked = pixels.copy()
    bars = [(bar, overlay.kind) for overlay in overlays for bar in _bars(overlay)]
    casing = 25.4 / ppi
    for bar, _ in bars:
        _fill(marked, mapped_box(bar, correction).inset(-casing), ppi, _CASING)
    for bar, kind in bars:
        _fill(marked, mapped_box(bar, correction), ppi, _RED if kind == "blind" else _AMBER)
    return marked


def _bars(overlay: CutStretches) -> Iterator[Box]:
    for start, end in overlay.spans:
        match overlay.kind:
            case "blind":
                for dash in range(ceil((end - start) / (_DASH + _GAP))):
                    begin = start + dash * (_DASH + _GAP)
                    yield _bar(overlay, begin, min(begin + _DASH, end), -_WIDE / 2)
            case "telling-before":
                yield _bar(overlay, start, end, -_ASIDE - _WIDE)
            case "telling-after":
                yield _bar(overlay, start, end, _ASIDE)


def _bar(overlay: CutStretches, start: float, end: float, aside: float) -> Box:
    if overlay.upright:
        return Box(overlay.at + aside, overlay.start + start, _WIDE, end - start)
    return Box(overlay.start + start, overlay.at + aside, end - start, _WIDE)


def _fill(pixels: Pixels, box: Box, ppi: float, colour: tuple[int, int, int]) -> None:
    """Whole pixels, one each way at the least, so that lines of one width look equally wide."""
    scale = ppi / 25.4
    left, top = (max(round(edge * scale), 0) for edge in (box.x, box.y))
    width, height = (max(round(length * scale), 1) for length in (box.width, box.height))
    pixels[top : top + height, left : left + width] = colour
