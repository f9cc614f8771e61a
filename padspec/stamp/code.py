"""A link in, the outline of its QR code out, at a module that rubber holds."""

from padspec.base.geometry import Box
from padspec.scene.outline import Outline, rectangle

#: A module in mm, and the quiet zone in modules (ISO/IEC 18004). Rubber spreads ink: larger than on paper (common
#: practice, no published source).
MODULE, QUIET = 0.6, 4


def code_outline(link: str) -> tuple[Outline, int]:
    """The black squares from the code's own corner, without its quiet zone, and how many modules it has a side."""
    import segno

    code = segno.make_qr(link, error="m", boost_error=False)
    outlines = []
    for y, row in enumerate(code.matrix):
        start = None
        for x, module in enumerate((*row, 0)):
            if module and start is None:
                start = x
            elif not module and start is not None:
                outlines.append(rectangle(Box(start * MODULE, y * MODULE, (x - start) * MODULE, MODULE)))
                start = None
    return tuple(step for outline in outlines for step in outline), len(code.matrix)
