"""Characters that the wished font lacks come from the fonts that stand in for it, matched in height and weight."""

from io import BytesIO

import pytest
from fontTools.pens.boundsPen import BoundsPen
from fontTools.ttLib import TTFont
from fontTools.varLib.instancer import instantiateVariableFont
from hypothesis import given
from hypothesis import strategies as st
from uniseg.graphemecluster import grapheme_cluster_boundaries

from padspec.compose.lettering import fallback
from padspec.compose.lettering.fallback import set_runs, stand_in
from padspec.compose.lettering.shaping import shape_line
from padspec.resolve import coverage
from padspec.resolve.coverage import families_used, lacking, missing_characters
from padspec.resolve.font import Font

from .fonts import shelved

ARABIC = "\u0642\u0627\u0626\u0645\u0629"
HINDI = "\u0938\u0942\u091a\u0940"


def set_in(text: str, name: str = "Fredoka") -> list[tuple[str, str]]:
    return [(run.text, run.font.name) for run in set_runs(shelved(name), text)]


def their_x_height(font: Font) -> float:
    """The top of the x as fontTools reads it, as a share of the em."""
    theirs = TTFont(BytesIO(font.data))
    if "fvar" in theirs:
        axes = {axis.axisTag: axis for axis in theirs["fvar"].axes}
        pinned = {tag: axis.defaultValue for tag, axis in axes.items()}
        pinned["wght"] = min(max(font.weight, axes["wght"].minValue), axes["wght"].maxValue)
        theirs = instantiateVariableFont(theirs, pinned)
    glyphs = theirs.getGlyphSet()
    pen = BoundsPen(glyphs)
    glyphs["x"].draw(pen)
    return float((pen.bounds[3] - pen.bounds[1]) / theirs["head"].unitsPerEm)


def test_arabic_inside_latin_is_taken_from_the_first_font_that_has_it() -> None:
    """By hand from UAX #9: after Arabic letters the year is a number of level 2 (W2, I1), seen left of them."""
    assert set_in(f"Notes {ARABIC} 2026") == [("Notes ", "Fredoka"), ("2026", "Fredoka"), (f"{ARABIC} ", "Rubik")]


def test_devanagari_inside_latin_keeps_its_space_and_gives_the_line_back() -> None:
    assert set_in(f"Notes {HINDI} {HINDI} 7") == [
        ("Notes ", "Fredoka"),
        (f"{HINDI} {HINDI} ", "Baloo 2"),
        ("7", "Fredoka"),
    ]


def test_a_letter_with_its_accents_comes_from_one_font() -> None:
    """Fredoka has the e and lacks the two accents; the e goes with them (UAX #29: one grapheme cluster)."""
    assert set_in("me\u0323\u0302t") == [("m", "Fredoka"), ("e\u0323\u0302", "Baloo 2"), ("t", "Fredoka")]


@given(st.text(alphabet=f"ab é\u0301\u0323ệł7{HINDI}\u094d\u0915\u0937\u200dЖ", max_size=20))
def test_no_grapheme_cluster_is_split_and_no_character_lost(text: str) -> None:
    parts = [run.text for run in set_runs(shelved(), text)]
    assert "".join(parts) == text
    ends = {sum(map(len, parts[:n])) for n in range(len(parts) + 1)}
    cuts_of_scripts = {
        sum(map(len, [r.text for r in fallback.visual_runs(text)][:n])) for n in range(len(text) + 1)
    }
    assert ends <= set(grapheme_cluster_boundaries(text)) | cuts_of_scripts


@pytest.mark.parametrize("family", ["Baloo 2", "Nunito", "Rubik"])
@pytest.mark.parametrize(
    ("name", "weight"), [("Fredoka", 600), ("Lora", 500), ("Caveat", 700), ("Lilita One", 400)]
)
def test_a_stand_in_has_the_x_height_of_the_font_it_stands_in_for(name: str, weight: int, family: str) -> None:
    font = shelved(name, weight)
    found = stand_in(font, family)
    assert found is not None
    assert their_x_height(found.font) * found.scale == pytest.approx(their_x_height(font), abs=2e-3)


def test_a_bolder_font_has_a_bolder_stand_in() -> None:
    weights = [stand_in(shelved("Fredoka", weight), "Rubik").font.weight for weight in (300, 500, 700)]
    assert weights == sorted(set(weights))


def test_a_font_whose_file_says_regular_and_looks_black_gets_a_black_stand_in() -> None:
    """Lilita One states weight 400 in its OS/2 table; its stems are as heavy as those of an 800."""
    assert stand_in(shelved("Lilita One", 400), "Baloo 2").font.weight >= 800


def test_no_other_font_is_read_while_nothing_is_missing(monkeypatch: pytest.MonkeyPatch) -> None:
    def unread(family: str, _: int) -> Font:
        raise AssertionError(f"{family} was read")

    monkeypatch.setattr(fallback, "of_family", unread)
    monkeypatch.setattr(coverage, "of_family", unread)
    shape_line.cache_clear()
    stand_in.cache_clear()
    assert shape_line(shelved(), "Before dark & after").ink.width > 1
    with pytest.raises(AssertionError, match="Baloo 2 was read"):
        shape_line(shelved(), HINDI)
    stand_in.cache_clear()


def test_what_no_stand_in_has_is_lacking_and_the_rest_is_not() -> None:
    assert missing_characters(shelved(), f"a {HINDI[0]}\u5b57") == f"{HINDI[0]}\u5b57"
    assert lacking(shelved(), f"a {HINDI[0]}\u5b57") == "\u5b57"


def test_an_accent_that_stands_apart_is_not_missing_where_the_letter_with_it_is_there() -> None:
    assert missing_characters(shelved("Fredoka One", 400), "Cafe\u0301") == ""


def test_the_families_that_a_text_takes_letters_from_are_told() -> None:
    assert families_used(shelved(), "Before dark") == ()
    assert families_used(shelved(), f"{ARABIC} {HINDI}") == ("Baloo 2", "Rubik")


def test_letters_of_a_stand_in_follow_where_those_before_them_end() -> None:
    line, alone = shape_line(shelved(), f"HH{HINDI}"), shape_line(shelved(), "HH")
    assert line.letters[2].x == pytest.approx(alone.advance, abs=1e-9)
    assert line.advance == pytest.approx(alone.advance + shape_line(shelved(), HINDI).advance, abs=1e-9)
