"""Paper that an outline encloses: behind a small gap it is kept, behind a wide one its loss is told.

A chamber is a stretch of the ground's colour that is wide inside and narrow where it opens. Ground between
quills or leaves, which narrows towards its end or is nowhere wide, is none.
"""

import numpy as np

from padspec.art.cutting.reach import depth, rounded, widened
from padspec.art.cutting.regions import Mask, regions

#: A flood passes no opening narrower than this share of the longer side into a chamber.
GAP_SHARE = 0.006
#: Enclosed paper that is nowhere wider than twice this is part of an edge, not a chamber.
LEAST_REACH = 6

# A chamber behind a gap is at least so many times as wide as the gap can be.
_CHAMBER = 2.5
# The search for losses works on pictures of so many cells, at half widths of openings of these shares.
_CELLS = 400
_OPENINGS = (0.006, 0.0125, 0.025, 0.035, 0.05, 0.07, 0.1)
# There an opening leads to a chamber if that is so many times as wide.
_WIDER = 1.6


def gap_reach(ground: Mask) -> int:
    """Half of the widest gap that is bridged, in pixels."""
    return max(1, round(GAP_SHARE * int(max(ground.shape)) / 2))


def behind_gaps(ground: Mask) -> Mask:
    """The part of the ground that the flood reached through small gaps only.

    The ground is narrowed by half a gap; what then hangs together with the border, grown back, is open.
    A chamber keeps its own narrow corners, because what the open ground does not reach goes with it.
    """
    reach = gap_reach(ground)
    narrowed = ~rounded(~ground, reach)
    apart = regions(narrowed)
    outer = apart.touching_border()
    if outer.all():
        return np.zeros_like(ground)
    wide = ~widened(~narrowed, max(LEAST_REACH, round((_CHAMBER - 1) * reach)))
    cores = apart.painted(~outer & (apart.peaks(wide.view(np.uint8)) > 0))
    if not cores.any():
        return cores
    rest = regions(ground & ~rounded(apart.painted(outer), reach + 1))
    return rest.painted(rest.peaks(cores.view(np.uint8)) > 0)


def enclosed(paper: Mask, ground: Mask) -> Mask:
    """Of what has the ground's colour but is not ground, the regions that are wide enough to be seen as paper."""
    inner = paper & ~ground
    wide = ~widened(~inner, LEAST_REACH)
    if not wide.any():
        return wide
    apart = regions(inner)
    return apart.painted(apart.peaks(wide.view(np.uint8)) > 0)


def lost_share(ground: Mask) -> float:
    """Which share (0 to 1) of what outlines enclose is ground: chambers with an opening, against what is left.

    Chambers are looked for at openings of up to a fifth of the longer side.
    """
    open_ground = _in_cells(ground)
    most = round(_WIDER * _OPENINGS[-1] * max(open_ground.shape)) + 2
    # Paper goes on around the picture, so that a drawing may fill it to the sides.
    framed = np.pad(open_ground, most, constant_values=True)
    deep = depth(framed, most)
    lost = np.zeros_like(framed)
    for share in _OPENINGS:
        reach = max(1.0, share * max(open_ground.shape))
        inside = regions(deep > reach)
        wide = inside.peaks((deep >= _WIDER * reach).view(np.uint8)) > 0
        chambers = inside.painted(~inside.touching_border() & wide)
        if chambers.any():
            lost |= framed & rounded(chambers, round(reach))
    whole = lost.sum() + (~framed).sum()
    return round(float(lost.sum() / max(1, whole)), 4)


def _in_cells(ground: Mask) -> Mask:
    """The ground reduced to square cells, each ground only if all of it is."""
    cell = -(-max(ground.shape) // _CELLS)
    height, width = (-(-side // cell) for side in ground.shape)
    filled = np.ones((height * cell, width * cell), np.bool_)
    filled[: ground.shape[0], : ground.shape[1]] = ground
    return np.asarray(filled.reshape(height, cell, width, cell).all(axis=(1, 3)))
