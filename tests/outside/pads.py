"""Real pads of different sizes, sheets, gutters and orientations, made by the whole pipeline, and their files."""

from functools import cache

from kit import PLAIN, apply, pad, picture

from padspec.draw.outputs import DrawWish
from padspec.pipeline import Pad, draw

DOTS = {"kind": "dots", "size": "6 mm"}
STRIPES = {"kind": "stripes", "size": "7 mm", "mark": "40 %", "angle": 30}
WITH_ART = {"art.file": "moth.png", "heading.text": "Before dark"}

DESIGNS: dict[str, dict[str, object]] = {
    "A4 with gutters, faces turned": {**WITH_ART, "ground.pattern": DOTS},
    "A4 butted": {**WITH_ART, "ground.pattern": STRIPES, "sheet.gutter": "0 mm"},
    "letter in inches": {
        **WITH_ART,
        "trim": {"width": "3 1/4 in", "height": "7 1/2 in"},
        "rows": {"pitch": "9/32 in", "checkbox": "3.6 mm", "checkbox-seat": "centre"},
        "sheet.size": "letter",
    },
    "tabloid of many": {
        "trim": {"width": "3.75 in", "height": "5 in"},
        "rows": {"weight": "1 pt", "ends": "round", "pitch": "7 mm"},
        "sheet": {"size": "tabloid", "gutter": "6 mm"},
    },
    "odd trims on A3": {
        **WITH_ART,
        "trim": {"width": "77.77 mm", "height": "133.3 mm"},
        "sheet": {"size": "A3", "gutter": "3.3 mm", "bleed": "1.7 mm"},
        "rows.count": 9,
    },
    "one on half-letter": {
        "trim": {"width": "125 mm", "height": "200 mm"},
        "layout": "ruled",
        "sheet": {"size": "half-letter", "bleed": "2 mm", "least-bleed": "1.3 mm"},
    },
    "JIS B5 of its own width": {
        "trim": {"width": "60.5 mm", "height": "171 mm"},
        "sheet": {"size": "JIS B5", "gutter": "2.5 mm"},
        "rows": {"checkbox-corner": "0 mm"},
    },
}
STUDIO = "printer: {margins: {left: 3.3 mm, right: 4.2 mm, top: 3 mm, bottom: 7.5 mm}}\n"


@cache
def made(name: str) -> Pad:
    """One pad, its picture of more pixels than it needs."""
    return pad(apply(PLAIN, DESIGNS[name]), STUDIO, {"moth.png": picture(1400, 1150)})


@cache
def files(name: str) -> dict[str, bytes]:
    """What is written for it."""
    drawn = draw(made(name), DrawWish(embed=True, despite_errors=True, proofs=False))
    return {path.rpartition("/")[2]: data for path, data in drawn.items()}


def sheet_file(name: str) -> bytes:
    return files(name)["sheet.pdf"]
