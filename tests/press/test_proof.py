"""The soft proof against LittleCMS's own proofing transform."""

from io import BytesIO

import numpy as np
import pytest
from PIL import Image, ImageCms

from padspec.press.profile import INTENTS
from padspec.press.proof import soft_proof

from .made import separator

RNG = np.random.default_rng(8)
# White apart: it is the bare paper here whatever the intent.
COLOURS = RNG.integers(0, 250, (3000, 3)).astype(np.uint8)


@pytest.mark.parametrize("intent", INTENTS)
@pytest.mark.parametrize("outside", [False, True])
def test_a_proof_of_separations_is_what_littlecms_proofs(intent, outside):
    """Judge: one transform from screen over press to screen, as the library builds it for proofing.

    It joins both ways in one grid, and so rounds otherwise than two ways with whole steps of ink between them.
    """
    mine = separator(intent, outside=outside)
    flags = ImageCms.Flags.SOFTPROOFING | ImageCms.Flags.BLACKPOINTCOMPENSATION | ImageCms.Flags.HIGHRESPRECALC
    proofing = ImageCms.buildProofTransform(
        ImageCms.createProfile("sRGB"), ImageCms.createProfile("sRGB"),
        ImageCms.ImageCmsProfile(BytesIO(mine.press.profile.data)), "RGB", "RGB",
        ImageCms.Intent(INTENTS.index(intent)), ImageCms.Intent.ABSOLUTE_COLORIMETRIC, flags,
    )  # fmt: skip
    theirs = np.array(ImageCms.applyTransform(Image.fromarray(COLOURS[:, None]), proofing)).reshape(-1, 3)
    ours = soft_proof(mine.conversion.inks(COLOURS), mine)
    off = np.abs(theirs.astype(int) - ours)
    assert off.mean() < 1.0
    assert np.percentile(off, 99) <= 8


def test_bare_paper_shows_its_own_colour():
    """The made paper is Y 0.84 and yellowish; sRGB of 0.84 is 235 (IEC 61966-2-1)."""
    red, green, blue = (int(c) for c in soft_proof(np.zeros((1, 1, 4), np.uint8), separator())[0, 0])
    assert green == pytest.approx(235, abs=3)
    assert blue < green <= red + 3


def test_solid_black_shows_as_pale_as_it_prints():
    black = soft_proof(np.array([[[0, 0, 0, 255]]], np.uint8), separator())[0, 0]
    assert black.min() > 30
