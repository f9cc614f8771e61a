import base64
import io
import sys

import numpy as np
import pytest
from PIL import Image

from padspec.art.errors import ArtError
from padspec.art.svg.drawing import check_svg, draw_svg, svg_size
from padspec.art.svg.effort import MOST_NESTED

from .made import SVG, saved

PLAIN = (
    '<path d="M20 20 C80 -10 150 60 180 120 L60 150 Z" fill="#7a3b58"/>'
    '<circle cx="70" cy="80" r="30" fill="#ffcc00" stroke="#222" stroke-width="3"/>'
)
XLINK = 'xlink:href="https://moth.example/a.png"'


def drawing(body, head=SVG):
    return (head + body + "</svg>").encode()


def embedded(width, height, form="PNG", kind="png"):
    data = saved(Image.new("RGB", (width, height)), form)
    return f'<image width="9" height="9" href="data:image/{kind};base64,{base64.b64encode(data).decode()}"/>'


class TestAllowed:
    @pytest.mark.parametrize(
        "body",
        [
            PLAIN,
            '<path id="a" d="M0 0H9V9Z"/><use href="#a"/><use xlink:href="#a" x="20"/>',
            '<linearGradient id="g"/><rect width="9" height="9" fill="url(#g)" style="stroke: url(\'#g\')"/>',
            "<style>@namespace svg url(http://www.w3.org/2000/svg); .a { fill: red }</style>",
            embedded(4, 4),
            embedded(4, 4, "JPEG", "jpeg"),
            embedded(4, 4, "WEBP", "webp"),
            embedded(4, 4, "GIF", "gif"),
            "<metadata><x xmlns='urn:x' resource='https://moth.example/licence'/></metadata>",
            "<title>moth</title><desc>url(x) is only text here</desc>",
        ],
    )
    def test_a_drawing_that_stays_in_its_file(self, body):
        check_svg(drawing(body), "moth.svg")

    @pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "iso-8859-1"])
    def test_encodings(self, encoding):
        declared = "" if encoding.startswith("utf") else f'<?xml version="1.0" encoding="{encoding}"?>'
        text = declared + SVG + '<title>Käfer</title><rect width="200" height="160" fill="#f00"/></svg>'
        drawn = draw_svg(text.encode(encoding), "moth.svg", 20, 16)
        assert tuple(drawn.rgba[8, 8]) == (255, 0, 0, 255)


class TestReferencesOutside:
    @pytest.mark.parametrize(
        ("body", "element"),
        [
            ('<image href="moth.png"/>', "<image>"),
            (f"<image {XLINK}/>", "<image>"),
            ('<use href="other.svg#a"/>', "<use>"),
            ('<use href=" file:///etc/passwd#a"/>', "<use>"),
            ('<filter><feImage href="//moth.example/x.png"/></filter>', "<feImage>"),
            ('<a href="https://moth.example"><path d="M0 0"/></a>', "<a>"),
            ('<image href="data:image/svg+xml;base64,PHN2Zy8+"/>', "<image>"),
            ('<image href="data:text/html,hello"/>', "<image>"),
            ('<rect fill="url(paint.svg#a)"/>', "<rect fill>"),
            ('<rect style="filter:url(https://moth.example/f#x)"/>', "<rect style>"),
            ('<rect style="fill:u\\72l(https://moth.example/f)"/>', "<rect style>"),
            ("<rect style=\"fill:image-set('a.png' 1x)\"/>", "<rect style>"),
            ("<style>.a { fill: url(paint.svg) }</style>", "<style>"),
            ('<style>@import "moth.css";</style>', "<style>"),
            ("<style>@\\69mport url(moth.css);</style>", "<style>"),
            ("<style>@media print { .a { fill: url('x.svg') } }</style>", "<style>"),
            ("<style>@font-face { src: url(x.woff) }</style>", "<style>"),
            ("<style>@import url(data:text/css,a{});</style>", "<style>"),
        ],
    )
    def test_refused_with_element_and_line(self, body, element):
        with pytest.raises(ArtError) as refusal:
            check_svg(drawing("\n\n" + body), "moth.svg")
        assert refusal.value.message.startswith("moth.svg, line 3: ")
        assert element in refusal.value.message
        assert refusal.value.mend

    def test_style_sheet_of_another_file(self):
        file = b'<?xml version="1.0"?>\n<?xml-stylesheet href="moth.css"?>\n' + drawing(PLAIN)
        with pytest.raises(ArtError, match=r"line 2: <\?xml-stylesheet"):
            check_svg(file, "moth.svg")

    def test_base_is_refused(self):
        with pytest.raises(ArtError, match="attribute base"):
            check_svg(drawing('<g xml:base="https://moth.example/"/>'), "moth.svg")

    def test_a_reference_changed_by_animation(self):
        with pytest.raises(ArtError, match="<set> changes a reference"):
            check_svg(drawing('<image><set attributeName="href" to="https://moth.example"/></image>'), "moth.svg")


