"""Two small faces through the whole pipeline, kept as SVG: whatever changes in them shows in the diff.

`python -m pytest tests/golden --renew-goldens` writes them anew, and the run that does so fails. Where a face
differs, the failure names a PNG of before, after and difference.
"""

from collections.abc import Callable

import pytest
from kit import apply, disc, pad

from padspec.draw.outputs import DrawWish
from padspec.pipeline import draw

SMALL = """\
pad: Tea & toast
sku: TEA
trim: {width: 60 mm, height: 90 mm}
art: {file: art/cup.png, height: 20 mm, inset: 6 mm, overlap: 5 mm}
palette: {paper: white, ground: "#f0e4ea", pattern: "#e2ccd8", rule: "#b07898", lettering: "#7a3b58"}
ground: {pattern: {kind: stripes, size: 12 mm, mark: 50 %}}
heading: {text: Tea, font: Fredoka One, size: 6 mm}
panel: {inset: 6 mm, corner: 6 mm, pad: 5 mm}
rows: {pitch: 9 mm}
"""


@pytest.mark.parametrize(
    ("layout", "changes"),
    [("checklist", {}), ("ruled", {"ground.pattern": {"kind": "dots", "size": "20 mm"}, "art.overlap": "0 mm"})],
)
def test_a_small_face_is_drawn_as_it_was(
    layout: str, changes: dict[str, object], golden_drawing: Callable[[str, str], None]
) -> None:
    text = apply(SMALL, {"layout": layout} | changes)
    made = pad(text, files={"art/cup.png": disc(24, 24)})
    files = draw(made, DrawWish(proofs=False))
    golden_drawing(f"{layout}.svg", files["TEA/face.svg"].decode())
