"""A drawing kept as vectors: made into a one-page PDF, and held against what it should look like.

The converter leaves out some of SVG (blur, blend modes, paint order) without a word. So its PDF is
drawn and compared with the drawing by the complete renderer; a difference that shows is an error.
"""

from hashlib import blake2b
from io import BytesIO
from math import ceil

import numpy as np
from numpy.typing import NDArray

from padspec.art.errors import ArtError
from padspec.art.pixels import Bytes, Pixels
from padspec.art.svg.drawing import check_svg, draw_svg, svg_size
from padspec.art.svg.reading import walk_svg
from padspec.scene.nodes import Vector

#: The largest difference of a channel, in steps of 255, that two renderers may leave on one drawing.
#: Measured (see `_boxed`): plain drawings, gradients, clips, patterns and hairlines differ by up to 18; a
#: faint blur by 34, a plain blur, a blend mode, paint order, a mask or a rounded rectangle by 86 and more.
MOST_DIFFERENT = 25

#: The converter takes about a second for so many.
MOST_ELEMENTS_KEPT = 10_000

_SHORT_SIDE, _LONG_SIDE = 200, 2000
# Each pixel that is compared is the mean of this many to a side, so that edge rules drop out.
_OVERSAMPLING = 4
# CSS pixels in a point (CSS Values 3, 6.2).
_PX_PER_PT = 96 / 72


def to_vector(data: bytes, name: str) -> Vector:
    """The drawing as PDF and as SVG, `name` being the stem of its file.

    Raises ArtError as `check_svg`, where the cairo library is missing, and where the PDF does not show
    what the drawing shows, saying where and by how much.
    """
    _refuse_too_much(data, name)
    width, height = svg_size(data, name)
    compared = _compared_size(width, height)
    # One point of the page is one pixel of the comparison, so that no renderer has to round the page.
    page = (compared[0] * _OVERSAMPLING, compared[1] * _OVERSAMPLING)
    pdf = _without_dates(_converted(data, name, page))
    _compare(pdf, data, name, compared)
    return Vector(name, blake2b(data).hexdigest()[:8], pdf, data)


def _refuse_too_much(data: bytes, name: str) -> None:
    check_svg(data, name)
    elements = walk_svg(data, name)
    if elements > MOST_ELEMENTS_KEPT:
        raise ArtError(
            f"{name} draws {elements} elements; kept as vectors the limit is {MOST_ELEMENTS_KEPT}.",
            "Leave keep-vector out for this drawing, or simplify it.",
        )


def _converted(data: bytes, name: str, page: tuple[int, int]) -> bytes:
    try:
        import cairosvg
    except OSError as trouble:
        raise ArtError(
            f"{name} is to keep its vectors, which needs the cairo library, and this machine has none.",
            "Install libcairo2 (Debian, Ubuntu), cairo (Fedora), cairo through Homebrew (macOS), or on Windows"
            " the GTK runtime or mingw-w64-x86_64-cairo of MSYS2; without keep-vector nothing is needed.",
        ) from trouble
    try:
        pdf = cairosvg.svg2pdf(  # type: ignore[no-untyped-call]
            bytestring=data,
            output_width=page[0] * _PX_PER_PT,
            output_height=page[1] * _PX_PER_PT,
            unsafe=False,
        )
    except Exception as trouble:  # a converter of hostile files raises anything
        raise ArtError(
            f"{name} cannot be kept as vectors: {trouble}.", "Leave keep-vector out for this drawing."
        ) from trouble
    return bytes(pdf)


def _without_dates(pdf: bytes) -> bytes:
    """The same page without the converter's name and the time of day, and with a fixed identifier."""
    from pikepdf import Pdf

    with Pdf.open(BytesIO(pdf)) as document:
        if "/Info" in document.trailer:
            del document.trailer["/Info"]
        out = BytesIO()
        document.save(out, deterministic_id=True)
    return out.getvalue()


def _compare(pdf: bytes, data: bytes, name: str, size: tuple[int, int]) -> None:
    width, height = size
    mine = _pdf_over_white(pdf, width * _OVERSAMPLING, height * _OVERSAMPLING)
    truth = _over_white(draw_svg(data, name, width * _OVERSAMPLING, height * _OVERSAMPLING))
    off = np.abs(_boxed(mine, height, width) - _boxed(truth, height, width)).max(axis=2)
    worst = round(float(off.max()), 3)
    if worst <= MOST_DIFFERENT:
        return
    y, x = divmod(int(off.argmax()), width)
    rows, columns = np.nonzero(off > MOST_DIFFERENT)
    raise ArtError(
        f"{name} kept as vectors does not look as it is drawn: {_percent(x, width)} from the left and"
        f" {_percent(y, height)} from the top it differs by {worst:.0f} of 255 (limit {MOST_DIFFERENT}). All that"
        f" differs lies {_percent(columns.min(), width)} to {_percent(columns.max() + 1, width)} from the left"
        f" and {_percent(rows.min(), height)} to {_percent(rows.max() + 1, height)} from the top.",
        "Leave keep-vector out, or draw it without blur, blend modes, masks, paint order and rounded rectangles.",
    )


def _compared_size(width: float, height: float) -> tuple[int, int]:
    """Whole pixels near the sizes wished whose shape is the drawing's own, as nearly as can be found.

    Rounding one side alone would set the two renderers apart by part of a pixel, and fine lines would differ.
    """
    scale = min(_SHORT_SIDE / min(width, height), _LONG_SIDE / max(width, height))
    least = max(1, ceil(width * scale - 1e-9))

    def misfit(across: int) -> float:
        upright = across * height / width
        return round(abs(upright - max(round(upright), 1)), 9)

    across = min(range(least, 2 * least), key=misfit)
    return across, max(1, round(across * height / width))


def _percent(position: float, whole: int) -> str:
    return f"{100 * position / whole:.0f} %"


def _pdf_over_white(pdf: bytes, width: int, height: int) -> Bytes:
    from pypdfium2 import PdfDocument

    with PdfDocument(pdf) as document:  # type: ignore[no-untyped-call]
        page = document[0]
        scale = max(width / page.get_width(), height / page.get_height())
        drawn = page.render(scale=scale, rev_byteorder=True).to_numpy()[:height, :width, :3]
    return np.pad(drawn, ((0, height - drawn.shape[0]), (0, width - drawn.shape[1]), (0, 0)), constant_values=255)


def _over_white(pixels: Pixels) -> NDArray[np.float32]:
    alpha = pixels.rgba[..., 3:].astype(np.float32) / np.float32(255)
    over: NDArray[np.float32] = pixels.rgba[..., :3] * alpha + np.float32(255) * (1 - alpha)
    return over


def _boxed(picture: NDArray[np.generic], height: int, width: int) -> NDArray[np.float32]:
    """Means over squares of `_OVERSAMPLING` pixels a side."""
    squares = picture.astype(np.float32).reshape(height, _OVERSAMPLING, width, _OVERSAMPLING, 3)
    return np.asarray(squares.mean(axis=(1, 3)), dtype=np.float32)
