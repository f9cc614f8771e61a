"""Characters that no font has are named, with the fonts at hand that have them."""

from io import BytesIO

from fontTools.subset import Options, Subsetter
from fontTools.ttLib import TTFont
from kit import PLAIN, apply, pad

from padspec.base.findings import Finding
from padspec.checks.glyphs import fonts_with
from padspec.fonts import family_file

from .cases import of

RUPEES = "\u20a8"  # Mukta has the old rupee sign, and no font that stands in does


def found(text: str, files: dict[str, bytes] | None = None) -> list[Finding]:
    return of(pad(text, files=files), "missing-glyph")


def file_with(text: str) -> bytes:
    """A small font of the maker's own: a few glyphs of an installed one."""
    data = family_file("Mukta")
    assert data is not None
    font, cut, file = TTFont(BytesIO(data)), Subsetter(Options()), BytesIO()
    cut.populate(text=text)
    cut.subset(font)
    font.save(file)
    return file.getvalue()


def test_what_a_stand_in_has_is_not_missing() -> None:
    for text in (
        "\u0938\u0942\u091a\u0940",
        "\u0642\u0627\u0626\u0645\u0629",
        "\u05e7\u05e0\u05d9",
        "Жук",
        "Việc",
    ):
        assert found(apply(PLAIN, {"heading.text": text})) == []


def test_a_missing_character_is_named_with_its_number_and_the_font_that_has_it() -> None:
    (finding,) = found(apply(PLAIN, {"heading.text": f"{RUPEES} 20"}))
    assert f"has {RUPEES} (U+20A8 RUPEE SIGN)." in finding.message
    assert finding.measured == "1 missing"
    assert finding.remedy.text.startswith(f"Set font: {fonts_with(RUPEES, 600)[0]}, which has it.")
    assert "Mukta" in fonts_with(RUPEES, 600)


def test_the_font_that_is_offered_mends_it() -> None:
    changes = {"heading.text": f"{RUPEES} 20"}
    (finding,) = found(apply(PLAIN, changes))
    assert found(apply(PLAIN, changes | {"heading.font": finding.remedy.changes[0][1]})) == []


def test_a_file_of_the_makers_that_has_it_is_named() -> None:
    text = apply(PLAIN, {"heading.text": "\U00013000"})
    assert "No font at hand has it" in found(text)[0].remedy.text
    data = renamed(file_with(RUPEES), 0x20A8, 0x13000)
    (finding,) = found(text, {"fonts/reeds.ttf": data, "fonts/broken.ttf": b"no font"})
    assert finding.remedy.text.startswith("Set font: fonts/reeds.ttf, which has it.")
    assert finding.remedy.changes == ((("heading", "font"), "fonts/reeds.ttf"),)


def test_every_text_of_the_face_is_looked_at() -> None:
    text = apply(PLAIN, {"rows.labels": [RUPEES, "eggs"]})
    (finding,) = found(text)
    assert finding.remedy.text.startswith("Set label-font: ")


def test_many_missing_characters_are_counted_past_the_sixth() -> None:
    (finding,) = found(apply(PLAIN, {"heading.text": "\u9b5a\u8089\u91ce\u83dc\u679c\u7269\u9bca\u8c46"}))
    assert "and 2 more" in finding.message
    assert finding.measured == "8 missing"


def renamed(data: bytes, old: int, new: int) -> bytes:
    """The font with one character moved to another code point."""
    font, file = TTFont(BytesIO(data)), BytesIO()
    from fontTools.ttLib.tables._c_m_a_p import CmapSubtable

    table = CmapSubtable.newSubtable(12)
    table.platformID, table.platEncID, table.language = 3, 10, 0
    table.cmap = {new: font.getBestCmap()[old], 0x20: font.getBestCmap().get(0x20, font.getBestCmap()[old])}
    font["cmap"].tables = [table]
    font.save(file)
    return file.getvalue()
