"""The sides of a pad: leaf upon leaf on a board, and the film of glue that holds them at the head."""

import numpy as np

from padspec.base.colour import Colour
from padspec.draw.deflate import Pixels
from padspec.flat_lay.geometry import Field
from padspec.flat_lay.grain import coarse, noise
from padspec.flat_lay.wish import PadLook

#: Padding compound as it dries, and the bare edge of white paper.
GLUE = Colour(236, 231, 220)
_PAPER = np.array([246, 243, 236], np.float32)
#: How much of the ink at the trim shows on the cut.
_INK = 0.16
_ROWS_OF_LEAF = 4
#: How deep the gaps between leaves are, how unlike leaves are, and how the cut wavers along them.
_GAP, _UNLIKE, _WAVER = 0.34, 0.09, 0.06
_FIBRE = 0.09


def leaf_lines(pad: PadLook, length: float, pixels: tuple[int, int], seed: int) -> Pixels:
    """The side of a pad, leaves above board, as pixels (across, down) of its whole thickness.

    Every leaf is drawn finer than it is seen and the rows are then averaged, so that lines thinner than a pixel
    become tone and never a pattern.
    """
    from PIL import Image

    columns = max(8, round(length / 0.4))
    leaves = _leaves(pad, columns, seed)
    board_rows = round(pad.board / pad.caliper * _ROWS_OF_LEAF)
    rows = np.concatenate([leaves, _board(pad.board_colour, board_rows, columns, seed)]) if board_rows else leaves
    fine = Image.fromarray(np.clip(rows + np.float32(0.5), 0, 255).astype(np.uint8))
    return np.asarray(
        fine.resize(pixels, Image.Resampling.BOX if pixels[1] <= len(rows) else Image.Resampling.BICUBIC)
    )


def plain_side(colour: Colour, pixels: tuple[int, int]) -> Pixels:
    """A side of one colour."""
    width, height = pixels
    return np.full((height, width, 3), (colour.red, colour.green, colour.blue), np.uint8)


def _leaves(pad: PadLook, columns: int, seed: int) -> Field:
    """Edges of paper, shape (rows, columns, 3), 0 to 255: a gap between two leaves, open here and shut there."""
    count = max(1, pad.leaves)
    each = noise(seed, count, 1) + np.float32(0.8) * coarse(seed + 1, (1, count), 5)
    waver = coarse(seed + 2, (columns, count), 9)
    # Nine columns of 0.4 mm are about how long a gap stays open; down the block it differs leaf by leaf.
    gaps = np.clip(np.float32(0.5) + noise(seed + 3, count, 1) * np.float32(0.5) + np.float32(0.4) * waver, 0, 1)
    tone = 1 + np.float32(_UNLIKE) * each + np.float32(_WAVER) * waver
    rows = np.repeat(tone, _ROWS_OF_LEAF, axis=0)
    rows[::_ROWS_OF_LEAF] *= 1 - np.float32(_GAP) * gaps * 2
    rows[1::_ROWS_OF_LEAF] *= 1 - np.float32(_GAP) * gaps * np.float32(0.5)
    ink = pad.face[-1].astype(np.float32).mean(axis=0)
    paper = _PAPER * ((1 - np.float32(_INK)) + np.float32(_INK) * ink / 255)
    return np.asarray(rows[..., None] * paper, np.float32)


def _board(colour: Colour, rows: int, columns: int, seed: int) -> Field:
    """The edge of the board, rougher than paper, with the joint above it in its own shade."""
    fibre = 1 + np.float32(_FIBRE) * coarse(seed + 4, (columns, rows), 2)
    fibre[: max(1, rows // 8)] *= np.float32(0.6)
    own = np.array([colour.red, colour.green, colour.blue], np.float32)
    return np.asarray(fibre[..., None] * own, np.float32)
