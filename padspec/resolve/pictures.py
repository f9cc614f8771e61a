"""The maker's picture: read, cut out, trimmed, brought down to what the paper can show, and sampled.

In goes the file and the room it may take; out comes the picture as it is placed, with what was done to it.
"""

from dataclasses import dataclass, replace
from functools import lru_cache
from math import sqrt
from pathlib import PurePosixPath
from typing import Literal

from padspec.art.cutting.backdrop import EVEN_LIMIT
from padspec.art.cutting.cutout import Cutout, cut_out
from padspec.art.errors import ArtError
from padspec.art.palette import Cluster, lead_hue, sample
from padspec.art.pixels import Pixels
from padspec.art.raster.decode import sniff
from padspec.art.raster.once import decoded
from padspec.art.resample import as_raster, bring_down
from padspec.art.svg.drawing import check_svg, draw_svg, svg_size
from padspec.art.trim import trim_empty
from padspec.scene.nodes import Raster, Vector

Mode = Literal["auto", "even", "none"]

#: A picture is brought down to this many pixels an inch at the placed size: more than paper shows.
MOST_PPI = 450
#: A drawing that covers a whole face is large and soft enough in print at what art-resolution asks for.
COVERING_PPI = 300
#: A larger picture is brought down to so many pixels before it is cut out: all of A4 at 450 pixels an inch has
#: twenty million. What it then has is what `source` counts.
MOST_WORKED = 24_000_000
#: The frame that a picture gets which fills its rectangle, in mm, and the radius of its corners.
FRAME = 1.8
CORNER = 3.0
_OPAQUE = 250
#: A first look at an SVG, to find where its drawing really lies.
_GLANCE = 800
#: A picture must lead this share of the coloured area for its hue to be called leading.
_LEAST_LEAD = 0.02


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
class PictureWish:
    """What a design asks of a picture: the room it may take in mm, how its background is treated, and its frame
    (None: one for a picture that fills its rectangle, none for any other). Where it `covers` its room, it is as
    large as leaves no part of that bare, and reaches past it one way.
    """

    file: str
    most_width: float
    most_height: float
    cutout: Mode
    trim_empty: bool
    keep_vector: bool
    frame: float | None
    covers: bool = False


@dataclass(frozen=True, slots=True)
class PlacedPicture:
    """A picture at its placed size in mm, the frame around it not counted.

    `source` is its size in pixels before it was brought down, `fills` whether it is opaque into all its corners.
    """

    image: Raster | Vector
    width: float
    height: float
    frame: float
    fills: bool
    source: tuple[int, int]
    cutout: CutoutRecord


# Remedies, colourways and grounds look at the same picture again; brought down, one has a few million bytes.
@lru_cache(maxsize=8)
def prepare(data: bytes, wish: PictureWish) -> PlacedPicture:
    """The picture as it will be placed; raises ArtError where it cannot be read."""
    name = _tidy_stem(wish.file)
    if sniff(data) != "svg" and wish.keep_vector:
        raise ArtError(
            f"{wish.file} is made of pixels, and keep-vector is for drawings in SVG.", "Leave keep-vector out."
        )
    if sniff(data) == "svg":
        check_svg(data, wish.file)
        return _vector(data, name, wish) if wish.keep_vector else _drawn(data, name, wish)
    pixels, record = _visible(data, wish)
    fills = _fills_rectangle(pixels)
    frame = _frame(wish, fills)
    width, height = fitted(pixels.width, pixels.height, wish, frame)
    target = (_pixels(width), _pixels(height))
    raster = as_raster(bring_down(pixels, *target), name)
    return PlacedPicture(raster, width, height, frame, fills, (pixels.width, pixels.height), record)


@lru_cache(maxsize=16)
def colours(data: bytes, file: str, cutout: Mode) -> tuple[Cluster, ...]:
    """The palette of the visible picture, by area."""
    return sample(_for_colours(data, file, cutout))


@lru_cache(maxsize=16)
def leading_hue(data: bytes, file: str, cutout: Mode) -> float | None:
    """The hue that leads the visible picture, in degrees; None where no hue does."""
    found = lead_hue(_for_colours(data, file, cutout))
    return found[0] if found is not None and found[1] >= _LEAST_LEAD else None


