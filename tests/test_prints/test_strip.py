"""The colour strip: labels that are true, patches that lie on paper where they should, at real size."""

import io
from functools import cache

import numpy as np
import pikepdf
import pytest
import yaml
from draw.reading_back import parts_of_nodes
from kit import PLAIN, apply, folder, pad, picture

from padspec.base.geometry import Affine, Box
from padspec.base.mixing import lch
from padspec.compose.compose import compose
from padspec.resolve.blocks.panel import Panel
from padspec.resolve.blocks.rows import Rows
from padspec.resolve.design import blocks
from padspec.sheet.bed import bed_of
from padspec.test_prints.ladders import AS_IT_IS, ladders
from padspec.test_prints.spec_lines import reaches
from padspec.test_prints.strip import PATCH, strip_pages, strip_pdf
from padspec.test_prints.window import best_window, cropped

from .printer import Printer, nearest, pages_of

DOTS = {"kind": "dots", "size": "5 mm", "mark": "30 %"}
TWO = """layout: two
about: Two lists.
face:
  - art: {id: art}
  - panel: {id: upper, grow: 1, holds: [{heading: {id: one, text: To buy}}, {rows: {id: shop, grow: 1}}]}
  - panel: {id: lower, grow: 1, holds: [{rows: {id: notes, grow: 1, checkbox: none}}]}
"""
DESIGNS = {
    "plain": {},
    "dots and a picture": {"ground.pattern": DOTS, "art.file": "moth.png"},
    "everything of its own": {
        "palette": {"ground": "#dfe9f2", "rule": "#7a3b58", "paper": "#fff8ec"},
        "ground.pattern": {"kind": "stripes", "colour": "rule", "lighten": "80 %"},
        "heading.colour": "rule",
        "rows": {"checkbox-colour": "#223344", "weight": "0.08 mm"},
    },
    "white ground, black rules": {"ground.colour": "white", "rows.colour": "black", "panel.colour": "#eeeeee"},
    "grey ground": {"ground.colour": "#dddddd", "rows.weight": "1 pt"},
    "deep ground": {"ground.colour": "#101820", "rows.colour": {"from": "rule", "darken": "20 %"}},
    "ruled": {"layout": "ruled"},
    "two lists": {"layout": "two"},
    "two lists, one set by itself": {
        "layout": "two",
        "blocks": {"shop": {"colour": "#335577", "weight": "0.4 mm"}, "upper": {"colour": "#fffbe8"}},
    },
}
FILES = {"moth.png": picture(700, 560), "layouts/two.yaml": TWO.encode()}
NAMES = list(DESIGNS)


def text(name: str) -> str:
    return apply(PLAIN, DESIGNS[name])


@cache
def made(name: str, studio: str = ""):
    one = pad(text(name), studio, FILES)
    found = ladders(one.design, reaches(one.documents, one.design, folder(text(name), studio, FILES)))
    return one.design, found


def rungs(name: str):
    return [(ladder, rung) for ladder in made(name)[1] for rung in ladder.rungs]


def dotted(bundle: dict, above: tuple[str, ...] = ()) -> dict[str, str]:
    found: dict[str, str] = {}
    for key, value in bundle.items():
        found |= dotted(value, (*above, key)) if isinstance(value, dict) else {".".join((*above, key)): value}
    return found


@pytest.mark.parametrize("name", NAMES)
def test_the_line_under_every_patch_gives_it_exactly(name):
    """The line is read as YAML and set in the maker's file; the face made of that is the same, node by node."""
    for ladder, rung in rungs(name):
        line = dotted(yaml.load(rung.line.text, Loader=yaml.BaseLoader))
        assert line == {".".join(rung.line.path): rung.line.value}
        given = pad(apply(text(name), line), "", FILES)
        assert given.face.scene == compose(rung.design).scene, (ladder.name, rung.step, rung.line.text)


@pytest.mark.parametrize("name", NAMES)
def test_each_row_has_the_design_as_it_is_once_and_four_other_steps(name):
    for ladder in made(name)[1]:
        assert sum(rung.is_own for rung in ladder.rungs) == 1
        assert len(ladder.rungs) == 5, ladder.name
        assert len({rung.line.value for rung in ladder.rungs}) == 5


