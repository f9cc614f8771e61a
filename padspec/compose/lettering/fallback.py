"""Which font each part of a line is set in: the wished one, else the first fallback that has the characters.

A grapheme cluster (UAX #29) is never split: base and marks come from one font. A stand-in is scaled so that its
x-height is that of the wished font, and set to the weight whose stems are as heavy beside that x-height.
"""

from dataclasses import dataclass
from functools import lru_cache
from itertools import groupby

from padspec.compose.lettering.direction import Run, visual_runs
from padspec.compose.lettering.glyphs import letter
from padspec.compose.lettering.ink import area, true_bounds
from padspec.resolve.coverage import missing_characters, of_family
from padspec.resolve.font import Font

#: Weights that a stand-in is tried at.
_WEIGHTS = (300, 400, 500, 600, 700, 800, 900)


@dataclass(frozen=True, slots=True)
class StandIn:
    """A font and how it is scaled against the em of the line."""

    font: Font
    scale: float


@dataclass(frozen=True, slots=True)
class SetRun:
    """A stretch of text in one direction, one script and one font."""

    text: str
    leftwards: bool
    font: Font
    scale: float


def set_runs(font: Font, text: str) -> tuple[SetRun, ...]:
    """The runs of a line from left to right, each with the font that it is set in."""
    runs = visual_runs(text)
    if not font.fallbacks or not missing_characters(font, text):
        return tuple(SetRun(run.text, run.leftwards, font, 1.0) for run in runs)
    return tuple(part for run in runs for part in _split(font, run))


@lru_cache(maxsize=64)
def stand_in(font: Font, family: str) -> StandIn | None:
    """A fallback family matched to a font by x-height and by heaviness; None where it is not installed."""
    found = of_family(family, font.weight)
    if found is None:
        return None
    mine, theirs = _x_height(font), _x_height(found)
    if not mine or not theirs:
        return StandIn(found, 1.0)
    wanted = _stem(font) / mine
    tried = [other for weight in _WEIGHTS if (other := of_family(family, weight)) is not None]
    nearest = min(tried, key=lambda other: (round(abs(_stem(other) / _x_height(other) - wanted), 9), other.weight))
    return StandIn(nearest, mine / _x_height(nearest))


def _split(font: Font, run: Run) -> list[SetRun]:
    from uniseg.graphemecluster import grapheme_clusters

    chosen: list[tuple[str, StandIn]] = []
    for cluster in grapheme_clusters(run.text):
        # A space goes with what stands before it, so that a phrase stays one run.
        keeps = chosen and cluster.isspace()
        chosen.append((cluster, chosen[-1][1] if keeps else _chosen(font, cluster)))
    parts = [
        SetRun("".join(cluster for cluster, _ in group), run.leftwards, by.font, by.scale)
        for by, group in groupby(chosen, key=lambda pair: pair[1])
    ]
    return parts[::-1] if run.leftwards else parts


def _chosen(font: Font, cluster: str) -> StandIn:
    if missing_characters(font, cluster):
        for family in font.fallbacks:
            found = stand_in(font, family)
            if found is not None and not missing_characters(found.font, cluster):
                return found
    return StandIn(font, 1.0)


def _x_height(font: Font) -> float:
    outline = letter(font, "x")
    return true_bounds(outline).height if outline else 0.0


def _stem(font: Font) -> float:
    """How wide the l is on average: its ink spread over its height."""
    outline = letter(font, "l")
    return area(outline) / true_bounds(outline).height if outline else 0.0
