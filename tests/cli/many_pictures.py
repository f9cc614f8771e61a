"""Three hundred pictures, the same on every run: what packages ship, and what sweeps each quality of a picture.

Colours are swept in OKLab, where equal steps look equal. Most pictures are as large as the size `new` begins with
asks for (30 % of 190 mm at 300 ppi, 673 pixels), so that only their colours and shapes can be at fault; sizes are
swept by themselves.
"""

import io
from collections.abc import Callable
from dataclasses import dataclass
from importlib.resources import files
from itertools import product
from math import cos, pi, sin

import numpy as np
from kit import picture, png
from PIL import Image, ImageDraw

from padspec.base.mixing import from_lch

RGB = tuple[int, int, int]
SIDE = 700

#: Pictures inside the packages that the tests install anyway; none is fetched. Left out are icons and test cards
#: whose longer side is under 300 pixels.
SHIPPED = {
    "skimage": (
        *(f"data/{name}.png" for name in ("astronaut", "brick", "camera", "cell", "chelsea", "clock_motion")),
        *(f"data/{name}.png" for name in ("coffee", "coins", "color", "grass", "gravel", "horse", "ihc", "logo")),
        *(f"data/{name}.png" for name in ("moon", "motorcycle_left", "motorcycle_right", "page", "phantom")),
        "data/text.png",
        *(f"data/{name}.jpg" for name in ("rocket", "hubble_deep_field", "retina")),
    ),
    "sklearn": ("datasets/images/flower.jpg", "datasets/images/china.jpg"),
    "scipy": ("ndimage/tests/dots.png",),
    "networkx": tuple(
        f"drawing/tests/baseline/test_{name}.png"
        for name in (
            "display_complex",
            "display_empty_graph",
            "display_house_with_colors",
            "display_labels_and_colors",
            "display_shortest_path",
            "house_with_colors",
        )
    ),
}


@dataclass(frozen=True)
class Made:
    """A picture by what makes its bytes, with the ending of its file's name."""

    data: Callable[[], bytes]
    ending: str = "png"


def toned(lightness: float, chroma: float, hue: float) -> RGB:
    colour = from_lch(lightness, chroma, hue)
    return colour.red, colour.green, colour.blue


def svg(body: str, box: str = "0 0 80 60") -> bytes:
    return f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{box}">{body}</svg>'.encode()


def packed(image: Image.Image) -> bytes:
    file = io.BytesIO()
    image.save(file, "PNG", compress_level=1)
    return file.getvalue()


def egg(colour: RGB, ground: RGB | None = None, alpha: int = 255) -> bytes:
    """An ellipse on transparency or on an even ground, as see-through as `alpha` says."""
    image = Image.new("RGBA", (SIDE, SIDE), (0, 0, 0, 0) if ground is None else (*ground, 255))
    ImageDraw.Draw(image).ellipse([4, 8, SIDE - 5, SIDE - 9], fill=(*colour, alpha))
    return packed(image)


def speckled(seed: int, transparent: float) -> bytes:
    """Blobs of many colours, some of them see-through: no hue leads."""
    random = np.random.default_rng(seed)
    small = random.integers(0, 256, (14, 14, 4), dtype=np.uint8)
    small[..., 3] = np.where(random.random((14, 14)) < transparent, 0, 255)
    return png(np.asarray(Image.fromarray(small).resize((SIDE, SIDE), Image.Resampling.BICUBIC)))


def slope(dark: RGB, light: RGB, across: bool = False) -> bytes:
    t = np.linspace(0, 1, SIDE)[:, None, None]
    pixels = np.broadcast_to(np.array(dark) * (1 - t) + np.array(light) * t, (SIDE, SIDE, 3)).astype(np.uint8)
    return png(pixels.transpose(1, 0, 2) if across else pixels)


def fading(colour: RGB, reach: float) -> bytes:
    """A disc on transparency whose edge fades over this share of its radius."""
    radius = SIDE / 2 - 2
    y, x = np.mgrid[:SIDE, :SIDE] - (SIDE - 1) / 2
    alpha = np.clip((radius - np.hypot(y, x)) / (radius * reach), 0, 1) * 255
    flat = np.full((SIDE, SIDE, 3), colour, np.uint8)
    return png(np.dstack([flat, alpha.astype(np.uint8)]))