@pytest.mark.parametrize("name", NAMES)
def test_the_patch_as_it_is_shows_the_design_itself(name):
    design, found = made(name)
    for ladder in found:
        assert next(rung.design for rung in ladder.rungs if rung.is_own) is design


@pytest.mark.parametrize("name", NAMES)
def test_a_row_of_lightness_goes_from_dark_to_light_with_the_hue_kept(name):
    for ladder in made(name)[1]:
        if ladder.name in ("Ground, lightness", "Rules, lightness", "Panel, lightness"):
            shades = [lch(colour(rung)) for rung in ladder.rungs]
            assert [s[0] for s in shades] == sorted(s[0] for s in shades)
            hues = [s[2] for s in shades if s[1] > 0.03]
            assert max(hues, default=0) - min(hues, default=0) < 4


def test_a_step_says_how_much_lighter_it_is():
    """OKLab lightness, in points of a hundred, as far as 8 bits tell."""
    ladder = next(ladder for ladder in made("plain")[1] if ladder.name == "Ground, lightness")
    own = lch(made("plain")[0].ground.colour)[0]
    told = {rung.step: lch(colour(rung))[0] - own for rung in ladder.rungs}
    assert told["3 % lighter"] == pytest.approx(0.03, abs=0.003)
    assert told["6 % darker"] == pytest.approx(-0.06, abs=0.003)


def colour(rung):
    from padspec.base.colour import Colour

    return Colour.from_hex(rung.line.value)


def test_weights_stay_above_a_twentieth_of_a_millimetre():
    ladder = next(ladder for ladder in made("everything of its own")[1] if ladder.name == "Rules, weight")
    weights = [float(rung.line.value.removesuffix(" mm")) for rung in ladder.rungs]
    assert weights == pytest.approx([0.08, 0.13, 0.18, 0.23, 0.28])


def test_a_block_that_is_set_by_itself_is_given_by_its_own_key():
    lines = {rung.line.path for _, rung in rungs("two lists, one set by itself")}
    assert ("blocks", "shop", "colour") in lines
    assert ("blocks", "upper", "colour") in lines


def test_squares_of_a_colour_of_their_own_stay_as_they_are():
    for ladder, rung in rungs("everything of its own"):
        rows = next(block for block in blocks(rung.design) if isinstance(block, Rows))
        assert rows.squares.colour.hex == "#223344", ladder.name


def test_a_design_without_rows_and_panel_has_rows_for_its_ground_alone():
    layout = b"layout: bare\nabout: Words.\nface:\n  - heading: {id: words, text: Hello}\n"
    files = {"layouts/bare.yaml": layout}
    source = apply(PLAIN, {"layout": "bare"})
    one = pad(source, "", files)
    found = ladders(one.design, reaches(one.documents, one.design, folder(source, "", files)))
    assert [ladder.name for ladder in found] == ["Ground, lightness", "Ground, chroma"]


class TestTheWindow:
    @pytest.mark.parametrize("name", NAMES)
    def test_shows_ground_panel_corner_and_rules(self, name):
        design, _ = made(name)
        face = compose(design)
        window = best_window(face, PATCH)
        panel = next(block for block in blocks(design) if isinstance(block, Panel))
        box = face.placement(panel.id).box
        shown = [shape for shape in cropped(face.scene, window).layers if shape.name == "rules"]
        assert shown
        assert not box.covers(window)
        assert box.overlaps(window)

    @pytest.mark.parametrize("name", NAMES)
    def test_lies_inside_the_face_and_its_bleed(self, name):
        face = compose(made(name)[0])
        assert face.scene.bleed_box.covers(best_window(face, PATCH))

    def test_is_no_larger_than_a_small_face(self):
        one = pad(apply(PLAIN, {"trim": {"width": "25 mm", "height": "24 mm"}, "heading.text": "''"}))
        window = best_window(one.face, PATCH)
        assert (window.width, window.height) == (31, 30)

    def test_a_cropped_face_looks_the_same_in_the_window(self):
        from padspec.draw.pdf import face_pdf
        from padspec.draw.png import rasterise

        face = compose(made("dots and a picture")[0])
        window = best_window(face, PATCH)
        whole, part = (rasterise(face_pdf(scene), 150) for scene in (face.scene, cropped(face.scene, window)))
        bleed = face.scene.bleed
        left, top, right, bottom = (
            round((edge + bleed) * 150 / 25.4) for edge in (window.x, window.y, window.right, window.bottom)
        )
        assert np.array_equal(whole[top:bottom, left:right], part[top:bottom, left:right])
        assert not np.array_equal(whole, part)


