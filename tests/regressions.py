"""What changed in a drawing, as a picture: before, after and their difference, side by side in one PNG."""

from io import BytesIO
from pathlib import Path

import numpy as np
import resvg_py
from PIL import Image, ImageDraw, ImageFont

#: How large a drawing is shown: the longer side of each panel, in pixels.
LONGEST = 1200
_GAP, _HEAD = 24, 40
_PAPER, _INK, _CHANGED = (246, 243, 238), (60, 56, 50), (214, 28, 36)
#: Off by no more than this in any channel counts as the same: edges are not drawn alike by every processor.
_SAME = 2


def drawn(svg: str) -> np.ndarray:
    """An SVG over white as pixels, shape (height, width, 3), its longer side as long as a panel."""
    small = _pixels(svg)
    upright = small.shape[0] > small.shape[1]
    return _pixels(svg, **{"height" if upright else "width": LONGEST})


def _pixels(svg: str, **size: int) -> np.ndarray:
    png = bytes(resvg_py.svg_to_bytes(svg_string=svg, background="#ffffff", dpi=96, **size))
    return np.asarray(Image.open(BytesIO(png)).convert("RGB"))


def difference(before: np.ndarray, after: np.ndarray) -> np.ndarray:
    """Red where two drawings differ, over the new one in faint grey; where either ends early, all differs."""
    height, width = (max(a, b) for a, b in zip(before.shape[:2], after.shape[:2], strict=True))
    old, new = _grown(before, height, width), _grown(after, height, width)
    changed = (np.abs(old.astype(int) - new.astype(int)) > _SAME).any(axis=2)
    grey = new.clip(0, 255).mean(axis=2, keepdims=True) * 0.25 + 191
    shown = np.repeat(grey, 3, axis=2).astype(np.uint8)
    shown[changed] = _CHANGED
    return shown


def _grown(pixels: np.ndarray, height: int, width: int) -> np.ndarray:
    """The pixels in a larger field, marked with a value that no pixel has."""
    field = np.full((height, width, 3), -999, np.int64)
    field[: pixels.shape[0], : pixels.shape[1]] = pixels
    return field


def comparison(before: str, after: str) -> bytes:
    """A PNG of what an SVG was, what it has become, and the difference."""
    old, new = drawn(before), drawn(after)
    panels = {"before": old, "after": new, "difference": difference(old, new)}
    width = sum(panel.shape[1] for panel in panels.values()) + _GAP * (len(panels) + 1)
    height = max(panel.shape[0] for panel in panels.values()) + _HEAD + _GAP
    sheet = Image.new("RGB", (width, height), _PAPER)
    pen, font = ImageDraw.Draw(sheet), ImageFont.load_default(20)
    x = _GAP
    for name, panel in panels.items():
        pen.text((x, 8), name, fill=_INK, font=font)
        sheet.paste(Image.fromarray(panel), (x, _HEAD))
        x += panel.shape[1] + _GAP
    file = BytesIO()
    sheet.save(file, "PNG")
    return file.getvalue()


def shown(folder: Path, name: str, before: str, after: str) -> Path:
    """Write the comparison of a drawing into a folder, under its own name; where it lies."""
    folder.mkdir(parents=True, exist_ok=True)
    path = folder / f"{Path(name).stem}.png"
    path.write_bytes(comparison(before, after))
    return path