class TestWhatPaperCannotShow:
    @pytest.mark.parametrize(
        "body",
        [
            "<script>1</script>",
            "<foreignObject><p xmlns='http://www.w3.org/1999/xhtml'>x</p></foreignObject>",
            "<img xmlns='http://www.w3.org/1999/xhtml' src='x'/>",
            '<rect onclick="x()"/>',
        ],
    )
    def test_pieces_of_web_pages_are_refused(self, body):
        with pytest.raises(ArtError, match=r"line 2: .*web page"):
            check_svg(drawing("\n" + body), "moth.svg")

    def test_lettering_is_to_become_paths(self):
        with pytest.raises(ArtError) as refusal:
            check_svg(drawing("\n<text>Before dark</text>"), "moth.svg")
        assert "line 2: <text>" in refusal.value.message
        assert "Turn the lettering into paths" in refusal.value.mend


class TestHostileFiles:
    def test_entities_are_refused(self):
        file = b'<!DOCTYPE svg [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]>' + drawing("<title>&b;</title>")
        with pytest.raises(ArtError, match="DOCTYPE"):
            check_svg(file, "moth.svg")

    def test_uses_of_uses_are_counted(self):
        """Ten uses of ten uses and so on, seven times: ten million shapes from a kilobyte."""
        levels = "".join(f'<g id="a{n + 1}">' + f'<use href="#a{n}"/>' * 10 + "</g>" for n in range(7))
        with pytest.raises(ArtError, match=r"draws \d+ elements once its references are followed"):
            check_svg(drawing('<defs><path id="a0" d="M0 0H1"/>' + levels + "</defs>"), "moth.svg")

    def test_patterns_in_patterns_are_counted(self):
        levels = "".join(
            f'<pattern id="a{n + 1}">' + f'<rect fill="url(#a{n})"/>' * 10 + "</pattern>" for n in range(7)
        )
        with pytest.raises(ArtError, match="elements once its references are followed"):
            check_svg(drawing('<pattern id="a0"/>' + levels), "moth.svg")

    def test_a_reference_to_itself(self):
        with pytest.raises(ArtError, match="line 2: an element refers to itself"):
            check_svg(drawing('\n<g id="a"><use href="#a"/></g>'), "moth.svg")

    def test_deep_nesting(self):
        with pytest.raises(ArtError, match=f"nested more than {MOST_NESTED} deep"):
            check_svg(drawing("<g>" * MOST_NESTED + "</g>" * MOST_NESTED), "moth.svg")

    def test_deep_nesting_through_references(self):
        chain = "".join(f'<g id="a{n}"><use href="#a{n + 1}"/></g>' for n in range(60))
        with pytest.raises(ArtError, match=f"nested more than {MOST_NESTED} deep"):
            check_svg(drawing(chain), "moth.svg")

    def test_nesting_at_the_limit_is_drawn(self):
        deep = MOST_NESTED - 2
        body = "<g>" * deep + '<rect width="200" height="160" fill="#00f"/>' + "</g>" * deep
        assert tuple(draw_svg(drawing(body), "moth.svg", 20, 16).rgba[8, 8]) == (0, 0, 255, 255)

    def test_a_drawing_that_takes_too_long(self, monkeypatch):
        """A thousand see-through groups over the whole picture: minutes of work from 80 kB."""
        monkeypatch.setattr("padspec.art.svg.drawing.MOST_SECONDS", 1)
        group = '<g opacity=".5"><rect width="200" height="160"/><circle r="100"/></g>'
        with pytest.raises(ArtError, match="more than 1 s to draw at 1600 × 1280"):
            draw_svg(drawing(group * 1000), "moth.svg", 1600, 1280)

    @pytest.mark.skipif(sys.platform == "win32", reason="no limit of memory there")
    def test_a_drawing_that_takes_too_much_memory(self):
        """Sixty canvases of 40 megapixels, one within the other, would take 9 GB."""
        body = '<g opacity=".5">' * 60 + '<rect width="200" height="160"/><circle r="100"/>' + "</g>" * 60
        with pytest.raises(ArtError, match="more memory than it is given"):
            draw_svg(drawing(body), "moth.svg", 7000, 5600)

    def test_too_large_a_file(self):
        with pytest.raises(ArtError, match=r"is 20\.\d MB; the limit for a drawing is 20 MB"):
            check_svg(drawing(" " * 20_000_000), "moth.svg")

    def test_too_large_embedded_pictures(self):
        """A header that says 20000 × 20000 is enough; the pixels are not decoded."""
        data = bytearray(saved(Image.new("L", (1, 1)), "GIF"))
        data[6:10] = (20000).to_bytes(2, "little") * 2
        image = f'<image href="data:image/gif;base64,{base64.b64encode(bytes(data)).decode()}"/>'
        with pytest.raises(ArtError, match="400 megapixels"):
            check_svg(drawing(image), "moth.svg")

    def test_unreadable_embedded_picture(self):
        with pytest.raises(ArtError, match="cannot be read"):
            check_svg(drawing('<image href="data:image/png;base64,AAAA"/>'), "moth.svg")

    @pytest.mark.parametrize(
        "file", [b"", b"<svg", b"<svg xmlns='http://www.w3.org/2000/svg'><g></svg>", b"\xff<svg/>"]
    )
    def test_not_well_formed(self, file):
        with pytest.raises(ArtError, match="line 1: this is not well-formed"):
            check_svg(file, "moth.svg")

    def test_another_root(self):
        with pytest.raises(ArtError, match="root is <html>"):
            check_svg(b"<html/>", "moth.svg")

    def test_compressed(self):
        with pytest.raises(ArtError, match="svgz"):
            check_svg(b"\x1f\x8b\x08", "moth.svgz")


