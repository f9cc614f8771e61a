"""Artwork of one black: its true size, one ink, what it says, a drawing traced true, thin lines told, mirrored."""

import re
import subprocess
from pathlib import Path
from xml.etree import ElementTree

import numpy as np
import pdfplumber
import pikepdf
import pytest
import zxingcpp
from cli.command import Outcome, padspec, written
from PIL import Image

MM = 25.4 / 72
#: A square of 20 with a hole of 10 in it, a bar one tenth of its height, and grey dust that is no black.
DRAWING = (
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20"><path fill-rule="evenodd" '
    'd="M0 0h20v20h-20zM5 5h10v10h-10z"/><path d="M24 9h16v2h-16z"/><path d="M30 0h6v4h-6z" fill="#ccc"/></svg>'
)


def run(folder: Path, stamp: str = "", *args: str) -> Outcome:
    text = "studio: Umberwick Paper\n" + (f"stamp: {stamp}\n" if stamp else "")
    (folder / "studio.yaml").write_text(text, "utf-8")
    (folder / "leaf.svg").write_text(DRAWING, "utf-8")
    return padspec(folder, "stamp", *args)


def pixels(pdf: Path, dpi: int) -> np.ndarray:
    subprocess.run(
        ["pdftoppm", "-r", str(dpi), "-gray", "-png", "-singlefile", pdf, pdf.with_suffix("")], check=True
    )
    return np.asarray(Image.open(pdf.with_suffix(".png")).convert("L"))


def test_it_is_as_wide_as_was_asked_for_and_black_alone(tmp_path: Path) -> None:
    done = run(tmp_path, "{text: [Made by hand], width: 50 mm}", "--json")
    assert done.status == 0, done
    pdf = tmp_path / "out/stamp/stamp.pdf"
    subprocess.run(["qpdf", "--check", pdf], check=True, capture_output=True)
    with pikepdf.open(pdf) as document:
        page = document.pages[0]
        assert float(page.MediaBox[2]) * MM == pytest.approx(50, abs=0.001)
        assert float(page.MediaBox[3]) * MM == pytest.approx(done.json["height"], abs=0.001)
        assert str(document.Root.ViewerPreferences.PrintScaling) == "/None"
        form = document.pages[0].Resources.XObject["/Stamp"].read_bytes().decode()
    # The only operator of colour is `g`, with nought: the black plate and no other (ISO 32000-1, table 74).
    assert set(re.findall(r"(?m)^.*\b(?:rg|RG|k|K|g|G|sc|scn|cs)$", form)) == {"0 g"}
    drawn = pdfplumber.open(pdf).pages[0].curves
    assert min(c["x0"] for c in drawn) * MM >= -0.001
    assert max(c["x1"] for c in drawn) * MM <= 50.001


def test_without_a_wish_it_is_the_studio_s_name(tmp_path: Path) -> None:
    done = run(tmp_path, "", "--json")
    assert (done.json["studio"], done.json["text"], done.json["width"]) == ("Umberwick Paper", [], 60.0)


def test_a_drawing_is_traced_where_it_lies(tmp_path: Path) -> None:
    # 10 mm high, so half a millimetre a unit: areas of the ring (300) and of the bar (32), the grey left out.
    done = run(tmp_path, "{art: leaf.svg, art-height: 10 mm, width: 40 mm}", "--json")
    assert done.status == 0, done
    ink = pixels(tmp_path / "out/stamp/stamp.pdf", 1200) < 128
    dot = 25.4 / 1200
    drawing = ink[: round(10.2 / dot)]
    assert drawing.sum() * dot * dot == pytest.approx((300 + 32) * 0.25, rel=0.01)
    left = round((40 - 20) / 2 / dot)
    rows = np.flatnonzero(drawing[:, left + 20])
    assert rows[0] * dot == pytest.approx(0, abs=0.05)
    assert rows[-1] * dot == pytest.approx(10, abs=0.06)
    assert not drawing[round(5 / dot), left + round(5 / dot)]  # the hole
    bar = np.flatnonzero(drawing[:, left + round(16 / dot)])
    assert (bar[0] * dot, (bar[-1] + 1) * dot) == pytest.approx((4.5, 5.5), abs=0.05)


def test_the_threshold_says_what_is_black(tmp_path: Path) -> None:
    light = run(tmp_path, "{art: leaf.svg, art-height: 10 mm, threshold: 90 %}", "--out", "light")
    dark = run(tmp_path, "{art: leaf.svg, art-height: 10 mm}", "--out", "dark")
    assert (light.status, dark.status) == (0, 0)
    areas = {name: (pixels(tmp_path / f"{name}/stamp/stamp.pdf", 600) < 128).sum() for name in ("light", "dark")}
    assert areas["light"] > areas["dark"] + 1000
    run(tmp_path, "{art: leaf.svg, threshold: 0 %}").refused("studio.yaml:2:", "darker than a grey of 0 %")