def fitted(width: float, height: float, wish: PictureWish, frame: float) -> tuple[float, float]:
    """The size in mm of this aspect that fits, or covers, what the wish allows less the frame."""
    across, upright = max(wish.most_width - 2 * frame, 1.0), max(wish.most_height - 2 * frame, 1.0)
    scale = (max if wish.covers else min)(across / width, upright / height)
    return width * scale, height * scale


def _frame(wish: PictureWish, fills: bool) -> float:
    if wish.frame is not None:
        return wish.frame
    return FRAME if fills else 0.0


def _fills_rectangle(pixels: Pixels) -> bool:
    """Whether the picture is opaque at all four corners, as a photograph is and a cut-out drawing is not."""
    corners = pixels.rgba[[0, 0, -1, -1], [0, -1, 0, -1], 3]
    return bool((corners >= _OPAQUE).all())


def _visible(data: bytes, wish: PictureWish) -> tuple[Pixels, CutoutRecord]:
    cut = _cut(data, wish.file, wish.cutout)
    record = CutoutRecord(wish.cutout, cut.method, cut.border_spread, EVEN_LIMIT, cut.removed)
    if cut.doubt:
        doubt = cut.doubt
        record = replace(record, doubt=doubt.kind, doubt_share=doubt.share, doubt_reach=doubt.reach)
    return (_trimmed(data, wish.file, wish.cutout) if wish.trim_empty else cut.pixels), record


# A picture is decoded and cut out once, however often it is asked about within one run; two pictures are
# kept, so that a long collection does not hold all of its art in memory.
@lru_cache(maxsize=2)
def _cut(data: bytes, file: str, mode: Mode) -> Cutout:
    pixels = decoded(data, file)
    share = sqrt(MOST_WORKED / (pixels.width * pixels.height))
    if share < 1:
        pixels = bring_down(pixels, max(1, round(pixels.width * share)), max(1, round(pixels.height * share)))
    return cut_out(pixels, mode)


@lru_cache(maxsize=2)
def _trimmed(data: bytes, file: str, mode: Mode) -> Pixels:
    pixels: Pixels = trim_empty(_cut(data, file, mode).pixels)
    return pixels


@lru_cache(maxsize=2)
def _for_colours(data: bytes, file: str, cutout: Mode) -> Pixels:
    if sniff(data) == "svg":
        check_svg(data, file)
        width, height = svg_size(data)
        scale = _GLANCE / max(width, height)
        return draw_svg(data, file, max(1, round(width * scale)), max(1, round(height * scale)))
    return _cut(data, file, cutout).pixels


def _drawn(data: bytes, name: str, wish: PictureWish) -> PlacedPicture:
    """An SVG as pixels: a glance finds the drawing's own bounds, then it is drawn at full sharpness."""
    width, height = svg_size(data)
    share = _GLANCE / max(width, height)
    glance = draw_svg(data, wish.file, max(1, round(width * share)), max(1, round(height * share)))
    seen = trim_empty(glance) if wish.trim_empty else glance
    fills = _fills_rectangle(seen)
    frame = _frame(wish, fills)
    placed = fitted(seen.width, seen.height, wish, frame)
    full = placed[0] / 25.4 * (COVERING_PPI if wish.covers else MOST_PPI) / seen.width
    pixels = draw_svg(data, wish.file, max(1, round(glance.width * full)), max(1, round(glance.height * full)))
    pixels = trim_empty(pixels) if wish.trim_empty else pixels
    placed = fitted(pixels.width, pixels.height, wish, frame)
    method: Literal["transparency", "none"] = "transparency" if pixels.has_transparency else "none"
    record = CutoutRecord(wish.cutout, method, 0.0, EVEN_LIMIT, 0.0)
    return PlacedPicture(as_raster(pixels, name), *placed, frame, fills, (0, 0), record)


def _vector(data: bytes, name: str, wish: PictureWish) -> PlacedPicture:
    from padspec.art.svg.vector import to_vector

    record = CutoutRecord(wish.cutout, "transparency", 0.0, EVEN_LIMIT, 0.0)
    frame = _frame(wish, fills=False)
    width, height = fitted(*svg_size(data), wish, frame)
    return PlacedPicture(to_vector(data, name), width, height, frame, False, (0, 0), record)


def _pixels(mm: float) -> int:
    return max(1, round(mm / 25.4 * MOST_PPI))


def _tidy_stem(file: str) -> str:
    stem = PurePosixPath(file).stem
    return "".join(c if c.isascii() and (c.isalnum() or c in "-_") else "-" for c in stem) or "art"
