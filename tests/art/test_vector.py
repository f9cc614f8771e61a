import builtins
import io
import re
from pathlib import Path

import numpy as np
import pikepdf
import pytest

from padspec.art.errors import ArtError
from padspec.art.svg.vector import MOST_DIFFERENT, to_vector

from .made import SVG

pytest.importorskip("cairosvg", reason="the cairo library is not on this machine")

SAME = {
    "plain": '<path d="M20 20 C80 -10 150 60 180 120 L60 150 Z" fill="#7a3b58"/>',
    "strokes": '<path d="M20 20 H180 V140 H20 Z" fill="none" stroke="#124" stroke-dasharray="9 5"/>',
    "hairlines": "".join(
        f'<path d="M{8 * i} 0 L{200 - 5 * i} 160" stroke="#000" stroke-width=".3"/>' for i in range(25)
    ),
    "gradient": '<radialGradient id="g"><stop stop-color="red"/><stop offset="1"/></radialGradient>'
    '<circle cx="100" cy="80" r="70" fill="url(#g)"/>',
    "opacity": '<g opacity=".5"><circle cx="80" cy="80" r="50" fill="red"/><circle cx="120" cy="80" r="50"/></g>',
    "clip": '<clipPath id="c"><circle cx="100" cy="80" r="60"/></clipPath>'
    '<rect width="200" height="160" fill="#385" clip-path="url(#c)"/>',
    "uses": '<defs><path id="p" d="M0 0 L20 40 L-20 40 Z" fill="#a52"/></defs><use href="#p" x="30" y="20"/>',
    "styles": "<style>.a{fill:#936}</style><rect class='a' x='20' y='20' width='90' height='90'/>",
    "turned": '<rect x="60" y="50" width="80" height="60" fill="#0a6" transform="rotate(33 100 80)"/>',
}
BLURRED = (
    '<filter id="f"><feGaussianBlur stdDeviation="6"/></filter>'
    '<circle cx="50" cy="40" r="30" fill="#{}" filter="url(#f)"/>'
)
UNLIKE = {
    "blur": BLURRED.format("333"),
    "faint blur": BLURRED.format("bbb"),
    "blend": '<rect width="200" height="160" fill="#fc0"/>'
    '<circle cx="50" cy="40" r="30" fill="#08f" style="mix-blend-mode:multiply"/>',
    "paint order": '<circle cx="50" cy="40" r="30" fill="red" stroke="#222" stroke-width="9" '
    'paint-order="stroke"/>',
}


def drawing(body):
    return (SVG + body + "</svg>").encode()


@pytest.mark.parametrize("kind", SAME)
def test_a_plain_drawing_is_kept(kind):
    vector = to_vector(drawing(SAME[kind]), "moth")
    assert vector.svg == drawing(SAME[kind])
    with pikepdf.open(io.BytesIO(vector.pdf)) as document:
        assert len(document.pages) == 1


@pytest.mark.parametrize("kind", UNLIKE)
def test_what_the_converter_leaves_out_is_an_error(kind):
    with pytest.raises(ArtError) as refusal:
        to_vector(drawing(UNLIKE[kind]), "moth")
    measured = float(re.search(r"differs by (\d+) of 255", refusal.value.message).group(1))
    assert measured > MOST_DIFFERENT
    assert "Leave keep-vector out" in refusal.value.mend


def test_the_error_says_where():
    """The disc lies within 50 ± 48 of 200 px from the left and 40 ± 48 of 160 from the top, three sigmas out."""
    with pytest.raises(ArtError) as refusal:
        to_vector(drawing(UNLIKE["blur"]), "moth")
    spot = re.search(r"(\d+) % from the left and (\d+) % from the top it differs", refusal.value.message)
    box = re.search(
        r"lies (\d+) % to (\d+) % from the left and (\d+) % to (\d+) % from the top", refusal.value.message
    )
    left, right, top, foot = (int(part) for part in box.groups())
    assert left <= int(spot.group(1)) <= right <= 49
    assert top <= int(spot.group(2)) <= foot <= 55


def test_same_bytes_at_another_time(monkeypatch):
    """The PDF converter stamps the time of day; the clock is moved for it."""
    first = to_vector(drawing(SAME["plain"]), "moth")
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1000000000")
    assert to_vector(drawing(SAME["plain"]), "moth") == first


def test_no_trace_of_clock_or_converter():
    pdf = to_vector(drawing(SAME["plain"]), "moth").pdf
    assert not re.search(rb"CreationDate|Producer|cairo", pdf)


def test_page_has_the_shape_of_the_drawing():
    with pikepdf.open(io.BytesIO(to_vector(drawing(SAME["plain"]), "moth").pdf)) as document:
        box = np.array([float(v) for v in document.pages[0].MediaBox])
    assert (box[2] - box[0]) / (box[3] - box[1]) == pytest.approx(200 / 160, rel=0.002)


def test_missing_library_names_what_to_install(monkeypatch):
    real = builtins.__import__

    def without_cairo(name, *rest, **more):
        if name.startswith("cairo"):
            raise OSError("no library called cairo-2 was found")
        return real(name, *rest, **more)

    monkeypatch.setattr(builtins, "__import__", without_cairo)
    with pytest.raises(ArtError) as refusal:
        to_vector(drawing(SAME["plain"]), "moth")
    for package in ("libcairo2", "Fedora", "Homebrew", "mingw-w64-x86_64-cairo", "without keep-vector nothing"):
        assert package in refusal.value.mend


def test_too_many_elements_are_refused():
    with pytest.raises(ArtError, match="draws 10002 elements; kept as vectors the limit is 10000"):
        to_vector(drawing('<path d="M0 0H1"/>' * 10_001), "moth")


def test_a_reference_outside_is_refused_here_too():
    with pytest.raises(ArtError, match="outside the file"):
        to_vector(drawing('<image href="moth.png"/>'), "moth")


def test_a_real_drawing_with_gradients_keeps_its_vectors() -> None:
    """The foxglove of the example collection: hundreds of paths whose shape is no whole number of pixels."""
    drawing = Path(__file__).resolve().parents[2] / "examples" / "night-garden" / "art" / "foxglove.svg"
    assert to_vector(drawing.read_bytes(), "foxglove").pdf.startswith(b"%PDF")