def in_file(data: bytes, kind: str, mode: str) -> bytes:
    """The same picture in another file format and colour mode."""
    file = io.BytesIO()
    Image.open(io.BytesIO(data)).convert(mode).save(file, kind)
    return file.getvalue()


def _star(points: int, deep: float) -> list[tuple[float, float]]:
    middle, outer = SIDE / 2, SIDE / 2 - 4
    reach = [outer if n % 2 == 0 else outer * deep for n in range(2 * points)]
    return [(middle + r * sin(n * pi / points), middle - r * cos(n * pi / points)) for n, r in enumerate(reach)]


def drawn(shape: str, colour: RGB, ground: RGB | None) -> bytes:
    """One of many outlines in one colour, on transparency or on an even ground."""
    image = Image.new("RGBA", (SIDE, SIDE), (0, 0, 0, 0) if ground is None else (*ground, 255))
    pen = ImageDraw.Draw(image)
    low, high = 4, SIDE - 5
    match shape.split():
        case ["star", points]:
            pen.polygon(_star(int(points), 0.45), fill=colour)
        case ["thorn", points]:
            pen.polygon(_star(int(points), 0.12), fill=colour)
        case ["ring", width]:
            pen.ellipse([low, low, high, high], outline=colour, width=int(width))
        case ["bars", count]:
            step = (high - low) / int(count)
            for n in range(int(count)):
                pen.rectangle([low + n * step, low, low + (n + 0.6) * step, high], fill=colour)
        case ["scatter", count]:
            for n in range(int(count)):
                x, y = 20 + n * 389 % (SIDE - 40), 20 + n * 241 % (SIDE - 40)
                pen.ellipse([x - 16, y - 16, x + 16, y + 16], fill=colour)
        case ["leaning"]:
            pen.line([30, SIDE - 30, SIDE - 30, 30], fill=colour, width=40)
        case ["corner"]:
            pen.rectangle([0, 0, SIDE // 2, SIDE // 2], fill=colour)
        case ["whole"]:
            pen.rectangle([0, 0, SIDE, SIDE], fill=colour)
        case _:
            raise ValueError(shape)
    return packed(image)


SHAPES = (
    *("star 5", "star 12", "thorn 4", "thorn 24", "ring 8", "ring 40", "bars 3", "bars 11"),
    *("scatter 7", "scatter 60", "leaning", "corner", "whole"),
)
PLUM, MOSS, SLATE = toned(0.45, 0.12, 350), toned(0.55, 0.10, 130), toned(0.5, 0.02, 250)
CREAM, WHITE, BLACK, GREY = (244, 236, 222), (255, 255, 255), (0, 0, 0), (128, 128, 128)


def _colours() -> dict[str, Made]:
    found = {f"hue {hue}": Made(lambda h=hue: egg(toned(0.6, 0.12, h))) for hue in range(0, 360, 10)}
    for hue, chroma in product(range(0, 360, 45), (0.0, 0.01, 0.03, 0.07, 0.3)):
        made = Made(lambda h=hue, c=chroma: egg(toned(0.65, c, h)))
        found[f"hue {hue} chroma {chroma}"] = made
    for hue, level in product(range(20, 380, 60), (2, 15, 30, 45, 75, 90, 97)):
        made = Made(lambda h=hue, v=level: egg(toned(v / 100, 0.1, h)))
        found[f"hue {hue} lightness {level}"] = made
    for level in (0, 20, 40, 60, 80, 100):
        found[f"grey {level}"] = Made(lambda v=level: egg(toned(v / 100, 0.0, 0)))
    for hue, turn in product(range(0, 360, 40), (60, 120, 180)):
        pair = toned(0.5, 0.12, hue), toned(0.75, 0.12, hue + turn)
        found[f"hue {hue} with {turn} away"] = Made(lambda p=pair: egg(*p))
    for hue in range(0, 360, 30):
        found[f"hue {hue} on cream"] = Made(lambda h=hue: egg(toned(0.4, 0.1, h), CREAM))
    return found


def _transparency() -> dict[str, Made]:
    found = {
        f"veil {alpha} of hue {hue}": Made(lambda a=alpha, h=hue: egg(toned(0.5, 0.12, h), alpha=a))
        for alpha, hue in product((12, 40, 128, 220), (30, 150, 270))
    }
    for reach, hue in product((0.02, 0.2, 0.6, 1.0), (0, 120, 240)):
        made = Made(lambda r=reach, h=hue: fading(toned(0.55, 0.12, h), r))
        found[f"fading {reach} of hue {hue}"] = made
    for seed, share in enumerate((0.0, 0.3, 0.5, 0.8, 0.97)):
        found[f"blobs {share} see-through"] = Made(lambda n=seed, s=share: speckled(n + 1, s))
    return found


def _shapes() -> dict[str, Made]:
    found: dict[str, Made] = {}
    for shape, (name, ground) in product(SHAPES, (("nothing", None), ("white", WHITE), ("cream", CREAM))):
        found[f"{shape} on {name}"] = Made(lambda s=shape, g=ground: drawn(s, PLUM, g))
    for name, ground in (("black", BLACK), ("grey", GREY), ("slate", SLATE), ("plum", PLUM)):
        found[f"moss on {name}"] = Made(lambda g=ground: egg(MOSS, g))
        found[f"moss on rough {name}"] = Made(lambda g=ground: picture(920, 920, MOSS, g, noise=4))
    found["on noise"] = Made(lambda: picture(920, 920, MOSS, GREY, noise=110))
    found["nearly white on white"] = Made(lambda: egg((252, 252, 250), WHITE))
    found["yellow on white"] = Made(lambda: egg((255, 240, 0), WHITE))
    for n, hue in enumerate(range(0, 360, 45)):
        ends = toned(0.25, 0.08, hue), toned(0.85, 0.08, hue + 60)
        found[f"slope {hue}"] = Made(lambda e=ends, a=n % 2 == 0: slope(*e, across=a))
    return found


def _sizes() -> dict[str, Made]:
    wide = [(2400, 300), (1600, 420), (900, 420), (700, 500), (1500, 1000)]
    tall = [(420, 700), (300, 900), (420, 1800), (40, 2000), (900, 1500)]
    square = [(404, 404), (450, 450), (673, 673), (900, 900), (1200, 1200), (1600, 1600)]
    found = {
        f"{w} by {h}": Made(lambda w=w, h=h, n=n: picture(w, h, toned(0.55, 0.1, n * 40)))
        for n, (w, h) in enumerate([*wide, *tall, *square])
    }
    # Too few pixels for print at any size that would serve: the maker must be told.
    found["tiny"] = Made(lambda: picture(24, 24, MOSS))
    found["one pixel"] = Made(lambda: png(np.full((1, 1, 3), 120, np.uint8)))
    found["small"] = Made(lambda: picture(300, 300, MOSS))
    return found


def _drawings() -> dict[str, Made]:
    body = '<rect width="100%" height="100%" fill="#774400"/>'
    boxes = ("0 0 400 10", "0 0 10 400", "0 0 1 1", "0 0 9000 7000", "0 0 300 90", "0 0 90 300", "0 0 60 60")
    return {f"drawing {box}": Made(lambda b=box: svg(body, b), "svg") for box in boxes}


def _files() -> dict[str, Made]:
    plain = picture(920, 920, PLUM, CREAM)
    kinds = (("JPEG", "RGB", "jpg"), ("JPEG", "CMYK", "jpg"), ("JPEG", "L", "jpg"), ("TIFF", "RGB", "tif"))
    more = (("WEBP", "RGB", "webp"), ("PNG", "LA", "png"), ("PNG", "1", "png"))
    return {
        f"{kind} in {mode}": Made(lambda k=kind, m=mode: in_file(plain, k, m), ending)
        for kind, mode, ending in (*kinds, *more)
    }


def _shipped() -> dict[str, Made]:
    return {
        f"{package} {path.rpartition('/')[2]}": Made(
            lambda p=package, f=path: files(p).joinpath(f).read_bytes(), path.rpartition(".")[2]
        )
        for package, paths in SHIPPED.items()
        for path in paths
        if files(package).joinpath(path).is_file()
    }


PICTURES: dict[str, Made] = {
    **_colours(),
    **_transparency(),
    **_shapes(),
    **_sizes(),
    **_drawings(),
    **_files(),
    **_shipped(),
}
