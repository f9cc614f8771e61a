"""Scripts that need real shaping, against HarfBuzz called directly with their script and language."""

from typing import Any

import pytest
import uharfbuzz as hb

from padspec.compose.lettering.shaping import shape_line
from padspec.resolve.coverage import of_family
from padspec.resolve.font import Font


def family(name: str) -> Font:
    found = of_family(name, 600)
    assert found is not None
    return found


def harfbuzz(font: Font, text: str, script: str, language: str, direction: str) -> tuple[list[str], float]:
    """The names of the glyphs from left to right and the advance as a share of the em."""
    handle: Any = hb.Font(hb.Face(hb.Blob(font.data)))
    handle.set_variations({"wght": font.weight})
    buffer = hb.Buffer()
    buffer.add_str(text)
    buffer.script, buffer.language, buffer.direction = script, language, direction
    hb.shape(handle, buffer, {})
    names = [handle.glyph_to_string(info.codepoint) for info in buffer.glyph_infos]
    return names, sum(position.x_advance for position in buffer.glyph_positions) / handle.face.upem


@pytest.mark.parametrize(
    ("text", "glyphs"),
    [
        # Unicode Standard, chapter 12.1: a conjunct of ka and ssa; ra before a consonant as a hook over it (reph);
        # the sign i, which is read after its consonant and stands before it.
        ("\u0915\u094d\u0937", ["KaSsa.dv"]),
        ("\u0930\u094d\u0915", ["Ka.dv", "Reph.dv"]),
        ("\u0915\u093f", ["matraI.dv", "Ka.dv"]),
    ],
)
def test_devanagari_is_shaped_by_the_rules_of_its_script(text: str, glyphs: list[str]) -> None:
    font = family("Baloo 2")
    names, advance = harfbuzz(font, text, "Deva", "hi", "ltr")
    assert names == glyphs
    line = shape_line(font, text)
    assert line.advance == pytest.approx(advance, abs=1e-9)
    assert len(line.letters) == 1  # one grapheme


def test_arabic_letters_take_the_forms_of_their_places_and_join() -> None:
    font, word = family("Rubik"), "\u0642\u0627\u0626\u0645\u0629"
    names, advance = harfbuzz(font, word, "Arab", "ar", "rtl")
    assert shape_line(font, word).advance == pytest.approx(advance, abs=1e-9)
    apart = sum(shape_line(font, letter).advance for letter in word)
    assert advance < apart - 0.1
    # The presentation forms of the Unicode charts: qaf initial, alef final, yeh with hamza initial, meem medial,
    # teh marbuta final; from left to right they stand the other way round.
    assert names == ["uniFE94", "uniFEE4", "uniFE8B", "uniFE8E", "uniFED7"]


def test_lam_and_alef_are_one_ligature_even_in_tracked_lettering() -> None:
    lam_alef = shape_line(family("Rubik"), "\u0644\u0627", 0.2)
    names, advance = harfbuzz(family("Rubik"), "\u0644\u0627", "Arab", "ar", "rtl")
    assert len(lam_alef.letters) == len(names) == 1
    assert lam_alef.advance == pytest.approx(advance, abs=1e-9)


@pytest.mark.parametrize("language", ["C", "tr_TR.UTF-8", "sr_RS.UTF-8"])
def test_letters_do_not_follow_the_language_of_the_machine(monkeypatch: pytest.MonkeyPatch, language: str) -> None:
    monkeypatch.setenv("LANG", language)
    monkeypatch.setenv("LC_ALL", language)
    shape_line.cache_clear()
    line = shape_line(family("Lora"), "fi \u0431\u0433\u0434")
    names, advance = harfbuzz(family("Lora"), "fi ", "Latn", "und", "ltr")
    assert len(names) == 2  # the ligature, and the space
    assert line.letters[1].x + line.letters[1].advance == pytest.approx(advance, abs=1e-9)