def test_thin_lines_are_told_and_heavy_ones_are_not(tmp_path: Path) -> None:
    told = run(tmp_path, "{art: leaf.svg, art-height: 2.4 mm}").err  # below what the schema takes
    assert "art-height" in told
    frame = '<path d="M0 0h100v20h-100zM.4.4v19.2h99.2v-19.2z"/>'  # 0.4 of 20 units: 0.2 mm where 20 are 10 mm
    (tmp_path / "thin.svg").write_text(
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 20">{frame}</svg>'
    )
    thin = run(tmp_path, "{art: thin.svg, art-height: 10 mm}", "--json").json["notes"]
    heavy = run(tmp_path, "{art: leaf.svg, art-height: 10 mm, text: [Made by hand]}", "--json").json["notes"]
    assert heavy == []
    assert len(thin) == 1
    assert "99 % of the ink of its drawing lies in lines of some 0.2 mm or less; under 0.25 mm" in thin[0]


def test_small_words_are_told(tmp_path: Path) -> None:
    line = (
        "all the pads of this small studio are made by hand, one leaf after the other, in the lane behind the mill"
    )
    assert "its line 1" in run(tmp_path, f"{{width: 30 mm, text: ['{line}']}}", "--json").json["notes"][0]


def test_mirrored_it_is_the_same_the_other_way_round(tmp_path: Path) -> None:
    wish = "{text: [Made by hand], link: https://example.com/u}"
    assert run(tmp_path, wish).status == run(tmp_path, wish, "--mirrored").status == 0
    folder = tmp_path / "out/stamp"
    right, wrong = (pixels(folder / f"{name}.pdf", 600) for name in ("stamp", "stamp-mirrored"))
    assert right.shape == wrong.shape
    # A dot at the edge of the page may fall to one side or the other.
    differ = (right < 128) != (wrong[:, ::-1] < 128)
    assert differ.mean() < 0.01
    assert [code.text for code in zxingcpp.read_barcodes(right)] == ["https://example.com/u"]


def test_the_svg_is_the_same_size_and_holds_one_colour(tmp_path: Path) -> None:
    done = run(tmp_path, "{text: [Made by hand], art: leaf.svg, link: https://example.com/u}", "--json")
    root = ElementTree.parse(tmp_path / "out/stamp/stamp.svg").getroot()
    assert root.get("width") == "60mm"
    assert float(root.get("height", "").removesuffix("mm")) == pytest.approx(done.json["height"], abs=0.001)
    fills = {element.get("fill") for element in root.iter()} - {None}
    assert fills == {"#000000"}
    assert not [element for element in root.iter() if element.get("stroke") or element.tag.endswith("image")]


@pytest.mark.parametrize(
    ("stamp", "said"),
    [
        ("{art: nowhere.svg}", ("studio.yaml:2:", "There is no picture nowhere.svg.")),
        ("{art: ../leaf.svg}", ("leads outside the project folder",)),
        ("{link: http://example.com}", ("does not begin with https://",)),
        (
            "{width: 15 mm, link: https://example.com/a-long-way-round}",
            ("modules and 2 × 4 of quiet zone", "15 mm"),
        ),
        ("{font: Nunitoo}", ("No installed package holds the font Nunitoo.", "Nunito")),
        ("{width: 400 mm}", ("400 mm",)),
    ],
)
def test_what_cannot_be_is_refused(tmp_path: Path, stamp: str, said: tuple[str, ...]) -> None:
    run(tmp_path, stamp).refused(*said)


def test_a_run_that_fails_leaves_nothing_that_looks_fresh(tmp_path: Path) -> None:
    run(tmp_path)
    names = {path.name for path in (tmp_path / "out/stamp").iterdir()}
    assert names == {"stamp.pdf", "stamp.svg", "stamp.png", "stamp.json"}
    run(tmp_path, "{art: nowhere.svg}").refused("nowhere.svg")
    assert {path.name for path in (tmp_path / "out/stamp").iterdir()} == {"stamp.old.pdf", "stamp.old.svg"}


def test_the_same_input_gives_the_same_bytes(tmp_path: Path) -> None:
    wish = "{text: [Made by hand], art: leaf.svg, link: https://example.com/u}"
    for name in ("one", "two"):
        assert run(tmp_path, wish, "--out", name).status == 0
    assert written(tmp_path / "one") == written(tmp_path / "two") != {}
