"""Shaped lettering against fontTools, an independent reader of the same font files."""

from functools import cache
from io import BytesIO

import pytest
from fontTools.pens.areaPen import AreaPen
from fontTools.pens.boundsPen import BoundsPen
from fontTools.ttLib import TTFont
from fontTools.varLib.instancer import instantiateVariableFont
from hypothesis import given, settings
from hypothesis import strategies as st

from padspec.compose.lettering.shaping import cap_height, shape_line
from padspec.resolve.coverage import missing_characters

from ..blocks import font
from ..replay import true_area, true_bounds

LETTERS = "HoAgQ8&é"


@cache
def their_font(name: str, weight: int) -> TTFont:
    """The font as fontTools reads it, a variable one pinned to its weight."""
    theirs = TTFont(BytesIO(font(name).data))
    if "fvar" not in theirs:
        return theirs
    pinned = {
        axis.axisTag: weight if axis.axisTag == "wght" else axis.defaultValue for axis in theirs["fvar"].axes
    }
    return instantiateVariableFont(theirs, pinned)


@pytest.mark.parametrize("letter", LETTERS)
@pytest.mark.parametrize(("name", "weight"), [("Fredoka One", 400), ("Fredoka", 600), ("Nunito", 700)])
def test_a_letter_has_the_bounds_the_area_and_the_advance_that_fonttools_reads(
    name: str, weight: int, letter: str
) -> None:
    theirs = their_font(name, weight)
    glyphs, em = theirs.getGlyphSet(), theirs["head"].unitsPerEm
    glyph = glyphs[theirs.getBestCmap()[ord(letter)]]
    box, area = BoundsPen(glyphs), AreaPen(glyphs)
    glyph.draw(box)
    glyph.draw(area)
    left, low, right, high = (value / em for value in box.bounds)
    shaped = shape_line(font(name, weight), letter)
    assert true_bounds(shaped.outline) == pytest.approx((left, -high, right, -low), abs=1e-3)
    assert true_area(shaped.outline) == pytest.approx(abs(area.value) / em**2, abs=1e-3)
    assert shaped.advance == pytest.approx(glyph.width / em, abs=1e-3)


@pytest.mark.parametrize("name", ["Fredoka One", "Fredoka", "Nunito"])
def test_cap_height_is_what_the_font_says_of_itself(name: str) -> None:
    theirs = TTFont(BytesIO(font(name).data))
    assert cap_height(font(name)) == pytest.approx(theirs["OS/2"].sCapHeight / theirs["head"].unitsPerEm, abs=0.02)


@settings(deadline=None)
@given(st.text("abcdefgHIJKLMNO 0123456789", min_size=1, max_size=20), st.sampled_from("abcXYZ 9"))
def test_a_longer_text_never_takes_less_room(text: str, more: str) -> None:
    assert (
        shape_line(font(), text + more).advance > shape_line(font(), text).advance - 0.15
    )  # kerning pulls a little


def test_the_ink_of_a_line_stands_on_the_baseline() -> None:
    ink = shape_line(font(), "HEI").ink
    assert ink.bottom == pytest.approx(0, abs=0.02)
    assert ink.y == pytest.approx(-cap_height(font()), abs=0.02)


def test_each_letter_stands_where_the_ones_before_it_end() -> None:
    one = shape_line(font(), "H")
    for count in (2, 5, 12):
        ink = shape_line(font(), "H" * count).ink
        assert ink.width == pytest.approx((count - 1) * one.advance + one.ink.width, abs=1e-9)


def test_kerning_of_the_font_is_followed() -> None:
    nunito = font("Nunito")
    pair = shape_line(nunito, "AV").advance
    assert pair < shape_line(nunito, "A").advance + shape_line(nunito, "V").advance - 0.01


@pytest.mark.parametrize("text", ["", " ", "\u00a0 "])
def test_text_without_ink_has_no_outline(text: str) -> None:
    shaped = shape_line(font(), text)
    assert shaped.outline == ()
    assert shaped.ink.width == 0


def test_characters_that_the_font_lacks_are_named_once_each_in_order() -> None:
    assert missing_characters(font(), "a字b漢字c") == "字漢"


def test_spaces_and_joiners_need_no_letter_of_the_font() -> None:
    assert missing_characters(font(), "a \u00a0\u200d\u200eb") == ""
