"""Lettering: a heading, the small title of a part, and the line that names the studio.

They differ in their defaults alone, which the schemas state.
"""

import re
from dataclasses import dataclass
from typing import Literal, cast

from padspec.base.colour import Colour
from padspec.base.numbers import mm_text
from padspec.resolve.blocks.block import Align, Block
from padspec.resolve.drafts import Draft
from padspec.resolve.font import Font
from padspec.resolve.means import Means
from padspec.resolve.settings import Settings

Fit = Literal["size", "width"]
Seat = Literal["head", "middle", "foot"]

#: Any white space but the no-break kinds, which hold words together on purpose.
_SPACES = re.compile(r"[^\S\u00a0\u2007\u202f]+")

#: The em of each kind on a leaf of the usual size, in mm, and what share of it is the least and the most.
_USUAL_SIZES = {"heading": 7.5, "label": 3.8, "brand": 2.7}
_LEAST_SHARE, _MOST_SHARE = 0.6, 2.0
#: Tracking is written in thousandths of the em, as typesetters count.
_TRACKING_UNIT = 1 / 1000


@dataclass(frozen=True, slots=True)
class Edge:
    """A line around letters, in mm outside them."""

    width: float
    colour: Colour


@dataclass(frozen=True, slots=True)
class Heading(Block):
    """Lettering: wished size (em) and the least it may shrink to, at most `lines` lines.

    With `fit` width it fills its room, no larger than `most_size`. `tracking` is a share of the em, `arc` in
    degrees, `seat` where it stands in a room higher than itself.
    """

    text: str
    font: Font
    size: float
    least_size: float
    lines: int
    colour: Colour
    align: Align
    space: float
    fit: Fit = "size"
    most_size: float = 0.0
    tracking: float = 0.0
    arc: float = 0.0
    edge: Edge | None = None
    seat: Seat = "head"

    @property
    def edge_width(self) -> float:
        """How far the line around the letters reaches past them, in mm; 0 where there is none."""
        return self.edge.width if self.edge is not None else 0.0


def read_heading(draft: Draft, means: Means) -> Heading:
    """The lettering of a block."""
    settings = draft.settings
    size = draft.scaled("size", _USUAL_SIZES[draft.kind])
    text = lines_of(settings.text("text") if settings.has("text") else means.studio_name)
    arc = _arc(settings, text)
    font = means.fonts.find(
        settings.text("font"), settings.integer("font-weight"), settings.place("font"), words=text
    )
    return Heading(
        id=draft.id,
        grow=draft.grow,
        text=text,
        font=font,
        size=size,
        least_size=_least_size(settings, size),
        lines=1 if arc else settings.integer("lines"),
        colour=means.palette.colour(settings, "colour"),
        align=cast(Align, settings.text("align")),
        space=settings.length("space"),
        fit=cast(Fit, settings.text("fit")),
        most_size=_most_size(settings, size),
        tracking=settings.number("tracking") * _TRACKING_UNIT,
        arc=arc,
        edge=_edge(settings, means),
        seat=cast(Seat, settings.text("seat")),
    )


def _arc(settings: Settings, text: str) -> float:
    """How far the line is bent; only one line can be, as lines on one circle would run into each other."""
    arc, lines = settings.number("arc"), text.count("\n") + 1
    if arc and lines > 1:
        message = f"An arc holds 1 line, and the text has {lines}."
        mend = "Take the line breaks out of the text, or set arc: 0."
        settings.troubles.add(settings.place("arc"), message, mend)
        return 0.0
    return arc


def _edge(settings: Settings, means: Means) -> Edge | None:
    if settings.text("outline") == "none" or not settings.length("outline"):
        return None
    return Edge(settings.length("outline"), means.palette.colour(settings, "outline-colour"))


def _least_size(settings: Settings, size: float) -> float:
    """The least size; one that was written above the size itself contradicts it."""
    if settings.text("least-size") == "auto":
        return round(_LEAST_SHARE * size, 2)
    least = settings.length("least-size")
    if least > size and settings.place("least-size").line:
        message = f"The least size, {mm_text(least)}, is more than the size, {mm_text(size)}."
        settings.troubles.add(settings.place("least-size"), message, f"Write {mm_text(size)} or less.")
    return min(least, size)


def _most_size(settings: Settings, size: float) -> float:
    """The most size; one that was written below the size itself contradicts it."""
    if settings.text("most-size") == "auto":
        return round(_MOST_SHARE * size, 2)
    most = settings.length("most-size")
    if most < size and settings.place("most-size").line:
        message = f"The most size, {mm_text(most)}, is less than the size, {mm_text(size)}."
        settings.troubles.add(settings.place("most-size"), message, f"Write {mm_text(size)} or more.")
    return max(most, size)


def lines_of(text: str) -> str:
    """The words with single spaces between them; line breaks of the maker's own stay."""
    lines = (_SPACES.sub(" ", line).strip(" ") for line in text.strip().split("\n"))
    return "\n".join(lines)
