"""`new` on pictures of every kind: whatever the picture, the first design passes every check.

The one thing that may be said is that a picture has too few pixels, where that is true at the least size that
`new` places a picture at: 18 % of the height of the leaf.
"""

import colorsys
import io
from functools import cache

import numpy as np
import pytest
from kit import picture, png
from PIL import Image

from padspec.base.findings import Severity
from padspec.first_design import LEAST_ART_SHARE, FirstWish, first_design
from padspec.pipeline import make
from padspec.resolve.design import Art, blocks
from padspec.workspace import MemoryWorkspace

#: Photographs that scikit-image carries in its package, not fetched (skimage.data).
PHOTOGRAPHS = ("astronaut", "coffee", "chelsea", "rocket", "camera", "coins", "page", "text", "moon")


def hued(hue: float, saturation: float = 0.7, value: float = 0.6) -> tuple[int, int, int]:
    red, green, blue = colorsys.hsv_to_rgb(hue, saturation, value)
    return round(red * 255), round(green * 255), round(blue * 255)


def speckled(seed: int, transparent: float) -> bytes:
    """Blobs of many colours, some of them see-through: no hue leads."""
    random = np.random.default_rng(seed)
    small = random.integers(0, 256, (14, 14, 4), dtype=np.uint8)
    small[..., 3] = np.where(random.random((14, 14)) < transparent, 0, 255)
    return png(np.asarray(Image.fromarray(small).resize((900, 900), Image.Resampling.BICUBIC)))


def slope(dark: tuple[int, int, int], light: tuple[int, int, int]) -> bytes:
    t = np.linspace(0, 1, 800)[:, None, None]
    pixels = np.broadcast_to(np.array(dark) * (1 - t) + np.array(light) * t, (800, 900, 3))
    return png(pixels.astype(np.uint8))


def photograph(name: str) -> bytes:
    from skimage import data

    file = io.BytesIO()
    Image.fromarray(np.asarray(getattr(data, name)())).convert("RGB").save(file, "PNG")
    return file.getvalue()


def svg(body: str, box: str = "0 0 80 60") -> bytes:
    return f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{box}">{body}</svg>'.encode()


PICTURES = {
    **{f"hue {n * 45}": lambda n=n: picture(800, 700, hued(n / 8)) for n in range(8)},
    **{f"chroma {s}": lambda s=s: picture(800, 700, hued(0.55, s / 100, 0.7)) for s in (0, 4, 25, 100)},
    **{f"lightness {v}": lambda v=v: picture(800, 700, hued(0.08, 0.5, v / 100)) for v in (2, 20, 95, 100)},
    "white": lambda: picture(800, 700, (255, 255, 255)),
    "black": lambda: picture(800, 700, (0, 0, 0)),
    "nearly white on white": lambda: picture(800, 700, (252, 252, 250), (255, 255, 255)),
    "yellow on white": lambda: picture(800, 700, (255, 240, 0), (255, 255, 255)),
    "on black": lambda: picture(800, 700, (230, 120, 40), (0, 0, 0)),
    "on grain": lambda: picture(800, 700, (40, 120, 90), (240, 235, 225), noise=4),
    "on noise": lambda: picture(800, 700, (40, 120, 90), (128, 128, 128), noise=110),
    "half see-through": lambda: speckled(1, 0.5),
    "all opaque": lambda: speckled(2, 0.0),
    "nearly nothing": lambda: speckled(3, 0.97),
    "dusk": lambda: slope((20, 20, 60), (240, 140, 90)),
    "wide": lambda: picture(2400, 300, hued(0.9)),
    "tall": lambda: picture(300, 2400, hued(0.9)),
    "a hair": lambda: picture(40, 2000, hued(0.3)),
    "small": lambda: picture(300, 300, hued(0.3)),
    "tiny": lambda: picture(24, 24, hued(0.3)),
    "one pixel": lambda: png(np.full((1, 1, 3), 120, np.uint8)),
    "drawing": lambda: svg('<circle cx="40" cy="30" r="25" fill="#2a6f97"/>'),
    "pale drawing": lambda: svg('<circle cx="40" cy="30" r="25" fill="#fdfdf0"/>'),
    "wide drawing": lambda: svg('<rect width="400" height="10" fill="#774400"/>', "0 0 400 10"),
    **{f"photograph {name}": lambda name=name: photograph(name) for name in PHOTOGRAPHS},
}


@cache
def begun(name: str):
    data = PICTURES[name]()
    file = "p.svg" if data.startswith(b"<svg") else "p.png"
    workspace = MemoryWorkspace({file: data})
    return first_design("p.pad.yaml", FirstWish(file), workspace), workspace


def objections(name: str) -> list[str]:
    """What is found wrong, less what is true of the picture and no design could mend."""
    first, _ = begun(name)
    found = [finding for finding in first.pad.findings if finding.severity >= Severity.WARNING]
    art = next(block for block in blocks(first.pad.design) if isinstance(block, Art))
    as_small_as_may_be = art.height <= LEAST_ART_SHARE * first.pad.design.trim.height + 0.1
    truly_too_few = art.ppi is not None and art.ppi < 300 and as_small_as_may_be
    return [
        f"{name}: {finding.check}: {finding.message}"
        for finding in found
        if not (finding.check == "art-resolution" and truly_too_few)
    ]


def test_every_first_design_passes():
    against = {name: objections(name) for name in PICTURES}
    passed = sum(not found for found in against.values())
    share = f"{passed} of {len(PICTURES)} pictures pass"
    assert passed == len(PICTURES), "\n".join([share, *(line for found in against.values() for line in found)])


def test_there_are_pictures_enough_of_every_kind():
    assert len(PICTURES) >= 40


@pytest.mark.parametrize("name", ["hue 45", "tiny", "on noise", "drawing", "photograph coffee"])
def test_the_text_that_new_writes_makes_the_very_pad_that_it_checked(name):
    first, workspace = begun(name)
    again = make("p.pad.yaml", MemoryWorkspace({"p.pad.yaml": first.text.encode()}, behind=workspace))
    assert (again.face, again.sheet, again.findings) == (first.pad.face, first.pad.sheet, first.pad.findings)


@pytest.mark.parametrize("name", ["hue 0", "hue 90", "hue 225", "hue 315"])
def test_the_ground_is_pale_and_of_the_hue_that_leads_the_picture(name):
    """OKLab lightness about 0.93; the hue within 25° of the picture's own."""
    from padspec.base.colour import Colour
    from padspec.base.mixing import lch

    ground = begun(name)[0].pad.design.ground.colour
    picture_hue = lch(Colour(*hued(int(name.split()[1]) / 360)))[2]
    lightness, _, hue = lch(ground)
    assert lightness == pytest.approx(0.925, abs=0.02)
    assert abs((hue - picture_hue + 180) % 360 - 180) < 25


def test_nothing_is_said_at_all_about_most_pictures():
    """Notes count here: a first design should be quiet."""
    quiet = [name for name in PICTURES if not begun(name)[0].pad.findings]
    assert len(quiet) >= 0.7 * len(PICTURES), sorted(set(PICTURES) - set(quiet))
