"""Studios from their text, and the calibration pages of them."""

from functools import cache

from kit import folder

from padspec.resolve.lettering_fonts import FontShelf
from padspec.resolve.settings import Troubles
from padspec.test_prints.calibration import Page, calibration_pages, calibration_pdf
from padspec.test_prints.workshop import Workshop, read_workshop


def workshop(studio: str = "") -> Workshop:
    return read_workshop(folder(studio=studio))


@cache
def plain_font():
    return FontShelf(folder(), Troubles()).plain()


@cache
def pages(studio: str = "", is_corrected: bool = False) -> tuple[Page, ...]:
    return calibration_pages(workshop(studio), plain_font(), is_corrected)


@cache
def pdf(studio: str = "", is_corrected: bool = False) -> bytes:
    return calibration_pdf(workshop(studio), plain_font(), is_corrected, "2000-01-01")
