"""Work sent out: single faces or whole sheets as PDF/X-4 (ISO 15930-7), in the inks of the maker's profile.

A face is one form, as in `pdf`; every colour is DeviceCMYK, defined by the output intent, and marks are in
all separations. No fonts, actions, annotations or anything outside the file.
"""

from collections.abc import Iterable, Sequence
from dataclasses import replace

import pikepdf

from padspec.base.geometry import Affine
from padspec.draw.faces import FaceForms
from padspec.draw.pages import add_sheet, saved
from padspec.draw.press.inking import PressInking
from padspec.draw.press.metadata import describe_for_press
from padspec.press.separate import Separator
from padspec.press.under import darkest_under_lines
from padspec.scene.nodes import Layer, Scene
from padspec.sheet.sheet import Sheet


def press_pdf(
    pages: Iterable[tuple[Sheet, Sequence[Scene]]],
    separator: Separator,
    title: str,
    date: str,
    shared: Sequence[Layer] = (),
) -> bytes:
    """Sheets, each with a scene for every slot in the order of its slots; `date` is YYYY-MM-DD.

    A single face is a sheet of one slot, as `single_page` makes it. `shared` are layers that many of the scenes
    hold. What a home printer shifts and stretches is not corrected: a press does neither. Raises ValueError
    where there is no sheet, no title, or a sheet has not as many scenes as slots.
    """
    laid = [(sheet, tuple(scenes)) for sheet, scenes in pages]
    if not laid or not title:
        raise ValueError("a press PDF needs a title and at least one sheet")
    scenes = {id(scene): scene for _, on_sheet in laid for scene in on_sheet}
    darkest = min(darkest_under_lines(scene, separator) for scene in scenes.values())
    inking = PressInking(separator, darkest)
    with pikepdf.new() as pdf:
        faces = FaceForms(pdf, shared, inking=inking)
        for sheet, on_sheet in laid:
            add_sheet(pdf, faces, replace(sheet, correction=Affine()), on_sheet, inking)
        describe_for_press(pdf, title, date, separator.press.profile)
        return saved(pdf)