class TestOnPaper:
    @pytest.mark.parametrize("sheet", ["A4", "letter", "A5", "A3", "half-letter"])
    def test_patches_and_words_stay_inside_the_printable_area(self, sheet):
        design, found = made("dots and a picture", f"sheet: {{size: {sheet}}}\n")
        area = bed_of(design).printable
        for page in strip_pages(design, found, PATCH):
            assert all(area.covers(patch.box) for patch in page.patches)
            points = np.concatenate([part.points for part in parts_of_nodes(page.nodes, Affine())])
            assert area.covers(Box(*points.min(axis=0), *np.ptp(points, axis=0)))

    @pytest.mark.parametrize("sheet", ["A4", "letter", "A5", "half-letter"])
    def test_patches_lie_apart(self, sheet):
        design, found = made("plain", f"sheet: {{size: {sheet}}}\n")
        for page in strip_pages(design, found, PATCH):
            boxes = [patch.box.inset(-0.99) for patch in page.patches]
            assert not any(a.overlaps(b) for n, a in enumerate(boxes) for b in boxes[:n])

    def test_every_rung_has_its_patch_in_order(self):
        design, found = made("plain", "sheet: {size: A5}\n")
        laid = [patch.rung for page in strip_pages(design, found, PATCH) for patch in page.patches]
        assert laid == [rung for ladder in found for rung in ladder.rungs]

    @pytest.mark.parametrize("sheet", ["A4", "letter"])
    def test_a_common_sheet_holds_it_all(self, sheet):
        design, found = made("plain", f"sheet: {{size: {sheet}}}\n")
        assert len(strip_pages(design, found, PATCH)) == 1

    def test_a_rule_in_a_patch_lands_at_its_place_through_a_printer_that_shifts_and_stretches(self):
        """The last patch of the page, by pdfplumber and the simulated printer, within 0.01 mm."""
        printer = Printer((0.8, -0.5), (0.996, 1.0025))
        design, found = made("plain", printer.yaml)
        face = compose(found[-1].rungs[-1].design)
        window = best_window(compose(design), PATCH)
        patch = strip_pages(design, found, window.size)[-1].patches[-1]
        rules = next(layer for layer in cropped(face.scene, window).layers if layer.name == "rules").nodes
        place = Affine.move(patch.box.x - window.x, patch.box.y - window.y)
        wanted = [part.points for part in parts_of_nodes(rules, place)]
        (page, drawn), *_ = pages_of(strip_pdf(design, found, None))
        assert nearest(wanted, [printer.printed(page, part.points) for part in drawn]) < 0.01

    def test_colours_in_the_file_are_those_of_the_labels(self):
        design, found = made("plain")
        (_, drawn), *_ = pages_of(strip_pdf(design, found, None))
        fills = {part.fill for part in drawn}
        strokes = {part.stroke for part in drawn}
        for ladder in found:
            for rung in ladder.rungs:
                if rung.line.value.startswith("#"):
                    rgb = tuple(bytes.fromhex(rung.line.value[1:]))
                    assert rgb in (strokes if ladder.name.startswith("Rules") else fills)

    def test_a_picture_that_reaches_into_the_window_is_in_the_file_once(self):
        layout = b"layout: low\nabout: A picture.\nface:\n  - art: {id: art}\n"
        files = FILES | {"layouts/low.yaml": layout}
        source = apply(PLAIN, {"layout": "low", "art.file": "moth.png", "trim.height": "40 mm"})
        one = pad(source, "", files)
        found = ladders(one.design, reaches(one.documents, one.design, folder(source, "", files)))
        with pikepdf.open(io.BytesIO(strip_pdf(one.design, found, None))) as document:
            images = [
                o for o in document.objects if isinstance(o, pikepdf.Stream) and o.get("/Subtype") == "/Image"
            ]
        assert sum("/SMask" in image for image in images) == 1

    def test_the_same_bytes_twice(self):
        design, found = made("dots and a picture")
        assert strip_pdf(design, found, design.date) == strip_pdf(design, found, design.date)


def test_the_word_for_the_designs_own_value_stands_in_every_row():
    assert {rung.step for _, rung in rungs("plain") if rung.is_own} == {AS_IT_IS}
