"""Ruled rows, with squares, numbers or words at the front of each, and what may stand at its end."""

from dataclasses import dataclass
from typing import Literal, cast

from padspec.base.colour import Colour
from padspec.resolve.blocks.block import Block
from padspec.resolve.drafts import Draft
from padspec.resolve.font import Font
from padspec.resolve.means import Means
from padspec.resolve.settings import Settings

#: A number or word at the front of a row is set at this share of the pitch, up to so many mm (em).
_LABEL_SHARE, _MOST_LABEL = 0.44, 3.6


@dataclass(frozen=True, slots=True)
class Squares:
    """The squares or circles at the front of a row: outer size, how many beside each other and how far apart.

    `corner` is the radius of the corners, half the size for a circle; `double` draws a second line inside.
    """

    size: float
    count: int
    between: float
    corner: float
    double: bool
    seat: Literal["rule", "centre"]
    colour: Colour


@dataclass(frozen=True, slots=True)
class Labels:
    """Words or numbers at the front of rows, in the order of the rows, one on every `every`-th row from the first.

    `texts` is empty for numbers, which count from `first`. `size` is the em in mm, `width` the column they have,
    None for as wide as the widest needs.
    """

    texts: tuple[str, ...]
    first: int
    every: int
    font: Font
    size: float
    colour: Colour
    width: float | None


@dataclass(frozen=True, slots=True)
class Tail:
    """What stands at the end of each row: a short rule for a quantity, so wide (0 for none), and so many small
    circles for a priority.
    """

    quantity: float
    priority: int


@dataclass(frozen=True, slots=True)
class Rows(Block):
    """Ruled rows. `squares` is None for plain lines, `labels` None for none; `count` fixes how many rows.

    Every `heavy_every`-th rule has the weight `heavy_weight` (0: none has). `gap` lies between what stands at the
    front and the start of the rule.
    """

    pitch: float
    count: int | None
    squares: Squares | None
    labels: Labels | None
    tail: Tail
    gap: float
    colour: Colour
    weight: float
    heavy_every: int
    heavy_weight: float
    line: Literal["solid", "dashed", "dotted", "none"]
    ends: Literal["butt", "round"]


def read_rows(draft: Draft, means: Means) -> Rows:
    """The rows of a block."""
    settings = draft.settings
    colour = means.palette.colour(settings, "colour")
    weight = settings.length("weight")
    labels = _labels(settings, means)
    return Rows(
        id=draft.id,
        grow=draft.grow,
        pitch=settings.length("pitch"),
        count=_count(settings, labels),
        squares=_squares(settings, means, colour),
        labels=labels,
        tail=Tail(
            0.0 if settings.text("quantity") == "none" else settings.length("quantity"),
            settings.integer("priority"),
        ),
        gap=settings.length("checkbox-gap"),
        colour=colour,
        weight=weight,
        heavy_every=settings.integer("heavy-every"),
        heavy_weight=settings.length("heavy-weight") if settings.has("heavy-weight") else 2 * weight,
        line=cast(Literal["solid", "dashed", "dotted", "none"], settings.text("line")),
        ends=cast(Literal["butt", "round"], settings.text("ends")),
    )


def _count(settings: Settings, labels: Labels | None) -> int | None:
    """So many rows as were asked for, else so many as there are words for; None where the pitch decides."""
    if settings.has("count"):
        return settings.integer("count")
    return len(labels.texts) * labels.every if labels and labels.texts else None


def _squares(settings: Settings, means: Means, colour: Colour) -> Squares | None:
    if settings.text("checkbox") == "none":
        return None
    size = settings.length("checkbox")
    own_colour = settings.has("checkbox-colour")
    round_ones = settings.text("checkbox-shape") == "circle"
    return Squares(
        size=size,
        count=settings.integer("checkbox-count"),
        between=settings.length("checkbox-between"),
        corner=size / 2 if round_ones else settings.length("checkbox-corner"),
        double=settings.text("checkbox-line") == "double",
        seat=cast(Literal["rule", "centre"], settings.text("checkbox-seat")),
        colour=means.palette.colour(settings, "checkbox-colour") if own_colour else colour,
    )


def _labels(settings: Settings, means: Means) -> Labels | None:
    words = settings.text("labels")
    if words == "none":
        return None
    auto = settings.text("label-size") == "auto"
    pitch, texts = settings.length("pitch"), settings.texts("labels")
    return Labels(
        texts=texts,
        first=settings.integer("label-first"),
        every=settings.integer("label-every"),
        font=means.fonts.find(
            settings.text("label-font"),
            settings.integer("label-weight"),
            settings.place("label-font"),
            words=" ".join(texts),
        ),
        size=min(_LABEL_SHARE * pitch, _MOST_LABEL) if auto else settings.length("label-size"),
        colour=means.palette.colour(settings, "label-colour"),
        width=None if settings.text("label-width") == "auto" else settings.length("label-width"),
    )
