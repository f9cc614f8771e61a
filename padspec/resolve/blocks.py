"""Typed blocks from drafts: one reader for each kind of block, one line each in `_read`."""

import re
from dataclasses import dataclass
from typing import Literal, cast

from padspec.base.geometry import Size
from padspec.base.numbers import mm_text
from padspec.resolve.colours import Palette
from padspec.resolve.design import Align, Art, Block, Heading, Panel, Rows, Space
from padspec.resolve.drafts import Draft
from padspec.resolve.lettering_fonts import FontShelf
from padspec.resolve.pictures import CORNER, PlacedPicture
from padspec.resolve.settings import Settings

#: Any white space but the no-break kinds, which hold words together on purpose.
_SPACES = re.compile(r"[^\S\u00a0\u2007\u202f]+")


@dataclass(frozen=True, slots=True)
class Means:
    """What a reader may draw on; `pictures` holds those of the art blocks that have one, by block id."""

    trim: Size
    palette: Palette
    fonts: FontShelf
    pictures: dict[str, PlacedPicture]


def read_blocks(drafts: tuple[Draft, ...], means: Means) -> tuple[Block, ...]:
    """The blocks, head to foot; an art block without a picture is left out."""
    return tuple(block for draft in drafts if (block := _read(draft, means)) is not None)


def _read(draft: Draft, means: Means) -> Block | None:
    match draft.kind:
        case "art":
            return _art(draft, means)
        case "heading":
            return _heading(draft, means)
        case "panel":
            return _panel(draft, means)
        case "rows":
            return _rows(draft, means)
        case "space":
            return _space(draft, means)
        case other:
            raise LookupError(f"no reader for blocks of kind {other}")


def _art(draft: Draft, means: Means) -> Art | None:
    settings, picture = draft.settings, means.pictures.get(draft.id)
    if picture is None:
        return None
    return Art(
        id=draft.id,
        grow=draft.grow,
        file=settings.text("file"),
        image=picture.image,
        width=picture.width,
        height=picture.height,
        overlap=settings.length("overlap"),
        inset=draft.inset,
        align=cast(Align, settings.text("align")),
        corner=_corner(draft, picture),
        frame=picture.frame,
        frame_colour=means.palette.colour(settings, "frame-colour"),
        source=picture.source,
        cutout=picture.cutout,
    )


def _corner(draft: Draft, picture: PlacedPicture) -> float:
    if draft.settings.text("corner") != "auto":
        return draft.settings.length("corner")
    return CORNER if picture.fills else 0.0


def _heading(draft: Draft, means: Means) -> Heading:
    settings = draft.settings
    return Heading(
        id=draft.id,
        grow=draft.grow,
        text=_lines(settings.text("text")),
        font=means.fonts.find(settings.text("font"), settings.integer("font-weight"), settings.place("font")),
        size=settings.length("size"),
        least_size=_least_size(settings),
        lines=settings.integer("lines"),
        colour=means.palette.colour(settings, "colour"),
        align=cast(Align, settings.text("align")),
        space=settings.length("space"),
    )


def _least_size(settings: Settings) -> float:
    """The least size; one that was written above the size itself contradicts it."""
    least, size = settings.length("least-size"), settings.length("size")
    if least > size and settings.place("least-size").line:
        message = f"The least size, {mm_text(least)}, is more than the size, {mm_text(size)}."
        settings.troubles.add(settings.place("least-size"), message, f"Write {mm_text(size)} or less.")
    return min(least, size)


def _lines(text: str) -> str:
    """The words with single spaces between them; line breaks of the maker's own stay."""
    lines = (_SPACES.sub(" ", line).strip(" ") for line in text.strip().split("\n"))
    return "\n".join(lines)


def _panel(draft: Draft, means: Means) -> Panel:
    settings = draft.settings
    return Panel(
        id=draft.id,
        grow=draft.grow,
        colour=means.palette.colour(settings, "colour"),
        corner=settings.length("corner"),
        inset=settings.length("inset"),
        pad=settings.length("pad"),
        holds=read_blocks(draft.holds, means),
    )


def _rows(draft: Draft, means: Means) -> Rows:
    settings = draft.settings
    colour = means.palette.colour(settings, "colour")
    own_colour = settings.has("checkbox-colour")
    return Rows(
        id=draft.id,
        grow=draft.grow,
        pitch=settings.length("pitch"),
        count=settings.integer("count") if settings.has("count") else None,
        checkbox=None if settings.text("checkbox") == "none" else settings.length("checkbox"),
        checkbox_corner=settings.length("checkbox-corner"),
        checkbox_seat=cast(Literal["rule", "centre"], settings.text("checkbox-seat")),
        checkbox_gap=settings.length("checkbox-gap"),
        checkbox_colour=means.palette.colour(settings, "checkbox-colour") if own_colour else colour,
        colour=colour,
        weight=settings.length("weight"),
        ends=cast(Literal["butt", "round"], settings.text("ends")),
    )


def _space(draft: Draft, means: Means) -> Space:
    settings = draft.settings
    height = settings.length_or_share("height", means.trim.height) if settings.has("height") else None
    return Space(draft.id, max(draft.grow, 0 if height is not None else 1), height)
