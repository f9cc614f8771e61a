"""The pages of the pattern book as data: titles, faces with what is under them, and a soft line round each."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from padspec.base.colour import Colour
from padspec.base.geometry import Box, Size
from padspec.gallery.arranging import arranged, words_width
from padspec.gallery.lettering import (
    FOOT,
    INK,
    LEAD,
    QUIET,
    TITLE,
    Fonts,
    Line,
    caption,
    caption_height,
    caption_shapes,
)
from padspec.gallery.specimen import Gallery, Specimen, by_page, leaders, shown_name, trim_text
from padspec.scene.nodes import Cause, Node, Shape, Stroke
from padspec.scene.outline import line, rectangle, rounded
from padspec.test_prints.setting import broken, words

#: A4, its margins, the baselines of title and foot, and from the lead's baseline to the faces, in mm.
PAGE = Size(210.0, 297.0)
_SIDE, _TITLE_AT, _LEAD_AT, _LEAD_STEP, _FOOT_AT = 16.0, 23.0, 29.6, 4.3, 286.0
_UNDER_LEAD, _OVER_FOOT = 8.5, 9.0
_HAIR = Colour.from_hex("#d9d4cc")
#: The shadow of a leaf: how far it reaches past the trim, how far down it has slipped, and its grey.
_SHADOW = ((1.3, 0.75, "#f8f7f5"), (0.95, 0.6, "#f2f0ec"), (0.6, 0.45, "#e9e6e1"), (0.3, 0.25, "#dcd8d1"))
_EDGE = Stroke(Colour.from_hex("#cfcac1"), 0.1)

Told = Callable[[Specimen], tuple[str, str]]


@dataclass(frozen=True, slots=True)
class PlacedFace:
    """A specimen and the box that its trim fills on the page."""

    specimen: Specimen
    box: Box


@dataclass(frozen=True, slots=True)
class Page:
    """A page: what lies under its faces, the faces, and the fine line over the edge of each."""

    name: str
    under: tuple[Node, ...]
    faces: tuple[PlacedFace, ...]
    over: tuple[Node, ...]


def book_pages(gallery: Gallery, fonts: Fonts) -> tuple[Page, ...]:
    """A page of all layouts, and one for each layout at each trim with all its grounds."""
    groups = by_page(gallery.specimens)
    first = leaders(gallery.specimens)
    grounds = len({specimen.ground for specimen in first})
    on = "each on a ground of its own" if grounds > 1 else f"all on one ground, {first[0].ground}"
    count = f"{len(first)} layouts" if len(first) != 1 else "1 layout"
    lead = f"{count}, {on}, at one scale. The pages that follow show them one by one."
    folios = len(groups) + 1
    pages = [_page(_Head(gallery.title, lead, 1, folios, gallery), first, _of_layout, fonts)]
    for number, group in enumerate(groups, 2):
        name, about = shown_name(group[0].layout), group[0].about
        size = trim_text(group[0].trim)
        pages.append(_page(_Head(name, about, number, folios, gallery, size), group, _of_ground, fonts))
    return tuple(pages)


@dataclass(frozen=True, slots=True)
class _Head:
    """What stands over and under the faces of a page."""

    title: str
    lead: str
    number: int
    pages: int
    gallery: Gallery
    aside: str = ""


def _of_layout(specimen: Specimen) -> tuple[str, str]:
    return shown_name(specimen.layout), f"{specimen.ground} · {trim_text(specimen.trim)}"


def _of_ground(specimen: Specimen) -> tuple[str, str]:
    return shown_name(specimen.ground), f"{shown_name(specimen.layout)} · {trim_text(specimen.trim)}"


def _page(head: _Head, specimens: Sequence[Specimen], told: Told, fonts: Fonts) -> Page:
    lead = broken(head.lead, PAGE.width - 2 * _SIDE, fonts.text, LEAD)
    top = _LEAD_AT + (len(lead) - 1) * _LEAD_STEP + _UNDER_LEAD
    area = Box(_SIDE, top, PAGE.width - 2 * _SIDE, _FOOT_AT - _OVER_FOOT - top)

    def lines(n: int, width: float) -> tuple[Line, ...]:
        return caption(*told(specimens[n]), specimens[n], width, fonts)

    laid = arranged([one.trim for one in specimens], area, lambda n, width: caption_height(lines(n, width)))
    faces = tuple(PlacedFace(one, box) for one, box in zip(specimens, laid.faces, strict=True))
    under: list[Node] = [shape for face in faces for shape in _shadow(face.box)]
    for n, face in enumerate(faces):
        under += caption_shapes(lines(n, words_width(face.specimen.trim, laid.scale)), face.box.x, face.box.bottom)
    over = tuple(Shape(rectangle(face.box), Cause("gallery", "ground"), stroke=_EDGE) for face in faces)
    return Page(head.title, (*_head(head, lead, fonts), *_foot(head, fonts), *under), faces, over)


def _shadow(box: Box) -> tuple[Shape, ...]:
    """Greys that grow darker towards the leaf, a little below it: opaque, so that any printer draws them."""
    return tuple(
        Shape(
            rounded(
                Box(box.x - reach, box.y - reach + slip, box.width + 2 * reach, box.height + 2 * reach), reach
            ),
            Cause("gallery", "ground"),
            fill=Colour.from_hex(grey),
        )
        for reach, slip, grey in _SHADOW
    )


def _head(head: _Head, lead: tuple[str, ...], fonts: Fonts) -> tuple[Node, ...]:
    right = PAGE.width - _SIDE
    aside = (words(head.aside, right, _TITLE_AT, fonts.text, LEAD, "right", QUIET),) if head.aside else ()
    return (
        words(head.title, _SIDE, _TITLE_AT, fonts.title, TITLE, colour=INK),
        *aside,
        *(
            words(text, _SIDE, _LEAD_AT + n * _LEAD_STEP, fonts.text, LEAD, colour=QUIET)
            for n, text in enumerate(lead)
        ),
    )


def _foot(head: _Head, fonts: Fonts) -> tuple[Node, ...]:
    right = PAGE.width - _SIDE
    studio = " · ".join(dict.fromkeys(part for part in (head.gallery.studio, head.gallery.title) if part))
    rule = Shape(
        line(_SIDE, _FOOT_AT - 5.0, right, _FOOT_AT - 5.0), Cause("gallery", "rule"), stroke=Stroke(_HAIR, 0.15)
    )
    return (
        rule,
        words(studio, _SIDE, _FOOT_AT, fonts.text, FOOT, colour=QUIET),
        words(f"{head.number} / {head.pages}", right, _FOOT_AT, fonts.text, FOOT, "right", QUIET),
    )