class TestSize:
    @pytest.mark.parametrize(
        ("attributes", "size"),
        [
            ('width="90mm" height="60mm"', (90 / 25.4 * 96, 60 / 25.4 * 96)),
            ('width="2in" height="72pt"', (192, 96)),
            ('width="3cm" height="1pc"', (3 / 2.54 * 96, 16)),
            ('viewBox="0 0 30 20"', (30, 20)),
            ('viewBox="5,5,30,20" width="100%" height="100%"', (30, 20)),
            ('viewBox="0 0 30 20" width="60"', (60, 40)),
            ('viewBox="0 0 30 20" height="10px"', (15, 10)),
            ('viewBox="0 0 30 20" width="1e2" height="50"', (100, 50)),
        ],
    )
    def test_units_and_view_box(self, attributes, size):
        """Ratios of the units: CSS Values and Units 4, section 6."""
        assert svg_size(f'<svg xmlns="http://www.w3.org/2000/svg" {attributes}/>'.encode()) == pytest.approx(size)

    @pytest.mark.parametrize(
        ("attributes", "message"),
        [
            ("", "does not say how large"),
            ('width="100%" height="100%"', "does not say how large"),
            ('width="20"', "does not say how large"),
            ('width="0" height="20"', "0 × 20 px"),
            ('viewBox="0 0 0 20"', "0 × "),
            ('width="-5" height="20"', "-5 × 20"),
            ('width="1e9" height="20"', r"1e\+09"),
            ('width="5000" height="1"', "more than 200 times"),
            ('viewBox="0 0 nan 3"', "does not say how large"),
        ],
    )
    def test_no_usable_size_is_refused(self, attributes, message):
        with pytest.raises(ArtError, match=message):
            svg_size(f'<svg xmlns="http://www.w3.org/2000/svg" {attributes}/>'.encode())


class TestDraw:
    def test_as_another_renderer_draws_it(self):
        """Cairo draws the same plain drawing; edges may differ by a fraction of a pixel's cover."""
        cairosvg = pytest.importorskip("cairosvg")
        ours = draw_svg(drawing(PLAIN), "moth.svg", 400, 320).rgba.astype(int)
        png = cairosvg.svg2png(bytestring=drawing(PLAIN), output_width=400, output_height=320)
        theirs = np.asarray(Image.open(io.BytesIO(png)).convert("RGBA")).astype(int)
        off = np.abs(ours * (ours[..., 3:] > 0) - theirs * (theirs[..., 3:] > 0)).max(axis=2)
        assert (off > 3).mean() < 0.02
        assert np.abs(ours[..., 3] - theirs[..., 3]).max() < 64

    def test_alpha_is_straight(self):
        drawn = draw_svg(drawing('<rect width="200" height="160" fill="#f00" opacity=".5"/>'), "moth.svg", 20, 16)
        np.testing.assert_allclose(drawn.rgba[8, 8], [255, 0, 0, 128], atol=1)

    def test_of_another_shape_it_stands_in_the_middle(self):
        drawn = draw_svg(drawing('<rect width="200" height="160" fill="#f00"/>'), "moth.svg", 50, 80)
        assert drawn.rgba.shape == (80, 50, 4)
        assert list(np.flatnonzero(drawn.rgba[:, 25, 3])[[0, -1]]) == [20, 59]

    def test_checked_before_it_is_drawn(self):
        with pytest.raises(ArtError, match="outside the file"):
            draw_svg(drawing('<image href="moth.png"/>'), "moth.svg", 20, 16)

    def test_too_many_pixels(self):
        with pytest.raises(ArtError, match="400 megapixels; the limit is 100"):
            draw_svg(drawing(PLAIN), "moth.svg", 20_000, 20_000)
