"""The pictures that a design names: their files read, and each prepared for the room that its block leaves it."""

from collections.abc import Iterator
from functools import partial
from typing import Literal, cast

from padspec.art.errors import ArtError
from padspec.base.geometry import Size
from padspec.base.nearest import did_you_mean
from padspec.base.numbers import mm_text, round_down
from padspec.base.place import Place
from padspec.reading.tree import Mapping
from padspec.resolve import pictures
from padspec.resolve.blocks.columns import column_shares, shared_widths
from padspec.resolve.blocks.panel import USUAL_PAD
from padspec.resolve.colours import ArtColours
from padspec.resolve.drafts import Draft, opened
from padspec.resolve.settings import Settings, Troubles
from padspec.workspace import Workspace, joined

#: A picture narrower than this is no picture, in mm.
LEAST_ART = 5.0

Mode = Literal["auto", "even", "none"]
File = tuple[bytes, str, Mode]


def read_pictures(
    drafts: tuple[Draft, ...], trim: Size, bleed: float, workspace: Workspace, troubles: Troubles
) -> tuple[dict[str, pictures.PlacedPicture], File | None]:
    """The prepared picture of each art block that has one, and the first file for the palette."""
    placed: dict[str, pictures.PlacedPicture] = {}
    first: File | None = None
    for draft, width in _art_rooms(drafts, trim.width):
        if not draft.settings.has("file"):
            continue
        wish = _wish(draft, width, trim, bleed)
        data = art_bytes(draft.settings, workspace, troubles)
        if data is None:
            continue
        try:
            placed[draft.id] = pictures.prepare(data, wish)
            first = first or (data, wish.file, wish.cutout)
        except ArtError as error:
            troubles.add(draft.settings.place("file"), error.message, error.mend)
    return placed, first


def refuse_art_without_file(drafts: tuple[Draft, ...], design: Mapping, troubles: Troubles) -> None:
    """Settings for a picture that is never named are a slip, not a wish for no picture."""
    entry = design.entry("art")
    if entry is not None and not any(draft.kind == "art" for draft in opened(drafts)):
        troubles.add(
            entry.key_place,
            "The layout has no place for a picture.",
            "Add a block to it under face: - art: {id: art}, or leave art out here.",
        )
    elif entry is not None and not names_picture(drafts):
        troubles.add(
            entry.key_place, "The art has settings but no picture.", "Name one: art: {file: art/moth.png, …}."
        )


def _art_rooms(drafts: tuple[Draft, ...], width: float) -> Iterator[tuple[Draft, float]]:
    """Each art block with the width of what holds it: the trim, or a holder less what it takes for itself."""
    for draft in drafts:
        match draft.kind:
            case "art":
                yield draft, width
            case "panel":
                yield from _art_rooms(draft.holds, width - 2 * (draft.inset + draft.scaled("pad", USUAL_PAD)))
            case "stack":
                yield from _art_rooms(draft.holds, width - 2 * draft.inset)
            case "columns":
                gaps = draft.settings.length("gap") * (len(draft.holds) - 1)
                widths = shared_widths(width - 2 * draft.inset - gaps, column_shares(draft))
                for inner, wide in zip(draft.holds, widths, strict=True):
                    yield from _art_rooms((inner,), wide)
            case _:
                pass


def _wish(draft: Draft, width: float, trim: Size, bleed: float) -> pictures.PictureWish:
    settings = draft.settings
    if settings.text("fills") == "face":
        return _whole_face(settings, trim, bleed)
    room = width - 2 * draft.inset
    if room < LEAST_ART:
        message = f"Insets of {mm_text(draft.inset)} leave {mm_text(max(room, 0))} for a picture."
        most = mm_text(max(round_down((width - LEAST_ART) / 2, 0.5), 0.0))
        settings.troubles.add(settings.place("inset"), message, f"Write {most} or less.")
    room = max(room, LEAST_ART)
    return pictures.PictureWish(
        file=settings.text("file"),
        most_width=min(settings.length_or_share("width", room), room),
        most_height=settings.length_or_share("height", trim.height),
        cutout=cast(Mode, settings.text("cutout")),
        trim_empty=settings.flag("trim-empty"),
        keep_vector=settings.flag("keep-vector"),
        frame=None if settings.text("frame") == "auto" else settings.length("frame"),
    )


def _whole_face(settings: Settings, trim: Size, bleed: float) -> pictures.PictureWish:
    """A picture under everything, out to the bleed: whole, without a frame."""
    return pictures.PictureWish(
        file=settings.text("file"),
        most_width=trim.width + 2 * bleed,
        most_height=trim.height + 2 * bleed,
        cutout="none",
        trim_empty=False,
        keep_vector=settings.flag("keep-vector"),
        frame=0.0,
        covers=True,
    )


def art_bytes(settings: Settings, workspace: Workspace, troubles: Troubles, key: str = "file") -> bytes | None:
    """The picture file that some settings name; None, with a trouble told, where it is not there."""
    place, name = settings.place(key), settings.text(key)
    try:
        path = joined(place.file, name)
    except ValueError:
        troubles.add(place, f"{name} leads outside the project folder.", "Copy the picture into art/.")
        return None
    if workspace.is_file(path):
        return workspace.read(path)
    folder = path.rpartition("/")[0] or "."
    troubles.add(place, f"There is no picture {path}.", _likely_picture(name, folder, workspace, place))
    return None


def _likely_picture(name: str, folder: str, workspace: Workspace, place: Place) -> str:
    near = [path.rpartition("/")[2] for path in workspace.neighbours(folder, "")]
    base = name.rpartition("/")[2]
    hint = did_you_mean(base, near) if near else ""
    return hint if hint.startswith("Did") else f"Paths start at the folder of {place.file}."


def names_picture(drafts: tuple[Draft, ...]) -> bool:
    """Whether any block has a picture."""
    return any(draft.kind == "art" and draft.settings.has("file") for draft in opened(drafts))


def art_colours(first: File | None, named: bool) -> ArtColours:
    """The colours of a picture, worked out only when they are asked for; `named`: whether there should be one."""
    if first is None:
        return ArtColours(tuple, lambda: None, has_art=named)
    return ArtColours(partial(pictures.colours, *first), partial(pictures.leading_hue, *first), has_art=True)
