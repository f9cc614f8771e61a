"""new → check → build in an empty folder, for every format that a picture may have."""

import io
import json

import numpy as np
import pikepdf
import pytest
import yaml
from kit import disc_on_ground, picture
from PIL import Image

from .command import padspec, padspec_process

SVG = b"""<svg xmlns="http://www.w3.org/2000/svg" width="80" height="60" viewBox="0 0 80 60">
<ellipse cx="40" cy="30" rx="30" ry="24" fill="#7a3b58"/><circle cx="40" cy="30" r="9" fill="#e9b44c"/></svg>"""


def saved(image: Image.Image, kind: str, **how) -> bytes:
    file = io.BytesIO()
    image.save(file, kind, **how)
    return file.getvalue()


def opaque(size: int = 900) -> Image.Image:
    return Image.open(io.BytesIO(disc_on_ground(size, size))).convert("RGB")


def sixteen_bits() -> bytes:
    y, x = np.mgrid[0:800, 0:800]
    inside = (x - 400) ** 2 + (y - 400) ** 2 < 300**2
    return saved(Image.fromarray(np.where(inside, 12000, 61000).astype(np.uint16)), "PNG")


PICTURES = {
    "rgba.png": lambda: picture(900, 900),
    "palette.png": lambda: saved(opaque().quantize(16), "PNG"),
    "sixteen.png": sixteen_bits,
    "grey.png": lambda: saved(opaque().convert("L"), "PNG"),
    "photo.jpg": lambda: saved(opaque(), "JPEG", quality=92),
    "moth.webp": lambda: saved(opaque(), "WEBP", lossless=True),
    "scan.tif": lambda: saved(opaque(), "TIFF", compression="tiff_lzw"),
    "drawn.svg": lambda: SVG,
}


@pytest.mark.parametrize("name", list(PICTURES))
def test_every_format_goes_from_picture_to_paper(tmp_path, name):
    (tmp_path / name).write_bytes(PICTURES[name]())
    new = padspec(tmp_path, "new", name, "--to", "first.pad.yaml")
    assert (new.status, "findings none" in new.out) == (0, True), new
    assert padspec(tmp_path, "check").status == 0
    built = padspec(tmp_path, "build", "--no-proofs")
    assert built.status == 0, built
    with pikepdf.open(tmp_path / "out/first/sheet.pdf") as pdf:
        forms = pdf.pages[0].Resources.XObject
        assert any("/XObject" in forms[name].Resources for name in forms), "the picture is on the sheet"
    assert json.loads((tmp_path / "out/first/findings.json").read_bytes())["state"] == "passed"


@pytest.fixture(scope="module")
def moth(tmp_path_factory):
    folder = tmp_path_factory.mktemp("moth")
    (folder / "night_moth.png").write_bytes(picture(900, 800))
    return folder


@pytest.fixture(scope="module")
def begun(moth):
    return padspec(moth, "new", "night_moth.png", "--heading", "Before dark: soon")


def test_new_says_what_it_wrote_and_what_comes_next(begun):
    assert begun.status == 0
    assert begun.out.splitlines() == [
        "Wrote night_moth.pad.yaml: 3-up on A4, 20 sheets for a pad, findings none.",
        "Next: padspec build night_moth.pad.yaml",
    ]


@pytest.mark.usefixtures("begun")
def test_new_writes_a_design_that_a_yaml_reader_takes(moth):
    text = (moth / "night_moth.pad.yaml").read_text(encoding="utf-8")
    data = yaml.safe_load(text)
    assert data["heading"]["text"] == "Before dark: soon"
    assert data["art"]["file"] == "night_moth.png"
    assert text.count("#") > 15, "each line is explained"


@pytest.mark.usefixtures("begun")
def test_new_does_not_replace_a_design(moth):
    kept = (moth / "night_moth.pad.yaml").read_bytes()
    assert padspec(moth, "new", "night_moth.png").refused("night_moth.pad.yaml", "already", "--force")
    assert (moth / "night_moth.pad.yaml").read_bytes() == kept


def test_new_replaces_a_design_when_told_to(tmp_path):
    (tmp_path / "owl.png").write_bytes(picture(900, 800))
    (tmp_path / "owl.pad.yaml").write_text("pad: Old\n")
    assert padspec(tmp_path, "new", "owl.png", "--force").status == 0
    assert "Owl list" in (tmp_path / "owl.pad.yaml").read_text()


def test_new_takes_a_size_a_name_and_a_layout(tmp_path):
    (tmp_path / "owl.png").write_bytes(picture(900, 800))
    args = ("--trim", "100 mm x 5 7/8 in", "--name", "Owl post", "--layout", "ruled", "--json")
    data = padspec(tmp_path, "new", "owl.png", *args).json
    assert (data["design"], data["written"]) == ("Owl post", "owl-post.pad.yaml")
    design = yaml.safe_load((tmp_path / "owl-post.pad.yaml").read_text())
    assert design["trim"] == {"width": "100 mm", "height": "5 7/8 in"}
    assert (design["layout"], design["heading"]["text"]) == ("ruled", "Notes")


def test_new_takes_a_picture_from_elsewhere_into_the_project(tmp_path):
    (tmp_path / "downloads").mkdir()
    (tmp_path / "pads").mkdir()
    (tmp_path / "downloads/moth.png").write_bytes(picture(900, 800))
    new = padspec(tmp_path / "pads", "new", "../downloads/moth.png")
    assert new.status == 0
    assert "art/moth.png" in new.err
    assert (tmp_path / "pads/art/moth.png").read_bytes() == (tmp_path / "downloads/moth.png").read_bytes()


def test_new_does_not_overwrite_another_picture_of_that_name(tmp_path):
    for folder in ("downloads", "pads/art"):
        (tmp_path / folder).mkdir(parents=True)
    (tmp_path / "downloads/moth.png").write_bytes(picture(900, 800))
    (tmp_path / "pads/art/moth.png").write_bytes(b"the maker's own")
    new = padspec(tmp_path / "pads", "new", "../downloads/moth.png")
    assert new.refused("art/moth.png", "already", "Rename ../downloads/moth.png")
    assert (tmp_path / "pads/art/moth.png").read_bytes() == b"the maker's own"


def test_new_writes_into_a_folder_that_is_not_there_yet(tmp_path):
    (tmp_path / "moth.png").write_bytes(picture(900, 800))
    new = padspec(tmp_path, "new", "moth.png", "--to", str(tmp_path / "a/b/moth.pad.yaml"))
    assert new.status == 0, new
    assert padspec(tmp_path / "a/b", "check").status == 0


def test_a_first_design_passes_in_a_process_of_its_own(tmp_path):
    (tmp_path / "moth.png").write_bytes(picture(900, 800))
    assert padspec_process(tmp_path, "new", "moth.png").status == 0
    built = padspec_process(tmp_path, "build")
    assert (built.status, built.err) == (0, "")
    assert (tmp_path / "out/moth/sheet.pdf").read_bytes().startswith(b"%PDF-1.6")
