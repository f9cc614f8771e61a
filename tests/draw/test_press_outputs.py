"""What goes to the press names how its colours were made."""

import io

import pypdfium2
import pytest
from kit import PLAIN, pad
from press.made import profile_bytes

from padspec.draw.press.outputs import press_files
from padspec.press.of_design import separator_of


@pytest.mark.parametrize(("pages", "size"), [("face", (112.0, 212.0)), ("sheet", (210.0, 297.0))])
def test_a_single_face_or_a_whole_sheet_is_sent_as_the_studio_says(pages: str, size: tuple[float, float]) -> None:
    """A face of 90 × 190 mm has 3 mm of bleed and 8 mm for marks on each side; pdfium reads the page."""
    studio = f"press: {{profile: p.icc, pages: {pages}}}\n"
    made = pad(PLAIN, studio, {"p.icc": profile_bytes()})
    files = press_files(made.design, made.face, made.sheet, separator_of(made.design), proof=False)
    page = pypdfium2.PdfDocument(io.BytesIO(files["press.pdf"]))[0]
    assert [side * 25.4 / 72 for side in page.get_size()] == pytest.approx(size, abs=0.01)
    assert list(files) == ["press.pdf"]


def test_the_slug_names_profile_intent_and_black_point() -> None:
    from padspec.draw.press.outputs import _conversion
    from padspec.press.profile import Press, read_profile

    press = Press(read_profile(profile_bytes(), "p.icc"), "perceptual", black_point=False)
    assert _conversion(press)[1] == "perceptual intent, without black-point compensation"
