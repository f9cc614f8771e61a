"""What a doubtful cut hands on to the check that tells of it."""

import numpy as np
from PIL import Image, ImageDraw

from padspec.resolve.pictures import PictureWish, prepare

from .made import saved


def placed(image):
    wish = PictureWish("duck.png", 60, 60, "auto", True, False, None)
    return prepare(saved(image, "PNG"), wish)


def test_a_leaking_outline_is_recorded_with_its_share():
    image = Image.new("RGB", (500, 500), "white")
    pen = ImageDraw.Draw(image)
    pen.arc([100, 100, 400, 400], 20, 340, fill=(60, 60, 70), width=8)
    record = placed(image).cutout
    assert (record.method, record.doubt, record.doubt_reach) == ("even", "leaked", 4)
    assert 0.8 < record.doubt_share < 0.95


def test_a_faint_fade_is_recorded_and_the_picture_framed():
    y, x = np.mgrid[:500, :500] - 250
    alpha = np.clip((190 - np.hypot(y, x)) / 120, 0, 1)[..., None]
    found = placed(Image.fromarray(np.round(246 - 14 * alpha * np.ones(3)).astype(np.uint8)))
    assert (found.cutout.method, found.cutout.doubt) == ("none", "soft-edge")
    assert found.fills
    assert found.frame > 0


def test_a_clean_cut_has_no_doubt():
    image = Image.new("RGB", (500, 500), "white")
    ImageDraw.Draw(image).ellipse([100, 100, 400, 400], fill=(120, 60, 90))
    assert placed(image).cutout.doubt == ""
