"""SVG drawings in: checked, measured, and drawn into pixels by resvg, which is the same everywhere."""

import math
import re
import subprocess
import sys
from io import BytesIO
from pathlib import Path

import numpy as np
from PIL.PngImagePlugin import PngImageFile

from padspec.art.errors import ArtError
from padspec.art.pixels import Pixels
from padspec.art.raster.decode import refuse_too_large
from padspec.art.svg.reading import root_attributes, walk_svg

# CSS Values 4, section 6: one px is 1/96 in. em and ex are those of the initial 16 px font.
_PX = {"": 1.0, "px": 1.0, "pt": 96 / 72, "pc": 16.0, "mm": 96 / 25.4, "cm": 96 / 2.54, "in": 96.0}
_PX |= {"q": 96 / 101.6, "em": 16.0, "rem": 16.0, "ex": 8.0}
_LENGTH = re.compile(r"\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*([a-z]*|%)\s*", re.I)
_DECLARED = re.compile(rb"<\?xml[^>]*?encoding\s*=\s*[\"']([\w.-]+)[\"']")
# A side or a ratio beyond this is a mistake in the file.
_LONGEST, _STEEPEST = 1e6, 200
#: A drawing that takes longer is refused; a detailed one takes a second.
MOST_SECONDS = 8


def check_svg(data: bytes, name: str) -> None:
    """Refuse a drawing that refers to anything outside itself, needs fonts, or cannot be drawn safely.

    Raises ArtError that names element and line.
    """
    if data[:2] == b"\x1f\x8b":
        raise ArtError(f"{name} is a compressed drawing (svgz).", "Save it as plain SVG.")
    walk_svg(data, name)


def svg_size(data: bytes, name: str = "the drawing") -> tuple[float, float]:
    """Width and height in px (1/96 in): from width and height, else from the viewBox.

    One of the two with a viewBox gives the other; percentages count as absent. Raises ArtError where
    no size, or none above zero, is stated.
    """
    root = root_attributes(data, name)
    width, height = (_px(root.get(side)) for side in ("width", "height"))
    box = _view_box(root.get("viewBox"))
    if (width is None or height is None) and box is None:
        raise ArtError(
            f"{name} does not say how large it is: width and height, or a viewBox, are missing.",
            'Write them into its first element, for example viewBox="0 0 400 300".',
        )
    if box is not None and 0 not in box:
        if width is None:
            width = box[0] if height is None else height * box[0] / box[1]
        if height is None:
            height = width * box[1] / box[0]
    width, height = width or 0.0, height or 0.0
    if not (0 < width <= _LONGEST and 0 < height <= _LONGEST):
        raise ArtError(
            f"{name} is {width:g} × {height:g} px in size.",
            f"Give it a width and a height above 0 and up to {_LONGEST:g} px.",
        )
    if max(width / height, height / width) > _STEEPEST:
        raise ArtError(
            f"{name} is {width:g} × {height:g} px, more than {_STEEPEST} times as long as it is wide.",
            "Crop the page to the drawing.",
        )
    return width, height


def draw_svg(data: bytes, name: str, width_px: int, height_px: int) -> Pixels:
    """The drawing in so many pixels, on a transparent ground; in the middle where its shape differs.

    Raises ArtError as `check_svg`, and for what the renderer cannot draw in `MOST_SECONDS` or in more than
    100 megapixels.
    """
    refuse_too_large(width_px, height_px, name)
    check_svg(data, name)
    svg_size(data, name)
    return _centred(_rendered(data, name, width_px, height_px), width_px, height_px)


def _rendered(data: bytes, name: str, width: int, height: int) -> Pixels:
    """What the renderer draws within the time and memory that it is given."""
    program = Path(__file__).with_name("renderer.py")
    try:
        png = subprocess.run(
            [sys.executable, "-I", str(program), str(width), str(height)],
            input=_text(data).encode("utf-8"),
            capture_output=True,
            timeout=MOST_SECONDS,
            check=True,
        ).stdout
    except subprocess.TimeoutExpired as trouble:
        raise ArtError(
            f"{name} takes more than {MOST_SECONDS} s to draw at {width} × {height} pixels.",
            "Simplify its filters and see-through shapes, or save it as a PNG of the size it is printed at.",
        ) from trouble
    except subprocess.CalledProcessError as trouble:
        said = re.findall(r"^ValueError: (.{1,120})", trouble.stderr.decode("utf-8", "replace"), re.M)
        raise ArtError(
            f"{name} cannot be drawn: {said[-1] if said else 'it needs more memory than it is given'}.",
            "Save it again as plain SVG, or as a PNG of the size it is printed at.",
        ) from trouble
    with PngImageFile(BytesIO(png)) as image:
        return Pixels(np.array(image.convert("RGBA")))


def _centred(drawn: Pixels, width: int, height: int) -> Pixels:
    if (drawn.width, drawn.height) == (width, height):
        return drawn
    canvas = np.zeros((height, width, 4), np.uint8)
    rgba = drawn.rgba[:height, :width]
    top, left = (height - rgba.shape[0]) // 2, (width - rgba.shape[1]) // 2
    canvas[top : top + rgba.shape[0], left : left + rgba.shape[1]] = rgba
    return Pixels(canvas)


def _text(data: bytes) -> str:
    """The file as text, by its byte order mark or declaration; the reader has accepted it already."""
    if data[:2] in (b"\xff\xfe", b"\xfe\xff"):
        return data.decode("utf-16")
    declared = _DECLARED.match(data.lstrip(b"\xef\xbb\xbf"))
    encoding = declared.group(1).decode("ascii") if declared else "utf-8"
    return data.decode("utf-8-sig" if encoding.lower() in ("utf-8", "utf8") else encoding)


def _px(text: str | None) -> float | None:
    match = _LENGTH.fullmatch(text or "")
    if match is None or match.group(2) == "%":
        return None
    scale = _PX.get(match.group(2).lower())
    value = float(match.group(1))
    return value * scale if scale is not None and math.isfinite(value) else None


def _view_box(text: str | None) -> tuple[float, float] | None:
    try:
        numbers = [float(part) for part in re.split(r"[\s,]+", (text or "").strip())]
    except ValueError:
        return None
    if len(numbers) != 4 or not all(math.isfinite(number) for number in numbers):
        return None
    return numbers[2], numbers[3]
