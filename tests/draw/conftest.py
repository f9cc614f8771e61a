"""Press PDFs that several modules here read: written once."""

import pytest

from padspec.press.single import single_page

from .press_reading import PressFile
from .press_small import TITLE, small_print, with_everything, written
from .small import BLEED, TRIM, sheet_of


@pytest.fixture(scope="session")
def press_sheet(tmp_path_factory) -> PressFile:
    """A sheet of two faces."""
    scene = with_everything()
    return written(tmp_path_factory.mktemp("press"), [(sheet_of(scene, 2), [scene] * 2)])


@pytest.fixture(scope="session")
def press_single(tmp_path_factory) -> PressFile:
    """A single face with its marks."""
    page = single_page(TRIM, BLEED, TITLE, "Lint", small_print())
    return written(tmp_path_factory.mktemp("single"), [(page, [with_everything()])])
