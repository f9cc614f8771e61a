"""The wishes for a stamp: `stamp` of studio.yaml in, typed words, sizes, font and drawing out."""

from dataclasses import dataclass

from padspec.base.place import Place
from padspec.reading.defaults import defaults
from padspec.reading.tree import Mapping
from padspec.resolve.art_files import art_bytes
from padspec.resolve.font import Font
from padspec.resolve.lettering_fonts import FontShelf
from padspec.resolve.listing import read_link
from padspec.resolve.settings import Settings, Troubles, merge
from padspec.workspace import Workspace

#: What one stroke of the lettering weighs (CSS numbers): heavy enough to be cut.
_NAME_WEIGHT, _LINES_WEIGHT = 600, 600


@dataclass(frozen=True, slots=True)
class Drawing:
    """A drawing for the stamp: its file, its height in mm, and the lightness under which it is black (0 to 1)."""

    file: str
    data: bytes
    height: float
    threshold: float
    place: Place


@dataclass(frozen=True, slots=True)
class StampWish:
    """What stands on a stamp, and how wide it is in mm; `drawing` None and `link` empty where there is none."""

    studio: str
    lines: tuple[str, ...]
    width: float
    name_font: Font
    lines_font: Font
    link: str
    drawing: Drawing | None
    place: Place


def read_stamp(root: Mapping, workspace: Workspace, troubles: Troubles) -> StampWish:
    """The wishes of a studio, the schema's defaults beneath them; what is wrong is a trouble."""
    whole = Settings(merge(defaults("studio"), root), troubles)
    studio, stamp = whole.text("studio"), whole.section("stamp")
    lines = stamp.texts("text")
    shelf = FontShelf(workspace, troubles)
    name, place = stamp.text("font"), stamp.place("font")
    return StampWish(
        studio=studio,
        lines=lines,
        width=stamp.length("width"),
        name_font=shelf.find(name, _NAME_WEIGHT, place, studio),
        lines_font=shelf.find(name, _LINES_WEIGHT, place, "".join(lines)),
        link=read_link(stamp) if stamp.has("link") else "",
        drawing=_drawing(stamp, workspace, troubles) if stamp.has("art") else None,
        place=stamp.bundle.place,
    )


def _drawing(stamp: Settings, workspace: Workspace, troubles: Troubles) -> Drawing | None:
    data = art_bytes(stamp, workspace, troubles, "art")
    if data is None:
        return None
    return Drawing(
        stamp.text("art"), data, stamp.length("art-height"), stamp.share("threshold"), stamp.place("art")
    )
