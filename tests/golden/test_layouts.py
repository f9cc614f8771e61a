"""Every built-in layout on a plain ground at the first trim that it states, without a picture, kept as SVG.

The outlines of letters are left out, which would be most of each file; other goldens and tests hold those.

`python -m pytest tests/golden --renew-goldens` writes them anew, and the run that does so fails.
"""

from collections.abc import Callable
from pathlib import Path

import pytest

from padspec.draw.svg import face_svg
from padspec.gallery.make import make_gallery
from padspec.gallery.wish import GalleryWish
from padspec.resources import layout_names
from padspec.scene.nodes import without
from padspec.workspace import MemoryWorkspace

KEPT = Path(__file__).with_name("goldens") / "layouts"


def layout_svg(layout: str) -> str:
    wish = GalleryWish(layouts=(layout,), grounds=("plain",))
    gallery = make_gallery((), MemoryWorkspace({}), wish, "Layouts", lambda _: None)
    assert not gallery.problems
    (specimen,) = gallery.specimens
    return face_svg(without(specimen.scene, "lettering"), layout, lambda image: image.name)


@pytest.mark.parametrize("layout", layout_names())
def test_a_layout_is_drawn_as_it_was(layout: str, golden_drawing: Callable[[str, str], None]) -> None:
    golden_drawing(f"layouts/{layout}.svg", layout_svg(layout))


def test_no_golden_is_kept_of_a_layout_that_is_gone() -> None:
    assert {file.stem for file in KEPT.glob("*.svg")} <= set(layout_names())
